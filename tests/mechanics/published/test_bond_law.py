"""Bond stress-slip laws against printed parameters and arithmetic from them."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_factors import (
    longitudinal_crack_factor,
    transverse_pressure_factor,
    yielded_bar_factor,
)
from jacketcheck.mechanics.bond_law import BondLaw, bond_stress
from jacketcheck.mechanics.published_bond_laws import (
    BondCondition,
    eligehausen_bond_law,
    model_code_1990_bond_law,
    pullout_bond_law,
    splitting_bond_strength,
)


def _numbers(law: BondLaw) -> tuple[float, ...]:
    """Peak, slips and residual ratio."""
    ratio = float(law.residual_stress) / float(law.peak_stress)
    return float(law.peak_stress), float(law.slip_1), float(law.slip_2), float(law.slip_3), ratio


@pytest.mark.parametrize(
    ("condition", "strength", "expected"),
    [
        pytest.param("good", 20.0, 11.18, id="D-01-20"),
        pytest.param("good", 28.0, 13.23, id="D-01-28"),
        pytest.param("good", 30.0, 13.69, id="D-01-30"),
        pytest.param("good", 38.0, 15.41, id="D-01-38"),
        pytest.param("good", 40.0, 15.81, id="D-01-40"),
        pytest.param("good", 50.0, 17.68, id="D-01-50"),
        pytest.param("other", 20.0, 5.59, id="D-02-20"),
        pytest.param("other", 30.0, 6.85, id="D-02-30"),
        pytest.param("other", 38.0, 7.71, id="D-02-38"),
        pytest.param("other", 50.0, 8.84, id="D-02-50"),
    ],
)
def test_pullout_strength(condition: BondCondition, strength: float, expected: float) -> None:
    # fib Model Code 2010 (2013), Table 6.1-1: 2.5 or 1.25 times the root of f_cm
    law = pullout_bond_law(strength, clear_rib_spacing=12.0, bond_condition=condition)
    slips = (1.0, 2.0) if condition == "good" else (1.8, 3.6)
    assert _numbers(law) == pytest.approx((expected, *slips, 12.0, 0.4), rel=1e-3)
    assert law.exponent == 0.4


@pytest.mark.parametrize(
    ("slip", "expected"),
    [
        pytest.param(0.01, 2.442, id="D-03-0.01"),
        pytest.param(0.1, 6.135, id="D-03-0.1"),
        pytest.param(0.25, 8.851, id="D-03-0.25"),
        pytest.param(0.5, 11.679, id="D-03-0.5"),
        pytest.param(1.0, 15.411, id="D-03-1"),
        pytest.param(1.5, 15.411, id="D-03-1.5"),
        pytest.param(6.0, 11.712, id="D-04-6"),
        pytest.param(12.0, 6.164, id="D-04-12"),
        pytest.param(50.0, 6.164, id="D-04-50"),
    ],
)
def test_branches(slip: float, expected: float) -> None:
    # fib Model Code 2010 (2013), Eq. 6.1-1 to 6.1-4; good bond, f_cm 38 MPa, ribs 12 mm apart
    law = pullout_bond_law(38.0, clear_rib_spacing=12.0, bond_condition="good")
    assert bond_stress(slip, law) == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize(
    ("condition", "ribs", "expected"),
    [
        pytest.param("good", None, (10.95, 0.6, 0.6, 1.0, 0.15), id="D-05-06-unconfined-good"),
        pytest.param("other", None, (5.48, 0.6, 0.6, 2.5, 0.15), id="D-05-06-unconfined-other"),
        pytest.param("good", 11.0, (13.69, 1.0, 3.0, 11.0, 0.40), id="D-05-06-confined-good"),
        pytest.param("other", 11.0, (6.85, 1.0, 3.0, 11.0, 0.40), id="D-05-06-confined-other"),
    ],
)
def test_model_code_1990(
    condition: BondCondition, ribs: float | None, expected: tuple[float, ...]
) -> None:
    # CEB-FIP Model Code 1990, Table 3.1.1, f_ck 30 MPa
    law = model_code_1990_bond_law(30.0, bond_condition=condition, clear_rib_spacing=ribs)
    assert _numbers(law) == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize(
    ("slip", "expected"),
    [
        pytest.param(0.1, 5.37, id="D-07-0.1"),
        pytest.param(0.5, 10.23, id="D-07-0.5"),
        pytest.param(2.0, 13.5, id="D-07-plateau"),
        pytest.param(6.75, 9.25, id="D-07-half-fallen"),
        pytest.param(10.5, 5.0, id="D-07-residual"),
    ],
)
def test_eligehausen(slip: float, expected: float) -> None:
    # Eligehausen, Popov and Bertero, UCB/EERC-83/23 (1983): 25 mm bars, f'c 30 MPa
    assert bond_stress(slip, eligehausen_bond_law()) == pytest.approx(expected, rel=2e-3)


@pytest.mark.parametrize(
    ("strength", "diameter", "covers", "index", "expected"),
    [
        pytest.param(38.0, 25.0, (50.0, 50.0), 0.0, 9.072, id="D-09-a"),
        pytest.param(38.0, 25.0, (25.0, 50.0), 0.0, 7.735, id="D-09-b"),
        pytest.param(28.0, 32.0, (64.0, 64.0), 0.0, 8.000, id="D-09-c"),
        pytest.param(38.0, 25.0, (50.0, 50.0), 0.02, 10.80, id="D-09-hoops"),
    ],
)
def test_splitting_strength(
    strength: float, diameter: float, covers: tuple[float, float], index: float, expected: float
) -> None:
    # fib Model Code 2010 (2013), Eq. 6.1-5
    found = splitting_bond_strength(
        strength,
        bar_diameter=diameter,
        minimum_cover=covers[0],
        maximum_cover=covers[1],
        bond_condition="good",
        transverse_index=index,
    )
    assert found == pytest.approx(expected, rel=1e-3)


def test_pressure_factor() -> None:
    # fib Model Code 2010 (2013), 6.1.1.3: 1 - tanh(0.2 p / (0.1 f_cm)); tanh 0.5 = 0.46212
    assert transverse_pressure_factor(10.0, concrete_strength=40.0) == pytest.approx(
        1.46212, abs=5e-6
    )


def test_crack_factor() -> None:
    # fib Model Code 2010 (2013), 6.1.1.3: 1 - 1.2 w
    assert longitudinal_crack_factor(0.25) == pytest.approx(0.7, rel=1e-12)


@pytest.mark.parametrize(
    ("ratio", "part", "expected"),
    [
        # 1 - 0.85 (1 - exp(-5 a**b)); exp(-1) = 0.367879, exp(-5) = 0.0067379
        pytest.param(1.0, 0.2, 0.462697, id="b=1"),
        pytest.param(1.5, 0.2**4, 0.462697, id="b=1/4"),
        pytest.param(1.3, 1.0, 0.155727, id="ultimate"),
        pytest.param(1.3, 0.0, 1.0, id="yield"),
    ],
)
def test_yield_factor(ratio: float, part: float, expected: float) -> None:
    # fib Model Code 2010 (2013), 6.1.1.3, with b = (2 - ft/fy)**2
    steel = BarSteel(400.0, 400.0 * ratio, 0.01, 0.082, 200e3)
    strain = 0.002 + part * 0.08
    assert yielded_bar_factor(strain, steel) == pytest.approx(expected, abs=1e-5)


def test_trends_of_untrauer_and_henry() -> None:
    # Untrauer and Henry, ACI J. 62(5) (1965): bond at ultimate grows with the root of the concrete
    # strength, and with pressure up to 2370 psi (16.3 MPa) ever more slowly
    strengths = np.array([20.0, 80.0])
    peak = pullout_bond_law(strengths, clear_rib_spacing=12.0, bond_condition="good").peak_stress
    low, high = np.asarray(peak)
    assert high / low == pytest.approx(2.0, rel=1e-12)
    factor = transverse_pressure_factor(np.linspace(0.0, 16.3, 9), concrete_strength=35.0)
    growth = np.diff(np.asarray(factor))
    assert np.all(growth > 0.0)
    assert np.all(np.diff(growth) < 0.0)
