"""Moment of the repaired base at a strain of 0.003, integrated by a general-purpose library.

structuralcodes gets circles of the same areas, polygonal curves of column, grout and bars, and a
stress for each bar that is held to what bond develops in it. Its fibre integration gives force and
moment of a strain plane; the plane that carries the axial load is found by scipy's brentq.
"""

from __future__ import annotations

from typing import Any, Final

import numpy as np
import pytest
from scipy.optimize import brentq

from jacketcheck.analysis.base_state import CAPACITY_STRAIN, base_circular_section
from jacketcheck.analysis.sections import bending_angle
from jacketcheck.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import bar_stress
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_strength import moment_at_extreme_strain
from tests.support.jackets import built

SIDES: Final = 160


def _material(strain: Floats, stress: Floats) -> Any:
    from structuralcodes.materials.basic import GenericMaterial
    from structuralcodes.materials.constitutive_laws import UserDefined

    return GenericMaterial(2500.0, constitutive_law=UserDefined(strain, stress, flag=1))


def _library_section(section: CircularSection, angle: float) -> Any:
    """The section turned so that the bending direction points up."""
    geometry = pytest.importorskip("structuralcodes.geometry")
    from structuralcodes.sections import BeamSection

    compressed = np.linspace(0.0, 0.012, 241)

    def disc(index: int) -> Any:
        zone = section.zones[index]
        strain = np.append(-compressed[::-1], 0.2)
        stress = np.append(-zone.law.stress_at(compressed)[::-1], 0.0)
        polygon = SIDES / (2.0 * np.pi) * np.sin(2.0 * np.pi / SIDES)
        diameter = zone.outer_diameter / np.sqrt(polygon)
        return geometry.CircularGeometry(
            diameter, _material(strain, stress), n_points=SIDES, concrete=True
        )

    inner = disc(0)
    whole = geometry.CompoundGeometry([inner, disc(1) - inner])
    turn = np.pi / 2.0 - angle
    strain = np.unique(np.concatenate([np.linspace(-0.012, 0.06, 1441), [0.0]]))
    steels = [group.steel for group in section.bars for _ in group.x]
    for index, steel in enumerate(steels):
        limit = section.bar_stress_limit[index]
        law = section.zones[section.bar_zone[index]].law
        # displaced concrete is left out of the net stress, as we do
        net = np.clip(np.asarray(bar_stress(strain, steel)), -limit, limit) + law.stress_at(-strain)
        x, y = section.bar_x[index], section.bar_y[index]
        place = (x * np.cos(turn) - y * np.sin(turn), x * np.sin(turn) + y * np.cos(turn))
        size = 2.0 * np.sqrt(section.bar_area[index] / np.pi)
        whole = geometry.add_reinforcement(whole, place, size, _material(strain, net))
    return BeamSection(whole, integrator="fiber", mesh_size=0.002)


def _library_moment(section: CircularSection, axial_load: float, angle: float) -> float:
    calculator = _library_section(section, angle).section_calculator
    radius = 0.5 * section.diameter

    def forces(curvature: float) -> tuple[float, float]:
        centre = -CAPACITY_STRAIN + curvature * radius
        found = calculator.integrate_strain_profile([centre, -curvature, 0.0])
        return -float(found.n), abs(float(found.m_y))

    low, high = CAPACITY_STRAIN / (3.0 * radius), CAPACITY_STRAIN / (0.1 * radius)
    curvature = brentq(lambda value: forces(value)[0] - axial_load, low, high, xtol=1e-12)
    return forces(curvature)[1]


@pytest.fixture(
    params=[
        pytest.param("", id="fractured bars without stress"),
        pytest.param('added_bars.embedment = "20 in"', id="added bars held by the footing"),
        pytest.param('actions.axial_load = "1500 kip"', id="high axial load"),
    ]
)
def jacket(request: pytest.FixtureRequest) -> Jacket:
    return built(request.param)


@pytest.mark.parametrize("clock", [pytest.param(0.0, id="12:00"), pytest.param(np.pi, id="6:00")])
def test_moment_at_extreme_strain(jacket: Jacket, clock: float) -> None:
    section, axial_load = base_circular_section(jacket), float(jacket.demands.axial_load)
    angle = float(bending_angle(clock))
    ours = moment_at_extreme_strain(
        section, strain=CAPACITY_STRAIN, axial_load=axial_load, angle=np.array([angle])
    )
    assert ours[0] == pytest.approx(_library_moment(section, axial_load, angle), rel=2e-3)
