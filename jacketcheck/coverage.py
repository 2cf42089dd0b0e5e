"""What every output says about itself: the usual cautions, and what is left to the engineer."""

from __future__ import annotations

__all__ = ["BREAKOUT_OPEN", "CAUTIONS", "NOT_COVERED", "left_to_the_engineer"]

CAUTIONS = (
    "These results support, and never replace, the judgement of a licensed engineer.",
    "Local codes govern; editions are named with each row.",
    "Check the input against the structure: a result is no better than what was written down.",
)

BREAKOUT_OPEN = (
    "open point: that no cone breaks out of the footing around the added bars is said "
    "(added_bars.breakout_precluded) and not shown; give the reinforcement that takes their "
    "tension (added_bars.anchor_reinforcement)"
)

NOT_COVERED = (
    "flexure and shear of the footing under the raised base moment",
    "joint shear in the footing around the column and the added bars",
    "piles, pile caps and soil",
    "the column's upper end and cap beam, and the redistribution to other piers and abutments",
    "stiffness of the repaired column in the analysis of the bridge",
    "welds of the half-shells, lifting lugs and stiffness in handling",
    "corrosion protection and durability of sleeve, bolts and grout",
    "low-cycle fatigue of bars strained in the earthquake and not replaced",
    "temporary support of the column during the repair",
)


def left_to_the_engineer(*, breakout_open: bool) -> tuple[str, ...]:
    """What results leave to the engineer, open points of the input first."""
    return (*((BREAKOUT_OPEN,) if breakout_open else ()), *NOT_COVERED)
