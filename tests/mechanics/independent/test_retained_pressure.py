"""Losses against geometry and a stepped elastic-plastic ring."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.clamping import available_clamping_pressure
from jacketcheck.mechanics.hoop import sleeve_compliance, yield_pressure
from jacketcheck.mechanics.jacket_thickness import clamping_thickness
from jacketcheck.mechanics.retained_pressure import (
    hoop_strain_lost_by_slip,
    hoop_strain_lost_by_yield,
    radial_play,
    retained_pressure,
    seam_opening,
)

MODULUS, YIELD_STRENGTH, RADIUS, THICKNESS = 200e3, 300.0, 600.0, 6.0


def _stepped_pressure(history: list[float]) -> float:
    """Pressure at the end of a history of hoop strains; steel yields in tension, never pushes."""
    plastic, stress = 0.0, 0.0
    for strain in history:
        trial = MODULUS * (strain - plastic)
        stress = min(max(trial, 0.0), YIELD_STRENGTH)
        plastic += max(trial - YIELD_STRENGTH, 0.0) / MODULUS
    return stress * THICKNESS / RADIUS


@pytest.mark.parametrize("peak", [0.001, 0.002, 0.0024, 0.004])
@pytest.mark.parametrize("again", [0.0005, 0.001, 0.002, 0.006])
def test_yielded_sleeve_on_the_next_cycle(peak: float, again: float) -> None:
    path = [*np.linspace(0.0, peak, 50), *np.linspace(peak, 0.0, 50), *np.linspace(0.0, again, 50)]
    left = retained_pressure(
        again,
        slip_loss=0.0,
        yield_loss=hoop_strain_lost_by_yield(peak, yield_strain=YIELD_STRENGTH / MODULUS),
        inner_radius=RADIUS,
        radial_compliance=sleeve_compliance(
            inner_radius=RADIUS, thickness=THICKNESS, elastic_modulus=MODULUS
        ),
        yield_pressure=yield_pressure(YIELD_STRENGTH, thickness=THICKNESS, inner_radius=RADIUS),
    )
    assert left.retained == pytest.approx(_stepped_pressure(path), abs=1e-12)
    assert left.before == pytest.approx(_stepped_pressure([again]), abs=1e-12)


def test_slip_widens_the_ring() -> None:
    clearance, radius = 2.0, 600.0
    opening = seam_opening(sleeve_clearance=clearance, splice_clearance=clearance)
    # four groups of bolts around the ring, each gives the whole clearance of either ply
    circumference = 2.0 * np.pi * radius + 4.0 * 2.0 * clearance
    wider = circumference / (2.0 * np.pi)
    assert radial_play(opening) == pytest.approx(wider - radius, rel=1e-10)
    assert hoop_strain_lost_by_slip(opening, inner_radius=radius) == pytest.approx(
        (wider - radius) / radius, rel=1e-10
    )


def test_slip_and_yield_together() -> None:
    left = retained_pressure(
        np.array([0.001, 0.002, 0.004]),
        slip_loss=0.0009,
        yield_loss=0.0006,
        inner_radius=RADIUS,
        radial_compliance=0.3,
        yield_pressure=3.0,
    )
    # remaining strains -0.0005, 0.0005, 0.0025 on E t / R = 2000 MPa, yield at 0.0015
    assert left.retained == pytest.approx([0.0, 1.0, 3.0])
    assert left.before == pytest.approx([2.0, 3.0, 3.0])
    assert left.nothing_left.tolist() == [True, False, False]
    assert left.remaining_strain == pytest.approx([-0.0005, 0.0005, 0.0025])


def test_sized_thickness_supplies_what_was_asked() -> None:
    wanted = np.array([0.4, 1.1, 2.0])
    thickness = clamping_thickness(
        wanted, column_hoop_pressure=0.1, diameter=2.0 * RADIUS, elastic_modulus=MODULUS
    )
    supply = available_clamping_pressure(
        core_radius=RADIUS,
        radial_compliance=sleeve_compliance(
            inner_radius=RADIUS, thickness=thickness, elastic_modulus=MODULUS
        ),
        yield_pressure=yield_pressure(YIELD_STRENGTH, thickness=thickness, inner_radius=RADIUS),
        slip_pressure=np.inf,
    )
    assert supply.available + 0.1 == pytest.approx(wanted, rel=1e-12)
    assert supply.governed_by.tolist() == ["hoop strain"] * 3


@pytest.mark.parametrize(
    ("slip", "strain", "play", "available", "governed"),
    [
        (1.5, 0.001, 0.0, 1.5, "slip"),
        (9.0, 0.001, 0.0, 2.0, "hoop strain"),
        (9.0, 0.0015, 0.0, 2.5, "yield"),
        (0.0, 0.001, 0.0, 0.0, "slip"),
        (np.inf, 0.001, 0.3, 1.0, "hoop strain"),
        (np.inf, 0.001, 0.9, 0.0, "hoop strain"),
    ],
)
def test_what_limits_the_clamping(
    slip: float, strain: float, play: float, available: float, governed: str
) -> None:
    # 0.6 mm of movement at a strain of 0.001, 0.3 mm for each MPa
    supply = available_clamping_pressure(
        core_radius=RADIUS,
        radial_compliance=0.3,
        yield_pressure=2.5,
        slip_pressure=slip,
        hoop_strain=strain,
        radial_play=play,
    )
    assert supply.available == pytest.approx(available)
    assert str(supply.governed_by) == governed
    assert bool(supply.play_not_closed) == (play > 0.6)
