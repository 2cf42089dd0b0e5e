"""Rows by a rule of another set of provisions are marked wherever they are shown."""

from __future__ import annotations

import csv
import io
import json
from types import ModuleType

import pytest

from jacketcheck.api import check
from jacketcheck.conformance import host_with
from jacketcheck.hookspecs import hookimpl
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions, limit_state
from jacketcheck.render.explanation import explanation
from jacketcheck.render.records import report_csv, report_json
from jacketcheck.render.side_by_side import comparison
from jacketcheck.render.table import report_text
from jacketcheck.report import CheckReport
from jacketcheck.results import Result
from tests.cli.conftest import CASE


@limit_state("sleeve-gap", title="Gap under the sleeve", provisions="north")
def own_gap(jacket: Jacket) -> list[Result]:
    return [Result("Gap under the sleeve", "base", 50.0, jacket.sleeve.gap, "mm", "North 5.2")]


@pytest.fixture(scope="module")
def report() -> CheckReport:
    module = ModuleType("north")
    module.jacketcheck_provisions = hookimpl(  # type: ignore[attr-defined]
        lambda: [Provisions("north", "North Code 12:2024, elsewhere as us")]
    )
    states: list[LimitState] = [own_gap]
    module.jacketcheck_limit_states = hookimpl(lambda: states)  # type: ignore[attr-defined]
    return check(CASE, variants=["chipped"], provisions=["us", "north"], host=host_with(module))


def test_the_table_names_the_set_behind_the_clause(report: CheckReport) -> None:
    us, north = report_text(report, system="si").split("provisions north\n")[0:2]
    assert "(of us)" not in us
    assert "AISC 360-22 J3.9 (of us)" in north
    assert "North 5.2 (of" not in north
    assert ", by a rule of us" in north.splitlines()[2]
    assert "(of us) by a rule that the provisions inherit from us" in north


def test_the_comparison_marks_ratios(report: CheckReport) -> None:
    rows = comparison(report).rows
    slip = next(cells for cells in rows if cells[0] == "Slip of the seam bolts")
    assert "°" not in slip[2]
    assert slip[3].endswith("°")
    gap = [cells for cells in rows if cells[0] == "Gap under the sleeve"]
    assert not any("°" in cells[3] for cells in gap)


def test_json_and_csv_have_a_field_for_it(report: CheckReport) -> None:
    tables = json.loads(report_json(report))["tables"]
    owners = {row["limit_state"]: row["written_by"] for row in tables[1]["rows"]}
    assert owners["sleeve-gap"] == "north"
    assert owners["seam-slip"] == "us"
    lines = list(csv.DictReader(io.StringIO(report_csv(report))))
    named = {(line["provisions"], line["limit_state"]): line["written_by"] for line in lines}
    assert named["north", "sleeve-gap"] == "north"
    assert named["north", "seam-slip"] == named["us", "sleeve-gap"] == "us"


def test_an_explanation_says_where_the_rule_comes_from(report: CheckReport) -> None:
    slip = next(row for row in report.tables[1].results if row.limit_state == "seam-slip")
    assert "(north, inherited from us, limit state seam-slip)" in explanation(slip, system="si")
