"""Range checks shared by every formula, and the conversions inside empirical ones."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy import constants

from jacketcheck.errors import DomainError
from jacketcheck.mechanics import _arrays
from jacketcheck.mechanics._bracketed_root import bracketed_roots
from jacketcheck.mechanics._customary_units import INCH, KIP, KSI, PSI

Check = Callable[[float], None]


def _finite(value: float) -> None:
    _arrays.require_finite(height=value)


def _positive(value: float) -> None:
    _arrays.require_positive(height=value)


def _positive_or_infinite(value: float) -> None:
    _arrays.require_positive_or_infinite(height=value)


def _at_least(value: float) -> None:
    _arrays.require_at_least(2.0, height=value)


def _at_least_or_infinite(value: float) -> None:
    _arrays.require_at_least_or_infinite(2.0, height=value)


@pytest.mark.parametrize(
    ("check", "bad"),
    [
        (_finite, np.nan),
        (_finite, np.inf),
        (_positive, np.nan),
        (_positive, np.inf),
        (_positive, 0.0),
        (_positive, -1.0),
        (_positive_or_infinite, np.nan),
        (_positive_or_infinite, 0.0),
        (_positive_or_infinite, -np.inf),
        (_at_least, np.nan),
        (_at_least, np.inf),
        (_at_least, 1.999),
        (_at_least_or_infinite, np.nan),
        (_at_least_or_infinite, 1.999),
    ],
)
def test_refused_by_name_and_value(check: Check, bad: float) -> None:
    with pytest.raises(DomainError) as caught:
        check(bad)
    assert caught.value.name == "height"
    assert repr(caught.value.value) == repr(float(bad))


@pytest.mark.parametrize(
    ("check", "good"),
    [
        (_finite, -5.0),
        (_positive, 1e-300),
        (_positive_or_infinite, np.inf),
        (_at_least, 2.0),
        (_at_least_or_infinite, np.inf),
    ],
)
def test_allowed(check: Check, good: float) -> None:
    check(good)


def test_first_bad_number_of_an_array_is_shown() -> None:
    with pytest.raises(DomainError, match=r"width = -3\.0"):
        _arrays.require_positive(height=1.0, width=np.array([[1.0, 2.0], [-3.0, np.nan]]))


@pytest.mark.parametrize(
    ("value", "reference"),
    [
        pytest.param(INCH, constants.inch * 1e3, id="inch"),
        pytest.param(KIP, constants.lbf * 1e3, id="kip"),
        pytest.param(KSI, constants.psi * 1e-3, id="ksi"),
        pytest.param(PSI, constants.psi * 1e-6, id="psi"),
    ],
)
def test_conversions_agree_with_the_tabulated_constants(value: float, reference: float) -> None:
    assert value == pytest.approx(reference, rel=1e-12)


def test_roots_of_straight_curved_and_kinked_residuals() -> None:
    wanted = np.array([0.0, 0.3, 1.0])

    def residual(x: _arrays.Floats) -> _arrays.Floats:
        return np.stack([x[0], wanted[1] ** 5 - x[1] ** 5, np.minimum(1e-3, 1.0 - x[2])])

    roots = bracketed_roots(residual, np.zeros(3), np.array([1.0, 1.0, 7.0]), tolerance=1e-14)
    assert roots == pytest.approx(wanted, abs=1e-12)


def test_a_residual_that_stalls_false_position_is_bisected() -> None:
    def residual(x: _arrays.Floats) -> _arrays.Floats:
        return np.asarray(np.sign(x - 0.7) * np.exp(-1e-3 / np.maximum(np.abs(x - 0.7), 1e-6)))

    root = bracketed_roots(residual, np.zeros(1), np.array([1e6]), tolerance=1e-300)
    assert root == pytest.approx([0.7], abs=1e-5)
