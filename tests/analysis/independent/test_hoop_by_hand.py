"""Dilation, clamping and hoop force of the reference case, worked from its raw inputs.

Nothing of the package's mechanics is used: the formulas are written out from their sources, and the
equilibrium of core and ring is found by scipy's brentq.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import pytest
from scipy.optimize import brentq

from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.dilation import dilation
from jacketcheck.analysis.hinge import hinge
from jacketcheck.analysis.hoop_demand import hoop_demand, other_hoop_force
from jacketcheck.analysis.lap import lap_hoop_force, tension_share
from jacketcheck.analysis.retained import bond_pressure, clamping_supply, retained
from jacketcheck.jacket.designs import with_values
from tests.support.jackets import built

INCH: Final = 25.4
EXPECTED: Final = 1.3
"""Expected over specified yield strength of A36 plate (AISC 341-16 Table A3.1)."""
KSI: Final = 4448.2216152605 / INCH**2


@dataclass(frozen=True)
class Ring:
    """Sleeve, seam and grout of the reference case [mm, MPa], thickness and seams as given."""

    thickness: float
    snug: bool = False
    outer: float = 30.0 * INCH
    core: float = 24.0 * INCH

    @property
    def compliance(self) -> float:
        """Movement of the core's face for each unit of pressure on the sleeve [mm/MPa]."""
        sleeve = self.outer**2 / (29000.0 * KSI * self.thickness)
        plates, length = 2.0 * 0.5 * INCH, (1.0 + 2.0 * 2.25) * INCH
        seam = self.outer / (math.pi * 29000.0 * KSI * plates / length)
        grout = self.outer * math.log(self.outer / self.core) / (4700.0 * math.sqrt(8.0 * KSI))
        return sleeve + seam + grout

    def pressure(self, movement: float, yield_strength: float) -> float:
        """On the sleeve, for a movement of the core's face."""
        return min(movement / self.compliance, yield_strength * self.thickness / self.outer)


def _lateral_strain(axial: float, pressure: float) -> float:
    """Spoelstra and Monti's secant dilation on Mander's curve."""
    strength = 1.3 * 4.0 * KSI
    modulus = 5000.0 * math.sqrt(strength)
    confined = strength * (
        -1.254 + 2.254 * math.sqrt(1.0 + 7.94 * pressure / strength) - 2.0 * pressure / strength
    )
    peak = 0.002 * (1.0 + 5.0 * (confined / strength - 1.0))
    shape = modulus / (modulus - confined / peak)
    relative = axial / peak
    stress = confined * relative * shape / (shape - 1.0 + relative**shape)
    beta = modulus / strength - 1.0 / 0.002
    lateral: float = (modulus * axial - stress) / (2.0 * beta * stress)
    return lateral


def _equilibrium(ring: Ring, axial: float, yield_strength: float) -> tuple[float, float]:
    """Pressure on the sleeve and its hoop strain."""

    def excess(lateral: float) -> float:
        pressure = ring.pressure(lateral * ring.core, yield_strength)
        return _lateral_strain(axial, pressure * ring.outer / ring.core) - lateral

    lateral = float(brentq(excess, 0.0, 0.05, xtol=1e-14))
    pressure = ring.pressure(lateral * ring.core, yield_strength)
    elastic = pressure * ring.outer / (29000.0 * KSI * ring.thickness)
    beyond = max(lateral * ring.core - pressure * ring.compliance, 0.0) / ring.outer
    return pressure, elastic + beyond


@pytest.mark.parametrize(
    ("variant", "thickness"), [("chipped", 0.75 * INCH), ("thin", 0.375 * INCH)]
)
@pytest.mark.parametrize("axial", [0.003, 0.006])
def test_pressure_of_the_dilating_core(variant: str, thickness: float, axial: float) -> None:
    jacket = built(f"actions.axial_strain = {axial}", variant=variant)
    ring = Ring(thickness)
    least, strain = _equilibrium(ring, axial, 36.0 * KSI)
    most, _ = _equilibrium(ring, axial, EXPECTED * 36.0 * KSI)
    found = dilation(jacket)
    assert found.minimum.sleeve_pressure == pytest.approx(least, rel=1e-6)
    assert found.minimum.sleeve_hoop_strain == pytest.approx(strain, rel=1e-6)
    assert found.expected.sleeve_pressure == pytest.approx(most, rel=1e-6)


def test_seam_force_and_bolt_force() -> None:
    jacket = built()
    most, _ = _equilibrium(Ring(0.75 * INCH), 0.0026, EXPECTED * 36.0 * KSI)
    offset = math.hypot(26.75 - (24.0 - 2.0 - 0.625 - 1.128 / 2.0), _column_spacing() / 2.0)
    pulled = float(tension_share(jacket)) * 20.0 * 0.79 * 95.0
    # bar 11 is fractured at 5 in, above the gap of 3 in: it takes nothing over below
    laps = pulled / (2.0 * math.pi * (59.0 - 5.0 - offset)) * KSI * INCH
    assert float(lap_hoop_force(jacket)) == pytest.approx(laps, rel=1e-9)
    shear = float(hinge(jacket).shear) / (math.pi / 2.0 * 48.0 * INCH)
    force = most * 30.0 * INCH + laps + shear
    found = hoop_demand(jacket)
    assert float(found.force) == pytest.approx(force, rel=1e-6)
    # an inner row holds one pitch; the end rows half of it and their end distance of 2-3/8 in
    assert float(found.bolt_force) == pytest.approx(force * 4.75 * INCH / 3.0, rel=1e-6)


def _column_spacing() -> float:
    """Between the column's bars along their circle [in]."""
    return 2.0 * math.pi * (24.0 - 2.0 - 0.625 - 1.128 / 2.0) / 20.0


def test_clamping_need_and_supply() -> None:
    jacket = built()
    crack = min(
        math.pi * 2.0 * (24.0 - 2.0 - 0.625 - 0.564) / 40.0 + 2.0 * (1.128 + 2.625),
        2.0 * math.sqrt(2.0) * (1.128 + 2.625),
    )
    # bar 11 fractured at 5 in, the others at 4 in; the gap of 3 in lies below both
    for needed, length in zip(clamping_need(jacket).core_pressure, (56.0, 56.0, 55.0), strict=True):
        assert needed == pytest.approx(95.0 * KSI * 1.0 / (1.4 * crack * length), rel=1e-9)
    supplied = 0.001 * 24.0 * INCH / Ring(0.75 * INCH).compliance
    assert clamping_supply(jacket).available == pytest.approx(supplied, rel=1e-9)


def test_anchorage_begins_above_the_gap() -> None:
    low = built('repair.gap = "6 in"\nbolts.rows = 11\nbolts.end_distance = "3-1/4 in"')
    assert set(map(float, clamping_need(low).length)) == {54.0 * INCH}


@pytest.mark.parametrize("axial", [0.0026, 0.0028])
def test_pressure_kept_after_yield(axial: float) -> None:
    """The core swells by 0.1 %; what dilation and laps stretched the sleeve beyond yield is gone.

    Both are movements of the core's face, so that the strains are taken at their own radii.
    """
    jacket, ring = built(f"actions.axial_strain = {axial}", variant="thin"), Ring(0.375 * INCH)
    laps = float(other_hoop_force(jacket))
    # what laps take of the yield force is not there to hold the core, which goes on moving
    yields = 36.0 * KSI * ring.thickness - laps
    _, strain = _equilibrium(ring, axial, yields / ring.thickness)
    lost = strain - yields / (29000.0 * KSI * ring.thickness)
    movement = 0.001 * ring.core - max(lost, 0.0) * ring.outer
    found = retained(jacket)
    assert not found.slips
    assert found.after_both.retained == pytest.approx(movement / ring.compliance, rel=1e-6)
    assert float(bond_pressure(jacket)) <= movement / ring.compliance * ring.outer / ring.core * (
        1.0 + 1e-9
    )


def test_nothing_is_kept_once_the_sleeve_stretched_far() -> None:
    kept = retained(built("actions.axial_strain = 0.006", variant="thin")).after_both
    assert bool(kept.nothing_left)
    assert float(kept.retained) == 0.0


def test_laps_use_up_what_slip_and_yield_leave() -> None:
    """Supply at the limits of seams and sleeve, with the laps' hoop force deducted."""
    weak = {"bolts.pretension": 150e3, "sleeve.steel.yield_strength": 100.0}
    jacket = with_values(built(), weak)
    laps, radius = float(other_hoop_force(jacket)), 30.0 * INCH
    slip = 0.5 * 2.0 * 150e3 * 3.0 / (4.75 * INCH)
    found = clamping_supply(jacket)
    assert float(found.at_slip) == pytest.approx((slip - laps) / radius)
    assert float(found.at_yield) == pytest.approx((100.0 * 0.75 * INCH - laps) / radius)
    assert float(found.available) == float(found.kept) <= float(found.at_yield)


def test_laps_count_for_slip() -> None:
    """A bolt group that holds the pressure, but not pressure and laps together, slips."""
    jacket = built()
    demand = hoop_demand(jacket)
    least = 0.5 * 2.0 * float(jacket.bolts.pretension)
    bolts = float(demand.bolt_force)
    pressure_alone = bolts * float(demand.pressure_force) / float(demand.force)
    between = with_values(
        jacket,
        {"bolts.pretension": 0.5 * (bolts + pressure_alone) / least * 39.0 * 4448.2216152605},
    )
    assert bool(retained(between).slips)
    assert not bool(retained(jacket).slips)
