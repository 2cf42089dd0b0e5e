"""What stands beside a verdict that rests on the engineer's own judgement."""

from __future__ import annotations

from pathlib import Path

import pytest

from jacketcheck.api import check
from jacketcheck.report import ExitCode, VariantResults
from jacketcheck.results import Kind, Result, Status
from tests.support.jackets import CASE, host


def checked(folder: Path, *changes: str) -> VariantResults:
    """The reference case with lines of a variant."""
    path = folder / "repair.toml"
    lines = "\n".join(changes)
    path.write_text(f"{CASE.read_text('utf-8')}\n[variants.changed]\n{lines}\n", "utf-8")
    return check(path, variants=["changed"], host=host()).tables[0]


def judged(table: VariantResults) -> list[Result]:
    return [one for one in table.results if one.limit_state == "judgement"]


def test_defaults_are_no_judgement(tmp_path: Path) -> None:
    assert not judged(checked(tmp_path))


def test_a_judgement_that_changes_nothing_is_reported(tmp_path: Path) -> None:
    table = checked(tmp_path, "judgement.overstrength = 1.1")
    (row,) = judged(table)
    assert row.kind is Kind.REPORTED
    assert row.location == "1.1 in place of the default"
    assert "by the default the verdict would be ok" in row.notes[0]
    assert table.status is Status.OK


# with one bar in the annulus less than the base needs, the verdict hangs on the overstrength
WEAK = ("added_bars.count = 13", "judgement.overstrength = 1.0")


def test_a_verdict_that_rests_on_a_judgement_is_open(tmp_path: Path) -> None:
    default = checked(tmp_path, WEAK[0])
    assert default.status is Status.EXCEEDS
    table = checked(tmp_path, *WEAK)
    assert not [one for one in table.results if one.status is Status.EXCEEDS]
    (row,) = judged(table)
    assert row.kind is Kind.NOT_EVALUATED
    assert row.demand == pytest.approx(float(default.governing.ratio))
    assert default.governing.title in row.notes[0]
    assert ExitCode.of(table.results) is ExitCode.NOT_EVALUATED


def test_the_engineer_may_stand_by_it(tmp_path: Path) -> None:
    table = checked(tmp_path, *WEAK, 'judgement.confirmed = ["judgement.overstrength"]')
    (row,) = judged(table)
    assert row.kind is Kind.REPORTED
    assert "by the default the verdict would be EXCEEDS" in row.notes[0]
    assert table.status is Status.OK


def test_expected_concrete_is_told_in_both_systems(tmp_path: Path) -> None:
    (row,) = judged(checked(tmp_path, 'column.concrete_expected = "4.5 ksi"'))
    assert row.location == "31.0264 MPa (4.5 ksi) in place of the default"


def test_a_default_that_cannot_be_built_is_told(tmp_path: Path) -> None:
    table = checked(tmp_path, 'judgement.buckled_bars = "as-intact"', 'damage.1.state = "buckled"',
                    'damage.2.state = "buckled"')  # fmt: skip
    (row,) = judged(table)
    assert "as-intact in place of as-fractured" in row.location
