"""Anchorage of the added bars in the footing by the concrete codes' development lengths."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.plugin import (
    AddedBarLayer,
    Jacket,
    LimitState,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    limit_state,
    only_valid,
    us_added_bar_anchorage,
    within_range,
)
from jacketcheck_australasia.codes import AS_3600, NZS_3101
from jacketcheck_australasia.mechanics.development import (
    LARGEST_BAR,
    LEAST_STRENGTH,
    as3600_development_length,
    nzs3101_development_length,
)

__all__ = ["ADDED_BAR_ANCHORAGES"]

_TITLE: Final = "Anchorage of the added bars in the footing"
_GROUT: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)


class _Anchored(NamedTuple):
    """What is to be anchored, in what, and whether the codes cover it."""

    diameter: Real
    stress: Real
    strength: Real
    clear_spacing: Real
    covered: Real


Length = Callable[[_Anchored, Steps], Real]


def _by_as3600(bar: _Anchored, steps: Steps) -> Real:
    clause = f"{AS_3600} cl. 13.1.2.2"
    cover = steps.add("c_d", "half of the clear distance between bars", bar.clear_spacing / 2.0,
                      "mm", "geometry")  # fmt: skip
    length = as3600_development_length(
        bar.diameter,
        bar_stress=bar.stress,
        concrete_strength=bar.strength,
        cover_dimension=cover,
    )
    expression = "0.5 k_1 k_3 f_s d_b/(k_2 √f′c) ≥ 0.058 f_s k_1 d_b, k_1 = 1"
    return steps.add("L_sy.tb", expression, only_valid(length, bar.covered), "mm", clause)


def _by_nzs3101(bar: _Anchored, steps: Steps) -> Real:
    length = nzs3101_development_length(
        bar.diameter, bar_stress=bar.stress, concrete_strength=bar.strength
    )
    expression = "0.5 α_a f_s d_b/√f′c ≥ 300 mm, α_a = 1"
    clause = f"{NZS_3101} cl. 8.6.3.2"
    return steps.add("L_db", expression, only_valid(length, bar.covered), "mm", clause)


def _anchorage(provisions: str, clause: str, length_of: Length) -> LimitState:
    """Embedment in grout by a code's length; adhesive and breakout stay as inherited."""

    @limit_state(
        "added-bar-anchorage",
        title=_TITLE,
        provisions=provisions,
        monotonic={"added_bars.embedment": -1},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        inherited, added = us_added_bar_anchorage.evaluate(jacket), jacket.added_bars
        if added is None or added.bond_strength is not None:
            return list(inherited)
        _held_in_grout, *others = inherited
        return [_grouted(jacket, added, clause, length_of), *others]

    return evaluate


def _grouted(jacket: Jacket, added: AddedBarLayer, clause: str, length_of: Length) -> Result:
    if jacket.footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    steps, layer = Steps(), added.layer
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.figure("f_s", "expected yield", layer.steel, "expected_yield", "MPa")
    strength = steps.add("f′c", "weaker of footing and grout",
                         np.minimum(jacket.footing.concrete_strength, jacket.grout.strength),
                         "MPa", "input")  # fmt: skip
    covered = np.logical_and(
        np.less_equal(layer.diameter, LARGEST_BAR), np.greater_equal(strength, LEAST_STRENGTH)
    )
    bar = _Anchored(
        within_range(layer.diameter, covered, LARGEST_BAR),
        layer.steel.expected_yield,
        within_range(strength, covered, LEAST_STRENGTH),
        np.subtract(layer.spacing, layer.diameter),
        covered,
    )
    return Result(_TITLE, "embedment in grout", length_of(bar, steps), added.embedment, "mm",
                  clause, steps.lines, (_GROUT,))  # fmt: skip


ADDED_BAR_ANCHORAGES: Final = (
    _anchorage("australia", f"{AS_3600} cl. 13.1.2.2", _by_as3600),
    _anchorage("new-zealand", f"{NZS_3101} cl. 8.6.3.2", _by_nzs3101),
)
"""One for each set of provisions."""
