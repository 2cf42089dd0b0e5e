"""The same figures by other ways: root finding, the Eurocode's base form, explicit planes."""

from __future__ import annotations

import math

import pytest
from jacketcheck_india.mechanics.bolt_bearing import bearing_capacity, bearing_factor
from jacketcheck_india.mechanics.bolt_strength import combined_bolt_ratio
from jacketcheck_india.mechanics.plate_strength import BlockAreas, block_shear_design_strength


@pytest.mark.parametrize(
    ("shear", "tension"), [(10e3, 0.0), (0.0, 70e3), (40e3, 60e3), (80e3, 150e3)]
)
def test_combined_ratio_is_the_load_multiplier(shear: float, tension: float) -> None:
    def use(multiplier: float) -> float:
        return (multiplier * shear / 90e3) ** 2 + (multiplier * tension / 140e3) ** 2

    low, high = 0.0, 1e6
    for _ in range(200):  # bisection for the multiplier that just uses the bolt up
        middle = (low + high) / 2.0
        low, high = (middle, high) if use(middle) < 1.0 else (low, middle)
    ratio = combined_bolt_ratio(
        shear, design_shear_capacity=90e3, tension=tension, design_tension_capacity=140e3
    )
    assert float(ratio) == pytest.approx(1.0 / low, rel=1e-9)


def test_bearing_equals_the_eurocode_with_a_wide_edge() -> None:
    # EN 1993-1-8 Table 3.4 has the same base with k1 = 2.5 where e2 is at least 1.5 d0; its worked
    # figure for M20 8.8 in 10 mm of 470 MPa, e1 = 40, p1 = 60, d0 = 22: alpha_b = 0.6061
    factor = bearing_factor(
        end_distance=40.0, pitch=60.0, hole=22.0, bolt_strength=800.0, plate_strength=470.0
    )
    capacity = bearing_capacity(20.0, thickness=10.0, plate_strength=470.0, bearing_factor=factor)
    assert float(factor) == pytest.approx(0.6061, abs=5e-5)
    # 96.5 kN with k1 = 2.118 and gamma_M2 = 1.25, three digits printed
    assert float(capacity) / 1.25 / 1e3 * 2.118 / 2.5 == pytest.approx(96.5, abs=0.06)


@pytest.mark.parametrize(("pitch", "expected"), [(39.6, 0.35), (82.5, 1.0)])
def test_pitch_governs_the_bearing_factor(pitch: float, expected: float) -> None:
    found = bearing_factor(
        end_distance=1e3, pitch=pitch, hole=22.0, bolt_strength=800.0, plate_strength=410.0
    )
    assert float(found) == pytest.approx(expected, rel=1e-12)


def test_block_shear_of_a_gusset_plate_by_hand() -> None:
    # one line of three M20 in 22 mm holes, pitch 60, end 40, side edge 35, t = 10, E250
    gross, net = (40.0 + 120.0) * 10.0, (160.0 - 2.5 * 22.0) * 10.0
    across, across_net = 35.0 * 10.0, (35.0 - 11.0) * 10.0
    yields = 1600.0 * 250.0 / (math.sqrt(3.0) * 1.1) + 0.9 * 240.0 * 410.0 / 1.25
    ruptures = 0.9 * 1050.0 * 410.0 / (math.sqrt(3.0) * 1.25) + 350.0 * 250.0 / 1.1
    found = block_shear_design_strength(
        BlockAreas(gross, net, across, across_net), yield_strength=250.0, tensile_strength=410.0
    )
    assert (round(yields / 1e3, 1), round(ruptures / 1e3, 1)) == (280.8, 258.5)
    assert float(found) == pytest.approx(ruptures, rel=1e-12)
