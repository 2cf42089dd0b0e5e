"""The bolt schedule and the comparison with what was built, by the standard of the bolts."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from typing import Any

import pytest

from jacketcheck.as_built import (
    Confirmation,
    ConfirmedLine,
    LineVerdict,
    confirm,
    read_as_built_text,
)
from jacketcheck.host import Host
from jacketcheck.inputs import InputFile
from jacketcheck.jacket import Jacket
from jacketcheck.report import ExitCode
from jacketcheck.schedule import BoltSchedule, bolt_schedule, schedules_of
from jacketcheck.schedule.records import ScheduleLine, Verdict

JacketOf = Callable[[str], Jacket]
RECORD = """
[record]
title = "Site records"
inspector = "C. Tester"
date = "2031-05-06"
variant = "tensioned"
not_yet = ["holes", "faying", "sleeve", "splice", "grout"]

[bolts]
product = "IS 3757 8.8"
diameter = "M24"
length = "75 mm"
count = 139
tensile_strength = ["850 MPa", "862 MPa"]
marks = "as specified"
washers_under_head = 0
washers_under_nut = 1

[tightening]
method = "turn-of-nut"
rotation = ["120 deg", "145 deg"]
"""


@pytest.fixture
def schedule_of(host: Host, repair: InputFile) -> Callable[[str], BoltSchedule]:
    """Schedule of a variant."""
    return lambda variant: schedules_of(repair, host=host, variants=[variant]).schedules[0]


def line(schedule: BoltSchedule, item: str) -> ScheduleLine:
    (found,) = [one for one in schedule.lines() if one.item == item]
    return found


def confirmed(host: Host, repair: InputFile, text: str) -> Confirmation:
    record = read_as_built_text(text, catalog=host.catalog)
    return confirm(repair, record, host=host, provisions=["india"])


def compared(confirmation: Confirmation, item: str) -> ConfirmedLine:
    (found,) = [one for one in confirmation.lines if one.comparison.item == item]
    return found


def test_a_schedule_without_open_points(schedule_of: Callable[[str], BoltSchedule]) -> None:
    schedule = schedule_of("tensioned")
    assert schedule.open_points == ()
    assert schedule.exit_code is ExitCode.WITHIN
    assert line(schedule, "nut").value == "high strength structural nut IS 6623 class 8"
    # 40 mm of plates, 4 mm of washer, 24.2 mm of nut, one pitch of 3 mm: 71.2 mm
    assert line(schedule, "length needed").value == pytest.approx(71.2)
    assert line(schedule, "length to order").value == 75.0
    assert all(one.source for one in schedule.lines())


@pytest.mark.parametrize(
    ("length", "turn", "over"),
    [
        # up to 4 d a third of a turn, up to 8 d a half, up to 12 d two thirds; never less, and more
        # by a twelfth of a turn up to half a turn, by an eighth beyond
        pytest.param(96.0, 120.0, 30.0, id="4d"),
        pytest.param(97.0, 180.0, 30.0, id="beyond-4d"),
        pytest.param(192.0, 180.0, 30.0, id="8d"),
        pytest.param(193.0, 240.0, 45.0, id="beyond-8d"),
        pytest.param(288.0, 240.0, 45.0, id="12d"),
        pytest.param(289.0, None, None, id="beyond-12d"),
    ],
)
def test_part_turns(host: Host, length: float, turn: float | None, over: float | None) -> None:
    """IS 4000:1992, part-turn method (from memory)."""
    rules = host.catalog.bolt_product("IS 3757 8.8").rules
    assert rules is not None
    assert rules.installation is not None
    band = rules.installation.turn(length / 24.0)
    if turn is None:
        assert band is None
    else:
        assert band is not None
        assert (band.rotation, band.under, band.over) == (turn, 0.0, over)


def test_no_torque_is_invented(jacket: Jacket, host: Host) -> None:
    bolts = dataclasses.replace(jacket.bolts, tightening="calibrated-wrench")
    changed = dataclasses.replace(jacket, bolts=bolts)
    schedule = bolt_schedule(changed, variant="x", catalog=host.catalog)
    refused = line(schedule, "allowed")
    assert refused.verdict is Verdict.PROBLEM
    assert "torque" in refused.note
    assert not [one for one in schedule.lines() if one.unit == "N mm"]


@pytest.mark.parametrize(
    ("hole", "parts"),
    [
        ("standard", {"nut": ["washer"]}),
        ("oversized", {"head": ["washer"], "nut": ["washer"]}),
        ("long-slot-parallel", {"head": ["plate washer"], "nut": ["plate washer", "washer"]}),
    ],
)
def test_washers(jacket: Jacket, host: Host, hole: str, parts: dict[str, list[str]]) -> None:
    # the same kind of hole in every ply; its type is drawn as text
    kind: Any = hole
    one = dataclasses.replace(jacket.sleeve.hole, kind=kind)
    changed = dataclasses.replace(
        jacket,
        sleeve=dataclasses.replace(jacket.sleeve, hole=one),
        splice=dataclasses.replace(jacket.splice, hole=one),
    )
    schedule = bolt_schedule(changed, variant="x", catalog=host.catalog)
    ordered = {one.part: one.installed for one in schedule.orders if "washer" in one.part}
    installed = int(jacket.bolts.count)
    wanted = [part for place in parts.values() for part in place]
    assert ordered == {part: installed * wanted.count(part) for part in wanted}


def test_steps_stand_in_their_order(schedule_of: Callable[[str], BoltSchedule]) -> None:
    steps = [step.text for step in schedule_of("tensioned").procedure]
    mark = next(place for place, text in enumerate(steps) if text.startswith("After snugging"))
    grout = next(place for place, text in enumerate(steps) if text.startswith("Grout only"))
    assert mark < grout
    assert not any("indicator has closed" in text for text in steps)


def test_tests_that_nobody_asks_for_are_said(schedule_of: Callable[[str], BoltSchedule]) -> None:
    found = line(schedule_of("tensioned"), "for tests of each lot on site")
    assert found.value == 0.0
    assert "no number" in found.source


def test_bolts_as_delivered_are_accepted(host: Host, repair: InputFile) -> None:
    confirmation = confirmed(host, repair, RECORD)
    judged = [one for one in confirmation.lines if one.comparison.part in {"bolts", "tightening"}]
    assert judged
    assert {one.verdict for one in judged} == {LineVerdict.ACCEPTED}
    turn = compared(confirmation, "turn of the nut")
    assert turn.comparison.specified == 120.0
    assert "IS 4000" in turn.comparison.source
    assert "bolts.rotational_capacity" not in confirmation.not_recorded


@pytest.mark.parametrize(
    ("turn", "verdict"),
    [
        ("119 deg", LineVerdict.REJECTED),  # nothing may be missing
        ("150 deg", LineVerdict.ACCEPTED),
        ("151 deg", LineVerdict.NOT_JUDGED),
    ],
)
def test_turns_are_judged_by_their_own_tolerance(
    host: Host, repair: InputFile, turn: str, verdict: LineVerdict
) -> None:
    record = RECORD.replace('["120 deg", "145 deg"]', f'["{turn}"]')
    confirmation = confirmed(host, repair, record)
    assert compared(confirmation, "turn of the nut").verdict is verdict


def test_torque_on_site_is_rejected(host: Host, repair: InputFile) -> None:
    record = RECORD.replace(
        'method = "turn-of-nut"\nrotation = ["120 deg", "145 deg"]',
        'method = "calibrated-wrench"\ntorque = ["700 N m"]',
    )
    confirmation = confirmed(host, repair, record)
    refused = compared(confirmation, "method by the standard of the bolts")
    assert refused.verdict is LineVerdict.REJECTED
