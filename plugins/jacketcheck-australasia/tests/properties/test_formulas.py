"""What every answer of the formulas must keep to, whatever the numbers."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from jacketcheck_australasia.mechanics import bolt_strength as bolts
from jacketcheck_australasia.mechanics import detailing, development, plate_strength, slip
from jacketcheck_australasia.mechanics import ply_bearing as ply

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.block_shear import BlockShearAreas

lengths = st.floats(5.0, 100.0)
strengths = st.floats(200.0, 1200.0)


@given(st.floats(0.1, 0.6), st.floats(0.0, 1e6), st.integers(1, 2))
def test_slip_is_linear_in_each_argument(factor: float, tension: float, interfaces: int) -> None:
    one = float(slip.slip_capacity(factor, bolt_tension=tension, interfaces=interfaces))
    for doubled in (
        slip.slip_capacity(2.0 * factor, bolt_tension=tension, interfaces=interfaces),
        slip.slip_capacity(factor, bolt_tension=2.0 * tension, interfaces=interfaces),
        slip.slip_capacity(factor, bolt_tension=tension, interfaces=2 * interfaces),
    ):
        assert float(doubled) == pytest.approx(2.0 * one, rel=1e-12)


@given(st.floats(0.0, 3000.0), st.floats(0.0, 3000.0))
def test_longer_laps_never_gain(first: float, second: float) -> None:
    short, long = sorted((first, second))
    assert bolts.lap_length_factor(long) <= bolts.lap_length_factor(short)


@given(strengths, st.floats(60.0, 1000.0))
def test_threads_in_the_plane_never_help(strength: float, area: float) -> None:
    def capacity(threads: str) -> float:
        return float(
            bolts.bolt_shear_capacity(
                strength,
                shank_area=area,
                core_area=0.72 * area,
                threads=threads,
                shear_planes=1,
            )
        )

    assert capacity("included") < capacity("excluded")


@given(lengths, st.floats(3.0, 60.0), strengths, st.floats(0.0, 500.0), st.floats(0.0, 500.0))
def test_more_steel_in_front_of_a_hole_never_hurts(
    diameter: float, thickness: float, strength: float, one: float, other: float
) -> None:
    near, far = sorted((one, other))

    def capacity(distance: float) -> float:
        return float(
            ply.ply_bearing_capacity(
                diameter, thickness=thickness, tensile_strength=strength, tear_out_distance=distance
            )
        )

    assert capacity(near) <= capacity(far)
    assert capacity(far) <= 3.2 * diameter * thickness * strength * (1.0 + 1e-12)


@given(st.floats(6.0, 40.0), st.floats(200.0, 700.0), st.floats(20.0, 100.0), st.floats(5.0, 300.0))
def test_lengths_grow_with_stress_and_shrink_with_concrete(
    bar: float, stress: float, concrete: float, cover: float
) -> None:
    def australian(stress: float, concrete: float) -> float:
        return float(
            development.as3600_development_length(
                bar, bar_stress=stress, concrete_strength=concrete, cover_dimension=cover
            )
        )

    def new_zealand(stress: float, concrete: float) -> float:
        return float(
            development.nzs3101_development_length(
                bar, bar_stress=stress, concrete_strength=concrete
            )
        )

    for length in (australian, new_zealand):
        assert length(1.1 * stress, concrete) >= length(stress, concrete)
        assert length(stress, concrete) <= length(stress, max(20.0, 0.9 * concrete))


@given(lengths)
def test_layout_rules_leave_room(diameter: float) -> None:
    assert detailing.min_edge_distance(diameter) < detailing.min_pitch(diameter)


def test_scalars_and_arrays_agree() -> None:
    diameters = np.array([16.0, 20.0, 24.0])
    many = ply.ply_bearing_capacity(
        diameters, thickness=10.0, tensile_strength=430.0, tear_out_distance=50.0
    )
    single = [
        float(
            ply.ply_bearing_capacity(
                float(one), thickness=10.0, tensile_strength=430.0, tear_out_distance=50.0
            )
        )
        for one in diameters
    ]
    np.testing.assert_allclose(many, single, rtol=0.0)


@given(strengths, strengths, st.sampled_from(["included", "excluded"]))
def test_a_stronger_bolt_never_loses(one: float, other: float, threads: str) -> None:
    weak, strong = sorted((one, other))

    def strength(value: float) -> float:
        return value * float(bolts.ductility_factor(value, threads=threads))

    assert strength(weak) <= strength(strong) * (1.0 + 1e-12)


@given(st.floats(10.0, 40.0), st.floats(20.0, 100.0), st.floats(0.0, 300.0), st.floats(0.0, 300.0))
def test_laps_are_no_shorter_than_developments(
    diameter: float, strength: float, one: float, other: float
) -> None:
    near, far = sorted((one, other))

    def lap(apart: float) -> float:
        return float(
            development.nzs3101_lap_length(
                diameter, bar_stress=500.0, concrete_strength=strength, clear_distance=apart
            )
        )

    alone = development.nzs3101_development_length(
        diameter, bar_stress=500.0, concrete_strength=strength
    )
    assert float(alone) <= lap(near) <= lap(far)


_AREAS = BlockShearAreas(2000.0, 1500.0, 500.0)
_BAR = {"bar_stress": 500.0, "concrete_strength": 32.0}


REFUSED: dict[str, Callable[[float], object]] = {
    "slip factor": lambda bad: slip.slip_capacity(bad, bolt_tension=1e5, interfaces=1),
    "tension": lambda bad: slip.slip_capacity(0.35, bolt_tension=bad, interfaces=1),
    "hole factor": lambda bad: slip.slip_capacity(
        0.35, bolt_tension=1e5, interfaces=1, hole_factor=bad
    ),
    "stress area": lambda bad: bolts.core_area(20.0, tensile_stress_area=bad),
    "lap length": bolts.lap_length_factor,
    "bolt strength": lambda bad: bolts.bolt_tension_capacity(bad, tensile_stress_area=245.0),
    "edge": lambda bad: ply.tear_out_distance_to_edge(bad, hole=22.0, diameter=20.0),
    "spacing": lambda bad: ply.tear_out_distance_between_holes(bad, hole=22.0, diameter=20.0),
    "yield strength": lambda bad: plate_strength.gross_yield_capacity(bad, gross_area=1.0),
    "net area": lambda bad: plate_strength.net_fracture_capacity(430.0, net_area=bad),
    "tension plane": lambda bad: plate_strength.block_shear_capacity(
        _AREAS._replace(net_tension=bad), yield_strength=300.0, tensile_strength=430.0
    ),
    "pitch": detailing.min_pitch,
    "ply of pitch": detailing.max_pitch,
    "ply of line": detailing.max_outside_line_pitch,
    "ply of edge": detailing.max_edge_distance,
    "cover": lambda bad: development.as3600_development_length(20.0, cover_dimension=bad, **_BAR),
    "strong bolt": lambda bad: bolts.ductility_factor(bad, threads="included"),
    "clear distance": lambda bad: development.nzs3101_lap_length(20.0, clear_distance=bad, **_BAR),
    "bar": lambda bad: development.nzs3101_development_length(bad, **_BAR),
}


@pytest.mark.parametrize("bad", [np.nan, -1.0, np.inf])
@pytest.mark.parametrize("quantity", REFUSED)
def test_what_is_no_quantity_is_refused(quantity: str, bad: float) -> None:
    with pytest.raises(DomainError):
        REFUSED[quantity](bad)


def test_edges_of_the_ranges_are_refused_and_named() -> None:
    with pytest.raises(DomainError, match="bar_diameter"):
        development.as3600_development_length(57.0, cover_dimension=50.0, **_BAR)
    with pytest.raises(DomainError, match="concrete_strength"):
        development.nzs3101_development_length(20.0, bar_stress=500.0, concrete_strength=17.0)
    with pytest.raises(DomainError, match="thread_depth"):
        bolts.core_area(20.0, tensile_stress_area=400.0)
    with pytest.raises(DomainError, match="one of standard, oversized"):
        slip.slip_hole_factor("round")
    with pytest.raises(DomainError, match="threads"):
        bolts.bolt_shear_capacity(
            830.0, shank_area=314.0, core_area=225.0, threads="unknown", shear_planes=1
        )
    with pytest.raises(DomainError, match="clear_distance_to_edge"):
        ply.tear_out_distance_to_edge(10.0, hole=22.0, diameter=20.0)
