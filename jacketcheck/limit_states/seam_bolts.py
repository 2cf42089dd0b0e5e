"""Strength of the seam bolts, and of the plates at their holes, once friction is overcome."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.hoop_demand import add_bolt_force, hoop_demand
from jacketcheck.analysis.splice import effective_splice_thickness
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._us_codes import US_CODES, SteelCode
from jacketcheck.mechanics import bolt_bearing
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bolt_bearing import HoleStrengths
from jacketcheck.results import Result, Steps

__all__ = ["seam_bolt_row", "seam_bolt_shear", "sleeve_bearing", "splice_bearing"]

_PLACE = "hardest-worked row"


@limit_state(
    "seam-bolt-shear",
    title="Shear of the seam bolts",
    monotonic={"bolts.tensile_strength": -1},
    effort="closed-form",
)
def seam_bolt_shear(jacket: Jacket) -> list[Result]:
    """Shear of one bolt through all its planes."""
    return [_bolt_shear(jacket, code) for code in US_CODES]


def _bolt_shear(jacket: Jacket, code: SteelCode) -> Result:
    steps, bolts = Steps(), jacket.bolts
    clause = f"{code.name} {code.shear_clause}"
    demand = add_bolt_force(jacket, steps)
    steps.add("A_b", "π d²/4", bolts.area, "mm2", bolts.source)
    if code.is_aashto:
        steps.add("F_ub", bolts.product, bolts.tensile_strength, "MPa", bolts.source)
    else:
        steps.add("F_nv", f"threads {bolts.threads}", bolts.shear_stress, "MPa",
                  f"{code.name} Table J3.2")  # fmt: skip
    planes = steps.add("n_s", "shear planes", jacket.splice.shear_planes, "1", "input splice.sides")
    nominal = code.bolt_shear(jacket, shear_planes=planes)
    expression = (
        f"{0.56 if bolts.threads == 'excluded' else 0.45} A_b F_ub n_s"
        if code.is_aashto
        else "F_nv A_b n_s"
    )
    steps.add("R_n", expression, nominal, "N", clause)
    steps.add("φ", "bolt shear", code.shear, "1", clause)
    capacity = steps.add("φR_n", "φ R_n", code.shear * nominal, "N", clause)
    return Result("Shear of the seam bolts", _PLACE, demand, capacity, "N", clause, steps.lines)


@limit_state("sleeve-bearing", title="Bearing and tear-out of the sleeve at the bolts",
             monotonic={"bolts.seam_edge_distance": -1}, effort="closed-form")  # fmt: skip
def sleeve_bearing(jacket: Jacket) -> list[Result]:
    """Bearing and tear-out of the sleeve towards the seam, for one row."""
    return [_sleeve_bearing(jacket, code) for code in US_CODES]


def _sleeve_bearing(jacket: Jacket, code: SteelCode) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{code.name} {code.bearing_clause}"
    demand = _row_force(jacket, steps)
    holes = _hole_strengths(
        jacket,
        steps,
        edge_distance=jacket.bolts.seam_edge_distance,
        edge_source="input bolts.seam_edge_distance",
        thickness=sleeve.thickness,
        tensile_strength=sleeve.steel.tensile_strength,
        plate="sleeve",
        clause=clause,
    )
    return _bearing_row(jacket, "sleeve", demand, holes, steps, code)


@limit_state("splice-bearing", title="Bearing and tear-out of the splice plates at the bolts",
             monotonic={"bolts.plate_edge_distance": -1}, effort="closed-form")  # fmt: skip
def splice_bearing(jacket: Jacket) -> list[Result]:
    """Bearing and tear-out of the splice plate that takes most for its thickness, for one row."""
    return [_splice_bearing(jacket, code) for code in US_CODES]


def _splice_bearing(jacket: Jacket, code: SteelCode) -> Result:
    steps = Steps()
    clause = f"{code.name} {code.bearing_clause}"
    row = _row_force(jacket, steps)
    thickness = steps.add("t_eff", "smallest of each plate's t over its share",
                          effective_splice_thickness(jacket), "mm", "statics, no bending")  # fmt: skip
    holes = _hole_strengths(
        jacket,
        steps,
        edge_distance=jacket.bolts.plate_edge_distance,
        edge_source="input bolts.plate_edge_distance",
        thickness=thickness,
        tensile_strength=jacket.splice.steel.tensile_strength,
        plate="splice plates",
        clause=clause,
    )
    return _bearing_row(jacket, "splice plates", row, holes, steps, code)


@limit_state("seam-bolt-row", title="Strength of a bolt row",
             monotonic={"bolts.tensile_strength": -1}, effort="closed-form")  # fmt: skip
def seam_bolt_row(jacket: Jacket) -> list[Result]:
    """A row of bolts with the effective strength of each: shear, sleeve and plates together."""
    return [_bolt_row(jacket, code) for code in US_CODES]


def _bolt_row(jacket: Jacket, code: SteelCode) -> Result:
    steps, splice = Steps(), jacket.splice
    clause = f"{code.name} {code.shear_clause}, {code.bearing_clause}"
    demand = _row_force(jacket, steps)
    # one factor for all parts of a path: the smaller
    factor = steps.add("φ", "min of shear and bearing", min(code.shear, code.bearing), "1", clause)
    shear = steps.add("r_v", "bolt shear, one plane", code.bolt_shear(jacket, shear_planes=1), "N",
                      f"{code.name} {code.shear_clause}")  # fmt: skip

    def holes(edge: Real, thickness: Real, strength: Real) -> HoleStrengths:
        return _holes(jacket, edge, thickness, strength)

    edge = jacket.bolts.plate_edge_distance
    strength = splice.steel.tensile_strength
    sleeve = holes(
        jacket.bolts.seam_edge_distance,
        jacket.sleeve.thickness,
        jacket.sleeve.steel.tensile_strength,
    )
    inside_present = np.greater(splice.inside_thickness, 0.0)
    inside = holes(edge, np.maximum(splice.inside_thickness, 1e-6), strength)
    nominal = bolt_bearing.seam_row_strength(
        shear,
        columns=jacket.bolts.columns,
        sleeve=sleeve,
        outside_plate=holes(edge, splice.outside_thickness, strength),
        inside_plate=HoleStrengths(
            np.where(inside_present, inside.edge, 0.0), np.where(inside_present, inside.inner, 0.0)
        ),
    )
    steps.add("R_n", "Σ min(sleeve hole, Σ min(r_v, plate hole))", nominal, "N",
              f"{code.name} {code.shear_clause}, effective strength of each bolt")  # fmt: skip
    capacity = steps.add("φR_n", "φ R_n", np.multiply(factor, nominal), "N", clause)
    return Result("Strength of a bolt row", _PLACE, demand, capacity, "N", clause, steps.lines)


def _row_force(jacket: Jacket, steps: Steps) -> Real:
    """Hoop force on the hardest-worked row [N]."""
    add_bolt_force(jacket, steps)
    return steps.add("N_row", "V n_c", hoop_demand(jacket).bolt_force * jacket.bolts.columns, "N",
                     "equilibrium of a half shell")  # fmt: skip


def _holes(
    jacket: Jacket, edge_distance: Real, thickness: Real, tensile_strength: Real
) -> HoleStrengths:
    """Nominal strength of a plate at the bolt next to its edge and at an inner bolt."""
    bolts = jacket.bolts
    to_edge = bolt_bearing.clear_distance_to_edge(edge_distance, hole=bolts.hole_along)
    # with one column there is no inner bolt; any distance serves, its strength is not counted
    spacing = np.where(
        np.greater(bolts.columns, 1), bolts.gauge, 10.0 * np.asarray(bolts.hole_along)
    )
    between = bolt_bearing.clear_distance_between_holes(spacing, hole=bolts.hole_along)

    def strength(clear: Real) -> Real:
        return bolt_bearing.hole_strength(
            bolts.diameter,
            clear_distance=clear,
            thickness=thickness,
            tensile_strength=tensile_strength,
            hole=bolts.hole,
        )

    return HoleStrengths(strength(to_edge), strength(between))


def _hole_strengths(
    jacket: Jacket,
    steps: Steps,
    *,
    edge_distance: Real,
    edge_source: str,
    thickness: Real,
    tensile_strength: Real,
    plate: str,
    clause: str,
) -> HoleStrengths:
    bolts = jacket.bolts
    steps.add("e", "edge distance", edge_distance, "mm", edge_source)
    steps.add(
        "h_a", f"{bolts.hole} hole along the force", bolts.hole_along, "mm", bolts.hole_source
    )
    steps.add("t", plate, thickness, "mm", "input")
    steps.add("F_u", plate, tensile_strength, "MPa", "catalogue")
    holes = _holes(jacket, edge_distance, thickness, tensile_strength)
    steps.add("r_edge", "min(2.4 d, 1.2 (e − h_a/2)) t F_u", holes.edge, "N", clause)
    steps.add("r_in", "min(2.4 d, 1.2 (g − h_a)) t F_u", holes.inner, "N", clause)
    return holes


def _bearing_row(
    jacket: Jacket, plate: str, demand: Real, holes: HoleStrengths, steps: Steps, code: SteelCode
) -> Result:
    clause = f"{code.name} {code.bearing_clause}"
    nominal = holes.edge + (np.asarray(jacket.bolts.columns) - 1.0) * holes.inner
    steps.add("R_n", "r_edge + (n_c − 1) r_in", nominal, "N", clause)
    steps.add("φ", "bearing", code.bearing, "1", clause)
    capacity = steps.add("φR_n", "φ R_n", code.bearing * nominal, "N", clause)
    title = f"Bearing and tear-out of the {plate} at the bolts"
    return Result(title, _PLACE, demand, capacity, "N", clause, steps.lines)
