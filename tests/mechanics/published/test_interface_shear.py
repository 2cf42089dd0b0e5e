"""Interface shear of ACI 318-19 section 22.9 and AASHTO LRFD 9th ed. (2020) 5.7.4."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI, PSI
from jacketcheck.mechanics.interface_shear import (
    InterfaceSurface,
    aashto_interface_shear,
    aashto_interface_shear_limit,
    aci_friction_coefficient,
    aci_interface_shear,
    aci_interface_shear_limit,
)


@pytest.mark.parametrize(
    ("surface", "friction", "shear"),
    [
        pytest.param("monolithic", 1.4, 168.0, id="V-01-V-02-monolithic"),
        pytest.param("roughened", 1.0, 120.0, id="V-01-V-02-roughened"),
        pytest.param("smooth", 0.6, 72.0, id="V-01-V-02-smooth"),
        pytest.param("steel", 0.7, 84.0, id="V-01-V-02-steel"),
    ],
)
def test_aci_shear_friction(surface: InterfaceSurface, friction: float, shear: float) -> None:
    # Table 22.9.4.2; Avf 2.0 in2, 60 ksi, an area large enough for no limit to govern
    assert aci_friction_coefficient(surface) == friction
    strength = aci_interface_shear(
        2.0 * INCH**2,
        bar_yield=60.0 * KSI,
        area=1000.0 * INCH**2,
        concrete_strength=4.0 * KSI,
        surface=surface,
    )
    assert strength / KIP == pytest.approx(shear, rel=1e-9)


@pytest.mark.parametrize(
    ("strength", "rough", "other"),
    [
        pytest.param(3000.0, 600.0, 600.0, id="V-03-3000"),
        pytest.param(4000.0, 800.0, 800.0, id="V-03-4000"),
        pytest.param(6000.0, 960.0, 800.0, id="V-03-6000"),
        pytest.param(10000.0, 1280.0, 800.0, id="V-03-10000"),
        pytest.param(16000.0, 1600.0, 800.0, id="V-03-16000"),
    ],
)
def test_aci_limits(strength: float, rough: float, other: float) -> None:
    # Table 22.9.4.4, psi
    for surface, expected in (("roughened", rough), ("monolithic", rough), ("smooth", other)):
        limit = aci_interface_shear_limit(
            1.0,
            concrete_strength=strength * PSI,
            surface=surface,  # type: ignore[arg-type] # parametrised words
        )
        assert limit / PSI == pytest.approx(expected, rel=1e-9)


def test_aci_metric_edition_is_close() -> None:
    # ACI 318M-19: 3.3 + 0.08 f'c at 30 MPa is 5.7 MPa
    limit = aci_interface_shear_limit(1.0, concrete_strength=30.0, surface="roughened")
    assert limit == pytest.approx(5.7, rel=0.003)


@pytest.mark.parametrize(
    ("surface", "raw", "capped"),
    [
        pytest.param("monolithic", 208.0, 100.0, id="V-05-monolithic"),
        pytest.param("roughened", 144.0, 100.0, id="V-05-roughened"),
        pytest.param("smooth", 79.5, 79.5, id="V-05-smooth"),
        pytest.param("steel", 86.5, 80.0, id="V-05-steel"),
    ],
)
def test_aashto(surface: InterfaceSurface, raw: float, capped: float) -> None:
    # Acv 100 in2, Avf 2 in2, 60 ksi, f'c 4 ksi
    given = {"concrete_strength": 4.0 * KSI, "surface": surface}
    strength = aashto_interface_shear(
        2.0 * INCH**2,
        bar_yield=60.0 * KSI,
        area=100.0 * INCH**2,
        **given,  # type: ignore[arg-type] # shared keywords
    )
    assert strength / KIP == pytest.approx(capped, rel=1e-9)
    # ten times the concrete strength and area lift the limits: c Acv + mu Avf fy alone
    free = aashto_interface_shear(
        20.0 * INCH**2,
        bar_yield=60.0 * KSI,
        area=1000.0 * INCH**2,
        concrete_strength=100.0 * KSI,
        surface=surface,
    )
    assert free / KIP == pytest.approx(min(10.0 * raw, {"steel": 800.0}.get(surface, 1500.0)))


@pytest.mark.parametrize(
    ("surface", "cohesion", "friction", "share", "largest"),
    [
        # AASHTO LRFD 5.7.4.4 (5.8.4.3 before the 8th edition): c, mu, K1, K2, exact
        pytest.param("monolithic", 0.40, 1.4, 0.25, 1.5, id="V-04-monolithic"),
        pytest.param("roughened", 0.24, 1.0, 0.25, 1.5, id="V-04-roughened"),
        pytest.param("smooth", 0.075, 0.6, 0.2, 0.8, id="V-04-smooth"),
        pytest.param("steel", 0.025, 0.7, 0.2, 0.8, id="V-04-steel"),
    ],
)
def test_aashto_factors(
    surface: InterfaceSurface, cohesion: float, friction: float, share: float, largest: float
) -> None:
    # a square inch without bars, and the little that a small clamping force adds
    bare, clamped = (
        aashto_interface_shear(
            0.0,
            bar_yield=60.0 * KSI,
            area=INCH**2,
            concrete_strength=100.0 * KSI,
            surface=surface,
            clamping_force=force,
        )
        for force in (0.0, 0.01 * KIP)
    )
    assert bare / KIP == pytest.approx(cohesion)
    assert (clamped - bare) / (0.01 * KIP) == pytest.approx(friction)
    weak, strong = (
        aashto_interface_shear_limit(1.0, concrete_strength=strength * KSI, surface=surface)
        for strength in (1.0, 100.0)
    )
    assert weak / KSI == pytest.approx(share)
    assert strong / KSI == pytest.approx(largest)


def test_aashto_limit_of_weak_concrete() -> None:
    # K1 f'c = 0.25 x 4 = 1.0 ksi below K2 = 1.5 ksi
    limit = aashto_interface_shear_limit(1.0, concrete_strength=4.0 * KSI, surface="roughened")
    assert limit / KSI == pytest.approx(1.0, rel=1e-9)
