"""Slip of the seam bolts: the friction that keeps the sleeve from opening at its seams."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.analysis.hoop_action import lowest_hole_factor
from jacketcheck.analysis.hoop_demand import add_bolt_force
from jacketcheck.analysis.splice import effective_planes
from jacketcheck.catalog.records import FayingClass
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._rows import not_evaluated
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.limit_states.snug_bolts import probable_slip_row
from jacketcheck.mechanics import slip
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.slip_hole_factors import (
    aashto_hole_size_factor,
    aisc_slip_resistance_factor,
)
from jacketcheck.results import Result, Steps

__all__ = ["faying_class_of", "seam_slip"]

_TITLE: Final = "Slip of the seam bolts"
_PLACE: Final = "hardest-worked row"
_SNUG: Final = (
    "snug-tight bolts have no design slip resistance; a measured tension gives a probable value "
    "only"
)
_FILLERS: Final = (
    "fillers slip like the plates: both their faces have the faying class. AISC reduces slip for "
    "two or more (J3.9), AASHTO for none (6.13.6.1.4, from memory)"
)
_ONE_SIDED: Final = (
    "plates outside only bend: the couple shifts the contact pressure between the plies, and the "
    "clamping force of each bolt stays what it was"
)


def faying_class_of(jacket: Jacket, code: str) -> FayingClass:
    """Faying class of a code, or of one that the class is the same as.

    Raises
    ------
    NotEvaluatedError
        If the input names no class of the code: letters mean different things in other codes.
    """
    for one in jacket.bolts.faying_classes:
        if one.code == code:
            return one
    named = ", ".join(one.name for one in jacket.bolts.faying_classes)
    message = f"no faying class of {code} in bolts.faying_class, which names {named}"
    raise NotEvaluatedError(f"{message}; a class is always written with its code")


@limit_state(
    "seam-slip",
    title=_TITLE,
    monotonic={"bolts.pretension": -1, "bolts.faying_classes.1.slip_coefficient": -1},
    effort="closed-form",
    scatter=Scatter(
        "hoop force on a bolt exceeds friction under its actual pretension; bolts "
        "that are only snug hold nothing; oversized and slotted holes hold less than "
        "standard ones",
        rules=("aisc-slip", "aashto-slip"),
    ),
)
def seam_slip(jacket: Jacket) -> list[Result]:
    """Slip resistance by AISC and by AASHTO, one row each, and a probable value of snug bolts."""
    rows = [
        _slip(jacket, "AISC", _aisc, f"{AISC} J3.9"),
        _slip(jacket, "AASHTO", _aashto, f"{AASHTO} 6.13.2.8"),
    ]
    if jacket.bolts.measured_tension is not None:
        coefficients = [one.slip_coefficient for one in jacket.bolts.faying_classes]
        rows.append(
            probable_slip_row(
                jacket,
                slip_coefficient=np.min(coefficients, axis=0),
                surface="smallest of the faying classes",
                source="; ".join(
                    dict.fromkeys(
                        one.source_of("slip_coefficient") for one in jacket.bolts.faying_classes
                    )
                ),
                note=_SNUG,
            )
        )
    return rows


def _slip(
    jacket: Jacket, code: str, row: Callable[[Jacket, FayingClass], Result], clause: str
) -> Result:
    """Row of a code; a visible one too where the input names no class of that code."""
    try:
        faying = faying_class_of(jacket, code)
    except NotEvaluatedError as missing:
        return not_evaluated(_TITLE, str(missing), location=_PLACE, clause=clause)
    return row(jacket, faying)


def _add_inputs(
    jacket: Jacket, faying: FayingClass, steps: Steps, *, symbols: tuple[str, str, str]
) -> None:
    """Write down slip coefficient, pretension and planes by the symbols of a code."""
    bolts, (coefficient, tension, planes) = jacket.bolts, symbols
    steps.figure(coefficient, f"class {faying.name}", faying, "slip_coefficient", "1")
    if bolts.pretensioned:
        steps.figure(tension, f"{bolts.product}, {bolts.size}", bolts, "pretension", "N")
    else:
        steps.add(tension, "snug-tight: none counted", 0.0, "N", "input bolts.tightening")
    steps.add(
        planes,
        "slip planes, by the largest share",
        effective_planes(jacket),
        "1",
        "statics of the plates",
    )


def _aisc(jacket: Jacket, faying: FayingClass) -> Result:
    steps, bolts = Steps(), jacket.bolts
    clause = f"{AISC} J3.9"
    demand = add_bolt_force(jacket, steps)
    _add_inputs(jacket, faying, steps, symbols=("μ", "T_b", "n_s"))
    steps.add("D_u", "pretension ratio", slip.AISC_PRETENSION_RATIO, "1", clause)
    fillers = slip.aisc_filler_factor(jacket.splice.fillers)
    none = not np.any(np.greater(jacket.splice.fillers, 0.0))
    steps.add("h_f", "no fillers" if none else "fillers at a slip plane", fillers, "1", clause)
    hole = jacket.least_hole(aisc_slip_resistance_factor)
    factor = steps.add("φ", f"{hole} hole", aisc_slip_resistance_factor(hole), "1", clause)
    nominal = slip.aisc_slip_resistance(
        faying.slip_coefficient,
        pretension=bolts.pretension,
        slip_planes=effective_planes(jacket),
        filler_factor=fillers,
        pretensioned=bolts.pretensioned,
    )
    steps.add("R_n", "μ D_u h_f T_b n_s", nominal, "N", f"{clause}, Eq. J3-4")
    capacity = steps.add("φR_n", "φ R_n", factor * nominal, "N", clause)
    row = _row(jacket, demand, capacity, steps, clause)
    # D_u is a mean pretension over the minimum, and larger holes hold less than standard ones
    bias = slip.AISC_PRETENSION_RATIO / lowest_hole_factor(jacket)
    return replace(row, rule="aisc-slip", resistance_factor=factor, bias=bias)


def _aashto(jacket: Jacket, faying: FayingClass) -> Result:
    steps, bolts = Steps(), jacket.bolts
    clause = f"{AASHTO} 6.13.2.8"
    demand = add_bolt_force(jacket, steps)
    _add_inputs(jacket, faying, steps, symbols=("K_s", "P_t", "N_s"))
    kind = jacket.least_hole(aashto_hole_size_factor)
    hole = steps.add("K_h", f"{kind} hole", aashto_hole_size_factor(kind), "1",
                     f"{AASHTO} Table 6.13.2.8-2")  # fmt: skip
    nominal = slip.aashto_slip_resistance(
        faying.slip_coefficient,
        pretension=bolts.pretension,
        slip_planes=effective_planes(jacket),
        hole_size_factor=hole,
        pretensioned=bolts.pretensioned,
    )
    capacity = steps.add("R_r", "K_h K_s N_s P_t", nominal, "N", clause)
    row = _row(jacket, demand, capacity, steps, clause)
    return replace(row, rule="aashto-slip", bias=hole / lowest_hole_factor(jacket))


def _row(jacket: Jacket, demand: Real, capacity: Real, steps: Steps, clause: str) -> Result:
    notes = () if jacket.bolts.pretensioned else (_SNUG,)
    if np.any(np.greater(jacket.splice.fillers, 0.0)):
        notes = (*notes, _FILLERS)
    if np.any(np.less(jacket.splice.shear_planes, 2)):
        notes = (*notes, _ONE_SIDED)
    return Result(
        title=_TITLE,
        location=_PLACE,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=clause,
        steps=steps.lines,
        notes=notes,
    )
