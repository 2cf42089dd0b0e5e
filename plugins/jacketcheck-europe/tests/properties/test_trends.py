"""Directions and bounds that the formulas must keep for any input."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from jacketcheck_europe.mechanics.anchorage import (
    cover_coefficient,
    design_anchorage_length,
    design_lap_length,
)
from jacketcheck_europe.mechanics.bearing import (
    bearing_resistance,
    end_bolt_coefficient,
    inner_bolt_coefficient,
    transverse_coefficient,
)
from jacketcheck_europe.mechanics.bolts import high_strength_class
from jacketcheck_europe.mechanics.column_shear import existing_column_shear, pier_section
from jacketcheck_europe.mechanics.interface import interface_shear_strength
from jacketcheck_europe.mechanics.slip import slip_resistance

lengths = st.floats(10.0, 400.0)
holes = st.floats(13.0, 40.0)
shares = st.floats(0.0, 1.0)


@given(distance=lengths, more=st.floats(0.0, 200.0), hole=holes)
def test_more_steel_in_front_never_weakens(distance: float, more: float, hole: float) -> None:
    strengths = {"hole": hole, "bolt_strength": 800.0, "plate_strength": 470.0}
    for coefficient in (end_bolt_coefficient, inner_bolt_coefficient):
        near, far = coefficient(distance, **strengths), coefficient(distance + more, **strengths)
        assert 0.0 <= float(near) <= float(far) <= 1.0
    near = transverse_coefficient(edge_distance=distance, spacing=distance, hole=hole)
    far = transverse_coefficient(edge_distance=distance + more, spacing=distance, hole=hole)
    assert 0.0 <= float(near) <= float(far) <= 2.5


@given(diameter=st.floats(12.0, 36.0), scale=st.floats(0.5, 4.0))
def test_bearing_grows_with_the_square_of_the_scale(diameter: float, scale: float) -> None:
    def resistance(factor: float) -> float:
        hole = 1.1 * diameter * factor
        along = end_bolt_coefficient(
            2.0 * hole, hole=hole, bolt_strength=800.0, plate_strength=470.0
        )
        found = bearing_resistance(
            diameter * factor,
            thickness=10.0 * factor,
            plate_strength=470.0,
            along=along,
            across=transverse_coefficient(edge_distance=1.5 * hole, hole=hole),
            partial_factor=1.25,
        )
        return float(found)

    assert np.isclose(resistance(scale), scale**2 * resistance(1.0), rtol=1e-9)


@given(strength=st.floats(800.0, 1400.0), more=st.floats(0.0, 400.0))
def test_a_stronger_bolt_never_counts_less(strength: float, more: float) -> None:
    for threads in ("included", "excluded"):
        weak = high_strength_class(strength, threads=threads)
        strong = high_strength_class(strength + more, threads=threads)
        assert float(weak.tensile_strength) <= strength
        first = float(weak.tensile_strength) * float(weak.shear_coefficient)
        assert first <= float(strong.tensile_strength) * float(strong.shear_coefficient)


@given(tension=st.floats(0.0, 5e5), surfaces=st.integers(1, 2), factor=st.floats(0.1, 0.6))
def test_slip_is_linear_and_ends_at_zero(tension: float, surfaces: int, factor: float) -> None:
    def resistance(slip_factor: float, planes: float) -> float:
        found = slip_resistance(
            slip_factor,
            bolt_preload=247e3,
            friction_surfaces=planes,
            hole_factor=1.0,
            partial_factor=1.25,
            bolt_tension=tension,
        )
        return float(found)

    one = resistance(1.0, 1.0)
    assert np.isclose(resistance(factor, surfaces), factor * surfaces * one, rtol=1e-12)
    assert one >= 0.0
    assert (one == 0.0) == (0.8 * tension >= 247e3)


@given(basic=st.floats(0.0, 5000.0), cover=lengths, diameter=st.floats(8.0, 40.0))
def test_a_lap_is_never_shorter_than_an_anchorage(
    basic: float, cover: float, diameter: float
) -> None:
    alpha = cover_coefficient(cover, diameter=diameter)
    anchored = float(design_anchorage_length(basic, diameter=diameter, cover=alpha))
    lapped = float(design_lap_length(basic, diameter=diameter, lap=1.0, cover=alpha))
    assert 100.0 <= anchored <= lapped
    assert lapped <= float(design_lap_length(basic, diameter=diameter, lap=1.5, cover=alpha))


@given(ductility=st.floats(0.0, 10.0), more=st.floats(0.0, 10.0), axial=st.floats(0.0, 2e6))
def test_ductility_never_strengthens(ductility: float, more: float, axial: float) -> None:
    def shear(plastic: float, from_load: float) -> float:
        found = existing_column_shear(
            axial_shear=from_load,
            concrete_shear=1.5e5,
            hoop_shear=9e5,
            plastic_ductility=plastic,
            member_factor=1.15,
        )
        return float(found)

    assert shear(ductility + more, axial) <= shear(ductility, axial)
    assert shear(ductility, 0.0) <= shear(ductility, axial)
    # a quarter of what concrete and hoops carry is lost at most
    assert shear(99.0, 0.0) >= 0.75 * shear(0.0, 0.0) * (1.0 - 1e-12)


@given(radius=st.floats(200.0, 2000.0), share=st.floats(0.5, 1.0))
def test_web_fits_into_the_circle(radius: float, share: float) -> None:
    section = pier_section(concrete_radius=radius, bar_circle_radius=share * radius)
    assert 0.0 < float(section.lever_arm) < 2.0 * radius
    assert 0.0 < float(section.web_width) <= 2.0 * radius


@given(pressure=st.floats(0.0, 40.0), friction=st.floats(0.5, 0.9))
def test_interface_never_exceeds_its_limit(pressure: float, friction: float) -> None:
    found = interface_shear_strength(
        pressure, friction=friction, design_strength=17.0, effectiveness=0.528
    )
    assert float(found) <= 0.5 * 0.528 * 17.0
    assert float(found) <= friction * pressure * (1.0 + 1e-12)
