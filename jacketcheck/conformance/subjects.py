"""What the kit looks at: a plug-in, and everything that it brings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal, TypeAlias

from jacketcheck.catalog.entries import Entries
from jacketcheck.host.host import Host, PluginInfo

__all__ = ["CATALOG_KINDS", "Subject", "SubjectKind", "subjects_of"]

SubjectKind: TypeAlias = Literal[
    "plug-in",
    "provisions",
    "limit state",
    "bar size",
    "reinforcing steel",
    "bolt product",
    "plate steel",
    "faying class",
    "bond model",
]

CATALOG_KINDS: Final[Mapping[str, SubjectKind]] = {
    "bars": "bar size",
    "rebar_steels": "reinforcing steel",
    "bolts": "bolt product",
    "plate_steels": "plate steel",
    "faying_classes": "faying class",
    "bond_models": "bond model",
}
"""Kinds by the name of the catalogue's field, which is the hook's without its prefix."""


@dataclass(frozen=True, slots=True)
class Subject:
    """One thing that a plug-in brings.

    Attributes
    ----------
    kind
        What it is.
    name
        What it is called, unique within its kind.
    item
        The thing itself: `PluginInfo`, `Provisions`, `Registered` or a catalogue record.
    """

    kind: SubjectKind
    name: str
    item: Any

    def __str__(self) -> str:
        return f"{self.kind} {self.name}"


def subjects_of(host: Host, plugin: PluginInfo) -> Iterator[Subject]:
    """The plug-in itself and all that it brings, in the order of the hooks."""
    yield Subject("plug-in", plugin.name, plugin)
    for name in plugin.provisions:
        yield Subject("provisions", name, host.provisions[name])
    for field, kind in CATALOG_KINDS.items():
        entries: Entries[Any] = getattr(host.catalog, field)
        for name, entry in entries.items():
            if _brought(host, plugin, f"{field}/{name}"):
                yield Subject(kind, name, entry)
    for one in host.registered:
        if one.plugin.name == plugin.name and one.plugin.distribution == plugin.distribution:
            state = one.limit_state
            yield Subject("limit state", f"{state.provisions}/{state.id}", one)


def _brought(host: Host, plugin: PluginInfo, entry: str) -> bool:
    """Whether an entry is a plug-in's; what nobody brought through a hook is the package's own."""
    if plugin.built_in:
        return not any(entry in other.entries for other in host.plugins)
    return entry in plugin.entries
