"""Seam bolts in shear, and the plates that they bear on."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.bolt_strength import seam_joint_length
from jacketcheck.plugin import (
    Jacket,
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
from jacketcheck_india.codes import BEARING_BOLT_FACTOR, is_800
from jacketcheck_india.limit_states._rows import HARDEST_ROW, divided
from jacketcheck_india.mechanics.bolt_bearing import (
    bearing_capacity,
    bearing_factor,
    bearing_hole_factor,
)
from jacketcheck_india.mechanics.bolt_strength import (
    LARGEST_GRIP,
    bolt_shear_capacity,
    grip_factor,
    long_joint_factor,
    packing_factor,
)

__all__ = ["seam_bolt_row", "seam_bolt_shear", "sleeve_bearing", "splice_bearing"]

_SHEAR: Final = "Shear of the seam bolts"
_SLEEVE: Final = "Bearing and tear-out of the sleeve at the bolts"
_SPLICE: Final = "Bearing and tear-out of the splice plates at the bolts"
_ROW: Final = "Strength of a bolt row"
_SHEAR_CLAUSE: Final = is_800("10.3.3")
_BEARING_CLAUSE: Final = is_800("10.3.4")


@limit_state("seam-bolt-shear", title=_SHEAR, provisions="india",
             monotonic={"bolts.tensile_strength": 0}, effort="closed-form")  # fmt: skip
def seam_bolt_shear(jacket: Jacket) -> list[Result]:
    """Shear of one bolt through all its planes."""
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    capacity = _add_shear(jacket, steps)
    return [Result(_SHEAR, HARDEST_ROW, demand, capacity, "N", _SHEAR_CLAUSE, steps.lines)]


@limit_state("sleeve-bearing", title=_SLEEVE, provisions="india",
             monotonic={"bolts.seam_edge_distance": 0}, effort="closed-form")  # fmt: skip
def sleeve_bearing(jacket: Jacket) -> list[Result]:
    """Bearing of the sleeve, with the smallest k_b of the row for each of its bolts."""
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    capacity = _add_sleeve_bearing(jacket, steps)
    return [Result(_SLEEVE, HARDEST_ROW, demand, capacity, "N", _BEARING_CLAUSE, steps.lines)]


@limit_state("splice-bearing", title=_SPLICE, provisions="india",
             monotonic={"bolts.plate_edge_distance": 0}, effort="closed-form")  # fmt: skip
def splice_bearing(jacket: Jacket) -> list[Result]:
    """Bearing of the splice plate that takes most for its thickness."""
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    capacity = _add_splice_bearing(jacket, steps)
    return [Result(_SPLICE, HARDEST_ROW, demand, capacity, "N", _BEARING_CLAUSE, steps.lines)]


@limit_state("seam-bolt-row", title=_ROW, provisions="india",
             monotonic={"bolts.tensile_strength": 0}, effort="closed-form")  # fmt: skip
def seam_bolt_row(jacket: Jacket) -> list[Result]:
    """A row of bolts that share its force alike, each with the least of its capacities."""
    steps = Steps()
    demand = add_row_force(jacket, steps)
    plates = np.minimum(
        _add_sleeve_bearing(jacket, steps), _add_splice_bearing(jacket, steps, "V_dpb,p")
    )
    least = np.minimum(_add_shear(jacket, steps), plates)
    capacity = steps.add("V_row", "n_c min(V_dsb, V_dpb, V_dpb,p)",
                         np.multiply(jacket.bolts.columns, least), "N",
                         is_800("10.3.2"))  # fmt: skip
    clause = f"{_SHEAR_CLAUSE}, 10.3.4"
    return [Result(_ROW, HARDEST_ROW, demand, capacity, "N", clause, steps.lines)]


def _add_shear(jacket: Jacket, steps: Steps) -> Real:
    bolts = jacket.bolts
    included = bolts.threads == "included"
    counted = "A_nb" if included else "A_sb"
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.figure("f_ub", bolts.product, bolts, "tensile_strength", "MPa")
    if included:
        steps.figure(counted, "threads included", bolts, "tensile_stress_area", "mm2")
    else:
        steps.add(counted, "π d²/4", bolts.area, "mm2", "shank, threads excluded")
    permitted = np.less_equal(np.divide(jacket.grip, bolts.diameter), LARGEST_GRIP)
    reduction = _add_reduction(jacket, steps, permitted)
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
        net_area=bolts.tensile_stress_area,
        threads=bolts.threads,
        shear_planes=effective_planes(jacket),
        reduction=reduction,
    )
    packed = " β_pk" if np.any(np.greater(jacket.splice.filler_thickness, 0.0)) else ""
    steps.add("V_nsb", f"f_ub/√3 n {counted} β_lj β_lg{packed}", nominal, "N", _SHEAR_CLAUSE)
    return only_valid(_divided(steps, "V_nsb", nominal, "V_dsb", _SHEAR_CLAUSE), permitted)


def _add_reduction(jacket: Jacket, steps: Steps, permitted: Real) -> Real:
    """Factors for a long joint, a large grip, and packings where there are any."""
    bolts = jacket.bolts
    length = seam_joint_length(columns=bolts.columns, gauge=bolts.gauge)
    joint = long_joint_factor(length, diameter=bolts.diameter)
    grip = grip_factor(
        within_range(jacket.grip, permitted, 1.0), diameter=bolts.diameter, long_joint_factor=joint
    )
    steps.add("g", "spacing of the columns, 0 of one", bolts.gauge, "mm", "input bolts.gauge")
    steps.add("l_j", "(n_c − 1) g", length, "mm", "geometry")
    steps.add("l_g", "plates, at most 8 d", jacket.grip, "mm", "geometry")
    steps.add("β_lj", "min(max(1.075 − l_j/(200 d), 0.75), 1)", joint, "1", is_800("10.3.3.1"))
    steps.add("β_lg", "8 d/(3 d + l_g) ≤ β_lj for l_g > 5 d", grip, "1", is_800("10.3.3.2"))
    packing = packing_factor(jacket.splice.filler_thickness)
    if np.any(np.greater(jacket.splice.filler_thickness, 0.0)):
        steps.add("t_pk", "all packings", jacket.splice.filler_thickness, "mm",
                  "input splice.filler_thickness")  # fmt: skip
        steps.add("β_pk", "1 − 0.0125 t_pk above 6 mm", packing, "1", is_800("10.3.3.3"))
    return np.multiply(joint, grip) * packing


def _add_sleeve_bearing(jacket: Jacket, steps: Steps) -> Real:
    sleeve = jacket.sleeve
    thickness = steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    return _add_bearing(
        jacket,
        steps,
        ply=sleeve,
        thickness=thickness,
        edge=jacket.bolts.seam_edge_distance,
        edge_source="input bolts.seam_edge_distance",
        design="V_dpb",
    )


def _add_splice_bearing(jacket: Jacket, steps: Steps, design: str = "V_dpb") -> Real:
    thickness = effective_splice_thickness(jacket)
    steps.add("t", "splice plates: smallest of t over share", thickness, "mm", "statics")
    return _add_bearing(
        jacket,
        steps,
        ply=jacket.splice,
        thickness=thickness,
        edge=jacket.bolts.plate_edge_distance,
        edge_source="input bolts.plate_edge_distance",
        design=design,
    )


def _add_bearing(
    jacket: Jacket,
    steps: Steps,
    *,
    ply: Sleeve | Splice,
    thickness: Real,
    edge: Real,
    edge_source: str,
    design: str,
) -> Real:
    """Design capacity of a plate at each bolt, by the row's smallest k_b [N]."""
    bolts, steel = jacket.bolts, ply.steel
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.figure("f_ub", bolts.product, bolts, "tensile_strength", "MPa")
    steps.figure("f_u", steel.name, steel, "tensile_strength", "MPa")
    steps.add("e", "edge distance along the force", edge, "mm", edge_source)
    steps.figure("d_0", f"{ply.hole.kind} hole along the force", ply.hole, "along", "mm")
    several = bool(np.any(np.greater(bolts.columns, 1)))
    if several:
        steps.add("p", "spacing of the columns", bolts.gauge, "mm", "input bolts.gauge")
    factor = bearing_factor(
        end_distance=edge,
        # without a neighbour its distance does not count
        pitch=np.where(np.greater(bolts.columns, 1), bolts.gauge, np.inf),
        hole=ply.hole.along,
        bolt_strength=bolts.tensile_strength,
        plate_strength=steel.tensile_strength,
    )
    rule = f"min(e/(3 d_0), {'p/(3 d_0) − 0.25, ' if several else ''}f_ub/f_u, 1)"
    steps.add("k_b", rule, factor, "1", _BEARING_CLAUSE)
    hole = bearing_hole_factor(ply.hole.kind)
    steps.add("k_h", f"{ply.hole.kind} hole", hole, "1", _BEARING_CLAUSE)
    nominal = bearing_capacity(
        bolts.diameter,
        thickness=thickness,
        plate_strength=steel.tensile_strength,
        bearing_factor=factor,
        hole_factor=hole,
    )
    steps.add("V_npb", "2.5 k_b k_h d t f_u", nominal, "N", _BEARING_CLAUSE)
    return _divided(steps, "V_npb", nominal, design, _BEARING_CLAUSE)


def _divided(steps: Steps, symbol: str, nominal: Real, design: str, clause: str) -> Real:
    return divided(
        steps,
        symbol,
        nominal,
        design=design,
        factor=("γ_mb", BEARING_BOLT_FACTOR),
        unit="N",
        clause=clause,
    )
