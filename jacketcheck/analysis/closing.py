"""How far the gap under the sleeve closes when the base rotates."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.base_state import base_state
from jacketcheck.analysis.memo import remembered
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
        Of the base under the demand, or at its largest moment if it does not carry it [1/mm].
    length
        Length over which the base bends: gap and strain penetration [mm].
    movement
        Closing at the sleeve's outer face [mm], as if it rotated about the opposite face.
    """

    curvature: Real
    length: Real
    movement: Real


@remembered
def closing_of_gap(jacket: Jacket) -> GapClosing:
    """Closing of the gap under the overstrength demand of the relocated hinge."""
    curvature, layer = base_state(jacket).curvature, jacket.column.layer
    length = jacket.sleeve.gap + penetration_length(
        layer.steel.expected_yield, bar_diameter=layer.diameter
    )
    return GapClosing(curvature, length, np.multiply(curvature, length) * jacket.outer_diameter)
