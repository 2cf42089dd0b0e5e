"""Gap under the sleeve, and room in the annulus for bars, bolts and grout."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.closing import closing_of_gap
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states.editions import ACI, PRIESTLEY
from jacketcheck.limit_states.seam_detailing import at_least
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["annulus_clearance", "sleeve_gap"]

USUAL_GAP: Final = 50.0
"""Gap between a jacket and the member that it ends at [mm] (Chai, Priestley and Seible 1991;
Priestley, Seible and Calvi 1996; from memory)."""

LEAST_CLEARANCE: Final = 25.4
"""Clear distance that grout needs between parts [mm], 1 in (ACI 318-19 25.2.1)."""


@limit_state("sleeve-gap", title="Gap under the sleeve", monotonic={"sleeve.gap": -1})
def sleeve_gap(jacket: Jacket) -> list[Result]:
    """The gap must stay open when the base rotates, so that the sleeve carries no axial load."""
    steps, gap = Steps(), jacket.sleeve.gap
    closing = closing_of_gap(jacket)
    steps.add("φ", "curvature of the base under the demand", closing.curvature, "1/mm",
              "section analysis of the repaired base")  # fmt: skip
    steps.add(
        "l", "gap + 0.022 f_ye d_b", closing.length, "mm", "strain penetration into the footing"
    )
    steps.add("D_o", "outside diameter", jacket.outer_diameter, "mm", "geometry")
    need = steps.add("Δ", "φ l D_o", closing.movement, "mm", "plane rotation about the far edge")
    return [
        Result("Gap under the sleeve", "closing by rotation of the base", need, gap, "mm",
               "geometry; no clause", steps.lines),
        at_least("Gap under the sleeve", "usual gap", gap, USUAL_GAP, f"{PRIESTLEY} ch. 7", "g",
                 "about 50 mm (2 in)"),
    ]  # fmt: skip


@limit_state("annulus-clearance", title="Room in the annulus", effort="closed-form")
def annulus_clearance(jacket: Jacket) -> list[Result]:
    """Clear distances in the annulus between column, added bars, bolts and sleeve."""
    title, clause = "Room in the annulus", f"{ACI} 25.2.1, for grout without coarse aggregate"
    hardware = _inside_hardware(jacket)
    rows = [
        at_least(title, "column to inside of the seam", _room(jacket.grout.thickness - hardware),
                 LEAST_CLEARANCE, clause, "a", "1 in"),
    ]  # fmt: skip
    added = jacket.added_bars
    if added is not None:
        radius, half = np.asarray(added.layer.circle_radius), np.divide(added.layer.diameter, 2.0)
        least = np.maximum(LEAST_CLEARANCE, added.layer.diameter)
        rows += [
            at_least(title, "added bars to column", _room(radius - half - jacket.column.radius),
                     least, clause, "a", "max(1 in, d_b)"),
            at_least(title, "added bars to sleeve",
                     _room(jacket.sleeve.inner_radius - radius - half), least, clause,
                     "a", "max(1 in, d_b)"),
            at_least(title, "between added bars",
                     _room(added.layer.spacing - added.layer.diameter), least, clause,
                     "a", "max(1 in, d_b)"),
        ]  # fmt: skip
        met = _meets_seam(jacket)
        if np.any(met):
            rows.append(
                at_least(title, "added bars to bolts at a seam",
                         _room(jacket.sleeve.inner_radius - hardware - radius - half),
                         # of many designs those whose bars stand clear of the seams need nothing
                         np.where(met, LEAST_CLEARANCE, 0.0)[()], clause, "a", "1 in")
            )  # fmt: skip
    return rows


def _room(distance: Real) -> Real:
    """A clear distance [mm]; none where the parts overlap."""
    return np.maximum(distance, 0.0)


def _inside_hardware(jacket: Jacket) -> Real:
    """What stands inside of the sleeve at a seam: plate, washer and the larger of head and nut [mm]."""
    bolts = jacket.bolts
    bolt = np.add(bolts.washer_thickness, np.maximum(bolts.head_height, bolts.nut_height))
    return np.add(jacket.splice.inside_thickness, bolt)


def _meets_seam(jacket: Jacket) -> Real:
    """Whether any added bar stands within the width of a splice plate."""
    added = jacket.added_bars
    if added is None:
        return False
    count = int(np.max(added.layer.count))
    half = np.asarray(jacket.splice.width) / 2.0 + added.layer.diameter
    reach = np.arcsin(np.minimum(half / added.layer.circle_radius, 1.0))
    met: Real = np.asarray(False)
    for number in range(count):
        clock = added.layer.first_angle + 2.0 * np.pi * number / np.asarray(added.layer.count)
        # distance to the nearer of the two seams, which lie half a turn apart
        offset = np.abs((clock - jacket.sleeve.seam_angle + np.pi / 2.0) % np.pi - np.pi / 2.0)
        met = np.logical_or(met, offset <= reach)
    return met
