"""Hoop force that the laps of added bars and column bars ask for."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import repair_anchorage
from jacketcheck.analysis.base import base_response
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.memo import design_by_design, remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.noncontact_lap import lap_hoop_force as hoop_force_of_laps

__all__ = ["TensionShare", "lap_hoop_force", "tension_share"]


@dataclass(frozen=True, eq=False)
class TensionShare:
    """Share of the added bars that are in tension at the base under the demand [-]."""

    value: Real


@remembered
@design_by_design
def tension_share(jacket: Jacket) -> TensionShare:
    """Share of added bars in tension; all of them where the base cannot carry the demand."""
    added = jacket.added_bars
    if added is None:
        return TensionShare(0.0)
    response = base_response(jacket)
    valid = response.valid_count
    reached = np.flatnonzero(response.moment[:valid] >= float(hinge(jacket).base_moment))
    if reached.size == 0:
        return TensionShare(1.0)
    stress = response.bar_stress[reached[0], -int(added.layer.count) :]
    return TensionShare(float(np.count_nonzero(stress > 0.0)) / stress.size)


@remembered
def lap_hoop_force(jacket: Jacket) -> Real:
    """Hoop force for each unit of height from noncontact laps [N/mm]; zero without added bars."""
    added = jacket.added_bars
    if added is None:
        return 0.0
    share = np.maximum(tension_share(jacket).value, 1.0 / np.asarray(added.layer.count))
    return hoop_force_of_laps(
        np.multiply(added.layer.area, added.layer.steel.expected_tensile),
        bar_count=added.layer.count,
        lap_length=np.maximum(repair_anchorage(jacket).available_length, 1.0),
        tension_share=share,
    )
