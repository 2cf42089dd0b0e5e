"""Ratios of rechecks worked out by hand from the bench's six limit states.

Specified: A325 7/8 in at 39 kip, class B (0.50), standard holes; sleeve 54 in, 3/8 in, 50 ksi;
grout 7 ksi; plate edge 1-1/2 in; gap 2 in. 1 kip is 4448.222 N, 1 ksi is 6.894757 MPa.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any, NamedTuple

import pytest

from jacketcheck.as_built import Confirmation, ConfirmedLine, LineVerdict
from jacketcheck.as_built.records import AS_BUILT, SPECIFIED
from jacketcheck.report import ExitCode
from jacketcheck.results import Status

Confirmed = Callable[..., Confirmation]
LineOf = Callable[[Confirmation, str], ConfirmedLine]
KIP = 4448.2216152605
KSI = KIP / 25.4**2
SLIP = 70e3 / (0.5 * 39 * KIP)
HOOP = 2.5 * 54 / (2 * 0.375) / (50 * KSI)


def ratios(confirmation: Confirmation, variant: str) -> dict[str, float]:
    (table,) = (one for one in confirmation.report.tables if one.variant == variant)
    return {one.title: float(one.ratio) for one in table.results}


def test_everything_as_specified(confirmed: Confirmed) -> None:
    confirmation = confirmed()
    assert {line.verdict for line in confirmation.lines} == {LineVerdict.ACCEPTED}
    assert confirmation.exit_code is ExitCode.WITHIN
    assert ratios(confirmation, SPECIFIED) == ratios(confirmation, AS_BUILT)
    assert ratios(confirmation, SPECIFIED)["slip"] == pytest.approx(SLIP)
    assert ratios(confirmation, SPECIFIED)["hoop"] == pytest.approx(HOOP)


class Case(NamedTuple):
    """One deviation: what is recorded, its line, and the ratio that it raises."""

    tables: dict[str, Any]
    item: str
    row: str
    before: float
    after: float


CASES = {
    "thin-sleeve": Case(
        {"sleeve": {"thickness": ["0.376 in", "0.355 in"]}},
        "thickness", "hoop", HOOP, HOOP * 0.375 / 0.355,
    ),
    "oversized-hole": Case(
        # oversized holes in the outer plies need hardened washers at both ends
        {"holes": {"along": "1 in"}, "bolts": {"washers_under_head": 1, "length": "2-1/2 in"}},
        "size of the holes", "slip", SLIP, SLIP / 0.85,
    ),
    "large-diameter": Case(
        {"sleeve": {"diameters": ["54.4 in", "54.2 in"]}},
        "inside diameter, mean", "hoop", HOOP, HOOP * 54.3 / 54.0,
    ),
    "oval": Case(
        {"sleeve": {"diameters": ["53.7 in", "54.3 in"]}},
        "ovality", "hoop", HOOP, HOOP * 54.3 / 54.0,
    ),
    "soft-plate": Case(
        {"sleeve": {"yield_strength": ["48 ksi", "52 ksi"]}},
        "yield strength on certificates", "hoop", HOOP, HOOP * 50.0 / 48.0,
    ),
    "small-gap": Case(
        {"sleeve": {"gap": ["1.7 in", "2 in"]}},
        "gap under the sleeve", "gap", 40.0 / 50.8, 40.0 / (1.7 * 25.4),
    ),
    # 0.9 in instead of 3/4 in takes 0.075 in from the plate's edge distance
    "wide-seam": Case(
        {"sleeve": {"seam_gap": ["0.9 in", "0.8 in"]}},
        "opening of the seams", "edge", 35.0 / 38.1, 35.0 / (1.425 * 25.4),
    ),
    "weak-grout": Case(
        {"grout": {"cylinder_strength": ["6.9 ksi", "6.8 ksi", "7.0 ksi"]}},
        "strength of cylinders", "grout", 45.0 / (7 * KSI), 45.0 / (6.9 * KSI),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_accepted_by_recheck(confirmed: Confirmed, line_of: LineOf, name: str) -> None:
    case = CASES[name]
    confirmation = confirmed(**case.tables)
    line = line_of(confirmation, case.item)
    assert line.verdict is LineVerdict.BY_RECHECK
    assert line.recheck is not None
    assert line.recheck.governing == f"{case.row}, here"
    assert line.recheck.before == pytest.approx(case.before)
    assert line.recheck.ratio == pytest.approx(case.after)
    assert confirmation.exit_code is ExitCode.WITHIN
    # an ovality is checked at both extremes; the check as built goes on with the mean
    if name != "oval":
        assert ratios(confirmation, AS_BUILT)[case.row] == pytest.approx(case.after)


@pytest.mark.parametrize(
    ("tables", "item", "after"),
    [
        # class A: 70 / (0.30 x 173.48) = 1.345
        ({"faying": {"faying_class": "AISC A"}}, "class by AISC", SLIP * 0.5 / 0.3),
        ({"tightening": {"method": "snug"}}, "method", math.inf),
        ({"sleeve": {"thickness": "0.18 in"}}, "thickness", HOOP * 0.375 / 0.18),
        ({"grout": {"cylinder_strength": ["5.7 ksi"] * 3}}, "strength of cylinders",
         45.0 / (5.7 * KSI)),
    ],
)  # fmt: skip
def test_rejected_by_recheck(
    confirmed: Confirmed, line_of: LineOf, tables: Any, item: str, after: float
) -> None:
    confirmation = confirmed(**tables)
    line = line_of(confirmation, item)
    assert line.verdict is LineVerdict.REJECTED
    assert line.recheck is not None
    assert line.recheck.ratio == pytest.approx(after)
    assert confirmation.exit_code is ExitCode.EXCEEDS
    assert confirmation.as_built_status is Status.EXCEEDS


def test_single_lines_pass_and_together_they_do_not(confirmed: Confirmed, line_of: LineOf) -> None:
    # hoop 0.522: x 0.375/0.24 = 0.816 and 28 ksi alone 0.933; both together 1.457
    confirmation = confirmed(sleeve={"thickness": "0.24 in", "yield_strength": "28 ksi"})
    assert line_of(confirmation, "thickness").verdict is LineVerdict.BY_RECHECK
    assert line_of(confirmation, "yield strength on certificates").verdict is LineVerdict.BY_RECHECK
    together = HOOP * 0.375 / 0.24 * 50.0 / 28.0
    assert ratios(confirmation, AS_BUILT)["hoop"] == pytest.approx(together)
    assert together > 1.0
    assert confirmation.exit_code is ExitCode.EXCEEDS


def test_measured_tension_below_the_minimum_counts_in_the_check_as_built(
    confirmed: Confirmed, line_of: LineOf
) -> None:
    # 36 kip measured, counted over D_u = 1.13; 70 / (0.5 x 36 x 4.448 / 1.13) = 0.988
    confirmation = confirmed(tightening={"tension": ["36 kip", "41 kip"]})
    line = line_of(confirmation, "tension measured in installed bolts")
    assert line.verdict is LineVerdict.REJECTED
    assert "tighten on" in line.comparison.note
    assert ratios(confirmation, AS_BUILT)["slip"] == pytest.approx(70e3 * 1.13 / (0.5 * 36 * KIP))
    assert confirmation.exit_code is ExitCode.EXCEEDS


def test_torque_with_the_highest_calibrated_coefficient(
    confirmed: Confirmed, line_of: LineOf
) -> None:
    # K = T/(d P): 620 lb·ft at 42 kip and 7/8 in: 0.2024; 600 at 42: 0.1959; 640 at 43: 0.2041
    calibration = [
        {"torque": "620 lb-ft", "tension": "42 kip"},
        {"torque": "600 lb-ft", "tension": "42 kip"},
        {"torque": "640 lb-ft", "tension": "43 kip"},
    ]
    tightening = {"method": "calibrated-wrench", "rotation": None, "calibration": calibration}
    confirmation = confirmed(
        "wrench", tightening={**tightening, "torque": ["600 lb-ft", "610 lb-ft"]}
    )
    highest = 640 * 12 / (0.875 * 43e3)
    assert line_of(confirmation, "torque coefficient K, highest").comparison.measured == (
        pytest.approx(highest)
    )
    reached = line_of(confirmation, "tension by torque and calibrated K")
    # 600 x 12 / (0.2041 x 0.875) = 40.31 kip, above 39
    assert reached.comparison.measured == pytest.approx(600 * 12 / (highest * 0.875) / 1e3 * KIP)
    assert reached.verdict is LineVerdict.ACCEPTED
    low = confirmed("wrench", tightening={**tightening, "torque": "570 lb-ft"})
    assert line_of(low, "tension by torque and calibrated K").verdict is LineVerdict.REJECTED


def test_cubes_are_converted(confirmed: Confirmed, line_of: LineOf) -> None:
    # 62 MPa, 2 in: 0.95 x 62 = 58.9 as a 150 mm cube, between C45/55 and C50/60: 48.9 MPa
    grout = {"cylinder_strength": None, "cube_strength": ["62 MPa"] * 3, "cube_side": "2 in"}
    line = line_of(confirmed(grout=grout), "strength of cylinders, from cubes")
    assert line.comparison.measured == pytest.approx(48.9)
    assert line.verdict is LineVerdict.ACCEPTED
    assert "0.79 of the cubes" in line.comparison.note
