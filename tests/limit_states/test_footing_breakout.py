"""Breakout of the added bars: a verdict, reinforcement in its place, or an open point in sight."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

import pytest

from jacketcheck.api import check
from jacketcheck.cli.main import main
from jacketcheck.results import Kind, Status
from tests.support.jackets import CASE, built, row

_EVIDENCE: Final = re.compile(r"\[added_bars\.anchor_reinforcement\].*?\n\n", re.DOTALL)
BREAKOUT: Final = "breakout of the ring"
CROSSING: Final = "reinforcement across the breakout surface"


def without_evidence(*, precluded: bool) -> str:
    text = _EVIDENCE.sub(
        f"breakout_precluded = {str(precluded).lower()}\n\n", CASE.read_text("utf-8")
    )
    assert "anchor_reinforcement" not in text
    return text


def test_without_evidence_it_exceeds() -> None:
    jacket = built(text=without_evidence(precluded=False))
    found = row(jacket, "added-bar-anchorage", BREAKOUT)
    assert (found.kind, found.status) == (Kind.LIMIT, Status.EXCEEDS)
    assert float(found.ratio) == pytest.approx(4.73, abs=0.01)


def test_reinforcement_stands_in_its_place_by_its_own_capacity() -> None:
    found = row(built(), "added-bar-anchorage", CROSSING)
    # 20 × 0.79 × 68 over 0.75 × 60 × 0.44 × 60, in² and ksi
    assert float(found.ratio) == pytest.approx(1074.4 / 1188.0, rel=1e-4)
    assert row(built(), "added-bar-anchorage", BREAKOUT).kind is Kind.REPORTED


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ("count = 40", CROSSING),
        ('size = "No. 5"', CROSSING),
        ('angle = "40 deg"', CROSSING),
        ('length_above = "15 in"', "towards the column"),
        ('length_below = "15 in"', "base"),
        ('end_below = "straight"', "base"),
        ('distance = "22 in"', "Distance"),
    ],
)
def test_evidence_that_does_not_hold(change: str, words: str) -> None:
    jacket = built(f"added_bars.anchor_reinforcement.{change}")
    assert row(jacket, "added-bar-anchorage", words).status is Status.EXCEEDS


def test_what_is_said_and_not_shown_is_open_on_every_output(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "repair.toml"
    path.write_text(without_evidence(precluded=True), "utf-8")
    assert len(check(path).tables[0].open_points) == 1
    for command in (
        ["check", str(path)],
        ["check", str(path), "--format", "json"],
        ["check", str(path), "--format", "csv"],
        ["explain", str(path), "added-bar-anchorage"],
        ["sweep", str(path), "--vary", "sleeve.thickness=1 in,2 in", "--only", "seam-slip"],
        ["chance", str(path), "--only", "seam-slip", "--samples", "16"],
        ["report", str(path), "--no-figures", "-o", "-"],
        ["report", str(path), "--no-figures", "-o", "-", "--format", "markdown"],
    ):
        main(command)
        assert "and not shown; give the reinforcement" in capsys.readouterr().out, command
    main(["check", str(path)])
    verdict = next(line for line in capsys.readouterr().out.splitlines() if "governed by" in line)
    assert "1 open point: that no cone breaks out" in verdict


def test_nothing_is_open_where_evidence_is_given() -> None:
    assert check(CASE).tables[0].open_points == ()
