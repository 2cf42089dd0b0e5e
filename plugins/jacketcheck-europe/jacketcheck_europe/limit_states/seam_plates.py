"""Sleeve and splice plates at the seam: yield, net section and category C."""

from __future__ import annotations

from typing import Literal, NamedTuple, TypeAlias

import numpy as np

from jacketcheck.mechanics.plate_strength import net_width, seam_strip_width
from jacketcheck.plugin import (
    Hole,
    Jacket,
    Plate,
    Real,
    Result,
    Steps,
    add_hoop_force,
    splice_eccentricity,
    splice_shares,
    splice_strength,
)
from jacketcheck_europe.editions import EN_1993, EN_1993_8
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import plates
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = [
    "sleeve_gross_yield",
    "sleeve_net_rupture",
    "splice_gross_yield",
    "splice_net_rupture",
]

_SEAM = "seam, per height"
_ONE_SIDED = (
    "plates outside only: the hoop force bends them, and all of the couple is taken by the plate "
    "(engineering judgement, lower bound); plates on both sides avoid it"
)

Mode: TypeAlias = Literal["gross", "rupture", "category C"]


class _Check(NamedTuple):
    """What one way of failing looks like.

    Attributes
    ----------
    symbol
        Design resistance.
    clause
        Rule.
    net
        Whether holes are deducted.
    """

    symbol: str
    clause: str
    net: bool


_CHECKS: dict[Mode, _Check] = {
    "gross": _Check("N_pl,Rd", f"{EN_1993} 6.2.3(2)a, Eq. 6.6", net=False),
    "rupture": _Check("N_u,Rd", f"{EN_1993} 6.2.3(2)b, Eq. 6.7", net=True),
    "category C": _Check(
        "N_net,Rd", f"{EN_1993} 6.2.3(4), Eq. 6.8; {EN_1993_8} 3.4.1(1)c", net=True
    ),
}


def sleeve_gross_yield(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Yield of the sleeve's gross section under the seam force."""
    return [_sleeve(jacket, "gross", factors, "Gross yield of the sleeve at the seam")]


def sleeve_net_rupture(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Rupture of the sleeve's net section; in a slip-resistant seam also its yield."""
    title = "Net section of the sleeve at the bolts"
    return [_sleeve(jacket, mode, factors, title) for mode in _net_modes(jacket)]


def splice_gross_yield(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Yield of the splice plates over the seam, bending of one-sided plates included."""
    return [_splice(jacket, "gross", factors, "Yield of the splice plates over the seam")]


def splice_net_rupture(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Rupture of the splice plates' net section; in a slip-resistant seam also its yield."""
    title = "Net section of the splice plates"
    return [_splice(jacket, mode, factors, title) for mode in _net_modes(jacket)]


def _net_modes(jacket: Jacket) -> tuple[Mode, ...]:
    """Category C, slip-resistant at the ultimate limit state, is for preloaded bolts."""
    return ("rupture", "category C") if jacket.bolts.pretensioned else ("rupture",)


def _sleeve(jacket: Jacket, mode: Mode, factors: PartialFactors, title: str) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    demand = add_hoop_force(jacket, steps)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    ratio = _add_net_ratio(jacket, sleeve.hole, steps) if _CHECKS[mode].net else 1.0
    _add_steel(steps, sleeve.steel, mode, factors)
    capacity = _resistance(mode, sleeve.steel, np.multiply(ratio, sleeve.thickness), factors)
    return _finished(
        title,
        mode,
        steps,
        expression=_expression(mode, "t"),
        demand=demand,
        capacity=capacity,
        factors=factors,
    )


def _splice(jacket: Jacket, mode: Mode, factors: PartialFactors, title: str) -> Result:
    steps, splice = Steps(), jacket.splice
    demand = add_hoop_force(jacket, steps)
    ratio: Real = _add_net_ratio(jacket, splice.hole, steps) if _CHECKS[mode].net else 1.0
    _add_steel(steps, splice.steel, mode, factors)
    eccentricity = steps.add("e", "sleeve to plate, mid-planes; 0 with plates on both sides",
                             splice_eccentricity(jacket), "mm", "statics")  # fmt: skip
    outside, inside = splice_shares(jacket)
    steps.add("t_o", "outside plate", splice.outside_thickness, "mm", "input splice.thickness")
    steps.add("t_i", "inside plate, 0 where there is none", splice.inside_thickness, "mm",
              "input splice.inside_thickness")  # fmt: skip
    steps.add("q", "e/t_o", np.divide(eccentricity, splice.outside_thickness), "1", "geometry")
    steps.add("k_o", "share of the outside plate", outside, "1", "statics, no bending")
    steps.add("k_i", "share of the inside plate", inside, "1", "statics, no bending")
    # axial and bending resistance have the same steel and factor, so that a stress stands for both
    stress = _resistance(mode, splice.steel, 1.0, factors)
    capacity = splice_strength(jacket, stress=stress, net_ratio=ratio).least
    expression = f"{_expression(mode, 't_o')}/(√(1 + 4 q²) + 2 q)/k_o"
    if np.any(np.greater(inside, 0.0)):
        expression = f"min({expression}, {_expression(mode, 't_i')}/k_i)"
    notes = (_ONE_SIDED,) if np.any(np.greater(eccentricity, 0.0)) else ()
    return _finished(
        title,
        mode,
        steps,
        expression=expression,
        demand=demand,
        capacity=capacity,
        factors=factors,
        notes=notes,
    )


def _resistance(mode: Mode, steel: Plate, area: Real, factors: PartialFactors) -> Real:
    """Design resistance of a section, gross or net [N, or N/mm of height]."""
    if mode == "gross":
        return plates.plastic_resistance(
            steel.yield_strength, gross_area=area, partial_factor=factors.section
        )
    if mode == "rupture":
        return plates.rupture_resistance(
            steel.tensile_strength, net_area=area, partial_factor=factors.rupture
        )
    return plates.net_yield_resistance(
        steel.yield_strength, net_area=area, partial_factor=factors.section
    )


def _expression(mode: Mode, thickness: str) -> str:
    if mode == "rupture":
        return f"0.9 r_net {thickness} f_u/γ_M2"
    return f"{'r_net ' if _CHECKS[mode].net else ''}{thickness} f_y/γ_M0"


def _finished(
    title: str,
    mode: Mode,
    steps: Steps,
    *,
    expression: str,
    demand: Real,
    capacity: Real,
    factors: PartialFactors,
    notes: tuple[str, ...] = (),
) -> Result:
    chosen = _CHECKS[mode]
    steps.add(chosen.symbol, expression, capacity, "N/mm", chosen.clause)
    where = f"{_SEAM}, yield (category C)" if mode == "category C" else _SEAM
    return resistance_row(
        title,
        where,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N/mm",
        clause=chosen.clause,
        factors=factors,
        notes=notes,
        rule=mode.replace(" ", "-"),
        partial_factor=factors.rupture if mode == "rupture" else factors.section,
    )


def _add_steel(steps: Steps, steel: Plate, mode: Mode, factors: PartialFactors) -> None:
    if mode == "rupture":
        steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")
        steps.add("γ_M2", "rupture", factors.rupture, "1", f"{EN_1993} 6.1(1)")
    else:
        steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
        steps.add("γ_M0", "section", factors.section, "1", f"{EN_1993} 6.1(1)")


def _add_net_ratio(jacket: Jacket, hole: Hole, steps: Steps) -> Real:
    """Net over gross height of the weakest strip with one row; holes as they are."""
    bolts = jacket.bolts
    steps.add("s", "spacing of the rows", bolts.pitch, "mm", "input bolts.pitch")
    steps.add("e_end", "end distance", bolts.end_distance, "mm", "input bolts, rows and height")
    strip = steps.add("h", "min(s, e_end + s/2)",
                      seam_strip_width(pitch=bolts.pitch, end_distance=bolts.end_distance), "mm",
                      "geometry")  # fmt: skip
    steps.figure("d_0", f"{hole.kind} hole across the force", hole, "across", "mm")
    net = net_width(strip, hole_count=1, hole=hole.across, damage=0.0)
    return steps.add("r_net", "(h − d_0)/h, net over gross", net / strip, "1", f"{EN_1993} 6.2.2.2")
