"""Sleeve and splice plates at the seam: yield, net section, and block shear."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.block_shear import seam_block
from jacketcheck.mechanics.plate_strength import net_width
from jacketcheck.plugin import (
    Hole,
    Jacket,
    Plate,
    Real,
    Result,
    Steps,
    add_hoop_force,
    add_row_force,
    add_splice_strength,
    effective_splice_thickness,
    limit_state,
    splice_eccentricity,
)
from jacketcheck_india.codes import ULTIMATE_FACTOR, YIELD_FACTOR, is_800
from jacketcheck_india.limit_states._rows import add_steel, add_strip, divided
from jacketcheck_india.mechanics.plate_strength import (
    BlockAreas,
    block_shear_design_strength,
    gross_yield_capacity,
    hole_allowance,
    net_rupture_capacity,
)

__all__ = [
    "seam_block_shear",
    "sleeve_gross_yield",
    "sleeve_net_rupture",
    "splice_gross_yield",
    "splice_net_rupture",
]

_SEAM: Final = "seam, per height"
_YIELD_CLAUSE: Final = is_800("6.2")
_RUPTURE_CLAUSE: Final = is_800("6.3.1")
_BLOCK_CLAUSE: Final = is_800("6.4.1")
_SLEEVE_YIELD: Final = "Gross yield of the sleeve at the seam"
_SLEEVE_NET: Final = "Net section of the sleeve at the bolts"
_SPLICE_YIELD: Final = "Yield of the splice plates over the seam"
_SPLICE_NET: Final = "Net section of the splice plates"
_BLOCK: Final = "Block shear at the seam"
_BLOCK_RULE: Final = (
    "min(A_vg f_y/(√3 γ_m0) + 0.9 A_tn f_u/γ_m1, 0.9 A_vn f_u/(√3 γ_m1) + A_tg f_y/γ_m0)/n_r"
)
_YIELDS: Final = ("γ_m0", YIELD_FACTOR)
_RUPTURES: Final = ("γ_m1", ULTIMATE_FACTOR)
_ONE_SIDED: Final = (
    "plates outside only: the hoop force bends them, and all of the couple is taken by the plate "
    "(engineering judgement, lower bound); plates on both sides avoid it"
)


@limit_state("sleeve-gross-yield", title=_SLEEVE_YIELD, provisions="india", effort="closed-form")
def sleeve_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the sleeve's gross section under the seam force."""
    steps, sleeve = Steps(), jacket.sleeve
    demand = add_hoop_force(jacket, steps)
    add_steel(steps, sleeve.steel)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    nominal = gross_yield_capacity(sleeve.steel.yield_strength, gross_area=sleeve.thickness)
    steps.add("T_n", "t f_y", nominal, "N/mm", _YIELD_CLAUSE)
    capacity = _designed(steps, nominal, "T_dg", _YIELDS, _YIELD_CLAUSE)
    return [Result(_SLEEVE_YIELD, _SEAM, demand, capacity, "N/mm", _YIELD_CLAUSE, steps.lines)]


@limit_state("sleeve-net-rupture", title=_SLEEVE_NET, provisions="india", effort="closed-form")
def sleeve_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the sleeve through a bolt line."""
    steps, sleeve = Steps(), jacket.sleeve
    demand = add_hoop_force(jacket, steps)
    add_steel(steps, sleeve.steel)
    ratio = _add_net_ratio(jacket, jacket.sleeve.hole, steps)
    nominal = net_rupture_capacity(
        sleeve.steel.tensile_strength, net_area=np.multiply(ratio, sleeve.thickness)
    )
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    steps.add("T_n", "0.9 t (A_n/A_g) f_u", nominal, "N/mm", _RUPTURE_CLAUSE)
    capacity = _designed(steps, nominal, "T_dn", _RUPTURES, _RUPTURE_CLAUSE)
    return [Result(_SLEEVE_NET, _SEAM, demand, capacity, "N/mm", _RUPTURE_CLAUSE, steps.lines)]


@limit_state("splice-gross-yield", title=_SPLICE_YIELD, provisions="india", effort="closed-form")
def splice_gross_yield(jacket: Jacket) -> list[Result]:
    """Yield of the splice plates over the seam, bending of one-sided plates included."""
    steps, steel = Steps(), jacket.splice.steel
    demand = add_hoop_force(jacket, steps)
    add_steel(steps, steel)
    stress = steps.add("f", "f_y", steel.yield_strength, "MPa", "gross section")
    nominal = add_splice_strength(jacket, steps, stress=stress, symbol="T_n", clause=_YIELD_CLAUSE)
    capacity = _designed(steps, nominal, "T_dg", _YIELDS, _YIELD_CLAUSE)
    return [Result(_SPLICE_YIELD, _SEAM, demand, capacity, "N/mm", _YIELD_CLAUSE, steps.lines,
                   _bending_notes(jacket))]  # fmt: skip


@limit_state("splice-net-rupture", title=_SPLICE_NET, provisions="india", effort="closed-form")
def splice_net_rupture(jacket: Jacket) -> list[Result]:
    """Rupture of the splice plates through the bolt line next to the seam."""
    steps, steel, clause = Steps(), jacket.splice.steel, _RUPTURE_CLAUSE
    demand = add_hoop_force(jacket, steps)
    add_steel(steps, steel)
    ratio = _add_net_ratio(jacket, jacket.splice.hole, steps)
    # the stress that the net section reaches, so that bending counts with it as well
    stress = net_rupture_capacity(steel.tensile_strength, net_area=ratio)
    steps.add("f", "0.9 (A_n/A_g) f_u", stress, "MPa", clause)
    nominal = add_splice_strength(jacket, steps, stress=stress, symbol="T_n", clause=clause)
    capacity = _designed(steps, nominal, "T_dn", _RUPTURES, clause)
    return [Result(_SPLICE_NET, _SEAM, demand, capacity, "N/mm", clause, steps.lines,
                   _bending_notes(jacket))]  # fmt: skip


def _designed(
    steps: Steps, nominal: Real, design: str, factor: tuple[str, float], clause: str
) -> Real:
    return divided(steps, "T_n", nominal, design=design, factor=factor, unit="N/mm", clause=clause)


def _bending_notes(jacket: Jacket) -> tuple[str, ...]:
    return (_ONE_SIDED,) if np.any(np.greater(splice_eccentricity(jacket), 0.0)) else ()


def _add_net_ratio(jacket: Jacket, ply: Hole, steps: Steps) -> Real:
    """Net over gross height of the weakest strip with one row."""
    bolts, height = jacket.bolts, add_strip(jacket, steps, "b")
    allowance = hole_allowance(bolts.hole_making)
    hole = np.add(ply.across, allowance)
    steps.figure("d_0", f"{ply.kind} hole across the force", ply, "across", "mm")
    steps.add("Δ", f"{bolts.hole_making} holes", allowance, "mm", _RUPTURE_CLAUSE)
    steps.add("d_h", "d_0 + Δ", hole, "mm", _RUPTURE_CLAUSE)
    net = net_width(height, hole_count=1, hole=hole, damage=0.0)
    return steps.add("A_n/A_g", "(b − d_h)/b", np.divide(net, height), "1", "geometry")


@limit_state("seam-block-shear", title=_BLOCK, provisions="india", effort="closed-form")
def seam_block_shear(jacket: Jacket) -> list[Result]:
    """Block shear of the sleeve and of the splice plates, per bolt row."""
    bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
    return [
        _block_row(
            jacket,
            "sleeve",
            steel=sleeve.steel,
            thickness=sleeve.thickness,
            edge=bolts.seam_edge_distance,
            hole=sleeve.hole,
        ),
        _block_row(
            jacket,
            "splice plates",
            steel=splice.steel,
            thickness=effective_splice_thickness(jacket),
            edge=bolts.plate_edge_distance,
            hole=splice.hole,
        ),
    ]


def _block_row(
    jacket: Jacket, plate: str, *, steel: Plate, thickness: Real, edge: Real, hole: Hole
) -> Result:
    steps = Steps()
    demand = add_row_force(jacket, steps)
    add_steel(steps, steel)
    steps.add(
        "t", plate, thickness, "mm", "input sleeve.thickness or splice.thickness over its share"
    )
    for symbol, value in (_YIELDS, _RUPTURES):
        steps.add(symbol, "partial safety factor", value, "1", is_800("Table 5"))
    strengths = []
    for name, rows, areas in _blocks(jacket, thickness=thickness, edge=edge, hole=hole):
        strength = block_shear_design_strength(
            areas, yield_strength=steel.yield_strength, tensile_strength=steel.tensile_strength
        )
        for symbol, told, area in (
            ("A_vg", "gross, in shear", areas.gross_shear),
            ("A_vn", "net, in shear", areas.net_shear),
            ("A_tg", "gross, in tension", areas.gross_tension),
            ("A_tn", "net, in tension", areas.net_tension),
        ):
            steps.add(symbol, f"{name}: {told}", area, "mm2", "geometry")
        steps.add("n_r", f"{name}: its rows", rows, "1", "geometry")
        one = np.divide(strength, rows)
        strengths.append(steps.add(f"T_db ({name})", _BLOCK_RULE, one, "N", _BLOCK_CLAUSE))
    capacity = np.minimum.reduce(np.broadcast_arrays(*strengths))
    steps.add("T_db", "smallest, per row", capacity, "N", _BLOCK_CLAUSE)
    return Result(_BLOCK, plate, demand, capacity, "N", _BLOCK_CLAUSE, steps.lines)


def _blocks(
    jacket: Jacket, *, thickness: Real, edge: Real, hole: Hole
) -> list[tuple[str, Real, BlockAreas]]:
    """The blocks of which the weakest governs: one row and all rows, inside and at an end.

    Strength per row is the smaller of two sums that each move one way with the number of rows, so
    that no number between one and all is weaker than both.
    """
    bolts = jacket.bolts
    named: list[tuple[str, Real, bool]] = [
        ("one row", 1.0, False),
        ("all rows", bolts.rows, False),
        ("end row", 1.0, True),
        ("all rows to one end", bolts.rows, True),
    ]
    found = []
    for name, rows, at_end in named:
        areas = seam_block(
            rows,
            at_end=at_end,
            columns=bolts.columns,
            pitch=bolts.pitch,
            gauge=bolts.gauge,
            edge_distance=edge,
            end_distance=bolts.end_distance,
            thickness=thickness,
            hole_along=hole.along,
            hole_across=hole.across,
            damage=hole_allowance(bolts.hole_making),
        ).areas
        width = np.subtract(rows, 1.0) * bolts.pitch + (bolts.end_distance if at_end else 0.0)
        gross_tension = np.multiply(width, thickness)
        found.append(
            (name, rows, BlockAreas(areas.gross_shear, areas.net_shear, gross_tension,
                                    areas.net_tension))
        )  # fmt: skip
    return found
