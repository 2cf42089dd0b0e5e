"""Bolt shear against printed tables."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._arguments import ThreadPosition
from jacketcheck.mechanics._customary_units import INCH, KIP, KSI
from jacketcheck.mechanics.bolt_strength import (
    AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR,
    AISC_BOLT_RESISTANCE_FACTOR,
    aashto_bolt_shear_resistance,
    aashto_long_joint_factor,
    aisc_bolt_shear_strength,
    aisc_long_joint_factor,
)


@pytest.mark.parametrize(
    ("diameter", "shear_stress", "expected"),
    [
        pytest.param(0.750, 54.0, 17.9, id="B-03-3/4"),
        pytest.param(0.875, 54.0, 24.3, id="B-03-7/8"),
        pytest.param(1.000, 54.0, 31.8, id="B-03-1"),
        pytest.param(0.750, 68.0, 22.5, id="B-04-3/4"),
        pytest.param(0.875, 68.0, 30.7, id="B-04-7/8"),
        pytest.param(1.000, 68.0, 40.0, id="B-04-1"),
        pytest.param(0.875, 84.0, 37.9, id="B-05-7/8"),
        pytest.param(1.000, 84.0, 49.5, id="B-05-1"),
    ],
)
def test_design_shear_strength_of_aisc_manual_table_7_1(
    diameter: float, shear_stress: float, expected: float
) -> None:
    # AISC Steel Construction Manual, 14th and 15th ed., Table 7-1, single shear, kips. One unit of
    # the last digit: the table works with areas rounded to three digits.
    nominal = aisc_bolt_shear_strength(
        diameter * INCH, shear_stress=shear_stress * KSI, shear_planes=1
    )
    design = AISC_BOLT_RESISTANCE_FACTOR * nominal / KIP
    assert float(design) == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize(
    ("threads", "nominal", "design"),
    [
        pytest.param("excluded", 40.41, 32.33, id="B-08-excluded"),
        pytest.param("included", 32.47, 25.98, id="B-08-included"),
    ],
)
def test_shear_resistance_of_aashto_6_13_2_7(
    threads: ThreadPosition, nominal: float, design: float
) -> None:
    # AASHTO LRFD 8th/9th ed. 6.13.2.7: 0.56 and 0.45 A_b F_ub, 7/8 bolt of 120 ksi, kips
    resistance = aashto_bolt_shear_resistance(
        0.875 * INCH, tensile_strength=120.0 * KSI, threads=threads, shear_planes=1
    )
    assert float(resistance) / KIP == pytest.approx(nominal, abs=0.005)
    factored = AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR * resistance / KIP
    assert float(factored) == pytest.approx(design, abs=0.006)  # twice rounded


@pytest.mark.parametrize(
    ("length", "aisc", "aashto"),
    [
        pytest.param(38.0, 1.0, 1.0, id="B-09-38-in"),
        pytest.param(38.1, 0.833, 0.83, id="B-09-longer"),
    ],
)
def test_long_joint_factors(length: float, aisc: float, aashto: float) -> None:
    # AISC 360-22 Table J3.2 footnote; AASHTO LRFD 8th/9th ed. 6.13.2.7
    assert float(aisc_long_joint_factor(length * INCH)) == aisc
    assert float(aashto_long_joint_factor(length * INCH)) == aashto
