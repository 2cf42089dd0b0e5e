"""What holes and bolt rows must do for any input."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics.bolt_bearing import (
    HoleStrengths,
    bearing_strength,
    hole_strength,
    seam_row_strength,
)

diameters = st.floats(12.0, 40.0)
strengths = st.floats(1e3, 500e3)
plates = st.builds(HoleStrengths, edge=strengths, inner=strengths)
holes: st.SearchStrategy[HoleType] = st.sampled_from(
    ["standard", "oversized", "long-slot-perpendicular", "long-slot-parallel"]
)


def at(clear: float, diameter: float, hole: HoleType) -> float:
    return float(
        hole_strength(
            diameter, clear_distance=clear, thickness=8.0, tensile_strength=400.0, hole=hole
        )
    )


@given(diameter=diameters, hole=holes)
def test_strength_has_its_kink_where_the_clear_distance_is_two_diameters(
    diameter: float, hole: HoleType
) -> None:
    kink = 2.0 * diameter
    cap = float(bearing_strength(diameter, thickness=8.0, tensile_strength=400.0, hole=hole))
    assert at(kink, diameter, hole) == pytest.approx(cap)
    assert at(1.5 * kink, diameter, hole) == cap
    assert at(0.5 * kink, diameter, hole) == pytest.approx(0.5 * cap)
    assert at(0.99 * kink, diameter, hole) == pytest.approx(0.99 * cap)


@given(diameter=diameters, clear=st.floats(0.0, 200.0))
def test_long_slots_across_the_force_are_the_weakest(diameter: float, clear: float) -> None:
    across = at(clear, diameter, "long-slot-perpendicular")
    assert across == pytest.approx(at(clear, diameter, "standard") / 1.2)


@given(shear=strengths, columns=st.integers(1, 6), sleeve=plates, outside=plates, inside=plates)
def test_second_plate_never_lowers_a_row_and_shear_bounds_it(
    shear: float,
    columns: int,
    sleeve: HoleStrengths,
    outside: HoleStrengths,
    inside: HoleStrengths,
) -> None:
    one = float(seam_row_strength(shear, columns=columns, sleeve=sleeve, outside_plate=outside))
    two = float(
        seam_row_strength(
            shear, columns=columns, sleeve=sleeve, outside_plate=outside, inside_plate=inside
        )
    )
    assert one <= two * (1.0 + 1e-12)
    assert one <= columns * shear * (1.0 + 1e-12)
    assert two <= 2.0 * columns * shear * (1.0 + 1e-12)
    assert two <= columns * max(sleeve) * (1.0 + 1e-12)


@given(shear=strengths, columns=st.integers(2, 6), sleeve=plates, outside=plates)
def test_one_more_column_never_lowers_a_row(
    shear: float, columns: int, sleeve: HoleStrengths, outside: HoleStrengths
) -> None:
    fewer, more = (
        float(seam_row_strength(shear, columns=count, sleeve=sleeve, outside_plate=outside))
        for count in (columns, columns + 1)
    )
    assert more >= fewer
