"""Limits that cut formulas off, worked by hand in the units of their source."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics.guide_spec_column_shear import guide_spec_concrete_shear
from jacketcheck.mechanics.interface_shear import InterfaceSurface, aashto_interface_shear
from jacketcheck.mechanics.published_bond_laws import pullout_bond_law, splitting_bond_law
from jacketcheck.mechanics.slip import AASHTO_SLIP_RESISTANCE_FACTOR

INCH, KIP = 25.4, 4448.2216152605
KSI = KIP / INCH**2


@pytest.mark.parametrize(
    ("factor", "axial_kip", "expected_kip"),
    [
        # f'c = 4 ksi, Ag = 1000 in², Ae = 800 in²
        pytest.param(1.0, 200.0, 0.032 * 1.1 * 2.0 * 800.0, id="formula"),
        pytest.param(1.0, 1000.0, 0.047 * 2.0 * 800.0, id="0.047 alpha' sqrt(f'c)"),
        pytest.param(3.0, 1000.0, 0.11 * 2.0 * 800.0, id="0.11 sqrt(f'c)"),
        pytest.param(0.3, 3000.0, 0.3 * 0.047 * 2.0 * 800.0, id="least alpha'"),
    ],
)
def test_concrete_shear_of_the_guide_specifications(
    factor: float, axial_kip: float, expected_kip: float
) -> None:
    """AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.6.2-1 to -4: coefficients as printed."""
    shear = guide_spec_concrete_shear(
        1000.0 * INCH**2,
        concrete_strength=4.0 * KSI,
        axial_load=axial_kip * KIP,
        concrete_factor=factor,
    )
    assert float(shear) / KIP == pytest.approx(expected_kip, rel=1e-12)


@pytest.mark.parametrize(
    ("surface", "strength_ksi", "bar_in2", "expected_kip"),
    [
        # Acv = 100 in², fy = 60 ksi; c Acv + mu Avf fy
        pytest.param("steel", 4.0, 0.5, 2.5 + 0.7 * 30.0, id="steel"),
        pytest.param("smooth", 4.0, 0.5, 7.5 + 0.6 * 30.0, id="smooth"),
        pytest.param("roughened", 4.0, 0.5, 24.0 + 30.0, id="roughened"),
        pytest.param("monolithic", 4.0, 0.5, 40.0 + 1.4 * 30.0, id="monolithic"),
        # K1 f'c Acv
        pytest.param("steel", 3.0, 9.0, 0.2 * 300.0, id="steel, K1"),
        pytest.param("smooth", 3.0, 9.0, 0.2 * 300.0, id="smooth, K1"),
        pytest.param("roughened", 3.0, 9.0, 0.25 * 300.0, id="roughened, K1"),
        pytest.param("monolithic", 3.0, 9.0, 0.25 * 300.0, id="monolithic, K1"),
        # K2 Acv
        pytest.param("steel", 10.0, 9.0, 80.0, id="steel, K2"),
        pytest.param("smooth", 10.0, 9.0, 80.0, id="smooth, K2"),
        pytest.param("roughened", 10.0, 9.0, 150.0, id="roughened, K2"),
        pytest.param("monolithic", 10.0, 9.0, 150.0, id="monolithic, K2"),
    ],
)
def test_interface_shear(
    surface: InterfaceSurface, strength_ksi: float, bar_in2: float, expected_kip: float
) -> None:
    """AASHTO LRFD 9th ed. (2020), 5.7.4.3 and 5.7.4.4 (values from memory)."""
    shear = aashto_interface_shear(
        bar_in2 * INCH**2,
        bar_yield=60.0 * KSI,
        area=100.0 * INCH**2,
        concrete_strength=strength_ksi * KSI,
        surface=surface,
    )
    assert float(shear) / KIP == pytest.approx(expected_kip, rel=1e-12)


def test_slip_is_checked_without_a_resistance_factor() -> None:
    """AASHTO LRFD 9th ed. (2020), 6.13.2.2: R_r = R_n (from memory)."""
    assert AASHTO_SLIP_RESISTANCE_FACTOR == 1.0


def test_nothing_is_left_of_bond_once_concrete_without_stirrups_has_split() -> None:
    """fib Model Code 2010 (2013), Table 6.1-1 (from memory): s3 = 1.2 s1 and no residual."""
    pullout = pullout_bond_law(36.0, bond_condition="good", clear_rib_spacing=12.0)
    law = splitting_bond_law(pullout, splitting_strength=7.5, confinement="unconfined")
    # half of 2.5 sqrt(36) = 15 is reached at 0.5 ** (1 / 0.4) of 1 mm
    assert float(law.peak_stress) == pytest.approx(7.5)
    assert float(law.slip_1) == float(law.slip_2) == pytest.approx(0.5**2.5)
    assert float(law.slip_3) == pytest.approx(1.2 * 0.5**2.5)
    assert float(law.residual_stress) == 0.0


def test_what_is_left_of_bond_once_concrete_with_stirrups_has_split() -> None:
    """fib Model Code 2010 (2013), Table 6.1-1 (from memory): s3 = 0.5 c_clear, 40 % residual."""
    pullout = pullout_bond_law(36.0, bond_condition="good", clear_rib_spacing=12.0)
    law = splitting_bond_law(pullout, splitting_strength=7.5, confinement="stirrups")
    assert float(law.peak_stress) == pytest.approx(7.5)
    assert float(law.slip_1) == float(law.slip_2) == pytest.approx(0.5**2.5)
    assert float(law.slip_3) == pytest.approx(6.0)
    assert float(law.residual_stress) == pytest.approx(3.0)
