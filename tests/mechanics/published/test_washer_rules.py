"""Required washers against the rules of RCSC and AISC."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._arguments import HoleType, Tightening
from jacketcheck.mechanics._customary_units import INCH, KSI
from jacketcheck.mechanics.washer_rules import WasherRule, required_washers

EIGHT_MILLIMETRES = 5.0 / 16.0 * INCH


def washers(
    *,
    diameter: float = 0.875,
    strength: float = 120.0,
    tightening: Tightening = "turn-of-nut",
    nut_side_hole: HoleType = "standard",
    plate_yield: float = 50.0,
    round_head: bool = False,
) -> tuple[WasherRule, ...]:
    """Inches and ksi; the hole under the head is a standard one."""
    return required_washers(
        bolt_diameter=diameter * INCH,
        bolt_tensile_strength=strength * KSI,
        tightening=tightening,
        head_side_hole="standard",
        nut_side_hole=nut_side_hole,
        plate_yield_strength=plate_yield * KSI,
        round_head=round_head,
    )


# RCSC Section 6 and AISC J3.2 (L-22)


@pytest.mark.parametrize("strength", [120.0, 150.0], ids=["L-22-A325", "L-22-A490"])
def test_turn_of_nut_in_standard_holes_needs_no_washer(strength: float) -> None:
    assert washers(strength=strength) == ()


@pytest.mark.parametrize("plate_yield", [36.0, 39.9], ids=["L-22-A36", "L-22-just-below-40"])
def test_group_150_in_soft_steel_needs_washers_at_both_ends(plate_yield: float) -> None:
    places = {rule.place for rule in washers(strength=150.0, plate_yield=plate_yield)}
    assert places == {"head", "nut"}


# AASHTO LRFD 6.13.2.3.2 (from memory): on bridges below 50 ksi


@pytest.mark.parametrize(("plate_yield", "places"), [(46.0, {"head", "nut"}), (50.0, set())])
def test_group_150_in_steel_of_less_than_50_ksi_on_bridges(
    plate_yield: float, places: set[str]
) -> None:
    found = washers(strength=150.0, plate_yield=plate_yield)
    assert {rule.place for rule in found} == places
    assert all("AASHTO" in rule.source for rule in found)


def test_round_heads_need_no_washer_in_soft_steel() -> None:
    # RCSC Section 6 (from memory): round heads of F2280 bear like a washer
    places = {
        rule.place
        for rule in washers(
            strength=150.0, plate_yield=36.0, tightening="twist-off", round_head=True
        )
    }
    assert places == {"nut"}


def test_group_120_in_soft_steel_needs_none() -> None:
    assert washers(strength=120.0, plate_yield=36.0) == ()


@pytest.mark.parametrize(
    ("tightening", "place"),
    [
        pytest.param("calibrated-wrench", "turned element", id="L-22-calibrated-wrench"),
        pytest.param("twist-off", "nut", id="L-22-twist-off"),
    ],
)
def test_torque_methods_need_a_washer_where_they_turn(tightening: Tightening, place: str) -> None:
    (rule,) = washers(tightening=tightening)
    assert rule.place == place
    assert "F436" in rule.kind


@pytest.mark.parametrize(
    "hole",
    [
        pytest.param("oversized", id="L-22-oversized"),
        pytest.param("short-slot-perpendicular", id="L-22-short-across"),
        pytest.param("short-slot-parallel", id="L-22-short-along"),
    ],
)
def test_enlarged_hole_in_the_outer_ply_needs_a_hardened_washer(hole: HoleType) -> None:
    (rule,) = washers(nut_side_hole=hole)
    assert rule.place == "nut"
    assert "F436" in rule.kind
    assert rule.min_thickness is None


@pytest.mark.parametrize(
    "hole",
    [
        pytest.param("long-slot-perpendicular", id="L-22-long-across"),
        pytest.param("long-slot-parallel", id="L-22-long-along"),
    ],
)
def test_long_slot_needs_a_thick_plate_washer(hole: HoleType) -> None:
    plate, hardened = washers(nut_side_hole=hole)
    assert "plate washer" in plate.kind
    assert plate.min_thickness == pytest.approx(EIGHT_MILLIMETRES)
    # AASHTO LRFD 6.13.2.3.2 (from memory): whatever the grade
    assert "F436" in hardened.kind
    assert "AASHTO" in hardened.source


@pytest.mark.parametrize(
    ("diameter", "strength", "thickness"),
    [
        pytest.param(1.0, 150.0, None, id="L-23-1-in"),
        pytest.param(1.125, 150.0, EIGHT_MILLIMETRES, id="L-23-over-1-in"),
        pytest.param(1.125, 120.0, None, id="L-23-group-120"),
    ],
)
def test_large_group_150_bolt_over_an_oversized_hole(
    diameter: float, strength: float, thickness: float | None
) -> None:
    # AISC 360-05 J3.1: A490 over 1 in, F436 washer at least 5/16 in thick
    (rule,) = washers(diameter=diameter, strength=strength, nut_side_hole="oversized")
    assert rule.min_thickness == (None if thickness is None else pytest.approx(thickness))
