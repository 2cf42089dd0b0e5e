"""What must hold for clamping and for the pressure left after losses, whatever the numbers."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.clamping import (
    available_clamping_pressure,
    crack_perimeter,
    required_clamping_pressure,
    ring_crack_perimeter,
    separate_crack_perimeter,
)
from jacketcheck.mechanics.confinement import ultimate_strain
from jacketcheck.mechanics.jacket_thickness import clamping_thickness, confinement_thickness
from jacketcheck.mechanics.lateral_pressure import (
    hoop_effectiveness,
    jacket_volumetric_ratio,
    spiral_effectiveness,
)
from jacketcheck.mechanics.retained_pressure import (
    RetainedPressure,
    hoop_strain_lost_by_slip,
    hoop_strain_lost_by_yield,
    retained_pressure,
)

LENGTH = st.floats(1.0, 2000.0)
STRAIN = st.floats(0.0, 0.01)


def _left(strain: float, slip: float, peak: float) -> RetainedPressure:
    return retained_pressure(
        strain,
        slip_loss=hoop_strain_lost_by_slip(slip, inner_radius=600.0),
        yield_loss=hoop_strain_lost_by_yield(peak, yield_strain=0.0015),
        inner_radius=600.0,
        radial_compliance=0.3,
        yield_pressure=3.0,
    )


@given(STRAIN, st.floats(0.0, 8.0), st.floats(0.0, 8.0), STRAIN)
def test_more_slip_never_retains_more(strain: float, one: float, other: float, peak: float) -> None:
    less, more = sorted((one, other))
    assert _left(strain, more, peak).retained <= _left(strain, less, peak).retained


@given(STRAIN, st.floats(0.0, 8.0), STRAIN)
def test_retained_pressure_is_bounded(strain: float, slip: float, peak: float) -> None:
    left = _left(strain, slip, peak)
    assert 0.0 <= left.retained <= left.before <= 3.0
    if left.nothing_left:
        assert left.retained == 0.0
    if slip == 0.0 and peak <= 0.0015:
        assert left.retained == left.before
        assert not left.nothing_left


@given(st.floats(0.001, 0.01), st.floats(0.1, 4.0))
def test_slip_retains_strictly_less_while_something_is_left(strain: float, slip: float) -> None:
    left = _left(strain, slip, 0.0)
    if 0.0 < left.retained < 3.0:
        assert left.retained < strain * 600.0 / 0.3


@given(st.integers(6, 100), LENGTH, st.floats(10.0, 60.0), st.floats(0.0, 100.0))
def test_crack_perimeter_is_the_shorter_pattern(
    count: int, circle: float, bar: float, cover: float
) -> None:
    ring = ring_crack_perimeter(count, bar_circle_diameter=circle, bar_diameter=bar, cover=cover)
    separate = separate_crack_perimeter(bar, cover=cover)
    shorter = crack_perimeter(count, bar_circle_diameter=circle, bar_diameter=bar, cover=cover)
    assert shorter == min(ring, separate)


@given(st.floats(1e3, 1e6), LENGTH, LENGTH, st.floats(0.5, 2.0))
def test_friction_carries_the_bar(force: float, length: float, perimeter: float, mu: float) -> None:
    pressure = required_clamping_pressure(
        force, anchorage_length=length, crack_perimeter=perimeter, friction_coefficient=mu
    )
    assert mu * pressure * perimeter * length == pytest.approx(force)


@given(
    st.floats(1e-4, 0.003),
    st.floats(0.05, 2.0),
    st.floats(0.1, 9.0),
    st.floats(0.0, 9.0),
    st.floats(0.0, 2.0),
)
def test_supply_is_the_least_of_its_limits(
    strain: float, compliance: float, at_yield: float, at_slip: float, play: float
) -> None:
    supply = available_clamping_pressure(
        core_radius=600.0,
        radial_compliance=compliance,
        yield_pressure=at_yield,
        slip_pressure=at_slip,
        hoop_strain=strain,
        radial_play=play,
    )
    limits = {
        "hoop strain": supply.at_hoop_strain,
        "yield": supply.at_yield,
        "slip": supply.at_slip,
    }
    assert supply.available == min(limits.values()) == limits[str(supply.governed_by)]
    assert bool(supply.play_not_closed) == (strain * 600.0 <= play)


@given(st.floats(0.0041, 0.03), LENGTH, st.floats(20.0, 90.0), st.floats(200.0, 450.0))
def test_rule_of_thumb_thickness_reaches_the_strain_it_was_sized_for(
    wanted: float, diameter: float, confined: float, f_y: float
) -> None:
    thickness = confinement_thickness(
        wanted,
        diameter=diameter,
        confined_strength=confined,
        yield_strength=f_y,
        steel_ultimate_strain=0.1,
    )
    reached = ultimate_strain(
        volumetric_ratio=jacket_volumetric_ratio(thickness, diameter=diameter),
        yield_strength=f_y,
        steel_ultimate_strain=0.1,
        confined_strength=confined,
    )
    # the rounded 0.18 is 0.8 % above 1/5.6
    assert reached - 0.004 == pytest.approx(1.008 * (wanted - 0.004), rel=1e-9)


@given(st.floats(0.0, 5.0), st.floats(0.0, 5.0))
def test_hoops_that_suffice_leave_no_thickness(wanted: float, hoops: float) -> None:
    thickness = clamping_thickness(
        wanted, column_hoop_pressure=hoops, diameter=1000.0, elastic_modulus=200e3
    )
    assert (thickness == 0.0) == (hoops >= wanted)


@given(st.floats(0.0, 400.0), st.floats(0.0, 400.0), st.floats(0.0, 0.05))
def test_wider_spacing_confines_less(one: float, other: float, longitudinal: float) -> None:
    near, far = sorted((one, other))
    for effectiveness in (hoop_effectiveness, spiral_effectiveness):
        pair = effectiveness(
            np.array([near, far]), core_diameter=800.0, longitudinal_ratio=longitudinal
        )
        values = np.asarray(pair)
        assert 0.0 < values[1] <= values[0] <= 1.0
