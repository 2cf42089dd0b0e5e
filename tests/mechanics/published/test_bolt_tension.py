"""Bolt tension, alone and with shear, against printed tables and a worked example."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI
from jacketcheck.mechanics.bolt_strength import AISC_BOLT_RESISTANCE_FACTOR, bolt_area
from jacketcheck.mechanics.bolt_tension import (
    AASHTO_BOLT_TENSION_RESISTANCE_FACTOR,
    aashto_bolt_tension_resistance,
    aisc_bolt_tension_strength,
    aisc_tensile_stress_with_shear,
)


@pytest.mark.parametrize(
    ("diameter", "expected"),
    [
        pytest.param(0.750, 29.8, id="B-06-3/4"),
        pytest.param(0.875, 40.6, id="B-06-7/8"),
        pytest.param(1.000, 53.0, id="B-06-1"),
    ],
)
def test_design_tension_strength_of_aisc_manual_table_7_2(diameter: float, expected: float) -> None:
    # AISC Steel Construction Manual, 14th and 15th ed., Table 7-2, A325, kips; last digit
    nominal = aisc_bolt_tension_strength(diameter * INCH, tensile_stress=90.0 * KSI)
    assert float(AISC_BOLT_RESISTANCE_FACTOR * nominal) / KIP == pytest.approx(expected, abs=0.05)


def test_tensile_stress_left_beside_shear() -> None:
    # B-07: AISC 360-16 Eq. J3-3a, A325-N at 20 ksi of shear
    stress = aisc_tensile_stress_with_shear(
        20.0 * KSI, tensile_stress=90.0 * KSI, shear_stress=54.0 * KSI
    )
    assert float(stress) / KSI == pytest.approx(72.56, abs=0.005)


def test_combined_tension_and_shear_of_the_aisc_design_examples() -> None:
    # AISC, Companion to the Steel Construction Manual, v16.0 (AISC 360-22), Example J.3: 3/4 Group
    # 120-N, 8.00 kips of shear; 76.8 ksi and 25.5 kips after rounding the area to 0.442 in2
    diameter = 0.75 * INCH
    stress = aisc_tensile_stress_with_shear(
        8.0 * KIP / bolt_area(diameter), tensile_stress=90.0 * KSI, shear_stress=54.0 * KSI
    )
    assert float(stress) / KSI == pytest.approx(76.8, abs=0.1)
    design = AISC_BOLT_RESISTANCE_FACTOR * aisc_bolt_tension_strength(
        diameter, tensile_stress=stress
    )
    assert float(design) / KIP == pytest.approx(25.5, abs=0.1)


def test_tension_resistance_of_aashto() -> None:
    # AASHTO LRFD 9th ed. 6.13.2.10.2: 0.76 A_b F_ub with phi_t 0.80 (6.5.4.2); 7/8 bolt of 120 ksi
    # with A_b 0.6013 in2: 54.84 and 43.87 kips, worked by hand
    nominal = aashto_bolt_tension_resistance(0.875 * INCH, tensile_strength=120.0 * KSI)
    assert float(nominal) / KIP == pytest.approx(54.84, abs=0.005)
    factored = AASHTO_BOLT_TENSION_RESISTANCE_FACTOR * nominal / KIP
    assert float(factored) == pytest.approx(43.87, abs=0.005)
