"""Layout of the seam bolts: spacing, end and edge distances."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Jacket, Real, Result, Step, length_at_least, length_at_most
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.limit_states._bolt_holes import hole_distances
from jacketcheck_europe.mechanics import detailing
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["bolt_edge_distance", "bolt_spacing"]

_CLAUSE: Final = f"{EN_1993_8} Table 3.3"
_SPACING_RULES: Final = {"painted": "min(14 t, 200 mm)", "weathering": "min(14 t, 175 mm)"}
_EDGE_RULES: Final = {"painted": "4 t + 40 mm", "weathering": "max(8 t, 125 mm)"}


def bolt_spacing(
    jacket: Jacket,
    factors: PartialFactors,  # noqa: ARG001 - called like the others
) -> list[Result]:
    """Least and largest spacing of rows, which lie across the force, and of columns."""
    bolts, distances, exposure = jacket.bolts, hole_distances(jacket), _exposure(jacket)
    hole, outer = _hole(jacket), _outer(jacket)
    largest = detailing.largest_spacing(_outer_thickness(jacket), exposure=exposure)
    rule = _SPACING_RULES[exposure]
    rows = [
        length_at_least(
            "Least bolt spacing",
            "rows (pitch)",
            given=hole,
            provided=distances.pitch,
            needed=detailing.least_spacing_across(distances.hole),
            clause=_CLAUSE,
            symbol="p_2",
            rule="2.4 d_0",
        ),
        length_at_most(
            "Largest bolt spacing",
            "rows (pitch)",
            given=outer,
            provided=bolts.pitch,
            allowed=largest,
            clause=_CLAUSE,
            symbol="p_2",
            rule=rule,
        ),
    ]
    if np.any(np.greater(bolts.columns, 1)):
        rows += [
            length_at_least(
                "Least bolt spacing",
                "columns (gauge)",
                given=hole,
                provided=distances.gauge,
                needed=detailing.least_spacing_along(distances.hole),
                clause=_CLAUSE,
                symbol="p_1",
                rule="2.2 d_0",
            ),
            length_at_most(
                "Largest bolt spacing",
                "columns (gauge)",
                given=outer,
                provided=bolts.gauge,
                allowed=largest,
                clause=_CLAUSE,
                symbol="p_1",
                rule=rule,
            ),
        ]
    return rows


def bolt_edge_distance(
    jacket: Jacket,
    factors: PartialFactors,  # noqa: ARG001 - called like the others
) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts, distances, exposure = jacket.bolts, hole_distances(jacket), _exposure(jacket)
    hole, outer = _hole(jacket), _outer(jacket)
    least = detailing.least_edge_distance(distances.hole, hole_type=bolts.hole)
    largest = detailing.largest_edge_distance(_outer_thickness(jacket), exposure=exposure)
    slotted = "slot" in bolts.hole
    edges = (
        ("sleeve edge at the seam", "e_1", distances.seam_edge, bolts.seam_edge_distance),
        ("vertical edge of the plate", "e_1", distances.plate_edge, bolts.plate_edge_distance),
        ("ends of sleeve and plates", "e_2", distances.end, bolts.end_distance),
    )
    rows = []
    for where, symbol, clear, centre in edges:
        rows += [
            length_at_least(
                "Least edge distance",
                where,
                given=hole,
                provided=clear,
                needed=least,
                clause=_CLAUSE,
                symbol=symbol,
                rule="1.5 d_0, from the end or axis of the slot" if slotted else "1.2 d_0",
            ),
            length_at_most(
                "Largest edge distance",
                where,
                given=outer,
                provided=centre,
                allowed=largest,
                clause=_CLAUSE,
                symbol=symbol,
                rule=_EDGE_RULES[exposure],
            ),
        ]
    return rows


def _exposure(jacket: Jacket) -> detailing.Exposure:
    return "weathering" if jacket.sleeve.exposure == "weathering" else "painted"


def _hole(jacket: Jacket) -> Step:
    bolts = jacket.bolts
    width = hole_distances(jacket).hole
    return Step("d_0", f"{bolts.hole} hole, of slots the width", width, "mm", bolts.hole_source)


def _outer(jacket: Jacket) -> Step:
    thinner = _outer_thickness(jacket)
    return Step("t", f"thinner outer part, {jacket.sleeve.exposure}", thinner, "mm", "input")


def _outer_thickness(jacket: Jacket) -> Real:
    """Thickness of the thinner outer part: of two splice plates, or of sleeve and single plate."""
    splice = jacket.splice
    one_sided = np.less_equal(splice.inside_thickness, 0.0)
    other = np.where(one_sided, jacket.sleeve.thickness, splice.inside_thickness)
    return np.minimum(splice.outside_thickness, other)
