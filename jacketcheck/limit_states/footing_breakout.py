"""A cone of concrete that breaks out of the footing around the ring of added bars."""

from __future__ import annotations

from typing import Final

from jacketcheck.analysis.added_bars import footing_anchorage
from jacketcheck.coverage import BREAKOUT_OPEN
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_states._added_bar_steps import (
    ANCHORAGE,
    FAR_EDGES,
    add_added_bar,
    add_anchor_factor,
    add_footing_strength,
    add_ring,
    add_ring_share,
)
from jacketcheck.limit_states.editions import ACI
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    breakout_influence_distance,
)
from jacketcheck.results import Kind, Result, Steps

__all__ = ["breakout_row"]

_REINFORCED: Final = "anchor reinforcement stands in the place of breakout"
_BREAKOUT: Final = (
    "a cone of concrete breaks out of the footing before the bars yield, unless reinforcement of "
    "the footing takes their tension (added_bars.anchor_reinforcement)"
)


def breakout_row(jacket: Jacket, added: AddedBarLayer) -> Result:
    """Row on the breakout of the ring, reported only where it is precluded otherwise."""
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.2"
    add_added_bar(added, steps)
    steps.figure("f_ye", added.layer.steel.name, added.layer.steel, "expected_yield", "MPa")
    steps.add("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment")
    add_footing_strength(jacket, steps, "f′c")
    steps.add("N_b", "17 √min(f′c, 8000) h_ef^1.5, in and psi",
              found.adhesive.single_breakout_strength, "N", f"{clause}.2")  # fmt: skip
    reach = breakout_influence_distance(added.embedment)
    steps.add("c_Nc", "1.5 h_ef", reach, "mm", f"{clause}.1")
    add_ring(added, steps)
    add_ring_share(added, steps, "Nc", reach, clause)
    steps.add("N_cb", "ψ_A N_b", found.adhesive.breakout_strength, "N", clause)
    add_anchor_factor(steps)
    capacity = steps.add("φf", "φ N_cb/A_b", found.breakout_stress, "MPa", clause)
    if added.anchor_reinforcement is not None:
        note = _REINFORCED
    else:
        note = BREAKOUT_OPEN if added.breakout_precluded else _BREAKOUT
    return Result(
        ANCHORAGE,
        "breakout of the ring of bars",
        found.target_stress,
        capacity,
        "MPa",
        clause,
        steps.lines,
        (FAR_EDGES, note),
        kind=Kind.LIMIT if note is _BREAKOUT else Kind.REPORTED,
        rule="concrete-breakout",
        resistance_factor=ANCHOR_STRENGTH_REDUCTION,
    )
