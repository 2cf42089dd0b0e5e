"""Layout of the seam bolts: spacing, edge distances, and room for the wrench."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import Hole
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, not_evaluated
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.mechanics import seam_detailing as rules
from jacketcheck.mechanics import wrench_access
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["Rule", "bolt_edge_distance", "bolt_spacing", "wrench_clearance"]

_AISC_SPACING: Final = f"{AISC} J3.4"
_AASHTO_SPACING: Final = f"{AASHTO} 6.13.2.6.1"
_AASHTO_EDGE: Final = f"{AASHTO} 6.13.2.6.6"
_MAX_SPACING: Final = {"painted": "min(24 t, 12 in)", "weathering": "min(14 t, 7 in)"}
_MAX_EDGE: Final = {"painted": "min(12 t, 6 in)", "weathering": "min(8 t, 5 in)"}
_END: Final = "input bolts.end_distance, or bolts.rows and repair.height"
_CLEAR_AT_SLOT: Final = "max(e_table, d + h/2)"


@dataclass(frozen=True, eq=False)
class Rule:
    """A rule on a length of the layout.

    Attributes
    ----------
    title, where
        Title and location of its row.
    symbol, provided
        Symbol of the length, and what it is [mm].
    bound, expression
        What it is compared with [mm], and how that is printed.
    clause
        Clause with its edition.
    steps
        What stands above the bound in the calculation.
    """

    title: str
    where: str
    symbol: str
    provided: Real
    bound: Real
    expression: str
    clause: str
    steps: Steps
    source: str = "input bolts.pitch"

    def at_least(self) -> Result:
        """The length must not be smaller: the demand is the rule, the capacity the length."""
        self._add_provided()
        self.steps.add(f"{self.symbol},min", self.expression, self.bound, "mm", self.clause)
        return self._row(self.bound, self.provided)

    def at_most(self) -> Result:
        """The length must not be larger: the demand is the length, the capacity the rule."""
        self._add_provided()
        self.steps.add(f"{self.symbol},max", self.expression, self.bound, "mm", self.clause)
        return self._row(self.provided, self.bound)

    def _add_provided(self) -> None:
        if not any(line.symbol == self.symbol for line in self.steps.lines):
            self.steps.add(self.symbol, "provided", self.provided, "mm", self.source)

    def _row(self, demand: Real, capacity: Real) -> Result:
        return Result(self.title, self.where, demand, capacity, "mm", self.clause, self.steps.lines)


@limit_state(
    "bolt-spacing",
    title="Spacing of the seam bolts",
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def bolt_spacing(jacket: Jacket) -> list[Result]:
    """Least and largest spacing of rows and columns."""
    bolts, rows = jacket.bolts, []
    several = np.greater(bolts.columns, 1)
    for ply, hole in jacket.holes.items():
        where = f", {ply}" if ply else ""
        rows += _min_spacing(
            jacket,
            f"rows (pitch){where}",
            bolts.pitch,
            hole,
            direction="across",
            field="bolts.pitch",
        )
        if np.any(several):
            gauge = np.where(several, bolts.gauge, _largest_need(jacket))[()]
            rows += _min_spacing(
                jacket,
                f"columns (gauge){where}",
                gauge,
                hole,
                direction="along",
                field="bolts.gauge",
            )
    spacings = [("rows (pitch)", bolts.pitch, "bolts.pitch")]
    if np.any(several):
        # one column has no gauge: nothing that any rule could exceed
        spacings.append(("columns (gauge)", np.where(several, bolts.gauge, 0.0)[()], "bolts.gauge"))
    return [*rows, *(_max_spacing(jacket, *one) for one in spacings),
            *(_sealing(jacket, *one) for one in spacings)]  # fmt: skip


def _largest_need(jacket: Jacket) -> Real:
    """More than any rule on the gauge asks for [mm], for designs with one column among others."""
    hole = np.maximum(jacket.sleeve.hole.along, jacket.splice.hole.along)
    return 10.0 * np.add(jacket.bolts.diameter, hole)


def _min_spacing(
    jacket: Jacket, where: str, spacing: Real, hole: Hole, *, direction: str, field: str
) -> list[Result]:
    bolts, size = jacket.bolts, getattr(hole, direction)
    source = f"input {field}"
    aisc = rules.aisc_min_spacing(bolts.diameter, hole=size)
    aashto = rules.aashto_min_spacing(bolts.diameter, hole=size, hole_type=hole.kind)
    expression = "3 d" if hole.kind == "standard" else "max(3 d, h + 2 d)"
    return [
        Rule("Least bolt spacing", where, "s", spacing, aisc, "max(2⅔ d, h + d)", _AISC_SPACING,
             _bolt_and_hole(jacket, hole, direction), source).at_least(),
        Rule("Least bolt spacing", where, "s", spacing, aashto, expression, _AASHTO_SPACING,
             _bolt_and_hole(jacket, hole, direction), source).at_least(),
    ]  # fmt: skip


def _bolt_and_hole(jacket: Jacket, hole: Hole, direction: str) -> Steps:
    steps, bolts = Steps(), jacket.bolts
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.figure("h", f"{hole.kind} hole {direction} the force", hole, direction, "mm")
    return steps


def _max_spacing(jacket: Jacket, where: str, spacing: Real, field: str) -> Result:
    exposure, thickness = jacket.sleeve.exposure, _thinnest_outside(jacket)
    bound = rules.aisc_max_spacing(thickness, exposure=exposure)
    steps, expression = _plate(thickness, exposure), _MAX_SPACING[exposure]
    return Rule("Largest bolt spacing", where, "s", spacing, bound, expression, f"{AISC} J3.6",
                steps, f"input {field}").at_most()  # fmt: skip


def _sealing(jacket: Jacket, where: str, spacing: Real, field: str) -> Result:
    """The sleeve has free edges both ways: along its seams, and at its ends."""
    thickness = _thinner_outer_ply(jacket)
    bound = rules.aashto_max_sealing_spacing(thickness)
    return Rule("Largest bolt spacing, sealing", where, "s", spacing, bound, "4 in + 4 t ≤ 7 in",
                f"{AASHTO} 6.13.2.6.2", _plate(thickness, "of the two outer plies"),
                f"input {field}").at_most()  # fmt: skip


def _plate(thickness: Real, what: str) -> Steps:
    steps = Steps()
    steps.add("t", f"thinner plate, {what}", thickness, "mm",
              "input sleeve.thickness, splice.thickness, splice.inside_thickness")  # fmt: skip
    return steps


@limit_state(
    "bolt-edge-distance",
    title="Edge distances of the seam bolts",
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def bolt_edge_distance(jacket: Jacket) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts, sleeve, splice = jacket.bolts, jacket.sleeve, jacket.splice
    plate = _thinnest_plate(jacket)
    edges = [
        _Edge("sleeve edge at the seam", bolts.seam_edge_distance, sleeve.hole,
              "along", sleeve.thickness, "input bolts.seam_edge_distance"),
        _Edge("vertical edge of the plate", bolts.plate_edge_distance, splice.hole,
              "along", plate, "input bolts.plate_edge_distance"),
    ]  # fmt: skip
    edges += [
        _Edge(f"ends of {ply or 'sleeve and plates'}", bolts.end_distance, hole,
              "across", np.minimum(sleeve.thickness, plate), _END)
        for ply, hole in jacket.holes.items()
    ]  # fmt: skip
    return [row for edge in edges for row in _edge_rows(jacket, edge)]


class _Edge(NamedTuple):
    """An edge: distance, hole, its direction towards the edge, and thickness there [mm]."""

    where: str
    distance: Real
    hole: Hole
    direction: str
    thickness: Real
    source: str

    @property
    def size(self) -> Real:
        """Hole towards the edge [mm]."""
        return self.hole.along if self.direction == "along" else self.hole.across

    @property
    def figure(self) -> str:
        """Name of the hole's least distance to such an edge."""
        return "min_edge_distance" if self.direction == "along" else "min_end_distance"

    @property
    def least(self) -> Real:
        """What the table asks for [mm]."""
        least: Real = getattr(self.hole, self.figure)
        return least


def _edge_rows(jacket: Jacket, edge: _Edge) -> list[Result]:
    bolts, exposure = jacket.bolts, jacket.sleeve.exposure
    clear = rules.aashto_min_end_distance(
        edge.least, diameter=bolts.diameter, hole=edge.size, hole_type=edge.hole.kind
    )
    with_clear = np.any(np.not_equal(clear, edge.least))
    aisc_most = rules.aisc_max_edge_distance(edge.thickness, exposure=exposure)
    outer = np.minimum(edge.thickness, _thinner_outer_ply(jacket))
    aashto_most = rules.aashto_max_edge_distance(outer)
    table = _bolt_and_hole(jacket, edge.hole, edge.direction)
    for steps in (by_table := Steps(), table):
        steps.figure("e_table", "by diameter and hole", edge.hole, edge.figure, "mm")

    def rule(kind: str, bound: Real, expression: str, clause: str, steps: Steps) -> Rule:
        return Rule(kind, edge.where, "e", edge.distance, bound, expression, clause, steps,
                    edge.source)  # fmt: skip

    least, largest = "Least edge distance", "Largest edge distance"
    return [
        rule(least, edge.least, "e_table", f"{AISC} J3.5", by_table).at_least(),
        rule(least, clear, _CLEAR_AT_SLOT if with_clear else "e_table", _AASHTO_EDGE,
             table).at_least(),
        rule(largest, aisc_most, _MAX_EDGE[exposure], f"{AISC} J3.6",
             _plate(edge.thickness, exposure)).at_most(),
        rule(largest, aashto_most, "min(8 t, 5 in)", _AASHTO_EDGE,
             _plate(outer, f"{edge.where}, outer plies")).at_most(),
    ]  # fmt: skip


@limit_state(
    "wrench-clearance",
    title="Room for the wrench",
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def wrench_clearance(jacket: Jacket) -> list[Result]:
    """Socket between neighbouring bolts, and over the footing at the lowest bolt."""
    bolts, title = jacket.bolts, "Room for the wrench"
    if bolts.tightening_clearance is None or bolts.socket_diameter is None:
        return [
            not_evaluated(
                title,
                f"the catalogue has no wrench clearance for {bolts.product} {bolts.size}: write "
                "bolts.socket_diameter, as the tool's maker gives it",
                location="around the bolts",
                clause="geometry",
            )
        ]
    between = wrench_access.wrench_clearance_between_bolts(
        socket_diameter=bolts.socket_diameter, nut_width=bolts.nut_width
    )
    rows = [_between_bolts(jacket, "between rows", bolts.pitch, between), _over_footing(jacket)]
    several = np.greater(bolts.columns, 1)
    if np.any(several):
        gauge = np.where(several, bolts.gauge, _largest_need(jacket))[()]
        rows.append(_between_bolts(jacket, "between columns", gauge, between))
    return rows


def _between_bolts(jacket: Jacket, where: str, spacing: Real, needed: Real) -> Result:
    steps, bolts = Steps(), jacket.bolts
    socket = 0.0 if bolts.socket_diameter is None else bolts.socket_diameter
    steps.add("d_s", "outside of the socket", socket, "mm", bolts.source_of("socket_diameter"))
    steps.figure("w_n", "nut across its flats", bolts, "nut_width", "mm")
    return Rule("Room for the wrench", where, "s", spacing, needed, "d_s/2 + w_n/√3",
                bolts.clearance_source, steps).at_least()  # fmt: skip


def _over_footing(jacket: Jacket) -> Result:
    steps, bolts = Steps(), jacket.bolts
    tightening, entering, socket = (
        0.0 if value is None else value
        for value in (bolts.tightening_clearance, bolts.entering_clearance, bolts.socket_diameter)
    )
    needed = wrench_access.wrench_clearance_to_obstruction(
        tightening_clearance=tightening, entering_clearance=entering, socket_diameter=socket
    )
    steps.add("c_1", "for tightening", tightening, "mm", bolts.clearance_source)
    steps.add("c_2", "for entering", entering, "mm", bolts.source_of("entering_clearance"))
    steps.add("d_s", "outside of the socket", socket, "mm", bolts.source_of("socket_diameter"))
    provided = np.add(bolts.end_distance, jacket.sleeve.gap)
    return Rule("Room for the wrench", "lowest row to footing", "a", provided, needed,
                "max(c_1, c_2, d_s/2)", bolts.clearance_source, steps).at_least()  # fmt: skip


def _thinner_outer_ply(jacket: Jacket) -> Real:
    """Thinner of the outer plies [mm]: of two splice plates, or of single plate and sleeve."""
    splice = jacket.splice
    one_sided = np.less_equal(splice.inside_thickness, 0.0)
    other = np.where(one_sided, jacket.sleeve.thickness, splice.inside_thickness)
    return np.minimum(splice.outside_thickness, other)


def _thinnest_plate(jacket: Jacket) -> Real:
    splice = jacket.splice
    inside = np.where(np.greater(splice.inside_thickness, 0.0), splice.inside_thickness, np.inf)
    return np.minimum(splice.outside_thickness, inside)


def _thinnest_outside(jacket: Jacket) -> Real:
    """Thinner of the plates in contact [mm]."""
    return np.minimum(jacket.sleeve.thickness, _thinnest_plate(jacket))
