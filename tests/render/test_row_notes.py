"""What a table must say beside its rows: why a place tells nothing, and what was not checked."""

from __future__ import annotations

from pathlib import Path

from jacketcheck.api import check
from jacketcheck.inputs.load import read_input
from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_markdown import report_markdown
from jacketcheck.render.table import report_text
from jacketcheck.results import Kind
from tests.cli.conftest import CASE


def test_a_ratio_of_one_without_a_margin_says_why_it_stands_low() -> None:
    text = report_text(check(CASE, variants=["chipped"]), system="si")
    note = next(line for line in text.splitlines() if "tells no margin while it passes" in line)
    mark = note.split()[0]
    rows = [line for line in text.splitlines() if line.startswith("Stress developed in the")]
    assert rows
    assert all(mark in row and " 1.00 " in row for row in rows)


def test_a_demand_that_is_missing_is_a_row(tmp_path: Path) -> None:
    text = CASE.read_text("utf-8")
    [line] = [one for one in text.splitlines() if one.startswith("displacement_demand")]
    path = tmp_path / "repair.toml"
    path.write_text(text.replace(line, ""), "utf-8")
    report = check(path, variants=["chipped"])
    rows = {
        row.location: row
        for row in report.tables[0].results
        if row.limit_state == "displacement-capacity"
    }
    missing = rows["against the demand"]
    assert missing.kind is Kind.NOT_EVALUATED
    assert "no displacement demand is given" in missing.notes[0]
    assert report.exit_code == 3


def test_a_default_of_the_catalog_shows_its_number() -> None:
    report = check(CASE, variants=["chipped"])
    blocks = report_blocks(report, read_input(CASE), system="si", figures=False, date="2030-01-01")
    text = report_markdown(blocks, folder="figures").text
    steel = report.tables[0].jacket.column.layer.steel
    assert f"{float(steel.overstrength):g} of {steel.name}, by the catalog" in text
