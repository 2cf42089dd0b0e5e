"""What must hold for added bars, and what is refused."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.added_bar_anchorage import adhesive_anchorage, grouted_anchorage
from jacketcheck.mechanics.adhesive_anchors import (
    adhesive_bond_strength,
    bond_influence_distance,
    breakout_influence_distance,
    breakout_strength,
    edge_factor,
    ring_area_share,
)
from jacketcheck.mechanics.noncontact_lap import (
    effective_lap_length,
    lap_hoop_force,
    lap_offset,
    largest_lap_offset,
)

LENGTHS = st.floats(50.0, 2000.0)
COUNTS = st.integers(1, 60)


@given(LENGTHS, LENGTHS, COUNTS, st.floats(10.0, 5000.0))
def test_share_is_a_share(reach: float, radius: float, count: int, edge: float) -> None:
    share = float(ring_area_share(reach, circle_radius=radius, count=count, edge_distance=edge))
    assert 0.0 < share <= 1.0
    assert share <= ring_area_share(reach, circle_radius=radius, count=count)
    assert share >= ring_area_share(
        reach, circle_radius=radius, count=count + 1, edge_distance=edge
    )


ADHESIVE: dict[str, Any] = {
    "bond_stress": 8.0,
    "bar_diameter": 32.0,
    "embedment": 600.0,
    "footing_strength": 28.0,
    "circle_radius": 650.0,
    "count": 16,
    "breakout_precluded": False,
}
GROUTED: dict[str, Any] = {
    "bar_diameter": 32.0,
    "bar_stress": 590.0,
    "yield_strength": 469.0,
    "footing_strength": 28.0,
    "grout_strength": 50.0,
    "cover_dimension": 100.0,
}


@given(st.floats(130.0, 2500.0), st.floats(3.0, 20.0), COUNTS)
def test_smaller_strength_counts(embedment: float, bond: float, count: int) -> None:
    case = ADHESIVE | {"embedment": embedment, "bond_stress": bond, "count": count}
    found = adhesive_anchorage(**case)
    assert found.nominal_strength == min(found.bond_strength, found.breakout_strength)
    assert found.bond_strength <= found.single_bond_strength
    assert found.breakout_strength <= found.single_breakout_strength
    assert found.outside_method == (embedment > 640.0)
    free = adhesive_anchorage(**(case | {"breakout_precluded": True}))
    assert free.nominal_strength == free.bond_strength
    assert free.breakout_strength == found.breakout_strength
    assert free.governed_by == "bond"


@given(st.floats(0.0, 3.0))
def test_spread_of_bond_never_helps_a_crowded_ring(more: float) -> None:
    crowded = ADHESIVE | {"count": 40}
    near = adhesive_anchorage(**(crowded | {"uncracked_bond_stress": 8.0}))
    far = adhesive_anchorage(**(crowded | {"uncracked_bond_stress": 8.0 + 8.0 * more}))
    assert far.bond_strength <= near.bond_strength * (1.0 + 1e-12)


@given(st.floats(300.0, 700.0), st.floats(20.0, 80.0), st.floats(20.0, 80.0))
def test_longer_length_counts(stress: float, footing: float, grout: float) -> None:
    case = GROUTED | {
        "bar_stress": stress,
        "footing_strength": footing,
        "grout_strength": grout,
    }
    found = grouted_anchorage(**case)
    both = (found.guide_specification_length, found.development_length)
    assert found.required_length == max(both)
    assert found.required_length > found.least_tested_length
    swapped = case | {"footing_strength": grout, "grout_strength": footing}
    assert grouted_anchorage(**swapped).required_length == found.required_length


def test_tested_length_by_stress() -> None:
    at_yield = grouted_anchorage(**(GROUTED | {"bar_stress": 469.0}))
    beyond = grouted_anchorage(**GROUTED)
    assert at_yield.least_tested_length == 192.0
    assert beyond.least_tested_length == 320.0


def test_arrays_match_one_by_one() -> None:
    embedments, counts = np.array([300.0, 600.0]), np.array([[8.0], [16.0], [30.0]])
    many = adhesive_anchorage(**(ADHESIVE | {"embedment": embedments, "count": counts}))
    assert np.shape(many.nominal_strength) == (3, 2)
    for row, column in np.ndindex(3, 2):
        one = adhesive_anchorage(
            **(ADHESIVE | {"embedment": float(embedments[column]), "count": float(counts[row, 0])})
        )
        assert np.asarray(many.nominal_strength)[row, column] == pytest.approx(
            float(one.nominal_strength), rel=1e-14
        )
        assert many.governed_by[row, column] == one.governed_by
    stresses = np.array([400.0, 600.0])
    lengths = grouted_anchorage(**(GROUTED | {"bar_stress": stresses}))
    for index, stress in enumerate(stresses):
        alone = grouted_anchorage(**(GROUTED | {"bar_stress": float(stress)}))
        assert np.asarray(lengths.required_length)[index] == alone.required_length
        assert np.asarray(lengths.least_tested_length)[index] == alone.least_tested_length


@given(LENGTHS, st.floats(0.0, 500.0), st.floats(0.0, 500.0))
def test_more_offset_never_lengthens_a_lap(lap: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert effective_lap_length(lap, offset=more) <= effective_lap_length(lap, offset=less)
    assert effective_lap_length(lap, offset=0.0) == lap


@given(LENGTHS, LENGTHS)
def test_shorter_lap_pushes_harder(one: float, other: float) -> None:
    less, more = sorted((one, other))
    short = lap_hoop_force(500e3, bar_count=16, lap_length=less)
    assert short >= lap_hoop_force(500e3, bar_count=16, lap_length=more)


@pytest.mark.parametrize("bad", [-1.0, 0.0, float("nan")])
@pytest.mark.parametrize("name", [name for name in ADHESIVE if name != "breakout_precluded"])
def test_domain_of_adhesive(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        adhesive_anchorage(**(ADHESIVE | {name: bad}))


@pytest.mark.parametrize("bad", [-1.0, 0.0, float("nan"), float("inf")])
@pytest.mark.parametrize("name", list(GROUTED))
def test_domain_of_grouted(name: str, bad: float) -> None:
    with pytest.raises(DomainError):
        grouted_anchorage(**(GROUTED | {name: bad}))


def test_uncracked_bond_is_not_below_cracked() -> None:
    with pytest.raises(DomainError, match="bond_stress_gain"):
        adhesive_anchorage(**(ADHESIVE | {"uncracked_bond_stress": 7.9}))


def test_other_domains() -> None:
    nan = float("nan")
    with pytest.raises(DomainError, match="lightweight_factor"):
        adhesive_bond_strength(8.0, bar_diameter=32.0, embedment=600.0, lightweight_factor=1.1)
    with pytest.raises(DomainError, match="uncracked_bond_stress"):
        bond_influence_distance(32.0, uncracked_bond_stress=nan)
    with pytest.raises(DomainError, match="embedment"):
        breakout_influence_distance(-1.0)
    with pytest.raises(DomainError, match="coefficient"):
        breakout_strength(28.0, embedment=600.0, coefficient=0.0)
    with pytest.raises(DomainError, match="edge_distance"):
        edge_factor(nan, influence_distance=600.0)
    with pytest.raises(DomainError, match="count"):
        ring_area_share(450.0, circle_radius=650.0, count=0)
    with pytest.raises(DomainError, match="radial_offset"):
        lap_offset(-1.0, bar_spacing=200.0)
    with pytest.raises(DomainError, match="offset"):
        effective_lap_length(900.0, offset=nan)
    with pytest.raises(DomainError, match="lap_length"):
        largest_lap_offset(-1.0)
    with pytest.raises(DomainError, match="lap_length"):
        lap_hoop_force(500e3, bar_count=16, lap_length=0.0)
    with pytest.raises(DomainError, match="tension_share"):
        lap_hoop_force(500e3, bar_count=16, lap_length=900.0, tension_share=1.5)
