"""Slip resistance against printed tables and worked examples.

Tolerances are half a unit of the last printed digit unless a comment says otherwise.
"""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics._customary_units import KIP
from jacketcheck.mechanics.slip import (
    AISC_PRETENSION_RATIO,
    aashto_slip_resistance,
    aisc_filler_factor,
    aisc_slip_resistance,
    probable_slip_load,
)
from jacketcheck.mechanics.slip_hole_factors import (
    aashto_hole_size_factor,
    aisc_slip_resistance_factor,
    lowest_hole_size_factor,
    rcsc_slip_resistance_factor,
)
from jacketcheck.mechanics.slip_tension import (
    aashto_slip_tension_reduction,
    aisc_slip_tension_reduction,
)

A325_PRETENSION = {"3/4": 28.0, "7/8": 39.0, "1": 51.0}
A490_PRETENSION = {"3/4": 35.0, "7/8": 49.0, "1": 64.0}
"""Minimum pretension [kips], AISC 360-16 Table J3.1."""


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("standard", 1.00, id="S-01-standard"),
        pytest.param("short-slot-perpendicular", 1.00, id="S-01-short-across"),
        pytest.param("oversized", 0.85, id="S-01-oversized"),
        pytest.param("short-slot-parallel", 0.85, id="S-01-short-along"),
        pytest.param("long-slot-perpendicular", 0.70, id="S-01-long-across"),
        pytest.param("long-slot-parallel", 0.70, id="S-01-long-along"),
    ],
)
def test_resistance_factors_of_aisc_360_22_j3_9(hole: HoleType, expected: float) -> None:
    assert aisc_slip_resistance_factor(hole) == expected
    assert rcsc_slip_resistance_factor(hole) == expected  # RCSC 2020 5.4 has the same


@pytest.mark.parametrize(
    ("fillers", "expected"),
    [
        pytest.param(0, 1.0, id="S-01-no-filler"),
        pytest.param(1, 1.0, id="S-01-one-filler"),
        pytest.param(2, 0.85, id="S-01-two-fillers"),
    ],
)
def test_filler_factor_of_aisc_360_22_j3_9(fillers: int, expected: float) -> None:
    assert float(aisc_filler_factor(fillers)) == expected


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("standard", 1.0, id="S-02-standard"),
        pytest.param("oversized", 0.85, id="S-02-oversized"),
        pytest.param("short-slot-perpendicular", 0.85, id="S-02-short-across"),
        pytest.param("short-slot-parallel", 0.85, id="S-02-short-along"),
        pytest.param("long-slot-perpendicular", 0.70, id="S-02-long-across"),
        pytest.param("long-slot-parallel", 0.60, id="S-02-long-along"),
    ],
)
def test_resistance_factors_of_rcsc_2004_5_4(hole: HoleType, expected: float) -> None:
    assert rcsc_slip_resistance_factor(hole, edition="2004") == expected


def test_ratio_of_installed_to_minimum_pretension() -> None:
    # AISC 360-22 J3.9 and RCSC 2004 5.4 (S-01, S-02)
    assert AISC_PRETENSION_RATIO == 1.13


@pytest.mark.parametrize(
    ("slip_coefficient", "pretension", "hole", "expected", "half_digit"),
    [
        pytest.param(0.30, A325_PRETENSION["3/4"], "standard", 9.49, 0.005, id="S-03-3/4"),
        pytest.param(0.30, A325_PRETENSION["7/8"], "standard", 13.2, 0.05, id="S-03-7/8"),
        pytest.param(0.30, A325_PRETENSION["1"], "standard", 17.3, 0.05, id="S-03-1"),
        pytest.param(0.50, A325_PRETENSION["3/4"], "standard", 15.8, 0.05, id="S-04-3/4"),
        pytest.param(0.50, A325_PRETENSION["7/8"], "standard", 22.0, 0.05, id="S-04-7/8"),
        pytest.param(0.50, A325_PRETENSION["1"], "standard", 28.8, 0.05, id="S-04-1"),
        pytest.param(0.30, A490_PRETENSION["3/4"], "standard", 11.9, 0.05, id="S-05-3/4"),
        pytest.param(0.30, A490_PRETENSION["7/8"], "standard", 16.6, 0.05, id="S-05-7/8"),
        pytest.param(0.30, A490_PRETENSION["1"], "standard", 21.7, 0.05, id="S-05-1"),
        pytest.param(0.30, A325_PRETENSION["7/8"], "oversized", 11.2, 0.05, id="S-06-oversized"),
        pytest.param(
            0.30, A325_PRETENSION["7/8"], "long-slot-parallel", 9.25, 0.005, id="S-06-long-slot"
        ),
    ],
)
def test_design_slip_resistance_of_aisc_manual_table_7_3(
    slip_coefficient: float,
    pretension: float,
    hole: HoleType,
    expected: float,
    half_digit: float,
) -> None:
    # AISC Steel Construction Manual, 14th and 15th ed., Table 7-3, single shear, kips
    nominal = aisc_slip_resistance(slip_coefficient, pretension=pretension * KIP, slip_planes=1)
    design = aisc_slip_resistance_factor(hole) * nominal / KIP
    assert float(design) == pytest.approx(expected, abs=half_digit)


@pytest.mark.parametrize("slip_coefficient", [0.30, 0.50], ids=["S-07-A", "S-07-B"])
def test_double_shear_is_exactly_twice_single_shear(slip_coefficient: float) -> None:
    # AISC 360-22 J3.9: n_s slip planes
    planes = np.array([1.0, 2.0])
    slip = np.asarray(
        aisc_slip_resistance(slip_coefficient, pretension=39.0 * KIP, slip_planes=planes)
    )
    assert slip[1] == 2.0 * slip[0]


@pytest.mark.parametrize(
    ("slip_coefficient", "pretension", "expected"),
    [
        pytest.param(0.30, 142e3, 48.1e3, id="S-08-M20-A"),
        pytest.param(0.50, 142e3, 80.2e3, id="S-08-M20-B"),
        pytest.param(0.30, 205e3, 69.5e3, id="S-08-M24-A"),
        pytest.param(0.50, 205e3, 115.8e3, id="S-08-M24-B"),
    ],
)
def test_metric_bolts_of_aisc_360_16_table_j3_1m(
    slip_coefficient: float, pretension: float, expected: float
) -> None:
    # AISC 360-16 J3.8 with Table J3.1M, N; half of the last printed digit
    slip = aisc_slip_resistance(slip_coefficient, pretension=pretension, slip_planes=1)
    assert float(slip) == pytest.approx(expected, abs=50.0)


def test_lap_splice_with_the_older_slip_coefficient() -> None:
    # S-09: AISC 360-05 J3.8, worked example 4.1 of a beginner's guide to the AISC manual (2007):
    # eleven 3/4 A325 bolts, Class A then 0.35; printed 122 kips, and 81.2 kips over 1.50
    group = 11 * aisc_slip_resistance(0.35, pretension=28.0 * KIP, slip_planes=1) / KIP
    assert float(group) == pytest.approx(122.0, abs=0.5)
    assert float(group) / 1.50 == pytest.approx(81.2, abs=0.05)


@pytest.mark.parametrize(
    ("slip_coefficient", "expected"),
    [pytest.param(0.50, 264.4, id="S-10-B"), pytest.param(0.30, 158.7, id="S-10-A")],
)
def test_seam_group_in_double_shear(slip_coefficient: float, expected: float) -> None:
    # AISC 360-16 J3.8, six 7/8 A325 bolts in standard holes, kips
    group = 6 * aisc_slip_resistance(slip_coefficient, pretension=39.0 * KIP, slip_planes=2) / KIP
    assert float(group) == pytest.approx(expected, abs=0.05)


def test_tension_reduction_of_aisc() -> None:
    # S-11: AISC 360-16 Eq. J3-5a, 10 kips on each 7/8 A325 bolt
    factor = aisc_slip_tension_reduction(10.0 * KIP, pretension=39.0 * KIP)
    assert float(factor) == pytest.approx(0.7731, abs=0.00005)


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("standard", 1.00, id="S-13-standard"),
        pytest.param("oversized", 0.85, id="S-13-oversized"),
        pytest.param("short-slot-perpendicular", 0.85, id="S-13-short-across"),
        pytest.param("short-slot-parallel", 0.85, id="S-13-short-along"),
        pytest.param("long-slot-perpendicular", 0.70, id="S-13-long-across"),
        pytest.param("long-slot-parallel", 0.60, id="S-13-long-along"),
    ],
)
def test_hole_size_factors_of_aashto_table_6_13_2_8_2(hole: HoleType, expected: float) -> None:
    assert aashto_hole_size_factor(hole) == expected


@pytest.mark.parametrize(
    ("surface_factor", "pretension", "expected"),
    [
        pytest.param(0.30, 39.0, 11.7, id="S-14-A"),
        pytest.param(0.45, 39.0, 17.55, id="S-14-D"),
        pytest.param(0.50, 39.0, 19.5, id="S-14-B"),
        pytest.param(0.50, 28.0, 14.0, id="S-15-3/4"),
        pytest.param(0.50, 51.0, 25.5, id="S-15-1"),
    ],
)
def test_slip_resistance_of_aashto_6_13_2_8(
    surface_factor: float, pretension: float, expected: float
) -> None:
    # AASHTO LRFD 8th/9th ed. 6.13.2.8, A325 in standard holes, one plane, kips; exact products
    slip = aashto_slip_resistance(
        surface_factor, pretension=pretension * KIP, slip_planes=1, hole_size_factor=1.0
    )
    assert float(slip) / KIP == pytest.approx(expected, rel=1e-12)


def test_tension_reduction_of_aashto() -> None:
    # S-16: AASHTO LRFD 6.13.2.11, 10 kips on a bolt pretensioned to 39 kips
    factor = aashto_slip_tension_reduction(10.0 * KIP, pretension=39.0 * KIP)
    assert float(factor) == pytest.approx(0.7436, abs=0.00005)


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("short-slot-perpendicular", 19.0, id="J.4A"),
        pytest.param("long-slot-parallel", 13.3, id="J.4B"),
    ],
)
def test_slotted_holes_of_the_aisc_design_examples(hole: HoleType, expected: float) -> None:
    # AISC, Companion to the Steel Construction Manual, v16.0 (AISC 360-22), Examples J.4A and
    # J.4B: 3/4 Group 120, Class A, two planes, design resistance in kips per bolt
    nominal = aisc_slip_resistance(0.30, pretension=28.0 * KIP, slip_planes=2)
    design = aisc_slip_resistance_factor(hole) * nominal / KIP
    assert float(design) == pytest.approx(expected, abs=0.05)


def test_combined_tension_and_slip_of_the_aisc_design_examples() -> None:
    # As above, Example J.5: eight 3/4 Group 120 bolts under 72 kips of tension; the example
    # rounds its factors, so that 54.4 kips is met to its last digit
    factor = aisc_slip_tension_reduction(72.0 / 8 * KIP, pretension=28.0 * KIP)
    assert float(factor) == pytest.approx(0.716, abs=0.0005)
    slip = aisc_slip_resistance(0.30, pretension=28.0 * KIP, slip_planes=1) / KIP
    assert float(8 * slip * factor) == pytest.approx(54.4, abs=0.1)


@pytest.mark.parametrize(
    ("hole", "aashto", "eurocode"),
    [
        pytest.param("standard", 1.00, 1.00, id="S-13-S-17-standard"),
        pytest.param("oversized", 0.85, 0.85, id="S-13-S-17-oversized"),
        pytest.param("short-slot-perpendicular", 0.85, 0.85, id="S-13-S-17-short-across"),
        pytest.param("short-slot-parallel", 0.85, 0.76, id="S-13-S-17-short-along"),
        pytest.param("long-slot-perpendicular", 0.70, 0.70, id="S-13-S-17-long-across"),
        pytest.param("long-slot-parallel", 0.60, 0.63, id="S-13-S-17-long-along"),
    ],
)
def test_lowest_hole_factor_of_two_codes(hole: HoleType, aashto: float, eurocode: float) -> None:
    """AASHTO LRFD 9th ed. (2020) Table 6.13.2.8-2; EN 1993-1-8:2005 Table 3.6; exact."""
    assert lowest_hole_size_factor(hole) == min(aashto, eurocode)


@pytest.mark.parametrize(
    ("coefficient", "tension", "factor", "printed", "tolerance"),
    [
        # BS 5950-1:2000 6.4.2, M20 general grade with 144 kN, Ks = 1: 1.1 at service, 0.9 factored
        pytest.param(0.5, 144.0, 1.1, 79.2, 0.05, id="S-27-service"),
        pytest.param(0.5, 144.0, 0.9, 64.8, 0.05, id="S-27-factored"),
        # 0.3 T_0 of a shank stressed to 500 MPa in Japanese buildings, F10T, printed to 0.1 kN:
        # friction of 0.45 over 1.5, on M16, M20, M22 and M24
        pytest.param(0.45, 500.0e-3 * np.pi / 4.0 * 16.0**2, 1 / 1.5, 30.2, 0.05, id="S-28-M16"),
        pytest.param(0.45, 500.0e-3 * np.pi / 4.0 * 20.0**2, 1 / 1.5, 47.1, 0.05, id="S-28-M20"),
        pytest.param(0.45, 500.0e-3 * np.pi / 4.0 * 22.0**2, 1 / 1.5, 57.0, 0.05, id="S-28-M22"),
        pytest.param(0.45, 500.0e-3 * np.pi / 4.0 * 24.0**2, 1 / 1.5, 67.9, 0.05, id="S-28-M24"),
        # Japanese road bridges (JRA Part II to 2012): mu N/1.7, printed to a whole kN
        pytest.param(0.4, 165.0, 1 / 1.7, 39.0, 0.5, id="S-29-M20"),
        pytest.param(0.4, 205.0, 1 / 1.7, 48.0, 0.5, id="S-29-M22"),
        pytest.param(0.4, 238.0, 1 / 1.7, 56.0, 0.5, id="S-29-M24"),
    ],
)
def test_friction_of_one_plane_in_other_codes(
    coefficient: float, tension: float, factor: float, printed: float, tolerance: float
) -> None:
    load = probable_slip_load(coefficient, bolt_tension=1000.0 * tension, slip_planes=1)
    assert float(load) / 1000.0 * factor == pytest.approx(printed, abs=tolerance)
