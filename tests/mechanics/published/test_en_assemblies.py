"""Clamp lengths, torques and rotations of EN 14399 assemblies against printed figures."""

from __future__ import annotations

import pytest

from jacketcheck.errors import DomainError
from jacketcheck.mechanics.bolt_clamp_length import clamp_lengths, least_bolt_length
from jacketcheck.mechanics.en_tightening import combined_method_rotation, torque_method_steps
from jacketcheck.mechanics.en_washer_rules import en_required_washers


def test_clamp_length_of_an_m30_hr_bolt() -> None:
    # EN 14399-3, M30 x 100, printed clamp length 48 to 69 mm (whole millimetres)
    clamp = clamp_lengths(
        100.0, thread_length=66.0, nut_height=25.6, length_tolerance=1.75, protrusion=3.5,
        clear_threads=4 * 3.5,
    )  # fmt: skip
    assert float(clamp.least) == pytest.approx(48.0, abs=0.5)
    assert float(clamp.largest) == pytest.approx(69.0, abs=0.5)


@pytest.mark.parametrize(
    ("diameter", "coefficient", "preload", "printed"),
    [(16.0, 0.129, 110e3, 250e3), (20.0, 0.119, 172e3, 450e3), (24.0, 0.123, 247e3, 800e3),
     (30.0, 0.127, 393e3, 1650e3), (36.0, 0.124, 572e3, 2800e3)],
)  # fmt: skip
def test_torque_of_the_second_step(
    diameter: float, coefficient: float, preload: float, printed: float
) -> None:
    # torque method of EN 1090-2 8.5.3 with declared k_m: table of a bolt maker, rounded to 50 N m
    steps = torque_method_steps(diameter, pretension=preload, torque_coefficient=coefficient)
    assert float(steps.second) == pytest.approx(printed, abs=25e3)
    assert float(steps.first) / float(steps.second) == pytest.approx(0.75 / 1.10)


@pytest.mark.parametrize(
    ("slenderness", "degrees"),
    [(1.0, 60.0), (1.99, 60.0), (2.0, 90.0), (5.99, 90.0), (6.0, 120.0), (10.0, 120.0)],
)
def test_rotation_of_the_combined_method(slenderness: float, degrees: float) -> None:
    # EN 1090-2 Table 21: t < 2d 60, 2d <= t < 6d 90, 6d <= t <= 10d 120 degrees
    assert float(combined_method_rotation(slenderness * 24.0, diameter=24.0)) == degrees


def test_no_rotation_is_printed_beyond_ten_diameters() -> None:
    with pytest.raises(DomainError, match="at most 10"):
        combined_method_rotation(241.0, diameter=24.0)


def test_a_pitch_must_stand_out_of_the_nut() -> None:
    # EN 1090-2 8.2.2; M20: 45 + 18 + 2.5
    assert float(least_bolt_length(45.0, nut_height=18.0, protrusion=2.5)) == 65.5


@pytest.mark.parametrize(
    ("strength", "places"), [(800.0, ["turned element"]), (1000.0, ["head", "nut"])]
)
def test_washers_by_class(strength: float, places: list[str]) -> None:
    # EN 1090-2 8.2.4: class 8.8 under the turned part, class 10.9 under both
    rules = en_required_washers(
        bolt_tensile_strength=strength,
        tightening="turn-of-nut",
        head_side_hole="standard",
        nut_side_hole="standard",
    )
    assert [rule.place for rule in rules] == places


def test_slots_need_a_plate_washer_and_snug_bolts_none() -> None:
    rules = en_required_washers(
        bolt_tensile_strength=1000.0,
        tightening="snug",
        head_side_hole="standard",
        nut_side_hole="long-slot-parallel",
    )
    assert [(rule.place, rule.min_thickness) for rule in rules] == [("nut", 4.0)]
