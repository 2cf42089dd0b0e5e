"""Confined concrete against general-purpose libraries and a root finder."""

from __future__ import annotations

import numpy as np
import pytest
from concreteproperties.stress_strain_profile import ModifiedMander
from scipy.optimize import brentq
from structuralcodes.materials.constitutive_laws import Popovics

from jacketcheck.mechanics.concrete_properties import elastic_modulus_mander
from jacketcheck.mechanics.confinement import (
    PRESSURE_RATIO_LIMIT,
    STRENGTH_RATIO_LIMIT,
    confined_peak_strain,
    confined_strength,
    confined_stress,
    popovics_stress,
    pressure_ratio_for_strength_ratio,
    strength_ratio,
    ultimate_strain,
)
from jacketcheck.mechanics.lateral_pressure import (
    effective_hoop_pressure,
    hoop_effectiveness,
    hoop_volumetric_ratio,
    spiral_effectiveness,
)


@pytest.mark.parametrize("strength", [20.0, 35.0, 60.0])
@pytest.mark.parametrize("peak_strain", [0.002, 0.0065])
def test_popovics_curve(strength: float, peak_strain: float) -> None:
    strain = np.linspace(0.0, 0.03, 61)
    reference = Popovics(fc=strength, eps_c=-peak_strain, eps_cu=-0.031)
    stress = popovics_stress(
        strain,
        peak_stress=strength,
        peak_strain=peak_strain,
        elastic_modulus=elastic_modulus_mander(strength),
    )
    assert stress == pytest.approx(-np.asarray(reference.get_stress(-strain)), rel=1e-12)


@pytest.mark.parametrize("kind", ["circ_hoop", "circ_spiral"])
def test_circular_column_from_hoops_to_ultimate_strain(kind: str) -> None:
    bar, spacing, cover, diameter, bars, strength, f_y = 12.0, 80.0, 40.0, 900.0, 9e3, 32.0, 420.0
    modulus = float(elastic_modulus_mander(strength))
    reference = ModifiedMander(
        elastic_modulus=modulus,
        compressive_strength=strength,
        tensile_strength=1.0,
        sect_type=kind,
        conc_confined=True,
        d=diameter,
        long_reinf_area=bars,
        cvr=cover,
        trans_spacing=spacing,
        trans_d_b=bar,
        trans_f_y=f_y,
        eps_su=0.1,
        n_confinement=0.5,  # the half of ke rho_s f_yh / 2, which this class leaves to the factor
        n_steel_strain=2.8,  # so that 2.8 x 0.5 is the 1.4 of the unmodified ultimate strain
    )
    core = diameter - 2.0 * cover - bar
    area = np.pi * bar**2 / 4.0
    rho = hoop_volumetric_ratio(area, core_diameter=core, spacing=spacing)
    effectiveness = hoop_effectiveness if kind == "circ_hoop" else spiral_effectiveness
    k_e = effectiveness(
        spacing - bar, core_diameter=core, longitudinal_ratio=bars / (np.pi * core**2 / 4.0)
    )
    pressure = effective_hoop_pressure(rho, yield_strength=f_y, effectiveness=k_e)
    confined = confined_strength(strength, lateral_pressure=pressure)
    strains = np.array(reference.strains[1:-1])  # without its tension and closing points
    stress = confined_stress(
        strains, lateral_pressure=pressure, unconfined_strength=strength, elastic_modulus=modulus
    )
    assert k_e < 1.0
    assert stress == pytest.approx(np.array(reference.stresses[1:-1]), rel=1e-9)
    assert np.max(reference.stresses) == pytest.approx(confined, rel=1e-9)
    assert strains[int(np.argmax(stress))] == pytest.approx(
        confined_peak_strain(confined / strength), rel=1e-9
    )
    ultimate = ultimate_strain(
        volumetric_ratio=rho,
        yield_strength=f_y,
        steel_ultimate_strain=0.1,
        confined_strength=confined,
    )
    assert ultimate == pytest.approx(reference.ultimate_strain, rel=1e-9)


@pytest.mark.parametrize("ratio", [1.0, 1.05, 1.5, 2.5, 4.0])
def test_inverse_of_the_strength_ratio(ratio: float) -> None:
    root = brentq(lambda x: float(strength_ratio(x)) - ratio, 0.0, PRESSURE_RATIO_LIMIT, xtol=1e-14)
    assert pressure_ratio_for_strength_ratio(ratio) == pytest.approx(root, abs=1e-12)


def test_limits_are_the_peak_of_the_curve() -> None:
    ratio = np.linspace(2.3, PRESSURE_RATIO_LIMIT, 1001)
    assert np.all(np.diff(strength_ratio(ratio)) > 0.0)
    step = 1e-4
    slope = (
        strength_ratio(PRESSURE_RATIO_LIMIT) - strength_ratio(PRESSURE_RATIO_LIMIT - step)
    ) / step
    assert slope == pytest.approx(0.0, abs=1e-3)
    assert strength_ratio(PRESSURE_RATIO_LIMIT) == pytest.approx(STRENGTH_RATIO_LIMIT, rel=1e-14)


def test_the_peak_is_a_peak() -> None:
    strain = np.linspace(1e-4, 0.05, 20_001)
    stress = np.asarray(
        confined_stress(
            strain, lateral_pressure=2.0, unconfined_strength=30.0, elastic_modulus=27_386.0
        )
    )
    confined = confined_strength(30.0, lateral_pressure=2.0)
    top = int(np.argmax(stress))
    assert stress[top] == pytest.approx(confined, rel=1e-6)
    assert strain[top] == pytest.approx(confined_peak_strain(confined / 30.0), abs=5e-6)
