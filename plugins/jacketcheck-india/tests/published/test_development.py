"""Development lengths over bar diameter as design tables to IS 456 print them."""

from __future__ import annotations

import numpy as np
import pytest
from jacketcheck_india.mechanics.development import (
    close_lap_factor,
    design_bond_stress,
    development_length,
    lap_length,
)

GRADES = np.array([20.0, 25.0, 30.0, 35.0, 40.0, 50.0])
PRINTED = {
    # stress 0.87 f_y and whether deformed and compressed: L_d over diameter by grade
    "Fe 415 in tension": (0.87 * 415.0, True, False, [47.01, 40.30, 37.61, 33.18, 29.69, 29.69]),
    "Fe 415 in compression": (0.87 * 415.0, True, True, [37.61, 32.24, 30.09, 26.55, 23.75, 23.75]),
    "plain bars in tension": (
        0.87 * 415.0, False, False, [75.22, 64.47, 60.18, 53.10, 47.51, 47.51]
    ),
    "Fe 500 in tension": (0.87 * 500.0, True, False, [56.64, 48.55, 45.31, 39.98, 35.77, 35.77]),
}  # fmt: skip


@pytest.mark.parametrize("case", PRINTED)
def test_table(case: str) -> None:
    stress, deformed, compression, printed = PRINTED[case]
    bond = design_bond_stress(GRADES, deformed=deformed, compression=compression)
    found = development_length(1.0, bar_stress=stress, bond_stress=bond)
    np.testing.assert_allclose(found, printed, atol=0.0051)


def test_bond_stresses_of_plain_bars() -> None:
    found = design_bond_stress(GRADES, deformed=False)
    np.testing.assert_allclose(found, [1.2, 1.4, 1.5, 1.7, 1.9, 1.9], rtol=1e-12)


def test_examination_example() -> None:
    # M20, high-strength deformed bars at 360 MPa: 360/(4 x 1.2 x 1.6) = 46.875 diameters
    bond = design_bond_stress(20.0)
    found = development_length(25.0, bar_stress=360.0, bond_stress=bond)
    assert float(found) / 25.0 == pytest.approx(46.875, rel=1e-12)


@pytest.mark.parametrize(("strength", "expected"), [(24.99, 1.2), (25.0, 1.4), (29.9, 1.4)])
def test_between_grades_the_lower_one_counts(strength: float, expected: float) -> None:
    assert float(design_bond_stress(strength, deformed=False)) == expected


def test_a_strength_converted_from_other_units_keeps_its_grade() -> None:
    converted = 25.0 / 6.894757293168361 * 6.894757293168361 - 1e-12
    assert float(design_bond_stress(converted, deformed=False)) == 1.4


@pytest.mark.parametrize(
    ("direct", "development", "expected"),
    [(False, 47.0, 47.0), (False, 25.0, 30.0), (True, 47.0, 94.0), (True, 12.0, 30.0)],
)
def test_laps(*, direct: bool, development: float, expected: float) -> None:
    """IS 456:2000 26.2.5.1: L_d or 30 diameters in flexural, 2 L_d or 30 in direct tension."""
    found = lap_length(25.0 * development, bar_diameter=25.0, direct_tension=direct)
    assert float(found) / 25.0 == pytest.approx(expected, rel=1e-12)


def test_short_laps_of_thin_bars() -> None:
    # straight length at least 200 mm: 30 diameters of 6 mm are 180
    assert float(lap_length(100.0, bar_diameter=6.0)) == 200.0


@pytest.mark.parametrize(("distance", "factor"), [(74.0, 1.4), (119.0, 1.4), (120.0, 1.0)])
def test_close_laps(distance: float, factor: float) -> None:
    # 26.2.5.1(c), from memory: below the larger of 75 mm and 6 x 20 mm
    assert float(close_lap_factor(distance, bar_diameter=20.0)) == factor
