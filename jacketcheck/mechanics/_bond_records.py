"""Records of bond laws and steels taken apart and put together again, field by field."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from types import EllipsisType
from typing import TypeAlias

import numpy as np

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteels, SteelCurve
from jacketcheck.mechanics.bond_law import BondLaw

__all__ = ["indexed_law", "indexed_steel", "mapped_law", "mapped_steel"]

Index: TypeAlias = slice | tuple[slice | EllipsisType | None, ...]


def mapped_law(law: BondLaw, change: Callable[[Floats], Floats]) -> BondLaw:
    """The law with each of its quantities changed alike."""
    return BondLaw(*(change(np.asarray(getattr(law, one.name), float)) for one in fields(law)))


def mapped_steel(steel: SteelCurve, change: Callable[[Floats], Floats]) -> BarSteels:
    """The steel with each of its quantities changed alike."""
    return BarSteels(
        *(change(np.asarray(getattr(steel, one.name), float)) for one in fields(BarSteels))
    )


def indexed_law(law: BondLaw, index: Index) -> BondLaw:
    """Some elements, or new axes, of each quantity of a law."""
    return mapped_law(law, lambda values: values[index])


def indexed_steel(steel: SteelCurve, index: Index) -> BarSteels:
    """Some elements, or new axes, of each quantity of a steel."""
    return mapped_steel(steel, lambda values: values[index])
