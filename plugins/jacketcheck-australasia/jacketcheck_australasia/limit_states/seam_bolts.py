"""Seam bolts in shear, and the plies that they bear on."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.bolt_strength import seam_joint_length
from jacketcheck.plugin import (
    Hole,
    Jacket,
    LimitState,
    Real,
    Result,
    Sleeve,
    Splice,
    Steps,
    add_bolt_force,
    add_row_force,
    effective_planes,
    effective_splice_thickness,
    limit_state,
    only_valid,
    within_range,
)
from jacketcheck_australasia.codes import SteelCode
from jacketcheck_australasia.limit_states._rows import HARDEST_ROW, factored
from jacketcheck_australasia.mechanics.bolt_strength import (
    BOLT_CAPACITY_FACTOR,
    THICKEST_FILLER,
    bolt_shear_capacity,
    core_area,
    ductility_factor,
    filler_plate_factor,
    lap_length_factor,
)
from jacketcheck_australasia.mechanics.ply_bearing import (
    PLY_CAPACITY_FACTOR,
    ply_bearing_capacity,
    tear_out_distance_between_holes,
    tear_out_distance_to_edge,
)

__all__ = ["seam_bolt_row", "seam_bolt_shear", "sleeve_bearing", "splice_bearing"]

_SHEAR: Final = "Shear of the seam bolts"
_ROW: Final = "Strength of a bolt row"


def seam_bolt_shear(code: SteelCode) -> LimitState:
    """Shear of one bolt through all its planes."""

    @limit_state(
        "seam-bolt-shear",
        title=_SHEAR,
        provisions=code.provisions,
        monotonic={"bolts.tensile_strength": 0},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, clause = Steps(), code.clause(code.shear)
        demand = add_bolt_force(jacket, steps)
        capacity = _add_shear(jacket, steps, code)
        return [Result(_SHEAR, HARDEST_ROW, demand, capacity, "N", clause, steps.lines)]

    return evaluate


def sleeve_bearing(code: SteelCode) -> LimitState:
    """Bearing and tear-out of the sleeve at the bolt that has least."""
    title = "Bearing and tear-out of the sleeve at the bolts"

    @limit_state(
        "sleeve-bearing",
        title=title,
        provisions=code.provisions,
        monotonic={"bolts.seam_edge_distance": 0},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, clause = Steps(), code.clause(code.bearing)
        demand = add_bolt_force(jacket, steps)
        capacity = _add_sleeve_bearing(jacket, steps, code)
        return [Result(title, HARDEST_ROW, demand, capacity, "N", clause, steps.lines)]

    return evaluate


def splice_bearing(code: SteelCode) -> LimitState:
    """Bearing and tear-out of the splice plate that takes most for its thickness."""
    title = "Bearing and tear-out of the splice plates at the bolts"

    @limit_state(
        "splice-bearing",
        title=title,
        provisions=code.provisions,
        monotonic={"bolts.plate_edge_distance": 0},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, clause = Steps(), code.clause(code.bearing)
        demand = add_bolt_force(jacket, steps)
        capacity = _add_splice_bearing(jacket, steps, code)
        return [Result(title, HARDEST_ROW, demand, capacity, "N", clause, steps.lines)]

    return evaluate


def seam_bolt_row(code: SteelCode) -> LimitState:
    """A row of bolts that share its force alike, each with the least of its capacities."""

    @limit_state(
        "seam-bolt-row",
        title=_ROW,
        provisions=code.provisions,
        monotonic={"bolts.tensile_strength": 0},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        steps, columns = Steps(), jacket.bolts.columns
        clause = f"{code.clause(code.shear)}, {code.bearing}"
        demand = add_row_force(jacket, steps)
        shear = _add_shear(jacket, steps, code)
        sleeve = _add_sleeve_bearing(jacket, steps, code)
        splice = _add_splice_bearing(jacket, steps, code, "V_b,p")
        least = np.minimum(shear, np.minimum(sleeve, splice))
        alike = "bolts in line with the force share it alike"
        capacity = steps.add(
            "φR_row", "n_c min(φV_f, φV_b, φV_b,p)", np.multiply(columns, least), "N", alike
        )
        return [Result(_ROW, HARDEST_ROW, demand, capacity, "N", clause, steps.lines)]

    return evaluate


def _add_shear(jacket: Jacket, steps: Steps, code: SteelCode) -> Real:
    bolts, clause = jacket.bolts, code.clause(code.shear)
    length = seam_joint_length(columns=bolts.columns, gauge=bolts.gauge)
    core = core_area(
        bolts.diameter, tensile_stress_area=bolts.tensile_stress_area, metric=bolts.metric
    )
    steps.figure("f_uf", bolts.product, bolts, "tensile_strength", "MPa")
    counted = "A_c" if bolts.threads == "included" else "A_o"
    if bolts.threads == "included":
        steps.add(counted, "core, threads included", core, "mm2", "AS 1275-1985")
    else:
        steps.figure("d_f", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
        steps.add(counted, "π d_f²/4", bolts.area, "mm2", "shank, threads excluded")
    reduction = lap_length_factor(length)
    steps.add("g", "spacing of the columns, 0 of one", bolts.gauge, "mm", "input bolts.gauge")
    steps.add("l_j", "(n_c − 1) g", length, "mm", "geometry")
    steps.add("k_r", "min(max(1.075 − l_j/4000, 0.75), 1)", reduction, "1", clause)
    ductility: Real = 1.0
    rule = f"0.62 f_uf k_r n {counted}"
    if code.reduces_strong_bolts:
        ductility = ductility_factor(bolts.tensile_strength, threads=bolts.threads)
        steps.add("k_rd", "0.83 for class 10.9 with threads in the plane; 1 up to class 8.8",
                  ductility, "1", clause)  # fmt: skip
        rule = f"0.62 f_uf k_r k_rd n {counted}"
    steps.add(
        "n",
        "shear planes, by the largest share",
        effective_planes(jacket),
        "1",
        "statics of the plates",
    )
    nominal = bolt_shear_capacity(
        bolts.tensile_strength,
        shank_area=bolts.area,
        core_area=core,
        threads=bolts.threads,
        shear_planes=effective_planes(jacket),
        lap_length_factor=reduction,
        ductility_factor=ductility,
    )
    thickness = jacket.splice.filler_thickness
    covered = np.less_equal(thickness, THICKEST_FILLER)
    factor = filler_plate_factor(within_range(thickness, covered, 0.0))
    if np.any(np.greater(thickness, 0.0)):
        steps.add("t_f", "all fillers", thickness, "mm", "input splice.filler_thickness")
        steps.add("k_f", "0.85 above 6 mm, up to 20 mm", factor, "1", clause)
        rule += " k_f"
    nominal = only_valid(np.multiply(factor, nominal), covered)
    steps.add("V_f", rule, nominal, "N", clause)
    return factored(steps, "V_f", nominal, factor=BOLT_CAPACITY_FACTOR, unit="N", code=code,
                    clause=clause)  # fmt: skip


def _add_sleeve_bearing(jacket: Jacket, steps: Steps, code: SteelCode) -> Real:
    sleeve = jacket.sleeve
    thickness = steps.add("t_p", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    edge = jacket.bolts.seam_edge_distance
    return _add_bearing(jacket, steps, code=code, ply=sleeve, thickness=thickness, edge=edge)


def _add_splice_bearing(jacket: Jacket, steps: Steps, code: SteelCode, symbol: str = "V_b") -> Real:
    thickness = effective_splice_thickness(jacket)
    steps.add("t_p", "splice plates: smallest of t over share", thickness, "mm", "statics")
    edge = jacket.bolts.plate_edge_distance
    return _add_bearing(
        jacket, steps, code=code, ply=jacket.splice, thickness=thickness, edge=edge, symbol=symbol
    )


def _add_bearing(
    jacket: Jacket,
    steps: Steps,
    *,
    code: SteelCode,
    ply: Sleeve | Splice,
    thickness: Real,
    edge: Real,
    symbol: str = "V_b",
) -> Real:
    """Design capacity of a ply at the bolt with the smallest a_e [N]."""
    steel, bolts, clause = ply.steel, jacket.bolts, code.clause(code.bearing)
    steps.figure("d_f", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.figure("f_up", steel.name, steel, "tensile_strength", "MPa")
    distance = steps.add("a_e", "from hole to plate edge or next hole, and d_f/2",
                         _tear_out_distance(jacket, ply.hole, edge), "mm", clause)  # fmt: skip
    nominal = ply_bearing_capacity(
        jacket.bolts.diameter,
        thickness=thickness,
        tensile_strength=steel.tensile_strength,
        tear_out_distance=distance,
    )
    steps.add(symbol, "min(3.2 d_f, a_e) t_p f_up", nominal, "N", clause)
    return factored(steps, symbol, nominal, factor=PLY_CAPACITY_FACTOR, unit="N", code=code,
                    clause=clause)  # fmt: skip


def _tear_out_distance(jacket: Jacket, hole: Hole, edge: Real) -> Real:
    """Smaller a_e of the bolt next to the edge and of an inner one, where there is one [mm]."""
    bolts = jacket.bolts
    to_edge = tear_out_distance_to_edge(edge, hole=hole.along, diameter=bolts.diameter)
    several = np.greater(bolts.columns, 1)
    # with one column any spacing serves: it is not counted
    spacing = np.where(several, bolts.gauge, 2.0 * np.asarray(hole.along))
    between = tear_out_distance_between_holes(spacing, hole=hole.along, diameter=bolts.diameter)
    return np.where(several, np.minimum(to_edge, between), to_edge)
