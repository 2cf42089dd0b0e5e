"""Strain of rolling, and bars behind the seams, by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.jacket import Jacket
from jacketcheck.report import ExitCode
from jacketcheck.schedule import BoltSchedule, bolt_schedule
from jacketcheck.schedule.records import ScheduleLine, Verdict
from jacketcheck.schedule.setting_out import bars_behind_seams

MakeSchedule = Callable[..., BoltSchedule]
LineOf = Callable[[BoltSchedule, str], ScheduleLine]


def test_strain_of_rolling(schedule_of: MakeSchedule, line_of: LineOf) -> None:
    # outside plate: 1/2 in on 27.375 in: 0.5/(2 x 27.625)
    line = line_of(schedule_of("turns"), "strain of cold rolling, outer fibre")
    assert line.value == pytest.approx(0.5 / (2 * 27.625))
    assert line.verdict is Verdict.OK


def test_plates_that_are_too_thick_to_roll_cold(make_jacket: Callable[..., Jacket]) -> None:
    schedule = bolt_schedule(make_jacket("very thick"), variant="x")
    assert "strain of cold rolling, outer fibre" in {point.item for point in schedule.open_points}
    assert schedule.exit_code is not ExitCode.WITHIN


@pytest.mark.parametrize(
    ("seam", "numbers"),
    [
        # bars 1 and 2 of 16 are fractured: 0 and 22.5 degrees; half a plate of 7.25 in on 27 in
        # covers 7.7 degrees on either side of both seams
        (90.0, ()),
        (0.0, (1,)),
        (180.0, (1,)),
        (195.0, (2,)),
        (11.0, ()),
        (30.0, (2,)),
    ],
)
def test_fractured_bars_behind_a_seam(
    make_jacket: Callable[..., Jacket], line_of: LineOf, seam: float, numbers: tuple[int, ...]
) -> None:
    jacket = make_jacket("turns", sleeve={"seam_angle": seam})
    assert tuple(bar.number for bar in bars_behind_seams(jacket)) == numbers
    line = line_of(bolt_schedule(jacket, variant="x"), "fractured bars behind a seam")
    assert line.value == (", ".join(map(str, numbers)) or "none")
    assert bool(line.note) is bool(numbers)


def test_grout_is_kept_in_where_nothing_closes_the_seam_inside(schedule_of: MakeSchedule) -> None:
    def text(**tables: dict[str, object]) -> str:
        return " ".join(step.text for step in schedule_of("turns", **tables).procedure)

    assert "seal both edges" in text()
    assert "seal both edges" not in text(splice={"sides": "both"})
