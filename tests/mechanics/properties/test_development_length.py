"""What must hold for development lengths, and what is refused."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import require_within
from jacketcheck.mechanics.bond_strength import (
    basic_design_bond_strength,
    splice_bond_strength,
    splitting_bar_stress,
    uniform_bond_force,
    uniform_bond_length,
)
from jacketcheck.mechanics.development_length import (
    AciEdition,
    development_length,
    reinforcement_grade_factor,
    seismic_anchorage_length,
    simplified_development_length,
    transverse_reinforcement_index,
)

BARS = st.floats(10.0, 57.0)
STRENGTHS = st.floats(17.0, 100.0)
EDITIONS: st.SearchStrategy[AciEdition] = st.sampled_from(["ACI 318-19", "ACI 318M-19"])


@given(BARS, st.floats(250.0, 700.0), STRENGTHS, st.floats(0.5, 4.0), st.floats(0.0, 50.0))
def test_more_concrete_or_cover_never_lengthens(
    bar: float, stress: float, strength: float, cover: float, more: float
) -> None:
    def length(f: float, c: float, k: float) -> float:
        return float(
            development_length(
                bar,
                yield_strength=stress,
                concrete_strength=f,
                cover_dimension=c * bar,
                transverse_index=k,
            )
        )

    here = length(strength, cover, 0.0)
    assert length(strength + more, cover, 0.0) <= here * (1.0 + 1e-12)
    assert length(strength, cover + more, 0.0) <= here * (1.0 + 1e-12)
    assert length(strength, cover, more) <= here * (1.0 + 1e-12)


@given(BARS, st.floats(250.0, 700.0), STRENGTHS, EDITIONS)
def test_general_is_not_longer_than_the_simplified_row_it_comes_from(
    bar: float, stress: float, strength: float, edition: AciEdition
) -> None:
    # the table stands for (cb + Ktr)/db = 1.5, with rounded numbers in the metric edition
    general = development_length(
        bar,
        yield_strength=stress,
        concrete_strength=strength,
        cover_dimension=1.5 * bar,
        edition=edition,
    )
    simplified = simplified_development_length(
        bar, yield_strength=stress, concrete_strength=strength, well_spaced=True, edition=edition
    )
    assert general == pytest.approx(float(simplified), rel=0.04)


@given(BARS, st.floats(250.0, 700.0), STRENGTHS)
def test_editions_agree_but_for_rounding(bar: float, stress: float, strength: float) -> None:
    editions: tuple[AciEdition, ...] = ("ACI 318-19", "ACI 318M-19")
    inch, metric = (
        float(
            simplified_development_length(
                bar,
                yield_strength=stress,
                concrete_strength=strength,
                well_spaced=True,
                edition=edition,
            )
        )
        for edition in editions
    )
    assert metric == pytest.approx(inch, rel=0.03)


def test_arrays_match_one_by_one() -> None:
    bars, strengths = np.array([12.7, 25.4, 35.8]), np.array([[25.0], [40.0]])
    many = np.asarray(
        development_length(
            bars, yield_strength=420.0, concrete_strength=strengths, cover_dimension=50.0
        )
    )
    assert many.shape == (2, 3)
    for row, column in np.ndindex(2, 3):
        one = development_length(
            float(bars[column]),
            yield_strength=420.0,
            concrete_strength=float(strengths[row, 0]),
            cover_dimension=50.0,
        )
        assert many[row, column] == pytest.approx(float(one), rel=1e-14)


def test_casting_and_coating_count_up_to_their_product() -> None:
    def length(location: float, coating: float) -> float:
        return float(
            development_length(
                30.0,
                yield_strength=420.0,
                concrete_strength=30.0,
                cover_dimension=60.0,
                location_factor=location,
                coating_factor=coating,
            )
        )

    assert length(1.3, 1.5) == pytest.approx(1.7 * length(1.0, 1.0))
    assert length(1.3, 1.2) == pytest.approx(1.56 * length(1.0, 1.0))


GENERAL: dict[str, Any] = {
    "bar_diameter": 32.0,
    "yield_strength": 420.0,
    "concrete_strength": 28.0,
    "cover_dimension": 60.0,
}
SPLITTING: dict[str, Any] = {
    "concrete_strength": 38.0,
    "bar_diameter": 25.0,
    "length": 500.0,
    "minimum_cover": 50.0,
    "maximum_cover": 60.0,
}
SPLICE: dict[str, Any] = {
    "concrete_strength": 28.0,
    "bar_diameter": 25.0,
    "cover_dimension": 50.0,
    "length": 800.0,
}


@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan"), float("inf")])
@pytest.mark.parametrize("name", list(GENERAL))
def test_domain_of_the_general_equation(name: str, bad: float) -> None:
    with pytest.raises(DomainError, match=name):
        development_length(**(GENERAL | {name: bad}))


@pytest.mark.parametrize(
    ("name", "bad"),
    [
        ("transverse_index", -1.0),
        ("location_factor", 0.9),
        ("coating_factor", 0.9),
        ("grade_factor", 0.9),
        ("lightweight_factor", 1.1),
        ("edition", "ACI 318-63"),
    ],
)
def test_factors_outside_their_range(name: str, bad: float | str) -> None:
    with pytest.raises(DomainError, match=name):
        development_length(**(GENERAL | {name: bad}))


@pytest.mark.parametrize(
    ("name", "bad"),
    [
        ("concrete_strength", 14.9),
        ("length", 249.0),
        ("minimum_cover", 12.0),
        ("maximum_cover", 49.0),
        ("transverse_index", 0.06),
        ("bar_diameter", float("nan")),
    ],
)
def test_range_of_the_splitting_stress(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        splitting_bar_stress(**(SPLITTING | {name: bad}))


@pytest.mark.parametrize("name", list(SPLICE))
def test_domain_of_the_splice_strength(name: str) -> None:
    with pytest.raises(DomainError, match=name):
        splice_bond_strength(**(SPLICE | {name: -1.0}))


def test_other_domains() -> None:
    with pytest.raises(DomainError, match="grade"):
        reinforcement_grade_factor(700.0)
    with pytest.raises(DomainError, match="spacing"):
        transverse_reinforcement_index(100.0, spacing=0.0, bars_developed=2)
    with pytest.raises(DomainError, match="expected_yield"):
        seismic_anchorage_length(32.0, expected_yield=-1.0, concrete_strength=28.0)
    with pytest.raises(DomainError, match="bond_stress"):
        uniform_bond_length(1.0, bond_stress=0.0, perimeter_diameter=32.0)
    with pytest.raises(DomainError, match="length"):
        uniform_bond_force(-1.0, bond_stress=1.0, perimeter_diameter=32.0)
    with pytest.raises(DomainError, match="partial_factor"):
        basic_design_bond_strength(30.0, partial_factor=0.0)
    with pytest.raises(DomainError, match="number = nan"):
        require_within(0.0, 1.0, number=float("nan"))
