"""Slip resistance against the other code and against statics of a bolt group."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._arguments import HoleType
from jacketcheck.mechanics.slip import (
    aashto_slip_resistance,
    aisc_slip_resistance,
    probable_slip_load,
)
from jacketcheck.mechanics.slip_hole_factors import (
    aashto_hole_size_factor,
    aisc_slip_resistance_factor,
)
from jacketcheck.mechanics.slip_tension import (
    aashto_slip_tension_reduction,
    aisc_slip_tension_reduction,
)


@pytest.mark.parametrize("hole", ["standard", "oversized", "long-slot-perpendicular"])
def test_codes_differ_by_the_installed_pretension_only(hole: HoleType) -> None:
    # Two codes, two sets of tables: with one slip coefficient they differ by D_u = 1.13 for the
    # hole types to which they assign the same factor
    aisc = aisc_slip_resistance_factor(hole) * aisc_slip_resistance(
        0.5, pretension=173e3, slip_planes=2
    )
    aashto = aashto_slip_resistance(
        0.5, pretension=173e3, slip_planes=2, hole_size_factor=aashto_hole_size_factor(hole)
    )
    assert float(aisc) / float(aashto) == pytest.approx(1.13, rel=1e-12)


def test_reduction_for_tension_is_friction_on_the_force_left_between_the_plates() -> None:
    # What tension takes off the contact force is lost to friction: slip resistance times k_sc is
    # friction on (D_u T_b - T_u), found here by lowering the clamping itself
    tension = np.linspace(0.0, 230e3, 24)
    clamping = 1.13 * 200e3
    reduced = aisc_slip_resistance(
        0.3, pretension=200e3, slip_planes=1
    ) * aisc_slip_tension_reduction(tension, pretension=200e3)
    left = [max(clamping - pull, 0.0) for pull in tension]
    expected = [float(probable_slip_load(0.3, bolt_tension=force, slip_planes=1)) for force in left]
    np.testing.assert_allclose(reduced, expected, rtol=1e-12, atol=1e-9)


def test_aashto_reduction_is_friction_on_the_force_left_between_the_plates() -> None:
    tension = np.linspace(0.0, 200e3, 11)
    reduced = aashto_slip_resistance(
        0.45, pretension=200e3, slip_planes=2, hole_size_factor=1.0
    ) * aashto_slip_tension_reduction(tension, pretension=200e3)
    expected = [2 * 0.45 * (200e3 - pull) for pull in tension]
    np.testing.assert_allclose(reduced, expected, rtol=1e-12, atol=1e-9)


def test_group_is_the_sum_over_its_bolts() -> None:
    # a group in which one bolt in five was left snug, added up bolt by bolt
    pretensioned = np.array([True, True, False, True, True])
    each = aisc_slip_resistance(0.5, pretension=173e3, slip_planes=2, pretensioned=pretensioned)
    total = 0.0
    for tight in pretensioned:
        total += 0.5 * 1.13 * 173e3 + 0.5 * 1.13 * 173e3 if tight else 0.0
    assert float(np.sum(each)) == pytest.approx(total, rel=1e-12)
