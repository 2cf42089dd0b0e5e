"""Steps and rows that several limit states write alike."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.plate_strength import seam_strip_width
from jacketcheck.plugin import Jacket, Plate, Real, Steps
from jacketcheck_india.codes import is_800

__all__ = [
    "HARDEST_ROW",
    "add_steel",
    "add_strip",
    "divided",
]

HARDEST_ROW: Final = "hardest-worked row"


def add_steel(steps: Steps, steel: Plate) -> None:
    """Write down the strengths of a plate."""
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")


def add_strip(jacket: Jacket, steps: Steps, symbol: str) -> Real:
    """Write down the height of the weakest strip with one row of bolts and return it [mm]."""
    bolts = jacket.bolts
    steps.add("s", "spacing of the rows", bolts.pitch, "mm", "input bolts.pitch")
    steps.add("e_end", "end distance", bolts.end_distance, "mm",
              "input bolts.end_distance, or bolts.rows and repair.height")  # fmt: skip
    height = seam_strip_width(pitch=bolts.pitch, end_distance=bolts.end_distance)
    return steps.add(symbol, "min(s, e_end + s/2)", height, "mm", "geometry")


def divided(
    steps: Steps,
    symbol: str,
    nominal: Real,
    *,
    design: str,
    factor: tuple[str, float],
    unit: str,
    clause: str,
) -> Real:
    """Write down a partial safety factor, of symbol and value, and return the design capacity.

    `symbol` is that of the nominal capacity, `design` that of the answer.
    """
    name, value = factor
    steps.add(name, "partial safety factor", value, "1", is_800("Table 5"))
    return steps.add(design, f"{symbol}/{name}", np.divide(nominal, value), unit, clause)
