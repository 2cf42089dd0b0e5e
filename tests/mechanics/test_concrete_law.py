"""What a concrete law refuses."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.concrete_law import (
    ConcreteLaw,
    elastic_concrete_law,
    popovics_concrete_law,
    strain_grid,
    tabulated_concrete_law,
    unconfined_concrete_law,
)

CONFINED = {
    "peak_stress": 47.0,
    "peak_strain": 0.0077,
    "elastic_modulus": 27e3,
    "ultimate_strain": 0.02,
}
UNCONFINED = {
    "strength": 30.0,
    "elastic_modulus": 27e3,
    "peak_strain": 0.002,
    "spalling_strain": 0.005,
}


@pytest.mark.parametrize("name", CONFINED)
@pytest.mark.parametrize("bad", [np.nan, 0.0, -1.0])
def test_confined(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        popovics_concrete_law(**{**CONFINED, name: bad})


@pytest.mark.parametrize("name", UNCONFINED)
@pytest.mark.parametrize("bad", [np.nan, 0.0, -1.0])
def test_unconfined(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        unconfined_concrete_law(**{**UNCONFINED, name: bad})


def test_spalling_before_twice_the_peak_strain() -> None:
    with pytest.raises(DomainError, match=r"above 0\.004"):
        unconfined_concrete_law(**{**UNCONFINED, "spalling_strain": 0.004})


def test_modulus_below_the_secant() -> None:
    with pytest.raises(DomainError, match="above the secant 15000"):
        unconfined_concrete_law(**{**UNCONFINED, "elastic_modulus": 15e3})


@pytest.mark.parametrize(
    ("strain", "stress"),
    [
        pytest.param([0.0, 0.002, 0.002], [0.0, 1.0, 2.0], id="not-ascending"),
        pytest.param([0.0, 0.002], [0.0, 1.0, 2.0], id="unmatched"),
        pytest.param([0.0, np.nan], [0.0, 1.0], id="nan-strain"),
        pytest.param([0.0, 0.002], [0.0, np.nan], id="nan-stress"),
        pytest.param([], [], id="empty"),
        pytest.param([0.0, 0.002], [0.0, 0.0], id="no-strength"),
    ],
)
def test_tables(strain: list[float], stress: list[float]) -> None:
    with pytest.raises(DomainError):
        tabulated_concrete_law(np.array(strain), np.array(stress), ultimate_strain=0.01)


@pytest.mark.parametrize(
    "make",
    [
        pytest.param(lambda: elastic_concrete_law(np.nan), id="modulus"),
        pytest.param(lambda: elastic_concrete_law(25e3, ultimate_strain=0.0), id="ultimate"),
        pytest.param(lambda: ConcreteLaw(np.ones(7), 0.01), id="off-the-grid"),
    ],
)
def test_laws(make: Callable[[], ConcreteLaw]) -> None:
    with pytest.raises(DomainError):
        make()


def test_a_law_cannot_be_changed() -> None:
    law = popovics_concrete_law(**CONFINED)
    with pytest.raises(ValueError, match="read-only"):
        law.stress[0] = 1.0


def test_single_and_many_strains() -> None:
    law = popovics_concrete_law(**CONFINED)
    many = law.stress_at(np.array([[0.001, 0.01], [0.09, -0.01]]))
    assert many.shape == (2, 2)
    assert many[0, 1] == pytest.approx(law.stress_at(0.01))
    assert many[1].tolist() == [0.0, 0.0]
    assert law.stress_at(strain_grid()) == pytest.approx(law.stress)
