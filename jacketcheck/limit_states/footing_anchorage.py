"""Anchorage of the added bars in the footing: embedment in grout, bond of an adhesive."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.added_bars import footing_anchorage
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._added_bar_steps import (
    ANCHORAGE,
    FAR_EDGES,
    add_added_bar,
    add_anchor_factor,
    add_footing_strength,
    add_ring,
    add_ring_share,
)
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.anchor_reinforcement import anchor_reinforcement_rows
from jacketcheck.limit_states.editions import ACI, GUIDE_SPEC
from jacketcheck.limit_states.footing_breakout import breakout_row
from jacketcheck.mechanics.adhesive_anchors import ANCHOR_STRENGTH_REDUCTION, UNCRACKED_BOND_RATIO
from jacketcheck.mechanics.development_length import (
    bar_size_factor,
    reinforcement_grade_factor,
)
from jacketcheck.results import Result, Steps

__all__ = ["added_bar_anchorage"]

_NONE: Final = "no added bars"
_TESTS: Final = "Steuck, Eberhard and Stanton 2009"
_UNCRACKED: Final = "engineering judgement: evaluated adhesives print about 1.6 to 2.1"
_GROUT: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)

_HELD_BY_CONCRETE: Final = ("grouted-embedment", "adhesive-bond", "concrete-breakout")


@limit_state(
    "added-bar-anchorage",
    title=ANCHORAGE,
    monotonic={"added_bars.embedment": -1},
    effort="closed-form",
    scatter=Scatter(
        "length that the actual yield strength needs exceeds the embedment, or the yield force "
        "exceeds bond of an adhesive or breakout without resistance factor, the 0.75 for "
        "earthquakes kept, or yield of the anchor reinforcement",
        rules=(*_HELD_BY_CONCRETE, "anchor-reinforcement"),
        model="anchorage",
        model_rules=_HELD_BY_CONCRETE,
    ),
)
def added_bar_anchorage(jacket: Jacket) -> list[Result]:
    """Embedment in grout or adhesive, and breakout of the ring of bars."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable(ANCHORAGE, _NONE)]
    held = _grouted(jacket, added) if added.bond_strength is None else _adhesive(jacket, added)
    return [held, breakout_row(jacket, added), *anchor_reinforcement_rows(jacket, added)]


def _grouted(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    grouted = found.grouted
    assert grouted is not None  # noqa: S101 - bars without an adhesive are grouted
    clause = f"{ACI} 25.4.2; {GUIDE_SPEC} 8.8.4"
    add_added_bar(added, steps)
    steps.figure("f_s", "expected yield", added.layer.steel, "expected_yield", "MPa")
    _add_weaker_concrete(jacket, steps)
    add_ring(added, steps)
    steps.add("c_b", "π r/n", added.layer.spacing / 2.0, "mm", "half of the bar spacing")
    table, steel = f"{ACI} Table 25.4.2.5", added.layer.steel
    size = bar_size_factor(added.layer.diameter)
    steps.add("ψ_s", "size of the bar", size, "1", table)
    grade = reinforcement_grade_factor(steel.yield_strength)
    steps.add("ψ_g", f"grade of {steel.name}", grade, "1", table)
    steps.add("l_d", "3/40 f_s ψ_s ψ_g/min(√f′c, 100)/min(c_b/d_b, 2.5) d_b ≥ 12, in and psi",
              grouted.development_length, "mm", f"{ACI} 25.4.2.4")  # fmt: skip
    steps.add("l_ac", "0.79 d_b f_s/√f′c, in and ksi", grouted.guide_specification_length, "mm",
              f"{GUIDE_SPEC} 8.8.4")  # fmt: skip
    steps.add("l_test", "6 d_b", grouted.least_tested_length, "mm",
              f"shortest that yielded bars in tests of grouted ducts, {_TESTS}")  # fmt: skip
    demand = steps.add("l_need", "max(l_d, l_ac, l_test)", grouted.required_length, "mm", clause)
    steps.add("l", "embedment", added.embedment, "mm", "input added_bars.embedment")
    return Result(ANCHORAGE, "embedment in grout", demand, added.embedment, "mm", clause,
                  steps.lines, (_GROUT,), rule="grouted-embedment")  # fmt: skip


def _add_weaker_concrete(jacket: Jacket, steps: Steps) -> None:
    """Write down the strength of what the bars are held in."""
    add_footing_strength(jacket, steps, "f′c,f")
    footing = 0.0 if jacket.footing is None else jacket.footing.concrete_strength
    steps.figure("f′c,g", "grout", jacket.grout, "strength", "MPa")
    weaker = np.minimum(footing, jacket.grout.strength)
    steps.add("f′c", "min(f′c,f, f′c,g)", weaker, "MPa", "the weaker of footing and grout")


def _adhesive(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.5"
    add_added_bar(added, steps)
    steps.add("τ_cr", "characteristic bond stress, cracked concrete", added.bond_strength or 0.0,
              "MPa", "input added_bars.bond_strength")  # fmt: skip
    steps.add("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment")
    steps.add("N_ba", "τ_cr π d_b h_ef", found.adhesive.single_bond_strength, "N", clause)
    uncracked = np.multiply(UNCRACKED_BOND_RATIO, added.bond_strength or 0.0)
    steps.add("τ_uncr", f"{UNCRACKED_BOND_RATIO:g} τ_cr", uncracked, "MPa", _UNCRACKED)
    steps.add("c_Na", "10 d_b √(τ_uncr/1100), in and psi", found.adhesive.bond_influence_distance,
              "mm", f"{clause}.1")  # fmt: skip
    add_ring(added, steps)
    add_ring_share(added, steps, "Na", found.adhesive.bond_influence_distance, clause)
    nominal = steps.add("N_a", "ψ_A N_ba", found.adhesive.bond_strength, "N", clause)
    factor = add_anchor_factor(steps)
    capacity = steps.add("φN_a", "φ N_a", np.multiply(factor, nominal), "N", clause)
    steps.figure("f_ye", added.layer.steel.name, added.layer.steel, "expected_yield", "MPa")
    demand = steps.add("N_u", "f_ye A_b", np.multiply(found.target_stress, added.layer.area), "N",
                       "statics")  # fmt: skip
    notes = [FAR_EDGES]
    if np.any(found.adhesive.outside_method):
        notes.append("embedment outside 4 to 20 bar diameters, the range of the anchor method")
    return Result(ANCHORAGE, "bond of the adhesive", demand, capacity, "N", clause, steps.lines,
                  tuple(notes), rule="adhesive-bond",
                  resistance_factor=ANCHOR_STRENGTH_REDUCTION)  # fmt: skip
