"""Shifts in the tail against a plane limit surface, and against differences of probabilities."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm

from jacketcheck.chance.influence import tail_shifts
from jacketcheck.chance.points import standard_normal_points

ALPHA = np.array([0.8, -0.5, 0.0, np.sqrt(1.0 - 0.64 - 0.25)])


@pytest.mark.parametrize("index", [0.0, 0.8, 1.6])
def test_plane_limit_surface(index: float) -> None:
    """Mean of a normal variable beyond a plane: alpha times the inverse Mills ratio."""
    points = next(standard_normal_points(4, samples=16 * 65_536, method="sobol", seed=3))
    found = tail_shifts(np.exp(0.2 * points), ALPHA @ points, probability=norm.sf(index))
    expected = ALPHA * norm.pdf(index) / norm.sf(index)
    np.testing.assert_allclose(found.shifts, expected, atol=0.02)


def test_relative_change_of_the_probability_with_a_mean() -> None:
    """Means shifted to either side by a tenth of a standard deviation, exact probabilities."""
    probability = norm.sf(1.5)
    points = next(standard_normal_points(4, samples=16 * 65_536, method="sobol", seed=4))
    found = tail_shifts(points, ALPHA @ points, probability=probability)
    for variable, shift in enumerate(found.shifts):
        more, less = (norm.sf(1.5 - step * ALPHA[variable]) for step in (0.1, -0.1))
        assert (more - less) / 0.2 / probability == pytest.approx(shift, abs=0.02)


def test_rare_exceedance_shows_the_worst_twentieth() -> None:
    points = next(standard_normal_points(4, samples=16 * 65_536, method="sobol", seed=5))
    found = tail_shifts(points, ALPHA @ points, probability=1e-6)
    twentieth = norm.isf(0.05)
    np.testing.assert_allclose(found.shifts, ALPHA * norm.pdf(twentieth) / 0.05, atol=0.03)


def test_samples_that_tie_share_the_tail() -> None:
    """All ratios alike say nothing; ten that are larger say what they have in common."""
    values = np.linspace(-1.0, 1.0, 100)[None]
    assert tail_shifts(values, np.ones(100), probability=0.3).shifts == pytest.approx([0.0])
    response = np.where(np.arange(100) < 10, 2.0, 1.0)
    whole = tail_shifts(values, response, probability=0.1).shifts[0]
    assert whole == pytest.approx(np.mean(norm.ppf((np.arange(10) + 0.5) / 100)))
    # a tail of twenty holds the ten, and as much of all others as ten of them
    half = tail_shifts(values, response, probability=0.2).shifts[0]
    assert half == pytest.approx(0.5 * whole - 0.5 * whole * 10 / 90)


def test_what_could_not_be_evaluated_is_the_largest() -> None:
    values, response = np.linspace(0.0, 1.0, 50)[None], np.zeros(50)
    response[-5:] = np.nan
    assert tail_shifts(values, response, probability=0.1).shifts[0] > 1.0


def test_few_samples_and_constant_variables_have_no_shift() -> None:
    few = tail_shifts(np.arange(4.0)[None], np.arange(4.0), probability=0.5)
    assert few.shifts.tolist() == [0.0]
    assert few.standard_error == np.inf
    assert tail_shifts(np.ones((1, 9)), np.arange(9.0), probability=0.5).shifts.tolist() == [0.0]
