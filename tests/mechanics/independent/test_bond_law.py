"""Bond laws against another library, numerical integration and pointwise comparison."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad
from structuralcodes.codes import mc2010

from jacketcheck.mechanics.bond_law import (
    BondLaw,
    bond_energy,
    bond_stress,
    slip_at_bond_energy,
    weaker_bond_law,
)
from jacketcheck.mechanics.published_bond_laws import (
    BondCondition,
    SplittingConfinement,
    pullout_bond_law,
    splitting_bond_law,
    splitting_bond_strength,
)

LAWS = [
    pytest.param(BondLaw(15.4, 1.0, 2.0, 12.0, 0.4, 6.16), id="pull-out"),
    pytest.param(BondLaw(5.0, 0.3, 0.3, 0.36, 0.4, 0.0), id="splitting, nothing left"),
    pytest.param(BondLaw(8.0, 0.5, 1.0, 1.0, 0.3, 2.0), id="sudden drop"),
    pytest.param(BondLaw(8.0, 0.5, 1.0, 4.0, 1.0, 8.0), id="no fall"),
]
SLIPS = np.array([0.0, 1e-6, 0.2, 0.3, 0.35, 0.7, 1.0, 1.5, 3.0, 11.0, 15.0])


@pytest.mark.parametrize("law", LAWS)
def test_energy_is_the_integral(law: BondLaw) -> None:
    bends = [float(law.slip_1), float(law.slip_2), float(law.slip_3)]
    for slip in SLIPS[1:]:
        points = [bend for bend in bends if bend < slip]
        area = quad(
            lambda s: float(bond_stress(s, law)), 0.0, slip, points=points or None, epsabs=0.0
        )[0]
        assert bond_energy(slip, law) == pytest.approx(area, rel=1e-6)


@pytest.mark.parametrize("law", LAWS)
def test_slip_at_energy_inverts(law: BondLaw) -> None:
    slips = SLIPS if law.residual_stress else SLIPS[law.slip_3 > SLIPS]
    back = slip_at_bond_energy(bond_energy(slips, law), law)
    np.testing.assert_allclose(back, slips, rtol=1e-9, atol=1e-12)


def test_energy_that_is_never_reached() -> None:
    law = BondLaw(5.0, 0.3, 0.3, 0.36, 0.4, 0.0)
    most = float(bond_energy(100.0, law))
    assert slip_at_bond_energy(most * 1.001, law) == np.inf
    assert slip_at_bond_energy(np.array([0.5, 2.0]) * most, law)[1] == np.inf  # type: ignore[index] # an array went in


@pytest.mark.parametrize("condition", ["good", "other"])
def test_pullout_parameters_of_another_library(condition: BondCondition) -> None:
    law = pullout_bond_law(43.0, clear_rib_spacing=14.0, bond_condition=condition)
    assert law.peak_stress == pytest.approx(mc2010.tau_bmax(bond=condition, f_cm=43.0))
    assert law.slip_1 == mc2010.s_1(bond=condition)
    assert law.slip_2 == mc2010.s_2(bond=condition)
    assert law.slip_3 == mc2010.s_3(
        failmod="PO", bond=condition, confinement="stirrups", c_clear=14.0, s_1=law.slip_1
    )


@pytest.mark.parametrize("condition", ["good", "other"])
@pytest.mark.parametrize("confinement", ["unconfined", "stirrups"])
@pytest.mark.parametrize("index", [0.0, 0.015])
def test_splitting_parameters_of_another_library(
    condition: BondCondition, confinement: SplittingConfinement, index: float
) -> None:
    strength = splitting_bond_strength(
        27.0,
        bar_diameter=36.0,
        minimum_cover=40.0,
        maximum_cover=75.0,
        bond_condition=condition,
        transverse_index=index,
    )
    expected = mc2010.tau_bu_split(
        eta_2=mc2010.eta_2(bond=condition),
        f_cm=27.0,
        phi=36.0,
        c_min=40.0,
        c_max=75.0,
        k_m=12.0,
        K_tr=index,
    )
    assert strength == pytest.approx(expected, rel=1e-12)
    pullout = pullout_bond_law(27.0, clear_rib_spacing=15.0, bond_condition=condition)
    law = splitting_bond_law(pullout, splitting_strength=strength, confinement=confinement)
    if expected >= float(pullout.peak_stress):
        assert law.peak_stress == pullout.peak_stress
        assert law.slip_3 == pullout.slip_3
        return
    slip = mc2010.s_tau_bu_split(
        tau_bmax=float(pullout.peak_stress),
        tau_bu_split=expected,
        alpha=0.4,
        s_1=float(pullout.slip_1),
    )
    assert law.slip_1 == pytest.approx(slip, rel=1e-12)
    assert law.slip_2 == law.slip_1
    assert law.slip_3 == pytest.approx(
        mc2010.s_3(failmod="SP", bond=condition, confinement=confinement, c_clear=15.0, s_1=slip)
    )


@pytest.mark.parametrize(
    ("one", "other", "exact"),
    [
        pytest.param(
            BondLaw(15.0, 1.0, 2.0, 12.0, 0.4, 6.0),
            BondLaw(7.0, 1.8, 3.6, 12.0, 0.4, 2.8),
            True,
            id="one below",
        ),
        pytest.param(
            BondLaw(8.0, 1.0, 2.0, 12.0, 0.4, 3.2),
            BondLaw(7.9, 1.8, 3.6, 12.0, 0.4, 3.16),
            False,
            id="crossing on the fall",
        ),
        pytest.param(
            BondLaw(8.0, 0.1, 0.1, 0.12, 0.4, 0.0),
            BondLaw(5.0, 1.8, 3.6, 12.0, 0.4, 2.0),
            False,
            id="brittle against soft",
        ),
        pytest.param(
            BondLaw(8.0, 0.5, 3.0, 3.0, 0.4, 4.0),
            BondLaw(8.0, 0.5, 1.0, 4.0, 0.4, 3.9),
            False,
            id="sudden drop against fall",
        ),
    ],
)
def test_weaker_law_is_nowhere_stronger(one: BondLaw, other: BondLaw, *, exact: bool) -> None:
    slip = np.concatenate([np.geomspace(1e-6, 0.05, 200), np.linspace(0.05, 15.0, 6000)])
    least = np.minimum(bond_stress(slip, one), bond_stress(slip, other))
    for law in (weaker_bond_law(one, other), weaker_bond_law(other, one)):
        stress = np.asarray(bond_stress(slip, law))
        assert np.all(stress <= least * (1.0 + 1e-12))
        assert np.allclose(stress, least, rtol=1e-12) == exact
