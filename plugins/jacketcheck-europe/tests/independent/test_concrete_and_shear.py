"""Concrete strengths and pier shear against a general-purpose library and numerical integration."""

from __future__ import annotations

import numpy as np
import pytest
from jacketcheck_europe.mechanics.column_shear import (
    pier_crushing_shear,
    pier_hoop_shear,
    pier_section,
)
from jacketcheck_europe.mechanics.concrete import (
    characteristic_tensile_strength,
    design_compressive_strength,
    strut_effectiveness,
)
from structuralcodes.codes import ec2_2004


@pytest.mark.parametrize("strength", [12.0, 20.0, 33.0, 50.0, 60.0, 90.0])
def test_tensile_strength(strength: float) -> None:
    expected = ec2_2004.fctk_5(ec2_2004.fctm(strength))
    assert float(characteristic_tensile_strength(strength)) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("strength", [20.0, 35.0, 50.0])
def test_compressive_strength_and_effectiveness(strength: float) -> None:
    design = design_compressive_strength(strength, coefficient=0.85, partial_factor=1.5)
    assert float(design) == pytest.approx(ec2_2004.fcd(strength, 0.85, 1.5), rel=1e-12)
    assert float(strut_effectiveness(strength)) == pytest.approx(
        ec2_2004.shear.v(strength), rel=1e-12
    )


def test_truss_at_45_degrees() -> None:
    # the library's truss for straight legs, of the area that circular hoops average out to
    expected = ec2_2004.VRds(
        Asw=np.pi / 2.0 * 201.0, s=100.0, z=850.0, theta=45.0, fyk=500.0, alpha=90.0, gamma_s=1.15
    )
    found = pier_hoop_shear(201.0, yield_strength=500.0 / 1.15, spacing=100.0, lever_arm=850.0)
    assert float(found) == pytest.approx(expected, rel=1e-6)


def test_crushing_at_45_degrees() -> None:
    expected = ec2_2004.VRdmax(
        bw=900.0,
        z=850.0,
        fck=30.0,
        theta=45.0,
        NEd=0.0,
        Ac=1.0e6,
        fcd=17.0,
        alpha=90.0,
        limit_fyd=False,
    )
    found = pier_crushing_shear(
        17.0, effectiveness=strut_effectiveness(30.0), lever_arm=850.0, web_width=900.0
    )
    assert float(found) == pytest.approx(expected, rel=1e-6)


def test_average_inclination_of_hoops() -> None:
    # cracks that cross a circular hoop anywhere between its poles: two legs, each pulling along
    # its own tangent, averaged over the depth
    depth = np.linspace(-1.0, 1.0, 200_001)
    legs = 2.0 * np.trapezoid(np.sqrt(1.0 - depth**2), depth) / 2.0
    assert legs == pytest.approx(np.pi / 2.0, rel=1e-5)
    unit = pier_hoop_shear(1.0, yield_strength=1.0, spacing=1.0, lever_arm=1.0)
    assert float(unit) == pytest.approx(legs, rel=1e-5)


def test_section_of_a_circular_pier() -> None:
    # bars smeared over half of their circle: centroid by integration; chord by a fine grid
    angle = np.linspace(0.0, np.pi, 20_001)
    centroid = np.trapezoid(480.0 * np.sin(angle), angle) / np.pi
    section = pier_section(concrete_radius=520.0, bar_circle_radius=480.0)
    assert float(section.lever_arm) == pytest.approx(0.9 * (520.0 + centroid), rel=1e-7)
    across = np.linspace(-600.0, 600.0, 2_400_001)
    inside = across[np.hypot(across, centroid) <= 520.0]
    assert float(section.web_width) == pytest.approx(np.ptp(inside), abs=0.01)
