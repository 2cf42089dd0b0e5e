"""Developed stress against adaptive integration, and against closed forms of simple laws."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, BarSteels
from jacketcheck.mechanics.bond_development import bonded_length, developed_stress
from jacketcheck.mechanics.bond_law import BondLaw, bond_energy
from jacketcheck.mechanics.bond_profile import bond_profile

STEEL = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
ELASTIC = BarSteel(1200.0, 1300.0, 0.05, 0.1, 200e3)  # stays elastic in these tests


@dataclass(frozen=True)
class Case:
    """A bar written out for an integrator of its own."""

    law: BondLaw
    diameter: float
    length: float
    steel: BarSteel = STEEL

    def local_bond(self, slip: float) -> float:
        """Branches of the law, written out apart from the package."""
        law = self.law
        peak, residual = float(law.peak_stress), float(law.residual_stress)
        one, two, three = float(law.slip_1), float(law.slip_2), float(law.slip_3)
        if slip < one:
            return float(
                peak * (max(slip, 1e-12) / one) ** float(law.exponent)
            )  # trial steps overshoot
        if slip <= two:
            return peak
        if slip < three:
            return peak + (residual - peak) * (slip - two) / (three - two)
        return residual

    def yielded(self, strain: float) -> float:
        steel = self.steel
        yield_strain = steel.yield_strength / steel.elastic_modulus
        part = (strain - yield_strain) / (steel.ultimate_strain - yield_strain)
        ratio = steel.tensile_strength / steel.yield_strength
        return float(1.0 - 0.85 * (1.0 - np.exp(-5.0 * part ** ((2.0 - ratio) ** 2))))

    def stress_at_loaded_end(self, free_end_slip: float) -> float:
        """Elastic part in steps of distance, hardening part in steps of strain."""
        steel, diameter = self.steel, self.diameter

        def elastic(_: float, state: Floats) -> list[float]:
            stress, slip = state
            return [4.0 * self.local_bond(slip) / diameter, stress / steel.elastic_modulus]

        def yields(_: float, state: Floats) -> float:
            return float(state[0]) - steel.yield_strength

        yields.terminal = True  # type: ignore[attr-defined] # scipy's way to stop
        first = solve_ivp(
            elastic, (0.0, self.length), [0.0, free_end_slip], events=yields, rtol=1e-7, atol=1e-11
        )
        if first.status == 0:
            return float(first.y[0, -1])
        span = steel.ultimate_strain - steel.hardening_strain
        gain = steel.tensile_strength - steel.yield_strength

        def hardening(strain: float, state: Floats) -> list[float]:
            slope = 2.0 * gain / span**2 * (steel.ultimate_strain - strain)
            bond = self.local_bond(float(state[1])) * self.yielded(strain)
            advance = slope * diameter / (4.0 * bond)
            return [advance, strain * advance]

        def arrives(_: float, state: Floats) -> float:
            return float(state[0]) - self.length

        arrives.terminal = True  # type: ignore[attr-defined] # scipy's way to stop
        second = solve_ivp(
            hardening,
            (steel.hardening_strain, steel.ultimate_strain),
            [float(first.t[-1]), float(first.y[1, -1])],
            events=arrives,
            rtol=1e-7,
            atol=1e-11,
        )
        left = (steel.ultimate_strain - float(second.t[-1])) / span
        return steel.tensile_strength - gain * left**2


CASES = [
    pytest.param(Case(BondLaw(17.7, 1.0, 2.0, 13.5, 0.4, 7.1), 32.0, 150.0), id="elastic"),
    pytest.param(Case(BondLaw(17.7, 1.0, 2.0, 13.5, 0.4, 7.1), 32.0, 500.0), id="hardening"),
    pytest.param(Case(BondLaw(17.7, 1.0, 2.0, 13.5, 0.4, 7.1), 32.0, 900.0), id="near fracture"),
    pytest.param(Case(BondLaw(4.0, 0.6, 0.6, 7.0, 0.4, 1.6), 36.0, 900.0), id="poor bond"),
    pytest.param(Case(BondLaw(5.0, 0.15, 0.15, 0.18, 0.4, 0.0), 25.0, 400.0), id="brittle"),
    pytest.param(Case(BondLaw(9.0, 0.4, 1.0, 1.0, 0.25, 3.0), 43.0, 700.0), id="sudden drop"),
]


@pytest.mark.parametrize("case", CASES)
def test_no_free_end_slip_gives_more(case: Case) -> None:
    found = developed_stress(
        case.length, bar_diameter=case.diameter, law=case.law, steel=case.steel
    )
    here = case.stress_at_loaded_end(float(found.free_end_slip))
    assert found.stress == pytest.approx(here, rel=2e-3)
    others = [
        case.stress_at_loaded_end(float(slip))
        for slip in np.geomspace(1e-7, float(case.law.slip_3) * 0.999, 40)
    ]
    assert found.stress == pytest.approx(max(*others, here), rel=2e-3)


@pytest.mark.parametrize("case", CASES)
def test_length_and_stress_are_inverse(case: Case) -> None:
    found = developed_stress(
        case.length, bar_diameter=case.diameter, law=case.law, steel=case.steel
    )
    length = bonded_length(found.stress, bar_diameter=case.diameter, law=case.law, steel=case.steel)
    assert length <= case.length * (1.0 + 1e-3)
    again = developed_stress(length, bar_diameter=case.diameter, law=case.law, steel=case.steel)
    assert again.stress == pytest.approx(float(found.stress), rel=1e-3)


@pytest.mark.parametrize("length", [10.0, 200.0, 700.0])
def test_rigid_plastic_bond(length: float) -> None:
    # fs = 4 tau l / d
    law = BondLaw(8.0, 1e-9, 10.0, 20.0, 0.4, 8.0)
    found = developed_stress(length, bar_diameter=25.0, law=law, steel=ELASTIC)
    assert found.stress == pytest.approx(4.0 * 8.0 * length / 25.0, rel=1e-6)
    back = bonded_length(found.stress, bar_diameter=25.0, law=law, steel=ELASTIC)
    assert back == pytest.approx(length, rel=1e-6)


def test_power_law_in_a_long_bar() -> None:
    # A bar that slips on its rising branch only, at rest far away: sigma**2 = (8 E / d) int tau ds,
    # distance x = 2 / (1 - alpha) E s / sigma back to where it rests
    law = BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0)
    slip = 0.8
    stress = np.sqrt(8.0 * 200e3 / 32.0 * float(bond_energy(slip, law)))
    rest = 2.0 / (1.0 - 0.4) * slip * 200e3 / stress
    along = bond_profile(
        rest * 1.5, bar_diameter=32.0, law=law, steel=ELASTIC, loaded_end_stress=float(stress)
    )
    assert along.slip[-1] == pytest.approx(slip, rel=1e-3)
    moving = along.stress > 1e-3 * stress
    assert along.distance[moving][0] > 0.4 * rest
    middle = np.interp(rest, along.distance, along.stress)  # half the rest's length from its end
    # sigma ~ x**((1 + alpha) / (1 - alpha)) from the point of rest, which lies at 0.5 rest
    assert middle == pytest.approx(stress * 0.5 ** (1.4 / 0.6), rel=1e-2)


def test_softening_bond_of_an_elastic_bar() -> None:
    # tau = k (s3 - s) from slip s2 on: the slip left, s3 - s, follows a cosine of the distance
    law = BondLaw(10.0, 1e-6, 1e-6, 4.0, 0.4, 0.0)
    wave = np.sqrt(4.0 * 2.5 / (32.0 * 200e3))
    length = 0.9 * np.pi / 2.0 / wave
    found = developed_stress(length, bar_diameter=32.0, law=law, steel=ELASTIC)
    # sigma = E wave (s3 - s0) sin(wave l), largest with the least free-end slip
    assert found.stress == pytest.approx(200e3 * wave * 4.0 * np.sin(0.9 * np.pi / 2.0), rel=2e-3)


def test_brittle_bond_has_a_limit_that_length_does_not_raise() -> None:
    # energy of the law spent: sigma**2 = (8 E / d) int tau ds
    law = BondLaw(5.0, 0.15, 0.15, 0.18, 0.4, 0.0)
    limit = np.sqrt(8.0 * 200e3 / 25.0 * float(bond_energy(0.18, law)))
    found = developed_stress(np.array([2000.0, 20000.0]), bar_diameter=25.0, law=law, steel=ELASTIC)
    np.testing.assert_allclose(found.stress, limit, rtol=2e-3)
    assert bonded_length(limit * 1.01, bar_diameter=25.0, law=law, steel=ELASTIC) == np.inf


def test_profile_obeys_equilibrium_and_compatibility() -> None:
    law = BondLaw(17.7, 1.0, 2.0, 13.5, 0.4, 7.1)
    along = bond_profile(700.0, bar_diameter=32.0, law=law, steel=STEEL)
    reached = developed_stress(700.0, bar_diameter=32.0, law=law, steel=STEEL)
    assert along.stress[0] == 0.0
    assert along.stress[-1] == pytest.approx(float(reached.stress), rel=1e-6)
    assert along.slip[-1] == pytest.approx(float(reached.loaded_end_slip), rel=3e-2)
    by_bond = 4.0 / 32.0 * np.trapezoid(along.bond_stress, along.distance)
    assert by_bond == pytest.approx(along.stress[-1], rel=3e-3)
    by_strain = np.trapezoid(along.strain, along.distance)
    assert by_strain == pytest.approx(along.slip[-1] - along.slip[0], rel=3e-3)
    jump = np.flatnonzero(np.diff(along.distance) == 0.0)
    assert along.stress[jump] == pytest.approx(STEEL.yield_strength)
    assert along.strain[jump + 1] == pytest.approx(STEEL.hardening_strain)


def test_profile_of_a_bar_pulled_with_less_than_it_can_take() -> None:
    law = BondLaw(17.7, 1.0, 2.0, 13.5, 0.4, 7.1)
    along = bond_profile(2000.0, bar_diameter=32.0, law=law, steel=STEEL, loaded_end_stress=300.0)
    assert along.stress[-1] == pytest.approx(300.0, rel=1e-12)
    assert np.all(np.diff(along.distance) >= 0.0)
    assert np.interp(1000.0, along.distance, along.stress) == pytest.approx(0.0, abs=1e-6)
    # energy balance at the loaded end
    assert bond_energy(float(along.slip[-1]), law) == pytest.approx(
        300.0**2 * 32.0 / 16e5, rel=1e-6
    )


def test_a_thousand_bars_at_once() -> None:
    count = 1000
    law = BondLaw(np.linspace(4.0, 20.0, count), 1.0, 2.0, 13.5, 0.4, np.linspace(1.0, 8.0, count))
    steels = BarSteels(np.linspace(400.0, 520.0, count), 655.0, 0.0115, 0.09, 200e3)
    found = developed_stress(900.0, bar_diameter=32.0, law=law, steel=steels)
    assert np.shape(found.stress) == (count,)


@pytest.mark.parametrize("share", [0.9, 0.999, 1.0])
@pytest.mark.parametrize(
    "length",
    [
        pytest.param(150.0, id="all of it slips"),
        pytest.param(450.0, id="bond used up at the loaded end"),
        pytest.param(3000.0, id="most of it rests"),
    ],
)
def test_profile_where_no_bond_is_left(length: float, share: float) -> None:
    """Integrated again from the loaded end, which the profile gives both stress and slip."""
    law = BondLaw(8.0, 0.9, 0.9, 3.0, 0.4, 0.0)
    bar = Case(law, 25.0, length, ELASTIC)
    most = developed_stress(length, bar_diameter=25.0, law=law, steel=ELASTIC)
    along = bond_profile(
        length,
        bar_diameter=25.0,
        law=law,
        steel=ELASTIC,
        loaded_end_stress=share * float(most.stress),
    )
    assert np.diff(along.stress).max() < 0.02 * along.stress[-1]
    assert along.slip[-1] <= 1.0001 * max(float(most.loaded_end_slip), 3.0)

    def inwards(_: float, state: Floats) -> list[float]:
        stress, slip = state
        return [-4.0 * bar.local_bond(slip) / 25.0, -stress / 200e3]

    # below this slip the way back is too ill-conditioned to be followed
    seen = along.slip > 0.02 * along.slip[-1]
    places = length - along.distance[seen][::-1]
    again = solve_ivp(
        inwards,
        (0.0, float(places[-1]) + 1e-9),
        [along.stress[-1], along.slip[-1]],
        t_eval=places,
        rtol=1e-9,
        atol=1e-10,
    )
    assert again.y[0][::-1] == pytest.approx(along.stress[seen], abs=5e-3 * along.stress[-1])
    assert again.y[1][::-1] == pytest.approx(along.slip[seen], abs=5e-3 * along.slip[-1])


def test_the_most_that_bond_develops_uses_up_its_energy() -> None:
    law = BondLaw(5.0, 0.15, 0.15, 0.18, 0.4, 0.0)
    along = bond_profile(2500.0, bar_diameter=25.0, law=law, steel=ELASTIC)
    # sigma**2 = (8 E / d) int tau ds, where bond ends; most of the bar rests
    assert along.stress[-1] ** 2 == pytest.approx(
        8.0 * 200e3 / 25.0 * (5.0 * 0.15 / 1.4 + 0.5 * 5.0 * 0.03), rel=1e-3
    )
    assert along.slip[-1] == pytest.approx(0.18, rel=2e-2)
    by_bond = 4.0 / 25.0 * np.trapezoid(along.bond_stress, along.distance)
    assert by_bond == pytest.approx(along.stress[-1], rel=2e-3)
