"""Bending of a one-sided splice plate against stress blocks and a beam on an elastic bed."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.splice_bending import (
    eccentric_splice_first_yield,
    eccentric_splice_strength,
    splice_eccentricity,
    splice_moment,
    splice_plate_shares,
)


def plastic_force(thickness: float, strength: float, eccentricity: float) -> float:
    """Axial force at which a fully plastic section has just the moment N e, by bisection.

    The neutral axis moves through fibres that are at plus or minus the yield stress.
    """
    fibres = 400_000
    depth = (np.arange(fibres) + 0.5) * thickness / fibres - thickness / 2.0
    low, high = 0.0, thickness / 2.0
    force = 0.0
    for _ in range(60):
        axis = (low + high) / 2.0
        stress = np.where(depth > -axis, strength, -strength)
        force = float(np.sum(stress)) * thickness / fibres
        moment = float(np.sum(stress * depth)) * thickness / fibres
        low, high = (axis, high) if moment > force * eccentricity else (low, axis)
    return force


@pytest.mark.parametrize(
    ("thickness", "eccentricity"), [(10.0, 0.5), (10.0, 8.0), (18.0, 12.0), (6.0, 30.0)]
)
def test_plastic_strength_against_fibres(thickness: float, eccentricity: float) -> None:
    strength = eccentric_splice_strength(thickness, steel_strength=345.0, eccentricity=eccentricity)
    assert float(strength) == pytest.approx(plastic_force(thickness, 345.0, eccentricity), rel=1e-4)


@pytest.mark.parametrize("net_ratio", [1.0, 0.65])
def test_first_yield_brings_the_face_to_the_yield_stress(net_ratio: float) -> None:
    thickness, eccentricity = 12.0, 9.0
    force = float(
        eccentric_splice_first_yield(
            thickness, yield_strength=250.0, eccentricity=eccentricity, net_ratio=net_ratio
        )
    )
    area = net_ratio * thickness
    section_modulus = net_ratio * thickness**2 / 6.0
    moment = float(splice_moment(force, eccentricity=eccentricity))
    assert force / area + moment / section_modulus == pytest.approx(250.0, rel=1e-12)


@pytest.mark.parametrize("bed_modulus", [1e-3, 1.0, 100.0])
def test_elastic_bed_never_raises_the_moment_above_the_whole_couple(bed_modulus: float) -> None:
    # Beam of unit width on an elastic bed, E I w'''' + k w = (N z)'' by central differences, where
    # z is the offset of the force: e between the ends of the plate, nothing in the sleeve beside it
    force, eccentricity, half_span = 1000.0, 8.0, 60.0
    stiffness = 200e3 * 12.0**3 / 12.0
    x = np.linspace(-2000.0, 2000.0, 1001)
    step = x[1] - x[0]
    ones = np.ones(x.size - 1)
    second = (np.diag(ones, 1) + np.diag(ones, -1) - 2.0 * np.eye(x.size)) / step**2
    offset = np.where(np.abs(x) < half_span, eccentricity, 0.0)
    bed = bed_modulus * np.eye(x.size)
    deflection = np.linalg.solve(stiffness * second @ second + bed, second @ (force * offset))
    moment = stiffness * second @ deflection
    couple = float(splice_moment(force, eccentricity=eccentricity))
    assert np.max(np.abs(moment)) <= couple * (1.0 + 1e-9)
    if bed_modulus < 0.01:  # a soft bed leaves the couple nearly whole, as in a free strap joint
        assert moment[x.size // 2] > 0.8 * couple


def test_shares_of_two_plates_balance_about_the_sleeve() -> None:
    sleeve, outside, inside = 6.0, 12.0, 5.0
    outer, inner = splice_plate_shares(sleeve, outside_thickness=outside, inside_thickness=inside)
    outer_arm = float(splice_eccentricity(sleeve, outside_thickness=outside))
    inner_arm = float(splice_eccentricity(sleeve, outside_thickness=inside))
    assert float(outer) * outer_arm == pytest.approx(float(inner) * inner_arm, rel=1e-12)
    assert float(outer) + float(inner) == pytest.approx(1.0, rel=1e-12)
