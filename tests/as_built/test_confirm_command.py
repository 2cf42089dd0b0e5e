"""``jacketcheck confirm`` as a user runs it."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import jsonschema
import pytest

from jacketcheck.cli import main
from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.render.confirm_records import ConfirmationDocument

REPAIR = Path(__file__).parents[1] / "schedule" / "willow_weir.toml"
RECORD = Path(__file__).parent / "willow_weir_built.toml"


def run(capsys: pytest.CaptureFixture[str], *arguments: str) -> tuple[int, str]:
    code = main(["confirm", str(REPAIR), str(RECORD), *arguments])
    return code, capsys.readouterr().out


@pytest.mark.parametrize("form", ["text", "markdown", "csv", "json"])
def test_every_form_carries_the_cautions(capsys: pytest.CaptureFixture[str], form: str) -> None:
    code, out = run(capsys, "--format", form)
    # no displacement is demanded of the repair, so that a row stays open, whatever was built
    assert code == 3
    assert all(caution in out for caution in CAUTIONS)
    if form != "csv":
        assert all(line in out for line in NOT_COVERED)


def test_json_keeps_its_schema(capsys: pytest.CaptureFixture[str]) -> None:
    code, out = run(capsys, "--format", "json", "--units", "si")
    document = json.loads(out)
    jsonschema.validate(document, ConfirmationDocument.model_json_schema(mode="serialization"))
    assert document["exit_code"] == code
    assert [table["variant"] for table in document["check"]["tables"]] == [
        "as specified",
        "as built",
    ]


def test_csv_is_a_table(capsys: pytest.CaptureFixture[str]) -> None:
    _, out = run(capsys, "--format", "csv")
    rows = list(csv.DictReader(io.StringIO(out)))
    assert {row["verdict"] for row in rows} >= {"accepted", "REJECTED"}
    lines = [row for row in rows if row["part"] != "cautions"]
    assert all(row["source"] and row["rule"] for row in lines)


def test_side_by_side_in_text(capsys: pytest.CaptureFixture[str]) -> None:
    _, out = run(capsys)
    assert "as specified" in out
    assert "as built" in out
    assert "Slip of the seam bolts" in out
    assert "15/16 in" in out


def test_errors_of_the_input(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    record = tmp_path / "record.toml"
    record.write_text('[holes]\nalong = "wide"\n')
    assert main(["confirm", str(REPAIR), str(record)]) == 2
    assert "holes.along.1" in capsys.readouterr().err
    assert main(["confirm", str(REPAIR), str(tmp_path / "none.toml")]) == 2
    assert main(["confirm", str(REPAIR), str(RECORD), "--variant", "nowhere"]) == 2
    assert main(["confirm", str(REPAIR), str(RECORD), "--provisions", "nowhere"]) == 2


def test_what_is_not_recorded_is_not_confirmed(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    record = tmp_path / "record.toml"
    record.write_text('[grout]\ncylinder_strength = ["8 ksi", "8 ksi", "8 ksi"]\n')
    assert main(["confirm", str(REPAIR), str(record), "--variant", "turns"]) == 3
    out = capsys.readouterr().out
    assert "6 NOT JUDGED" in out
    assert out.count("? all of it") == 6
