"""The repaired base: its strength in the weakest direction, and its strain under the demand."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import added_bar_stress
from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.analysis.sections import (
    bending_angle,
    repaired_section,
    sleeved_core,
)
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_limits import core_strain_at_moment
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain

__all__ = [
    "CAPACITY_STRAIN",
    "BaseSection",
    "base_circular_section",
    "base_response",
    "base_section",
    "bending_directions",
]

CAPACITY_STRAIN = 0.003
"""Strain of the outermost fibre at which the base counts as exhausted [-]: nominal moment with
expected strengths of a capacity-protected member (AASHTO Guide Spec Seismic 2nd ed. (2011) 8.9,
from memory)."""

_DIRECTIONS = 24


def bending_directions() -> Floats:
    """Clock angles of the bending directions that are looked at [rad], both senses included."""
    return np.linspace(0.0, 2.0 * np.pi, _DIRECTIONS, endpoint=False)


@remembered
def base_circular_section(jacket: Jacket) -> CircularSection:
    """Section at the top of the footing: bars with a fracture above it are not counted there."""
    whole = [not counts_as_fractured(bar, jacket) for bar in jacket.column.bars]
    return repaired_section(
        jacket,
        column_bar_limit=np.where(whole, np.inf, 0.0),
        added_bar_limit=added_bar_stress(jacket, np.zeros(1))[0],
    )


@dataclass(frozen=True, eq=False)
class BaseSection:
    """Strength of the repaired base; one design, or arrays over designs.

    Attributes
    ----------
    moment_capacity
        In the weakest direction [N mm].
    weakest_direction
        Clock angle of the side in compression there [rad].
    core_strain
        Strain at the edge of the column under the demand [-], in that direction.
    holds
        Whether the demand is reached at all.
    """

    moment_capacity: Real
    weakest_direction: Real
    core_strain: Real
    holds: Real


@remembered
@design_by_design
def base_section(jacket: Jacket) -> BaseSection:
    """Strength and strain of the repaired base in its weakest direction."""
    clock = bending_directions()
    moments = moment_at_extreme_strain(
        base_circular_section(jacket),
        strain=CAPACITY_STRAIN,
        axial_load=float(jacket.demands.axial_load),
        angle=np.asarray(bending_angle(clock)),
    )
    # a direction without equilibrium has no strength
    strengths = np.where(np.isnan(moments), 0.0, moments)
    weakest = int(np.argmin(strengths))
    response = _response(jacket, float(clock[weakest]))
    strain = float(core_strain_at_moment(response, float(hinge(jacket).base_moment)))
    ultimate = sleeved_core(jacket).ultimate_strain
    holds = bool(np.isfinite(strain)) and strain <= ultimate
    return BaseSection(
        moment_capacity=float(strengths[weakest]),
        weakest_direction=float(clock[weakest]),
        core_strain=strain if holds else ultimate,
        holds=holds,
    )


@remembered
def base_response(jacket: Jacket) -> MomentCurvature:
    """Moment-curvature response of the base in its weakest direction; one design."""
    return _response(jacket, float(base_section(jacket).weakest_direction))


def _response(jacket: Jacket, clock: float) -> MomentCurvature:
    return moment_curvature(
        base_circular_section(jacket),
        axial_load=float(jacket.demands.axial_load),
        angle=float(bending_angle(clock)),
    )
