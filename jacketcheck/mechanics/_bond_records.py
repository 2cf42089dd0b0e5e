"""Records of bond laws and steels taken apart and put together again, field by field."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields
from types import EllipsisType
from typing import Final, TypeAlias, TypeVar

import numpy as np

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteels, SteelCurve
from jacketcheck.mechanics.bond_law import BondLaw

__all__ = ["indexed_law", "indexed_steel", "mapped_law", "mapped_steel"]

Record = TypeVar("Record")
_NAMES: Final[Mapping[type, tuple[str, ...]]] = {
    kind: tuple(one.name for one in fields(kind)) for kind in (BondLaw, BarSteels)
}

Index: TypeAlias = slice | tuple[slice | EllipsisType | None, ...]


def mapped_law(law: BondLaw, change: Callable[[Floats], Floats]) -> BondLaw:
    """The law with each of its quantities spread or picked from alike."""
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


def indexed_law(law: BondLaw, index: Index) -> BondLaw:
    """Some elements, or new axes, of each quantity of a law."""
    return mapped_law(law, lambda values: values[index])


def indexed_steel(steel: SteelCurve, index: Index) -> BarSteels:
    """Some elements, or new axes, of each quantity of a steel."""
    return mapped_steel(steel, lambda values: values[index])
