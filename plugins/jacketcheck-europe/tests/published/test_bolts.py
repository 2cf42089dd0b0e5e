"""Bolts in shear and tension against printed tables and arithmetic of EN 1993-1-8 Table 3.4."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.bolts import (
    bolt_shear_resistance,
    bolt_tension_resistance,
    high_strength_class,
    long_joint_factor,
    shear_and_tension,
    small_bolt_factor,
)

from jacketcheck.plugin import built_in_catalog

STRESS_AREAS = {12: 84.3, 16: 157.0, 20: 245.0, 24: 353.0, 30: 561.0}
"""Stress areas of ISO coarse threads by diameter [mm²], ISO 898-1."""

# SCI P363, Steel Building Design: Design Data (UK National Annex), non-preloaded bolts class 8.8:
# tension and single shear, threads in the plane [kN]; M12 in a hole with 2 mm of clearance; three
# digits, so that half a unit is 0.5% at most
HANDBOOK = {
    12: (48.6, 27.5),
    16: (90.4, 60.3),
    20: (141.0, 94.1),
    24: (203.0, 136.0),
    30: (323.0, 215.0),
}


def shear(area: float, strength: float, threads: str) -> float:
    """Shear resistance with the recommended factor 1.25 [kN]."""
    counted = high_strength_class(strength, threads=threads)
    resistance = bolt_shear_resistance(
        area,
        tensile_strength=counted.tensile_strength,
        shear_coefficient=counted.shear_coefficient,
        partial_factor=1.25,
    )
    return float(resistance) / 1e3


@pytest.mark.parametrize(
    ("name", "tensile", "yields"),
    [
        pytest.param("EN 14399 HR 8.8", 800.0, 640.0, id="A-04-8.8"),
        pytest.param("EN 14399 HR 10.9", 1000.0, 900.0, id="A-04-10.9"),
    ],
)
def test_strengths_of_table_3_1(name: str, tensile: float, yields: float) -> None:
    product = built_in_catalog().bolt_product(name)
    assert (product.tensile_strength, product.yield_strength) == (tensile, yields)
    assert float(high_strength_class(tensile, threads="included").tensile_strength) == tensile


@pytest.mark.parametrize(
    ("strength", "diameter", "expected"),
    [
        pytest.param(800.0, 16, 60.3, id="B-10-M16"),
        pytest.param(800.0, 20, 94.1, id="B-10-M20"),
        pytest.param(800.0, 24, 135.6, id="B-10-M24"),
        pytest.param(1000.0, 16, 62.8, id="B-11-M16"),
        pytest.param(1000.0, 20, 98.0, id="B-11-M20"),
        pytest.param(1000.0, 24, 141.2, id="B-11-M24"),
    ],
)
def test_threads_in_the_plane(strength: float, diameter: int, expected: float) -> None:
    found = shear(STRESS_AREAS[diameter], strength, "included")
    assert found == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize(
    ("strength", "expected"),
    # 0.6 * f_ub * 314.2 / 1.25; the shank has 0.6 in every class
    [pytest.param(800.0, 120.6, id="B-12"), pytest.param(1000.0, 150.8, id="B-12-class-10.9")],
)
def test_shank_in_the_plane(strength: float, expected: float) -> None:
    assert shear(314.16, strength, "excluded") == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize(
    ("diameter", "strength", "expected"),
    [
        pytest.param(20, 800.0, 141.1, id="B-13-M20-8.8"),
        pytest.param(24, 800.0, 203.3, id="B-13-M24-8.8"),
        pytest.param(20, 1000.0, 176.4, id="B-13-M20-10.9"),
    ],
)
def test_tension(diameter: int, strength: float, expected: float) -> None:
    found = bolt_tension_resistance(
        STRESS_AREAS[diameter], tensile_strength=strength, partial_factor=1.25
    )
    assert float(found) / 1e3 == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize("diameter", HANDBOOK)
def test_handbook_of_class_8_8(diameter: int) -> None:
    tension, single = HANDBOOK[diameter]
    area = STRESS_AREAS[diameter]
    found = bolt_tension_resistance(area, tensile_strength=800.0, partial_factor=1.25)
    assert float(found) / 1e3 == pytest.approx(tension, rel=5e-3)
    loose = float(small_bolt_factor(diameter, hole=diameter + 2.0))
    assert loose * shear(area, 800.0, "included") == pytest.approx(single, rel=5e-3)


def test_shear_and_tension_together() -> None:
    # B-15: 0.5 + 0.5/1.4
    assert float(shear_and_tension(0.5, tension_ratio=0.5)) == pytest.approx(0.8571, rel=1e-3)


@pytest.mark.parametrize(
    ("length", "expected"),
    # EN 1993-1-8:2005 Eq. 3.5 for M20: 1 - (L - 300)/4000, not above 1, not below 0.75
    [(0.0, 1.0), (300.0, 1.0), (700.0, 0.9), (1300.0, 0.75), (3000.0, 0.75)],
)
def test_long_joints(length: float, expected: float) -> None:
    assert float(long_joint_factor(length, diameter=20.0)) == pytest.approx(expected, rel=1e-12)
