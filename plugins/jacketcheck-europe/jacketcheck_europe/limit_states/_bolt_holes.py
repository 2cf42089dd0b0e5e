"""Distances around the holes of a seam, bolt shear, and bearing of each bolt of a row."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from jacketcheck.mechanics.bolt_strength import seam_joint_length
from jacketcheck.plugin import Hole, Jacket, Plate, Real, Steps, effective_splice_thickness
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.mechanics import bearing, bolts
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = [
    "HoleDistances",
    "PlateAtBolts",
    "add_bearing",
    "add_bolt_shear",
    "bearing_of_plate",
    "foreign_bolts",
    "hole_distances",
    "shear_of_bolt",
    "single_lap",
    "sleeve_at_bolts",
    "splice_at_bolts",
]

_FOREIGN = (
    "engineering judgement: bolts of another standard count as the class of EN 1993-1-8 that their "
    "strength reaches, 8.8 or 10.9; assemblies of EN 14399 are meant"
)


class HoleDistances(NamedTuple):
    """Distances around the holes, from the ends of slots [mm].

    Attributes
    ----------
    hole
        d_0: diameter, of a slot its width.
    seam_edge, plate_edge
        e_1 of sleeve and splice plates.
    gauge
        p_1, between the columns; wide enough not to matter where there is one column.
    end
        e_2, first or last row to the end of the plate.
    pitch
        p_2, between the rows.
    """

    hole: Real
    seam_edge: Real
    plate_edge: Real
    gauge: Real
    end: Real
    pitch: Real


def hole_distances(jacket: Jacket, ply: Hole) -> HoleDistances:
    """Distances around the holes of a ply of the seam."""
    group = jacket.bolts
    hole = np.minimum(ply.along, ply.across)
    along = np.subtract(ply.along, hole)
    across = np.subtract(ply.across, hole)
    alone = np.less_equal(group.columns, 1)
    return HoleDistances(
        hole=hole,
        seam_edge=group.seam_edge_distance - along / 2.0,
        plate_edge=group.plate_edge_distance - along / 2.0,
        gauge=np.where(alone, 10.0 * hole, np.maximum(group.gauge - along, 0.0)),
        end=group.end_distance - across / 2.0,
        pitch=np.maximum(group.pitch - across, 0.0),
    )


class PlateAtBolts(NamedTuple):
    """A plate that bears on the bolts.

    Attributes
    ----------
    name
        As printed.
    thickness
        [mm]
    steel
        Its steel.
    end_distance
        e_1 [mm].
    hole
        Its holes.
    """

    name: str
    thickness: Real
    steel: Plate
    end_distance: Real
    hole: Hole


def sleeve_at_bolts(jacket: Jacket) -> PlateAtBolts:
    """The sleeve, which tears towards the seam."""
    sleeve = jacket.sleeve
    return PlateAtBolts(
        "sleeve",
        sleeve.thickness,
        sleeve.steel,
        hole_distances(jacket, sleeve.hole).seam_edge,
        sleeve.hole,
    )


def splice_at_bolts(jacket: Jacket) -> PlateAtBolts:
    """The splice plates as one that takes the whole force, by the harder-worked of two."""
    return PlateAtBolts(
        "splice plates",
        effective_splice_thickness(jacket),
        jacket.splice.steel,
        hole_distances(jacket, jacket.splice.hole).plate_edge,
        jacket.splice.hole,
    )


class Bearing(NamedTuple):
    """Bearing of one plate at the bolts of a row.

    Attributes
    ----------
    end_coefficient, inner_coefficient
        α_b at the bolt next to the edge and at the others.
    across
        k_1.
    end, inner
        F_b,Rd there [N].
    """

    end_coefficient: Real
    inner_coefficient: Real
    across: Real
    end: Real
    inner: Real


def bearing_of_plate(jacket: Jacket, plate: PlateAtBolts, factors: PartialFactors) -> Bearing:
    """Bearing resistance of a plate at each bolt of a row, end rows and inner rows alike."""
    group, distances = jacket.bolts, hole_distances(jacket, plate.hole)
    strengths = {
        "bolt_strength": group.tensile_strength,
        "plate_strength": plate.steel.tensile_strength,
    }
    end = bearing.end_bolt_coefficient(plate.end_distance, hole=distances.hole, **strengths)
    inner = bearing.inner_bolt_coefficient(distances.gauge, hole=distances.hole, **strengths)
    across = bearing.transverse_coefficient(
        edge_distance=distances.end, spacing=distances.pitch, hole=distances.hole
    )

    def resistance(along: Real) -> Real:
        found = bearing.bearing_resistance(
            group.diameter,
            thickness=plate.thickness,
            plate_strength=plate.steel.tensile_strength,
            along=along,
            across=across,
            partial_factor=factors.rupture,
            reduction=bearing.hole_reduction(plate.hole.kind),
        )
        return np.where(single_lap(jacket), np.minimum(found, limit), found)

    limit = bearing.single_lap_bearing_limit(
        group.diameter,
        thickness=plate.thickness,
        plate_strength=plate.steel.tensile_strength,
        partial_factor=factors.rupture,
    )
    return Bearing(end, inner, across, resistance(end), resistance(inner))


def width_figure(hole: Hole) -> str:
    """Name of the hole's dimension that is no slot's length."""
    return "across" if hole.kind.endswith("parallel") else "along"


def single_lap(jacket: Jacket) -> Real:
    """Whether the plates overlap on one side only, with one bolt in the direction of the force."""
    one_sided = np.less_equal(jacket.splice.inside_thickness, 0.0)
    return np.logical_and(one_sided, np.less_equal(jacket.bolts.columns, 1))


def add_bearing(
    jacket: Jacket, plate: PlateAtBolts, factors: PartialFactors, steps: Steps
) -> Bearing:
    """Write down how a plate bears on the bolts of a row, and return it."""
    group, distances = jacket.bolts, hole_distances(jacket, plate.hole)
    clause = f"{EN_1993_8} Table 3.4"
    found = bearing_of_plate(jacket, plate, factors)
    steps.figure("d", f"{group.product}, {group.size}", group, "diameter", "mm")
    steps.figure("f_ub", group.product, group, "tensile_strength", "MPa")
    steps.add("d_0", f"{plate.hole.kind} hole, of slots the width", distances.hole, "mm",
              plate.hole.source_of(width_figure(plate.hole)))  # fmt: skip
    steps.add(
        "t",
        plate.name,
        plate.thickness,
        "mm",
        "input sleeve.thickness; splice.thickness, smallest over its share",
    )
    steps.figure("f_u", plate.name, plate.steel, "tensile_strength", "MPa")
    steps.add("e_1", "edge distance along the force", plate.end_distance, "mm", "input")
    steps.add("α_end", "min(e_1/(3 d_0), f_ub/f_u, 1)", found.end_coefficient, "1", clause)
    if np.any(np.greater(group.columns, 1)):
        steps.add("p_1", "gauge", distances.gauge, "mm", "input bolts.gauge")
        steps.add("α_in", "min(p_1/(3 d_0) − 1/4, f_ub/f_u, 1)", found.inner_coefficient, "1",
                  clause)  # fmt: skip
    steps.add("e_2", "end distance", distances.end, "mm", "input bolts, rows and height")
    steps.add("p_2", "pitch", distances.pitch, "mm", "input bolts.pitch")
    steps.add("k_1", "min(2.8 e_2/d_0 − 1.7, 1.4 p_2/d_0 − 1.7, 2.5)", found.across, "1", clause)
    steps.add(
        "k_h", f"{plate.hole.kind} hole", bearing.hole_reduction(plate.hole.kind), "1", clause
    )
    steps.add("γ_M2", "bearing", factors.rupture, "1", f"{EN_1993_8} Table 2.1")
    limit = " ≤ 1.5 f_u d t/γ_M2, single lap with one bolt" if np.any(single_lap(jacket)) else ""
    steps.add("F_b,end", f"k_h k_1 α_end f_u d t/γ_M2{limit}", found.end, "N", clause)
    if np.any(np.greater(group.columns, 1)):
        steps.add("F_b,in", f"k_h k_1 α_in f_u d t/γ_M2{limit}", found.inner, "N", clause)
    return found


def _widest_hole(jacket: Jacket) -> Real:
    """Hole of the ply that leaves the bolt most room, of slots the width [mm]."""
    sleeve, splice = (hole_distances(jacket, ply.hole) for ply in (jacket.sleeve, jacket.splice))
    return np.maximum(sleeve.hole, splice.hole)


def shear_of_bolt(jacket: Jacket, factors: PartialFactors) -> Real:
    """Shear resistance of one bolt in one plane [N]."""
    group = jacket.bolts
    counted = bolts.high_strength_class(group.tensile_strength, threads=group.threads)
    length = seam_joint_length(columns=group.columns, gauge=group.gauge)
    return bolts.bolt_shear_resistance(
        group.tensile_stress_area if group.threads == "included" else group.area,
        tensile_strength=counted.tensile_strength,
        shear_coefficient=counted.shear_coefficient,
        partial_factor=factors.rupture,
        joint_factor=bolts.long_joint_factor(length, diameter=group.diameter)
        * bolts.packing_factor(jacket.splice.filler_thickness, diameter=group.diameter)
        * bolts.small_bolt_factor(group.diameter, hole=_widest_hole(jacket)),
    )


def add_bolt_shear(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    """Write down what the shear of a bolt rests on, and return it for one plane [N]."""
    group, clause = jacket.bolts, f"{EN_1993_8} Table 3.4"
    counted = bolts.high_strength_class(group.tensile_strength, threads=group.threads)
    length = seam_joint_length(columns=group.columns, gauge=group.gauge)
    steps.figure("d", f"{group.product}, {group.size}", group, "diameter", "mm")
    if group.threads == "included":
        steps.figure("A", "stress area", group, "tensile_stress_area", "mm2")
    else:
        steps.add("A", "π d²/4", group.area, "mm2", "shank")
    steps.add("f_ub", "as class 8.8 or 10.9", counted.tensile_strength, "MPa",
              f"{EN_1993_8} Table 3.1")  # fmt: skip
    steps.add("α_v", f"threads {group.threads}", counted.shear_coefficient, "1", clause)
    steps.add("L_j", "columns on one side of the seam", length, "mm", "input bolts.gauge")
    steps.add("β_Lf", "1 − (L_j − 15 d)/(200 d), from 0.75 to 1",
              bolts.long_joint_factor(length, diameter=group.diameter), "1",
              f"{EN_1993_8} 3.8")  # fmt: skip
    steps.add("k_d", "0.85 for M12 and M14 with 2 mm of clearance",
              bolts.small_bolt_factor(group.diameter, hole=_widest_hole(jacket)), "1",
              f"{EN_1993_8} 3.6.1(5)")  # fmt: skip
    steps.add("γ_M2", "bolts", factors.rupture, "1", f"{EN_1993_8} Table 2.1")
    packed = ""
    if np.any(np.greater(jacket.splice.filler_thickness, 0.0)):
        packing, packed = jacket.splice.filler_thickness, "β_p "
        steps.add("t_p", "all packings", packing, "mm", "input splice.filler_thickness")
        steps.add("β_p", "9 d/(8 d + 3 t_p) ≤ 1",
                  bolts.packing_factor(packing, diameter=group.diameter), "1",
                  f"{EN_1993_8} 3.6.1(12)")  # fmt: skip
    rule = f"{packed}β_Lf k_d α_v f_ub A/γ_M2"
    return steps.add("F_v,Rd", rule, shear_of_bolt(jacket, factors), "N", clause)


def foreign_bolts(jacket: Jacket) -> tuple[str, ...]:
    """What to say of bolts whose strength is not that of a class."""
    group = jacket.bolts
    counted = bolts.high_strength_class(group.tensile_strength, threads=group.threads)
    differs = np.not_equal(counted.tensile_strength, group.tensile_strength)
    return (_FOREIGN,) if np.any(differs) else ()
