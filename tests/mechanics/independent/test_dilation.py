"""Dilation equilibrium against scalar root finding on the equations as their sources print them."""

from __future__ import annotations

import itertools
from math import pi, sqrt

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.mechanics.concrete_properties import elastic_modulus_mander
from jacketcheck.mechanics.confinement import confined_stress
from jacketcheck.mechanics.core_concrete import (
    CoreConcrete,
    dilation_coefficient,
    printed_dilation_coefficient,
    secant_lateral_strain,
)
from jacketcheck.mechanics.dilation import (
    axial_strain_at_hoop_strain,
    axial_strain_at_sleeve_yield,
    dilation_equilibrium,
)
from jacketcheck.mechanics.hoop import radial_compliance, sleeve_compliance, yield_pressure
from jacketcheck.mechanics.restraint import Restraint

STRAINS = (0.0005, 0.0015, 0.002, 0.003, 0.005, 0.009, 0.02, 0.04)


def _printed_lateral_strain(eps: float, pressure: float, strength: float, modulus: float) -> float:
    """Lateral strain step by step as Mander et al. (1988) and Spoelstra and Monti (1999) go."""
    x = pressure / strength
    f_cc = strength * (-1.254 + 2.254 * sqrt(1.0 + 7.94 * x) - 2.0 * x)
    eps_cc = 0.002 * (1.0 + 5.0 * (f_cc / strength - 1.0))
    r = modulus / (modulus - f_cc / eps_cc)
    relative = eps / eps_cc
    f_c = f_cc * relative * r / (r - 1.0 + relative**r)
    beta = modulus / strength - 1.0 / 0.002
    lateral: float = (modulus * eps - f_c) / (2.0 * beta * f_c)
    return lateral


def _scalar_sleeve_pressure(
    *, eps: float, strength: float, modulus: float, radius: float, compliance: float, p_yield: float
) -> float:
    """Pressure on a sleeve that bears on the core directly, by Brent's method on [0, p_y]."""

    def excess(pressure: float) -> float:
        lateral = _printed_lateral_strain(eps, pressure, strength, modulus)
        return lateral * radius - pressure * compliance

    return p_yield if excess(p_yield) > 0.0 else brentq(excess, 0.0, p_yield, xtol=1e-13)


def test_elastic_plastic_sleeve_point_by_point() -> None:
    designs = list(itertools.product(STRAINS, (22.0, 30.0, 48.0), (300.0, 900.0), (3.0, 9.0)))
    eps, strength, radius, thickness = np.array(designs).T
    modulus = np.asarray(elastic_modulus_mander(strength))
    compliance = 1.3 * radius**2 / (200e3 * thickness)
    p_yield = 300.0 * thickness / radius
    state = dilation_equilibrium(
        eps,
        core=CoreConcrete(strength, modulus),
        restraint=Restraint(
            inner_radius=radius,
            core_radius=radius,
            radial_compliance=compliance,
            sleeve_compliance=compliance / 1.3,
            yield_pressure=p_yield,
        ),
    )
    expected = [
        _scalar_sleeve_pressure(
            eps=eps[i],
            strength=strength[i],
            modulus=modulus[i],
            radius=radius[i],
            compliance=compliance[i],
            p_yield=p_yield[i],
        )
        for i in range(eps.size)
    ]
    assert state.sleeve_pressure == pytest.approx(np.array(expected), abs=1e-8)
    assert state.core_pressure == pytest.approx(state.sleeve_pressure)
    assert 0 < np.count_nonzero(state.sleeve_yielded) < eps.size
    assert np.array_equal(state.sleeve_yielded, np.isclose(expected, p_yield, rtol=1e-12))
    assert state.sleeve_hoop_strain - state.sleeve_plastic_strain == pytest.approx(
        np.array(expected) * radius / (200e3 * thickness), abs=1e-11
    )


@pytest.mark.parametrize("play", [0.0, 0.4])
@pytest.mark.parametrize("hoop_stiffness", [0.0, 450.0])
def test_annulus_play_and_column_hoops_point_by_point(play: float, hoop_stiffness: float) -> None:
    strength, modulus, inner, core_radius, compliance, p_yield = 28.0, 26e3, 640.0, 580.0, 0.35, 2.1
    hoop_yield = 0.9

    def pressures(lateral: float) -> tuple[float, float]:
        sleeve = min(max(lateral * core_radius - play, 0.0) / compliance, p_yield)
        return sleeve, min(lateral * hoop_stiffness, hoop_yield)

    def excess(lateral: float, eps: float) -> float:
        sleeve, hoops = pressures(lateral)
        total = sleeve * inner / core_radius + hoops
        return _printed_lateral_strain(eps, total, strength, modulus) - lateral

    state = dilation_equilibrium(
        np.array(STRAINS),
        core=CoreConcrete(strength, modulus),
        restraint=Restraint(
            inner_radius=inner,
            core_radius=core_radius,
            radial_compliance=compliance,
            sleeve_compliance=0.3,
            yield_pressure=p_yield,
            radial_play=play,
            column_hoop_stiffness=hoop_stiffness,
            column_hoop_yield_pressure=hoop_yield,
        ),
    )
    expected = np.array([brentq(excess, 0.0, 1.0, args=(eps,), xtol=1e-14) for eps in STRAINS])
    assert state.lateral_strain == pytest.approx(expected, abs=1e-11)
    sleeve, hoops = np.array([pressures(lateral) for lateral in expected]).T
    assert state.sleeve_pressure == pytest.approx(sleeve, abs=1e-7)
    assert state.column_hoop_pressure == pytest.approx(hoops, abs=1e-8)
    assert np.array_equal(state.sleeve_engaged, expected * core_radius > play)
    assert np.array_equal(state.sleeve_yielded, sleeve == p_yield)
    assert np.array_equal(
        state.column_hoops_yielded, (hoops == hoop_yield) & (hoop_stiffness > 0.0)
    )


def test_stress_is_that_of_the_curve_at_the_same_pressure() -> None:
    eps = np.linspace(1e-4, 0.04, 41)
    state = dilation_equilibrium(eps, core=_core(), restraint=_sleeve(6.0))
    stress = confined_stress(
        eps,
        lateral_pressure=state.core_pressure,
        unconfined_strength=30.0,
        elastic_modulus=float(elastic_modulus_mander(30.0)),
    )
    assert state.concrete_stress == pytest.approx(stress, rel=1e-8)
    lateral = secant_lateral_strain(
        eps,
        axial_stress=stress,
        elastic_modulus=float(elastic_modulus_mander(30.0)),
        dilation_coefficient=dilation_coefficient(
            30.0, elastic_modulus=elastic_modulus_mander(30.0)
        ),
    )
    assert state.lateral_strain == pytest.approx(lateral, abs=1e-10)


@pytest.mark.parametrize("play", [0.0, 0.3])
def test_strain_at_first_yield_by_bisection_on_the_axial_strain(play: float) -> None:
    restraint = _sleeve(6.0, play=play)
    low, high = 0.0, 0.05
    for _ in range(60):
        middle = 0.5 * (low + high)
        yielded = dilation_equilibrium(middle, core=_core(), restraint=restraint).sleeve_yielded
        low, high = (low, middle) if yielded else (middle, high)
    strain = axial_strain_at_sleeve_yield(core=_core(), restraint=restraint)
    assert strain == pytest.approx(high, abs=1e-10)


@pytest.mark.parametrize("hoop_strain", [0.0004, 0.001, 0.0015, 0.004, 0.02])
def test_axial_strain_at_a_hoop_strain_by_root_finding(hoop_strain: float) -> None:
    restraint = _sleeve(6.0, play=0.2)

    def short(eps: float) -> float:
        state = dilation_equilibrium(eps, core=_core(), restraint=restraint)
        return float(state.sleeve_hoop_strain) - hoop_strain

    root = brentq(short, 1e-4, 0.2, xtol=1e-13)
    strain = axial_strain_at_hoop_strain(hoop_strain, core=_core(), restraint=restraint)
    assert strain == pytest.approx(root, abs=1e-9)


@pytest.mark.parametrize("strength", [20.0, 30.0, 45.0])
def test_unconfined_concrete_regains_its_volume_at_the_peak(strength: float) -> None:
    core = CoreConcrete(strength, elastic_modulus_mander(strength))
    lateral = core.lateral_strain(0.002, pressure=0.0)
    assert 0.002 - 2.0 * lateral == pytest.approx(0.0, abs=1e-15)


@pytest.mark.parametrize("strength", [20.0, 30.0, 45.0])
def test_printed_coefficient_is_the_general_one_for_its_own_modulus(strength: float) -> None:
    general = dilation_coefficient(strength, elastic_modulus=5700.0 * sqrt(strength))
    assert printed_dilation_coefficient(strength) == pytest.approx(general, rel=1e-12)


def test_printed_coefficient_understates_dilation_with_a_lower_modulus() -> None:
    modulus = elastic_modulus_mander(30.0)
    own = CoreConcrete(30.0, modulus)
    printed = CoreConcrete(30.0, modulus, beta=printed_dilation_coefficient(30.0))
    restraint = _sleeve(6.0)
    consistent = dilation_equilibrium(0.004, core=own, restraint=restraint)
    lower = dilation_equilibrium(0.004, core=printed, restraint=restraint)
    assert lower.sleeve_hoop_strain < consistent.sleeve_hoop_strain


@pytest.mark.parametrize(
    ("seam_stiffness", "least", "most"),
    [pytest.param(np.inf, 0.13, 0.20, id="stiff"), pytest.param(16e3, 0.15, 0.25, id="typical")],
)
def test_doubling_the_thickness_cuts_the_hoop_strain_by_about_a_fifth(
    seam_stiffness: float, least: float, most: float
) -> None:
    # 12 mm of splice plate over 150 mm: 16 kN/mm per mm; a yield pressure that none reaches
    designs = itertools.product((25.0, 30.0, 40.0), (400.0, 600.0, 900.0), (4.0, 6.0, 10.0))
    strength, radius, thickness = np.array(list(designs)).T
    eps = np.array([0.004, 0.006, 0.01])[:, None]

    def hoop_strain(wall: Floats) -> Floats:
        inner = radius + 50.0
        shell = sleeve_compliance(inner_radius=inner, thickness=wall, elastic_modulus=200e3)
        whole = radial_compliance(
            inner_radius=inner,
            core_radius=radius,
            thickness=wall,
            elastic_modulus=200e3,
            seam_stiffness=seam_stiffness,
            grout_modulus=25e3,
        )
        state = dilation_equilibrium(
            eps,
            core=CoreConcrete(strength, elastic_modulus_mander(strength)),
            restraint=Restraint(inner, radius, whole, shell, 1.5 * strength),
        )
        assert not np.any(state.sleeve_yielded)
        return np.asarray(state.sleeve_hoop_strain)

    cut = 1.0 - hoop_strain(2.0 * thickness) / hoop_strain(thickness)
    assert np.all(cut > least)
    assert np.all(cut < most)


def test_each_evaluation_counts() -> None:
    # speed without a clock: corners and root of 2000 random designs in few passes over the array
    rng = np.random.default_rng(20_240_611)
    count = 2000
    radius = rng.uniform(300.0, 1200.0, count)
    strength = rng.uniform(20.0, 50.0, count)
    thickness = rng.uniform(3.0, 20.0, count)
    calls = 0

    class Counting(CoreConcrete):
        def lateral_strain(self, axial_strain: Real, *, pressure: Real) -> Real:
            nonlocal calls
            calls += 1
            return super().lateral_strain(axial_strain, pressure=pressure)

    dilation_equilibrium(
        10.0 ** rng.uniform(-4.0, -1.3, count),
        core=Counting(strength, elastic_modulus_mander(strength)),
        restraint=Restraint(
            inner_radius=radius,
            core_radius=radius,
            radial_compliance=1.5 * radius**2 / (200e3 * thickness),
            sleeve_compliance=radius**2 / (200e3 * thickness),
            yield_pressure=350.0 * thickness / radius,
            column_hoop_stiffness=500.0,
            column_hoop_yield_pressure=1.0,
        ),
    )
    assert calls <= 25


def _core() -> CoreConcrete:
    return CoreConcrete(30.0, elastic_modulus_mander(30.0))


def _sleeve(thickness: float, *, play: float = 0.0) -> Restraint:
    shell = sleeve_compliance(inner_radius=640.0, thickness=thickness, elastic_modulus=200e3)
    whole = radial_compliance(
        inner_radius=640.0,
        core_radius=600.0,
        thickness=thickness,
        elastic_modulus=200e3,
        seam_stiffness=20e3 * pi,
        grout_modulus=25e3,
    )
    return Restraint(
        inner_radius=640.0,
        core_radius=600.0,
        radial_compliance=whole,
        sleeve_compliance=shell,
        yield_pressure=yield_pressure(300.0, thickness=thickness, inner_radius=640.0),
        radial_play=play,
        column_hoop_stiffness=400.0,
        column_hoop_yield_pressure=0.8,
    )
