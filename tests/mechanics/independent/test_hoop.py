"""Thin-shell formulas against thick-wall theory, quadrature and a chain of springs."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad

from jacketcheck.mechanics.hoop import (
    core_pressure,
    grout_compliance,
    hoop_stress,
    radial_compliance,
    seam_compliance,
    sleeve_compliance,
)
from jacketcheck.mechanics.seam_stiffness import (
    bearing_type_seam_stiffness,
    splice_plate_stiffness,
)

POISSON = 0.3


def _lame_hoop_stress(pressure: float, inner: float, outer: float, radius: float) -> float:
    """Hoop stress of a thick cylinder under internal pressure."""
    scale = pressure * inner**2 / (outer**2 - inner**2)
    return scale * (1.0 + outer**2 / radius**2)


@pytest.mark.parametrize("slenderness", [30.0, 60.0, 150.0])
def test_mean_hoop_stress_is_exact_and_the_peak_is_higher_as_stated(slenderness: float) -> None:
    inner, pressure = 600.0, 2.0
    thickness = inner / slenderness
    mean = float(hoop_stress(pressure, inner_radius=inner, thickness=thickness))
    total, _ = quad(
        lambda r: _lame_hoop_stress(pressure, inner, inner + thickness, r),
        inner,
        inner + thickness,
    )
    assert mean == pytest.approx(total / thickness, rel=1e-10)
    peak = _lame_hoop_stress(pressure, inner, inner + thickness, inner)
    assert peak / mean - 1.0 == pytest.approx(1.0 / (2.0 * slenderness), rel=0.05)
    assert peak / mean < 1.02


@pytest.mark.parametrize("slenderness", [30.0, 60.0, 150.0])
def test_sleeve_compliance_errs_by_the_order_of_the_thickness(slenderness: float) -> None:
    inner, modulus = 600.0, 200e3
    thickness = inner / slenderness
    thin = float(
        sleeve_compliance(inner_radius=inner, thickness=thickness, elastic_modulus=modulus)
    )
    at_face = _lame_hoop_stress(1.0, inner, inner + thickness, inner)
    thick = inner * (at_face + POISSON * 1.0) / modulus  # radial stress at the face is -1
    assert thick / thin - 1.0 == pytest.approx((0.5 + POISSON) / slenderness, rel=0.05)


def test_ring_with_seams_is_a_chain_of_springs() -> None:
    radius, thickness, modulus, seam = 600.0, 8.0, 200e3, 5e3
    half = np.pi * radius
    shell = modulus * thickness / half
    stiffness = np.zeros((5, 5))  # nodes along the opened ring: shell, seam, shell, seam
    for node, k in enumerate([shell, seam, shell, seam]):
        stiffness[node : node + 2, node : node + 2] += k * np.array([[1.0, -1.0], [-1.0, 1.0]])
    force = np.zeros(4)
    force[-1] = 1.0 * radius  # hoop force for a pressure of 1
    growth = np.linalg.solve(stiffness[1:, 1:], force)[-1]
    compliance = sleeve_compliance(
        inner_radius=radius, thickness=thickness, elastic_modulus=modulus
    ) + seam_compliance(inner_radius=radius, seam_stiffness=seam)
    assert compliance == pytest.approx(growth / (2.0 * np.pi), rel=1e-12)


def test_cracked_grout_by_quadrature() -> None:
    inner, core, modulus = 680.0, 600.0, 24e3
    shortening, _ = quad(lambda r: inner / r / modulus, core, inner)
    compliance = grout_compliance(inner_radius=inner, core_radius=core, grout_modulus=modulus)
    assert compliance == pytest.approx(shortening, rel=1e-10)
    assert core_pressure(1.0, inner_radius=inner, core_radius=core) == pytest.approx(680.0 / 600.0)


def test_parts_of_the_compliance_add_up_by_energy() -> None:
    inner, core, thickness, e_s, seam, e_g = 680.0, 600.0, 8.0, 200e3, 5e3, 24e3
    compliance = radial_compliance(
        inner_radius=inner,
        core_radius=core,
        thickness=thickness,
        elastic_modulus=e_s,
        seam_stiffness=seam,
        grout_modulus=e_g,
    )
    hoop = inner  # hoop force for a pressure of 1 on the sleeve
    shell = hoop**2 / (2.0 * e_s * thickness) * 2.0 * np.pi * inner
    seams = 2.0 * hoop**2 / (2.0 * seam)
    grout, _ = quad(lambda r: (inner / r) ** 2 / (2.0 * e_g) * 2.0 * np.pi * r, core, inner)
    # work of the core's pressure R_i/R_c on its face, which moves by the compliance
    work = 0.5 * (inner / core) * compliance * 2.0 * np.pi * core
    assert work == pytest.approx(shell + seams + grout, rel=1e-10)


def test_bearing_seam_is_a_chain_of_springs() -> None:
    plates = float(
        splice_plate_stiffness(total_plate_thickness=16.0, free_length=120.0, elastic_modulus=200e3)
    )
    shear, sleeve, splice, pitch, columns = 310e3, 95e3, 140e3, 75.0, 2
    group = [k * columns / pitch for k in (shear, sleeve, splice)]
    springs = [*group, plates, *group]
    chain = np.zeros((8, 8))
    for node, k in enumerate(springs):
        chain[node : node + 2, node : node + 2] += k * np.array([[1.0, -1.0], [-1.0, 1.0]])
    force = np.zeros(7)
    force[-1] = 1.0
    opening = np.linalg.solve(chain[1:, 1:], force)[-1]
    stiffness = bearing_type_seam_stiffness(
        shear_stiffness=shear,
        sleeve_bearing_stiffness=sleeve,
        splice_bearing_stiffness=splice,
        plate_stiffness=plates,
        pitch=pitch,
        bolt_columns=columns,
    )
    assert stiffness == pytest.approx(1.0 / opening, rel=1e-10)
