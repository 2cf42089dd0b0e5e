"""How numbers are printed: significant digits, infinity and what is missing."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from jacketcheck.units import DisplaySystem, display

__all__ = ["MISSING", "number_ranges", "number_text", "quantity_text", "ratio_text", "shown_value"]

MISSING = "–"
_LARGEST_PLAIN = 1e6
_SMALLEST_PLAIN = 1e-3
_LARGEST_RATIO = 1e4


def number_text(value: float, *, digits: int = 4) -> str:
    """A number with some significant digits.

    Examples
    --------
    >>> number_text(1234.5678), number_text(0.0123456), number_text(float("inf"))
    ('1235', '0.01235', '∞')
    >>> number_text(float("nan"))
    '–'
    """
    if math.isnan(value):
        return MISSING
    if math.isinf(value):
        return "∞" if value > 0 else "-∞"
    if value == 0.0:
        return "0"
    size = abs(value)
    if _SMALLEST_PLAIN <= size < _LARGEST_PLAIN:
        decimals = max(0, digits - 1 - math.floor(math.log10(size)))
        return f"{value:.{decimals}f}"
    return f"{value:.{digits - 1}e}"


def number_ranges(numbers: Sequence[int]) -> str:
    """Rising whole numbers, three or more neighbours joined.

    Examples
    --------
    >>> number_ranges([1, 2, 4, 5, 6, 20])
    '1, 2, 4–6, 20'
    """
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(
        f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(str(one) for one in run)
        for run in runs
    )


def ratio_text(value: float) -> str:
    """A ratio of demand to capacity, rounded up so that a failure never reads as 1.00.

    Examples
    --------
    >>> ratio_text(0.9951), ratio_text(1.0001), ratio_text(float("inf"))
    ('1.00', '1.01', '∞')
    """
    if not math.isfinite(value) or value >= _LARGEST_RATIO:
        return number_text(value)
    # the slack keeps 0.57 from reading as 0.58; above 1 there is none, so that 1.00 means a pass
    hundredths = math.ceil(value * 100.0 - 1e-9)
    return f"{max(hundredths, 101 if value > 1.0 else 0) / 100.0:.2f}"


def shown_value(value: Any, unit: str, system: DisplaySystem) -> tuple[float, str]:
    """Value and printed unit; of many designs the largest value is shown."""
    factor, printed = display(unit, system)
    return float(np.max(value)) * factor, printed


def quantity_text(value: Any, unit: str, system: DisplaySystem) -> str:
    """A value with its unit, or a word as it is."""
    if isinstance(value, str):
        return value
    number, printed = shown_value(value, unit, system)
    return number_text(number) if printed == "—" else f"{number_text(number)} {printed}"
