"""Lengths, turns, torques, tensions and washers of whole schedules against printed tables."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP
from jacketcheck.schedule import BoltSchedule
from jacketcheck.schedule.records import ScheduleLine

POUND_FOOT = KIP / 1000.0 * 12.0 * INCH
MakeSchedule = Callable[..., BoltSchedule]
LineOf = Callable[[BoltSchedule, str], ScheduleLine]


@pytest.mark.parametrize(
    ("size", "plates", "ordered"),
    [
        # RCSC Table C-2.2: grip + 11/16, 7/8, 1, 1-1/8, 1-1/4, 1-1/2, 1-5/8 in by diameter, 5/32 in
        # for each washer, next 1/4 in; exact. All have one washer under the turned nut.
        pytest.param("1/2 in", (0.5, 0.5), 2.0, id="L-16-1/2"),
        pytest.param("5/8 in", (0.5, 0.5), 2.25, id="L-16-5/8"),
        pytest.param("3/4 in", (0.5, 0.5), 2.25, id="L-16-3/4"),
        pytest.param("7/8 in", (0.375, 0.5), 2.25, id="L-16-7/8"),
        pytest.param("7/8 in", (0.5, 0.75), 2.75, id="L-16-7/8-thicker"),
        pytest.param("1 in", (0.5, 0.625), 2.75, id="L-16-1"),
        pytest.param("1-1/8 in", (0.75, 0.75), 3.25, id="L-16-1-1/8"),
        pytest.param("1-1/4 in", (1.0, 1.0), 4.0, id="L-16-1-1/4"),
    ],
)
def test_ordered_lengths(
    schedule_of: MakeSchedule,
    line_of: LineOf,
    size: str,
    plates: tuple[float, float],
    ordered: float,
) -> None:
    schedule = schedule_of(
        "turns",
        sleeve={"thickness": plates[0] * INCH},
        splice={"thickness": plates[1] * INCH},
        bolts={"diameter": size, "plate_edge_distance": 60.0, "seam_edge_distance": 60.0},
    )
    assert line_of(schedule, "washers and indicators").value == pytest.approx(5 / 32 * INCH)
    assert line_of(schedule, "length to order").value == pytest.approx(ordered * INCH, rel=1e-9)


@pytest.mark.parametrize(
    ("grip", "slenderness", "turns"),
    [
        # RCSC 2020 Table 8.1 (8.2 in 2014), both faces normal; 7/8 in bolts of 2-1/4 to 7-1/2 in
        pytest.param(0.875, 2.25 / 0.875, 1 / 3, id="L-14-short"),
        pytest.param(2.2, 4.0, 1 / 3, id="L-14-4d"),
        pytest.param(2.4, 3.75 / 0.875, 1 / 2, id="L-14-beyond-4d"),
        pytest.param(5.7, 8.0, 1 / 2, id="L-14-8d"),
        pytest.param(6.2, 7.5 / 0.875, 2 / 3, id="L-14-beyond-8d"),
    ],
)
def test_turns_by_ordered_length(
    schedule_of: MakeSchedule, line_of: LineOf, grip: float, slenderness: float, turns: float
) -> None:
    schedule = schedule_of(
        "turns",
        sleeve={"thickness": 0.4 * grip * INCH},
        splice={"thickness": 0.6 * grip * INCH},
        bolts={"gauge": None},
    )
    assert line_of(schedule, "bolt length over diameter").value == pytest.approx(slenderness)
    turn = line_of(schedule, "turn of the nut beyond snug-tight")
    assert turn.value == pytest.approx(turns * 360.0)


@pytest.mark.parametrize(
    ("size", "printed"),
    [
        # Shigley Eq. 8-27 with K = 0.20 at the minimum pretension, last printed digit
        pytest.param("3/4 in", 350.0, id="L-17-3/4"),
        pytest.param("7/8 in", 568.8, id="L-17-7/8"),
        pytest.param("1 in", 850.0, id="L-17-1"),
    ],
)
def test_torque_by_calibrated_coefficient(
    schedule_of: MakeSchedule, line_of: LineOf, size: str, printed: float
) -> None:
    schedule = schedule_of(
        "wrench", bolts={"diameter": size, "torque_coefficient": 0.20, "pitch": 130.0}
    )
    torque = line_of(schedule, "torque by calibrated K").value
    assert isinstance(torque, float)
    # the schedule aims at 1.05 times the minimum pretension
    assert torque / 1.05 / POUND_FOOT == pytest.approx(printed, abs=0.0501)


def test_largest_torque(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # L-20: 0.25 P D = 710.9 lb·ft at P = 39 kips, 7/8 in
    torque = line_of(schedule_of("wrench"), "highest torque to expect").value
    assert isinstance(torque, float)
    assert torque / 1.05 / POUND_FOOT == pytest.approx(710.9, abs=0.05)


@pytest.mark.parametrize(
    ("size", "least", "verified"),
    [
        # AISC 360 Table J3.1 and RCSC Table 7.1, A325, whole kips
        pytest.param("3/4 in", 28, 29, id="P-07-3/4"),
        pytest.param("7/8 in", 39, 41, id="P-07-7/8"),
        pytest.param("1 in", 51, 54, id="P-07-1"),
    ],
)
def test_tensions(
    schedule_of: MakeSchedule, line_of: LineOf, size: str, least: float, verified: float
) -> None:
    schedule = schedule_of("turns", bolts={"diameter": size, "pitch": 130.0})
    assert line_of(schedule, "pretension at least").value == pytest.approx(least * KIP)
    tension = line_of(schedule, "tension to reach in verification").value
    assert isinstance(tension, float)
    assert tension / KIP == pytest.approx(verified, abs=0.5)


def test_torque_of_m22_hr_assemblies(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # EN 1090-2 8.5.3, M22 10.9, k_m 0.13: F_p,C 212 kN; 1.10 x 0.13 x 22 x 212 = 667 N·m and
    # 0.75/1.10 of it, to three digits
    schedule = schedule_of("HR torque")
    assert line_of(schedule, "preload F_p,C").value == pytest.approx(212e3, rel=1e-3)
    assert line_of(schedule, "second step, torque").value == pytest.approx(667e3, rel=1e-3)
    assert line_of(schedule, "first step, torque").value == pytest.approx(455e3, rel=1e-3)


@pytest.mark.parametrize(
    ("variant", "bolts", "expected"),
    [
        # RCSC Section 6: wrench methods one under the turned element
        pytest.param("wrench", {}, ["washer/nut"], id="L-22-wrench"),
        # long slot in outer plies: plate washers of 5/16 in; with A490 over 1 in hardened ones too
        pytest.param(
            "slotted A490", {},
            ["plate washer/head", "washer/head", "plate washer/nut", "washer/nut"],
            id="L-22-long-slot",
        ),
        pytest.param(
            "turns", {"hole": "oversized"}, ["washer/head", "washer/nut"], id="L-22-oversized"
        ),
        pytest.param("indicators", {}, ["washer/nut", "indicator/nut"], id="L-22-indicator"),
        pytest.param("twist-off", {}, ["washer/nut"], id="L-22-twist-off"),
        pytest.param("snug only", {}, [], id="L-22-snug"),
    ],
)  # fmt: skip
def test_washers_to_order(
    schedule_of: MakeSchedule, variant: str, bolts: dict[str, object], expected: list[str]
) -> None:
    schedule = schedule_of(variant, bolts=bolts)
    pieces = [
        f"{order.part}/{place}"
        for order in schedule.orders
        if order.part not in {"bolt", "nut", "twist-off bolt"}
        for place in ("head", "nut")
        if f"under the {place}" in order.description
    ]
    assert sorted(pieces) == sorted(expected)


@pytest.mark.parametrize(
    ("steel", "count"),
    [
        # A490 bolts in steel below 40 ksi need washers at both ends
        pytest.param("ASTM A36", 2, id="L-22-soft"),
        pytest.param("ASTM A572 Grade 50", 1, id="L-22-hard"),
    ],
)
def test_washers_of_a490_bolts_in_soft_steel(
    schedule_of: MakeSchedule, steel: str, count: int
) -> None:
    schedule = schedule_of(
        "turns",
        bolts={"product": "ASTM F3125 A490"},
        sleeve={"steel": steel},
        splice={"steel": steel},
    )
    (washer,) = (order for order in schedule.orders if order.part == "washer")
    assert washer.per_seam == count * 18


def test_thick_washers_of_large_a490_bolts(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # L-23: A490 over 1 in in oversized holes: F436 washers at least 5/16 in thick
    schedule = schedule_of("slotted A490", bolts={"hole": "oversized"})
    (washer,) = (order for order in schedule.orders if order.part == "washer")
    assert "at least 5/16 in thick" in washer.description
    assert washer.per_seam == 2 * 18
    assert line_of(schedule, "washers and indicators").value == pytest.approx(2 * 5 / 16 * INCH)


@pytest.mark.parametrize(
    ("size", "shortest"),
    [("3/4 in", 2.5), ("7/8 in", 2.75), ("1 in", 3.0), ("1-1/8 in", 3.25)],
)
def test_bolts_too_short_for_a_calibrator(
    schedule_of: MakeSchedule, line_of: LineOf, size: str, shortest: float
) -> None:
    # South Dakota DOT SD 503, table of short bolts, exact
    schedule = schedule_of(
        "turns", bolts={"diameter": size, "pitch": 130.0, "seam_edge_distance": 60.0}
    )
    line = line_of(schedule, "shortest bolt for a usual tension calibrator")
    assert line.value == pytest.approx(shortest * INCH)
    assert "shorter" in line.note
