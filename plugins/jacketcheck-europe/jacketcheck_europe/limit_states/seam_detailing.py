"""Layout of the seam bolts: spacing, end and edge distances."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Hole, Jacket, Real, Result, Step, length_at_least, length_at_most
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.limit_states._bolt_holes import hole_distances, width_figure
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
    bolts, exposure = jacket.bolts, _exposure(jacket)
    largest = detailing.largest_spacing(_outer_thickness(jacket), exposure=exposure)

    def most(where: str, symbol: str, provided: Real) -> Result:
        return length_at_most(
            "Largest bolt spacing",
            where,
            given=_outer(jacket),
            provided=provided,
            allowed=largest,
            clause=_CLAUSE,
            symbol=symbol,
            rule=_SPACING_RULES[exposure],
        )

    rows = [*_least_spacing(jacket, "rows (pitch)"), most("rows (pitch)", "p_2", bolts.pitch)]
    if np.any(np.greater(bolts.columns, 1)):
        rows += _least_spacing(jacket, "columns (gauge)")
        rows.append(most("columns (gauge)", "p_1", bolts.gauge))
    return rows


def _least_spacing(jacket: Jacket, where: str) -> list[Result]:
    """A row, or one for each ply where their holes differ."""
    found = []
    for ply, hole in jacket.holes.items():
        distances = hole_distances(jacket, hole)
        provided, symbol, rule, least = (
            (distances.pitch, "p_2", "2.4 d_0", detailing.least_spacing_across)
            if where == "rows (pitch)"
            else (distances.gauge, "p_1", "2.2 d_0", detailing.least_spacing_along)
        )
        found.append(
            length_at_least(
                "Least bolt spacing",
                f"{where}, {ply}" if ply else where,
                given=_hole(jacket, hole),
                provided=provided,
                needed=least(distances.hole),
                clause=_CLAUSE,
                symbol=symbol,
                rule=rule,
            )
        )
    return found


def bolt_edge_distance(
    jacket: Jacket,
    factors: PartialFactors,  # noqa: ARG001 - called like the others
) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts, exposure = jacket.bolts, _exposure(jacket)
    sleeve, splice = jacket.sleeve.hole, jacket.splice.hole
    largest = detailing.largest_edge_distance(_outer_thickness(jacket), exposure=exposure)
    edges = [
        ("sleeve edge at the seam", "e_1", sleeve,
         hole_distances(jacket, sleeve).seam_edge, bolts.seam_edge_distance),
        ("vertical edge of the plate", "e_1", splice,
         hole_distances(jacket, splice).plate_edge, bolts.plate_edge_distance),
    ]  # fmt: skip
    edges += [
        (f"ends of {ply or 'sleeve and plates'}", "e_2", hole,
         hole_distances(jacket, hole).end, bolts.end_distance)
        for ply, hole in jacket.holes.items()
    ]  # fmt: skip
    rows = []
    for where, symbol, hole, clear, centre in edges:
        width = hole_distances(jacket, hole).hole
        slotted = "slot" in hole.kind
        rows += [
            length_at_least(
                "Least edge distance",
                where,
                given=_hole(jacket, hole),
                provided=clear,
                needed=detailing.least_edge_distance(width, hole_type=hole.kind),
                clause=_CLAUSE,
                symbol=symbol,
                rule="1.5 d_0, from the end or axis of the slot" if slotted else "1.2 d_0",
            ),
            length_at_most(
                "Largest edge distance",
                where,
                given=_outer(jacket),
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


def _hole(jacket: Jacket, hole: Hole) -> Step:
    width = hole_distances(jacket, hole).hole
    return Step("d_0", f"{hole.kind} hole, of slots the width", width, "mm",
                hole.source_of(width_figure(hole)))  # fmt: skip


def _outer(jacket: Jacket) -> Step:
    thinner = _outer_thickness(jacket)
    return Step("t", f"thinner outer part, {jacket.sleeve.exposure}", thinner, "mm",
                "input sleeve.thickness, splice.thickness, splice.inside_thickness")  # fmt: skip


def _outer_thickness(jacket: Jacket) -> Real:
    """Thickness of the thinner outer part: of two splice plates, or of sleeve and single plate."""
    splice = jacket.splice
    one_sided = np.less_equal(splice.inside_thickness, 0.0)
    other = np.where(one_sided, jacket.sleeve.thickness, splice.inside_thickness)
    return np.minimum(splice.outside_thickness, other)
