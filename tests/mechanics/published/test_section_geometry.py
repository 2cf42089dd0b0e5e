"""Circle segments and plastic moduli: elementary geometry, to the digits shown."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._customary_units import PSI
from jacketcheck.mechanics.nominal_moment import block_depth_ratio
from jacketcheck.mechanics.section_geometry import (
    disc_plastic_modulus,
    disc_second_moment,
    ring_plastic_modulus,
    segment_area,
    segment_centroid,
)


@pytest.mark.parametrize(
    ("depth", "area", "centroid"),
    [
        pytest.param(0.10, 0.04088, 0.44036, id="G-06-0.10"),
        pytest.param(0.25, 0.15355, 0.35251, id="G-06-0.25"),
        pytest.param(0.50, 0.39270, 0.21221, id="G-06-0.50"),
        pytest.param(0.75, 0.63185, 0.08566, id="G-06-0.75"),
    ],
)
def test_segment(depth: float, area: float, centroid: float) -> None:
    assert segment_area(depth, diameter=1.0) == pytest.approx(area, abs=5.1e-6)
    assert segment_centroid(depth, diameter=1.0) == pytest.approx(centroid, abs=5.1e-6)


def test_moduli() -> None:
    # G-08
    assert disc_plastic_modulus(2.0) == pytest.approx(8.0 / 6.0)
    assert ring_plastic_modulus(3.0, thickness=0.1) == pytest.approx(3.6)
    assert disc_second_moment(2.0) == pytest.approx(np.pi / 4.0)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [(2500.0, 0.85), (4000.0, 0.85), (5000.0, 0.80), (6000.0, 0.75), (8000.0, 0.65), (1e4, 0.65)],
)
def test_block_depth(strength: float, expected: float) -> None:
    # ACI 318-19 Table 22.2.2.4.3
    assert block_depth_ratio(strength * PSI) == pytest.approx(expected, abs=1e-9)
