"""The correlation put in comes out again, by a double Gauss-Hermite sum."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.chance.dependence import Dependence, normal_correlation
from jacketcheck.chance.distributions import Distribution, Marginal

KINDS: tuple[Distribution, ...] = ("normal", "lognormal", "uniform")
NODES, WEIGHTS = np.polynomial.hermite_e.hermegauss(120)
WEIGHTS = WEIGHTS / np.sqrt(2.0 * np.pi)


def correlation_of(first: Marginal, second: Marginal, normal: float) -> float:
    one = first.at(NODES)[:, None]
    other = second.at(normal * NODES[:, None] + np.sqrt(1.0 - normal**2) * NODES)
    mean = np.sum(WEIGHTS[:, None] * WEIGHTS * one * other)
    return float(
        (mean - first.mean * second.mean) / (first.standard_deviation * second.standard_deviation)
    )


@pytest.mark.parametrize("correlation", [-0.6, 0.3, 0.85])
@pytest.mark.parametrize("first", KINDS)
@pytest.mark.parametrize("second", KINDS)
def test_correlation_of_the_variables(
    first: Distribution, second: Distribution, correlation: float
) -> None:
    one, other = Marginal(first, 3.0, 0.2), Marginal(second, 40.0, 0.15)
    normal = normal_correlation(one, other, correlation=correlation)
    # the sum is not quite exact for the bounded uniform variable
    assert correlation_of(one, other, normal) == pytest.approx(correlation, abs=2e-3)


def test_samples_have_the_correlation() -> None:
    marginals = [Marginal("lognormal", 1.3, 0.10), Marginal("lognormal", 1.2, 0.06)]
    dependence = Dependence.of(marginals, {(0, 1): 0.75})
    points = np.random.default_rng(3).standard_normal((2, 200_000))
    rows = dependence.correlated(points)
    values = [one.at(row) for one, row in zip(marginals, rows, strict=True)]
    assert np.asarray(np.corrcoef(values))[0, 1] == pytest.approx(0.75, abs=0.005)


@pytest.mark.parametrize("kind", KINDS)
def test_mean_and_scatter_of_a_marginal(kind: Distribution) -> None:
    one = Marginal(kind, 25.0, 0.2)
    values = one.at(NODES)
    mean = float(np.sum(WEIGHTS * values))
    variance = float(np.sum(WEIGHTS * (values - mean) ** 2))
    assert mean == pytest.approx(25.0, rel=1e-6)
    assert np.sqrt(variance) == pytest.approx(5.0, rel=2e-3)
