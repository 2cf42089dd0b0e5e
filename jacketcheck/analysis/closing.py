"""How far the gap under the sleeve closes when the base rotates."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.base import base_response
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.strain_penetration import penetration_length

__all__ = ["GapClosing", "closing_of_gap"]


@dataclass(frozen=True, eq=False)
class GapClosing:
    """Rotation of the base over the gap.

    Attributes
    ----------
    curvature
        Of the base under the demand, or the last one that it carries if it does not reach it
        [1/mm].
    length
        Length over which the base bends: gap and strain penetration [mm].
    movement
        Closing at the sleeve's outer face [mm], as if it rotated about the opposite face.
    """

    curvature: Real
    length: Real
    movement: Real


@remembered
@design_by_design
def closing_of_gap(jacket: Jacket) -> GapClosing:
    """Closing of the gap under the overstrength demand of the relocated hinge."""
    response, demand = base_response(jacket), float(hinge(jacket).base_moment)
    valid = response.valid_count
    reached = np.maximum.accumulate(response.moment[:valid])
    curvature = float(np.interp(demand, reached, response.curvature[:valid])) if valid else np.inf
    layer = jacket.column.layer
    length = float(jacket.sleeve.gap) + float(
        penetration_length(layer.steel.expected_yield, bar_diameter=layer.diameter)
    )
    return GapClosing(curvature, length, curvature * length * float(jacket.outer_diameter))
