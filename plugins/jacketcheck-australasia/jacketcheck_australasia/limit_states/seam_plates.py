"""Sleeve and splice plates at the seam: yield, net section, and block shear."""

from __future__ import annotations

from functools import partial
from typing import Final

import numpy as np

from jacketcheck.mechanics.block_shear import seam_block_shear_strength, seam_blocks
from jacketcheck.mechanics.plate_strength import net_width
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
    add_splice_strength,
    effective_splice_thickness,
    limit_state,
    splice_eccentricity,
)
from jacketcheck_australasia.codes import SteelCode
from jacketcheck_australasia.limit_states._rows import add_steel, add_strip, factored
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
_BLOCK_RULE: Final = "(0.6 min(f_u A_nv, f_y A_gv) + k_bs f_u A_nt)/n_r"
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
        steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
        nominal = gross_yield_capacity(sleeve.steel.yield_strength, gross_area=sleeve.thickness)
        steps.add("N_t", "t f_y", nominal, "N/mm", clause)
        capacity = _in_tension(steps, nominal, code)
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
        steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
        steps.add("k_t", "force spread evenly over the section", 1.0, "1", code.clause("7.3"))
        steps.add("N_t", "0.85 k_t t (A_n/A_g) f_u", nominal, "N/mm", clause)
        capacity = _in_tension(steps, nominal, code)
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
        steps.add("f", "f_y", strength, "MPa", "gross section")
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
        steps.add("k_t", "force spread evenly over the section", 1.0, "1", code.clause("7.3"))
        stress = steps.add("f", "0.85 k_t (A_n/A_g) f_u",
                           net_fracture_capacity(steel.tensile_strength, net_area=ratio),
                           "MPa", code.clause(code.tension))  # fmt: skip
        return [_splice(jacket, steps, title, demand=demand, stress=stress, code=code)]

    return evaluate


def _splice(
    jacket: Jacket,
    steps: Steps,
    title: str,
    *,
    demand: Real,
    stress: Real,
    code: SteelCode,
) -> Result:
    """The plate that is worked harder, with the bending of plates on one side only."""
    clause = code.clause(code.tension)
    nominal = add_splice_strength(jacket, steps, stress=stress, symbol="N_t", clause=clause)
    capacity = _in_tension(steps, nominal, code)
    notes = (_ONE_SIDED,) if np.any(np.greater(splice_eccentricity(jacket), 0.0)) else ()
    return Result(title, _SEAM, demand, capacity, "N/mm", clause, steps.lines, notes)


def _in_tension(steps: Steps, nominal: Real, code: SteelCode) -> Real:
    return factored(
        steps,
        "N_t",
        nominal,
        factor=TENSION_CAPACITY_FACTOR,
        unit="N/mm",
        code=code,
        clause=code.clause(code.tension),
    )


def _add_net_ratio(jacket: Jacket, ply: Hole, steps: Steps) -> Real:
    """Net over gross height of the weakest strip with one row."""
    height = add_strip(jacket, steps, "h")
    steps.figure("d_h", f"{ply.kind} hole across the force", ply, "across", "mm")
    net = net_width(height, hole_count=1, hole=ply.across, damage=0.0)
    return steps.add("A_n/A_g", "(h − d_h)/h", np.divide(net, height), "1", "geometry")


def seam_block_shear(code: SteelCode) -> LimitState:
    """Block shear of the sleeve and of the splice plates, per bolt row; AS 4100 only."""

    @limit_state("seam-block-shear", title=_BLOCK, provisions=code.provisions, effort=_EFFORT)
    def evaluate(jacket: Jacket) -> list[Result]:
        bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
        return [
            _block_row(
                jacket,
                "sleeve",
                steel=sleeve.steel,
                thickness=sleeve.thickness,
                edge=bolts.seam_edge_distance,
                hole=sleeve.hole,
                code=code,
            ),
            _block_row(
                jacket,
                "splice plates",
                steel=splice.steel,
                thickness=effective_splice_thickness(jacket),
                edge=bolts.plate_edge_distance,
                hole=splice.hole,
                code=code,
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
    code: SteelCode,
) -> Result:
    steps, bolts, clause = Steps(), jacket.bolts, code.clause("9.1.9")
    demand = add_row_force(jacket, steps)
    add_steel(steps, steel)
    steps.add(
        "t", plate, thickness, "mm", "input sleeve.thickness or splice.thickness over its share"
    )
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
    steps.add("k_bs", "tension spread evenly", 1.0, "1", clause)
    for name, block in blocks.items():
        areas = block.areas
        steps.add("A_gv", f"{name}: gross, in shear", areas.gross_shear, "mm2", "geometry")
        steps.add("A_nv", f"{name}: net, in shear", areas.net_shear, "mm2", "geometry")
        steps.add("A_nt", f"{name}: net, in tension", areas.net_tension, "mm2", "geometry")
        steps.add("n_r", f"{name}: its rows", block.rows, "1", "geometry")
        one = np.divide(capacity_of(block.areas), block.rows)
        steps.add(f"R_bs ({name})", _BLOCK_RULE, one, "N", f"{clause}, per row")
    nominal = seam_block_shear_strength(blocks, capacity_of)
    steps.add("R_bs", "smallest", nominal, "N", clause)
    capacity = factored(
        steps,
        "R_bs",
        nominal,
        factor=BLOCK_SHEAR_CAPACITY_FACTOR,
        unit="N",
        code=code,
        clause=clause,
    )
    return Result(_BLOCK, plate, demand, capacity, "N", clause, steps.lines)
