"""Properties of cube strengths, flat lengths and clamp lengths."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.flat_shell import developed_half_shell
from jacketcheck.mechanics.grout_cubes import cylinder_strength_of_cubes


@given(
    strength=st.floats(1.0, 100.0),
    more=st.floats(0.1, 5.0),
    side=st.sampled_from([50.0, 50.8, 70.0, 100.0, 150.0]),
)
def test_stronger_cubes_never_make_weaker_cylinders(
    strength: float, more: float, side: float
) -> None:
    weak = float(cylinder_strength_of_cubes(strength, cube_side=side))
    strong = float(cylinder_strength_of_cubes(strength + more, cube_side=side))
    assert strong > weak
    assert weak < strength * 0.87


@given(diameter=st.floats(500.0, 5000.0), thickness=st.floats(3.0, 50.0), gap=st.floats(0.0, 100.0))
def test_two_halves_and_two_gaps_make_the_circle(
    diameter: float, thickness: float, gap: float
) -> None:
    half = float(developed_half_shell(diameter, thickness=thickness, seam_gap=gap))
    assert 2.0 * (half + gap) == pytest.approx(np.pi * (diameter + thickness), rel=1e-12)


@given(
    length=st.floats(40.0, 200.0), more=st.floats(0.0, 50.0), thread=st.floats(20.0, 60.0),
    nut=st.floats(10.0, 30.0),
)  # fmt: skip
def test_longer_bolts_clamp_no_less(length: float, more: float, thread: float, nut: float) -> None:
    short = clamp_lengths(length, thread_length=thread, nut_height=nut, protrusion=2.0)
    long = clamp_lengths(length + more, thread_length=thread, nut_height=nut, protrusion=2.0)
    assert long.largest >= short.largest
    assert long.least >= short.least
    # the largest clamp needs exactly this bolt
    if float(short.largest) > 0.0:
        needed = least_bolt_length(short.largest, nut_height=nut, protrusion=2.0)
        assert float(needed) == pytest.approx(length)
