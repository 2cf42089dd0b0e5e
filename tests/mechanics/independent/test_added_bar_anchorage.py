"""Areas of a ring of anchors against counted points; hoop force of laps against statics."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.adhesive_anchors import ring_area_share
from jacketcheck.mechanics.noncontact_lap import lap_hoop_force, lap_offset

STEP = 4.0  # mm between counted points
X, Y = np.meshgrid(*(np.arange(-1600.0, 1600.0, STEP) for _ in range(2)))


def _counted_area(reach: float, count: int, *, square: bool) -> float:
    """Area within reach of a ring of bars of 650 mm radius; squares face the ring's centre."""
    near = np.zeros(X.shape, dtype=bool)
    for angle in 2.0 * np.pi * np.arange(count) / count:
        outward = X * np.cos(angle) + Y * np.sin(angle) - 650.0
        sideways = Y * np.cos(angle) - X * np.sin(angle)
        if square:
            near |= np.maximum(np.abs(outward), np.abs(sideways)) <= reach
        else:
            near |= np.hypot(outward, sideways) <= reach
    return float(np.count_nonzero(near)) * STEP**2


@pytest.mark.parametrize("count", [4, 8, 16, 30])
@pytest.mark.parametrize("reach", [150.0, 450.0, 900.0])
def test_ring_is_not_larger_than_squares_around_the_bars(count: int, reach: float) -> None:
    # ACI draws each bar's area as a square of side 2c; bars at least 2c apart are no group
    apart = 2.0 * 650.0 * np.sin(np.pi / count) >= 2.0 * reach
    whole = count * (2.0 * reach) ** 2
    area = whole if apart else _counted_area(reach, count, square=True)
    share = ring_area_share(reach, circle_radius=650.0, count=count)
    assert share <= area / whole * (1.0 + 2e-3)


@pytest.mark.parametrize("reach", [450.0, 900.0])
def test_ring_of_many_bars_is_the_area_within_reach(reach: float) -> None:
    share = float(ring_area_share(reach, circle_radius=650.0, count=120))
    area = _counted_area(reach, 120, square=False)
    assert share * 120 * (2.0 * reach) ** 2 == pytest.approx(area, rel=3e-3)


def test_hoop_force_balances_the_outward_push_on_half_a_ring() -> None:
    # struts at 45 degrees push outwards as hard as they pass force along
    bars, force, lap = 16, 500e3, 900.0
    angles = np.pi * (np.arange(bars // 2) + 0.5) / (bars // 2)
    across = np.sum(force / lap * np.sin(angles))
    hoop = lap_hoop_force(force, bar_count=bars, lap_length=lap)
    assert 2.0 * hoop == pytest.approx(across, rel=1e-2)


def test_offset_is_the_distance_to_the_nearest_bar() -> None:
    # an added bar halfway between two bars that stand far enough out for arcs to be straight
    added, column, bars = 100_090.0, 100_000.0, 2600
    spacing = 2.0 * np.pi * column / bars
    half = np.pi / bars
    nearest = np.hypot(added - column * np.cos(half), column * np.sin(half))
    assert lap_offset(added - column, bar_spacing=spacing) == pytest.approx(nearest, rel=1e-3)
