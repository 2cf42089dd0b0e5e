"""Layout of the seam bolts: spacing, edge distances, and room for the wrench."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.mechanics import seam_detailing as rules
from jacketcheck.mechanics import wrench_access
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["bolt_edge_distance", "bolt_spacing", "wrench_clearance"]

_AISC_SPACING: Final = f"{AISC} J3.4"
_AASHTO_SPACING: Final = f"{AASHTO} 6.13.2.6.1"


def at_least(
    title: str, where: str, provided: Real, needed: Real, clause: str, symbol: str, rule: str
) -> Result:
    """A length that must not be smaller than a rule says: demand is the rule, capacity the length."""
    steps = Steps()
    steps.add(f"{symbol},min", rule, needed, "mm", clause)
    steps.add(symbol, "provided", provided, "mm", "input")
    return Result(title, where, needed, provided, "mm", clause, steps.lines)


def at_most(
    title: str, where: str, provided: Real, allowed: Real, clause: str, symbol: str, rule: str
) -> Result:
    """A length that must not exceed what a rule says: demand is the length, capacity the rule."""
    steps = Steps()
    steps.add(symbol, "provided", provided, "mm", "input")
    steps.add(f"{symbol},max", rule, allowed, "mm", clause)
    return Result(title, where, provided, allowed, "mm", clause, steps.lines)


@limit_state("bolt-spacing", title="Spacing of the seam bolts", effort="closed-form")
def bolt_spacing(jacket: Jacket) -> list[Result]:
    """Least and largest spacing of rows and columns."""
    bolts = jacket.bolts
    rows = [*_min_spacing(jacket, "rows (pitch)", bolts.pitch, bolts.hole_across)]
    if np.all(np.greater(bolts.columns, 1)):
        rows += _min_spacing(jacket, "columns (gauge)", bolts.gauge, bolts.hole_along)
    thickness = _thinnest_outside(jacket)
    rows.append(
        at_most(
            "Largest bolt spacing",
            "rows (pitch)",
            bolts.pitch,
            rules.aisc_max_spacing(thickness, exposure=jacket.sleeve.exposure),  # type: ignore[arg-type]
            f"{AISC} J3.6",
            "s",
            "min(24 t, 12 in), painted; min(14 t, 7 in), weathering steel",
        )
    )
    rows.append(
        at_most(
            "Largest bolt spacing, sealing",
            "rows (pitch)",
            bolts.pitch,
            rules.aashto_max_sealing_spacing(jacket.splice.outside_thickness),
            f"{AASHTO} 6.13.2.6.2",
            "s",
            "4 in + 4 t ≤ 7 in",
        )
    )
    return rows


def _min_spacing(jacket: Jacket, where: str, spacing: Real, hole: Real) -> list[Result]:
    bolts = jacket.bolts
    return [
        at_least("Least bolt spacing", where, spacing,
                 rules.aisc_min_spacing(bolts.diameter, hole=hole), _AISC_SPACING, "s",
                 "max(2⅔ d, hole + d)"),
        at_least("Least bolt spacing", where, spacing,
                 rules.aashto_min_spacing(bolts.diameter, hole=hole, hole_type=bolts.hole),
                 _AASHTO_SPACING, "s", "3 d; oversized and slotted holes also hole + 2 d"),
    ]  # fmt: skip


@limit_state("bolt-edge-distance", title="Edge distances of the seam bolts", effort="closed-form")
def bolt_edge_distance(jacket: Jacket) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts, sleeve = jacket.bolts, jacket.sleeve
    edges = (
        ("sleeve edge at the seam", bolts.seam_edge_distance, bolts.min_edge_distance,
         bolts.hole_along, sleeve.thickness),
        ("vertical edge of the plate", bolts.plate_edge_distance, bolts.min_edge_distance,
         bolts.hole_along, _thinnest_plate(jacket)),
        ("ends of sleeve and plates", bolts.end_distance, bolts.min_end_distance,
         bolts.hole_across, np.minimum(sleeve.thickness, _thinnest_plate(jacket))),
    )  # fmt: skip
    rows = []
    for where, distance, least, hole, thickness in edges:
        rows += [
            at_least("Least edge distance", where, distance, least, f"{AISC} J3.5", "e",
                     bolts.edge_source),
            at_least("Least edge distance", where, distance,
                     rules.aashto_min_end_distance(least, diameter=bolts.diameter, hole=hole,
                                                   hole_type=bolts.hole),
                     f"{AASHTO} 6.13.2.6.6", "e", "table by diameter; clear distance d at slots"),
            at_most("Largest edge distance", where, distance,
                    rules.aisc_max_edge_distance(thickness, exposure=sleeve.exposure),  # type: ignore[arg-type]
                    f"{AISC} J3.6", "e", "min(12 t, 6 in), painted; min(8 t, 5 in), weathering"),
            at_most("Largest edge distance", where, distance,
                    rules.aashto_max_edge_distance(thickness), f"{AASHTO} 6.13.2.6.6", "e",
                    "min(8 t, 5 in)"),
        ]  # fmt: skip
    return rows


@limit_state("wrench-clearance", title="Room for the wrench", effort="closed-form")
def wrench_clearance(jacket: Jacket) -> list[Result]:
    """Socket between neighbouring bolts, and over the footing at the lowest bolt."""
    bolts = jacket.bolts
    title = "Room for the wrench"
    if bolts.tightening_clearance is None or bolts.socket_diameter is None:
        return [
            not_applicable(
                title,
                f"no clearance is published for {bolts.product} {bolts.size}; ask the tool's maker",
                clause=bolts.clearance_source,
            )
        ]
    between = wrench_access.wrench_clearance_between_bolts(
        socket_diameter=bolts.socket_diameter, nut_width=bolts.nut_width
    )
    beside: Callable[..., Real] = wrench_access.wrench_clearance_to_obstruction
    needed = beside(
        tightening_clearance=bolts.tightening_clearance,
        entering_clearance=0.0 if bolts.entering_clearance is None else bolts.entering_clearance,
        socket_diameter=bolts.socket_diameter,
    )
    clause = bolts.clearance_source
    rows = [
        at_least(title, "between rows", bolts.pitch, between, clause, "s",
                 "socket radius + nut corner radius"),
        at_least(title, "lowest row to footing", np.add(bolts.end_distance, jacket.sleeve.gap),
                 needed, clause, "a", "max(tightening, entering, socket radius)"),
    ]  # fmt: skip
    if np.all(np.greater(bolts.columns, 1)):
        rows.append(
            at_least(title, "between columns", bolts.gauge, between, clause, "g",
                     "socket radius + nut corner radius")
        )  # fmt: skip
    return rows


def _thinnest_plate(jacket: Jacket) -> Real:
    splice = jacket.splice
    inside = np.where(np.greater(splice.inside_thickness, 0.0), splice.inside_thickness, np.inf)
    return np.minimum(splice.outside_thickness, inside)


def _thinnest_outside(jacket: Jacket) -> Real:
    """Thinner of the plates in contact [mm]."""
    return np.minimum(jacket.sleeve.thickness, _thinnest_plate(jacket))
