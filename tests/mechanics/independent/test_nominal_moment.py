"""Nominal moment against closed forms and two general-purpose libraries."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from jacketcheck.mechanics.nominal_moment import nominal_moment
from jacketcheck.mechanics.section_geometry import bar_ring


@pytest.mark.parametrize("half_angle", [0.6, 1.2, np.pi / 2.0, 2.2])
def test_plain_disc_is_a_circle_segment(half_angle: float) -> None:
    # a block over the segment with that half angle, and a bar too small to matter
    radius, strength = 500.0, 25.0
    area = radius**2 * (half_angle - np.sin(half_angle) * np.cos(half_angle))
    moment = 2.0 / 3.0 * radius**3 * np.sin(half_angle) ** 3
    result = nominal_moment(
        0.85 * strength * area,
        diameter=2.0 * radius,
        concrete_strength=strength,
        bar_position=np.array([0.0]),
        bar_area=1e-6,
        bar_yield=400.0,
    )
    depth = radius * (1.0 - np.cos(half_angle)) / 0.85
    assert result.moment == pytest.approx(0.85 * strength * moment, rel=1e-6)
    assert result.neutral_axis_depth == pytest.approx(depth, rel=1e-6)


def test_two_bars_by_hand() -> None:
    # D 1000, f'c 25, bars 2000 mm2 at +-400 mm, c = 300: both yield;
    # strains 0.003 (1 - 100 / 300) = 0.002 and 0.003 (1 - 900 / 300) = -0.006
    depth, stress, area, fy = 300.0, 0.85 * 25.0, 2000.0, 400.0
    block = 0.85 * depth
    theta = np.arccos(1.0 - 2.0 * block / 1000.0)
    segment = 250e3 * (theta - np.sin(theta) * np.cos(theta))
    first_moment = 1000.0**3 * np.sin(theta) ** 3 / 12.0
    force = stress * segment + area * (fy - stress) - area * fy
    moment = stress * first_moment + area * (2.0 * fy - stress) * 400.0
    result = nominal_moment(
        force,
        diameter=1000.0,
        concrete_strength=25.0,
        bar_position=np.array([400.0, -400.0]),
        bar_area=area,
        bar_yield=fy,
    )
    assert result.moment == pytest.approx(moment, rel=1e-9)
    assert result.neutral_axis_depth == pytest.approx(depth, rel=1e-9)
    assert result.extreme_tensile_strain == pytest.approx(0.006, rel=1e-9)


def _library_moment(axial_load: float) -> float:
    library = pytest.importorskip("concreteproperties")
    from concreteproperties.pre import add_bar
    from sectionproperties.pre.library import circular_section_by_area

    concrete = library.Concrete(
        name="concrete",
        density=2.4e-6,
        stress_strain_profile=library.ConcreteLinear(elastic_modulus=25e3),
        ultimate_stress_strain_profile=library.RectangularStressBlock(
            compressive_strength=27.0, alpha=0.85, gamma=0.85, ultimate_strain=0.003
        ),
        flexural_tensile_strength=0.0,
        colour="lightgrey",
    )
    steel = library.SteelBar(
        name="bar",
        density=7.85e-6,
        stress_strain_profile=library.SteelElasticPlastic(
            yield_strength=420.0, elastic_modulus=200e3, fracture_strain=0.9
        ),
        colour="grey",
    )
    geometry: Any = circular_section_by_area(
        area=0.25 * np.pi * 1200.0**2, n=200, material=concrete
    )
    for x, y in zip(*bar_ring(20, radius=510.0, first_angle=0.1), strict=True):
        geometry = add_bar(geometry, area=819.0, material=steel, x=x, y=y, n=6)
    section = library.ConcreteSection(geometry)
    return float(section.ultimate_bending_capacity(theta=0.0, n=axial_load).m_xy)


@pytest.mark.parametrize("axial_load", [0.0, 3e6, 12e6])
def test_general_purpose_library(axial_load: float) -> None:
    # compression at the top; bars cut out of the concrete
    _, position = bar_ring(20, radius=510.0, first_angle=0.1)
    result = nominal_moment(
        axial_load,
        diameter=1200.0,
        concrete_strength=27.0,
        bar_position=position,
        bar_area=819.0,
        bar_yield=420.0,
    )
    # bars that straddle the edge of the block count wholly here and in part there
    assert result.moment == pytest.approx(_library_moment(axial_load), rel=3e-3)


def _second_library_moment(axial_load: float, curvature: float) -> float:
    """By the fibres of structuralcodes: the block as a curve that jumps, tension positive."""
    geometry = pytest.importorskip("structuralcodes.geometry")
    from structuralcodes.materials.basic import GenericMaterial
    from structuralcodes.materials.constitutive_laws import UserDefined
    from structuralcodes.sections import BeamSection

    # no stress up to the bottom of the block of 0.85 c, where the strain is 0.15 of 0.003
    edge, block = 0.15 * 0.003, 0.85 * 27.0

    def material(strain: list[float], stress: list[float]) -> Any:
        law = UserDefined(np.array(strain), np.array(stress), flag=1)
        return GenericMaterial(density=2500.0, constitutive_law=law)

    concrete = material([-0.004, -edge, -edge + 1e-9, 0.1], [-block, -block, 0.0, 0.0])
    # bars displace concrete: their stress is given less that of the block
    strain = [-0.09, -0.0021, -edge, -edge + 1e-9, 0.0, 0.0021, 0.09]
    steel = [-420.0, -420.0, -edge * 200e3, -edge * 200e3, 0.0, 420.0, 420.0]
    taken = [block, block, block, 0.0, 0.0, 0.0, 0.0]
    bars = material(strain, [one + less for one, less in zip(steel, taken, strict=True)])
    sides = 200
    polygon = sides / (2.0 * np.pi) * np.sin(2.0 * np.pi / sides)
    whole = geometry.CircularGeometry(
        1200.0 / np.sqrt(polygon), concrete, n_points=sides, concrete=True
    )
    diameter = 2.0 * np.sqrt(819.0 / np.pi)
    for x, y in zip(*bar_ring(20, radius=510.0, first_angle=0.1), strict=True):
        whole = geometry.add_reinforcement(whole, (x, y), diameter, bars)
    section = BeamSection(whole, integrator="fiber", mesh_size=0.0005)
    found = section.section_calculator.calculate_moment_curvature(
        n=-axial_load, chi=np.array([-curvature])
    )
    return float(np.abs(found.m_y[0]))


@pytest.mark.parametrize("axial_load", [0.0, 3e6, 12e6])
def test_second_general_purpose_library(axial_load: float) -> None:
    """At the curvature 0.003/c; the strain of 0.003 comes out of the library's own balance."""
    _, position = bar_ring(20, radius=510.0, first_angle=0.1)
    result = nominal_moment(
        axial_load,
        diameter=1200.0,
        concrete_strength=27.0,
        bar_position=position,
        bar_area=819.0,
        bar_yield=420.0,
    )
    curvature = 0.003 / float(result.neutral_axis_depth)
    assert result.moment == pytest.approx(_second_library_moment(axial_load, curvature), rel=5e-3)


def test_designs_and_loads_at_once() -> None:
    position, _ = bar_ring(12, radius=400.0)
    loads = np.array([[0.0], [2e6], [5e6]])
    diameters = np.array([950.0, 1000.0])
    many = nominal_moment(
        loads,
        diameter=diameters,
        concrete_strength=30.0,
        bar_position=position,
        bar_area=500.0,
        bar_yield=420.0,
    )
    assert np.shape(many.moment) == (3, 2)
    for row, load in enumerate(loads[:, 0]):
        for column, diameter in enumerate(diameters):
            one = nominal_moment(
                load,
                diameter=diameter,
                concrete_strength=30.0,
                bar_position=position,
                bar_area=500.0,
                bar_yield=420.0,
            )
            assert np.asarray(many.moment)[row, column] == pytest.approx(one.moment, rel=1e-12)


def test_loads_beyond_reach_read_nan() -> None:
    position, _ = bar_ring(12, radius=400.0)
    loads = np.array([-12 * 500.0 * 420.0 * 1.001, 0.0, 60e6])
    result = nominal_moment(
        loads,
        diameter=1000.0,
        concrete_strength=30.0,
        bar_position=position,
        bar_area=500.0,
        bar_yield=420.0,
    )
    assert np.isnan(result.moment).tolist() == [True, False, True]
    assert np.isnan(result.extreme_tensile_strain).tolist() == [True, False, True]
