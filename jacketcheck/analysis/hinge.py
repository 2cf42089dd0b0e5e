"""The plastic hinge: at the base of the original column, and relocated to the top of the repair."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.analysis.memo import design_by_design, remembered, same_where
from jacketcheck.analysis.sections import column_section
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.relocated_hinge import overstrength_moment, relocated_hinge
from jacketcheck.mechanics.section_limits import BilinearCurve, bilinear_curve
from jacketcheck.results import Steps

__all__ = ["Hinge", "add_hinge", "bilinear", "hinge", "original_response"]

_SOURCE: Final = "AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5"


@remembered
@same_where(lambda jacket: (jacket.column, jacket.demands.axial_load))
def original_response(jacket: Jacket) -> MomentCurvature:
    """Moment-curvature response of the column as it was built, every bar whole; one design."""
    return moment_curvature(
        column_section(jacket), axial_load=float(jacket.demands.axial_load), angle=np.pi / 2.0
    )


def bilinear(response: MomentCurvature, what: str) -> BilinearCurve:
    """Idealised response; raises NotEvaluatedError where there is none."""
    curve = bilinear_curve(response)
    if not np.isfinite(curve.plastic_moment) or not np.isfinite(curve.ultimate_curvature):
        cause = curve.ultimate_cause
        before = "" if cause == "not reached" else f" before {cause}"
        load = f"under the axial load {response.axial_load / 1000.0:.5g} kN"
        raise NotEvaluatedError(f"{what}: no yield{before} {load}")
    return curve


@dataclass(frozen=True, eq=False)
class Hinge:
    """Forces of the relocated hinge.

    Attributes
    ----------
    plastic_moment
        Idealised plastic moment of the column's section, every bar whole, expected strengths
        [N mm].
    overstrength
        Factor on it [-].
    hinge_moment
        Overstrength moment in the hinge [N mm].
    shear
        Shear along the column [N].
    base_moment
        Moment at the footing [N mm].
    original_shear
        Shear of the original column with its hinge at the footing, without overstrength [N].
    """

    plastic_moment: Real
    overstrength: Real
    hinge_moment: Real
    shear: Real
    base_moment: Real
    original_shear: Real


@remembered
@design_by_design
def hinge(jacket: Jacket) -> Hinge:
    """Demand on everything that must stay stronger than the relocated hinge."""
    plastic = bilinear(original_response(jacket), "section above the repair").plastic_moment
    factor = jacket.column.layer.steel.overstrength
    moment = overstrength_moment(plastic, overstrength_factor=factor)
    double = jacket.column.curvature == "double"
    forces = relocated_hinge(
        moment,
        clear_height=jacket.column.height,
        repair_height=jacket.repair_height,
        top_moment=moment if double else 0.0,
    )
    original = (2.0 if double else 1.0) * plastic / jacket.column.height
    return Hinge(
        plastic_moment=float(plastic),
        overstrength=float(factor),
        hinge_moment=float(moment),
        shear=float(forces.shear),
        base_moment=float(forces.base_moment),
        original_shear=float(original),
    )


def add_hinge(jacket: Jacket, steps: Steps) -> Hinge:
    """Write the relocated hinge's forces down and return them."""
    forces, column = hinge(jacket), jacket.column
    double = column.curvature == "double"
    steps.add("M_p", "section above, every bar whole, expected strengths", forces.plastic_moment,
              "N mm", f"moment-curvature, {_SOURCE}")  # fmt: skip
    steps.figure("λ_mo", column.layer.steel.name, column.layer.steel, "overstrength", "1")
    steps.add("M_o", "λ_mo M_p", forces.hinge_moment, "N mm", _SOURCE)
    steps.add("L", "column height", column.height, "mm", "input column.height")
    steps.add("H", "height of repair", jacket.repair_height, "mm", "input repair.height")
    steps.add("V_o", "2 M_o/(L − H)" if double else "M_o/(L − H)", forces.shear, "N", "statics")
    steps.add("M_base", "M_o + V_o H", forces.base_moment, "N mm", "statics")
    return forces
