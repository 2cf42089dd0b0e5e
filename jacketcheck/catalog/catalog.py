"""All catalogue entries that an input may name, ours and those that plug-ins bring."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

from jacketcheck.catalog.bars import built_in_bars
from jacketcheck.catalog.bolts import built_in_bolts
from jacketcheck.catalog.faying import built_in_faying_classes
from jacketcheck.catalog.plate_steels import built_in_plate_steels
from jacketcheck.catalog.rebar_steels import built_in_rebar_steels
from jacketcheck.catalog.records import Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel
from jacketcheck.errors import CatalogError

__all__ = ["Catalog", "built_in_catalog"]

Entry = TypeVar("Entry", Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel)


@dataclass(frozen=True, slots=True)
class Catalog:
    """Catalogue entries by name; a copy is made to add entries, nothing is ever changed.

    Names are compared without regard to case and to runs of blanks.
    """

    bars: Mapping[str, Bar]
    rebar_steels: Mapping[str, RebarSteel]
    bolts: Mapping[str, BoltProduct]
    plate_steels: Mapping[str, PlateSteel]
    faying_classes: Mapping[str, FayingClass]

    def bar(self, name: str) -> Bar:
        """Bar size by name; raises CatalogError with the known names."""
        return _find("bar size", self.bars, name)

    def rebar_steel(self, name: str) -> RebarSteel:
        """Reinforcing steel by name; raises CatalogError with the known names."""
        return _find("reinforcing steel", self.rebar_steels, name)

    def bolt_product(self, name: str) -> BoltProduct:
        """Bolt product by name; raises CatalogError with the known names."""
        return _find("bolt product", self.bolts, name)

    def plate_steel(self, name: str) -> PlateSteel:
        """Plate steel by name; raises CatalogError with the known names."""
        return _find("plate steel", self.plate_steels, name)

    def faying_class(self, name: str) -> FayingClass:
        """Faying class by code and letter; raises CatalogError with the known names."""
        return _find("faying class", self.faying_classes, name)


def _folded(name: str) -> str:
    return " ".join(name.casefold().split())


def _find(kind: str, entries: Mapping[str, Entry], name: str) -> Entry:
    if (entry := entries.get(name)) is not None:
        return entry
    wanted = _folded(name)
    for known, entry in entries.items():
        if _folded(known) == wanted:
            return entry
    raise CatalogError(kind, name, tuple(entries))


def built_in_catalog() -> Catalog:
    """Build the catalogue that comes with the package."""
    return Catalog(
        bars=MappingProxyType(dict(built_in_bars())),
        rebar_steels=MappingProxyType(dict(built_in_rebar_steels())),
        bolts=MappingProxyType(dict(built_in_bolts())),
        plate_steels=MappingProxyType(dict(built_in_plate_steels())),
        faying_classes=MappingProxyType(dict(built_in_faying_classes())),
    )
