"""Circle segments against numerical quadrature."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad

from jacketcheck.mechanics.section_geometry import (
    bar_ring,
    chord_strips,
    disc_plastic_modulus,
    disc_second_moment,
    ring_plastic_modulus,
    segment_area,
    segment_first_moment,
    segment_second_moment,
)


@pytest.mark.parametrize("depth", [1.0, 130.0, 400.0, 790.0, 800.0])
def test_segment(depth: float) -> None:
    radius = 400.0

    def moment(power: int) -> float:
        return float(
            quad(
                lambda y: 2.0 * np.sqrt(max(radius**2 - y**2, 0.0)) * y**power,
                radius - depth,
                radius,
                epsabs=1e-6,
                limit=200,
            )[0]
        )

    assert segment_area(depth, diameter=800.0) == pytest.approx(moment(0), rel=1e-6)
    assert segment_first_moment(depth, diameter=800.0) == pytest.approx(moment(1), rel=1e-6, abs=1)
    assert segment_second_moment(depth, diameter=800.0) == pytest.approx(moment(2), rel=1e-6)


def test_moduli_follow_from_segments() -> None:
    # a plastic modulus is twice the first moment of half the disc
    assert disc_plastic_modulus(800.0) == pytest.approx(
        2.0 * segment_first_moment(400.0, diameter=800.0)
    )
    assert disc_second_moment(800.0) == pytest.approx(segment_second_moment(800.0, diameter=800.0))
    # a thin ring is a small difference of discs
    ring = disc_plastic_modulus(801.0) - disc_plastic_modulus(799.0)
    assert ring_plastic_modulus(400.0, thickness=1.0) == pytest.approx(ring, rel=1e-5)


def test_strips_add_up_to_the_disc() -> None:
    edges = np.linspace(-600.0, 600.0, 201)
    area, first_moment = chord_strips(1000.0, edges=edges)
    assert area.sum() == pytest.approx(np.pi * 500.0**2, rel=1e-12)
    assert first_moment.sum() == pytest.approx(0.0, abs=1e-3)
    assert np.all(area[:16] == 0.0)
    assert area == pytest.approx(area[::-1], abs=1e-6)
    # first moment of the upper half: D^3 / 12
    assert first_moment[100:].sum() == pytest.approx(1000.0**3 / 12.0, rel=1e-12)


def test_bars_lie_on_their_circle() -> None:
    x, y = bar_ring(7, radius=300.0, first_angle=0.3)
    assert np.hypot(x, y) == pytest.approx(300.0)
    assert x.sum() == pytest.approx(0.0, abs=1e-9)
    turned = np.unwrap(np.arctan2(y, x))
    assert np.diff(turned) == pytest.approx(2.0 * np.pi / 7.0)
    assert turned[0] == pytest.approx(0.3)
