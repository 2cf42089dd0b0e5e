"""Inches as a shop writes them read back as the same length."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.units import parse_quantity
from jacketcheck.units.inches import inch_text


@given(sixty_fourths=st.integers(0, 64 * 200))
def test_fractions_read_back_exactly(sixty_fourths: int) -> None:
    text = inch_text(sixty_fourths / 64.0 * 25.4)
    assert "." not in text
    assert parse_quantity(text, "mm") == pytest.approx(sixty_fourths / 64.0 * 25.4, rel=1e-12)
    fraction = text.removesuffix(" in").rpartition("-")[2]
    if "/" in fraction:
        # in lowest terms
        assert str(Fraction(fraction)) == fraction


@given(length=st.floats(0.0, 5000.0))
def test_any_length_reads_back_to_half_a_thousandth(length: float) -> None:
    read = parse_quantity(inch_text(length), "mm")
    assert read == pytest.approx(length, abs=0.00051 * 25.4)


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (0.0, "0 in"),
        (-63.5, "-2-1/2 in"),
        (25.4, "1 in"),
        (25.4 / 64.0, "1/64 in"),
        (1.0, "0.039 in"),
    ],
)
def test_examples(length: float, text: str) -> None:
    assert inch_text(length) == text


@pytest.mark.parametrize(
    ("value", "unit", "us", "si"),
    [
        # 39 kip = 173.5 kN; 568.75 lb·ft = 771.1 N·m; 120 ksi = 827.4 MPa
        (39 * 4448.2216152605, "N", "39 kip", "173.5 kN"),
        (771.12e3, "N mm", "569 lb·ft", "771 N·m"),
        (827.37, "MPa", "120 ksi", "827.4 MPa"),
        (240.0, "deg", "240° (2/3 turn)", "240° (2/3 turn)"),
        (125.0, "deg", "125°", "125°"),
        (89.0, "1", "89", "89"),
        ("none", "mm", "none", "none"),
        (float("nan"), "mm", "–", "–"),
    ],
)
def test_shop_quantities(value: float | str, unit: str, us: str, si: str) -> None:
    assert shop_quantity(value, unit, "us") == us
    assert shop_quantity(value, unit, "si") == si
