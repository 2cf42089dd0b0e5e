"""Moment at a given extreme strain against moment-curvature, closed forms and fibre sums."""

from __future__ import annotations

from typing import Final

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.concrete_law import (
    elastic_concrete_law,
    popovics_concrete_law,
    unconfined_concrete_law,
)
from jacketcheck.mechanics.moment_curvature import moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
from jacketcheck.mechanics.section_geometry import disc_second_moment
from jacketcheck.mechanics.section_limits import point_at_extreme_strain
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain

STEEL: Final = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
CORE: Final = popovics_concrete_law(
    peak_stress=50.0, peak_strain=0.008, elastic_modulus=27e3, ultimate_strain=0.02
)
RING: Final = unconfined_concrete_law(strength=55.0, elastic_modulus=35e3)


def _section(stress_limit: Floats | float = np.inf) -> CircularSection:
    return CircularSection(
        (ConcreteZone("column", 1200.0, CORE), ConcreteZone("ring", 1500.0, RING)),
        (
            BarGroup.ring(20, radius=530.0, area=645.0, steel=STEEL, stress_limit=stress_limit),
            BarGroup.ring(16, radius=680.0, area=510.0, steel=STEEL),
        ),
    )


@pytest.mark.parametrize("axial_load", [0.0, 2.7e6, 12e6])
@pytest.mark.parametrize("strain", [0.001, 0.003])
@pytest.mark.parametrize("angle", [0.0, 1.0])
def test_moment_curvature_passes_through_the_same_point(
    axial_load: float, strain: float, angle: float
) -> None:
    section = _section(stress_limit=np.where(np.arange(20) < 4, 0.0, np.inf))
    curvature = np.linspace(1e-7, 2e-5, 400)
    response = moment_curvature(
        section, axial_load=axial_load, curvature=curvature, angle=angle, strips=1000
    )
    expected = point_at_extreme_strain(response, strain=strain).moment
    found = moment_at_extreme_strain(
        section, strain=strain, axial_load=axial_load, angle=np.array([angle])
    )
    assert found[0] == pytest.approx(expected, rel=1e-3)


def test_elastic_disc_with_the_neutral_axis_at_its_far_edge() -> None:
    """Stress from E ε to 0 across the disc: P = E ε A/2 and M = E ε I/D."""
    modulus, strain, diameter = 30e3, 0.001, 1000.0
    law = elastic_concrete_law(modulus)
    section = CircularSection((ConcreteZone("disc", diameter, law),), ())
    axial_load = 0.5 * modulus * strain * np.pi * diameter**2 / 4.0
    expected = modulus * strain * float(disc_second_moment(diameter)) / diameter
    found = moment_at_extreme_strain(
        section, strain=strain, axial_load=axial_load, angle=np.array([0.3])
    )
    assert found[0] == pytest.approx(expected, rel=1e-3)


def _fibre_moment(
    section: CircularSection, strain: float, axial_load: float, limit: float
) -> float:
    """Sum over a fine grid of fibres, the ring's stresses scaled down to a force."""
    radius = 0.5 * section.diameter
    line = np.linspace(-radius, radius, 1201)
    middle = 0.5 * (line[1:] + line[:-1])
    x, y = np.meshgrid(middle, middle)
    fibre, distance = (line[1] - line[0]) ** 2, np.hypot(x, y)
    inside, ring = distance < 600.0, (distance >= 600.0) & (distance < radius)

    def forces(curvature: float) -> tuple[float, float]:
        plane = strain - curvature * (radius - y)
        core = CORE.stress_at(plane[inside]) * fibre
        outer = RING.stress_at(plane[ring]) * fibre
        scale = min(1.0, limit / max(float(outer.sum()), 1e-9))
        at_bar = strain - curvature * (radius - section.bar_y)
        net = -np.asarray(bar_stress(-at_bar, STEEL))
        within = section.bar_zone == 0
        net -= np.where(within, CORE.stress_at(at_bar), RING.stress_at(at_bar))
        force = core.sum() + scale * outer.sum() + net @ section.bar_area
        moment = core @ y[inside] + scale * (outer @ y[ring])
        return float(force), float(moment + (net * section.bar_y) @ section.bar_area)

    curvature = brentq(
        lambda value: forces(value)[0] - axial_load,
        strain / (2.9 * radius),
        strain / (0.1 * radius),
    )
    return forces(float(curvature))[1]


@pytest.mark.parametrize("limit", [0.0, 2e6, 5e6, np.inf])
def test_limited_ring_against_a_grid_of_fibres(limit: float) -> None:
    section, axial_load = _section(), 2.7e6
    found = moment_at_extreme_strain(
        section,
        strain=0.003,
        axial_load=axial_load,
        angle=np.array([0.5 * np.pi]),
        outer_zone_limit=np.array([limit]),
    )
    assert found[0] == pytest.approx(_fibre_moment(section, 0.003, axial_load, limit), rel=2e-3)


def test_a_tighter_ring_never_carries_more() -> None:
    limits = np.linspace(0.0, 9e6, 40)
    found = moment_at_extreme_strain(
        _section(),
        strain=0.003,
        axial_load=2.7e6,
        angle=np.zeros(limits.size),
        outer_zone_limit=limits,
    )
    assert np.all(np.diff(found) >= -1e-4 * found[1:])


def test_cases_do_not_see_one_another() -> None:
    section, angle = _section(), np.linspace(0.0, 6.0, 13)
    limit = np.random.default_rng(4).uniform(0.0, 700.0, (13, 36))
    together = moment_at_extreme_strain(
        section, strain=0.003, axial_load=2e6, angle=angle, stress_limit=limit
    )
    alone = [
        moment_at_extreme_strain(
            section,
            strain=0.003,
            axial_load=2e6,
            angle=angle[[index]],
            stress_limit=limit[[index]],
        )[0]
        for index in range(13)
    ]
    # each stops once all are within the tolerance, some of them sooner when alone
    np.testing.assert_allclose(together, alone, rtol=1e-5)


@pytest.mark.parametrize("axial_load", [-3e7, 3e8])
def test_no_equilibrium_is_no_number(axial_load: float) -> None:
    found = moment_at_extreme_strain(
        _section(), strain=0.003, axial_load=axial_load, angle=np.zeros(3)
    )
    assert np.isnan(found).all()


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("strain", {"strain": 0.0}),
        ("strain", {"strain": np.nan}),
        ("axial_load", {"axial_load": np.nan}),
        ("angle", {"angle": np.array([np.nan])}),
        ("stress_limit", {"stress_limit": np.full(36, -1.0)}),
        ("stress_limit", {"stress_limit": np.full(36, np.nan)}),
        ("stress_limit", {"stress_limit": np.zeros(35)}),
        ("outer_zone_limit", {"outer_zone_limit": np.array([-1.0])}),
        ("outer_zone_limit", {"outer_zone_limit": np.zeros(2)}),
    ],
)
def test_arguments_out_of_range(name: str, changes: dict[str, object]) -> None:
    arguments = {"strain": 0.003, "axial_load": 1e6, "angle": np.zeros(1), **changes}
    with pytest.raises(DomainError, match=name):
        moment_at_extreme_strain(_section(), **arguments)  # type: ignore[arg-type] # shared keywords


def test_moments_grow_with_the_cube_of_the_size() -> None:
    concrete = unconfined_concrete_law(strength=30.0, elastic_modulus=27.4e3)
    # of the last three radii, r**2 is rounded down and r * r is not
    odd = [2114.737797030516, 2038.9300710168293, 466.60900439334523]
    diameters = np.array([1000.0, *np.random.default_rng(7).uniform(400.0, 2600.0, 50), *odd])
    relative = []
    for diameter in diameters.tolist():
        zones = tuple(
            ConcreteZone(name, size, concrete)
            for name, size in (("core", diameter), ("ring", 1.13 * diameter))
        )
        moments = moment_at_extreme_strain(
            CircularSection(zones, ()),
            strain=0.003,
            axial_load=5.0 * diameter**2,
            angle=np.zeros(1),
        )
        relative.append(float(moments[0]) / diameter**3)
    assert relative == pytest.approx([relative[0]] * len(relative), rel=1e-5)


@pytest.mark.parametrize("axial_load", [-1e8, 1e9, 1e12])
def test_a_load_that_no_section_carries_has_no_moment(axial_load: float) -> None:
    moment = moment_at_extreme_strain(
        _section(), strain=0.0012, axial_load=axial_load, angle=np.linspace(0.0, 6.0, 24)
    )
    assert np.isnan(moment).all()


@pytest.mark.parametrize("short", [0.02, 0.07])
def test_bars_of_which_some_fracture_before_others(short: float) -> None:
    brittle = BarSteel(469.0, 655.0, 0.0115, short, 200e3)
    section = CircularSection(
        (ConcreteZone("column", 1200.0, CORE),),
        (
            BarGroup.ring(20, radius=530.0, area=645.0, steel=STEEL),
            BarGroup.ring(8, radius=480.0, area=300.0, steel=brittle),
        ),
    )
    response = moment_curvature(
        section, axial_load=1e6, curvature=np.linspace(1e-7, 8e-5, 800), strips=1000
    )
    strain = 0.013
    at = point_at_extreme_strain(response, strain=strain)
    reached = np.interp(at.curvature, response.curvature, response.bar_strain.max(axis=1))
    assert 0.03 < reached < 0.09
    found = moment_at_extreme_strain(section, strain=strain, axial_load=1e6, angle=np.zeros(1))
    assert found[0] == pytest.approx(at.moment, rel=2e-3)
