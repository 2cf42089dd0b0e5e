"""Hoop force that the laps of added bars and column bars ask for."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.added_bars import lap_length
from jacketcheck.analysis.base_state import base_state
from jacketcheck.analysis.memo import remembered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.noncontact_lap import lap_hoop_force as hoop_force_of_laps

__all__ = ["lap_hoop_force", "tension_share"]


@remembered
def tension_share(jacket: Jacket) -> Real:
    """Share of the added bars that pull at the base under the demand [-]: at least one of them.

    All of them where the base does not carry the demand; zero without added bars.
    """
    if jacket.added_bars is None:
        return 0.0
    one = np.divide(1.0, jacket.added_bars.layer.count)
    return np.maximum(base_state(jacket).added_bars_in_tension, one)


@remembered
def lap_hoop_force(jacket: Jacket) -> Real:
    """Hoop force for each unit of height from noncontact laps [N/mm]; zero without added bars."""
    added = jacket.added_bars
    if added is None:
        return 0.0
    return hoop_force_of_laps(
        np.multiply(added.layer.area, added.layer.steel.expected_tensile),
        bar_count=added.layer.count,
        lap_length=np.maximum(lap_length(jacket).available, 1.0),
        tension_share=tension_share(jacket),
    )
