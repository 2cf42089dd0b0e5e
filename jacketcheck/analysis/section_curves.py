"""Moment-curvature of the three sections, from rest to their ultimate curvature."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.base_state import base_response
from jacketcheck.analysis.displacement import above_response
from jacketcheck.analysis.hinge import original_response
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.moment_curvature import MomentCurvature
from jacketcheck.mechanics.section_limits import first_yield, ultimate_point

__all__ = ["SectionCurve", "section_curves"]


@dataclass(frozen=True, eq=False)
class SectionCurve:
    """Response of one section; one design.

    Attributes
    ----------
    name
        Which section.
    curvature, moment
        From rest to the ultimate curvature [1/mm], [N mm], shape (n,).
    yield_curvature, yield_moment
        First yield [1/mm], [N mm]; not finite where the section fails before it.
    ultimate_curvature, ultimate_cause
        Last point, and what limits it.
    peak_moment
        Largest moment on the way [N mm].
    """

    name: str
    curvature: Floats
    moment: Floats
    yield_curvature: float
    yield_moment: float
    ultimate_curvature: float
    ultimate_cause: str
    peak_moment: float


@remembered
def section_curves(jacket: Jacket) -> tuple[SectionCurve, ...]:
    """The column as it was built, the repaired base and the section above the repair; one design.

    The last two are taken in their weakest direction.
    """
    return (
        _curve("original column", original_response(jacket)),
        _curve("repaired base", base_response(jacket)),
        _curve("above the repair", above_response(jacket)),
    )


def _curve(name: str, response: MomentCurvature) -> SectionCurve:
    start, last = first_yield(response), ultimate_point(response)
    valid = slice(0, response.valid_count)
    curvature, moment = response.curvature[valid], response.moment[valid]
    inside = curvature < last.curvature
    curvature, moment = curvature[inside], moment[inside]
    if last.reached:
        curvature, moment = np.append(curvature, last.curvature), np.append(moment, last.moment)
    # at rest the axial load is centred
    curvature, moment = np.append(0.0, curvature), np.append(0.0, moment)
    return SectionCurve(
        name=name,
        curvature=curvature,
        moment=moment,
        yield_curvature=start.curvature,
        yield_moment=start.moment,
        ultimate_curvature=last.curvature,
        ultimate_cause=last.cause,
        peak_moment=float(np.max(moment)),
    )
