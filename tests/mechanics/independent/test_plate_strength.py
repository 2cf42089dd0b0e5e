"""Net sections against a plate sampled point by point."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from jacketcheck.mechanics.plate_strength import (
    AISC_HOLE_DAMAGE_METRIC,
    aashto_shear_yield_resistance,
    aisc_shear_yield_strength,
    net_width,
    seam_strip_width,
)


def sampled_steel(width: float, holes: list[float], hole: float) -> float:
    """Width of steel along a line through holes centred at `holes`, by sampling."""
    count = 200_000
    points = (np.arange(count) + 0.5) * width / count
    in_hole = np.zeros(count, dtype=bool)
    for centre in holes:
        in_hole |= np.abs(points - centre) < hole / 2.0
    return width * float(np.mean(~in_hole))


@pytest.mark.parametrize(("count", "hole"), [(1, 22.0), (3, 27.0), (5, 33.0)])
def test_net_width_is_the_steel_left_between_the_holes(count: int, hole: float) -> None:
    pitch = 80.0
    width = count * pitch
    centres = [pitch / 2.0 + row * pitch for row in range(count)]
    net = net_width(width, hole_count=count, hole=hole, damage=AISC_HOLE_DAMAGE_METRIC)
    drawn = sampled_steel(width, centres, hole + AISC_HOLE_DAMAGE_METRIC)
    assert float(net) == pytest.approx(drawn, abs=0.02)  # a few sampling steps


@pytest.mark.parametrize("end_distance", [30.0, 40.0, 60.0])
def test_strip_is_the_one_with_the_least_steel_for_its_height(end_distance: float) -> None:
    # cut the height half-way between the rows and compare each strip's share of steel
    pitch, rows, hole = 80.0, 6, 24.0
    height = (rows - 1) * pitch + 2.0 * end_distance
    centres = [end_distance + row * pitch for row in range(rows)]
    cuts = [0.0, *[(a + b) / 2.0 for a, b in itertools.pairwise(centres)], height]
    shares = [1.0 - hole / (b - a) for a, b in itertools.pairwise(cuts)]
    strip = seam_strip_width(pitch=pitch, end_distance=end_distance)
    assert 1.0 - hole / float(strip) == pytest.approx(min(shares), rel=1e-12)


def test_shear_yielding_is_that_of_von_mises_as_rounded_by_either_code() -> None:
    von_mises = 250.0 * 1000.0 / np.sqrt(3.0)
    aisc = float(aisc_shear_yield_strength(250.0, gross_area=1000.0))
    aashto = float(aashto_shear_yield_resistance(250.0, gross_area=1000.0))
    assert aisc / von_mises == pytest.approx(1.0, abs=0.04)
    assert aashto / von_mises == pytest.approx(1.0, abs=0.005)
