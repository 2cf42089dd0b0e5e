"""Spacing and edge limits against the specifications' own figures."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._arguments import Exposure
from jacketcheck.mechanics._customary_units import INCH
from jacketcheck.mechanics.seam_detailing import (
    aashto_max_edge_distance,
    aashto_max_sealing_spacing,
    aashto_min_spacing,
    aisc_max_edge_distance,
    aisc_max_spacing,
    aisc_min_spacing,
    aisc_preferred_spacing,
)


def test_least_and_preferred_spacing_of_aisc() -> None:
    # L-08: AISC 360 J3.3 (J3.4 in the 2022 edition): 2-2/3 d, 3 d preferred, 3/4 bolt 2 in apart
    least = aisc_min_spacing(0.75 * INCH, hole=0.8125 * INCH)
    assert float(least) / INCH == pytest.approx(2.0, rel=1e-12)
    assert float(aisc_preferred_spacing(0.75 * INCH)) / INCH == pytest.approx(2.25, rel=1e-12)


def test_clear_distance_of_one_diameter_between_slots() -> None:
    # L-08: clear distance at least d; long slot of a 1 in bolt, 2-1/2 in long
    least = aisc_min_spacing(1.0 * INCH, hole=2.5 * INCH)
    assert float(least) / INCH == pytest.approx(3.5, rel=1e-12)


def test_least_spacing_of_aashto() -> None:
    # L-09: AASHTO LRFD 6.13.2.6.1: 3 d in standard holes
    least = aashto_min_spacing(0.875 * INCH, hole=0.9375 * INCH, hole_type="standard")
    assert float(least) / INCH == pytest.approx(2.625, rel=1e-12)


@pytest.mark.parametrize(
    ("thickness", "exposure", "spacing", "edge"),
    [
        pytest.param(0.25, "painted", 6.0, 3.0, id="painted-thin"),
        pytest.param(1.0, "painted", 12.0, 6.0, id="painted-thick"),
        pytest.param(0.25, "weathering", 3.5, 2.0, id="weathering-thin"),
        pytest.param(1.0, "weathering", 7.0, 5.0, id="weathering-thick"),
    ],
)
def test_largest_spacing_and_edge_distance_of_aisc(
    thickness: float, exposure: Exposure, spacing: float, edge: float
) -> None:
    # AISC 360-16 J3.5 (J3.6 in the 2022 edition): 24 t and 12 in, 14 t and 7 in; 12 t and 6 in,
    # 8 t and 5 in for weathering steel
    largest = aisc_max_spacing(thickness * INCH, exposure=exposure)
    assert float(largest) / INCH == pytest.approx(spacing, rel=1e-12)
    farthest = aisc_max_edge_distance(thickness * INCH, exposure=exposure)
    assert float(farthest) / INCH == pytest.approx(edge, rel=1e-12)


@pytest.mark.parametrize(
    ("thickness", "sealing", "edge"),
    [
        pytest.param(0.375, 5.5, 3.0, id="thin"),
        pytest.param(0.75, 7.0, 5.0, id="at-the-cap-of-spacing"),
        pytest.param(1.0, 7.0, 5.0, id="thick"),
    ],
)
def test_sealing_spacing_and_edge_distance_of_aashto(
    thickness: float, sealing: float, edge: float
) -> None:
    # AASHTO LRFD 6.13.2.6.2: 4 + 4 t up to 7 in; 6.13.2.6.6: 8 t up to 5 in
    spacing = aashto_max_sealing_spacing(thickness * INCH)
    assert float(spacing) / INCH == pytest.approx(sealing, rel=1e-12)
    farthest = aashto_max_edge_distance(thickness * INCH)
    assert float(farthest) / INCH == pytest.approx(edge, rel=1e-12)
