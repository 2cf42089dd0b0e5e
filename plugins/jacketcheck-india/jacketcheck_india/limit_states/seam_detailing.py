"""Layout of the seam bolts: pitch and edge distances."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.plugin import (
    Hole,
    Jacket,
    Kind,
    Real,
    Result,
    Step,
    length_at_least,
    length_at_most,
    limit_state,
    thinnest_plate,
)
from jacketcheck_india.codes import is_800
from jacketcheck_india.mechanics import detailing

__all__ = ["bolt_edge_distance", "bolt_spacing"]

_SHEARED: Final = "sheared or hand flame cut"
_MACHINED: Final = "rolled, machine flame cut, sawn or planed"
_EDGE_UNKNOWN: Final = (
    "how edges are cut is not part of the input: they are taken as sheared or hand flame cut, the "
    "stricter kind; rolled and machine-cut edges are reported below"
)
_IN_THE_OPEN: Final = "a bridge column stands in the open: taken as exposed to corrosive influences"


@limit_state("bolt-spacing", title="Spacing of the seam bolts", provisions="india",
             effort="closed-form")  # fmt: skip
def bolt_spacing(jacket: Jacket) -> list[Result]:
    """Least and largest distance between rows and between columns."""
    bolts, plate = jacket.bolts, thinnest_plate(jacket)
    rows = _spacing(jacket, "rows (pitch)", bolts.pitch)
    rows.append(
        length_at_most(
            "Largest bolt spacing in the line at an edge",
            "rows (pitch)",
            provided=bolts.pitch,
            source="input bolts.pitch",
            given=_ply(jacket),
            allowed=detailing.max_edge_line_pitch(plate),
            clause=is_800("10.2.3.3"),
            symbol="p",
            rule="min(100 mm + 4 t, 200 mm)",
        )
    )
    if np.all(np.greater(bolts.columns, 1)):
        rows += _spacing(jacket, "columns (gauge)", bolts.gauge)
        rows.append(
            length_at_most(
                "Largest bolt spacing along the force",
                "columns (gauge)",
                provided=bolts.gauge,
                source="input bolts.gauge",
                given=_ply(jacket),
                allowed=detailing.max_tension_pitch(plate),
                clause=is_800("10.2.3.2"),
                symbol="p",
                rule="min(16 t, 200 mm)",
            )
        )
    return rows


def _bolt(jacket: Jacket) -> Step:
    bolts = jacket.bolts
    return Step(
        "d", f"{bolts.product}, {bolts.size}", bolts.diameter, "mm", bolts.source_of("diameter")
    )


def _ply(jacket: Jacket) -> Step:
    source = "input sleeve.thickness, splice.thickness, splice.inside_thickness"
    return Step("t", "thinnest plate", thinnest_plate(jacket), "mm", source)


def _spacing(jacket: Jacket, where: str, provided: Real) -> list[Result]:
    return [
        length_at_least(
            "Least bolt spacing",
            where,
            provided=provided,
            given=_bolt(jacket),
            needed=detailing.min_pitch(jacket.bolts.diameter),
            clause=is_800("10.2.2"),
            symbol="p",
            rule="2.5 d",
        ),
        length_at_most(
            "Largest bolt spacing",
            where,
            provided=provided,
            given=_ply(jacket),
            allowed=detailing.max_pitch(thinnest_plate(jacket)),
            clause=is_800("10.2.3.1"),
            symbol="p",
            rule="min(32 t, 300 mm)",
        ),
    ]


@limit_state("bolt-edge-distance", title="Edge distances of the seam bolts", provisions="india",
             effort="closed-form")  # fmt: skip
def bolt_edge_distance(jacket: Jacket) -> list[Result]:
    """Least and largest distances to the sleeve's and the plates' edges."""
    bolts = jacket.bolts
    places = [
        ("sleeve edge at the seam", bolts.seam_edge_distance, jacket.sleeve.hole, "along"),
        ("vertical edge of the plate", bolts.plate_edge_distance, jacket.splice.hole, "along"),
    ]
    places += [
        (f"ends of {ply or 'sleeve and plates'}", bolts.end_distance, hole, "across")
        for ply, hole in jacket.holes.items()
    ]
    return [
        row
        for where, distance, hole, direction in places
        for row in (
            *_nearest(where, distance, hole, direction),
            *_farthest(jacket, where, distance),
        )
    ]


def _nearest(where: str, distance: Real, hole: Hole, direction: str) -> list[Result]:
    clause, size = is_800("10.2.4.2"), hole.along if direction == "along" else hole.across
    given = Step("d_0", f"{hole.kind} hole {direction} the force", size, "mm",
                 hole.source_of(direction))  # fmt: skip
    sheared = length_at_least(
        "Least edge distance",
        where,
        provided=distance,
        given=given,
        needed=detailing.min_edge_distance(size, edge=_SHEARED),
        clause=clause,
        symbol="e",
        rule=f"1.7 d_0, {_SHEARED}",
    )
    machined = length_at_least(
        "Least edge distance, rolled or machine-cut edge",
        where,
        provided=distance,
        given=given,
        needed=detailing.min_edge_distance(size, edge=_MACHINED),
        clause=clause,
        symbol="e",
        rule=f"1.5 d_0, {_MACHINED}",
    )
    return [replace(sheared, notes=(_EDGE_UNKNOWN,)), replace(machined, kind=Kind.REPORTED)]


def _farthest(jacket: Jacket, where: str, distance: Real) -> list[Result]:
    clause, plate = is_800("10.2.4.3"), thinnest_plate(jacket)
    strongest = np.maximum(jacket.sleeve.steel.yield_strength, jacket.splice.steel.yield_strength)
    strength = Step(
        "f_y", "the stronger plate", strongest, "MPa",
        "; ".join(dict.fromkeys(one.steel.source_of("yield_strength")
                                for one in (jacket.sleeve, jacket.splice))),
    )  # fmt: skip
    general = length_at_most(
        "Largest edge distance",
        where,
        provided=distance,
        given=(_ply(jacket), strength),
        allowed=detailing.max_edge_distance(plate, yield_strength=strongest),
        clause=clause,
        symbol="e",
        rule="12 t √(250/f_y)",
    )
    exposed = length_at_most(
        "Largest edge distance, exposed to corrosion",
        where,
        provided=distance,
        given=_ply(jacket),
        allowed=detailing.max_corrosion_edge_distance(plate),
        clause=clause,
        symbol="e",
        rule="40 mm + 4 t",
    )
    return [general, replace(exposed, notes=(_IN_THE_OPEN,))]
