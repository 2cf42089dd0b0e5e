"""Strength of the seam bolts, and of the plates at their holes, once friction is overcome."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.analysis.hoop_demand import add_bolt_force, add_row_force
from jacketcheck.analysis.splice import effective_planes, effective_splice_thickness
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import Hole
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._us_codes import US_CODES, SteelCode
from jacketcheck.mechanics import bolt_bearing
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bolt_bearing import HoleStrengths
from jacketcheck.results import Result, Steps

__all__ = ["seam_bolt_row", "seam_bolt_shear", "sleeve_bearing", "splice_bearing"]

_PLACE: Final = "hardest-worked row"


@limit_state(
    "seam-bolt-shear",
    title="Shear of the seam bolts",
    monotonic={"bolts.tensile_strength": 0},  # what stiffens a snug seam calls up more pressure
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a bolt exceeds its shear strength by AISC, actual tensile strength",
        rules=("aisc-bolt-shear",),
    ),
)
def seam_bolt_shear(jacket: Jacket) -> list[Result]:
    """Shear of one bolt through all its planes."""
    return [_bolt_shear(jacket, code) for code in US_CODES]


def _bolt_shear(jacket: Jacket, code: SteelCode) -> Result:
    steps = Steps()
    clause = f"{code.name} {code.shear_clause}"
    demand = add_bolt_force(jacket, steps)
    planes = steps.add("n_s", "shear planes, by the largest share", effective_planes(jacket), "1",
                       "statics of the plates")  # fmt: skip
    nominal = _add_shear(jacket, steps, code, "R_n", planes=planes)
    steps.add("φ", "bolt shear", code.shear, "1", code.factor_source(clause))
    capacity = steps.add("φR_n", "φ R_n", code.shear * nominal, "N", clause)
    return Result("Shear of the seam bolts", _PLACE, demand, capacity, "N", clause, steps.lines,
                  rule=f"{code.key}-bolt-shear", resistance_factor=code.shear)  # fmt: skip


def _add_shear(jacket: Jacket, steps: Steps, code: SteelCode, symbol: str, *, planes: Real) -> Real:
    """Write down the nominal shear strength of one bolt and return it [N]."""
    bolts, clause = jacket.bolts, f"{code.name} {code.shear_clause}"
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.add("A_b", "π d²/4", bolts.area, "mm2", "shank")
    steps.add("k_L", "long joint", code.long_joint_factor(jacket), "1", clause)
    if code.is_aashto:
        share = 0.56 if bolts.threads == "excluded" else 0.45
        steps.figure("F_ub", bolts.product, bolts, "tensile_strength", "MPa")
        expression = f"{share} A_b F_ub k_L"
    else:
        steps.figure("F_nv", f"threads {bolts.threads}", bolts, "shear_stress", "MPa")
        expression = "F_nv A_b k_L"
    if np.any(np.greater(jacket.splice.filler_thickness, 0.0)):
        expression += f" {_add_fillers(jacket, steps, code)}"
    expression += " n_s" if symbol == "R_n" else ""
    return steps.add(symbol, expression, code.bolt_shear(jacket, shear_planes=planes), "N", clause)


def _add_fillers(jacket: Jacket, steps: Steps, code: SteelCode) -> str:
    """Write down what fillers take from bolt shear and return the symbol."""
    steps.add("t_f", "all fillers", jacket.splice.filler_thickness, "mm",
              "input splice.filler_thickness")  # fmt: skip
    steps.add("k_f", "fillers not developed", code.filler_factor(jacket), "1",
              f"{code.name} {code.filler_clause}")  # fmt: skip
    return "k_f"


@dataclass(frozen=True, eq=False)
class _HoledPlate:
    """A plate and its holes: mark in symbols, name, dimensions [mm] and tensile strength [MPa]."""

    mark: str
    name: str
    edge_distance: Real
    edge_source: str
    thickness: Real
    thickness_source: str
    tensile_strength: Real
    strength_source: str
    hole: Hole


def _sleeve(jacket: Jacket) -> _HoledPlate:
    return _HoledPlate(
        mark="s",
        name="sleeve",
        edge_distance=jacket.bolts.seam_edge_distance,
        edge_source="input bolts.seam_edge_distance",
        thickness=jacket.sleeve.thickness,
        thickness_source="input sleeve.thickness",
        tensile_strength=jacket.sleeve.steel.tensile_strength,
        strength_source=jacket.sleeve.steel.source_of("tensile_strength"),
        hole=jacket.sleeve.hole,
    )


def _splice_plate(
    jacket: Jacket, mark: str, name: str, thickness: Real, source: str
) -> _HoledPlate:
    return _HoledPlate(
        mark=mark,
        name=name,
        edge_distance=jacket.bolts.plate_edge_distance,
        edge_source="input bolts.plate_edge_distance",
        thickness=thickness,
        thickness_source=source,
        tensile_strength=jacket.splice.steel.tensile_strength,
        strength_source=jacket.splice.steel.source_of("tensile_strength"),
        hole=jacket.splice.hole,
    )


@limit_state(
    "sleeve-bearing",
    title="Bearing and tear-out of the sleeve at the bolts",
    monotonic={"bolts.seam_edge_distance": 0},
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a row exceeds bearing or tear-out by AISC, actual tensile strength",
        rules=("aisc-bearing",),
        model="bolted-plate",
    ),
)
def sleeve_bearing(jacket: Jacket) -> list[Result]:
    """Bearing and tear-out of the sleeve towards the seam, for one row."""
    return [_bearing(jacket, code, _sleeve(jacket)) for code in US_CODES]


@limit_state(
    "splice-bearing",
    title="Bearing and tear-out of the splice plates at the bolts",
    monotonic={"bolts.plate_edge_distance": 0},
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a row exceeds bearing or tear-out by AISC, actual tensile strength",
        rules=("aisc-bearing",),
        model="bolted-plate",
    ),
)
def splice_bearing(jacket: Jacket) -> list[Result]:
    """Bearing and tear-out of the splice plate that takes most for its thickness, for one row."""
    plate = _splice_plate(
        jacket,
        "p",
        "splice plates",
        effective_splice_thickness(jacket),
        "smallest of each plate's thickness over its share, statics without bending",
    )
    return [_bearing(jacket, code, plate) for code in US_CODES]


def _bearing(jacket: Jacket, code: SteelCode, plate: _HoledPlate) -> Result:
    steps, columns = Steps(), jacket.bolts.columns
    clause = f"{code.name} {code.bearing_clause}"
    demand = add_row_force(jacket, steps)
    _add_bolt(jacket, steps)
    holes = _add_plate(jacket, steps, plate, clause)
    nominal = holes.edge + (np.asarray(columns) - 1.0) * holes.inner
    edge, inner = (f"r_{plate.mark},{where}" for where in ("edge", "in"))
    expression = f"{edge} + (n_c − 1) {inner}" if np.any(np.greater(columns, 1)) else edge
    steps.add("R_n", expression, nominal, "N", clause)
    steps.add("φ", "bearing", code.bearing, "1", code.factor_source(clause))
    capacity = steps.add("φR_n", "φ R_n", code.bearing * nominal, "N", clause)
    title = f"Bearing and tear-out of the {plate.name} at the bolts"
    return Result(title, _PLACE, demand, capacity, "N", clause, steps.lines,
                  rule=f"{code.key}-bearing", resistance_factor=code.bearing)  # fmt: skip


def _add_bolt(jacket: Jacket, steps: Steps) -> None:
    """Write down bolt and gauge."""
    bolts = jacket.bolts
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    if np.any(np.greater(bolts.columns, 1)):
        steps.add("g", "spacing of the columns", bolts.gauge, "mm", "input bolts.gauge")


def _add_plate(jacket: Jacket, steps: Steps, plate: _HoledPlate, clause: str) -> HoleStrengths:
    """Write down the nominal strength of a plate at its holes and return it."""
    bolts, mark, hole = jacket.bolts, plate.mark, plate.hole
    steps.figure(f"h_{mark}", f"{hole.kind} hole along the force, {plate.name}", hole, "along",
                 "mm")  # fmt: skip
    steps.add(f"e_{mark}", f"edge distance, {plate.name}", plate.edge_distance, "mm",
              plate.edge_source)  # fmt: skip
    steps.add(f"t_{mark}", plate.name, plate.thickness, "mm", plate.thickness_source)
    steps.add(f"F_u,{mark}", plate.name, plate.tensile_strength, "MPa", plate.strength_source)
    holes = _holes(jacket, plate)
    bearing, tearing = (
        strength(1.0, thickness=1.0, tensile_strength=1.0, hole=hole.kind)
        for strength in (bolt_bearing.bearing_strength, bolt_bearing.tear_out_strength)
    )

    def add(where: str, distance: str, strength: Real) -> None:
        expression = f"min({bearing:g} d, {tearing:g} ({distance})) t_{mark} F_u,{mark}"
        steps.add(f"r_{mark},{where}", expression, strength, "N", clause)

    add("edge", f"e_{mark} − h_{mark}/2", holes.edge)
    if np.any(np.greater(bolts.columns, 1)):
        add("in", f"g − h_{mark}", holes.inner)
    return holes


def _holes(jacket: Jacket, plate: _HoledPlate) -> HoleStrengths:
    """Nominal strength of a plate at the bolt next to its edge and at an inner bolt."""
    bolts, hole = jacket.bolts, plate.hole
    to_edge = bolt_bearing.clear_distance_to_edge(plate.edge_distance, hole=hole.along)
    # with one column there is no inner bolt; any distance serves, its strength is not counted
    spacing = np.where(np.greater(bolts.columns, 1), bolts.gauge, 10.0 * np.asarray(hole.along))
    between = bolt_bearing.clear_distance_between_holes(spacing, hole=hole.along)

    def strength(clear: Real) -> Real:
        return bolt_bearing.hole_strength(
            bolts.diameter,
            clear_distance=clear,
            thickness=plate.thickness,
            tensile_strength=plate.tensile_strength,
            hole=hole.kind,
        )

    return HoleStrengths(strength(to_edge), strength(between))


@limit_state(
    "seam-bolt-row",
    title="Strength of a bolt row",
    monotonic={"bolts.tensile_strength": 0},
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a row exceeds the sum of each bolt's weakest path by AISC; "
        "the plates' model scatter is put on all of it",
        rules=("aisc-bolt-row",),
        model="bolted-plate",
    ),
)
def seam_bolt_row(jacket: Jacket) -> list[Result]:
    """A row of bolts with the effective strength of each: shear, sleeve and plates together."""
    return [_bolt_row(jacket, code) for code in US_CODES]


def _bolt_row(jacket: Jacket, code: SteelCode) -> Result:
    steps, splice = Steps(), jacket.splice
    clause = f"{code.name} {code.shear_clause}, {code.bearing_clause}"
    demand = add_row_force(jacket, steps)
    shear = _add_shear(jacket, steps, code, "r_v", planes=1)
    _add_bolt(jacket, steps)
    sleeve = _add_plate(jacket, steps, _sleeve(jacket), clause)
    plate = _splice_plate(
        jacket, "o", "outside plate", splice.outside_thickness, "input splice.thickness"
    )
    outside, inside = _add_plate(jacket, steps, plate, clause), None
    if np.any(np.greater(splice.inside_thickness, 0.0)):
        # where some designs have no inside plate, one that is too thin to count stands for it
        thickness = np.maximum(splice.inside_thickness, 1e-9)
        plate = _splice_plate(
            jacket, "i", "inside plate", thickness, "input splice.inside_thickness"
        )
        inside = _add_plate(jacket, steps, plate, clause)
    nominal = bolt_bearing.seam_row_strength(
        shear,
        columns=jacket.bolts.columns,
        sleeve=sleeve,
        outside_plate=outside,
        inside_plate=inside,
    )
    source = f"{clause}, effective strength of each bolt"
    steps.add("R_n", _row_expression(jacket, inside=inside is not None), nominal, "N", source)
    # one factor for all parts of a path: the smaller
    factor = steps.add("φ", "smaller of shear and bearing", min(code.shear, code.bearing), "1",
                       code.factor_source(clause))  # fmt: skip
    capacity = steps.add("φR_n", "φ R_n", np.multiply(factor, nominal), "N", clause)
    return Result("Strength of a bolt row", _PLACE, demand, capacity, "N", clause, steps.lines,
                  rule=f"{code.key}-bolt-row", resistance_factor=factor)  # fmt: skip


def _row_expression(jacket: Jacket, *, inside: bool) -> str:
    """Sum over the bolts of a row; the sleeve tears at one end of it, the plates at the other."""

    def bolt(sleeve: str, plate: str) -> str:
        paths = [f"min(r_v, r_{mark},{plate})" for mark in ("oi" if inside else "o")]
        return f"min(r_s,{sleeve}, {' + '.join(paths)})"

    if np.all(np.less(jacket.bolts.columns, 2)):
        return bolt("edge", "edge")
    return f"{bolt('edge', 'in')} + {bolt('in', 'edge')} + (n_c − 2) {bolt('in', 'in')}"
