"""Torque, turns and lengths against printed tables."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP
from jacketcheck.mechanics.bolt_installation import (
    max_acceptance_torque,
    required_bolt_length,
    tightening_torque,
    turn_of_nut_rotation,
    verification_tension,
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
