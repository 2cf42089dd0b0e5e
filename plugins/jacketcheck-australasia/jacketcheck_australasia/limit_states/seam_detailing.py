"""Layout of the seam bolts: pitch and edge distances."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.plugin import (
    Jacket,
    Kind,
    LimitState,
    Real,
    Result,
    Step,
    length_at_least,
    length_at_most,
    limit_state,
    thinnest_plate,
)
from jacketcheck_australasia.codes import SteelCode
from jacketcheck_australasia.mechanics import detailing

__all__ = ["bolt_edge_distance", "bolt_spacing"]

_SHEARED: Final = "sheared or hand flame cut"
_MACHINED: Final = "machine flame cut, sawn or planed"
_EDGE_UNKNOWN: Final = (
    "how edges are cut is not part of the input: they are taken as sheared or hand flame cut, the "
    "strictest kind; machine-cut edges are reported below"
)


def bolt_spacing(code: SteelCode) -> LimitState:
    """Least and largest distance between rows and between columns."""

    @limit_state(
        "bolt-spacing",
        title="Spacing of the seam bolts",
        provisions=code.provisions,
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        bolts, ply = jacket.bolts, thinnest_plate(jacket)
        rows = _spacing(jacket, code, "rows (pitch)", bolts.pitch)
        if np.all(np.greater(bolts.columns, 1)):
            rows += _spacing(jacket, code, "columns (gauge)", bolts.gauge)
            rows.append(
                length_at_most(
                    "Largest bolt spacing in an outside line",
                    "columns (gauge)",
                    provided=bolts.gauge,
                    source="input bolts.gauge",
                    given=_ply(jacket),
                    allowed=detailing.max_outside_line_pitch(ply),
                    clause=code.clause(code.max_pitch),
                    symbol="s",
                    rule="min(4 t_p + 100 mm, 200 mm)",
                )
            )
        return rows

    return evaluate


def _bolt(jacket: Jacket) -> Step:
    bolts = jacket.bolts
    return Step(
        "d_f", f"{bolts.product}, {bolts.size}", bolts.diameter, "mm", bolts.source_of("diameter")
    )


def _ply(jacket: Jacket) -> Step:
    source = "input sleeve.thickness, splice.thickness, splice.inside_thickness"
    return Step("t_p", "thinnest ply", thinnest_plate(jacket), "mm", source)


def _spacing(jacket: Jacket, code: SteelCode, where: str, provided: Real) -> list[Result]:
    return [
        length_at_least(
            "Least bolt spacing",
            where,
            provided=provided,
            given=_bolt(jacket),
            needed=detailing.min_pitch(jacket.bolts.diameter),
            clause=code.clause(code.min_pitch),
            symbol="s",
            rule="2.5 d_f",
        ),
        length_at_most(
            "Largest bolt spacing",
            where,
            provided=provided,
            given=_ply(jacket),
            allowed=detailing.max_pitch(thinnest_plate(jacket)),
            clause=code.clause(code.max_pitch),
            symbol="s",
            rule="min(15 t_p, 200 mm)",
        ),
    ]


def bolt_edge_distance(code: SteelCode) -> LimitState:
    """Least and largest distances to the sleeve's and the plates' edges."""

    @limit_state(
        "bolt-edge-distance",
        title="Edge distances of the seam bolts",
        provisions=code.provisions,
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        bolts = jacket.bolts
        places = (
            ("sleeve edge at the seam", bolts.seam_edge_distance),
            ("vertical edge of the plate", bolts.plate_edge_distance),
            ("ends of sleeve and plates", bolts.end_distance),
        )
        return [row for where, distance in places for row in _edge(jacket, code, where, distance)]

    return evaluate


def _edge(jacket: Jacket, code: SteelCode, where: str, distance: Real) -> list[Result]:
    clause, diameter = code.clause(code.min_edge), jacket.bolts.diameter
    sheared = length_at_least(
        "Least edge distance",
        where,
        provided=distance,
        given=_bolt(jacket),
        needed=detailing.min_edge_distance(diameter, edge=_SHEARED),
        clause=clause,
        symbol="e",
        rule=f"1.75 d_f, {_SHEARED}",
    )
    machined = length_at_least(
        "Least edge distance, machine-cut edge",
        where,
        provided=distance,
        given=_bolt(jacket),
        needed=detailing.min_edge_distance(diameter, edge=_MACHINED),
        clause=clause,
        symbol="e",
        rule=f"1.50 d_f, {_MACHINED}",
    )
    farthest = length_at_most(
        "Largest edge distance",
        where,
        provided=distance,
        given=_ply(jacket),
        allowed=detailing.max_edge_distance(thinnest_plate(jacket)),
        clause=code.clause(code.max_edge),
        symbol="e",
        rule="min(12 t_p, 150 mm)",
    )
    return [
        replace(sheared, notes=(_EDGE_UNKNOWN,)),
        replace(machined, kind=Kind.REPORTED),
        farthest,
    ]
