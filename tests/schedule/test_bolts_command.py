"""``jacketcheck bolts`` as a user runs it."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest

from jacketcheck.cli import main
from jacketcheck.coverage import CAUTIONS
from jacketcheck.render.schedule_records import ScheduleDocument


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str]:
    code = main(["bolts", *arguments])
    return code, capsys.readouterr().out


@pytest.mark.parametrize("form", ["text", "markdown", "csv", "json"])
def test_every_form_carries_the_cautions(
    capsys: pytest.CaptureFixture[str], repair_path: Path, form: str
) -> None:
    code, out = run(capsys, str(repair_path), "--format", form)
    assert code == 0
    assert all(caution in out for caution in CAUTIONS)


def test_units_change_what_is_shown_and_nothing_else(
    capsys: pytest.CaptureFixture[str], repair_path: Path
) -> None:
    _, us = run(capsys, str(repair_path))
    _, si = run(capsys, str(repair_path), "--units", "si")
    assert "39 kip" in us
    assert "lb·ft" in us
    assert "173.5 kN" in si
    assert "N·m" in si
    assert "7/8 in × 2-1/4 in" in us
    assert "7/8 in × 2-1/4 in" in si
    records = [
        run(capsys, str(repair_path), "--format", "json", "--units", u) for u in ("us", "si")
    ]
    assert records[0] == records[1]


def test_json_keeps_its_schema(capsys: pytest.CaptureFixture[str], repair_path: Path) -> None:
    code, out = run(capsys, str(repair_path), "--variant", "all", "--format", "json")
    document = json.loads(out)
    jsonschema.validate(document, ScheduleDocument.model_json_schema(mode="serialization"))
    assert code == document["exit_code"] == 3
    assert len(document["schedules"]) == 13


def test_csv_is_a_table(capsys: pytest.CaptureFixture[str], repair_path: Path) -> None:
    _, out = run(capsys, str(repair_path), "--format", "csv", "--variant", "turns")
    rows = list(csv.DictReader(io.StringIO(out)))
    turn = next(row for row in rows if row["item"] == "turn of the nut beyond snug-tight")
    assert (float(turn["value"]), turn["unit"]) == (120.0, "deg")
    assert all(row["source"] for row in rows if row["section"] != "cautions")


@pytest.mark.parametrize(
    ("variant", "code"), [("turns", 0), ("snug only", 1), ("very thick", 3), ("nowhere", 2)]
)
def test_exit_codes(
    capsys: pytest.CaptureFixture[str], repair_path: Path, variant: str, code: int
) -> None:
    assert run(capsys, str(repair_path), "--variant", variant)[0] == code


def test_loss_and_days(capsys: pytest.CaptureFixture[str], repair_path: Path) -> None:
    _, out = run(capsys, str(repair_path), "--loss", "50", "--days", "1", "--format", "json")
    # 18 lost, 3 + 2 for tests, 3 for the day
    assert json.loads(out)["schedules"][0]["orders"][0]["spares"] == 26


@pytest.mark.parametrize("option", [("--loss", "101"), ("--loss", "x"), ("--days", "0")])
def test_options_that_make_no_sense(
    capsys: pytest.CaptureFixture[str], repair_path: Path, option: tuple[str, str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["bolts", str(repair_path), *option])
    assert stopped.value.code == 2
    assert capsys.readouterr().err.count("\n") == 1
