"""What bolts in shear and tension must do for any input."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.mechanics.bolt_strength import (
    LONG_JOINT_LENGTH,
    aashto_bolt_shear_resistance,
    aashto_long_joint_factor,
    aisc_bolt_shear_strength,
    aisc_long_joint_factor,
    seam_joint_length,
)
from jacketcheck.mechanics.bolt_tension import (
    aashto_bolt_tension_with_shear,
    aisc_tensile_stress_with_shear,
)

diameters = st.floats(12.0, 40.0)


@given(diameter=diameters, stress=st.floats(200.0, 600.0), planes=st.integers(1, 2))
def test_shear_strength_goes_with_area_and_planes(
    diameter: float, stress: float, planes: int
) -> None:
    base = aisc_bolt_shear_strength(diameter, shear_stress=stress, shear_planes=1)
    double = aisc_bolt_shear_strength(2.0 * diameter, shear_stress=stress, shear_planes=planes)
    assert float(double) == pytest.approx(4.0 * planes * float(base))


@given(diameter=diameters, strength=st.floats(800.0, 1100.0))
def test_threads_in_the_shear_plane_never_help(diameter: float, strength: float) -> None:
    excluded, included = (
        aashto_bolt_shear_resistance(
            diameter, tensile_strength=strength, threads=threads, shear_planes=1
        )
        for threads in ("excluded", "included")
    )
    assert included < excluded


@given(lengths=st.lists(st.floats(0.0, 3.0 * LONG_JOINT_LENGTH), min_size=2, max_size=10))
def test_longer_joints_are_never_stronger(lengths: list[float]) -> None:
    ordered = np.sort(lengths)
    aisc = aisc_long_joint_factor(ordered)
    aashto = aashto_long_joint_factor(ordered)
    assert np.all(np.diff(aisc) <= 0.0)
    assert np.all(aashto <= aisc)


@given(columns=st.integers(1, 6), gauge=st.floats(40.0, 150.0))
def test_seams_are_long_joints_only_with_many_wide_columns(columns: int, gauge: float) -> None:
    length = float(seam_joint_length(columns=columns, gauge=gauge))
    assert length == pytest.approx(sum(gauge for _ in range(columns - 1)))
    assert float(aisc_long_joint_factor(length)) == 1.0  # 6 columns at 150 mm stay under 38 in


@given(shears=st.lists(st.floats(0.0, 500.0), min_size=2, max_size=10))
def test_more_shear_never_leaves_more_tension(shears: list[float]) -> None:
    ordered = np.sort(shears)
    aisc = aisc_tensile_stress_with_shear(ordered, tensile_stress=620.0, shear_stress=372.0)
    aashto = aashto_bolt_tension_with_shear(
        ordered, tension_resistance=600.0, shear_resistance=400.0
    )
    for left, whole in ((aisc, 620.0), (aashto, 600.0)):
        assert np.all(np.diff(left) <= 0.0)
        assert np.all(left >= 0.0)
        assert np.all(left <= whole)


@given(excess=st.floats(1e-6, 10.0))
def test_nothing_is_left_once_shear_alone_fails_the_bolt(excess: float) -> None:
    used = 1.0 + excess
    aisc = aisc_tensile_stress_with_shear(
        used * 0.75 * 372.0, tensile_stress=620.0, shear_stress=372.0
    )
    aashto = aashto_bolt_tension_with_shear(
        used * 0.80 * 400.0, tension_resistance=600.0, shear_resistance=400.0
    )
    assert float(aisc) == 0.0
    assert float(aashto) == 0.0
