"""Bond of the fractured bars against scipy's adaptive integration along the bar.

The Model Code's law, its factors for pressure and cracks, and the bar's elastic stress are written
out here; the free-end slip with the largest stress is found by scipy's bounded search. The bars are
kept below yield by short repairs, so that neither hardening nor the factor for yield enters.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.bond import BarBond, bar_bonds, stress_at_height
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.retained import bond_pressure
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from tests.support.jackets import built

INCH: Final = 25.4
DIAMETER: Final = 1.128 * INCH
MODULUS: Final = 200e3
FY: Final = 68.0 * 6.894757293168361
LOW: Final = """
repair.height = "14 in"
repair.gap = "1 in"
bolts.rows = 3
bolts.pitch = "4 in"
bolts.end_distance = "2-1/2 in"
bolts.product = "ASTM F3125 A490"
bolts.diameter = "1-1/8 in"
bolts.columns = 6
sleeve.thickness = "1-1/2 in"
added_bars.height = "14 in"
added_bars.count = 12
"""
"""A repair so low that the bars stay elastic. Its laps are short: it takes a strong sleeve and many
bolts to hold them without slip."""


ROUGH: Final = (
    "column.bars.count = 14\njudgement.crack_friction = 3.0\n"
    'judgement.bar_target = "yield"\njudgement.clamping_strain = 0.0015'
)
"""Bars wide apart, and cracks so rough that the pressure kept is enough."""


@dataclass(frozen=True)
class Law:
    """Power curve, plateau, straight fall and residual [MPa, mm]."""

    peak: float
    slip_1: float
    slip_2: float
    slip_3: float
    residual: float = 0.4

    def stress(self, slip: float) -> float:
        if slip <= self.slip_1:
            return self.peak * math.pow(max(slip, 0.0) / self.slip_1, 0.4)
        if slip <= self.slip_2:
            return self.peak
        fall = (slip - self.slip_2) / (self.slip_3 - self.slip_2)
        return self.peak * max(1.0 - (1.0 - self.residual) * fall, self.residual)


@dataclass(frozen=True)
class Blend:
    """A share of the bar's surface held, the rest free to split."""

    held: Law
    loose: Law
    share: float

    @property
    def slip_3(self) -> float:
        return max(self.held.slip_3, self.loose.slip_3)

    def stress(self, slip: float) -> float:
        return self.share * self.held.stress(slip) + (1.0 - self.share) * self.loose.stress(slip)


def _split(strength: float, pullout: float, slip_1: float, covers: tuple[float, float]) -> Law:
    """Splitting without anything that holds the crack: nothing left at 1.2 times its slip."""
    least, most = min(covers), max(covers)
    position = 1.0 if slip_1 == 1.0 else 0.7
    peak = (
        position * 6.5 * (strength / 25.0) ** 0.25 * (25.0 / DIAMETER) ** 0.2
        * (min(least / DIAMETER, 3.5) ** 0.33 * min(most / least, 5.0) ** 0.1)
    )  # fmt: skip
    assert peak < pullout
    rise = slip_1 * (peak / pullout) ** 2.5
    return Law(peak, rise, rise, 1.2 * rise, 0.0)


def _held(pressure: float, length: float, force: float = 95.0) -> float:
    """Kept pressure over A_b f_u/(μ l p), at most 1; the crack of a bar that splits off alone."""
    crack = 2.0 * math.sqrt(2.0) * (1.128 + 2.625)
    need = force * 6.894757293168361 / (1.4 * crack * length / INCH)
    return min(pressure / need, 1.0)


def _pressed(strength: float, pressure: float) -> float:
    """Model Code factor for pressure across the bar."""
    return 1.0 + math.tanh(0.2 * pressure / (0.1 * strength))


def _developed(law: Law | Blend, length: float) -> float:
    """Largest stress at the end of a bonded length, over all free-end slips."""

    def lost(log_slip: float) -> float:
        def slopes(_: float, state: np.ndarray) -> list[float]:
            return [state[1] / MODULUS, 4.0 * law.stress(state[0]) / DIAMETER]

        path = solve_ivp(slopes, (0.0, length), [math.exp(log_slip), 0.0], rtol=1e-8, atol=1e-10)
        return -float(path.y[1, -1])

    trials = np.linspace(math.log(1e-6), math.log(law.slip_3), 60)
    best = int(np.argmin([lost(trial) for trial in trials]))
    around = (trials[max(best - 1, 0)], trials[min(best + 1, trials.size - 1)])
    return -float(minimize_scalar(lost, bounds=around, method="bounded").fun)


def _bond(jacket: Jacket, place: int) -> BarBond:
    return bar_bonds(jacket)[place]


def test_chipped_bar_in_grout() -> None:
    known = CheckedStrain(declared=0.001, found=0.0, base_holds=True, value=0.001)
    jacket = assuming(
        built(LOW),
        {checked_axial_strain: known, tension_share: 0.5},
    )
    grout, pressure = 8.0 * 6.894757293168361, float(bond_pressure(jacket))
    assert pressure > 0.0
    pullout = 2.5 * math.sqrt(grout)
    covers = 30.0 * INCH - (24.0 - 2.0 - 0.625) * INCH, _clear_spacing(20) / 2.0
    law = Blend(
        Law(pullout * _pressed(grout, pressure), 1.0, 2.0, DIAMETER / 2.0),
        _split(grout, pullout, 1.0, covers),
        _held(pressure, 9.0 * INCH),
    )
    # bar 11 is fractured at 5 in
    at = np.array([7.0, 8.5, 10.0]) * INCH
    expected = [_developed(law, float(height) - 5.0 * INCH) for height in at]
    assert max(expected) < FY
    # between the free-end slips of the curve the narrow peak of splitting is cut off
    found = stress_at_height(jacket, at)[2]
    assert np.all(found <= np.array(expected) * 1.003)
    assert np.all(found >= np.array(expected) * 0.94)


def test_unchipped_bar_in_cracked_concrete() -> None:
    """Pull-out with other bond conditions governs where cover and bars are wide apart."""
    wide = 'damage = [{ bars = [1], state = "fractured", height = "4 in", crack_width = "0.2 mm" }]'
    known = CheckedStrain(declared=0.001, found=0.0, base_holds=True, value=0.001)
    jacket = assuming(
        with_values(
            built(f'{LOW}\n{wide}\nrepair.surface = "unchipped"\n{ROUGH}'),
            {"bolts.pretension": 2000e3, "sleeve.steel.yield_strength": 500.0},
        ),
        {checked_axial_strain: known, tension_share: 0.5},
    )
    concrete, pressure = 1.3 * 4.0 * 6.894757293168361, float(bond_pressure(jacket))
    cover, apart = 2.625 * INCH, _clear_spacing(14) / 2.0
    least, most = min(cover, apart), max(cover, apart)
    splitting = (
        0.7 * 6.5 * (concrete / 25.0) ** 0.25 * (25.0 / DIAMETER) ** 0.2
        * ((least / DIAMETER) ** 0.33 * (most / least) ** 0.1)
    )  # fmt: skip
    pullout = 1.25 * math.sqrt(concrete)
    assert splitting < pullout
    factor = (1.0 - 1.2 * 0.2) * _pressed(concrete, pressure)
    rise = 1.8 * (splitting / pullout) ** 2.5
    law = Law(splitting * factor, rise, rise, DIAMETER / 4.0)
    found = _bond(jacket, 0)
    assert float(found.held_share) == 1.0
    assert float(found.law.peak_stress) == pytest.approx(splitting * factor, rel=1e-6)
    assert float(found.available_length) == pytest.approx(10.0 * INCH)
    assert float(found.developed_stress) == pytest.approx(_developed(law, 10.0 * INCH), rel=3e-3)


def _clear_spacing(count: int) -> float:
    circle = (24.0 - 2.0 - 0.625 - 1.128 / 2.0) * INCH
    return 2.0 * math.pi * circle / count - DIAMETER


def test_profile_and_row_say_the_same_at_the_top() -> None:
    for variant in ("chipped", "thick, unchipped"):
        jacket = built(variant=variant)
        top = stress_at_height(jacket, np.array([float(jacket.repair_height)]))[:, 0]
        rows = [float(one.developed_stress) for one in bar_bonds(jacket)]
        assert top == pytest.approx(rows, rel=3e-3)
        assert np.all(top <= np.array(rows) * (1.0 + 5e-4))
