"""Layout of the seam bolts: spacing, end and edge distances."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import Jacket, Real, Result
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.limit_states._bolt_holes import hole_distances
from jacketcheck_europe.limit_states._rows import at_least, at_most
from jacketcheck_europe.mechanics import detailing
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["bolt_edge_distance", "bolt_spacing"]

_CLAUSE = f"{EN_1993_8} Table 3.3"


def bolt_spacing(
    jacket: Jacket,
    factors: PartialFactors,  # noqa: ARG001 - called like the others
) -> list[Result]:
    """Least and largest spacing of rows, which lie across the force, and of columns."""
    bolts, distances = jacket.bolts, hole_distances(jacket)
    largest = detailing.largest_spacing(_outer_thickness(jacket), exposure=_exposure(jacket))
    rule = "min(14 t, 200 mm), painted; min(14 t, 175 mm), weathering steel"
    rows = [
        at_least("Least bolt spacing", "rows (pitch)", provided=distances.pitch,
                 needed=detailing.least_spacing_across(distances.hole), clause=_CLAUSE,
                 symbol="p_2", rule="2.4 d_0"),
        at_most("Largest bolt spacing", "rows (pitch)", provided=bolts.pitch, allowed=largest,
                clause=_CLAUSE, symbol="p_2", rule=rule),
    ]  # fmt: skip
    if np.any(np.greater(bolts.columns, 1)):
        rows += [
            at_least("Least bolt spacing", "columns (gauge)", provided=distances.gauge,
                     needed=detailing.least_spacing_along(distances.hole), clause=_CLAUSE,
                     symbol="p_1", rule="2.2 d_0"),
            at_most("Largest bolt spacing", "columns (gauge)", provided=bolts.gauge,
                    allowed=largest, clause=_CLAUSE, symbol="p_1", rule=rule),
        ]  # fmt: skip
    return rows


def bolt_edge_distance(
    jacket: Jacket,
    factors: PartialFactors,  # noqa: ARG001 - called like the others
) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts, distances = jacket.bolts, hole_distances(jacket)
    least = detailing.least_edge_distance(distances.hole, hole_type=bolts.hole)
    largest = detailing.largest_edge_distance(_outer_thickness(jacket), exposure=_exposure(jacket))
    edges = (
        ("sleeve edge at the seam", "e_1", distances.seam_edge, bolts.seam_edge_distance),
        ("vertical edge of the plate", "e_1", distances.plate_edge, bolts.plate_edge_distance),
        ("ends of sleeve and plates", "e_2", distances.end, bolts.end_distance),
    )
    rows = []
    for where, symbol, clear, centre in edges:
        rows += [
            at_least("Least edge distance", where, provided=clear, needed=least, clause=_CLAUSE,
                     symbol=symbol, rule="1.2 d_0; 1.5 d_0 from the end or axis of a slot"),
            at_most("Largest edge distance", where, provided=centre, allowed=largest,
                    clause=_CLAUSE, symbol=symbol,
                    rule="4 t + 40 mm, painted; max(8 t, 125 mm), weathering steel"),
        ]  # fmt: skip
    return rows


def _exposure(jacket: Jacket) -> detailing.Exposure:
    return "weathering" if jacket.sleeve.exposure == "weathering" else "painted"


def _outer_thickness(jacket: Jacket) -> Real:
    """Thickness of the thinner outer part: of two splice plates, or of sleeve and single plate."""
    splice = jacket.splice
    one_sided = np.less_equal(splice.inside_thickness, 0.0)
    other = np.where(one_sided, jacket.sleeve.thickness, splice.inside_thickness)
    return np.minimum(splice.outside_thickness, other)
