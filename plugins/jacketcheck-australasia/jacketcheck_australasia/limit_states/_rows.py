"""Steps and rows that several limit states write alike."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Plate, Real, Steps

__all__ = [
    "HARDEST_ROW",
    "add_steel",
    "factored",
]

HARDEST_ROW: Final = "hardest-worked row"


def add_steel(steps: Steps, steel: Plate) -> None:
    """Write down the strengths of a plate."""
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")


def factored(
    steps: Steps, symbol: str, nominal: Real, *, factor: float, unit: str, clause: str
) -> Real:
    """Write down a capacity factor and return the design capacity."""
    steps.add("φ", "capacity factor", factor, "1", clause)
    return steps.add(f"φ{symbol}", f"φ {symbol}", np.multiply(factor, nominal), unit, clause)
