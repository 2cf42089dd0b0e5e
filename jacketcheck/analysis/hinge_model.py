"""Whether the hinge forms where the model of the repaired column has it, with bars that hold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.bond import bar_bonds
from jacketcheck.analysis.damaged_bars import debonding_bars
from jacketcheck.analysis.height import worst_height
from jacketcheck.analysis.hinge import hinge
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["HINGE_CAUSES", "HingeModel", "hinge_model"]

HINGE_CAUSES: Final = ("bar-bond", "bar-length", "base-moment", "moment-along-height")
"""Limit states whose failure leaves the model without a verdict on displacement."""


@dataclass(frozen=True, eq=False)
class HingeModel:
    """What the plastic hinge above the repair takes for granted.

    Attributes
    ----------
    bars_hold
        Whether every bar that is held by bond alone reaches its target stress over the length it
        has. One that does not lets go as it is strained on; the model keeps its largest stress.
    repair_holds
        Whether base and repair stay stronger than the hinge.
    reasons
        What is not so, in any design, as printed.
    """

    bars_hold: Real
    repair_holds: Real
    reasons: tuple[str, ...]

    @property
    def holds(self) -> Real:
        """Both."""
        return np.logical_and(self.bars_hold, self.repair_holds)


def hinge_model(jacket: Jacket) -> HingeModel:
    """Whether displacement of the repaired column may be judged by its hinge.

    Raises
    ------
    NotEvaluatedError
        If bond of the bars or the strength of the repair cannot be found.
    """
    bars = debonding_bars(jacket)
    hold: Real = np.ones((), dtype=bool)
    reasons = []
    for index, bond in enumerate(bar_bonds(jacket)):
        reached = np.greater_equal(bond.developed_stress, bond.target_stress) & np.less_equal(
            bond.needed_length, bond.available_length
        )
        if not np.all(reached):
            reasons.append(f"{bars.name(index)} do not reach their target stress and debond")
        hold = np.logical_and(hold, reached)
    base = np.greater_equal(base_section(jacket).moment_capacity, hinge(jacket).base_moment)
    worst = worst_height(jacket)
    above = np.greater_equal(worst.capacity, worst.demand)
    if not np.all(base):
        reasons.append("the base does not carry the hinge")
    if not np.all(above):
        reasons.append("the hinge spreads down into the repair")
    return HingeModel(np.asarray(hold)[()], np.logical_and(base, above)[()], tuple(reasons))
