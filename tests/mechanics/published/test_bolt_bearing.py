"""Bearing and tear-out against printed tables and worked examples."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI
from jacketcheck.mechanics.bolt_bearing import (
    AASHTO_BEARING_RESISTANCE_FACTOR,
    AISC_BEARING_RESISTANCE_FACTOR,
    HoleStrengths,
    bearing_strength,
    clear_distance_between_holes,
    clear_distance_to_edge,
    hole_strength,
    seam_row_strength,
    tear_out_strength,
)

SEVEN_EIGHTHS = 0.875 * INCH
HOLE = 15.0 / 16.0 * INCH
"""Standard hole of a 7/8 bolt."""


@pytest.mark.parametrize(
    ("clear", "nominal", "aisc"),
    [
        pytest.param(
            clear_distance_to_edge(1.5 * INCH, hole=HOLE), 40.22, 30.16, id="B-16-edge-bolt"
        ),
        pytest.param(
            clear_distance_between_holes(3.0 * INCH, hole=HOLE), 68.25, 51.19, id="B-17-inner-bolt"
        ),
    ],
)
def test_bolt_in_half_inch_plate_of_grade_50(clear: float, nominal: float, aisc: float) -> None:
    # AISC 360-16 Eq. J3-6a: 7/8 bolt, standard hole, t 1/2 in, F_u 65 ksi, kips
    strength = hole_strength(
        SEVEN_EIGHTHS, clear_distance=clear, thickness=0.5 * INCH, tensile_strength=65.0 * KSI
    )
    assert float(strength) / KIP == pytest.approx(nominal, abs=0.005)
    design = AISC_BEARING_RESISTANCE_FACTOR * strength / KIP
    assert float(design) == pytest.approx(aisc, abs=0.005)


def test_bearing_beside_tear_out() -> None:
    # B-17: tear-out would be 80.44 kips, bearing 68.25 kips
    thickness, tensile_strength = 0.5 * INCH, 65.0 * KSI
    tear_out = tear_out_strength(
        2.0625 * INCH, thickness=thickness, tensile_strength=tensile_strength
    )
    assert float(tear_out) / KIP == pytest.approx(80.44, abs=0.005)
    bearing = bearing_strength(
        SEVEN_EIGHTHS, thickness=thickness, tensile_strength=tensile_strength
    )
    assert float(bearing) / KIP == pytest.approx(68.25, abs=0.005)


@pytest.mark.parametrize(
    ("diameter", "hole", "tensile_strength", "expected"),
    [
        pytest.param(0.750, 0.8125, 58.0, 78.3, id="B-18-3/4-58"),
        pytest.param(0.750, 0.8125, 65.0, 87.8, id="B-18-3/4-65"),
        pytest.param(0.875, 0.9375, 58.0, 91.4, id="B-18-7/8-58"),
        pytest.param(0.875, 0.9375, 65.0, 102.0, id="B-18-7/8-65"),
    ],
)
def test_inner_bolts_of_aisc_manual_table_7_4(
    diameter: float, hole: float, tensile_strength: float, expected: float
) -> None:
    # AISC Steel Construction Manual, 14th and 15th ed., Table 7-4, spacing 3 in, kips per inch of
    # thickness; three printed digits
    strength = hole_strength(
        diameter * INCH,
        clear_distance=clear_distance_between_holes(3.0 * INCH, hole=hole * INCH),
        thickness=1.0 * INCH,
        tensile_strength=tensile_strength * KSI,
    )
    design = AISC_BEARING_RESISTANCE_FACTOR * strength / KIP
    assert float(design) == pytest.approx(expected, abs=0.5 if expected >= 100.0 else 0.0501)


@pytest.mark.parametrize(
    ("diameter", "hole", "tensile_strength", "expected"),
    [
        pytest.param(0.750, 0.8125, 58.0, 44.0, id="B-19-3/4-58"),
        pytest.param(0.750, 0.8125, 65.0, 49.4, id="B-19-3/4-65"),
        pytest.param(0.875, 0.9375, 58.0, 40.8, id="B-19-7/8-58"),
        pytest.param(0.875, 0.9375, 65.0, 45.7, id="B-19-7/8-65"),
    ],
)
def test_edge_bolts_of_aisc_manual_table_7_5(
    diameter: float, hole: float, tensile_strength: float, expected: float
) -> None:
    # AISC Steel Construction Manual, 14th and 15th ed., Table 7-5, edge distance 1-1/4 in, kips
    # per inch of thickness; three printed digits
    strength = hole_strength(
        diameter * INCH,
        clear_distance=clear_distance_to_edge(1.25 * INCH, hole=hole * INCH),
        thickness=1.0 * INCH,
        tensile_strength=tensile_strength * KSI,
    )
    design = AISC_BEARING_RESISTANCE_FACTOR * strength / KIP
    assert float(design) == pytest.approx(expected, abs=0.05)


@pytest.mark.parametrize(
    ("clear", "expected"),
    [pytest.param(1.03125, 32.18, id="B-20-edge"), pytest.param(2.0625, 54.6, id="B-20-inner")],
)
def test_bearing_resistance_of_aashto_6_13_2_9(clear: float, expected: float) -> None:
    # AASHTO LRFD 6.13.2.9 with phi_bb 0.80, kips; the first is rounded twice
    strength = hole_strength(
        SEVEN_EIGHTHS,
        clear_distance=clear * INCH,
        thickness=0.5 * INCH,
        tensile_strength=65.0 * KSI,
    )
    factored = AASHTO_BEARING_RESISTANCE_FACTOR * strength / KIP
    assert float(factored) == pytest.approx(expected, abs=0.006)


def test_bolt_group_of_the_aisc_design_examples() -> None:
    # AISC, Companion to the Steel Construction Manual, v16.0 (AISC 360-22), Example II.B-1, web
    # plate: three 7/8 Group 120-N bolts in line with the force; 3/8 in plate with an edge bolt,
    # 0.355 in beam web without one; 22.6 kips at the edge bolt, 71.2 kips for the group
    web = 0.355 * INCH

    def design(clear: float, thickness: float) -> float:
        strength = hole_strength(
            SEVEN_EIGHTHS,
            clear_distance=clear * INCH,
            thickness=thickness,
            tensile_strength=65.0 * KSI,
        )
        return float(AISC_BEARING_RESISTANCE_FACTOR * strength)

    edge = design(1.03125, 0.375 * INCH)
    inner = design(2.0625, 0.375 * INCH)
    assert edge / KIP == pytest.approx(22.6, abs=0.05)
    assert inner / KIP == pytest.approx(38.4, abs=0.05)
    # 48.457 is rounded to 48.5 before the factor
    assert design(2.0625, web) / KIP == pytest.approx(36.4, abs=0.1)
    group = seam_row_strength(
        24.3 * KIP,
        columns=3,
        sleeve=HoleStrengths(edge=design(2.0625, web), inner=design(2.0625, web)),
        outside_plate=HoleStrengths(edge=edge, inner=inner),
    )
    assert float(group) / KIP == pytest.approx(71.2, abs=0.05)
