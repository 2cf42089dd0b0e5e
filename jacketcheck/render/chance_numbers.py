"""Probabilities, their intervals and what moves them, as text."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from jacketcheck.chance.intervals import Interval
from jacketcheck.chance.result import Driver, LimitChance
from jacketcheck.render.numbers import MISSING

__all__ = ["driver_text", "index_text", "interval_text", "probability_text"]

_SMALLEST = 1e-12
_SMALLEST_PLAIN, _NEARLY_ONE, _ALMOST_ONE = 1e-3, 0.99, 0.9995


def probability_text(value: float) -> str:
    """A probability with two significant digits.

    Examples
    --------
    >>> probability_text(0.0754), probability_text(0.1), probability_text(0.00045)
    ('0.075', '0.10', '4.5e-04')
    >>> probability_text(0.9968), probability_text(0.99999), probability_text(0.0)
    ('0.997', '> 0.999', '0')
    """
    if value in {0.0, 1.0}:
        return f"{value:g}"
    if value > _NEARLY_ONE:
        return f"{value:.3f}" if value < _ALMOST_ONE else "> 0.999"
    return f"{value:#.2g}" if value >= _SMALLEST_PLAIN else f"{value:.1e}"


def interval_text(interval: Interval) -> str:
    """Bounds of a probability, each rounded outwards to two significant digits.

    Examples
    --------
    >>> interval_text(Interval(0.0754, 0.0761)), interval_text(Interval(0.0, 2.81e-5))
    ('0.075 to 0.077', '0 to 2.9e-05')
    """
    return f"{_outwards(interval.low, math.floor)} to {_outwards(interval.high, math.ceil)}"


def _outwards(value: float, towards: Callable[[float], int]) -> str:
    if not _SMALLEST < value < 1.0:
        # what is smaller than any estimate could show
        bound = 0.0 if towards(0.5) == 0 else _SMALLEST
        return probability_text(bound if 0.0 < value < 1.0 else min(max(value, 0.0), 1.0))
    unit = 10.0 ** (math.floor(math.log10(value)) - 1)
    return probability_text(min(towards(value / unit) * unit, 1.0))


def index_text(limit: LimitChance) -> str:
    """Reliability index of the sampled probability; a bound where none or all exceed."""
    from statistics import NormalDist  # noqa: PLC0415 - only here

    normal = NormalDist()
    if 0.0 < limit.probability < 1.0:
        return f"{-normal.inv_cdf(limit.probability):.2f}"
    if limit.probability == 0.0:
        return f"> {math.floor(-100.0 * normal.inv_cdf(limit.interval.high)) / 100.0:.2f}"
    return MISSING


def driver_text(drivers: Sequence[Driver], count: int) -> str:
    """Names of the strongest that stand out, with their shifts in standard deviations."""
    clear = [one for one in drivers if one.clear][:count]
    return ", ".join(f"{one.name} {one.shift:+.1f}" for one in clear) or MISSING
