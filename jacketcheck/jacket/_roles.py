"""Labels: text that is shown and never computed with, so that designs may differ in it.

The sources of figures are labels too: one text for each field that comes from the catalogue.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import Field, dataclass, field
from typing import Any

__all__ = ["SEVERAL", "Figures", "is_label", "label", "shared_label"]

SEVERAL = "(several)"
"""What a label reads where the designs of one jacket differ in it."""


def label(default: str = "") -> Any:
    """A dataclass field that holds a label."""
    return field(default=default, metadata={"label": True})


def is_label(field_of: Field[Any]) -> bool:
    """Whether a dataclass field holds a label."""
    return bool(field_of.metadata.get("label", False))


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """A part of the jacket that knows where each of its figures stands.

    Attributes
    ----------
    source
        Standard or catalogue entry that the part is of.
    sources
        Where single figures stand, by field: a table of a standard, or the field of the input.
    """

    source: str = label()
    sources: Mapping[str, str] = field(
        default_factory=dict, hash=False, repr=False, metadata={"label": True}
    )

    def source_of(self, field_name: str) -> str:
        """Where the figure in the field `field_name` stands."""
        return self.sources.get(field_name, self.source)


def shared_label(labels: Iterable[Any]) -> Any:
    """What designs that are put together show: the label that all share, else `SEVERAL`."""
    first, *others = labels
    if all(one == first for one in others):
        return first
    if isinstance(first, Mapping):
        names = dict.fromkeys(name for one in (first, *others) for name in one)
        return {
            name: shared_label([one.get(name, "") for one in (first, *others)]) for name in names
        }
    return SEVERAL
