"""Bearing of EN 1993-1-8 Table 3.4 against a handbook's tables.

Three digits are printed: half a unit of the last one is 0.5% at most.
"""

from __future__ import annotations

from typing import NamedTuple

import pytest
from jacketcheck_europe.mechanics.bearing import (
    bearing_resistance,
    end_bolt_coefficient,
    hole_reduction,
    inner_bolt_coefficient,
    single_lap_bearing_limit,
    transverse_coefficient,
)


class Layout(NamedTuple):
    """Bolt and hole diameters and distances [mm], and the printed bearing resistance [kN]."""

    diameter: float
    hole: float
    end: float
    edge: float
    pitch: float
    gauge: float
    expected: float


# SCI P363, Steel Building Design: Design Data (UK National Annex), non-preloaded bolts class 8.8
# with S355 (f_u = 470 MPa): bearing resistance in 10 mm plate with least distances, then in 5 mm
# plate with wider ones; pitch along the force
LEAST = (
    Layout(12, 14, 25, 20, 35, 40, 60.6),
    Layout(16, 18, 35, 25, 50, 50, 85.4),
    Layout(20, 22, 40, 30, 60, 60, 96.5),
    Layout(24, 26, 50, 35, 70, 70, 120.0),
    Layout(30, 33, 60, 45, 85, 90, 145.0),
)
WIDER = (
    Layout(12, 14, 40, 25, 50, 45, 53.0),
    Layout(16, 18, 50, 30, 65, 55, 69.6),
    Layout(20, 22, 60, 35, 80, 70, 85.5),
    Layout(24, 26, 75, 40, 95, 80, 108.0),
    Layout(30, 33, 90, 50, 115, 100, 128.0),
)


def resistance(layout: Layout, thickness: float) -> float:
    """Smaller of the end bolt's and an inner bolt's resistance [kN]."""
    strengths = {"bolt_strength": 800.0, "plate_strength": 470.0}
    along = min(
        float(end_bolt_coefficient(layout.end, hole=layout.hole, **strengths)),
        float(inner_bolt_coefficient(layout.pitch, hole=layout.hole, **strengths)),
    )
    found = bearing_resistance(
        layout.diameter,
        thickness=thickness,
        plate_strength=470.0,
        along=along,
        across=transverse_coefficient(
            edge_distance=layout.edge, spacing=layout.gauge, hole=layout.hole
        ),
        partial_factor=1.25,
    )
    return float(found) / 1e3


@pytest.mark.parametrize("layout", LEAST, ids=lambda one: f"M{one.diameter:g}")
def test_handbook_with_least_distances(layout: Layout) -> None:
    assert resistance(layout, 10.0) == pytest.approx(layout.expected, rel=5e-3)


@pytest.mark.parametrize("layout", WIDER, ids=lambda one: f"M{one.diameter:g}")
def test_handbook_with_wider_distances(layout: Layout) -> None:
    assert resistance(layout, 5.0) == pytest.approx(layout.expected, rel=5e-3)


def test_one_bolt_step_by_step() -> None:
    # B-14: α_b = 40/66, k_1 = 2.8 * 30/22 - 1.7, F_b,Rd = 96.5 kN
    alpha = end_bolt_coefficient(40.0, hole=22.0, bolt_strength=800.0, plate_strength=470.0)
    across = transverse_coefficient(edge_distance=30.0, spacing=60.0, hole=22.0)
    assert float(alpha) == pytest.approx(0.6061, rel=2e-4)
    assert float(across) == pytest.approx(2.118, rel=3e-4)
    assert resistance(LEAST[2], 10.0) == pytest.approx(96.5, rel=2e-3)


@pytest.mark.parametrize(
    ("hole", "expected"),
    # EN 1993-1-8:2005 Table 3.4, note 1
    [("standard", 1.0), ("oversized", 0.8), ("long-slot-perpendicular", 0.6)],
)
def test_reduction_by_hole(hole: str, expected: float) -> None:
    assert hole_reduction(hole) == expected  # type: ignore[arg-type] # words from a parametrised test


def test_single_lap() -> None:
    # EN 1993-1-8:2005 Eq. 3.2: 1.5 * 470 * 20 * 10 / 1.25 = 112.8 kN
    found = single_lap_bearing_limit(
        20.0, thickness=10.0, plate_strength=470.0, partial_factor=1.25
    )
    assert float(found) == pytest.approx(112.8e3, rel=1e-12)
