"""The repaired base under the demand: strains and forces by plane sections."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import added_bar_stress
from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.analysis.directions import bending_directions, weakest
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.analysis.sections import bending_angle, repaired_section
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain

__all__ = [
    "CAPACITY_STRAIN",
    "BaseState",
    "base_circular_section",
    "base_response",
    "base_state",
]

CAPACITY_STRAIN = 0.003
"""Strain of the outermost fibre at which the base counts as exhausted [-]: nominal moment with
expected strengths of a capacity-protected member (AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5 and
8.9, from memory)."""


@remembered
def base_circular_section(jacket: Jacket) -> CircularSection:
    """Section at the top of the footing: bars with a fracture above it are not counted there.

    Grout ring and added bars act in full: what the seams and friction on the column's face hold
    follows from the strain that is found with this section.
    """
    whole = [not counts_as_fractured(bar, jacket) for bar in jacket.column.bars]
    return repaired_section(
        jacket,
        column_bar_limit=np.where(whole, np.inf, 0.0),
        added_bar_limit=added_bar_stress(jacket, np.zeros(1))[0],
    )


def _weakest_angle(jacket: Jacket, strain: float) -> float:
    """Bending direction with the smallest moment at a strain of the outermost fibre [rad]."""
    angle = np.asarray(bending_angle(bending_directions()))
    moments = moment_at_extreme_strain(
        base_circular_section(jacket),
        strain=strain,
        axial_load=float(jacket.demands.axial_load),
        angle=angle,
    )
    return float(angle[weakest(moments)])


@dataclass(frozen=True, eq=False)
class BaseState:
    """The base under the demand; one design, or arrays over designs.

    Where it does not carry the demand, what holds at its largest moment.

    Attributes
    ----------
    holds
        Whether the demand is reached at all.
    curvature
        Curvature [1/mm].
    core_strain, extreme_strain
        Compressive strain at the edge of the column and at the outermost fibre [-].
    added_bars_in_tension
        Share of their yield force with which the added bars pull together [-], a bar beyond yield
        as one at yield; 1 where the demand is not carried.
    """

    holds: Real
    curvature: Real
    core_strain: Real
    extreme_strain: Real
    added_bars_in_tension: Real


@remembered
@design_by_design
def base_state(jacket: Jacket) -> BaseState:
    """State under the demand in the direction that strains the column most.

    That is the weakest direction, or the one that resists least at the strain found there.
    """
    response = base_response(jacket)
    state = _state(jacket, response)
    if not state.holds:
        return state
    other = _weakest_angle(jacket, float(state.extreme_strain))
    if other == response.angle:
        return state
    return max(state, _state(jacket, _response(jacket, other)), key=_core_strain)


def _core_strain(state: BaseState) -> float:
    return float(state.core_strain) if state.holds else np.inf


def _state(jacket: Jacket, response: MomentCurvature) -> BaseState:
    """State at the demand, straight between the curvatures that were analysed."""
    moment = response.moment[: response.valid_count]
    # a base that is stronger than its analysis is strained as that one under a smaller demand
    demand = float(hinge(jacket).base_moment) / float(jacket.models.section_strength)
    reached = np.flatnonzero(moment >= demand)
    holds = bool(reached.size)
    if not moment.size:
        return BaseState(holds, np.inf, np.inf, np.inf, 1.0)
    last = int(reached[0]) if holds else int(np.argmax(moment))
    before = max(last - 1, 0) if holds else last
    rise = moment[last] - moment[before]
    share = (demand - moment[before]) / rise if rise > 0.0 else 1.0

    def between(values: Floats) -> Floats:
        return np.asarray(values[before] + share * (values[last] - values[before]))

    added = between(response.bar_stress)[len(jacket.column.bars) :]
    return BaseState(
        holds=holds,
        curvature=float(between(response.curvature)),
        core_strain=float(between(response.core_compressive_strain)),
        extreme_strain=float(between(response.extreme_compressive_strain)),
        added_bars_in_tension=_pulling_share(jacket, added) if holds else 1.0,
    )


def _pulling_share(jacket: Jacket, stress: Floats) -> float:
    """Mean tension of the added bars over their yield strength, none counted beyond it [-]."""
    if jacket.added_bars is None:
        return 1.0
    share = stress / float(jacket.added_bars.layer.steel.expected_yield)
    return float(np.mean(np.clip(share, 0.0, 1.0)))


@remembered
def base_response(jacket: Jacket) -> MomentCurvature:
    """Moment-curvature response of the base in its weakest direction; one design."""
    return _response(jacket, _weakest_angle(jacket, CAPACITY_STRAIN))


def _response(jacket: Jacket, angle: float) -> MomentCurvature:
    return moment_curvature(
        base_circular_section(jacket), axial_load=float(jacket.demands.axial_load), angle=angle
    )
