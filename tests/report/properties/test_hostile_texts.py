"""No text of an input, a plug-in or a result becomes markup, in either form."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.written import printable
from jacketcheck.render.html import element, escaped
from jacketcheck.render.report_blocks import report_blocks
from jacketcheck.render.report_html import report_html
from jacketcheck.render.report_markdown import report_markdown
from jacketcheck.render.report_parts import Report
from jacketcheck.report import CheckReport
from jacketcheck.results import Step
from tests.support.drawn_runs import case_text, run_of
from tests.support.pages import parsed, tags, text_of

SLOW = settings(deadline=None, max_examples=40)
PARTS = st.sampled_from(
    [
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "</style><script>", "<!--",
        "-->", "&amp;", "&lt;", "&#60;", '"', "'", "><", "]]>", "</td></tr></table>", "|", "`",
        "**", "__", "[a](javascript:x)", "![a](http://b/c)", "<http://b>", "# ", "- ", "\\",
        "\u202e", "\u2066", "\u200f", "\x00", "\x1b[31m", "\ud800", "\n", "\t", "日本", "עברית",
        " ", "a", "1", "$",
    ]
)  # fmt: skip
HOSTILE = st.lists(PARTS, min_size=1, max_size=6).map("".join) | st.text(max_size=12)


@lru_cache(maxsize=1)
def small_run() -> tuple[CheckReport, InputFile]:
    """One variant with a few rows: enough for every kind of block."""
    run, repair = run_of(case_text())
    table = replace(run.tables[0], results=run.tables[0].results[:2])
    return replace(run, tables=(table,)), repair


def report_with(text: str) -> Report:
    """A report with one text wherever somebody else may write one."""
    run, repair = small_run()
    table = run.tables[0]
    step = Step(text, text, text, "", text)
    row = replace(
        table.results[0], title=text, location=text, clause=text, notes=(text,), steps=(step,),
        limit_state=text, provisions=text, unit=text,
    )  # fmt: skip
    job = run.job.model_copy(update=dict.fromkeys(("title", "number", "engineer", "note"), text))
    plugin = replace(run.plugins[0], name=text, version=text, problems=(text,))
    hostile = replace(
        run, job=job, source=text, plugins=(plugin,), switched_off=(text,),
        tables=(replace(table, variant=text, results=(row, table.results[1])),),
        provisions_titles={table.provisions: text},
    )  # fmt: skip
    named = replace(
        repair,
        variants={text: repair.base, "other": repair.base},
        written={text: repair.written[repair.base_name], "other": {}},
    )
    return report_blocks(hostile, named, system="si", figures=False, date=text)


@lru_cache(maxsize=1)
def harmless_tags() -> Counter[str]:
    """Elements of the report whose texts are letters only."""
    return Counter(str(one.tag) for one in parsed(report_html(report_with("letters"))).iter())


@given(HOSTILE)
@SLOW
def test_no_text_becomes_markup(text: str) -> None:
    report = report_with(text)
    page = report_html(report)
    _keeps_its_elements_and_tells_the_text(page, text)
    # no character turns or breaks text
    assert all(one.isprintable() or one == "\n" for one in page)
    page.encode()
    _holds_no_markup_of_others(report_markdown(report, folder="f").text)


def _keeps_its_elements_and_tells_the_text(html: str, text: str) -> None:
    page = parsed(html)
    found = Counter(str(one.tag) for one in page.iter())
    # an empty text leaves its fact out, and words that look alike share a list entry
    assert set(found) <= set(harmless_tags())
    assert found["script"] == 1
    assert found["style"] == 1
    (heading,) = tags(page, "h1")
    assert text_of(heading) == " ".join(
        " ".join(printable(line) for line in text.split("\n")).split()
    )


def _holds_no_markup_of_others(written: str) -> None:
    parser = MarkdownIt("commonmark", {"html": True}).enable("table")
    kinds: Counter[str] = Counter()
    for token in parser.parse(written):
        kinds[token.type] += 1
        for child in token.children or []:
            kinds[child.type] += 1
    for forbidden in ("html_inline", "html_block", "link_open", "image", "code_inline", "fence",
                      "code_block", "em_open", "blockquote_open"):  # fmt: skip
        assert not kinds[forbidden], forbidden
    assert all(one.isprintable() or one == "\n" for one in written)


@given(HOSTILE)
@SLOW
def test_an_element_shows_what_it_was_given(text: str) -> None:
    shown = "".join("\n" if one == "\n" else printable(one) for one in text)
    head = "<!DOCTYPE html><html><head><title>t</title></head><body>"
    (paragraph,) = tags(parsed(f"{head}{element('p', text)}</body></html>"), "p")
    assert "".join(paragraph.itertext()) == shown


@pytest.mark.parametrize("text", ["plain", "a & b", "<i>"])
def test_escaping_twice_is_escaping_once(text: str) -> None:
    assert escaped(escaped(text)) == escaped(text)
