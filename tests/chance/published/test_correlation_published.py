"""Ratios of Liu and Der Kiureghian, Probab. Eng. Mech. 1(2) (1986), 105-112 (from memory): the
correlation of standard normal variables over that of the variables, with the error they print."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest

from jacketcheck.chance.dependence import normal_correlation
from jacketcheck.chance.distributions import LARGEST_VARIATION, Distribution, Marginal

Fit = Callable[[float, float], float]


def with_normal(rho: float, variation: float) -> float:
    del rho, variation
    return 1.023


def with_uniform(rho: float, variation: float) -> float:
    del variation
    return 1.047 - 0.047 * rho**2


def with_lognormal(rho: float, variation: float) -> float:
    return 1.019 + 0.014 * variation + 0.010 * rho**2 + 0.249 * variation**2


@pytest.mark.parametrize(
    ("other", "fit", "error"),
    [
        ("normal", with_normal, 0.0005),
        ("uniform", with_uniform, 0.001),
        ("lognormal", with_lognormal, 0.007),
    ],
)
def test_ratio_of_a_uniform_variable_with_another(
    other: Distribution, fit: Fit, error: float
) -> None:
    first = Marginal("uniform", 5.0, 0.1)
    for rho, variation in product((-0.7, 0.2, 0.5, 0.9), (0.1, 0.3, 0.5)):
        second = Marginal(other, 2.0, min(variation, LARGEST_VARIATION[other]))
        ratio = normal_correlation(first, second, correlation=rho) / rho
        assert ratio == pytest.approx(fit(rho, variation), rel=error)
