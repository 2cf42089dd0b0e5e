"""The design point against a constrained minimisation by scipy, and against sampling."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy.optimize import NonlinearConstraint, minimize
from scipy.stats import norm

from jacketcheck.chance.form import design_point
from jacketcheck.mechanics._arrays import Floats

MARGINS: dict[str, tuple[int, Callable[[Floats], Floats]]] = {
    "bent": (2, lambda u: 3.0 - u[0] - 0.3 * u[1] ** 2 - 0.5 * u[1]),
    "product": (3, lambda u: (40 + 5 * u[0]) * (50 + 2.5 * u[1]) - (1000 + 200 * u[2])),
    "exponential": (
        4,
        lambda u: np.exp(0.2 * u[0] + 0.5) - 0.4 * np.exp(0.3 * u[1] + 0.1 * u[2]) + 0.05 * u[3],
    ),
    "origin fails": (2, lambda u: u[0] + u[1] - 2.0),
}


def squared_length(point: Floats) -> float:
    return float(point @ point)


@pytest.mark.parametrize("name", MARGINS)
def test_distance_is_the_smallest(name: str) -> None:
    count, margin = MARGINS[name]
    found = design_point(margin, count)
    assert found is not None
    surface = NonlinearConstraint(lambda u: margin(u[:, None])[0], 0.0, 0.0)
    starts = np.random.default_rng(1).normal(size=(20, count))
    tried = [
        minimize(squared_length, start, method="SLSQP", constraints=[surface]) for start in starts
    ]
    distances = [float(np.sqrt(best.fun)) for best in tried if best.success]
    assert abs(found.index) == pytest.approx(min(distances), abs=1e-3)
    assert (found.index < 0.0) == bool(margin(np.zeros((count, 1)))[0] < 0.0)
    assert float(np.linalg.norm(found.alpha)) == pytest.approx(1.0)


def test_nearly_flat_surface_against_sampling() -> None:
    count, margin = MARGINS["exponential"]
    found = design_point(margin, count)
    assert found is not None
    points = np.random.default_rng(2).standard_normal((count, 400_000))
    share = float(np.mean(margin(points) < 0.0))
    assert norm.ppf(1.0 - share) == pytest.approx(found.index, abs=0.1)


def test_without_gradient_there_is_no_design_point() -> None:
    assert design_point(lambda u: np.ones(u.shape[1]), 2) is None
    assert design_point(lambda u: np.full(u.shape[1], np.nan), 2) is None
    assert design_point(lambda u: 1.0 / np.cosh(u[0]) + 1.0, 1) is None
