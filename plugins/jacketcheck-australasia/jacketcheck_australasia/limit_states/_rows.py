"""Steps and rows that several limit states write alike."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Jacket, Plate, Real, Result, Steps, add_bolt_force, hoop_demand

__all__ = [
    "HARDEST_ROW",
    "add_row_force",
    "add_steel",
    "at_least",
    "at_most",
    "factored",
    "only_valid",
    "thinnest",
    "within_range",
]

HARDEST_ROW: Final = "hardest-worked row"


def add_row_force(jacket: Jacket, steps: Steps) -> Real:
    """Write down the hoop force on the hardest-worked row of bolts and return it [N]."""
    add_bolt_force(jacket, steps)
    force = hoop_demand(jacket).bolt_force * jacket.bolts.columns
    return steps.add("N_row", "V n_c", force, "N", "equilibrium of a half shell")


def add_steel(steps: Steps, steel: Plate) -> None:
    """Write down the strengths of a plate."""
    steps.add("f_y", steel.name, steel.yield_strength, "MPa", steel.source)
    steps.add("f_u", steel.name, steel.tensile_strength, "MPa", steel.source)


def factored(
    steps: Steps, symbol: str, nominal: Real, *, factor: float, unit: str, clause: str
) -> Real:
    """Write down a capacity factor and return the design capacity."""
    steps.add("φ", "capacity factor", factor, "1", clause)
    return steps.add(f"φ{symbol}", f"φ {symbol}", np.multiply(factor, nominal), unit, clause)


def at_least(
    title: str, where: str, *, provided: Real, needed: Real, clause: str, rule: tuple[str, str]
) -> Result:
    """A length that must not be smaller than a rule, of symbol and wording, says."""
    symbol, wording = rule
    steps = Steps()
    steps.add(f"{symbol},min", wording, needed, "mm", clause)
    steps.add(symbol, "provided", provided, "mm", "input")
    return Result(title, where, needed, provided, "mm", clause, steps.lines)


def at_most(
    title: str, where: str, *, provided: Real, allowed: Real, clause: str, rule: tuple[str, str]
) -> Result:
    """A length that must not exceed what a rule, of symbol and wording, says."""
    symbol, wording = rule
    steps = Steps()
    steps.add(symbol, "provided", provided, "mm", "input")
    steps.add(f"{symbol},max", wording, allowed, "mm", clause)
    return Result(title, where, provided, allowed, "mm", clause, steps.lines)


def thinnest(jacket: Jacket) -> Real:
    """Thinnest of the plates that the bolts clamp [mm]."""
    inside = np.asarray(jacket.splice.inside_thickness)
    plates = np.minimum(
        jacket.splice.outside_thickness, np.where(np.greater(inside, 0.0), inside, np.inf)
    )
    return np.minimum(jacket.sleeve.thickness, plates)


def within_range(value: Real, valid: Real, stand_in: float) -> Real:
    """What a formula is asked for: the value of valid designs, a stand-in for the others.

    Where no design is valid the value stays, so that the formula says what is wrong with it.
    """
    return np.where(np.logical_or(valid, not np.any(valid)), value, stand_in)


def only_valid(answer: Real, valid: Real) -> Real:
    """The answer for valid designs, and none for the others, which then read as not evaluated."""
    return np.where(valid, answer, np.nan)
