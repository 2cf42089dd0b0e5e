"""Added bars by the concrete codes' lengths: in the footing, in the repair, and in their laps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Protocol

import numpy as np

from jacketcheck.plugin import (
    AddedBarLayer,
    Jacket,
    LimitState,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    add_clear_distance,
    add_lap_length,
    add_struts_length,
    limit_state,
    not_applicable,
    only_valid,
    us_added_bar_anchorage,
    us_added_bar_lap,
    within_range,
)
from jacketcheck_australasia.codes import AS_3600, NZS_3101
from jacketcheck_australasia.mechanics import development

__all__ = ["ADDED_BARS"]

_ANCHORAGE: Final = "Anchorage of the added bars in the footing"
_DEVELOPMENT: Final = "Development of the added bars in the repair"
_LAP: Final = "Laps of added bars and column bars"
_HOLE: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)
_IN_GROUT: Final = "engineering judgement: grout bonds like concrete of its strength"


@dataclass(frozen=True, slots=True)
class _Bar:
    """An added bar, what surrounds it, and whether the codes cover it; mm and MPa."""

    diameter: Real
    stress: Real
    strength: Real
    cover: Real
    covered: Real


class _DevelopmentLength(Protocol):
    def __call__(self, bar: _Bar, steps: Steps) -> Real: ...


class _LapLength(Protocol):
    def __call__(self, bar: _Bar, steps: Steps, *, apart: Real) -> Real: ...


@dataclass(frozen=True, slots=True)
class _ConcreteCode:
    """Lengths of a concrete code, and the set of provisions that follows it."""

    provisions: str
    development_clause: str
    lap_clause: str
    development: _DevelopmentLength
    lap: _LapLength


def _as3600_development(bar: _Bar, steps: Steps) -> Real:
    length = development.as3600_development_length(
        bar.diameter,
        bar_stress=bar.stress,
        concrete_strength=bar.strength,
        cover_dimension=bar.cover,
    )
    clause = f"{AS_3600} cl. 13.1.2.2"
    _add_as3600_length(bar, steps, clause)
    rule = "max(L_sy.t, 0.058 f_s k_1 d_b)"
    return steps.add("L_sy.tb", rule, only_valid(length, bar.covered), "mm", clause)


def _add_as3600_length(bar: _Bar, steps: Steps, clause: str) -> None:
    """Write down the length that the equation gives, before its least value."""
    length = development.as3600_equation_length(
        bar.diameter,
        bar_stress=bar.stress,
        concrete_strength=bar.strength,
        cover_dimension=bar.cover,
    )
    steps.add("k_1", "bars that stand upright", 1.0, "1", clause)
    steps.add("k_2", "(132 − d_b)/100", np.subtract(132.0, bar.diameter) / 100.0, "1", clause)
    confined = 1.0 - 0.15 * np.subtract(bar.cover, bar.diameter) / bar.diameter
    steps.add("k_3", "min(max(1 − 0.15 (c_d − d_b)/d_b, 0.7), 1)", np.clip(confined, 0.7, 1.0), "1",
              clause)  # fmt: skip
    rule = "0.5 k_1 k_3 f_s d_b/(k_2 √min(f′c, 65))"
    steps.add("L_sy.t", rule, only_valid(length, bar.covered), "mm", clause)


def _add_counted_distance(bar: _Bar, steps: Steps, apart: Real, clause: str) -> None:
    counted = development.counted_distance(apart, bar.diameter)
    steps.add("s_b", "a_c where it exceeds 3 d_b, else 0", counted, "mm", clause)


def _as3600_lap(bar: _Bar, steps: Steps, *, apart: Real) -> Real:
    length = development.as3600_lap_length(
        bar.diameter,
        bar_stress=bar.stress,
        concrete_strength=bar.strength,
        cover_dimension=bar.cover,
        clear_distance=apart,
    )
    clause = f"{AS_3600} cl. 13.2.2"
    _add_as3600_length(bar, steps, f"{AS_3600} cl. 13.1.2.2")
    _add_counted_distance(bar, steps, apart, clause)
    rule = "max(1.25 L_sy.t, L_sy.t + 1.5 s_b, 0.058 f_s d_b)"
    return steps.add("L_sy.t.lap", rule, only_valid(length, bar.covered), "mm", clause)


def _nzs3101_development(bar: _Bar, steps: Steps) -> Real:
    length = development.nzs3101_development_length(
        bar.diameter, bar_stress=bar.stress, concrete_strength=bar.strength
    )
    clause = f"{NZS_3101} cl. 8.6.3.2"
    steps.add("α_a", "bars that stand upright", 1.0, "1", clause)
    rule = "max(0.5 α_a f_s d_b/√min(f′c, 70), 300)"
    return steps.add("L_db", rule, only_valid(length, bar.covered), "mm", clause)


def _nzs3101_lap(bar: _Bar, steps: Steps, *, apart: Real) -> Real:
    length = development.nzs3101_lap_length(
        bar.diameter,
        bar_stress=bar.stress,
        concrete_strength=bar.strength,
        clear_distance=apart,
    )
    clause = f"{NZS_3101} cl. 8.7.2"
    _nzs3101_development(bar, steps)
    _add_counted_distance(bar, steps, apart, clause)
    rule = "L_db + 1.5 s_b"
    return steps.add("L_ds", rule, only_valid(length, bar.covered), "mm", clause)


_CODES: Final = (
    _ConcreteCode("australia", f"{AS_3600} cl. 13.1.2.2", f"{AS_3600} cl. 13.2.2",
                  _as3600_development, _as3600_lap),
    _ConcreteCode("new-zealand", f"{NZS_3101} cl. 8.6.3.2", f"{NZS_3101} cl. 8.7.2",
                  _nzs3101_development, _nzs3101_lap),
)  # fmt: skip


def _anchorage(code: _ConcreteCode) -> LimitState:
    """Embedment in grout by a code's length; adhesive and breakout stay as inherited."""

    @limit_state(
        "added-bar-anchorage",
        title=_ANCHORAGE,
        provisions=code.provisions,
        monotonic={"added_bars.embedment": -1},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        inherited, added = us_added_bar_anchorage.evaluate(jacket), jacket.added_bars
        if added is None or added.bond_strength is not None:
            return list(inherited)
        _held_in_grout, *others = inherited
        return [_grouted(jacket, added, code), *others]

    return evaluate


def _grouted(jacket: Jacket, added: AddedBarLayer, code: _ConcreteCode) -> Result:
    if jacket.footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    steps = Steps()
    strength = steps.add("f′c", "weaker of footing and grout",
                         np.minimum(jacket.footing.concrete_strength, jacket.grout.strength),
                         "MPa", f"{jacket.footing.source_of('concrete_strength')}; "
                         f"{jacket.grout.source_of('strength')}")  # fmt: skip
    cover = steps.add("c_d", "half of the clear distance between bars", _half_clear(added), "mm",
                      "geometry")  # fmt: skip
    bar = _add_bar(added, steps, strength=strength, cover=cover, largest=development.LARGEST_BAR)
    return Result(_ANCHORAGE, "embedment in grout", code.development(bar, steps), added.embedment,
                  "mm", code.development_clause, steps.lines, (_HOLE,))  # fmt: skip


def _development(code: _ConcreteCode) -> LimitState:
    """Development of the yield strength in the grout, from the top of the bars downwards."""

    @limit_state(
        "added-bar-development",
        title=_DEVELOPMENT,
        provisions=code.provisions,
        monotonic={"added_bars.height": -1},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        if jacket.added_bars is None:
            return [not_applicable(_DEVELOPMENT, "no added bars")]
        steps = Steps()
        bar = _add_bar_in_repair(jacket, jacket.added_bars, steps, development.LARGEST_BAR)
        demand = code.development(bar, steps)
        capacity = add_struts_length(jacket, steps)
        return [Result(_DEVELOPMENT, "grout", demand, capacity, "mm", code.development_clause,
                       steps.lines, (_IN_GROUT,))]  # fmt: skip

    return evaluate


def _laps(code: _ConcreteCode) -> LimitState:
    """Length of the laps by the code; their hoop force and offset stay as inherited."""

    @limit_state(
        "added-bar-lap",
        title=_LAP,
        provisions=code.provisions,
        monotonic={"added_bars.height": -1},
        effort="closed-form",
    )
    def evaluate(jacket: Jacket) -> list[Result]:
        inherited = list(us_added_bar_lap.evaluate(jacket))
        if jacket.added_bars is None:
            return inherited
        hoops, *others = inherited
        return [hoops, _lap_length(jacket, jacket.added_bars, code), *others]

    return evaluate


def _lap_length(jacket: Jacket, added: AddedBarLayer, code: _ConcreteCode) -> Result:
    steps = Steps()
    bar = _add_bar_in_repair(jacket, added, steps, development.LARGEST_LAPPED_BAR)
    demand = code.lap(bar, steps, apart=add_clear_distance(jacket, steps))
    capacity = add_lap_length(jacket, steps)
    return Result(_LAP, "length of the laps", demand, capacity, "mm", code.lap_clause, steps.lines,
                  (_IN_GROUT,))  # fmt: skip


def _add_bar_in_repair(jacket: Jacket, added: AddedBarLayer, steps: Steps, largest: float) -> _Bar:
    strength = steps.figure("f′c", "grout", jacket.grout, "strength", "MPa")
    radius = np.add(added.layer.circle_radius, added.layer.diameter / 2.0)
    to_sleeve = np.subtract(jacket.sleeve.inner_radius, radius)
    cover = steps.add("c_d", "min(grout to sleeve, half of the clear distance between bars)",
                      np.minimum(to_sleeve, _half_clear(added)), "mm", "geometry")  # fmt: skip
    return _add_bar(added, steps, strength=strength, cover=cover, largest=largest)


def _add_bar(
    added: AddedBarLayer, steps: Steps, *, strength: Real, cover: Real, largest: float
) -> _Bar:
    """Write down an added bar; designs that the codes do not cover get a stand-in."""
    layer = added.layer
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.figure("f_s", "expected yield", layer.steel, "expected_yield", "MPa")
    covered = np.logical_and(
        np.less_equal(layer.diameter, largest),
        np.greater_equal(strength, development.LEAST_STRENGTH),
    )
    counted = np.minimum(strength, development.LARGEST_STRENGTH)
    return _Bar(
        within_range(layer.diameter, covered, largest),
        layer.steel.expected_yield,
        within_range(counted, covered, development.LEAST_STRENGTH),
        cover,
        covered,
    )


def _half_clear(added: AddedBarLayer) -> Real:
    """Half of the clear distance between added bars [mm]."""
    return np.subtract(added.layer.spacing, added.layer.diameter) / 2.0


ADDED_BARS: Final[tuple[LimitState, ...]] = tuple(
    made(code) for code in _CODES for made in (_anchorage, _development, _laps)
)
"""For each set of provisions."""
