"""All catalogue entries that an input may name, ours and those that plug-ins bring."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from jacketcheck.catalog.bars import built_in_bars
from jacketcheck.catalog.bolts import built_in_bolts
from jacketcheck.catalog.bond_models import BondModel, built_in_bond_models
from jacketcheck.catalog.entries import Entries
from jacketcheck.catalog.faying import built_in_faying_classes
from jacketcheck.catalog.plate_steels import built_in_plate_steels
from jacketcheck.catalog.rebar_steels import built_in_rebar_steels
from jacketcheck.catalog.records import Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel
from jacketcheck.errors import CatalogError

__all__ = ["Catalog", "built_in_catalog"]


@dataclass(frozen=True, slots=True)
class Catalog:
    """Catalogue entries by name; a copy is made to add entries, nothing is ever changed.

    Names are compared without regard to case and to runs of blanks; aliases count as names.

    Examples
    --------
    >>> catalog = built_in_catalog()
    >>> catalog.bar("#11").name
    'No. 11'
    >>> size = catalog.bolt_product("ASTM F3125 A325").size("7/8 in")
    >>> round(size.pretension / 1000.0, 1), size.source_of("pretension").split(";")[0]
    (173.5, 'AISC 360-22 Table J3.1')
    """

    bars: Entries[Bar]
    rebar_steels: Entries[RebarSteel]
    bolts: Entries[BoltProduct]
    plate_steels: Entries[PlateSteel]
    faying_classes: Entries[FayingClass]
    bond_models: Entries[BondModel]

    def bar(self, name: str) -> Bar:
        """Bar size by name; raises CatalogError with what is near."""
        return self.bars.find(name)

    def rebar_steel(self, name: str) -> RebarSteel:
        """Reinforcing steel by name; raises CatalogError with what is near."""
        return self.rebar_steels.find(name)

    def bolt_product(self, name: str) -> BoltProduct:
        """Bolt product by name; raises CatalogError with what is near."""
        return self.bolts.find(name)

    def plate_steel(self, name: str) -> PlateSteel:
        """Plate steel by name; raises CatalogError with what is near."""
        return self.plate_steels.find(name)

    def faying_class(self, name: str) -> FayingClass:
        """Faying class by code and letter.

        Raises
        ------
        CatalogError
            If the class is not known, or the code is left out: classes of the same letter differ
            from code to code.
        """
        letter = name.casefold().removeprefix("class").strip()
        coded = tuple(
            entry.name
            for entry in self.faying_classes.values()
            if entry.letter.casefold() == letter
        )
        if coded:
            raise CatalogError(
                "faying class", name, f"needs its code: {' or '.join(coded)}", known=coded
            )
        return self.faying_classes.find(name)

    def bond_model(self, name: str) -> BondModel:
        """Bond model by name; raises CatalogError with what is near."""
        return self.bond_models.find(name)

    def extended(
        self,
        *,
        bars: Iterable[Bar] = (),
        rebar_steels: Iterable[RebarSteel] = (),
        bolts: Iterable[BoltProduct] = (),
        plate_steels: Iterable[PlateSteel] = (),
        faying_classes: Iterable[FayingClass] = (),
        bond_models: Iterable[BondModel] = (),
    ) -> Catalog:
        """Copy of the catalogue with more entries.

        Parameters
        ----------
        bars, rebar_steels, bolts, plate_steels, faying_classes, bond_models
            Entries to add, each under names and aliases that are still free.

        Returns
        -------
        Catalog
            A new catalogue; this one stays as it is.

        Raises
        ------
        CatalogError
            If a name or alias is taken already.
        """
        return Catalog(
            bars=self.bars.with_more(bars),
            rebar_steels=self.rebar_steels.with_more(rebar_steels),
            bolts=self.bolts.with_more(bolts),
            plate_steels=self.plate_steels.with_more(plate_steels),
            faying_classes=self.faying_classes.with_more(faying_classes),
            bond_models=self.bond_models.with_more(bond_models),
        )


@lru_cache(maxsize=1)
def built_in_catalog() -> Catalog:
    """Catalogue that comes with the package, read once."""
    bars = Entries("bar size", built_in_bars())
    return Catalog(
        bars=bars,
        rebar_steels=Entries("reinforcing steel", built_in_rebar_steels(bars)),
        bolts=Entries("bolt product", built_in_bolts()),
        plate_steels=Entries("plate steel", built_in_plate_steels()),
        faying_classes=Entries("faying class", built_in_faying_classes()),
        bond_models=Entries("bond model", built_in_bond_models()),
    )
