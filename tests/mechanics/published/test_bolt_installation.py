"""Torque, turns and lengths against printed tables."""

from __future__ import annotations

import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._customary_units import INCH, KIP
from jacketcheck.mechanics.bolt_installation import (
    bridge_turn_tolerance,
    max_acceptance_torque,
    required_bolt_length,
    tightening_torque,
    turn_of_nut_rotation,
    verification_tension,
)
from jacketcheck.mechanics.indicator_gaps import (
    open_gaps_at_verification,
    refused_gaps_when_installed,
)

POUND_FOOT = KIP / 1000.0 * 12.0 * INCH
"""One pound-foot [N mm]."""


@pytest.mark.parametrize(
    ("diameters", "sloped_faces", "turns"),
    [
        pytest.param(4.0, 0, 1 / 3, id="L-14-4d"),
        pytest.param(4.01, 0, 1 / 2, id="L-14-beyond-4d"),
        pytest.param(8.0, 0, 1 / 2, id="L-14-8d"),
        pytest.param(8.01, 0, 2 / 3, id="L-14-beyond-8d"),
        pytest.param(12.0, 0, 2 / 3, id="L-14-12d"),
        pytest.param(4.0, 1, 1 / 2, id="L-15-one-4d"),
        pytest.param(8.0, 1, 2 / 3, id="L-15-one-8d"),
        pytest.param(12.0, 1, 5 / 6, id="L-15-one-12d"),
        pytest.param(4.0, 2, 2 / 3, id="L-15-both-4d"),
        pytest.param(8.0, 2, 5 / 6, id="L-15-both-8d"),
        pytest.param(12.0, 2, 1.0, id="L-15-both-12d"),
    ],
)
def test_rotations_of_rcsc_table_8_2(diameters: float, sloped_faces: int, turns: float) -> None:
    # RCSC 2009 and 2014, Table 8.2
    diameter = 0.875 * INCH
    rotation = turn_of_nut_rotation(
        diameters * diameter, diameter=diameter, sloped_faces=sloped_faces
    )
    assert float(rotation) == pytest.approx(turns * 360.0, rel=1e-12)


@pytest.mark.parametrize(
    ("allowance", "grip", "washers", "expected"),
    [
        pytest.param(1.0, 1.0, 0, 2.0, id="L-16-3/4"),
        pytest.param(1.125, 1.0, 1, 2.28125, id="L-16-7/8-washer"),
        pytest.param(1.25, 1.5, 2, 3.0625, id="L-16-1-two-washers"),
    ],
)
def test_lengths_by_rcsc_table_c_2_2(
    allowance: float, grip: float, washers: int, expected: float
) -> None:
    # RCSC Table C-2.2: grip, plus 1, 1-1/8, 1-1/4 in for 3/4, 7/8, 1 in, plus 5/32 in per washer
    length = required_bolt_length(
        grip * INCH, grip_allowance=allowance * INCH, washer_thickness=washers * 5 / 32 * INCH
    )
    assert float(length) / INCH == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("diameter", "tension", "expected"),
    [
        pytest.param(0.875, 39.0, 568.8, id="L-17-7/8"),
        pytest.param(0.750, 28.0, 350.0, id="L-17-3/4"),
        pytest.param(1.000, 51.0, 850.0, id="L-17-1"),
    ],
)
def test_torque_in_pound_feet(diameter: float, tension: float, expected: float) -> None:
    # Shigley's Mechanical Engineering Design, Eq. 8-27 with K = 0.20; last printed digit
    torque = tightening_torque(diameter * INCH, tension=tension * KIP, torque_coefficient=0.20)
    assert float(torque) / POUND_FOOT == pytest.approx(expected, abs=0.0501)


@pytest.mark.parametrize(
    ("diameter", "tension", "coefficient", "expected"),
    [
        pytest.param(20.0, 171.5e3, 0.13, 445.9e3, id="L-18-M20"),
        pytest.param(24.0, 197.7e3, 0.20, 948.9e3, id="L-18-M24"),
    ],
)
def test_torque_in_newton_metres(
    diameter: float, tension: float, coefficient: float, expected: float
) -> None:
    # The same relation in SI, N mm; last printed digit of N m, after a tension of four digits
    torque = tightening_torque(diameter, tension=tension, torque_coefficient=coefficient)
    assert float(torque) == pytest.approx(expected, abs=100.0)


def test_largest_acceptance_torque() -> None:
    # L-20: AASHTO LRFD Bridge Construction Specifications 11.5.6.4, 7/8 bolt at 39 kips
    torque = max_acceptance_torque(0.875 * INCH, tension=39.0 * KIP)
    assert float(torque) / POUND_FOOT == pytest.approx(710.9, abs=0.05)


@pytest.mark.parametrize(
    ("pretension", "expected"),
    [
        pytest.param(28.0, 29.0, id="P-07-3/4"),
        pytest.param(39.0, 41.0, id="P-07-7/8"),
        pytest.param(51.0, 54.0, id="P-07-1"),
    ],
)
def test_verification_tension_of_rcsc_table_7_1(pretension: float, expected: float) -> None:
    # RCSC 2009 and 2014, Table 7.1, A325, printed to the whole kip
    tension = verification_tension(pretension * KIP)
    assert float(tension) / KIP == pytest.approx(expected, abs=0.5)


@pytest.mark.parametrize(("gaps", "most_refused"), [(4, 1), (5, 2), (6, 2), (7, 3), (8, 3), (9, 4)])
def test_gaps_refused_in_verification(gaps: int, most_refused: int) -> None:
    # FHWA, Use of Direct Tension Indicators in Bridge Structural Steel (2003) (from memory)
    assert gaps - int(open_gaps_at_verification(gaps)) == most_refused


@pytest.mark.parametrize(("gaps", "refused"), [(4, 2), (5, 3), (6, 3), (7, 4), (8, 4), (9, 5)])
def test_gaps_refused_once_installed(gaps: int, refused: int) -> None:
    # the same; RCSC 2014 8.2.4: half, of an odd number the larger half
    assert int(refused_gaps_when_installed(gaps)) == refused


def test_gaps_come_in_whole_numbers() -> None:
    with pytest.raises(DomainError):
        open_gaps_at_verification(0)


@pytest.mark.parametrize(
    ("turn", "tolerance"), [(120.0, 30.0), (180.0, 30.0), (240.0, 45.0), (300.0, 45.0)]
)
def test_turn_tolerance_on_bridges(turn: float, tolerance: float) -> None:
    # RCSC (1985) Table 5, footnote a: 1/2 turn and less 30 degrees, 2/3 turn and more 45 degrees
    assert float(bridge_turn_tolerance(turn)) == tolerance
