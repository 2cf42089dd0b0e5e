"""From input to jacket: both unit systems, defaults, layouts and what each choice changes."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from jacketcheck.inputs import RepairInput, read_input, read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket.designs import leaves

_INPUTS = Path(__file__).parents[1] / "inputs"
Build = Callable[..., Jacket]


@pytest.fixture
def build(repair_text: str) -> Build:
    """Build the test repair after replacing pieces of its text."""

    def built(*replacements: tuple[str, str]) -> Jacket:
        text = repair_text
        for old, new in replacements:
            assert old in text, old
            text = text.replace(old, new, 1)
        return build_jacket(read_text(text.partition("[variants.")[0]).base)

    return built


@pytest.mark.parametrize("variant", ["base", "thin and snug", "plain"])
def test_both_unit_systems_build_the_same_jacket(variant: str) -> None:
    us, si = (
        dict(leaves(build_jacket(read_input(_INPUTS / name).variants[variant])))
        for name in ("repair_us.toml", "repair_si.toml")
    )
    assert us.keys() == si.keys()
    assert len(us) > 200
    for path, value in us.items():
        if isinstance(value, float):
            assert si[path] == pytest.approx(value, rel=1e-9, abs=1e-12), path
        else:
            assert si[path] == value, path


def test_building_twice_gives_equal_jackets(repair_input: RepairInput) -> None:
    assert build_jacket(repair_input) == build_jacket(repair_input)


def test_no_number_of_a_jacket_is_missing(jacket: Jacket) -> None:
    for path, value in leaves(jacket):
        if isinstance(value, float):
            assert np.isfinite(value), path


@pytest.mark.parametrize(
    ("rows", "end_distance", "expected_rows", "expected_end"),
    [
        # the sleeve is 52 in high, the pitch 5 in
        pytest.param("rows = 10\n", 'end_distance = "3-1/2 in"\n', 10, 3.5, id="both"),
        pytest.param("rows = 10\n", "", 10, 3.5, id="rows"),
        pytest.param("rows = 9\n", "", 9, 6.0, id="fewer rows"),
        pytest.param("", 'end_distance = "2 in"\n', 10, 3.5, id="least end distance"),
        pytest.param("", 'end_distance = "1 in"\n', 11, 1.0, id="rows that just fit"),
    ],
)  # fmt: skip
def test_rows_and_end_distance(
    build: Build, rows: str, end_distance: str, expected_rows: int, expected_end: float
) -> None:
    bolts = build(("rows = 10\n", rows), ('end_distance = "3-1/2 in"\n', end_distance)).bolts
    assert bolts.rows == expected_rows
    assert bolts.end_distance == pytest.approx(expected_end * 25.4)


@pytest.mark.parametrize(
    ("hole", "along", "across"),
    [
        # 1 in bolts: AISC 360-22 Table J3.3 [in]
        ("standard", 1 + 1 / 8, 1 + 1 / 8),
        ("oversized", 1 + 1 / 4, 1 + 1 / 4),
        ("short-slot-perpendicular", 1 + 1 / 8, 1 + 5 / 16),
        ("short-slot-parallel", 1 + 5 / 16, 1 + 1 / 8),
        ("long-slot-perpendicular", 1 + 1 / 8, 2.5),
        ("long-slot-parallel", 2.5, 1 + 1 / 8),
    ],
)
def test_holes(build: Build, hole: str, along: float, across: float) -> None:
    jacket = build(*[('hole = "standard"', f'hole = "{hole}"')] * 3)
    for ply in (jacket.sleeve, jacket.splice):
        assert ply.hole.along == pytest.approx(along * 25.4)
        assert ply.hole.across == pytest.approx(across * 25.4)
        assert ply.hole.clearance == pytest.approx((along - 1.0) * 25.4)
    assert jacket.bolts.standard_hole == pytest.approx((1 + 1 / 8) * 25.4)


def test_a_ply_may_have_holes_of_its_own(build: Build) -> None:
    jacket = build(('[splice]\nhole = "standard"', '[splice]\nhole = "short-slot-parallel"'))
    assert jacket.sleeve.hole.kind == "standard"
    assert jacket.splice.hole.kind == "short-slot-parallel"
    assert jacket.splice.hole.field == "splice.hole"
    assert jacket.sleeve.hole.field == "sleeve.hole"
    assert set(jacket.holes) == {"sleeve", "splice plates"}


@pytest.mark.parametrize(
    ("hole", "toward", "beside"),
    [
        # AISC 360-22 Tables J3.4 and J3.5, 1 in bolts: 1-1/4 in; oversized + 1/8 in; slots that
        # point at the edge + 1/8 in (short) and + 3/4 d (long), those along it + 0 [in]
        ("standard", 1.25, 1.25),
        ("oversized", 1.25 + 1 / 8, 1.25 + 1 / 8),
        ("short-slot-parallel", 1.25 + 1 / 8, 1.25),
        ("short-slot-perpendicular", 1.25, 1.25 + 1 / 8),
        ("long-slot-parallel", 1.25 + 3 / 4, 1.25),
        ("long-slot-perpendicular", 1.25, 1.25 + 3 / 4),
    ],
)
def test_edge_distances(build: Build, hole: str, toward: float, beside: float) -> None:
    found = build(*[('hole = "standard"', f'hole = "{hole}"')] * 3).sleeve.hole
    assert found.min_edge_distance == pytest.approx(toward * 25.4)
    assert found.min_end_distance == pytest.approx(beside * 25.4)


def test_snug_bolts_have_no_pretension(build: Build) -> None:
    bolts = build(('tightening = "turn-of-nut"', 'tightening = "snug"')).bolts
    assert not bolts.pretensioned
    assert bolts.pretension == 0.0
    assert bolts.specified_pretension == pytest.approx(51 * 4448.2216152605)


def test_plates_outside_only(build: Build) -> None:
    jacket = build(('sides = "both"', 'sides = "outside"'), ('inside_thickness = "5/16 in"\n', ""))
    assert jacket.splice.inside_thickness == 0.0
    assert jacket.splice.shear_planes == 1
    assert jacket.grip == pytest.approx(7 / 8 * 25.4)


def test_the_inside_plate_is_like_the_outside_one_by_default(build: Build) -> None:
    splice = build(('inside_thickness = "5/16 in"\n', "")).splice
    assert splice.inside_thickness == splice.outside_thickness == pytest.approx(9.525)


def test_double_curvature_halves_the_shear_span(build: Build) -> None:
    jacket = build(('curvature = "single"', 'curvature = "double"'))
    assert jacket.column.shear_span == pytest.approx(9 * 304.8)


def test_defaults_say_where_they_come_from(build: Build) -> None:
    jacket = build(
        ('concrete_expected = "5.2 ksi"\n', ""),
        ('elastic_modulus = "4500 ksi"\n', ""),
        ('measured_yield = "66 ksi"\n', ""),
        ('measured_tensile = "92 ksi"\n', ""),
        ('overstrength = "120 %"\n', ""),
    )
    ksi = 4448.2216152605 / 25.4**2
    concrete, steel = jacket.column.concrete, jacket.column.layer.steel
    # max(1.3 x 4 ksi, 5 ksi); ACI 318-19 19.2.2.1(b): 4700 sqrt(f'c) in MPa
    assert concrete.expected == pytest.approx(5.2 * ksi)
    assert jacket.grout.elastic_modulus == pytest.approx(4700 * (8 * ksi) ** 0.5)
    # ASTM A706 Grade 60, expected 68 and 95 ksi (Caltrans SDC)
    assert steel.expected_yield == pytest.approx(68 * ksi, rel=0.005)
    assert steel.expected_tensile == pytest.approx(95 * ksi, rel=0.005)
    assert "max(1.3" in concrete.expected_source
    assert "19.2.2.1" in jacket.grout.modulus_source
    assert "measured" not in steel.source_of("expected_yield")


def test_measured_and_given_values_are_named_as_such(jacket: Jacket) -> None:
    assert jacket.column.concrete.expected_source == "input column.concrete_expected, cylinder"
    assert jacket.grout.modulus_source == "input grout.elastic_modulus"
    steel = jacket.column.layer.steel
    assert steel.source_of("expected_yield") == "input column.bars.measured_yield"
    assert steel.source_of("expected_tensile") == "input column.bars.measured_tensile"
    assert steel.source_of("overstrength") == "input judgement.overstrength"


@pytest.mark.parametrize("table", ["added_bars", "footing"])
def test_optional_parts_may_be_absent(repair_table: dict[str, Any], table: str) -> None:
    del repair_table[table]
    jacket = build_jacket(RepairInput.model_validate(repair_table))
    assert getattr(jacket, table) is None
