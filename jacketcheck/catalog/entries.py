"""What all catalogue entries have in common: a name, sources for their figures, and being found."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Generic, Protocol, TypeVar

from jacketcheck.errors import CatalogError

__all__ = ["Entries", "Named", "Sourced", "require_figures"]

_LONGEST_LIST = 12


class Named(Protocol):
    """Anything that can be looked up by name."""

    @property
    def name(self) -> str:
        """Name as the catalogue spells it."""

    @property
    def aliases(self) -> tuple[str, ...]:
        """Other names that mean the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sourced:
    """A record that knows where each of its figures stands.

    Attributes
    ----------
    source
        Standard with edition and table, or how else the figures came about.
    sources
        The same for single fields, where it is not `source`.
    aliases
        Other names under which the entry is found.
    """

    source: str
    sources: Mapping[str, str] = field(default_factory=dict, hash=False)
    aliases: tuple[str, ...] = ()

    def source_of(self, field_name: str) -> str:
        """Where the figure in the field `field_name` stands."""
        return self.sources.get(field_name, self.source)


Entry = TypeVar("Entry", bound=Named)


class Entries(Mapping[str, Entry], Generic[Entry]):
    """Entries of one kind by name; reading only.

    Indexing takes the exact name. `find` compares without regard to case and to runs of blanks,
    knows the aliases, and says what is near when nothing fits.

    Parameters
    ----------
    kind
        What an entry is called in messages, e.g. ``bar size``.
    entries
        The entries in the order in which they are to be listed.

    Raises
    ------
    CatalogError
        If two entries claim the same name or alias, or a name is empty.
    """

    __slots__ = ("_by_folded_name", "_by_name", "kind")

    def __init__(self, kind: str, entries: Iterable[Entry]) -> None:
        self.kind = kind
        self._by_name: dict[str, Entry] = {}
        self._by_folded_name: dict[str, Entry] = {}
        for entry in entries:
            self._add(entry)

    def _add(self, entry: Entry) -> None:
        for name in (entry.name, *entry.aliases):
            folded = _folded(name)
            if not folded:
                raise CatalogError(self.kind, name, "is an empty name")
            holder = self._by_folded_name.setdefault(folded, entry)
            if holder is not entry:
                raise CatalogError(self.kind, name, f"is taken already, by {holder.name}")
        self._by_name[entry.name] = entry

    def __getitem__(self, name: str) -> Entry:
        return self._by_name[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._by_name)

    def __len__(self) -> int:
        return len(self._by_name)

    def __repr__(self) -> str:
        return f"Entries({self.kind!r}, {len(self)} entries)"

    def find(self, name: str) -> Entry:
        """Entry by name or alias, in any case; raises CatalogError with what is near."""
        found = self._by_folded_name.get(_folded(name))
        if found is None:
            raise CatalogError(self.kind, name, self._what_is_near(name), known=tuple(self))
        return found

    def with_more(self, entries: Iterable[Entry]) -> Entries[Entry]:
        """Copy that holds these entries as well; raises CatalogError if a name is taken."""
        return Entries(self.kind, [*self.values(), *entries])

    def _what_is_near(self, name: str) -> str:
        from difflib import get_close_matches  # noqa: PLC0415 - only needed for a bad name

        near = get_close_matches(_folded(name), self._by_folded_name, n=5)
        names = dict.fromkeys(self._by_folded_name[folded].name for folded in near)
        if names:
            return f"is not known; did you mean {' or '.join(list(names)[:3])}?"
        if not self:
            return "is not known; there are none"
        left_out = len(self) - _LONGEST_LIST
        listed = ", ".join(list(self)[:_LONGEST_LIST])
        return f"is not known; known are {listed}" + (
            f" and {left_out} more" if left_out > 0 else ""
        )


def require_figures(kind: str, name: str, source: str, figures: Mapping[str, float | None]) -> None:
    """Raise CatalogError unless there is a source and every figure is finite and above zero.

    A figure that is None is one that the standard does not give.
    """
    if not name.strip():
        raise CatalogError(kind, name, "is an empty name")
    if not source.strip():
        raise CatalogError(kind, name, "has no source")
    for field_name, value in figures.items():
        is_number = isinstance(value, int | float) and math.isfinite(value)
        good = value is None or (is_number and value > 0.0)
        if not good:
            raise CatalogError(
                kind, name, f"has {field_name} = {value!r}; must be a number above zero"
            )


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())
