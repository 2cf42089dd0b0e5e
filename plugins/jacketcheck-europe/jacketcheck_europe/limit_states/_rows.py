"""Rows as these provisions write them, and inputs that many of them write down."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import Jacket, Kind, Plate, Real, Result, Steps
from jacketcheck_europe.editions import EN_1993
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["add_design_yield", "add_radii", "resistance_row"]


def resistance_row(
    title: str,
    location: str,
    steps: Steps,
    *,
    demand: Real,
    capacity: Real,
    unit: str,
    clause: str,
    factors: PartialFactors,
    notes: tuple[str, ...] = (),
    kind: Kind = Kind.LIMIT,
    follows_from: tuple[str, ...] = (),
    rule: str = "",
    partial_factor: float = 1.0,
) -> Result:
    """A demand against a design resistance; says whose partial factors it has.

    `rule` and `partial_factor` tell the probability study which row counts, and what to take out.
    """
    return Result(
        title,
        location,
        demand,
        capacity,
        unit,
        clause,
        steps.lines,
        (*notes, factors.note),
        kind,
        follows_from=follows_from,
        rule=rule,
        resistance_factor=1.0 / partial_factor,
    )


def add_radii(jacket: Jacket, steps: Steps) -> None:
    """Write down the radii between which pressure is carried through the grout."""
    sleeve, column = jacket.sleeve, jacket.column
    steps.add("D_i", "inside of the sleeve", sleeve.inner_diameter, "mm",
              "input sleeve.inner_diameter")  # fmt: skip
    steps.add("R_i", "D_i/2", sleeve.inner_radius, "mm", "geometry")
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    steps.add("R_c", "D/2", column.radius, "mm", "geometry")


def add_design_yield(steel: Plate, factors: PartialFactors, steps: Steps) -> Real:
    """Write down the design yield strength of a plate and return it [MPa]."""
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    steps.add("γ_M0", "section", factors.section, "1", f"{EN_1993} 6.1(1)")
    design = np.divide(steel.yield_strength, factors.section)
    return steps.add("f_yd", "f_y/γ_M0", design, "MPa", f"{EN_1993} 6.2.3(2)a")
