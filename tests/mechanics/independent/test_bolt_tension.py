"""Interaction of tension and shear against the curves it stands for."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics.bolt_strength import (
    AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR,
    AISC_BOLT_RESISTANCE_FACTOR,
)
from jacketcheck.mechanics.bolt_tension import (
    aashto_bolt_tension_with_shear,
    aisc_tensile_stress_with_shear,
)


def test_aashto_points_lie_on_an_ellipse() -> None:
    shear_resistance, tension_resistance = 125e3, 200e3
    shear = np.linspace(0.34, 0.80, 24) * shear_resistance
    tension = aashto_bolt_tension_with_shear(
        shear, tension_resistance=tension_resistance, shear_resistance=shear_resistance
    )
    ellipse = (tension / tension_resistance) ** 2 + (
        shear / (AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR * shear_resistance)
    ) ** 2
    np.testing.assert_allclose(ellipse, 1.0, rtol=1e-9)


def test_aisc_points_lie_on_the_straight_line_of_the_commentary() -> None:
    # AISC 360 commentary to J3.8: f_rt / (phi F_nt) + f_rv / (phi F_nv) = 1.3 between the two
    # ranges in which either stress may be ignored
    tensile_stress, shear_stress = 620.0, 372.0
    shear = np.linspace(0.30, 1.0, 29) * AISC_BOLT_RESISTANCE_FACTOR * shear_stress
    left = aisc_tensile_stress_with_shear(
        shear, tensile_stress=tensile_stress, shear_stress=shear_stress
    )
    line = AISC_BOLT_RESISTANCE_FACTOR * left / (
        AISC_BOLT_RESISTANCE_FACTOR * tensile_stress
    ) + shear / (AISC_BOLT_RESISTANCE_FACTOR * shear_stress)
    np.testing.assert_allclose(line, 1.3, rtol=1e-9)


def test_aisc_line_follows_the_ellipse_where_both_act() -> None:
    # The line replaces the elliptical test curve; up to 80% of the design shear they differ by
    # less than 17% (largest at the ends of the line)
    tensile_stress, shear_stress = 620.0, 372.0
    used = np.linspace(0.0, 0.80, 41)
    left = aisc_tensile_stress_with_shear(
        used * AISC_BOLT_RESISTANCE_FACTOR * shear_stress,
        tensile_stress=tensile_stress,
        shear_stress=shear_stress,
    )
    ellipse = tensile_stress * np.sqrt(1.0 - used**2)
    assert np.max(np.abs(left / ellipse - 1.0)) < 0.17
