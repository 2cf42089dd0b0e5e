"""Inputs outside the range that such repairs usually have.

No clause forbids them, and some are meant; but most are slips of the pen, or designs beyond the
tests from which the checks come. Such an input leaves its row open until it is corrected, or
confirmed by the engineer in ``judgement.confirmed``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import NoScatter, limit_state
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Kind, Result, Step

__all__ = ["CONFIRMABLE", "USUAL_RANGES", "UsualRange", "usual_ranges"]

_TITLE: Final = "Inputs within their usual range"
_PRACTICE: Final = "common practice, no published source"
_CONFIRMED: Final = "engineering judgement: confirmed as meant (judgement.confirmed)"
_ROUNDING: Final = 1e-9


@dataclass(frozen=True, slots=True)
class UsualRange:
    """What a quantity of such a repair usually is.

    Attributes
    ----------
    field
        Field of the input that an engineer would correct.
    symbol, quantity
        How the quantity is written, and what it is.
    value
        The quantity of a jacket; None where the jacket has no such part.
    low, high
        Usual range, ends included, in `unit`.
    source
        Where the range comes from.
    unit
        Internal unit.
    """

    field: str
    symbol: str
    quantity: str
    value: Callable[[Jacket], Real | None]
    low: float
    high: float
    source: str = _PRACTICE
    unit: str = "1"

    def holds(self, value: Real) -> Real:
        """Whether each design lies within the range; NaN does not."""
        low, high = self.low * (1.0 - _ROUNDING), self.high * (1.0 + _ROUNDING)
        return np.logical_and(np.greater_equal(value, low), np.less_equal(value, high))


def _axial_ratio(jacket: Jacket) -> Real:
    column = jacket.column
    return np.divide(jacket.demands.axial_load, column.gross_area * column.concrete.specified)


def _drift(jacket: Jacket) -> Real | None:
    demand = jacket.demands.displacement
    return None if demand is None else np.divide(demand, jacket.column.height)


def _added_count(jacket: Jacket) -> Real | None:
    return None if jacket.added_bars is None else jacket.added_bars.layer.count


def _hole_over_bar(jacket: Jacket) -> Real | None:
    added = jacket.added_bars
    return None if added is None else np.divide(added.hole_diameter, added.layer.diameter)


def _embedment(jacket: Jacket) -> Real | None:
    added = jacket.added_bars
    return None if added is None else np.divide(added.embedment, added.layer.diameter)


def _footing_strength(jacket: Jacket) -> Real | None:
    return None if jacket.footing is None else jacket.footing.concrete_strength


def _footing_depth(jacket: Jacket) -> Real | None:
    if jacket.footing is None or jacket.footing.depth is None:
        return None
    return np.divide(jacket.footing.depth, jacket.column.diameter)


def _lost_share(jacket: Jacket) -> Real:
    column = jacket.column
    return np.divide(len(column.in_state("buckled", "fractured")), column.layer.count)


def _steel_ratio(jacket: Jacket) -> Real:
    return np.divide(jacket.column.layer.total_area, jacket.column.gross_area)


USUAL_RANGES: Final = (
    UsualRange("column.height", "a/D", "shear span over the column's diameter",
               lambda j: np.divide(j.column.shear_span, j.column.diameter), 2.5, 12.0,
               "flexural columns of the circular column tests behind the hinge model"),
    UsualRange("column.concrete_strength", "f′c", "concrete of a column in service",
               lambda j: j.column.concrete.specified, 15.0, 70.0, unit="MPa"),
    UsualRange("column.cover", "c", "cover of the column's hoops",
               lambda j: j.column.cover, 20.0, 100.0, unit="mm"),
    UsualRange("column.bars", "ρ_l", "bars over the gross section", _steel_ratio, 0.005, 0.04,
               "AASHTO LRFD 5.11.4.1.1 allows 1 to 4 %, from memory; older columns down to 0.5 %, "
               + _PRACTICE),
    UsualRange("damage", "n_lost/n", "share of bars buckled or fractured", _lost_share, 0.0, 0.5),
    UsualRange("actions.axial_load", "P/(f′c A_g)", "axial load ratio", _axial_ratio, 0.02, 0.35),
    UsualRange("actions.displacement_demand", "Δ_D/L", "drift ratio", _drift, 0.002, 0.08),
    UsualRange("repair.height", "H/D", "height of the repair over the column's diameter",
               lambda j: np.divide(j.repair_height, j.column.diameter), 0.75, 2.0),
    UsualRange("sleeve.inner_diameter", "t_g/D", "annulus over the column's diameter",
               lambda j: np.divide(j.grout.thickness, j.column.diameter), 0.02, 0.20),
    UsualRange("sleeve.seam_gap", "s_g", "opening between the half-shells",
               lambda j: j.sleeve.seam_gap, 3.0, 50.8, unit="mm"),
    UsualRange("grout.strength", "f_g/f′c", "grout over the column's concrete",
               lambda j: np.divide(j.grout.strength, j.column.concrete.specified), 1.0, 5.0),
    UsualRange("added_bars.count", "n", "added bars", _added_count, 6.0, 120.0,
               "six bars in a circle: AASHTO LRFD 5.6.4.2, ACI 318-19 10.7.3.1, from memory"),
    UsualRange("added_bars.hole_diameter", "d_h/d_b", "drilled hole over the bar", _hole_over_bar,
               1.15, 3.0),
    UsualRange("added_bars.embedment", "l/d_b", "embedment over the bar's diameter", _embedment,
               8.0, 60.0),
    UsualRange("footing.concrete_strength", "f′c,f", "concrete of a footing in service",
               _footing_strength, 15.0, 70.0, unit="MPa"),
    UsualRange("footing.depth", "h/D", "depth of the footing over the column's diameter",
               _footing_depth, 0.5, 3.0),
)  # fmt: skip
"""Every usual range, in the order in which they are printed."""

CONFIRMABLE: Final = tuple(one.field for one in USUAL_RANGES)


@limit_state(
    "usual-ranges",
    title=_TITLE,
    effort="closed-form",
    scatter=NoScatter("asks whether inputs are as meant: no event"),
)
def usual_ranges(jacket: Jacket) -> list[Result]:
    """One open row for each unusual input, and the list of all that were looked at."""
    looked_at = [(one, value) for one in USUAL_RANGES if (value := one.value(jacket)) is not None]
    rows = [row for one, value in looked_at for row in _unusual(jacket, one, value)]
    outside = np.sum([np.logical_not(one.holds(value)) for one, value in _stacked(looked_at)],
                     axis=0)  # fmt: skip
    return [*rows, _list(looked_at, outside)]


def _stacked(looked_at: list[tuple[UsualRange, Real]]) -> Iterator[tuple[UsualRange, Real]]:
    shape = np.broadcast_shapes(*(np.shape(value) for _, value in looked_at))
    return ((one, np.broadcast_to(value, shape)) for one, value in looked_at)


def _unusual(jacket: Jacket, one: UsualRange, value: Real) -> Iterator[Result]:
    """An open row where a design has an unusual value; reported where that is confirmed."""
    usual = one.holds(value)
    if np.all(usual):
        return
    confirmed = one.field in jacket.judgement.confirmed
    low = np.less(value, one.low)
    bound = np.where(low, one.low, one.high)[()]
    demand, capacity = np.where(low, bound, value)[()], np.where(low, value, bound)[()]
    kind = Kind.LIMIT if np.ndim(usual) else Kind.NOT_EVALUATED
    yield Result(
        f"Usual range: {one.quantity}",
        one.field,
        demand if confirmed else np.where(usual, demand, np.nan)[()],
        capacity,
        one.unit,
        one.source,
        (_step(one, value), Step("bound", "usual", bound, one.unit, one.source)),
        (_CONFIRMED if confirmed else _open(one, value),),
        kind=Kind.REPORTED if confirmed else kind,
        without_margin=True,
    )


def _open(one: UsualRange, value: Real) -> str:
    """What leaves a row open, and the two ways to close it."""
    outside = np.asarray(value)[np.logical_not(one.holds(value))]
    shown = " to ".join(f"{end:.3g}" for end in sorted({np.min(outside), np.max(outside)}))
    return (
        f"{shown} {one.unit}".removesuffix(" 1")
        + f", usually {one.low:g} to {one.high:g}: correct {one.field}, or confirm it by "
        f'judgement.confirmed = ["{one.field}"]'
    )


def _list(looked_at: list[tuple[UsualRange, Real]], outside: Real) -> Result:
    ranges, count = [_step(one, value) for one, value in looked_at], float(len(looked_at))
    steps = (
        *ranges,
        Step("n_out", "inputs outside their usual range", outside, "1", "count of the above"),
        Step("n_all", "inputs looked at", count, "1", "count of the above"),
    )
    return Result(_TITLE, "inputs outside, of those looked at", outside, count, "1",
                  "usual ranges, each with its source in the steps", steps,
                  kind=Kind.REPORTED)  # fmt: skip


def _step(one: UsualRange, value: Real) -> Step:
    within = f"{one.quantity}, usually {one.low:g} to {one.high:g} {one.unit}".removesuffix(" 1")
    return Step(one.symbol, within, value, one.unit, one.source)
