"""Sleeve and splice plates at the seam: yield, net section, and block shear."""

from __future__ import annotations

from functools import partial
from typing import Final

import numpy as np

from jacketcheck.mechanics.block_shear import seam_block_shear_strength, seam_blocks
from jacketcheck.mechanics.plate_strength import net_width, seam_strip_width
from jacketcheck.plugin import (
    Hole,
    Jacket,
    LimitState,
    Plate,
    Real,
    Result,
    Steps,
    add_hoop_force,
    add_row_force,
    effective_splice_thickness,
    limit_state,
    splice_eccentricity,
    splice_shares,
    splice_strength,
)
from jacketcheck_australasia.codes import SteelCode
from jacketcheck_australasia.limit_states._rows import add_steel, factored
from jacketcheck_australasia.mechanics.plate_strength import (
    BLOCK_SHEAR_CAPACITY_FACTOR,
    TENSION_CAPACITY_FACTOR,
    block_shear_capacity,
    gross_yield_capacity,
    net_fracture_capacity,
)

__all__ = [
    "seam_block_shear",
    "sleeve_gross_yield",
    "sleeve_net_rupture",
    "splice_gross_yield",
    "splice_net_rupture",
]

_SEAM: Final = "seam, per height"
_BLOCK: Final = "Block shear at the seam"
_EFFORT: Final = "closed-form"
_BLOCK_RULE: Final = "0.6 min(f_u A_nv, f_y A_gv) + k_bs f_u A_nt, k_bs = 1"
_ONE_SIDED: Final = (
    "plates outside only: the hoop force bends them, and all of the couple is taken by the plate "
    "(engineering judgement, lower bound); plates on both sides avoid it"
)


def sleeve_gross_yield(code: SteelCode) -> LimitState:
    """Yield of the sleeve's gross section under the seam force."""
    title = "Gross yield of the sleeve at the seam"

    @limit_state("sleeve-gross-yield", title=title, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, sleeve, clause = Steps(), jacket.sleeve, code.clause(code.tension)
        demand = add_hoop_force(jacket, steps)
        add_steel(steps, sleeve.steel)
        nominal = gross_yield_capacity(sleeve.steel.yield_strength, gross_area=sleeve.thickness)
        steps.add("N_t", "t f_y", nominal, "N/mm", clause)
        capacity = _in_tension(steps, nominal, clause)
        return [Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines)]

    return evaluate


def sleeve_net_rupture(code: SteelCode) -> LimitState:
    """Fracture of the sleeve through a bolt line."""
    title = "Net section of the sleeve at the bolts"

    @limit_state("sleeve-net-rupture", title=title, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, sleeve, clause = Steps(), jacket.sleeve, code.clause(code.tension)
        demand = add_hoop_force(jacket, steps)
        add_steel(steps, sleeve.steel)
        ratio = _add_net_ratio(jacket, jacket.sleeve.hole, steps)
        nominal = net_fracture_capacity(
            sleeve.steel.tensile_strength, net_area=np.multiply(ratio, sleeve.thickness)
        )
        steps.add("N_t", "0.85 k_t t (A_n/A_g) f_u, k_t = 1", nominal, "N/mm", clause)
        capacity = _in_tension(steps, nominal, clause)
        return [Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines)]

    return evaluate


def splice_gross_yield(code: SteelCode) -> LimitState:
    """Yield of the splice plates over the seam, bending of one-sided plates included."""
    title = "Yield of the splice plates over the seam"

    @limit_state("splice-gross-yield", title=title, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        steps = Steps()
        demand = add_hoop_force(jacket, steps)
        add_steel(steps, jacket.splice.steel)
        strength = jacket.splice.steel.yield_strength
        return [_splice(jacket, steps, title, demand=demand, stress=strength, code=code)]

    return evaluate


def splice_net_rupture(code: SteelCode) -> LimitState:
    """Fracture of the splice plates through the bolt line next to the seam."""
    title = "Net section of the splice plates"

    @limit_state("splice-net-rupture", title=title, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, steel = Steps(), jacket.splice.steel
        demand = add_hoop_force(jacket, steps)
        add_steel(steps, steel)
        ratio = _add_net_ratio(jacket, jacket.splice.hole, steps)
        # the stress that the net section reaches, so that bending counts with it as well
        stress = steps.add("0.85f_u", "0.85 k_t f_u, k_t = 1",
                           net_fracture_capacity(steel.tensile_strength, net_area=1.0),
                           "MPa", code.clause(code.tension))  # fmt: skip
        return [
            _splice(jacket, steps, title, demand=demand, stress=stress, net_ratio=ratio, code=code)
        ]

    return evaluate


def _splice(
    jacket: Jacket,
    steps: Steps,
    title: str,
    *,
    demand: Real,
    stress: Real,
    net_ratio: Real = 1.0,
    code: SteelCode,
) -> Result:
    """The plate that is worked harder, with the bending of plates on one side only."""
    clause = code.clause(code.tension)
    eccentricity = steps.add("e", "sleeve to plate, mid-planes; 0 with plates on both sides",
                             splice_eccentricity(jacket), "mm", "statics")  # fmt: skip
    steps.add("share", "outside plate", splice_shares(jacket)[0], "1", "statics, no bending")
    strength = splice_strength(jacket, stress=stress, net_ratio=net_ratio)
    nominal = steps.add("N_t", "N_p/(√(1 + 4q²) + 2q)/share, q = e/t",
                        strength.least, "N/mm", clause)  # fmt: skip
    capacity = _in_tension(steps, nominal, clause)
    notes = (_ONE_SIDED,) if np.any(np.greater(eccentricity, 0.0)) else ()
    return Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines, notes)


def _in_tension(steps: Steps, nominal: Real, clause: str) -> Real:
    return factored(
        steps, "N_t", nominal, factor=TENSION_CAPACITY_FACTOR, unit="N/mm", clause=clause
    )


def _add_net_ratio(jacket: Jacket, ply: Hole, steps: Steps) -> Real:
    """Net over gross height of the weakest strip with one row."""
    bolts = jacket.bolts
    height = seam_strip_width(pitch=bolts.pitch, end_distance=bolts.end_distance)
    steps.add("h", "min(s, e_end + s/2)", height, "mm", "geometry")
    steps.add("d_h", f"{ply.kind} hole across the force", ply.across, "mm", ply.source)
    net = net_width(height, hole_count=1, hole=ply.across, damage=0.0)
    return steps.add("A_n/A_g", "(h − d_h)/h", np.divide(net, height), "1", "geometry")


def seam_block_shear(code: SteelCode) -> LimitState:
    """Block shear of the sleeve and of the splice plates, per bolt row; AS 4100 only."""

    @limit_state("seam-block-shear", title=_BLOCK, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
        clause = code.clause("9.1.9")
        return [
            _block_row(
                jacket,
                "sleeve",
                steel=sleeve.steel,
                thickness=sleeve.thickness,
                edge=bolts.seam_edge_distance,
                hole=sleeve.hole,
                clause=clause,
            ),
            _block_row(
                jacket,
                "splice plates",
                steel=splice.steel,
                thickness=effective_splice_thickness(jacket),
                edge=bolts.plate_edge_distance,
                hole=splice.hole,
                clause=clause,
            ),
        ]

    return evaluate


def _block_row(
    jacket: Jacket,
    plate: str,
    *,
    steel: Plate,
    thickness: Real,
    edge: Real,
    hole: Hole,
    clause: str,
) -> Result:
    steps, bolts = Steps(), jacket.bolts
    demand = add_row_force(jacket, steps)
    add_steel(steps, steel)
    steps.add("t", plate, thickness, "mm", "input; splice plates: smallest t over share")
    blocks = seam_blocks(
        rows=bolts.rows,
        columns=bolts.columns,
        pitch=bolts.pitch,
        gauge=bolts.gauge,
        edge_distance=edge,
        end_distance=bolts.end_distance,
        thickness=thickness,
        hole_along=hole.along,
        hole_across=hole.across,
        damage=0.0,
    )
    capacity_of = partial(
        block_shear_capacity,
        yield_strength=steel.yield_strength,
        tensile_strength=steel.tensile_strength,
    )
    for name, block in blocks.items():
        one = np.divide(capacity_of(block.areas), block.rows)
        steps.add(f"R_bs ({name})", _BLOCK_RULE, one, "N", f"{clause}, per row")
    nominal = seam_block_shear_strength(blocks, capacity_of)
    steps.add("R_bs", "smallest", nominal, "N", clause)
    capacity = factored(
        steps, "R_bs", nominal, factor=BLOCK_SHEAR_CAPACITY_FACTOR, unit="N", clause=clause
    )
    return Result(_BLOCK, plate, demand, capacity, "N", clause, steps.lines)
