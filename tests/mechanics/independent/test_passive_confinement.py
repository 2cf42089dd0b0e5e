"""The passive curve against a scalar loop, and as a table for section analysis."""

from __future__ import annotations

from math import sqrt

import numpy as np
import pytest

from jacketcheck.mechanics.core_concrete import CoreConcrete
from jacketcheck.mechanics.dilation import dilation_equilibrium
from jacketcheck.mechanics.passive_confinement import PassiveConfinement, passive_confinement
from jacketcheck.mechanics.restraint import Restraint

STRENGTH, MODULUS, RADIUS, COMPLIANCE, YIELD_PRESSURE = 30.0, 27_386.0, 600.0, 0.3, 2.5


def _curve(*, play: float = 0.0, energy: float = 0.02, limit: float = 0.01) -> PassiveConfinement:
    return passive_confinement(
        core=CoreConcrete(STRENGTH, MODULUS),
        restraint=Restraint(
            inner_radius=RADIUS,
            core_radius=RADIUS,
            radial_compliance=COMPLIANCE,
            sleeve_compliance=COMPLIANCE,
            yield_pressure=YIELD_PRESSURE,
            radial_play=play,
        ),
        energy_ultimate_strain=energy,
        hoop_strain_limit=limit,
    )


def _scalar_stress(eps: float, play: float) -> tuple[float, float]:
    """Pressure and stress by plain bisection on the pressure, one strain at a time."""

    def stress_and_excess(pressure: float) -> tuple[float, float]:
        x = pressure / STRENGTH
        f_cc = STRENGTH * (-1.254 + 2.254 * sqrt(1.0 + 7.94 * x) - 2.0 * x)
        eps_cc = 0.002 * (5.0 * f_cc / STRENGTH - 4.0)
        r = MODULUS / (MODULUS - f_cc / eps_cc)
        f_c = f_cc * (eps / eps_cc) * r / (r - 1.0 + (eps / eps_cc) ** r)
        lateral = (MODULUS * eps - f_c) / (2.0 * (MODULUS / STRENGTH - 500.0) * f_c)
        return f_c, lateral * RADIUS - play - pressure * COMPLIANCE

    low, high = 0.0, YIELD_PRESSURE
    if stress_and_excess(high)[1] >= 0.0:
        return high, stress_and_excess(high)[0]
    for _ in range(80):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if stress_and_excess(middle)[1] > 0.0 else (low, middle)
    return low, stress_and_excess(low)[0]


@pytest.mark.parametrize("play", [0.0, 0.5])
def test_curve_point_by_point(play: float) -> None:
    curve = _curve(play=play)
    strains = np.asarray(curve.state.axial_strain)
    expected = np.array([_scalar_stress(float(eps), play) for eps in strains[1:]])
    pressure, stress = (
        np.asarray(curve.state.sleeve_pressure),
        np.asarray(curve.state.concrete_stress),
    )
    assert pressure[1:] == pytest.approx(expected[:, 0], abs=1e-8)
    assert stress[1:] == pytest.approx(expected[:, 1], rel=1e-8)
    assert stress[0] == 0.0


@pytest.mark.parametrize("play", [0.0, 0.5])
def test_law_interpolates_the_curve(play: float) -> None:
    curve = _curve(play=play)
    fine = np.linspace(1e-4, 0.079, 997)
    exact = [_scalar_stress(float(eps), play)[1] for eps in fine]
    # 150 strains: chords of the rounded parts stay within 0.5 % of the strength
    assert curve.law().stress_at(fine) == pytest.approx(
        np.array(exact), abs=0.005 * curve.law().strength
    )


def test_a_late_sleeve_gives_less() -> None:
    snug, tight = _curve(play=0.8), _curve()
    strains = np.asarray(tight.state.axial_strain)
    middle = (strains > 0.002) & (strains < 0.005)
    drop = np.subtract(tight.state.concrete_stress, snug.state.concrete_stress)
    assert np.all(drop[middle] > 0.0)
    assert snug.hoop_limit_ultimate_strain > tight.hoop_limit_ultimate_strain


@pytest.mark.parametrize(
    ("energy", "limit", "governs"), [(0.003, 0.01, "energy"), (0.05, 0.001, "hoop limit")]
)
def test_the_smaller_ultimate_strain_governs(energy: float, limit: float, governs: str) -> None:
    curve = _curve(energy=energy, limit=limit)
    assert curve.energy_ultimate_strain == energy
    at_limit = dilation_equilibrium(
        curve.hoop_limit_ultimate_strain,
        core=CoreConcrete(STRENGTH, MODULUS),
        restraint=Restraint(RADIUS, RADIUS, COMPLIANCE, COMPLIANCE, YIELD_PRESSURE),
    )
    assert at_limit.sleeve_hoop_strain == pytest.approx(limit, abs=1e-10)
    expected = energy if governs == "energy" else curve.hoop_limit_ultimate_strain
    assert curve.ultimate_strain == expected
    assert curve.law().ultimate_strain == expected
