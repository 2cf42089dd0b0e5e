"""Moment-curvature against closed forms and a plain integration over many explicit fibres."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise
from typing import TypeAlias

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.concrete_law import (
    elastic_concrete_law,
    popovics_concrete_law,
    tabulated_concrete_law,
    unconfined_concrete_law,
)
from jacketcheck.mechanics.moment_curvature import curvature_range, moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

Law: TypeAlias = Callable[[Floats], Floats]
STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)
PLASTIC = BarSteel(400.0, 400.0, 0.01, 0.15, 200e3)
ELASTIC = BarSteel(2000.0, 2000.0, 0.02, 0.15, 200e3)


def test_ring_of_yielding_bars() -> None:
    # G-07: M / (As fy r) = 2 / pi for many bars and no concrete
    air = elastic_concrete_law(1e-9)
    bars = BarGroup.ring(400, radius=500.0, area=100.0, steel=PLASTIC)
    section = CircularSection((ConcreteZone("core", 1100.0, air),), (bars,))
    response = moment_curvature(section, axial_load=0.0, curvature=np.array([1e-4, 2e-4]))
    moment = response.moment[-1]
    assert moment / (400 * 100.0 * 400.0 * 500.0) == pytest.approx(2.0 / np.pi, rel=1e-3)
    assert response.centre_strain[-1] == pytest.approx(0.0, abs=2e-5)


def test_uncracked_section_is_a_transformed_section() -> None:
    # all in compression: N = E A eps and M = E I phi with net concrete and n-fold bars
    law = elastic_concrete_law(30e3, tension=True)
    bars = BarGroup.ring(12, radius=400.0, area=800.0, steel=ELASTIC)
    section = CircularSection((ConcreteZone("core", 1000.0, law),), (bars,))
    area = np.pi * 500.0**2 * 30e3 + 12 * 800.0 * (200e3 - 30e3)
    inertia = np.pi * 500.0**4 / 4.0 * 30e3 + 6 * 800.0 * 400.0**2 * (200e3 - 30e3)
    response = moment_curvature(
        section, axial_load=5e6, curvature=np.array([0.0, 1e-7, 3e-7]), strips=400
    )
    assert response.converged.all()
    assert response.centre_strain == pytest.approx(5e6 / area, rel=1e-4)
    assert response.moment == pytest.approx(inertia * response.curvature, rel=1e-4, abs=1e3)


def test_cracked_elastic_section() -> None:
    # a disc that carries no tension and a fine ring of elastic bars; numbers by quadrature
    modulus, radius, ring, steel_area = 30e3, 500.0, 420.0, 200 * 50.0
    law = elastic_concrete_law(modulus)
    bars = BarGroup.ring(200, radius=ring, area=50.0, steel=ELASTIC)
    section = CircularSection((ConcreteZone("core", 2.0 * radius, law),), (bars,))
    angles = np.linspace(0.0, 2.0 * np.pi, 4001)[:-1]
    y_bar = ring * np.cos(angles)
    y = np.linspace(-radius, radius, 200_001)
    width = 2.0 * np.sqrt(np.maximum(radius**2 - y**2, 0.0))

    def first_moment(axis: float) -> float:
        concrete = np.trapezoid(width * np.maximum(y - axis, 0.0), y) * modulus
        net = np.where(y_bar > axis, 200e3 - modulus, 200e3) * (y_bar - axis)
        return float(concrete + steel_area * np.mean(net))

    axis = brentq(first_moment, -radius, radius)
    net = np.where(y_bar > axis, 200e3 - modulus, 200e3) * (y_bar - axis) * y_bar
    concrete = np.trapezoid(width * np.maximum(y - axis, 0.0) * y, y) * modulus
    stiffness = concrete + steel_area * np.mean(net)
    response = moment_curvature(
        section, axial_load=0.0, curvature=np.array([1e-6, 2e-6]), strips=400
    )
    assert response.moment / response.curvature == pytest.approx(stiffness, rel=1e-3)
    neutral_axis = -response.centre_strain / response.curvature
    assert neutral_axis == pytest.approx(axis, abs=0.5)


@lru_cache
def _fibres(diameters: tuple[float, ...]) -> list[tuple[Floats, Floats]]:
    """Positions and areas of 43 200 fibres on polar rings, zone by zone from the inside.

    Those at either side of the axis along the curvature stand at one height and count as one.
    """
    edges = [0.0, *(0.5 * diameter for diameter in diameters)]
    theta = np.linspace(0.0, np.pi, 121)
    sides = np.where((theta == 0.0) | (theta == np.pi), 1.0, 2.0)
    found = []
    for inner, outer in pairwise(edges):
        r = np.linspace(inner, outer, 61)
        mid = (2.0 / 3.0) * np.diff(r**3) / np.diff(r**2)
        area = np.outer(0.5 * np.diff(r**2) * np.radians(1.5), sides)
        found.append((np.outer(mid, np.cos(theta)).ravel(), area.ravel()))
    return found


@lru_cache(maxsize=None)
def _of_concrete(
    diameters: tuple[float, ...], laws: tuple[Law, ...], curvature: float, strain: float
) -> tuple[float, float]:
    """Force and moment of the fibres, the same whatever the load and the bars."""
    force = moment = 0.0
    for (y, area), law in zip(_fibres(diameters), laws, strict=True):
        stress = area * law(strain + curvature * y)
        force += float(stress.sum())
        moment += float(y @ stress)
    return force, moment


def _explicit(
    section: CircularSection,
    laws: tuple[Law, ...],
    axial_load: float,
    curvature: float,
    angle: float,
) -> tuple[float, float]:
    """Moment and centre strain by explicit fibres, without tables."""
    diameters = tuple(float(zone.outer_diameter) for zone in section.zones)
    bars = section.bar_position(angle)

    def forces(strain: float) -> tuple[float, float]:
        force, moment = _of_concrete(diameters, laws, curvature, strain)
        at_bar = strain + curvature * bars
        displaced = np.zeros_like(at_bar)
        for index, law in enumerate(laws):
            inside = section.bar_zone == index
            displaced[inside] = law(at_bar[inside])
        steel = -np.asarray(bar_stress(-at_bar, STEEL))
        limit = section.bar_stress_limit
        steel = section.bar_area * (np.clip(steel, -limit, limit) - displaced)
        return force + float(steel.sum()), moment + float(bars @ steel)

    trials = np.linspace(-0.03, 0.03, 25).tolist()
    excess = np.array([forces(trial)[0] - axial_load for trial in trials])
    start = int(np.flatnonzero((excess[:-1] <= 0.0) & (excess[1:] > 0.0))[0])
    strain = brentq(
        lambda trial: forces(trial)[0] - axial_load, trials[start], trials[start + 1], xtol=1e-12
    )
    return forces(strain)[1], float(strain)


def _core(strain: Floats) -> Floats:
    """Popovics with f'cc 47 MPa at 0.0077, Ec 27.4 GPa, written out."""
    r = 27400.0 / (27400.0 - 47.0 / 0.0077)
    x = np.maximum(strain, 0.0) / 0.0077
    return np.asarray(47.0 * x * r / (r - 1.0 + x**r))


def _shell(strain: Floats) -> Floats:
    """Popovics with 30 MPa at 0.002 up to 0.004, then a line to zero at 0.005."""
    r = 27400.0 / (27400.0 - 30.0 / 0.002)

    def curve(eps: Floats) -> Floats:
        x = np.maximum(eps, 0.0) / 0.002
        return np.asarray(30.0 * x * r / (r - 1.0 + x**r))

    line = curve(np.array(0.004)) * np.clip((0.005 - strain) / 0.001, 0.0, 1.0)
    return np.where(strain <= 0.004, curve(strain), line)


def _grout(strain: Floats) -> Floats:
    """Elastic to 50 MPa at 0.002, brittle at 0.003."""
    return np.interp(strain, [0.0, 0.002, 0.003, 0.00302], [0.0, 50.0, 50.0, 0.0], right=0.0)


def _repaired_base(limits: Floats) -> CircularSection:
    core = popovics_concrete_law(
        peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27400.0, ultimate_strain=0.02
    )
    shell = unconfined_concrete_law(strength=30.0, elastic_modulus=27400.0)
    grout = tabulated_concrete_law(
        np.array([0.0, 0.002, 0.003, 0.00302]),
        np.array([0.0, 50.0, 50.0, 0.0]),
        ultimate_strain=0.003,
    )
    zones = (
        ConcreteZone("core", 1080.0, core),
        ConcreteZone("cover", 1200.0, shell),
        ConcreteZone("grout", 1400.0, grout),
    )
    old = BarGroup.ring(16, radius=510.0, area=819.0, steel=STEEL, stress_limit=limits)
    new = BarGroup.ring(8, radius=650.0, area=645.0, steel=STEEL, first_angle=0.2)
    return CircularSection(zones, (old, new))


@pytest.mark.parametrize("angle", [0.0, 3.5])
@pytest.mark.parametrize("axial_load", [-1e6, 0.0, 4e6, 15e6])
def test_explicit_fibres(axial_load: float, angle: float) -> None:
    # fractured, slipping and whole bars, three concretes, any direction
    limits = np.tile([np.inf, np.inf, 250.0, 0.0], 4)
    limits[:3] = 0.0
    section = _repaired_base(limits)
    curvature = np.array([3e-7, 2e-6, 1e-5, 4e-5])
    rough, fine = (
        moment_curvature(
            section, axial_load=axial_load, curvature=curvature, angle=angle, strips=strips
        )
        for strips in (200, 1600)
    )
    assert rough.converged.all()
    assert not rough.bar_fractured.any()
    for row, phi in enumerate(curvature.tolist()):
        moment, strain = _explicit(section, (_core, _shell, _grout), axial_load, phi, angle)
        # the grout is brittle, so that whole strips drop out
        assert rough.moment[row] == pytest.approx(moment, rel=4e-3)
        assert fine.moment[row] == pytest.approx(moment, rel=1e-3)
        assert fine.centre_strain[row] == pytest.approx(strain, abs=1e-5)


def test_more_strips_change_little() -> None:
    section = _repaired_base(np.full(16, np.inf))
    curvature = curvature_range(section, count=40)
    rough = moment_curvature(section, axial_load=4e6, curvature=curvature, strips=200)
    fine = moment_curvature(section, axial_load=4e6, curvature=curvature, strips=2000)
    assert rough.moment == pytest.approx(fine.moment, rel=3e-3)


def test_statics_of_the_reported_stresses() -> None:
    """The moment about the other axis closes with bars on one side only."""
    law = elastic_concrete_law(30e3)
    bars = BarGroup.at(
        np.array([300.0, 0.0, -300.0]),
        np.array([0.0, 400.0, 0.0]),
        area=1000.0,
        steel=ELASTIC,
    )
    section = CircularSection((ConcreteZone("core", 1000.0, law),), (bars,))
    response = moment_curvature(section, axial_load=1e6, curvature=np.array([1e-6]))
    concrete = law.stress_at(-response.bar_strain[0])
    net = -response.bar_stress[0] - concrete
    expected = float(np.sum(net * 1000.0 * np.array([0.0, 400.0, 0.0])))
    assert response.transverse_moment[0] == pytest.approx(expected, rel=1e-9)


def test_fractured_bars_stay_fractured_and_carry_nothing() -> None:
    brittle = BarSteel(475.0, 655.0, 0.0115, 0.03, 200e3)
    core = popovics_concrete_law(
        peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27400.0, ultimate_strain=0.03
    )
    bars = BarGroup.ring(16, radius=510.0, area=819.0, steel=brittle)
    section = CircularSection((ConcreteZone("core", 1200.0, core),), (bars,))
    response = moment_curvature(section, axial_load=2e6, curvature=np.linspace(1e-6, 6e-5, 60))
    fractured = response.bar_fractured
    assert fractured[-1].any()
    assert not fractured[0].any()
    assert np.all(np.diff(fractured.astype(int), axis=0) >= 0)
    assert np.all(response.bar_stress[fractured] == 0.0)
    first = int(np.argmax(fractured.any(axis=1)))
    assert np.max(response.bar_strain[first - 1]) <= 0.03
    # symmetric bars break in pairs, and the moment falls
    assert fractured[first].sum() in (1, 2)
    assert response.moment[first] < response.moment[first - 1]
    # an intact section with the broken bars left out gives the same moment
    row = first
    kept = ~fractured[row]
    rest = BarGroup.at(bars.x[kept], bars.y[kept], area=819.0, steel=brittle)
    holes = BarGroup.at(bars.x[~kept], bars.y[~kept], area=819.0, steel=brittle, stress_limit=0.0)
    without = CircularSection(section.zones, (rest, holes))
    again = moment_curvature(without, axial_load=2e6, curvature=response.curvature[[row]])
    assert again.moment[0] == pytest.approx(response.moment[row], rel=1e-5)


def test_no_equilibrium_is_reported() -> None:
    shell = unconfined_concrete_law(strength=30.0, elastic_modulus=27400.0)
    bars = BarGroup.ring(8, radius=450.0, area=500.0, steel=STEEL)
    section = CircularSection((ConcreteZone("core", 1000.0, shell),), (bars,))
    response = moment_curvature(section, axial_load=12e6, curvature=np.linspace(1e-7, 3e-5, 50))
    end = response.valid_count
    assert 0 < end < 50
    lost = ~response.converged
    assert lost[end]
    assert np.all(response.moment[lost] == 0.0)
    assert np.all(np.isinf(response.core_compressive_strain[lost]))
    assert np.all(np.isinf(response.bar_strain[lost]))
    # far beyond the squash load nothing balances at all
    crushed = moment_curvature(section, axial_load=100e6)
    assert crushed.valid_count == 0
    assert not crushed.converged.any()
