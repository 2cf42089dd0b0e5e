"""Reinforcement of the footing that takes the tension of the added bars in breakout's place."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.added_bars import reinforced_strength
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer, AnchorReinforcement
from jacketcheck.limit_states._added_bar_steps import ANCHORAGE, add_footing_strength
from jacketcheck.limit_states._rows import length_at_most
from jacketcheck.limit_states.editions import ACI
from jacketcheck.mechanics._arguments import BarEnd
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.anchor_reinforcement import (
    ANCHOR_REINFORCEMENT_FACTOR,
    FARTHEST_REINFORCEMENT,
    LARGEST_TESTED_BAR,
    end_development_length,
    hook_concrete_factor,
)
from jacketcheck.mechanics.development_length import bar_size_factor, reinforcement_grade_factor
from jacketcheck.results import Result, Step, Steps

__all__ = ["anchor_reinforcement_rows"]

_CLAUSE: Final = f"{ACI} 17.5.2.1"
_INPUT: Final = "input added_bars.anchor_reinforcement"
_RECORD: Final = (
    "engineering judgement: the bars are taken from drawings of the footing as they cross the "
    "breakout surface; all added bars count as pulled at once"
)
_LARGE: Final = "bars larger than No. 6 (19 mm) are beyond the tests behind the provision"

_UNCONFINED: Final = (
    "ends that no ties confine, outside of a column's core: ψ_r (ψ_p) 1.6, ψ_o 1.25; straight ones "
    "not well spaced"
)
_ENDS: Final[dict[BarEnd, tuple[str, str]]] = {
    "straight": ("max(3 ψ_g f_y/(k_s √f′c) d_b, 12), in and psi", "25.4.2.3"),
    "hooked": (
        "max(1.6 × 1.25 ψ_c f_y/(55 √f′c) d_b^1.5, 8 d_b, 6), in and psi", "25.4.3.1",
    ),
    "headed": (
        "max(1.6 × 1.25 ψ_c f_y/(75 √f′c) d_b^1.5, 8 d_b, 6), in and psi", "25.4.4.2",
    ),
}  # fmt: skip


def anchor_reinforcement_rows(jacket: Jacket, added: AddedBarLayer) -> list[Result]:
    """Strength across the breakout surface, development on both sides, and distance."""
    bars = added.anchor_reinforcement
    if bars is None or jacket.footing is None:
        return []
    return [
        _strength(added, bars),
        _development(jacket, bars, "towards the column", bars.length_above, bars.end_above),
        _development(jacket, bars, "towards the footing's base", bars.length_below, bars.end_below),
        length_at_most(
            "Distance of the anchor reinforcement", "added bars",
            provided=bars.distance,
            allowed=np.multiply(FARTHEST_REINFORCEMENT, added.embedment),
            clause=f"{ACI} R17.5.2.1", symbol="a", rule="0.5 h_ef",
            given=Step("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment"),
        ),
    ]  # fmt: skip


def _strength(added: AddedBarLayer, bars: AnchorReinforcement) -> Result:
    steps, layer = Steps(), added.layer
    steps.add("n", "added bars", layer.count, "1", "input added_bars.count")
    steps.figure("A_b", layer.size, layer, "area", "mm2")
    steps.figure("f_ye", layer.steel.name, layer.steel, "expected_yield", "MPa")
    force = np.multiply(layer.total_area, layer.steel.expected_yield)
    demand = steps.add("N_u", "n A_b f_ye", force, "N", "statics")
    steps.add("n_r", "bars across the breakout surface", bars.count, "1", f"{_INPUT}.count")
    steps.figure("A_r", bars.size, bars, "area", "mm2")
    steps.figure("f_y", bars.steel.name, bars.steel, "yield_strength", "MPa")
    steps.add("α", "between these bars and the added ones", bars.angle, "rad", f"{_INPUT}.angle")
    strength = reinforced_strength(bars)
    nominal = np.divide(strength, ANCHOR_REINFORCEMENT_FACTOR)
    steps.add("N_r", "n_r A_r f_y cos(α)", nominal, "N", _CLAUSE)
    steps.add("φ", "anchor reinforcement", ANCHOR_REINFORCEMENT_FACTOR, "1", _CLAUSE)
    capacity = steps.add("φN_r", "φ N_r", strength, "N", _CLAUSE)
    large = np.any(np.greater(bars.diameter, LARGEST_TESTED_BAR * 1.01))
    return Result(ANCHORAGE, "reinforcement across the breakout surface", demand, capacity, "N",
                  _CLAUSE, steps.lines, (_RECORD, _LARGE) if large else (_RECORD,),
                  rule="anchor-reinforcement",
                  resistance_factor=ANCHOR_REINFORCEMENT_FACTOR)  # fmt: skip


def _development(
    jacket: Jacket, bars: AnchorReinforcement, side: str, length: Real, end: BarEnd
) -> Result:
    steps = Steps()
    assert jacket.footing is not None  # noqa: S101 - asked before
    concrete = jacket.footing.concrete_strength
    rule, clause = _ENDS[end]
    steps.figure("d_b", bars.size, bars, "diameter", "mm")
    steps.figure("f_y", bars.steel.name, bars.steel, "yield_strength", "MPa")
    add_footing_strength(jacket, steps, "f′c")
    needed = end_development_length(
        bars.diameter,
        yield_strength=bars.steel.yield_strength,
        concrete_strength=concrete,
        end=end,
    )
    if end == "straight":
        grade = reinforcement_grade_factor(bars.steel.yield_strength)
        steps.add("ψ_g", "by grade", grade, "1", f"{ACI} 25.4.2.5")
        small = np.less(bar_size_factor(bars.diameter), 1.0)
        steps.add("k_s", "50 to No. 6, 40 beyond", np.where(small, 50.0, 40.0)[()], "1",
                  f"{ACI} {clause}")  # fmt: skip
        needed = np.multiply(needed, grade)
    else:
        steps.add("ψ_c", "f′c/15000 + 0.6 ≤ 1, in psi", hook_concrete_factor(concrete), "1",
                  f"{ACI} {clause}")  # fmt: skip
    demand = steps.add("l_r,min", rule, needed, "mm", f"{ACI} {clause}")
    steps.add("l_r", "from the breakout surface to the end", length, "mm", _INPUT)
    return Result(f"Development of the anchor reinforcement, {end}", side, demand, length, "mm",
                  f"{ACI} {clause}", steps.lines, (_UNCONFINED,))  # fmt: skip
