"""Steps and rows that several limit states write alike."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Plate, Real, Steps

__all__ = [
    "HARDEST_ROW",
    "add_steel",
    "divided",
]

HARDEST_ROW: Final = "hardest-worked row"


def add_steel(steps: Steps, steel: Plate) -> None:
    """Write down the strengths of a plate."""
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")


def divided(
    steps: Steps, symbol: str, nominal: Real, *, factor: tuple[str, float], unit: str, clause: str
) -> Real:
    """Write down a partial safety factor, of symbol and value, and return the design capacity."""
    name, value = factor
    steps.add(name, "partial safety factor", value, "1", clause)
    return steps.add(f"{symbol}/{name}", "design capacity", np.divide(nominal, value), unit, clause)
