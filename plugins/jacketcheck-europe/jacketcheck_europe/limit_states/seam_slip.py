"""Slip of the seam bolts, category C: none at the ultimate limit state."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import (
    FayingClass,
    Jacket,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    add_bolt_force,
    effective_planes,
    probable_slip_row,
)
from jacketcheck_europe.editions import EN_1993_8
from jacketcheck_europe.faying_classes import EN_CODE
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import slip
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["seam_slip"]

_PLACE = "hardest-worked row"
_SNUG = (
    "snug-tight bolts have no design slip resistance (category A); a measured tension gives a "
    "probable value only"
)


def seam_slip(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Slip resistance of one bolt, and a probable value of snug bolts."""
    faying = _friction_surface(jacket)
    rows = [_slip(jacket, faying, factors)]
    if jacket.bolts.measured_tension is not None:
        rows.append(
            probable_slip_row(
                jacket,
                slip_coefficient=faying.slip_coefficient,
                surface=f"class {faying.name}",
                source=faying.source,
                note=_SNUG,
            )
        )
    return rows


def _friction_surface(jacket: Jacket) -> FayingClass:
    for one in jacket.bolts.faying_classes:
        if one.code == EN_CODE:
            return one
    named = ", ".join(one.name for one in jacket.bolts.faying_classes)
    raise NotEvaluatedError(
        f"no friction surface of {EN_CODE} in bolts.faying_class, which names {named}; the letters "
        "of other codes stand for other slip factors and are not converted: add the class of "
        f'EN 1090-2 that the surface is prepared for, "{EN_CODE} A" to "{EN_CODE} D"'
    )


def _slip(jacket: Jacket, faying: FayingClass, factors: PartialFactors) -> Result:
    steps, clause = Steps(), f"{EN_1993_8} 3.9.1"
    demand = add_bolt_force(jacket, steps)
    steps.figure("μ", f"class {faying.name}", faying, "slip_coefficient", "1")
    preload = _add_preload(jacket, steps)
    surfaces = steps.add("n", "friction surfaces, by the largest share", effective_planes(jacket),
                         "1", "statics of the plates")  # fmt: skip
    kind = jacket.least_hole(slip.hole_factor)
    hole = steps.add("k_s", f"{kind} hole", slip.hole_factor(kind), "1",
                     f"{EN_1993_8} Table 3.6")  # fmt: skip
    steps.add("γ_M3", "slip, category C", factors.slip, "1", f"{EN_1993_8} Table 2.1")
    resistance = slip.slip_resistance(
        faying.slip_coefficient,
        bolt_preload=preload,
        friction_surfaces=surfaces,
        hole_factor=hole,
        partial_factor=factors.slip,
    )
    capacity = steps.add("F_s,Rd", "k_s n μ F_p,C/γ_M3", resistance, "N", f"{clause}, Eq. 3.6")
    return resistance_row(
        "Slip of the seam bolts",
        _PLACE,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=clause,
        factors=factors,
        notes=() if jacket.bolts.pretensioned else (_SNUG,),
        rule="slip",
        partial_factor=factors.slip,
    )


def _add_preload(jacket: Jacket, steps: Steps) -> Real:
    """Write down the preload that may be counted, no more than the bolts are tightened to [N]."""
    bolts = jacket.bolts
    nominal = slip.preload(bolts.tensile_strength, stress_area=bolts.tensile_stress_area)
    counted = np.minimum(nominal, bolts.pretension)
    if not bolts.pretensioned:
        return steps.add("F_p,C", "snug-tight: none counted", counted, "N",
                         "input bolts.tightening")  # fmt: skip
    steps.figure("f_ub", bolts.product, bolts, "tensile_strength", "MPa")
    steps.figure("A_s", f"stress area, {bolts.size}", bolts, "tensile_stress_area", "mm2")
    steps.figure("F_min", "least tension of the product", bolts, "pretension", "N")
    return steps.add("F_p,C", "min(0.7 f_ub A_s, F_min)", counted, "N", f"{EN_1993_8} Eq. 3.7")
