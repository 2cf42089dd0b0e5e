"""Gap under the sleeve, and room in the annulus for bars, bolts and grout."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.closing import closing_of_gap
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE
from jacketcheck.limit_states.editions import ACI, PRIESTLEY
from jacketcheck.limit_states.seam_detailing import Rule
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["annulus_clearance", "sleeve_gap"]

_GAP: Final = "Gap under the sleeve"
_ROOM: Final = "Room in the annulus"
_CLEAR: Final = f"{ACI} 25.2.1, for grout without coarse aggregate"

USUAL_GAP: Final = 50.0
"""Gap between a jacket and the member that it ends at [mm] (Chai, Priestley and Seible 1991;
Priestley, Seible and Calvi 1996; from memory)."""

LEAST_CLEARANCE: Final = 25.4
"""Clear distance that grout needs between parts [mm], 1 in (ACI 318-19 25.2.1)."""


@limit_state(
    "sleeve-gap",
    title=_GAP,
    monotonic={"sleeve.gap": -1},
    scatter=Scatter(
        "rotation of the base closes the gap, so that the sleeve takes axial load",
        rules=("gap-closing",),
    ),
)
def sleeve_gap(jacket: Jacket) -> list[Result]:
    """The gap must stay open when the base rotates, so that the sleeve carries no axial load."""
    steps, gap, layer = Steps(), jacket.sleeve.gap, jacket.column.layer
    closing = closing_of_gap(jacket)
    steps.add("φ", "curvature of the base under the demand", closing.curvature, "1/mm",
              "section analysis of the repaired base")  # fmt: skip
    steps.add("g", "gap", gap, "mm", "input repair.gap")
    steps.figure("f_ye", layer.steel.name, layer.steel, "expected_yield", "MPa")
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.add(
        "l", "g + 0.022 f_ye d_b", closing.length, "mm", "strain penetration into the footing"
    )
    steps.add("D_o", "outside diameter", jacket.outer_diameter, "mm", "geometry")
    need = steps.add("Δ", "φ l D_o", closing.movement, "mm", "plane rotation about the far edge")
    usual = Rule(_GAP, "usual gap", "g", gap, USUAL_GAP, "50 mm (2 in)", f"{PRIESTLEY} ch. 7",
                 Steps())  # fmt: skip
    return [
        Result(_GAP, "closing by rotation of the base", need, gap, "mm", "geometry; no clause",
               steps.lines, rule="gap-closing"),
        usual.at_least(),
    ]  # fmt: skip


@limit_state(
    "annulus-clearance",
    title=_ROOM,
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def annulus_clearance(jacket: Jacket) -> list[Result]:
    """Clear distances in the annulus between column, added bars, bolts and sleeve."""
    steps = Steps()
    hardware = _add_hardware(jacket, steps)
    steps.add("t_g", "annulus", jacket.grout.thickness, "mm", "geometry")
    room = np.maximum(jacket.grout.thickness - hardware, 0.0)
    steps.add("a", "max(t_g − b, 0)", room, "mm", "geometry")
    rows = [_clear("column to inside of the seam", room, LEAST_CLEARANCE, "1 in", steps)]
    if jacket.added_bars is not None:
        rows += _around_added_bars(jacket, jacket.added_bars)
    return rows


def _clear(where: str, room: Real, least: Real, expression: str, steps: Steps) -> Result:
    """A clear distance against what grout needs."""
    return Rule(_ROOM, where, "a", room, least, expression, _CLEAR, steps).at_least()


def _around_added_bars(jacket: Jacket, added: AddedBarLayer) -> list[Result]:
    layer = added.layer
    least = np.maximum(LEAST_CLEARANCE, layer.diameter)
    radius, half = np.asarray(layer.circle_radius), np.divide(layer.diameter, 2.0)
    sleeve = jacket.sleeve.inner_radius
    distances = (
        ("added bars to column", "r − d_b/2 − R_c", radius - half - jacket.column.radius),
        ("added bars to sleeve", "R_i − r − d_b/2", sleeve - radius - half),
        ("between added bars", "2 π r/n − d_b", layer.spacing - layer.diameter),
    )
    rows = []
    for where, expression, distance in distances:
        steps, room = Steps(), np.maximum(distance, 0.0)
        _add_bars(jacket, added, steps)
        steps.add("a", f"max({expression}, 0)", room, "mm", "geometry")
        rows.append(_clear(where, room, least, "max(1 in, d_b)", steps))
    meets = _meets_seam(jacket, added)
    if np.any(meets):
        rows.append(_beside_bolts(jacket, added, meets))
    return rows


def _beside_bolts(jacket: Jacket, added: AddedBarLayer, meets: Real) -> Result:
    """Added bars that stand behind a seam; a design without any needs no room there."""
    steps = Steps()
    _add_bars(jacket, added, steps)
    hardware = _add_hardware(jacket, steps)
    half = np.divide(added.layer.diameter, 2.0)
    distance = jacket.sleeve.inner_radius - hardware - added.layer.circle_radius - half
    room = np.maximum(distance, 0.0)
    steps.add("a", "max(R_i − b − r − d_b/2, 0)", room, "mm", "geometry")
    room = np.where(meets, room, LEAST_CLEARANCE)[()]
    least = np.where(meets, LEAST_CLEARANCE, 0.0)[()]
    return _clear("added bars to bolts at a seam", room, least, "1 in", steps)


def _add_bars(jacket: Jacket, added: AddedBarLayer, steps: Steps) -> None:
    """Write down where the added bars stand."""
    layer = added.layer
    steps.add("R_i", "inside of the sleeve", jacket.sleeve.inner_radius, "mm", "geometry")
    steps.add("R_c", "column", jacket.column.radius, "mm", "geometry")
    steps.add("r", "circle of added bars", layer.circle_radius, "mm",
              "input added_bars.circle_diameter")  # fmt: skip
    steps.add("n", "added bars", layer.count, "1", "input added_bars.count")
    steps.figure("d_b", layer.size, layer, "diameter", "mm")


def _add_hardware(jacket: Jacket, steps: Steps) -> Real:
    """Write down what stands inside of the sleeve at a seam and return it [mm]."""
    bolts, plate = jacket.bolts, jacket.splice.inside_thickness
    steps.add("t_i", "inside plate", plate, "mm", "input splice")
    steps.figure("t_w", "washer", bolts, "washer_thickness", "mm")
    steps.figure("k_h", "bolt head", bolts, "head_height", "mm")
    steps.figure("k_n", "nut", bolts, "nut_height", "mm")
    bolt = np.add(bolts.washer_thickness, np.maximum(bolts.head_height, bolts.nut_height))
    return steps.add("b", "t_i + t_w + max(k_h, k_n)", np.add(plate, bolt), "mm", "geometry")


def _meets_seam(jacket: Jacket, added: AddedBarLayer) -> Real:
    """Whether any added bar stands within the width of a splice plate."""
    half = np.asarray(jacket.splice.width) / 2.0 + added.layer.diameter
    reach = np.arcsin(np.minimum(half / added.layer.circle_radius, 1.0))
    met: Real = np.zeros(np.shape(reach), dtype=bool)
    for number in range(int(np.max(added.layer.count))):
        clock = added.layer.first_angle + 2.0 * np.pi * number / np.asarray(added.layer.count)
        # distance to the nearer of the two seams, which lie half a turn apart
        offset = np.abs((clock - jacket.sleeve.seam_angle + np.pi / 2.0) % np.pi - np.pi / 2.0)
        met = np.logical_or(met, offset <= reach)
    return met
