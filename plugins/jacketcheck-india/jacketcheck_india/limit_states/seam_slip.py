"""Slip of the seam bolts of friction type."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.mechanics.bolt_strength import seam_joint_length
from jacketcheck.plugin import (
    FayingClass,
    Jacket,
    Kind,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    add_bolt_force,
    effective_planes,
    faying_class_of,
    limit_state,
    probable_slip_row,
)
from jacketcheck_india.codes import is_800
from jacketcheck_india.limit_states._rows import HARDEST_ROW
from jacketcheck_india.mechanics.bolt_strength import long_joint_factor
from jacketcheck_india.mechanics.slip import (
    SLIP_FACTOR_SERVICE,
    SLIP_FACTOR_ULTIMATE,
    slip_capacity,
    slip_hole_factor,
)

__all__ = ["seam_slip"]

_TITLE: Final = "Slip of the seam bolts"
_CLAUSE: Final = is_800("10.4.3")
_SNUG: Final = "snug-tight bolts have no slip capacity"
_OTHER_BOLT: Final = (
    "the minimum tension is that of the bolts' own standard, not 0.70 f_ub A_nb of IS 800:2007"
)
_SERVICE: Final = (
    "for a joint that may slip into bearing beyond service load; the sleeve clamps only as long as "
    "its seams do not slip, so that the row at ultimate load has the verdict"
)
_METHODS: Final = ("snug", "turn-of-nut", "direct-tension-indicator")


@limit_state("seam-slip", title=_TITLE, provisions="india", monotonic={"bolts.pretension": -1},
             effort="closed-form")  # fmt: skip
def seam_slip(jacket: Jacket) -> list[Result]:
    """Slip at ultimate load, the figure at service load beside it, and a probable value."""
    _require_known_tensioning(jacket)
    faying = faying_class_of(jacket, "IS 800")
    ultimate = _row(jacket, faying, SLIP_FACTOR_ULTIMATE, title=_TITLE)
    service = _row(jacket, faying, SLIP_FACTOR_SERVICE, title=f"{_TITLE}, factor at service load")
    rows = [
        replace(ultimate, notes=_notes(jacket)),
        replace(service, notes=(_SERVICE,), kind=Kind.REPORTED),
    ]
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


def _require_known_tensioning(jacket: Jacket) -> None:
    method = jacket.bolts.tightening
    if method not in _METHODS:
        raise NotEvaluatedError(
            "IS 4000:1992 knows the part-turn method (turn-of-nut) and direct tension indicators; "
            f"no minimum bolt tension goes with {method!r}"
        )


def _notes(jacket: Jacket) -> tuple[str, ...]:
    if not jacket.bolts.pretensioned:
        return (_SNUG,)
    return () if jacket.bolts.product.startswith("IS 3757") else (_OTHER_BOLT,)


def _row(jacket: Jacket, faying: FayingClass, factor: float, *, title: str) -> Result:
    steps = Steps()
    demand = add_bolt_force(jacket, steps)
    nominal = _add_nominal(jacket, faying, steps)
    steps.add("γ_mf", "partial safety factor", factor, "1", _CLAUSE)
    capacity = steps.add("V_dsf", "V_nsf/γ_mf", np.divide(nominal, factor), "N", _CLAUSE)
    return Result(title, HARDEST_ROW, demand, capacity, "N", _CLAUSE, steps.lines)


def _add_nominal(jacket: Jacket, faying: FayingClass, steps: Steps) -> Real:
    bolts = jacket.bolts
    tension = bolts.pretension if bolts.pretensioned else 0.0
    length = seam_joint_length(columns=bolts.columns, gauge=bolts.gauge)
    steps.figure("μ_f", faying.preparation, faying, "slip_coefficient", "1")
    told = f"{bolts.product}, {bolts.size}" if bolts.pretensioned else "snug-tight: none counted"
    steps.add("F_o", told, tension, "N", bolts.source_of("pretension"))
    steps.add(
        "n_e",
        "interfaces, by the largest share",
        effective_planes(jacket),
        "1",
        "statics of the plates",
    )
    kind = jacket.least_hole(slip_hole_factor)
    hole = steps.add("K_h", f"{kind} hole", slip_hole_factor(kind), "1", _CLAUSE)
    joint = long_joint_factor(length, diameter=bolts.diameter)
    steps.add("g", "spacing of the columns, 0 of one", bolts.gauge, "mm", "input bolts.gauge")
    steps.add("l_j", "(n_c − 1) g", length, "mm", "geometry")
    steps.figure("d", f"{bolts.product}, {bolts.size}", bolts, "diameter", "mm")
    steps.add("β_lj", "min(max(1.075 − l_j/(200 d), 0.75), 1)", joint, "1", is_800("10.4.3.1"))
    nominal = slip_capacity(
        faying.slip_coefficient,
        bolt_tension=tension,
        interfaces=effective_planes(jacket),
        hole_factor=hole,
        long_joint_factor=joint,
    )
    return steps.add("V_nsf", "μ_f n_e K_h F_o β_lj", nominal, "N", _CLAUSE)
