"""Clamping pressure that the fractured bars need."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.damaged_bars import anchorage_length, debonding_bars, target_stress
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import clamping
from jacketcheck.mechanics._arrays import Real

__all__ = ["ClampingNeed", "clamping_need", "crack_friction"]


@dataclass(frozen=True, eq=False)
class ClampingNeed:
    """Clamping pressure that each group of fractured bars needs.

    Attributes
    ----------
    bar_force
        Force of one bar at its target stress [N].
    crack_perimeter
        Splitting crack that each bar mobilises [mm], with the column's original cover.
    length
        Anchorage length of each group, up to the top of the repair [mm]; see `anchorage_length`.
    core_pressure
        Pressure on the core that each group needs [MPa].
    """

    bar_force: Real
    crack_perimeter: Real
    length: tuple[Real, ...]
    core_pressure: tuple[Real, ...]

    @property
    def largest_core_pressure(self) -> Real:
        """Pressure that the neediest group asks for [MPa]; zero without fractured bars."""
        largest: Real = np.max(np.broadcast_arrays(0.0, *self.core_pressure), axis=0)
        return largest


def crack_friction(jacket: Jacket) -> Real:
    """Friction on the splitting crack [-]."""
    return np.multiply(jacket.judgement.crack_friction, jacket.models.crack_friction)


@remembered
def clamping_need(jacket: Jacket) -> ClampingNeed:
    """Clamping pressure that the fractured bars need on the face of the core."""
    column, layer = jacket.column, jacket.column.layer
    perimeter = clamping.crack_perimeter(
        layer.count,
        bar_circle_diameter=2.0 * np.asarray(layer.circle_radius),
        bar_diameter=layer.diameter,
        cover=np.add(column.cover, column.ties.diameter),
    )
    force = np.multiply(layer.area, target_stress(jacket))
    lengths = tuple(anchorage_length(bar, jacket) for bar in debonding_bars(jacket).groups)
    return ClampingNeed(
        bar_force=force,
        crack_perimeter=perimeter,
        length=lengths,
        core_pressure=tuple(
            clamping.required_clamping_pressure(
                force,
                anchorage_length=length,
                crack_perimeter=perimeter,
                friction_coefficient=crack_friction(jacket),
            )
            for length in lengths
        ),
    )
