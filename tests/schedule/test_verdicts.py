"""What a schedule flags, and the exit code that follows."""

from __future__ import annotations

import dataclasses
import math
import re
from collections.abc import Callable

import pytest

from jacketcheck.catalog import built_in_catalog
from jacketcheck.errors import DomainError
from jacketcheck.jacket import Jacket
from jacketcheck.mechanics._arguments import ThreadPosition
from jacketcheck.report import ExitCode
from jacketcheck.schedule import Allowances, BoltSchedule, bolt_schedule
from jacketcheck.schedule.assembly import assembly_of
from jacketcheck.schedule.records import ScheduleLine, Verdict

MakeSchedule = Callable[..., BoltSchedule]
LineOf = Callable[[BoltSchedule, str], ScheduleLine]
CATALOG = built_in_catalog()


@pytest.mark.parametrize(
    "variant", ["wrench", "no K", "turns", "indicators", "twist-off", "metric", "HR torque"]
)
def test_schedules_without_open_points(schedule_of: MakeSchedule, variant: str) -> None:
    schedule = schedule_of(variant)
    assert schedule.open_points == ()
    assert schedule.exit_code is ExitCode.WITHIN


def test_snug_bolts_are_a_problem(schedule_of: MakeSchedule) -> None:
    schedule = schedule_of("snug only")
    (point,) = schedule.open_points
    assert point.item == "pretension"
    assert "no design slip resistance" in point.note
    assert schedule.exit_code is ExitCode.EXCEEDS


def test_threads_counted_as_excluded_that_are_not(
    schedule_of: MakeSchedule, line_of: LineOf
) -> None:
    schedule = schedule_of("turns", bolts={"threads": "excluded"}, splice={"thickness": 6.35})
    line = line_of(schedule, "threads in the shear planes")
    assert line.verdict is Verdict.PROBLEM
    assert 'bolts.threads = "included"' in line.note
    assert schedule.exit_code is ExitCode.EXCEEDS


def test_threads_that_stay_clear_of_the_plane(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    schedule = schedule_of("turns", bolts={"threads": "excluded"})
    line = line_of(schedule, "threads in the shear planes")
    assert (line.value, line.verdict) == ("excluded", Verdict.OK)


def test_cure_by_washers_is_true(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # two inside plates: the note promises that so many washers more clear the threads
    schedule = schedule_of(
        "turns",
        bolts={"threads": "excluded", "diameter": "1 in", "pitch": 130.0},
        sleeve={"thickness": 12.7},
        splice={"sides": "both", "thickness": 9.525, "inside_thickness": 7.9375},
    )
    note = line_of(schedule, "threads in the shear planes").note
    assert "2 more washers under the nut and bolts of 3 in" in note
    # 1-3/16 grip + 3 x 5/32 + 1-1/4 = 2.906 -> 3 in; shank 3 - 1.75 - 0.31 = 0.94 > 5/16 + 1/2
    # with one more: 2.75 -> 2-3/4 in; shank 0.69 < 0.8125


def test_a_bolt_that_nobody_stocks(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    schedule = schedule_of("very thick")
    assert "length not stocked" in schedule.designation
    line = line_of(schedule, "length to order")
    assert "longest that is stocked, 203.2 mm (8 in)" in line.note
    assert schedule.exit_code is ExitCode.NOT_EVALUATED


def test_a_long_bolt_has_no_tabulated_turn(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # 1/2 in bolts of more than 6 in
    schedule = schedule_of(
        "turns",
        sleeve={"thickness": 76.2},
        splice={"thickness": 63.5},
        bolts={"diameter": "1/2 in"},
    )
    line = line_of(schedule, "turn of the nut beyond snug-tight")
    assert line.verdict is Verdict.NOT_EVALUATED
    assert "twelve diameters" in line.note
    assert schedule.exit_code is ExitCode.NOT_EVALUATED


def test_without_a_coefficient_no_torque_is_stated(
    schedule_of: MakeSchedule, line_of: LineOf
) -> None:
    schedule = schedule_of("no K")
    assert line_of(schedule, "torque").value == "from the day's calibration"
    items = [line.item for line in schedule.lines()]
    assert "torque by calibrated K" not in items
    en = schedule_of("HR torque, no K")
    assert line_of(en, "torque").value == "from the k_m on the lot's declaration"
    assert "second step, torque, highest k_m" in [line.item for line in en.lines()]


def test_a_product_without_rules_is_not_guessed(make_jacket: Callable[..., Jacket]) -> None:
    plain = dataclasses.replace(
        CATALOG.bolt_product("A325"), name="House bolt", aliases=(), rules=None
    )
    catalog = CATALOG.extended(bolts=[plain])
    jacket = make_jacket("turns")
    jacket = dataclasses.replace(
        jacket, bolts=dataclasses.replace(jacket.bolts, product="House bolt")
    )
    schedule = bolt_schedule(jacket, variant="x", catalog=catalog)
    assert {point.item for point in schedule.open_points} == {
        "nut, washer and marks",
        "washers",
        "figures of the method",
    }
    assert schedule.exit_code is ExitCode.NOT_EVALUATED
    assert all("RCSC" not in step.text for step in schedule.procedure)


def test_a_thread_of_unknown_run_out(make_jacket: Callable[..., Jacket]) -> None:
    product = CATALOG.bolt_product("A325")
    sizes = type(product.sizes)(
        "size", [dataclasses.replace(one, transition_length=None) for one in product.sizes.values()]
    )
    house = dataclasses.replace(product, name="House bolt", aliases=(), sizes=sizes)
    catalog = CATALOG.extended(bolts=[house])
    cases: tuple[tuple[ThreadPosition, ExitCode], ...] = (
        ("included", ExitCode.WITHIN),
        ("excluded", ExitCode.NOT_EVALUATED),
    )
    for threads, code in cases:
        jacket = make_jacket("turns")
        bolts = dataclasses.replace(jacket.bolts, product="House bolt", threads=threads)
        schedule = bolt_schedule(
            dataclasses.replace(jacket, bolts=bolts), variant="x", catalog=catalog
        )
        assert schedule.exit_code is code


def test_a_small_sleeve_needs_curved_seats(make_jacket: Callable[..., Jacket]) -> None:
    jacket = make_jacket("turns")
    sleeve = dataclasses.replace(jacket.sleeve, inner_diameter=600.0)
    schedule = bolt_schedule(dataclasses.replace(jacket, sleeve=sleeve), variant="x")
    (point,) = schedule.open_points
    assert point.item == "inside radius over half the nut's width"
    assert point.verdict is Verdict.PROBLEM


def test_methods_have_their_own_steps(schedule_of: MakeSchedule) -> None:
    def text(variant: str) -> str:
        schedule = schedule_of(variant)
        return " ".join(step.text for step in (*schedule.procedure, *schedule.inspection))

    assert "each working day" in text("wrench")
    assert "each working day" not in text("turns")
    assert "mark nut, bolt end" in text("turns")
    assert "bumps against the washer" in text("indicators")
    assert "splines" in text("twist-off")
    assert "k-class" in text("HR torque")
    assert "tension calibrator" not in text("HR torque")
    assert "tension calibrator" not in text("snug only")
    assert "Snug first" in text("snug only")


@pytest.mark.parametrize(
    ("loss", "days"), [(-1.0, 1), (math.nan, 1), (101.0, 1), (5.0, 0), (5.0, 61)]
)
def test_allowances_that_nobody_orders_by(loss: float, days: int) -> None:
    with pytest.raises(DomainError):
        Allowances(loss, days)


@pytest.mark.parametrize(
    ("hole", "parts"),
    [
        ("standard", ["indicator", "washer"]),
        ("oversized", ["washer", "indicator", "washer"]),
        ("short-slot-parallel", ["washer", "indicator", "washer"]),
        ("long-slot-perpendicular", ["plate washer", "washer", "indicator", "washer"]),
    ],
)
def test_an_indicator_never_lies_on_an_enlarged_hole(
    make_jacket: Callable[..., Jacket], hole: str, parts: list[str]
) -> None:
    jacket = make_jacket("indicators", bolts={"hole": hole})
    assembly = assembly_of(jacket, CATALOG)
    assert [one.part for one in assembly.washers_at("nut")] == parts
    # grip 7/8, allowance 1-1/8, each washer and indicator 5/32, a plate washer 5/16 in
    heads = {"standard": 0.0, "long-slot-perpendicular": 15 / 32}.get(hole, 5 / 32)
    nuts = sum(5 / 16 if part == "plate washer" else 5 / 32 for part in parts)
    assert float(jacket.bolts.fit.needed) == pytest.approx((2.0 + heads + nuts) * 25.4)


def test_indicators_are_verified_open(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    line = line_of(schedule_of("indicators"), "in verification, at 1.05 × pretension")
    assert "3 of 5" in str(line.value)
    assert "4 of 6" in str(line.value)


@pytest.mark.parametrize("variant", ["wrench", "indicators", "twist-off", "slotted A490", "metric"])
def test_weathering_steel_asks_for_type_3(schedule_of: MakeSchedule, variant: str) -> None:
    schedule = schedule_of(variant, sleeve={"exposure": "weathering"})
    orders = {one.part: one.description for one in schedule.orders}
    bolt = orders.get("bolt") or orders["twist-off bolt"]
    assert "Type 3" in bolt
    assert "Type 3" in schedule.designation
    assert "Grade DH3" in orders["nut"] or "10S3" in orders["nut"]
    assert "Type 3" in orders["washer"]
    assert "325-3" in orders.get("indicator", "325-3")
    marks = next(line for line in schedule.lines() if line.item == "marks")
    assert "underlined" in str(marks.value)
    painted = schedule_of(variant)
    assert not re.search(r"Type 3\b", " ".join(one.description for one in painted.orders))
    assert "DH3" not in " ".join(one.description for one in painted.orders)


def test_weathering_assemblies_that_nobody_lists_are_an_open_point(
    schedule_of: MakeSchedule, line_of: LineOf
) -> None:
    schedule = schedule_of("HR torque", sleeve={"exposure": "weathering"})
    assert line_of(schedule, "for unpainted weathering steel").verdict is Verdict.NOT_EVALUATED
    assert schedule.exit_code is ExitCode.NOT_EVALUATED


def test_nobody_holds_the_head_of_a_twist_off_bolt(schedule_of: MakeSchedule) -> None:
    def text(variant: str) -> str:
        return " ".join(step.text for step in schedule_of(variant).procedure)

    assert "must be held" not in text("twist-off")
    assert "holds the spline" in text("twist-off")
    assert "must be held" in text("turns")


def test_turn_tolerances_of_both_codes(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    schedule = schedule_of("turns")
    assert line_of(schedule, "turn may exceed by").value == 60.0
    assert line_of(schedule, "on bridges, turn may be off either way by").value == 30.0
