"""Records of bond laws and steels taken apart and put together again, field by field."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields
from types import EllipsisType
from typing import Final, TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.bar_steel import BarSteels, SteelCurve
from jacketcheck.mechanics.bond_law import BlendedBondLaw, BondLaw, LocalBondLaw

__all__ = ["indexed_law", "indexed_steel", "law_quantities", "mapped_law", "mapped_steel"]

Record = TypeVar("Record")
_NAMES: Final[Mapping[type, tuple[str, ...]]] = {
    kind: tuple(one.name for one in fields(kind)) for kind in (BondLaw, BarSteels)
}

Index: TypeAlias = slice | NDArray[np.intp] | tuple[slice | EllipsisType | None, ...]


def law_quantities(law: LocalBondLaw) -> list[Real]:
    """Every quantity of a law, those of both parts of a blend."""
    if isinstance(law, BlendedBondLaw):
        return [*law_quantities(law.held), *law_quantities(law.loose), law.share]
    return [getattr(law, name) for name in _NAMES[BondLaw]]


def mapped_law(law: LocalBondLaw, change: Callable[[Floats], Floats]) -> LocalBondLaw:
    """The law with each of its quantities spread or picked from alike."""
    if isinstance(law, BlendedBondLaw):
        share = change(np.asarray(law.share, dtype=float))
        held, loose = (_mapped(BondLaw, one, change) for one in (law.held, law.loose))
        return BlendedBondLaw(held, loose, share)
    return _mapped(BondLaw, law, change)


def mapped_steel(steel: SteelCurve, change: Callable[[Floats], Floats]) -> BarSteels:
    """The steel with each of its quantities spread or picked from alike."""
    return _mapped(BarSteels, steel, change)


def _mapped(kind: type[Record], record: object, change: Callable[[Floats], Floats]) -> Record:
    """A record of the same numbers in other shapes; they are in range already."""
    twin = object.__new__(kind)
    for name in _NAMES[kind]:
        object.__setattr__(twin, name, change(np.asarray(getattr(record, name), dtype=float)))
    return twin


def indexed_law(law: LocalBondLaw, index: Index) -> LocalBondLaw:
    """Some elements, or new axes, of each quantity of a law."""
    return mapped_law(law, lambda values: values[index])


def indexed_steel(steel: SteelCurve, index: Index) -> BarSteels:
    """Some elements, or new axes, of each quantity of a steel."""
    return mapped_steel(steel, lambda values: values[index])
