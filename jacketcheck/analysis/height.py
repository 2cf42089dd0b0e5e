"""Moment demand and capacity along the height of the repair."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import added_bar_stress, lap_length
from jacketcheck.analysis.base_state import CAPACITY_STRAIN
from jacketcheck.analysis.bond import stress_at_height
from jacketcheck.analysis.damaged_bars import anchorage_start, debonding_bars
from jacketcheck.analysis.directions import bending_directions, weakest
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.interface import height_of_transfer, interface
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.analysis.repair_anchorage import development_as_held
from jacketcheck.analysis.sections import bending_angle, repaired_section
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain
from jacketcheck.mechanics.strain_penetration import penetration_length

__all__ = [
    "HeightProfile",
    "WorstHeight",
    "column_bar_stress",
    "height_profile",
    "hinge_bottom",
    "worst_height",
]

_STATIONS = 11
"""Stations at equal distances; those where strength changes at once are added."""


@dataclass(frozen=True, eq=False)
class HeightProfile:
    """Moments from the footing to where the hinge begins; one design, shape (stations,).

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
    ring_limit
        Compression in the grout ring that friction on the column's face above can balance [N].
    """

    height: Floats
    demand: Floats
    capacity: Floats
    direction: Floats
    ring_limit: Floats


@dataclass(frozen=True, eq=False)
class WorstHeight:
    """Where demand comes nearest to capacity above the base, or exceeds it most.

    Attributes
    ----------
    height, demand, capacity, direction, ring_limit
        As in `HeightProfile`.
    hinge_bottom
        Height where the relocated hinge begins [mm].
    """

    height: Real
    demand: Real
    capacity: Real
    direction: Real
    ring_limit: Real
    hinge_bottom: Real


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
    """Demand and capacity from the footing to where the relocated hinge begins.

    Fractured bars develop upward from their fracture, added bars downward from their top and
    upward from the footing. Grout and added bars take over only what friction on the column's face
    hands to them above. Section and failure strain are those of the base at every height.
    """
    height = _stations(jacket)
    forces = hinge(jacket)
    column, added = column_bar_stress(jacket, height), _added_bar_stress(jacket, height)
    clock = bending_directions()
    ring = _handed_over(jacket, jacket.repair_height, height)
    moments = moment_at_extreme_strain(
        _whole_section(jacket),
        strain=CAPACITY_STRAIN,
        axial_load=float(jacket.demands.axial_load),
        angle=np.tile(np.asarray(bending_angle(clock)), height.size),
        stress_limit=np.repeat(np.hstack([column, added]), clock.size, axis=0),
        outer_zone_limit=np.repeat(ring, clock.size),
    ).reshape(height.size, clock.size)
    return HeightProfile(
        height=height,
        demand=float(forces.base_moment) - float(forces.shear) * height,
        capacity=np.min(np.fmax(moments, 0.0), axis=1) * float(jacket.models.section_strength),
        direction=clock[weakest(moments)],
        ring_limit=ring,
    )


def _stations(jacket: Jacket) -> Floats:
    """Heights that are looked at, those where bars begin to count or end among them [mm]."""
    top = hinge_bottom(jacket)
    bars = debonding_bars(jacket).groups
    ends = {float(anchorage_start(bar, jacket)) for bar in bars}
    if jacket.added_bars is not None:
        ends |= {float(lap_length(jacket).bonded_top)}
    inside = [height for height in ends if 0.0 < height < top]
    return np.unique(np.append(np.linspace(0.0, top, _STATIONS), inside))


def hinge_bottom(jacket: Jacket) -> float:
    """Height up to which the repair must stay stronger than the hinge [mm]; one design.

    Yield strain of the column's bars penetrates from the hinge into the top of the repair, over the
    length that jacketed columns are given on either side of their gap; at most half of the repair.
    """
    layer, top = jacket.column.layer, float(jacket.repair_height)
    length = penetration_length(layer.steel.expected_yield, bar_diameter=layer.diameter)
    return max(top - float(length), top / 2.0)


def _whole_section(jacket: Jacket) -> CircularSection:
    """Section through the repair with all bars; what they develop is said height by height."""
    added = jacket.added_bars
    return repaired_section(
        jacket,
        column_bar_limit=np.full(len(jacket.column.bars), np.inf),
        added_bar_limit=None if added is None else np.full(int(added.layer.count), np.inf),
    )


def _added_bar_stress(jacket: Jacket, height: Floats) -> Floats:
    """Stress of each added bar, shape (heights, bars) [MPa]."""
    added = jacket.added_bars
    if added is None:
        return np.empty((height.size, 0))
    half = float(added.layer.total_area) / 2.0
    top = np.minimum(added.height, jacket.repair_height)
    developed = added_bar_stress(jacket, height, development_as_held(jacket))
    stress = np.minimum(developed, _handed_over(jacket, top, height) / half)
    return np.repeat(stress[:, None], int(added.layer.count), axis=1)


def _handed_over(jacket: Jacket, top: Real, height: Floats) -> Floats:
    """Force that friction on half of the column's face hands over above each height [N]."""
    resistance = float(interface(jacket).resistance)
    return resistance * np.asarray(height_of_transfer(jacket, top, above=height))


@remembered
@design_by_design
def worst_height(jacket: Jacket) -> WorstHeight:
    """Station above the base with the largest ratio of demand to capacity."""
    profile = height_profile(jacket)
    with np.errstate(divide="ignore"):
        worst = 1 + int(np.argmax(profile.demand[1:] / profile.capacity[1:]))
    return WorstHeight(
        height=float(profile.height[worst]),
        demand=float(profile.demand[worst]),
        capacity=float(profile.capacity[worst]),
        direction=float(profile.direction[worst]),
        ring_limit=float(profile.ring_limit[worst]),
        hinge_bottom=float(profile.height[-1]),
    )
