"""Sampled probabilities against closed forms, and against a numerical integral."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.integrate import quad
from scipy.stats import lognorm, norm

from jacketcheck.chance.dependence import Dependence
from jacketcheck.chance.distributions import Marginal
from jacketcheck.chance.form import design_point, exceedance_of_index
from jacketcheck.chance.intervals import Interval, replicate_interval
from jacketcheck.chance.points import Method, replicate_size, standard_normal_points
from jacketcheck.mechanics._arrays import Floats

METHODS: tuple[Method, ...] = ("sobol", "latin-hypercube", "random")
SAMPLES = 60_000


def sampled(
    marginals: list[Marginal],
    fails: Callable[[list[Floats]], NDArray[np.bool_]],
    method: Method,
    correlations: dict[tuple[int, int], float] | None = None,
) -> tuple[float, Interval]:
    dependence = Dependence.of(marginals, correlations or {})
    shares = []
    for points in standard_normal_points(len(marginals), samples=SAMPLES, method=method, seed=5):
        rows = dependence.correlated(points)
        values = [one.at(row) for one, row in zip(marginals, rows, strict=True)]
        shares.append(np.mean(fails(values)))
    size = replicate_size(SAMPLES, method)
    # 99.9 %: of some twenty comparisons none should miss by chance
    return float(np.mean(shares)), replicate_interval(np.array(shares), size=size, confidence=0.999)


@pytest.mark.parametrize("method", METHODS)
def test_lognormal_strength_and_load(method: Method) -> None:
    strength, load = Marginal("lognormal", 2.0, 0.15), Marginal("lognormal", 1.0, 0.25)
    medians = strength.mean / math.sqrt(1 + 0.15**2) / (load.mean / math.sqrt(1 + 0.25**2))
    index = math.log(medians) / math.sqrt(math.log((1 + 0.15**2) * (1 + 0.25**2)))
    probability, interval = sampled([strength, load], lambda x: x[0] < x[1], method)
    assert interval.low <= norm.cdf(-index) <= interval.high
    assert probability == pytest.approx(norm.cdf(-index), rel=0.2)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("correlation", [-0.5, 0.0, 0.7])
def test_correlated_normal_strength_and_load(method: Method, correlation: float) -> None:
    strength, load = Marginal("normal", 3.0, 0.10), Marginal("normal", 2.0, 0.15)
    spread = math.sqrt(0.3**2 + 0.3**2 - 2.0 * correlation * 0.3 * 0.3)
    _, interval = sampled([strength, load], lambda x: x[0] < x[1], method, {(0, 1): correlation})
    assert interval.low <= norm.cdf(-1.0 / spread) <= interval.high


@pytest.mark.parametrize("method", METHODS)
def test_sum_of_two_lognormal_loads(method: Method) -> None:
    one, other, limit = Marginal("lognormal", 1.0, 0.3), Marginal("lognormal", 0.8, 0.4), 2.9
    first = lognorm(one.log_deviation, scale=one.mean * math.exp(-(one.log_deviation**2) / 2.0))
    second = lognorm(
        other.log_deviation, scale=other.mean * math.exp(-(other.log_deviation**2) / 2.0)
    )
    exact = quad(lambda x: first.pdf(x) * second.sf(limit - x), 0.0, limit)[0] + first.sf(limit)
    _, interval = sampled([one, other], lambda x: x[0] + x[1] > limit, method)
    assert interval.low <= exact <= interval.high


@pytest.mark.parametrize("method", METHODS)
def test_uniform_strength(method: Method) -> None:
    """Uniform strength under a fixed load: the share of its range that lies below."""
    strength = Marginal("uniform", 10.0, 0.2)
    reach = math.sqrt(3.0) * 2.0
    exact = (8.0 - (10.0 - reach)) / (2.0 * reach)
    probability, _ = sampled([strength], lambda x: x[0] < 8.0, method)
    assert probability == pytest.approx(exact, abs=0.006)


def test_first_order_index_of_lognormals_is_exact() -> None:
    """The logarithm of the margin is linear in the normal variables."""
    strength, load = Marginal("lognormal", 2.0, 0.15), Marginal("lognormal", 1.0, 0.25)
    medians = strength.mean / math.sqrt(1 + 0.15**2) / (load.mean / math.sqrt(1 + 0.25**2))
    index = math.log(medians) / math.sqrt(math.log((1 + 0.15**2) * (1 + 0.25**2)))
    found = design_point(lambda u: np.log(strength.at(u[0]) / load.at(u[1])), 2)
    assert found is not None
    assert found.index == pytest.approx(index, abs=1e-6)
    assert found.probability == pytest.approx(norm.cdf(-index), rel=1e-6)


def test_normal_probability_of_an_index() -> None:
    for index in (-1.0, 0.0, 2.3, 6.0):
        assert exceedance_of_index(index) == pytest.approx(norm.cdf(-index), rel=1e-9)
