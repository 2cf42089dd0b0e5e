"""Slip resistance of EN 1993-1-8 against printed tables and arithmetic of its equations.

Table values have three digits; half a unit of the last one is 0.5% at most.
"""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics._tables import HoleType
from jacketcheck_europe.mechanics.slip import hole_factor, preload, slip_resistance
from jacketcheck_europe.partial_factors import RECOMMENDED

from jacketcheck.plugin import built_in_catalog

STRESS_AREAS = {"M16": 157.0, "M20": 245.0, "M24": 353.0, "M30": 561.0}
"""Stress areas of ISO coarse threads [mm²], ISO 898-1."""

# ArcelorMittal Orange Book, preloaded bolts class 8.8 in S355, single shear, k_s = 1: kN by bolt
# and slip factor
ORANGE_BOOK = {
    "M16": {0.2: 14.1, 0.3: 21.1, 0.4: 28.1, 0.5: 35.2},
    "M20": {0.2: 22.0, 0.3: 32.9, 0.4: 43.9, 0.5: 54.9},
    "M24": {0.2: 31.6, 0.3: 47.4, 0.4: 63.3, 0.5: 79.1},
    "M30": {0.2: 50.3, 0.3: 75.4, 0.4: 101.0, 0.5: 126.0},
}


def single_shear(size: str, strength: float, slip_factor: float, *, factor: float = 1.0) -> float:
    """One friction surface at the ultimate limit state, recommended factor [kN]."""
    resistance = slip_resistance(
        slip_factor,
        bolt_preload=preload(strength, stress_area=STRESS_AREAS[size]),
        friction_surfaces=1,
        hole_factor=factor,
        partial_factor=RECOMMENDED.slip,
    )
    return float(resistance) / 1e3


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        pytest.param(800.0, (87.9, 137.2, 197.7, 314.2), id="P-08"),
        pytest.param(1000.0, (109.9, 171.5, 247.1, 392.7), id="P-09"),
    ],
)
def test_preload(strength: float, expected: tuple[float, ...]) -> None:
    # EN 1993-1-8:2005 Eq. 3.7: 0.7 f_ub A_s
    found = [float(preload(strength, stress_area=area)) / 1e3 for area in STRESS_AREAS.values()]
    assert found == pytest.approx(expected, abs=0.05)


def test_preload_of_the_catalogue() -> None:
    # the bolts that an input names come with the same preload
    product = built_in_catalog().bolt_product("EN 14399 HR 10.9")
    assert product.size("M24").pretension == pytest.approx(247.1e3, rel=2e-3)


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        pytest.param("standard", 1.00, id="S-17-normal"),
        pytest.param("oversized", 0.85, id="S-17-oversized"),
        pytest.param("short-slot-perpendicular", 0.85, id="S-17-short-across"),
        pytest.param("long-slot-perpendicular", 0.70, id="S-17-long-across"),
        pytest.param("short-slot-parallel", 0.76, id="S-17-short-along"),
        pytest.param("long-slot-parallel", 0.63, id="S-17-long-along"),
    ],
)
def test_hole_factors_of_table_3_6(hole: HoleType, expected: float) -> None:
    assert hole_factor(hole) == expected


@pytest.mark.parametrize(
    ("size", "slip_factor", "expected"),
    [
        pytest.param(size, slip_factor, expected, id=f"S-19-{size}-{slip_factor}")
        for size, row in ORANGE_BOOK.items()
        for slip_factor, expected in row.items()
    ],
)
def test_class_8_8_in_single_shear(size: str, slip_factor: float, expected: float) -> None:
    assert single_shear(size, 800.0, slip_factor) == pytest.approx(expected, rel=5e-3)


@pytest.mark.parametrize(
    ("size", "expected"),
    [pytest.param("M20", 68.6, id="S-20-M20"), pytest.param("M24", 98.8, id="S-20-M24")],
)
def test_class_10_9_in_single_shear(size: str, expected: float) -> None:
    # 0.5 * 0.7 * 1000 * A_s / 1.25
    assert single_shear(size, 1000.0, 0.5) == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize(
    ("factor", "expected"),
    [
        pytest.param(0.85, 46.65, id="S-21-0.85"),
        pytest.param(0.76, 41.71, id="S-21-0.76"),
        pytest.param(0.63, 34.57, id="S-21-0.63"),
    ],
)
def test_holes_reduce_slip_resistance(factor: float, expected: float) -> None:
    # 54.88 kN of M20, class 8.8, slip factor 0.5, times k_s
    assert single_shear("M20", 800.0, 0.5, factor=factor) == pytest.approx(expected, rel=1e-3)


def test_tension_takes_clamping_away() -> None:
    # S-22, EN 1993-1-8:2005 3.9.2: 0.5 (137.2 - 0.8 * 50) / 1.25 = 38.88 kN
    found = slip_resistance(
        0.5,
        bolt_preload=137.2e3,
        friction_surfaces=1,
        hole_factor=1.0,
        partial_factor=1.25,
        bolt_tension=50e3,
    )
    assert float(found) / 1e3 == pytest.approx(38.88, rel=1e-3)


def test_slip_in_service() -> None:
    # S-23: 0.5 * 137.2 / 1.10 = 62.36 kN
    found = slip_resistance(
        0.5,
        bolt_preload=137.2e3,
        friction_surfaces=1,
        hole_factor=1.0,
        partial_factor=RECOMMENDED.slip_in_service,
    )
    assert float(found) / 1e3 == pytest.approx(62.36, rel=1e-3)
