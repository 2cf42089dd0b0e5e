"""The same input gives the same bytes; only the cover knows the day."""

from __future__ import annotations

from dataclasses import replace

import pytest

from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_html import report_html
from jacketcheck.render.report_markdown import report_markdown
from tests.support.drawn_runs import case_text, run_again
from tests.support.written_report import Written


def test_a_second_run_gives_the_same_report_but_for_the_date_on_the_cover(
    written: Written,
) -> None:
    run, repair = run_again(case_text())
    later = report_blocks(run, repair, system="us", date="2032-01-02")
    assert written.html.count("2031-05-04") == 1
    assert report_html(later) == written.html.replace("2031-05-04", "2032-01-02")
    markdown = written.markdown
    assert markdown.text.count("2031-05-04") == 1
    text = markdown.text.replace("2031-05-04", "2032-01-02")
    assert report_markdown(later, folder="figures") == replace(markdown, text=text)


def test_without_a_date_there_is_none(written: Written) -> None:
    blocks = report_blocks(written.run, written.repair, system="us", figures=False)
    assert "date of the report" not in report_html(blocks)


@pytest.mark.parametrize("system", ["si", "us"])
def test_units_are_those_asked_for(written: Written, system: str) -> None:
    name = "SI" if system == "si" else "US customary"
    blocks = report_blocks(written.run, written.repair, system=system, figures=False)  # type: ignore[arg-type] # words from a parametrised test
    page = report_html(blocks)
    assert f"<dd>{name}</dd>" in page
    assert ("kip·ft" in page) is (system == "us")
