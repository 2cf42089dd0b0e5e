"""Geometry of the test repair, worked out by hand in inches from its drawing."""

from __future__ import annotations

import math
from typing import Any

import pytest

from jacketcheck.jacket import Jacket

INCH = 25.4
KSI = 4448.2216152605 / 25.4**2
"""1 lbf = 4.4482216152605 N, standard gravity and international pound."""


def inches(value: float) -> Any:
    return pytest.approx(value * INCH, rel=1e-12)


def test_sleeve_and_splice(jacket: Jacket) -> None:
    sleeve, splice = jacket.sleeve, jacket.splice
    assert sleeve.height == inches(54.0 - 2.0)
    assert sleeve.inner_radius == inches(31.0)
    assert jacket.outer_diameter == inches(63.0)
    assert jacket.grip == inches(1 / 2 + 3 / 8 + 5 / 16)
    # half a seam gap, edge distance in the sleeve, gauge, edge distance in the plate; both sides
    assert splice.width == inches(2 * (0.5 + 2.0 + 3.5 + 2.0))
    assert splice.total_thickness == inches(3 / 8 + 5 / 16)
    assert splice.shear_planes == 2


def test_bolt_group(jacket: Jacket) -> None:
    bolts = jacket.bolts
    assert bolts.area == pytest.approx(math.pi / 4 * INCH**2)
    # the end row has 3-1/2 in and half a pitch of 5 in
    assert bolts.tributary_height == inches(6.0)
    # holes of 1-1/8 in for bolts of 1 in (AISC 360-22 Table J3.3)
    assert jacket.sleeve.hole.clearance == jacket.splice.hole.clearance == inches(1 / 8)
    assert bolts.count == 80
    # minimum pretension of a 1 in Group 120 bolt: 51 kip (AISC 360-22 Table J3.1)
    assert bolts.pretension == pytest.approx(51 * 4448.2216152605)


def test_column(jacket: Jacket) -> None:
    column = jacket.column
    assert column.shear_span == inches(18 * 12)
    assert column.gross_area == pytest.approx(math.pi / 4 * (48 * INCH) ** 2)
    # No. 10: 1.270 in, 1.27 in2; No. 5: 0.625 in (ASTM A706)
    assert column.layer.circle_radius == inches(24 - 2 - 0.625 - 1.270 / 2)
    assert column.layer.spacing == inches(2 * math.pi * (24 - 2 - 0.625 - 1.270 / 2) / 20)
    assert column.layer.total_area == pytest.approx(20 * 1.27 * INCH**2)
    assert column.ties.core_diameter == inches(48 - 2 * 2 - 0.625)
    assert column.concrete.expected == pytest.approx(5.2 * KSI)
    assert column.layer.steel.expected_yield == pytest.approx(66 * KSI)
    assert column.layer.steel.overstrength == 1.2


def test_grout_and_added_bars(jacket: Jacket) -> None:
    assert jacket.grout.thickness == inches(7.0)
    assert jacket.grout.elastic_modulus == pytest.approx(4500 * KSI)
    assert jacket.added_bars is not None
    assert jacket.added_bars.layer.circle_radius == inches(27.0)
    assert jacket.added_bars.embedment == inches(36.0)


def test_damage(jacket: Jacket) -> None:
    bars = jacket.column.bars
    assert [bar.number for bar in bars] == list(range(1, 21))
    # bar 1 at 9 degrees, bars every 18 degrees; 6:18 on the clock is 189 degrees: bar 11
    assert [bar.number for bar in jacket.column.in_state("fractured")] == [1, 2, 11]
    assert [bar.number for bar in jacket.column.in_state("buckled")] == [3, 19]
    assert bars[10].angle == pytest.approx(math.radians(189.0))
    assert bars[0].damage_height == inches(4.0)
    assert bars[0].crack_width == inches(1 / 64)
    assert (bars[0].record, bars[2].record, bars[3].record) == ("damage.1", "damage.2", "")


def test_surfaces(jacket: Jacket) -> None:
    # the side from 11:00 to 4:30 (330 to 135 degrees) is chipped: bars 1 to 8 and 19, 20;
    # bar 11 is chipped by its own record
    chipped = [bar.number for bar in jacket.column.bars if bar.surface == "chipped"]
    assert chipped == [1, 2, 3, 4, 5, 6, 7, 8, 11, 19, 20]
