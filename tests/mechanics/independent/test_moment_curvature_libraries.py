"""Moment-curvature against two general-purpose reinforced concrete libraries.

Both get the same polygonal stress-strain curves and circles of the same area as ours.  One cuts
the bars out of the concrete; the other keeps the concrete whole, so that its bars are given the
stress of the steel less that of the concrete in their place: both then leave out displaced
concrete, as we do.
"""

from __future__ import annotations

import warnings
from typing import Any

import numpy as np
import pytest

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.concrete_law import tabulated_concrete_law
from jacketcheck.mechanics.moment_curvature import MomentCurvature, moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

CORE_DIAMETER, DIAMETER, BAR_AREA = 1080.0, 1200.0, 819.0
STRAINS = np.array(
    [0.0, 0.0005, 0.001, 0.0015, 0.002, 0.003, 0.004, 0.006, 0.01, 0.015, 0.02, 0.03]
)
CORE = np.array([0.0, 12.0, 21.0, 28.0, 33.0, 39.5, 43.0, 46.5, 48.0, 47.0, 45.5, 42.0])
COVER = np.array([0.0, 12.0, 21.0, 27.0, 29.0, 26.0, 20.0, 0.0, 0.0, 0.0, 0.0, 0.0])
STEEL = BarSteel(475.0, 655.0, 0.0115, 0.09, 200e3)
STEEL_STRAINS = np.concatenate([[0.0, 475.0 / 200e3], np.linspace(0.0115, 0.09, 25)])
STEEL_STRESSES = np.asarray(bar_stress(STEEL_STRAINS, STEEL))


def _section() -> CircularSection:
    zones = tuple(
        ConcreteZone(name, diameter, tabulated_concrete_law(STRAINS, curve, ultimate_strain=0.02))
        for name, diameter, curve in (
            ("core", CORE_DIAMETER, CORE),
            ("cover", DIAMETER, COVER),
        )
    )
    bars = BarGroup.ring(20, radius=510.0, area=BAR_AREA, steel=STEEL, first_angle=0.1)
    return CircularSection(zones, (bars,))


def _ours(curvature: Floats, axial_load: float) -> MomentCurvature:
    # compression at the top, as in both libraries
    return moment_curvature(
        _section(), axial_load=axial_load, curvature=curvature, angle=0.5 * np.pi
    )


def _first_library(curvature: Floats, axial_load: float) -> Floats:
    """Moments by the fibre integration of structuralcodes; tension is positive there."""
    geometry = pytest.importorskip("structuralcodes.geometry")
    from structuralcodes.materials.basic import GenericMaterial
    from structuralcodes.materials.constitutive_laws import UserDefined
    from structuralcodes.sections import BeamSection

    def material(strain: Floats, stress: Floats) -> Any:
        law = UserDefined(strain, stress, flag=1)
        return GenericMaterial(density=2500.0, constitutive_law=law)

    def concrete(curve: Floats) -> Any:
        strain = np.concatenate([-STRAINS[::-1], [0.1]])
        return material(strain, np.concatenate([-curve[::-1], [0.0]]))

    sides = 200
    area_of_polygon = sides / (2.0 * np.pi) * np.sin(2.0 * np.pi / sides)

    def disc(diameter: float, curve: Floats) -> Any:
        return geometry.CircularGeometry(
            diameter / np.sqrt(area_of_polygon), concrete(curve), n_points=sides, concrete=True
        )

    inside = disc(CORE_DIAMETER, CORE)
    whole = geometry.CompoundGeometry([inside, disc(DIAMETER, COVER) - inside])
    strain = np.unique(np.concatenate([np.linspace(-0.03, 0.09, 1201), -STRAINS]))
    net = np.interp(np.abs(strain), STEEL_STRAINS, STEEL_STRESSES) * np.sign(strain)
    net = net + np.interp(-strain, STRAINS, CORE, left=0.0)
    bar_diameter = 2.0 * np.sqrt(BAR_AREA / np.pi)
    for x, y in zip(_section().bar_x, _section().bar_y, strict=True):
        whole = geometry.add_reinforcement(whole, (x, y), bar_diameter, material(strain, net))
    section = BeamSection(whole, integrator="fiber", mesh_size=0.001)
    result = section.section_calculator.calculate_moment_curvature(n=-axial_load, chi=-curvature)
    assert len(result.m_y) == curvature.size
    return np.asarray(np.abs(result.m_y))


@pytest.mark.parametrize("axial_load", [0.0, 3e6, 9e6])
def test_first_library(axial_load: float) -> None:
    curvature = np.array([5e-7, 1e-6, 2e-6, 3e-6, 5e-6, 8e-6, 1.2e-5, 2e-5, 3e-5, 4e-5])
    expected = _first_library(curvature, axial_load)
    ours = _ours(curvature, axial_load)
    assert ours.converged.all()
    assert ours.moment == pytest.approx(expected, rel=1e-3)


def _second_library(step: float, axial_load: float) -> tuple[Floats, Floats]:
    """Curvatures and moments of concreteproperties, which chooses where to stop."""
    library = pytest.importorskip("concreteproperties")
    from concreteproperties.pre import add_bar
    from concreteproperties.stress_strain_profile import ConcreteServiceProfile, SteelProfile
    from sectionproperties.pre.library import circular_section_by_area

    def concrete(name: str, curve: Floats) -> Any:
        strain = [-0.1, *STRAINS.tolist()]
        return library.Concrete(
            name=name,
            density=2.4e-6,
            stress_strain_profile=ConcreteServiceProfile(strain, [0.0, *curve.tolist()], 0.03),
            ultimate_stress_strain_profile=library.RectangularStressBlock(40.0, 0.85, 0.8, 0.003),
            flexural_tensile_strength=0.0,
            colour="lightgrey",
        )

    mirrored = np.concatenate([-STEEL_STRAINS[:0:-1], STEEL_STRAINS]).tolist()
    stresses = np.concatenate([-STEEL_STRESSES[:0:-1], STEEL_STRESSES]).tolist()
    steel = library.SteelBar(
        name="bar",
        density=7.85e-6,
        stress_strain_profile=SteelProfile(mirrored, stresses, 475.0, 200e3, 0.09),
        colour="grey",
    )

    def disc(diameter: float, material: Any) -> Any:
        return circular_section_by_area(area=0.25 * np.pi * diameter**2, n=24, material=material)

    core = disc(CORE_DIAMETER, concrete("core", CORE))
    geometry = (disc(DIAMETER, concrete("cover", COVER)) - core) + core
    for x, y in zip(_section().bar_x, _section().bar_y, strict=True):
        geometry = add_bar(geometry, area=BAR_AREA, material=steel, x=x, y=y, n=4)
    result = library.ConcreteSection(geometry).moment_curvature_analysis(
        n=axial_load,
        kappa0=1e-6,
        kappa_inc=step,
        kappa_mult=1.0,
        kappa_inc_max=step,
        progress_bar=False,
    )
    return np.array(result.kappa), np.array(result.m_xy)


def test_second_library() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the library remarks on concrete without tension
        curvature, expected = _second_library(2.4e-5, 3e6)
    assert curvature.size >= 4
    ours = _ours(curvature, 3e6)
    assert ours.converged.all()
    assert ours.moment == pytest.approx(expected, rel=1e-3)
