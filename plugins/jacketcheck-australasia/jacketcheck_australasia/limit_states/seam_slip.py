"""Slip of the seam bolts in friction-type joints."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import (
    FayingClass,
    Jacket,
    LimitState,
    NotEvaluatedError,
    Result,
    Steps,
    add_bolt_force,
    effective_planes,
    faying_class_of,
    limit_state,
    probable_slip_row,
)
from jacketcheck_australasia.codes import SteelCode
from jacketcheck_australasia.limit_states._rows import HARDEST_ROW, factored
from jacketcheck_australasia.mechanics.slip import (
    SLIP_CAPACITY_FACTOR,
    slip_capacity,
    slip_hole_factor,
)

__all__ = ["seam_slip"]

_TITLE: Final = "Slip of the seam bolts"
_STATE: Final = (
    "{code} makes slip a serviceability limit state; the sleeve clamps only as long as its seams "
    "do not slip, so that the hoop force of the event checked is compared (engineering judgement)"
)
_SNUG: Final = "snug-tight bolts (category 8.8/S) have no slip capacity"
_OTHER_BOLT: Final = (
    "the minimum bolt tension is that of the bolts' own standard; {code} prints tensions for "
    "AS/NZS 1252 bolts only"
)
_METHODS: Final = ("snug", "turn-of-nut", "direct-tension-indicator")


def seam_slip(code: SteelCode) -> LimitState:
    """Slip by one code; without a faying class of that code it cannot be evaluated."""

    @limit_state(
        "seam-slip",
        title=_TITLE,
        provisions=code.provisions,
        monotonic={"bolts.pretension": -1},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        _require_known_tensioning(jacket, code)
        faying = faying_class_of(jacket, code.faying_code)
        rows = [_design(jacket, code, faying)]
        if jacket.bolts.measured_tension is not None:
            rows.append(
                probable_slip_row(
                    jacket,
                    slip_coefficient=faying.slip_coefficient,
                    surface=faying.name,
                    source=faying.source,
                    note=_SNUG,
                )
            )
        return rows

    return evaluate


def _require_known_tensioning(jacket: Jacket, code: SteelCode) -> None:
    method = jacket.bolts.tightening
    if method not in _METHODS:
        raise NotEvaluatedError(
            f"{code.tensioning} knows the part-turn method (turn-of-nut) and direct-tension "
            f"indicators; no minimum bolt tension goes with {method!r}"
        )


def _design(jacket: Jacket, code: SteelCode, faying: FayingClass) -> Result:
    steps, bolts, clause = Steps(), jacket.bolts, code.clause(code.slip)
    demand = add_bolt_force(jacket, steps)
    steps.figure("μ", faying.preparation, faying, "slip_coefficient", "1")
    if bolts.pretensioned:
        steps.figure("N_ti", f"{bolts.product}, {bolts.size}", bolts, "pretension", "N")
    else:
        steps.add("N_ti", "snug-tight: none counted", 0.0, "N", "input bolts.tightening")
    steps.add(
        "n_ei",
        "interfaces, by the largest share",
        effective_planes(jacket),
        "1",
        "statics of the plates",
    )
    kind = jacket.least_hole(slip_hole_factor)
    factor = steps.add("k_h", f"{kind} hole", slip_hole_factor(kind), "1", clause)
    nominal = slip_capacity(
        faying.slip_coefficient,
        bolt_tension=bolts.pretension if bolts.pretensioned else 0.0,
        interfaces=effective_planes(jacket),
        hole_factor=factor,
    )
    steps.add("V_sf", "μ n_ei N_ti k_h", nominal, "N", clause)
    capacity = factored(
        steps, "V_sf", nominal, factor=SLIP_CAPACITY_FACTOR, unit="N", code=code, clause=clause
    )
    notes = _notes(jacket, code)
    return Result(_TITLE, HARDEST_ROW, demand, capacity, "N", clause, steps.lines, notes)


def _notes(jacket: Jacket, code: SteelCode) -> tuple[str, ...]:
    notes = [_STATE.format(code=code.name)]
    if not jacket.bolts.pretensioned:
        notes.append(_SNUG)
    elif not jacket.bolts.product.startswith("AS/NZS 1252"):
        notes.append(_OTHER_BOLT.format(code=code.name))
    return tuple(notes)
