"""Moment demand and capacity along the height of the repair."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import added_bar_stress
from jacketcheck.analysis.base import CAPACITY_STRAIN, bending_directions
from jacketcheck.analysis.bond import stress_at_height
from jacketcheck.analysis.damaged_bars import debonding_bars
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.analysis.sections import bending_angle, repaired_section
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain

__all__ = ["HeightProfile", "WorstHeight", "column_bar_stress", "height_profile", "worst_height"]

_STATIONS = 13


@dataclass(frozen=True, eq=False)
class HeightProfile:
    """Moments from the footing to the top of the repair; one design, shape (stations,).

    Attributes
    ----------
    height
        Height above the footing [mm].
    demand
        Moment with the relocated hinge at its overstrength [N mm].
    capacity
        Moment in the weakest direction [N mm].
    direction
        Clock angle of the side in compression in that direction [rad].
    """

    height: Floats
    demand: Floats
    capacity: Floats
    direction: Floats


@dataclass(frozen=True, eq=False)
class WorstHeight:
    """Where demand comes nearest to capacity above the base, or exceeds it most."""

    height: Real
    demand: Real
    capacity: Real
    direction: Real


def column_bar_stress(jacket: Jacket, heights: Floats) -> Floats:
    """Stress that each column bar can develop at some heights [MPa]; one design.

    Returns
    -------
    ndarray
        Shape (heights, bars); infinite for a whole bar, zero at and below a fracture.
    """
    stress = np.full((heights.size, len(jacket.column.bars)), np.inf)
    bars = debonding_bars(jacket)
    developed = stress_at_height(jacket, heights)
    for index, numbers in enumerate(bars.members):
        for number in numbers:
            stress[:, number - 1] = developed[index]
    return stress


@remembered
def height_profile(jacket: Jacket) -> HeightProfile:
    """Demand and capacity from the footing to the top of the repair.

    Fractured bars develop upward from their fracture, added bars downward from their top and
    upward from the footing. Section and failure strain are those of the base at every height.
    """
    height = np.linspace(0.0, float(jacket.repair_height), _STATIONS)
    forces = hinge(jacket)
    demand = float(forces.base_moment) - float(forces.shear) * height
    column = column_bar_stress(jacket, height)
    limit = column
    added = None
    if jacket.added_bars is not None:
        stress = added_bar_stress(jacket, height)
        count = int(jacket.added_bars.layer.count)
        limit = np.hstack([column, np.repeat(stress[:, None], count, axis=1)])
        added = np.full(count, np.inf)
    section = repaired_section(
        jacket, column_bar_limit=np.full(column.shape[1], np.inf), added_bar_limit=added
    )
    clock = bending_directions()
    moments = moment_at_extreme_strain(
        section,
        strain=CAPACITY_STRAIN,
        axial_load=float(jacket.demands.axial_load),
        angle=np.tile(np.asarray(bending_angle(clock)), height.size),
        stress_limit=np.repeat(limit, clock.size, axis=0),
    ).reshape(height.size, clock.size)
    strengths = np.where(np.isnan(moments), 0.0, moments)
    weakest = np.argmin(strengths, axis=1)
    return HeightProfile(
        height=height,
        demand=demand,
        capacity=strengths[np.arange(height.size), weakest],
        direction=clock[weakest],
    )


@remembered
@design_by_design
def worst_height(jacket: Jacket) -> WorstHeight:
    """Station above the base with the largest ratio of demand to capacity.

    The top of the repair belongs to the hinge itself and is left out.
    """
    profile = height_profile(jacket)
    inside = slice(1, -1)
    demand, capacity = profile.demand[inside], profile.capacity[inside]
    with np.errstate(divide="ignore"):
        worst = int(np.argmax(demand / capacity))
    return WorstHeight(
        height=float(profile.height[inside][worst]),
        demand=float(demand[worst]),
        capacity=float(capacity[worst]),
        direction=float(profile.direction[inside][worst]),
    )
