"""Bars that lie skew to the bending direction, by the transformed section."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.concrete_law import elastic_concrete_law
from jacketcheck.mechanics.moment_curvature import moment_curvature
from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone

ELASTIC = BarSteel(2000.0, 2000.0, 0.02, 0.15, 200e3)
X, Y = np.array([350.0, 300.0, 150.0, -80.0]), np.array([60.0, 230.0, 320.0, 380.0])
AREA = 900.0
CURVATURE = np.array([1e-7, 3e-7])


def section(turn: float = 0.0) -> CircularSection:
    """Bars in one quadrant of two zones of elastic concrete, turned counter-clockwise."""
    core, ring = (elastic_concrete_law(modulus, tension=True) for modulus in (30e3, 20e3))
    x, y = X * np.cos(turn) - Y * np.sin(turn), X * np.sin(turn) + Y * np.cos(turn)
    bars = BarGroup.at(x, y, area=AREA, steel=ELASTIC)
    return CircularSection(
        (ConcreteZone("core", 900.0, core), ConcreteZone("ring", 1000.0, ring)), (bars,)
    )


@pytest.mark.parametrize("angle", [0.0, 0.7, 2.0, -1.2])
def test_both_moments_of_a_transformed_section(angle: float) -> None:
    along, across = X * np.cos(angle) + Y * np.sin(angle), Y * np.cos(angle) - X * np.sin(angle)
    net = (200e3 - 30e3) * AREA
    axial = 5e6
    response = moment_curvature(
        section(), axial_load=axial, curvature=CURVATURE, angle=angle, strips=400
    )
    # N = EA e + ES phi, M = ES e + EI phi, about the axis of the disc, net concrete
    discs = np.array([[450.0, 10e3], [500.0, 20e3]])  # radius, and what a disc adds in modulus
    stiffness = np.pi * discs[:, 0] ** 2 @ discs[:, 1] + net * X.size
    first = net * along.sum()
    second = np.pi / 4.0 * discs[:, 0] ** 4 @ discs[:, 1] + net * (along**2).sum()
    strain = (axial - first * CURVATURE) / stiffness
    assert response.centre_strain == pytest.approx(strain, rel=1e-4)
    assert response.moment == pytest.approx(first * strain + second * CURVATURE, rel=1e-3)
    transverse = net * (across.sum() * strain + (along * across).sum() * CURVATURE)
    assert response.transverse_moment == pytest.approx(transverse, rel=1e-3)


@pytest.mark.parametrize("turn", [0.4, 1.9])
def test_a_turned_section_bent_as_far_round(turn: float) -> None:
    one = moment_curvature(section(), axial_load=3e6, curvature=CURVATURE, angle=0.3)
    other = moment_curvature(section(turn), axial_load=3e6, curvature=CURVATURE, angle=0.3 + turn)
    assert other.moment == pytest.approx(one.moment, rel=1e-6)
    assert other.transverse_moment == pytest.approx(one.transverse_moment, rel=1e-5)


def test_strains_lie_on_a_plane() -> None:
    response = moment_curvature(section(), axial_load=3e6, curvature=CURVATURE, angle=0.3)
    ring = 0.5 * (1000.0 - 900.0)
    fall = response.extreme_compressive_strain - response.core_compressive_strain
    assert fall == pytest.approx(CURVATURE * ring, rel=1e-9)
    assert response.extreme_compressive_strain == pytest.approx(
        response.centre_strain + CURVATURE * 500.0, rel=1e-9
    )
    along = X * np.cos(0.3) + Y * np.sin(0.3)
    # of the bars tension counts as positive
    expected = -(response.centre_strain[:, None] + CURVATURE[:, None] * along)
    assert response.bar_strain == pytest.approx(expected, rel=1e-9)
