"""Development lengths against a printed table and the equation in a bar maker's notes."""

from __future__ import annotations

import numpy as np
import pytest
from jacketcheck_australasia.mechanics.development import (
    as3600_development_length,
    as3600_lap_length,
    nzs3101_development_length,
)

PRINTED = {
    # basic length [mm] of 500 MPa bars by bar and f'c, k_1 = 1 and k_3 = 1, to the next 10 mm
    # (engineers' table to AS 3600 13.1.2.2)
    25.0: {12: 500, 16: 700, 20: 900, 24: 1120, 28: 1350, 32: 1600, 36: 1880, 40: 2180},
    32.0: {12: 450, 16: 600, 20: 790, 24: 990, 28: 1190, 32: 1420, 36: 1660, 40: 1930},
    40.0: {12: 400, 16: 550, 20: 710, 24: 880, 28: 1070, 32: 1270, 36: 1490, 40: 1720},
    50.0: {12: 350, 16: 500, 20: 640, 24: 790, 28: 960, 32: 1140, 36: 1330, 40: 1540},
    65.0: {12: 350, 16: 470, 20: 580, 24: 700, 28: 840, 32: 1000, 36: 1170, 40: 1350},
}
TOP_BARS = {12: 650, 16: 910, 20: 1170, 24: 1460, 28: 1760, 32: 2080, 36: 2450, 40: 2840}
"""The same at 25 MPa with k_1 = 1.3."""


@pytest.mark.parametrize("strength", PRINTED)
def test_table_of_basic_lengths(strength: float) -> None:
    bars = np.array(list(PRINTED[strength]), dtype=float)
    found = as3600_development_length(
        bars, bar_stress=500.0, concrete_strength=strength, cover_dimension=bars
    )
    # printed to 10 mm from 20 mm bars on, to 50 mm below
    slack = np.where(bars < 20.0, 25.0, 11.0)
    printed = np.array(list(PRINTED[strength].values()), dtype=float)
    assert np.all(np.abs(printed - np.asarray(found)) < slack)


def test_table_of_top_bars() -> None:
    bars = np.array(list(TOP_BARS), dtype=float)
    found = as3600_development_length(
        bars, bar_stress=500.0, concrete_strength=25.0, cover_dimension=bars, position_factor=1.3
    )
    printed = np.array(list(TOP_BARS.values()), dtype=float)
    assert np.all(np.abs(printed - np.asarray(found)) < 50.0)  # rounded twice


@pytest.mark.parametrize(
    ("cover_over_diameter", "factor"), [(0.5, 1.0), (1.0, 1.0), (2.0, 0.85), (3.0, 0.7), (9.0, 0.7)]
)
def test_bounds_of_the_cover_factor(cover_over_diameter: float, factor: float) -> None:
    # k_3 as a bar maker's design notes to AS 3600 give it: d_b <= c_d <= 3 d_b counts
    def length(cover: float) -> float:
        return float(
            as3600_development_length(
                32.0, bar_stress=500.0, concrete_strength=32.0, cover_dimension=cover
            )
        )

    assert length(32.0 * cover_over_diameter) == pytest.approx(factor * length(32.0), rel=1e-12)


def test_least_length_is_29_bar_diameters_at_500_mpa() -> None:
    found = as3600_development_length(
        12.0, bar_stress=500.0, concrete_strength=100.0, cover_dimension=100.0
    )
    assert float(found) == pytest.approx(29.0 * 12.0, rel=1e-12)


def test_nzs_3101_gives_50_diameters_for_500_mpa_in_25_mpa() -> None:
    # NZS 3101:2006 8.6.3.2: 0.5 x 500/sqrt(25) = 50
    found = nzs3101_development_length(
        np.array([10.0, 25.0]), bar_stress=500.0, concrete_strength=25.0
    )
    np.testing.assert_allclose(found, [500.0, 1250.0], rtol=1e-12)


def test_nzs_3101_has_a_least_length() -> None:
    found = nzs3101_development_length(10.0, bar_stress=300.0, concrete_strength=70.0)
    assert float(found) == 300.0


LAPS = {
    # Concrete Institute of Australia, Reinforcement Detailing Handbook Z06 (2010), Example 6.1:
    # laps [mm] of 500 MPa bars in 25 MPa by cover and bar, in contact, to the next 10 mm
    20.0: {10: 440, 12: 570, 16: 830, 20: 1130},
    25.0: {10: 400, 12: 530, 16: 800, 20: 1080, 24: 1390},
    40.0: {10: 360, 12: 440, 16: 680, 20: 960, 24: 1260, 28: 1590, 32: 1920, 36: 2310},
    50.0: {12: 440, 16: 610, 20: 880, 24: 1180, 28: 1490, 32: 1840, 36: 2210},
}


@pytest.mark.parametrize("cover", LAPS)
def test_table_of_laps(cover: float) -> None:
    bars = np.array(list(LAPS[cover]), dtype=float)
    found = np.asarray(
        as3600_lap_length(bars, bar_stress=500.0, concrete_strength=25.0, cover_dimension=cover)
    )
    printed = np.array(list(LAPS[cover].values()), dtype=float)
    # the table's own steps are of 10 mm; one figure is rounded down, some stand one step higher
    assert np.all(printed - found > -5.1)
    assert np.all(printed - found < 21.0)


def test_the_least_development_length_does_not_enter_the_lap() -> None:
    # the same table: 360 mm for 10 mm bars, less than 1.25 x 29 x 10 = 362.5 rounded up
    found = as3600_lap_length(10.0, bar_stress=500.0, concrete_strength=25.0, cover_dimension=40.0)
    assert float(found) < 360.0


NARROW = {12: (578, 612), 16: (853, 853), 20: (1147, 1147), 24: (1427, 1427), 36: (2409, 2409)}
"""Laps [mm] of a calculator of splice lengths to AS 3600:2018: 40 MPa, k_1 = 1.3, c_d = 20 mm; bars
in contact, and 100 mm apart in a narrow member."""


@pytest.mark.parametrize("bar", NARROW)
def test_laps_of_bars_apart(bar: int) -> None:
    for apart, printed in zip((0.0, 100.0), NARROW[bar], strict=True):
        found = as3600_lap_length(
            float(bar),
            bar_stress=500.0,
            concrete_strength=40.0,
            cover_dimension=20.0,
            clear_distance=apart,
            position_factor=1.3,
        )
        assert float(found) == pytest.approx(printed, abs=0.51)
