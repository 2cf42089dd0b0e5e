"""Tabulated concrete curves against a general-purpose library and closed forms."""

from __future__ import annotations

import numpy as np
import pytest
from concreteproperties.stress_strain_profile import ModifiedMander
from structuralcodes.materials.constitutive_laws import Popovics

from jacketcheck.mechanics.concrete_law import (
    elastic_concrete_law,
    popovics_concrete_law,
    strain_grid,
    tabulated_concrete_law,
    unconfined_concrete_law,
)

BETWEEN_NODES = np.linspace(1e-5, 0.0799, 1234)


@pytest.mark.parametrize(("peak", "peak_strain"), [(30.0, 0.002), (47.0, 0.0077)])
def test_popovics_law(peak: float, peak_strain: float) -> None:
    modulus = 27_386.0
    reference = Popovics(fc=peak, eps_c=-peak_strain, eps_cu=-0.09, Ec=modulus)
    law = popovics_concrete_law(
        peak_stress=peak, peak_strain=peak_strain, elastic_modulus=modulus, ultimate_strain=0.02
    )
    expected = -np.asarray(reference.get_stress(-BETWEEN_NODES))
    assert law.stress_at(BETWEEN_NODES) == pytest.approx(expected, abs=1e-4 * peak)
    assert law.strength == pytest.approx(peak, rel=1e-4)
    assert np.all(law.stress_at(np.array([-5e-4, -1e-5, 0.0])) == 0.0)


def test_unconfined_law_with_its_spalling_branch() -> None:
    modulus, strength = 27_386.0, 30.0
    law = unconfined_concrete_law(strength=strength, elastic_modulus=modulus, spalling_strain=0.006)
    reference = ModifiedMander(
        elastic_modulus=modulus,
        compressive_strength=strength,
        tensile_strength=1.0,
        conc_spalling=True,
        eps_sp=0.006,
        n_points=4000,
    )
    strains, stresses = np.array(reference.strains[1:-2]), np.array(reference.stresses[1:-2])
    assert law.stress_at(strains) == pytest.approx(stresses, abs=1e-4 * strength)
    knee = float(stresses[-1])
    halfway = law.stress_at(0.005)  # from 0.004 down to nothing at 0.006
    assert halfway == pytest.approx(knee / 2.0, rel=1e-3)
    assert law.stress_at(0.0061) == 0.0
    assert law.ultimate_strain == 0.006


def test_elastic_law() -> None:
    cracked = elastic_concrete_law(25e3)
    whole = elastic_concrete_law(25e3, tension=True)
    strain = np.array([-9e-4, 0.0, 3.3e-3])
    assert cracked.stress_at(strain) == pytest.approx([0.0, 0.0, 82.5])
    assert whole.stress_at(strain) == pytest.approx([-22.5, 0.0, 82.5])


def test_tabulated_law_is_the_polyline_through_its_points() -> None:
    strain = np.array([0.0, 0.0021, 0.0103, 0.05])
    stress = np.array([0.0, 41.0, 44.0, 12.0])
    law = tabulated_concrete_law(strain, stress, ultimate_strain=0.03)
    inside = BETWEEN_NODES[BETWEEN_NODES < 0.05]
    expected = np.interp(inside, strain, stress)
    # corners that fall between nodes of the grid are cut by less than half a step
    assert law.stress_at(inside) == pytest.approx(expected, abs=0.5 * 2e-5 * 41.0 / 0.0021)
    assert law.stress_at(0.0501) == 0.0


def test_grid() -> None:
    grid = strain_grid()
    assert grid[0] == pytest.approx(-0.001)
    assert grid[-1] == pytest.approx(0.08)
    assert 0.0 in grid
    assert np.diff(grid) == pytest.approx(np.full(grid.size - 1, 2e-5))
