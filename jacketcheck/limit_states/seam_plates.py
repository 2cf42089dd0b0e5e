"""Sleeve and splice plates at the seam: yield, net section, block shear and bending."""

from __future__ import annotations

from functools import partial

import numpy as np

from jacketcheck.analysis.hoop_demand import add_bolt_force, add_hoop_force, hoop_demand
from jacketcheck.analysis.splice import (
    effective_splice_thickness,
    splice_eccentricity,
    splice_shares,
)
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import Plate
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._us_codes import US_CODES, SteelCode
from jacketcheck.mechanics import block_shear, plate_strength, splice_bending
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = [
    "seam_block_shear",
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


@limit_state("sleeve-gross-yield", title="Gross yield of the sleeve at the seam",
             monotonic={"sleeve.steel.yield_strength": 0}, effort="closed-form")  # fmt: skip
def sleeve_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the sleeve's gross section under the seam force."""
    return [_sleeve_yield(jacket, code) for code in US_CODES]


def _sleeve_yield(jacket: Jacket, code: SteelCode) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{code.name} {code.yield_clause}"
    demand = add_hoop_force(jacket, steps)
    _add_steel(steps, sleeve.steel)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    nominal = plate_strength.gross_yield_strength(
        sleeve.steel.yield_strength, gross_area=sleeve.thickness
    )
    capacity = _factored(steps, "F_y t", nominal, code.tension_yield, "N/mm", clause)
    return Result("Gross yield of the sleeve at the seam", _SEAM, demand, capacity, "N/mm", clause,
                  steps.lines)  # fmt: skip


@limit_state(
    "sleeve-net-rupture", title="Net section of the sleeve at the bolts", effort="closed-form"
)
def sleeve_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the sleeve through the bolt line nearest to the seam's far side."""
    return [_sleeve_net(jacket, code) for code in US_CODES]


def _sleeve_net(jacket: Jacket, code: SteelCode) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{code.name} {code.rupture_clause}"
    demand = add_hoop_force(jacket, steps)
    _add_steel(steps, sleeve.steel)
    ratio = _net_ratio(jacket, steps, code, splice_plate=False)
    factor = steps.add(
        "R_p", f"{jacket.bolts.hole_making} holes", code.hole_factor(jacket), "1", clause
    )
    nominal = plate_strength.net_rupture_strength(
        sleeve.steel.tensile_strength,
        effective_net_area=ratio * sleeve.thickness,
        hole_factor=factor,
    )
    capacity = _factored(steps, "F_u t (A_e/A_g) R_p", nominal, code.rupture, "N/mm", clause)
    return Result("Net section of the sleeve at the bolts", _SEAM, demand, capacity, "N/mm",
                  clause, steps.lines)  # fmt: skip


@limit_state(
    "splice-gross-yield", title="Yield of the splice plates over the seam", effort="closed-form"
)
def splice_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the splice plates' gross section over the seam, bending of one-sided plates included."""
    return [_splice(jacket, code, rupture=False) for code in US_CODES]


@limit_state("splice-net-rupture", title="Net section of the splice plates", effort="closed-form")
def splice_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the splice plates through the bolt line next to the seam."""
    return [_splice(jacket, code, rupture=True) for code in US_CODES]


def _splice(jacket: Jacket, code: SteelCode, *, rupture: bool) -> Result:
    steps, splice = Steps(), jacket.splice
    clause = f"{code.name} {code.rupture_clause if rupture else code.yield_clause}"
    demand = add_hoop_force(jacket, steps)
    _add_steel(steps, splice.steel)
    steel_strength = splice.steel.tensile_strength if rupture else splice.steel.yield_strength
    ratio: Real = 1.0
    if rupture:
        ratio = _net_ratio(jacket, steps, code, splice_plate=True)
        hole_factor = steps.add(
            "R_p", f"{jacket.bolts.hole_making} holes", code.hole_factor(jacket), "1", clause
        )
        steel_strength = np.multiply(steel_strength, hole_factor)
    eccentricity = steps.add("e", "sleeve to plate, mid-planes; 0 with plates on both sides",
                             splice_eccentricity(jacket), "mm", "statics")  # fmt: skip
    outside, inside = splice_shares(jacket)
    steps.add("share", "outside plate", outside, "1", "statics, no bending")
    by_outside = (
        splice_bending.eccentric_splice_strength(
            splice.outside_thickness,
            steel_strength=steel_strength,
            eccentricity=eccentricity,
            net_ratio=ratio,
        )
        / outside
    )
    by_inside = np.where(
        np.greater(inside, 0.0),
        np.multiply(steel_strength, splice.inside_thickness) * ratio / np.maximum(inside, 1e-9),
        np.inf,
    )
    nominal = np.minimum(by_outside, by_inside)
    factor = code.rupture if rupture else code.tension_yield
    expression = "N_p / (√(1 + 4q²) + 2q) / share, q = e/t"
    capacity = _factored(steps, expression, nominal, factor, "N/mm", clause)
    title = (
        "Net section of the splice plates"
        if rupture
        else "Yield of the splice plates over the seam"
    )
    notes = (_ONE_SIDED,) if np.any(np.greater(eccentricity, 0.0)) else ()
    return Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines, notes)


@limit_state("seam-block-shear", title="Block shear at the seam", effort="closed-form")
def seam_block_shear(jacket: Jacket) -> list[Result]:
    """Block shear of the sleeve and of each splice plate, per bolt row."""
    return [row for code in US_CODES for row in _block_rows(jacket, code)]


def _block_rows(jacket: Jacket, code: SteelCode) -> list[Result]:
    splice, bolts = jacket.splice, jacket.bolts
    return [
        _block_row(jacket, code, "sleeve", jacket.sleeve.steel, jacket.sleeve.thickness,
                   bolts.seam_edge_distance),
        _block_row(jacket, code, "splice plates", splice.steel, effective_splice_thickness(jacket),
                   bolts.plate_edge_distance),
    ]  # fmt: skip


def _block_row(
    jacket: Jacket, code: SteelCode, plate: str, steel: Plate, thickness: Real, edge: Real
) -> Result:
    steps, bolts = Steps(), jacket.bolts
    clause = f"{code.name} {code.block_clause}"
    add_bolt_force(jacket, steps)
    demand = steps.add("N_row", "V n_c", hoop_demand(jacket).bolt_force * bolts.columns, "N",
                       "equilibrium of a half shell")  # fmt: skip
    _add_steel(steps, steel)
    steps.add("t", plate, thickness, "mm", "input; splice plates: smallest t over share")
    blocks = block_shear.seam_blocks(
        rows=bolts.rows,
        columns=bolts.columns,
        pitch=bolts.pitch,
        gauge=bolts.gauge,
        edge_distance=edge,
        end_distance=bolts.end_distance,
        thickness=thickness,
        hole_along=bolts.hole_along,
        hole_across=bolts.hole_across,
        damage=code.hole_damage(jacket),
    )
    if code.is_aashto:
        strength = partial(
            block_shear.aashto_block_shear_resistance,
            yield_strength=steel.yield_strength,
            tensile_strength=steel.tensile_strength,
            hole_factor=code.hole_factor(jacket),
        )
    else:
        strength = partial(
            block_shear.aisc_block_shear_strength,
            yield_strength=steel.yield_strength,
            tensile_strength=steel.tensile_strength,
        )
    for name, block in blocks.items():
        steps.add(f"R_n ({name})", "min(rupture, yield in shear) + rupture in tension",
                  np.divide(strength(block.areas), block.rows), "N", f"{clause}, per row")  # fmt: skip
    nominal = block_shear.seam_block_shear_strength(blocks, strength)
    capacity = _factored(steps, "smallest", nominal, code.block, "N", clause)
    return Result("Block shear at the seam", plate, demand, capacity, "N", clause, steps.lines)


def _add_steel(steps: Steps, steel: Plate) -> None:
    steps.add("F_y", steel.name, steel.yield_strength, "MPa", steel.source)
    steps.add("F_u", steel.name, steel.tensile_strength, "MPa", steel.source)


def _factored(
    steps: Steps, expression: str, nominal: Real, factor: float, unit: str, clause: str
) -> Real:
    steps.add("R_n", expression, nominal, unit, clause)
    steps.add("φ", "resistance factor", factor, "1", clause)
    return steps.add("φR_n", "φ R_n", np.multiply(factor, nominal), unit, clause)


def _net_ratio(jacket: Jacket, steps: Steps, code: SteelCode, *, splice_plate: bool) -> Real:
    """Net over gross height of the weakest strip with one row."""
    bolts = jacket.bolts
    strip = steps.add("h", "min(s, e_end + s/2)",
                      plate_strength.seam_strip_width(pitch=bolts.pitch,
                                                      end_distance=bolts.end_distance),
                      "mm", "geometry")  # fmt: skip
    steps.add(
        "h_c", f"{bolts.hole} hole across the force", bolts.hole_across, "mm", bolts.hole_source
    )
    damage = steps.add("Δh", "damage allowance", code.hole_damage(jacket), "mm",
                       f"{code.name} {'6.8.3' if code.is_aashto else 'B4.3b'}")  # fmt: skip
    net = plate_strength.net_width(strip, hole_count=1, hole=bolts.hole_across, damage=damage)
    if splice_plate:
        net = plate_strength.effective_net_area(net, gross_area=strip)
    limit = " ≤ 0.85" if splice_plate else ""
    return steps.add("A_e/A_g", f"(h − h_c − Δh)/h{limit}", net / strip, "1", "geometry")
