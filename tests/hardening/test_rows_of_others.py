"""A plug-in's row that looks like one of our own says whose it is, and its texts act on nothing."""

from __future__ import annotations

import csv
import io
import json
from types import ModuleType
from typing import Any

import pytest

from jacketcheck.api import build_variants, check_jackets
from jacketcheck.engine import evaluate
from jacketcheck.engine.ratios import ratios_of_designs
from jacketcheck.errors import InputError
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.inputs import InputFile, read_text
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.render.explanation import explanation
from jacketcheck.render.records import report_csv, report_json
from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_html import report_html
from jacketcheck.render.report_markdown import report_markdown
from jacketcheck.render.table import report_text
from jacketcheck.report import CheckReport
from jacketcheck.results import Result, Step
from tests.support.drawn_runs import case_text
from tests.support.pages import parsed, text_of

MARK = "added by plug-in jacketcheck-north"
HOSTILE = "=1+1\x1b]0;x\x07\u202ereversed\u2066\r\n\x00\u200b\u2028end"


def host_of(*states: LimitState, sets: tuple[Provisions, ...] = ()) -> Host:
    module: Any = ModuleType("made_for_a_test")
    module.jacketcheck_provisions = hookimpl(lambda: list(sets))
    module.jacketcheck_limit_states = hookimpl(lambda: list(states))
    return load_host(
        installed=False, extra=[(PluginInfo("north", "jacketcheck-north", "1.2"), module)]
    )


@pytest.fixture(scope="module")
def repair() -> InputFile:
    return read_text(case_text(), catalog=load_host(installed=False).catalog)


@pytest.fixture(scope="module")
def jacket(repair: InputFile) -> Jacket:
    host = load_host(installed=False)
    return next(iter(build_variants(repair, host=host, variants=["chipped"]).values()))


def imitator(row: Result, provisions: str) -> LimitState:
    """A limit state with the title, place and clause of a built-in row, and a better ratio."""

    def look_alike(_: Jacket) -> list[Result]:
        return [Result(row.title, row.location, 0.1, 1.0, row.unit, row.clause)]

    return LimitState("seam-slip-too", "Slip", provisions, look_alike)


def report_of(repair: InputFile, host: Host, provisions: list[str]) -> CheckReport:
    jackets = build_variants(repair, host=host, variants=["chipped"])
    return check_jackets(repair, jackets, host=host, provisions=provisions)


@pytest.fixture(scope="module")
def original(jacket: Jacket) -> Result:
    return evaluate(jacket, host=load_host(installed=False), only=["seam-slip"])[0]


@pytest.fixture(scope="module")
def report(repair: InputFile, original: Result) -> CheckReport:
    inheriting = Provisions("northland", "Northland 1:2024", inherits="us")
    host = host_of(imitator(original, "us"), sets=(inheriting,))
    return report_of(repair, host, ["us", "northland"])


def twins(report: CheckReport, original: Result, provisions: str) -> list[Result]:
    (table,) = [one for one in report.tables if one.provisions == provisions]
    return [
        row
        for row in table.results
        if (row.title, row.clause, row.location)
        == (original.title, original.clause, original.location)
    ]


@pytest.mark.parametrize("provisions", ["us", "northland"])
def test_only_the_row_of_the_plug_in_is_marked(
    report: CheckReport, original: Result, provisions: str
) -> None:
    found = {row.limit_state: row.added_by for row in twins(report, original, provisions)}
    assert found == {"seam-slip": "", "seam-slip-too": "jacketcheck-north"}
    assert {row.added_by for table in report.tables for row in table.results} == {
        "",
        "jacketcheck-north",
    }


def test_in_text_and_markdown(report: CheckReport) -> None:
    for style in ("text", "markdown"):
        text = report_text(report, system="si", style=style)
        plain = text.replace("\\", "")
        assert f"({MARK})" in plain
        assert f"(of us, {MARK})" in plain
        beside = plain.split("Side by side")[1]
        (marked,) = [line for line in beside.splitlines() if "0.10 +" in line]
        assert "0.10 ° +" in marked
        assert "+ by a rule that plug-in jacketcheck-north has added" in beside


def test_in_the_report(report: CheckReport, repair: InputFile) -> None:
    blocks = report_blocks(report, repair, system="si", figures=False, date="today")
    page = text_of(parsed(report_html(blocks)))
    markdown = report_markdown(blocks, folder="f").text.replace("\\", "")
    for shown in (page, markdown):
        assert f"({MARK})" in shown  # the table
        assert f"provisions us, {MARK}" in shown  # the calculation
        assert f"provisions northland, inherited from us, {MARK}" in shown
        assert "+ by a rule that plug-in jacketcheck-north has added" in shown  # side by side


def test_in_json_and_csv(report: CheckReport) -> None:
    rows = [row for table in json.loads(report_json(report))["tables"] for row in table["rows"]]
    marked = [(row["limit_state"], row["origin"]) for row in rows if row["added_by"]]
    assert marked == [("seam-slip-too", "jacketcheck-north")] * 2
    lines = [
        line
        for line in csv.DictReader(io.StringIO(report_csv(report)))
        if line["limit_state"] == "seam-slip-too"
    ]
    assert [line["origin"] for line in lines] == ["jacketcheck-north 1.2"] * 2


def test_where_it_governs_and_where_it_is_explained(
    repair: InputFile, jacket: Jacket, original: Result
) -> None:
    def severe(_: Jacket) -> list[Result]:
        return [Result(original.title, original.location, 99.0, 1.0, "N", original.clause)]

    host = host_of(LimitState("seam-slip-too", "Slip", "us", severe))
    report = report_of(repair, host, ["us"])
    lines = report_text(report, system="si").splitlines()
    (head,) = [line for line in lines if line.startswith("EXCEEDS: governed by")]
    assert f"ratio 99.00, {MARK}" in head
    assert f"(us, {MARK}, limit state seam-slip-too)" in explanation(
        report.tables[0].governing, system="si"
    )
    ratios = ratios_of_designs(jacket, host=host, only=["seam-slip-too"])
    assert [row.added_by for row in ratios.rows] == ["jacketcheck-north"]


def test_a_set_of_its_own_needs_no_mark(repair: InputFile, original: Result) -> None:
    own = Provisions("northland", "Northland 1:2024", inherits="us")
    report = report_of(repair, host_of(imitator(original, "northland"), sets=(own,)), ["northland"])
    assert {row.added_by for row in report.tables[0].results} == {""}
    told = "provisions northland: Northland 1:2024 (plug-in jacketcheck-north 1.2)"
    assert told in report_text(report, system="si")


def hostile_row(_: Jacket) -> list[Result]:
    step = Step(HOSTILE, HOSTILE, HOSTILE, HOSTILE, HOSTILE)
    return [
        Result(
            HOSTILE, HOSTILE, 1.0, 2.0, "N", HOSTILE, steps=(step,), notes=(HOSTILE,),
            follows_from=(HOSTILE,), rule=HOSTILE,
        )
    ]  # fmt: skip


def raises(_: Jacket) -> list[Result]:
    raise ValueError(HOSTILE)


def test_texts_of_a_plug_in_act_on_nothing(repair: InputFile) -> None:
    host = host_of(
        LimitState("odd", "Odd", "us", hostile_row), LimitState("odder", "Odder", "us", raises)
    )
    report = report_of(repair, host, ["us"])
    written = [report_json(report), report_csv(report)]
    written += [report_text(report, system="si", style="text")]
    written += [report_text(report, system="si", style="markdown")]
    (odd,) = [row for row in report.tables[0].results if row.limit_state == "odd"]
    written += [explanation(odd, system="si"), explanation(odd, system="si", markdown=True)]
    for text in written:
        assert "reversed" in text
        assert all(one.isprintable() or one == "\n" for one in text)


def test_texts_of_a_file_are_no_formulas() -> None:
    changed = case_text() + "".join(
        f"\n[variants.'{name}']\nsleeve.thickness = '20 mm'\n"
        for name in ("=1+1", "+1", "-1", "@now", " =2+2", "plain")
    )
    file = read_text(changed, catalog=load_host(installed=False).catalog)
    host = load_host(installed=False)
    names = ["=1+1", "+1", "-1", "@now", " =2+2", "plain"]
    jackets = build_variants(file, host=host, variants=names)
    lines = csv.reader(io.StringIO(report_csv(check_jackets(file, jackets, host=host))))
    cells = [cell for line in lines for cell in line]
    assert {f"'{name}" for name in names[:-1]} | {"plain"} <= set(cells)
    for cell in cells:
        first = cell.lstrip()[:1]
        assert first not in {"=", "+", "-", "@"} or _is_number(cell), cell


def _is_number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return cell not in {"+1", "-1"}


@pytest.mark.parametrize("escape", ["u001b[31m", "u202e", "u0000", "u2066", "u200b", "u2028", "r"])
@pytest.mark.parametrize("place", ["title", "note", "variant"])
def test_a_file_with_characters_that_act_is_refused_and_shown_with_escapes(
    escape: str, place: str
) -> None:
    text = case_text()
    if place == "variant":
        text += f'\n[variants."a\\{escape}b"]\nsleeve.thickness = "20 mm"\n'
    else:
        lines = [one for one in text.split("\n") if not one.startswith(f"{place} = ")]
        lines.insert(lines.index("[job]") + 1, f'{place} = "a\\{escape}b"')
        text = "\n".join(lines)
    with pytest.raises(InputError) as refused:
        read_text(text, catalog=load_host(installed=False).catalog)
    told = str(refused.value)
    assert all(one.isprintable() or one == "\n" for one in told)
    assert f"\\{escape}" in told
