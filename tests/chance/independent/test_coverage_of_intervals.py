"""How often the intervals hold the probability, over many seeds."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm

from jacketcheck.chance.intervals import replicate_interval
from jacketcheck.chance.points import Method, replicate_size, standard_normal_points

SEEDS = 120


@pytest.mark.parametrize("method", ["sobol", "latin-hypercube", "random"])
@pytest.mark.parametrize("exact", [0.002, 0.08, 0.5])
def test_coverage(method: Method, exact: float) -> None:
    """Of 120 intervals of 95 % at least 104 hold: fewer would happen once in 1000 times."""
    limit = norm.ppf(1.0 - exact) * np.sqrt(3.0)
    size = replicate_size(2048, method)
    held = 0
    for seed in range(SEEDS):
        points = standard_normal_points(3, samples=2048, method=method, seed=seed)
        shares = np.array([np.mean(part.sum(axis=0) > limit) for part in points])
        low, high = replicate_interval(shares, size=size)
        held += low <= exact <= high
    assert held >= 104


@pytest.mark.parametrize(("method", "least_gain"), [("sobol", 0.6), ("latin-hypercube", 0.95)])
def test_balanced_points_narrow_the_interval(method: Method, least_gain: float) -> None:
    """Mean width over some seeds against plain random points, for a probability not small."""

    def width(kind: Method) -> float:
        widths = []
        for seed in range(12):
            points = standard_normal_points(3, samples=16_384, method=kind, seed=seed)
            shares = np.array([np.mean(part.sum(axis=0) > 1.0) for part in points])
            low, high = replicate_interval(shares, size=replicate_size(16_384, kind))
            widths.append(high - low)
        return float(np.mean(widths))

    assert width(method) < least_gain * width("random")


def test_intervals_narrow_with_the_square_root_of_the_samples() -> None:
    def width(samples: int) -> float:
        shares = np.array(
            [
                np.mean(part.sum(axis=0) > 2.0)
                for part in standard_normal_points(2, samples=samples, method="random", seed=9)
            ]
        )
        low, high = replicate_interval(shares, size=replicate_size(samples, "random"))
        return high - low

    assert width(160_000) / width(10_000) == pytest.approx(0.25, rel=0.5)
