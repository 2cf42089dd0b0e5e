"""Anchorage and laps of EN 1992-1-1 against printed tables of it and of design aids."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.anchorage import (
    basic_anchorage_length,
    bond_strength,
    cover_coefficient,
    design_anchorage_length,
    design_lap_length,
    lap_coefficient,
    pressure_coefficient,
    size_coefficient,
)
from jacketcheck_europe.mechanics.concrete import characteristic_tensile_strength

# EN 1992-1-1:2004 Table 3.1: f_ctk,0.05 [MPa] by f_ck
TENSILE = {
    12: 1.1,
    16: 1.3,
    20: 1.5,
    25: 1.8,
    30: 2.0,
    35: 2.2,
    40: 2.5,
    45: 2.7,
    50: 2.9,
    55: 3.0,
    60: 3.1,
    70: 3.2,
    80: 3.4,
    90: 3.5,
}


def bond(strength: int, diameter: float = 25.0, *, good: bool = True) -> float:
    """Design bond strength from the tabulated tensile strength [MPa]."""
    found = bond_strength(
        TENSILE[strength], diameter=diameter, partial_factor=1.5, good_conditions=good
    )
    return float(found)


@pytest.mark.parametrize(("strength", "expected"), TENSILE.items())
def test_tensile_strength_of_table_3_1(strength: int, expected: float) -> None:
    # the table rounds f_ctm to one digit, and then 0.7 of it once more
    found = characteristic_tensile_strength(float(strength))
    assert float(found) == pytest.approx(expected, abs=0.06)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        pytest.param(strength, expected, id=f"D-12-C{strength}")
        for strength, expected in {20: 2.25, 25: 2.70, 30: 3.00, 35: 3.30, 40: 3.75}.items()
    ],
)
def test_bond_strength(strength: int, expected: float) -> None:
    assert bond(strength) == pytest.approx(expected, rel=5e-3)
    assert bond(strength, good=False) == pytest.approx(0.7 * expected, rel=5e-3)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        pytest.param(strength, expected, id=f"D-13-C{strength}")
        for strength, expected in {20: 48.3, 25: 40.3, 30: 36.2, 40: 29.0}.items()
    ],
)
def test_basic_length_of_grade_500(strength: int, expected: float) -> None:
    # in bar diameters, at f_yd = 500/1.15
    found = basic_anchorage_length(1.0, bar_stress=500.0 / 1.15, bond_strength=bond(strength))
    assert float(found) == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        pytest.param(strength, expected, id=f"D-14-C{strength}")
        for strength, expected in {20: 40, 25: 34, 30: 31, 35: 28, 40: 25}.items()
    ],
)
def test_basic_length_of_grade_420(strength: int, expected: int) -> None:
    # a design aid for f_yk = 420 MPa prints whole diameters, rounded up or down by one at most
    found = basic_anchorage_length(1.0, bar_stress=420.0 / 1.15, bond_strength=bond(strength))
    assert float(found) == pytest.approx(expected, abs=1.0)


@pytest.mark.parametrize(
    ("strength", "expected"),
    {12: 527, 16: 446, 20: 386, 25: 322, 30: 290, 35: 264, 40: 232, 50: 200, 60: 187}.items(),
)
def test_basic_length_of_bars_of_8_mm(strength: int, expected: int) -> None:
    # a published spreadsheet, σ_sd = 434.78 MPa, good bond, whole millimetres
    found = basic_anchorage_length(8.0, bar_stress=434.78, bond_strength=bond(strength, 8.0))
    assert float(found) == pytest.approx(expected, abs=0.6)


def test_large_bars() -> None:
    # D-15: η_2 = (132 - 40)/100
    assert float(size_coefficient(40.0)) == pytest.approx(0.92, rel=1e-12)
    assert float(size_coefficient(32.0)) == 1.0


@pytest.mark.parametrize(
    ("pressure", "expected"),
    [
        pytest.param(0.0, 1.0, id="D-15-0"),
        pytest.param(2.0, 0.92, id="D-15-2"),
        pytest.param(5.0, 0.80, id="D-15-5"),
        pytest.param(7.5, 0.70, id="D-15-7.5"),
        pytest.param(10.0, 0.70, id="D-15-10"),
    ],
)
def test_pressure(pressure: float, expected: float) -> None:
    assert float(pressure_coefficient(pressure)) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("cover", "expected"),
    # Table 8.2, straight bars of 20 mm: 1 - 0.15 (c_d - 20)/20
    [(10.0, 1.0), (20.0, 1.0), (40.0, 0.85), (60.0, 0.70), (200.0, 0.70)],
)
def test_cover(cover: float, expected: float) -> None:
    assert float(cover_coefficient(cover, diameter=20.0)) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("share", "expected"), [(0.20, 1.0), (0.33, 1.15), (0.50, 1.4), (0.60, 1.5), (1.0, 1.5)]
)
def test_share_of_lapped_bars(share: float, expected: float) -> None:
    # EN 1992-1-1:2004 Table 8.3 prints 1, 1.15, 1.4, 1.5; the square root of two is 1.414
    assert float(lap_coefficient(share)) == pytest.approx(expected, abs=0.05)


@pytest.mark.parametrize(
    ("basic", "expected"),
    [
        (1000.0, 700.0),  # product of the coefficients not below 0.7
        (200.0, 200.0),  # 10 diameters
        (5000.0, 3500.0),
    ],
)
def test_least_anchorage_length(basic: float, expected: float) -> None:
    # EN 1992-1-1:2004 Eq. 8.4 to 8.6, bars of 20 mm
    found = design_anchorage_length(basic, diameter=20.0, cover=0.7, pressure=0.8)
    assert float(found) == pytest.approx(expected, rel=1e-12)
    assert float(design_anchorage_length(0.0, diameter=8.0)) == 100.0


def test_least_lap_length() -> None:
    # EN 1992-1-1:2004 Eq. 8.10 and 8.11
    assert float(design_lap_length(1000.0, diameter=20.0, lap=1.5)) == 1500.0
    assert float(design_lap_length(100.0, diameter=20.0, lap=1.5)) == 300.0
    assert float(design_lap_length(100.0, diameter=8.0, lap=1.0)) == 200.0
