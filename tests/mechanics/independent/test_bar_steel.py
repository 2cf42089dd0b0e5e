"""Inverse of the stress-strain curve against a root finder; slope against finite differences."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.mechanics.bar_steel import (
    BarSteel,
    BarSteels,
    bar_strain_at_stress,
    bar_stress,
)

STEEL = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
GENERAL = BarSteel(420.0, 620.0, 0.008, 0.1, 200e3, hardening_exponent=3.5)


@pytest.mark.parametrize("steel", [STEEL, GENERAL], ids=["parabola", "power"])
@pytest.mark.parametrize("part", [0.02, 0.3, 0.7, 0.98])
def test_inverse_is_the_root(steel: BarSteel, part: float) -> None:
    stress = steel.yield_strength + part * (steel.tensile_strength - steel.yield_strength)
    root = brentq(
        lambda strain: float(bar_stress(strain, steel)) - stress,
        steel.hardening_strain,
        steel.ultimate_strain,
        xtol=1e-15,
    )
    assert bar_strain_at_stress(stress, steel) == pytest.approx(root, rel=1e-9)


@pytest.mark.parametrize("steel", [STEEL, GENERAL], ids=["parabola", "power"])
def test_initial_hardening_modulus(steel: BarSteel) -> None:
    # P = E_sh (eps_su - eps_sh) / (fu - fy): Mander, Priestley and Park, J. Struct. Eng. 114 (1988)
    step = 1e-7
    rise = float(bar_stress(steel.hardening_strain + step, steel)) - steel.yield_strength
    gain = steel.tensile_strength - steel.yield_strength
    exponent = rise / step * (steel.ultimate_strain - steel.hardening_strain) / gain
    assert exponent == pytest.approx(steel.hardening_exponent, rel=1e-4)


def test_arrays_of_steels_match_one_by_one() -> None:
    yields = np.array([400.0, 469.0, 520.0])
    steels = BarSteels(yields, 655.0, 0.0115, 0.09, 200e3)
    strain = np.array([[0.001], [0.05], [0.09]])
    expected = [
        [
            float(bar_stress(float(one[0]), BarSteel(float(fy), 655.0, 0.0115, 0.09, 200e3)))
            for fy in yields
        ]
        for one in strain
    ]
    np.testing.assert_allclose(bar_stress(strain, steels), expected, rtol=1e-14)
