"""What slip resistance must do for any input."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.slip import (
    aashto_slip_resistance,
    aisc_slip_resistance,
    probable_slip_load,
)
from jacketcheck.mechanics.slip_tension import (
    aashto_slip_tension_reduction,
    aisc_slip_tension_reduction,
)

coefficients = st.floats(0.1, 1.0)
pretensions = st.floats(0.0, 800e3)
planes = st.integers(1, 2)
factors = st.floats(1.0, 5.0)


def aisc(coefficient: float, pretension: float, slip_planes: float) -> float:
    return float(aisc_slip_resistance(coefficient, pretension=pretension, slip_planes=slip_planes))


def aashto(coefficient: float, pretension: float, slip_planes: float) -> float:
    return float(
        aashto_slip_resistance(
            coefficient, pretension=pretension, slip_planes=slip_planes, hole_size_factor=0.85
        )
    )


@pytest.mark.parametrize("resistance", [aisc, aashto])
@given(coefficient=coefficients, low=pretensions, high=pretensions, slip_planes=planes)
def test_more_pretension_never_lowers_slip(
    resistance: Callable[[float, float, float], float],
    coefficient: float,
    low: float,
    high: float,
    slip_planes: int,
) -> None:
    low, high = sorted((low, high))
    assert resistance(coefficient, low, slip_planes) <= resistance(coefficient, high, slip_planes)


@given(coefficient=coefficients, pretension=pretensions, slip_planes=planes, factor=factors)
def test_slip_is_linear_in_coefficient_pretension_and_planes(
    coefficient: float, pretension: float, slip_planes: int, factor: float
) -> None:
    for resistance in (aisc, aashto):
        base = factor * resistance(coefficient, pretension, slip_planes)
        assert resistance(factor * coefficient, pretension, slip_planes) == pytest.approx(base)
        assert resistance(coefficient, factor * pretension, slip_planes) == pytest.approx(base)
        assert resistance(coefficient, pretension, factor * slip_planes) == pytest.approx(base)


@given(coefficient=coefficients, pretension=pretensions, slip_planes=planes)
def test_snug_tight_bolts_have_a_design_resistance_of_exactly_zero(
    coefficient: float, pretension: float, slip_planes: int
) -> None:
    snug = aisc_slip_resistance(
        coefficient, pretension=pretension, slip_planes=slip_planes, pretensioned=False
    )
    assert float(snug) == 0.0
    assert aisc(coefficient, 0.0, slip_planes) == 0.0
    snug = aashto_slip_resistance(
        coefficient,
        pretension=pretension,
        slip_planes=slip_planes,
        hole_size_factor=1.0,
        pretensioned=False,
    )
    assert float(snug) == 0.0
    assert aashto(coefficient, 0.0, slip_planes) == 0.0


@given(coefficient=coefficients, pretension=st.floats(1.0, 800e3), slip_planes=planes)
def test_design_value_stays_below_mean_friction_on_the_mean_pretension(
    coefficient: float, pretension: float, slip_planes: int
) -> None:
    probable = probable_slip_load(
        coefficient, bolt_tension=1.13 * pretension, slip_planes=slip_planes
    )
    assert aisc(coefficient, pretension, slip_planes) <= float(probable) * (1.0 + 1e-12)
    assert aashto(coefficient, pretension, slip_planes) < float(probable)


@given(tension=st.floats(0.0, 1e6), pretension=pretensions)
def test_tension_reductions_stay_between_nothing_and_all(tension: float, pretension: float) -> None:
    aisc_factor = float(aisc_slip_tension_reduction(tension, pretension=pretension))
    aashto_factor = float(aashto_slip_tension_reduction(tension, pretension=pretension))
    assert 0.0 <= aashto_factor <= aisc_factor <= 1.0
    if pretension == 0.0:
        assert aisc_factor == 0.0


@given(tensions=st.lists(st.floats(0.0, 500e3), min_size=2, max_size=8))
def test_more_tension_never_raises_what_is_left(tensions: list[float]) -> None:
    left = aisc_slip_tension_reduction(np.sort(tensions), pretension=200e3)
    assert np.all(np.diff(left) <= 0.0)
