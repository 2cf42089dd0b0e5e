"""How numbers are printed; a failure never reads as 1.00."""

from __future__ import annotations

import math

import numpy as np
import pytest

from jacketcheck.render.numbers import number_text, quantity_text, ratio_text, shown_value
from jacketcheck.units import DisplaySystem


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.0, "0"),
        (-0.0, "0"),
        (1234.5678, "1235"),
        (12.345678, "12.35"),
        (0.0123456, "0.01235"),
        (0.001, "0.001000"),
        (0.00099, "9.900e-04"),
        (-12.345678, "-12.35"),
        (123456.7, "123457"),
        (2.5e6, "2.500e+06"),
        (math.inf, "∞"),
        (-math.inf, "-∞"),
        (math.nan, "–"),
    ],
)
def test_numbers(value: float, text: str) -> None:
    assert number_text(value) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0.0, "0.00"),
        (1e-9, "0.01"),
        (0.57, "0.57"),
        (0.5701, "0.58"),
        (0.29, "0.29"),
        (0.9951, "1.00"),
        (1.0, "1.00"),
        (math.nextafter(1.0, 2.0), "1.01"),
        (1.0 + 1e-12, "1.01"),
        (1.07, "1.07"),
        (9999.0, "9999.00"),
        (1e300, "1.000e+300"),
        (math.inf, "∞"),
        (math.nan, "–"),
    ],
)
def test_ratios_are_rounded_up(value: float, text: str) -> None:
    assert ratio_text(value) == text


@pytest.mark.parametrize(
    ("value", "unit", "system", "text"),
    [
        (2.5e6, "N", "si", "2500 kN"),
        (4448.2216152605, "N", "us", "1.000 kip"),
        (0.75, "1", "us", "0.7500"),
        ("yes", "1", "si", "yes"),
        (25.4, "mm", "us", "1.000 in"),
    ],
)
def test_quantities(value: float | str, unit: str, system: DisplaySystem, text: str) -> None:
    assert quantity_text(value, unit, system) == text


def test_of_many_designs_the_largest_is_shown() -> None:
    assert shown_value(np.array([1e3, 3e3, 2e3]), "N", "si") == (3.0, "kN")
