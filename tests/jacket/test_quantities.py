"""Steel and work of a jacket, against sums done by hand."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import numpy as np
import pytest

from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import pick, with_values
from jacketcheck.jacket.quantities import STEEL_DENSITY, quantities


def test_density_of_steel() -> None:
    # 490 lb/ft³ in kg/mm³
    assert pytest.approx(490.0 * 0.45359237 / 304.8**3, rel=1e-3) == STEEL_DENSITY


def test_plates_by_hand(jacket: Jacket) -> None:
    square = with_values(
        jacket,
        {
            "sleeve.inner_diameter": 1590.0,
            "sleeve.thickness": 10.0,
            "sleeve.height": 1000.0,
            "sleeve.seam_gap": 20.0,
            "splice.width": 300.0,
            "splice.outside_thickness": 12.0,
            "splice.inside_thickness": 8.0,
        },
    )
    found = quantities(square)
    # mean circumference 1600 π mm, less two gaps; two seams with 300 × 20 mm of plates each
    assert found.sleeve_mass == pytest.approx((1600.0 * pi - 40.0) * 10.0 * 1000.0 * 7.85e-6)
    assert found.splice_mass == pytest.approx(2.0 * 300.0 * 20.0 * 1000.0 * 7.85e-6)


def test_bolts_by_hand(jacket: Jacket) -> None:
    bolts = jacket.bolts
    found = quantities(jacket)
    assert found.bolt_count == 4.0 * float(bolts.rows) * float(bolts.columns)
    area = pi * float(bolts.diameter) ** 2 / 4.0
    hexagon = 2.0 * 3.0**0.5 * (float(bolts.nut_width) / 2.0) ** 2
    washer = pi * float(bolts.washer_diameter) ** 2 / 4.0 - area
    length = float(jacket.grip) + 2.0 * float(bolts.washer_thickness) + float(bolts.nut_height)
    volume = area * (length + 0.3 * float(bolts.diameter))
    volume += hexagon * float(bolts.head_height) + (hexagon - area) * float(bolts.nut_height)
    volume += 2.0 * washer * float(bolts.washer_thickness)
    assert found.bolt_mass == pytest.approx(volume * 7.85e-6 * float(found.bolt_count))


def test_a_bolt_weighs_what_tables_say(jacket: Jacket) -> None:
    # heavy hex structural bolt 7/8 × 3 in with nut and two washers: about 1.1 lb (common practice,
    # suppliers' lists of weights, no published source); within a tenth
    one = with_values(
        jacket,
        {
            "sleeve.thickness": 25.4,
            "splice.outside_thickness": 12.7,
            "splice.inside_thickness": 0.0,
            "bolts.diameter": 22.225,
            "bolts.nut_width": 36.5125,
            "bolts.nut_height": 21.8,
            "bolts.head_height": 13.9,
            "bolts.washer_diameter": 44.45,
            "bolts.washer_thickness": 3.9,
        },
    )
    found = quantities(one)
    assert found.bolt_mass / found.bolt_count == pytest.approx(1.1 * 0.4536, rel=0.15)


def test_added_bars_and_holes_by_hand(jacket: Jacket) -> None:
    added = jacket.added_bars
    assert added is not None
    found = quantities(jacket)
    count = float(added.layer.count)
    assert found.hole_count == count
    assert found.drilled_length == pytest.approx(count * float(added.embedment) / 1000.0)
    length = float(added.height) + float(added.embedment)
    assert found.added_bar_mass == pytest.approx(7.85e-6 * count * float(added.layer.area) * length)
    without = quantities(replace(jacket, added_bars=None))
    assert (without.hole_count, without.drilled_length, without.added_bar_mass) == (0, 0, 0)
    assert without.steel_mass == pytest.approx(
        float(found.steel_mass) - float(found.added_bar_mass)
    )


def test_only_damaged_bars_that_are_chipped_count(jacket: Jacket) -> None:
    chipped = [one for one in jacket.column.bars if one.surface == "chipped"]
    damaged = [one for one in chipped if one.state != "intact"]
    found = quantities(jacket)
    assert found.chipped_bar_count == len(damaged)
    assert found.chipped_length == pytest.approx(len(damaged) * float(jacket.repair_height) / 1e3)


def test_many_designs_at_once(jacket: Jacket) -> None:
    many = with_values(
        jacket,
        {
            "sleeve.thickness": np.array([8.0, 16.0]),
            "added_bars.layer.count": np.array([8.0, 12.0]),
        },
    )
    together = quantities(many)
    for index in range(2):
        alone = quantities(pick(many, index))
        assert np.asarray(together.steel_mass)[index] == alone.steel_mass
        assert np.asarray(together.drilled_length)[index] == alone.drilled_length
