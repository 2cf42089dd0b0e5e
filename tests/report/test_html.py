"""The HTML report: valid, complete in itself, in order, and telling what the run found."""

from __future__ import annotations

import base64
import hashlib
import itertools
import re
from xml.etree import ElementTree as ET

import pytest

from jacketcheck.render.numbers import quantity_text
from jacketcheck.render.table import row_cells
from jacketcheck.report import CheckReport
from jacketcheck.results import Status
from tests.support.pages import parsed, tags, text_of
from tests.support.written_report import Written


@pytest.fixture(scope="session")
def page(written: Written) -> ET.Element:
    return parsed(written.html)


def test_nothing_is_loaded_from_elsewhere(written: Written, page: ET.Element) -> None:
    assert "http://" not in written.html
    assert "https://" not in written.html
    assert "@import" not in written.html
    for element in page.iter():
        for name, value in element.attrib.items():
            short = name.rpartition("}")[2]
            if short in {"src", "srcset", "action", "data", "poster"}:
                pytest.fail(f"{element.tag} has {name}={value}")
            if short == "href":
                assert value.startswith("#")
            for target in re.findall(r"url\(([^)]*)\)", value):
                assert target.startswith("#")
    for style in tags(page, "style"):
        assert "url(" not in (style.text or "")


def test_a_policy_lets_the_browser_load_nothing_and_run_one_script(page: ET.Element) -> None:
    (policy,) = (
        meta.get("content", "")
        for meta in tags(page, "meta")
        if meta.get("http-equiv") == "Content-Security-Policy"
    )
    assert policy.startswith("default-src 'none';")
    (script,) = tags(page, "script")
    digest = base64.b64encode(hashlib.sha256((script.text or "").encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in policy


def test_identifiers_are_unique_and_links_lead_somewhere(page: ET.Element) -> None:
    known = [value for element in page.iter() if (value := element.get("id"))]
    assert len(known) == len(set(known))
    links = [value for element in page.iter() if (value := element.get("href"))]
    assert {link.removeprefix("#") for link in links} <= set(known)
    for key in ("aria-labelledby", "aria-describedby"):
        asked = [value for element in page.iter() if (value := element.get(key))]
        assert set(asked) <= set(known)


def test_headings_step_down_one_by_one(page: ET.Element) -> None:
    names = [e.tag for e in page.iter() if isinstance(e.tag, str) and re.fullmatch("h[1-6]", e.tag)]
    levels = [int(name[1]) for name in names]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))


def test_tables_tell_readers_of_the_screen_what_they_hold(page: ET.Element) -> None:
    tables = list(tags(page, "table"))
    assert len(tables) > 50
    for table in tables:
        (caption,) = tags(table, "caption")
        assert text_of(caption)
        assert all(head.get("scope") in {"row", "col"} for head in tags(table, "th"))
        for row in tags(table, "tr"):
            assert any(cell.get("scope") for cell in row)


def test_language_and_title(page: ET.Element, written: Written) -> None:
    (root,) = tags(page, "html")
    assert root.get("lang") == "en"
    (title,) = itertools.islice(tags(page, "title"), 1)
    assert text_of(title) == written.run.job.title


def test_every_figure_has_words(page: ET.Element) -> None:
    figures = list(tags(page, "figure"))
    assert len(figures) >= 10
    for figure in figures:
        (svg,) = tags(figure, "svg")
        assert svg.get("role") == "img"
        (words,) = tags(svg, "desc")
        assert len(text_of(words)) > 80
        (caption,) = tags(figure, "figcaption")
        assert text_of(caption).startswith("Figure ")


def test_the_cover_identifies_the_run(page: ET.Element, written: Written) -> None:
    (cover,) = tags(page, "header")
    words = text_of(cover)
    for text in (written.run.digest, "QR-03", "repair.toml", "2031-05-04", written.run.version,
                 *written.run.variants, *written.run.provisions_titles.values()):  # fmt: skip
        assert text in words


def test_every_row_of_every_variant_is_there(page: ET.Element, written: Written) -> None:
    for place, table in enumerate(written.run.tables, start=1):
        section = section_of(page, f"results-{place}")
        rows = [[text_of(cell) for cell in row] for row in tags(section, "tr")][1:]
        assert len(rows) == len(table.results)
        for row, result in zip(rows, table.results, strict=True):
            cells = row_cells(result, "us")
            assert row[0].lstrip("»↳ ").partition(" [")[0] == cells[0]
            assert row[1:8] == [" ".join(cell.split()) for cell in cells[1:]]


def test_every_step_of_every_row_is_there(page: ET.Element, written: Written) -> None:
    for place, table in enumerate(written.run.tables, start=1):
        links = {
            text_of(row[0]).lstrip("»↳ ").partition(" [")[0]: row[-1]
            for row in tags(section_of(page, f"results-{place}"), "tr")
        }
        assert len(links) > 20
        rows = list(tags(section_of(page, f"results-{place}"), "tr"))[1:]
        for row, result in zip(rows, table.results, strict=True):
            (link,) = tags(row[-1], "a")
            worked = by_id(page, (link.get("href") or "").removeprefix("#"))
            shown = [[text_of(cell) for cell in line] for line in tags(worked, "tr")][1:]
            steps = [
                [
                    step.symbol,
                    step.expression,
                    quantity_text(step.value, step.unit, "us"),
                    step.source,
                ]
                for step in result.steps
            ]
            assert shown == [[" ".join(cell.split()) for cell in step] for step in steps]
            assert result.clause in text_of(worked)
            for note in result.notes:
                assert " ".join(note.split()) in text_of(worked)


def test_what_exceeds_is_unfolded(page: ET.Element, written: Written) -> None:
    opened = sum("open" in details.attrib for details in tags(page, "details"))
    exceeding = {
        (
            row.limit_state,
            row.title,
            row.location,
            row.clause,
            str(row.demand),
            str(row.capacity),
            row.notes,
        )
        for table in written.run.tables
        for row in table.results
        if row.status in {Status.EXCEEDS, Status.NOT_EVALUATED}
    }
    assert opened == len(exceeding)


def test_the_input_stands_as_written_and_as_used(page: ET.Element) -> None:
    rows = {
        text_of(row[0]): [text_of(cell) for cell in row][2:]
        for row in tags(section_of(page, "input"), "tr")
    }
    # 48 in = 1219.2 mm, 600 kip = 2668.93 kN, 4 ksi = 27.579 MPa by the definitions of the units
    assert rows["column.diameter"] == ["48 in", "1219.2 mm"]
    assert rows["actions.axial_load"] == ["600 kip", "2668.93 kN"]
    assert rows["column.concrete_strength"] == ["4 ksi", "27.579 MPa"]
    assert rows["damage.1.bars"] == ["1, 2, 20", "1, 2, 20"]
    assert rows["judgement.crack_friction"] == ["default", "1.4"]
    assert rows["added_bars.breakout_precluded"] == ["default", "false"]


def test_overrides_of_variants_stand_side_by_side(page: ET.Element) -> None:
    table = next(
        table
        for table in tags(section_of(page, "input"), "table")
        if text_of(next(tags(table, "caption"))) == "Fields in which variants differ, as written"
    )
    rows = [[text_of(cell) for cell in row] for row in tags(table, "tr")]
    assert rows[0] == ["field", "chipped", "thick, unchipped", "thin", "thin, snug bolts"]
    fields = {row[0]: row[1:] for row in rows[1:]}
    assert set(fields) == {"repair.surface", "sleeve.thickness", "bolts.tightening"}
    assert fields["repair.surface"] == ["chipped", "unchipped", "chipped", "chipped"]


def test_bars_are_grouped_by_their_state(page: ET.Element) -> None:
    rows = [[text_of(cell) for cell in row] for row in tags(section_of(page, "damage"), "tr")]
    assert ["1, 2, 20", "12:00, 12:36, 11:24", "fractured"] in [row[:3] for row in rows]
    assert ["4–10, 12–18", "–", "intact"] in [row[:3] for row in rows]


def test_judgement_cautions_and_gaps_are_listed(page: ET.Element, written: Written) -> None:
    run: CheckReport = written.run
    words = text_of(section_of(page, "judgement"))
    for table in run.tables:
        for row in table.results:
            for note in row.notes:
                if "engineering judgement" in note:
                    assert " ".join(note.split()) in words
    closing = text_of(section_of(page, "cautions"))
    assert all(text in closing for text in (*run.cautions, *run.not_covered))
    assert all(plugin.version in text_of(section_of(page, "plugins")) for plugin in run.plugins)


def test_there_is_room_for_the_engineer(page: ET.Element) -> None:
    lines = [text_of(head) for head in tags(section_of(page, "review"), "th")]
    assert {"Reviewed by", "Licence number", "Date", "Signature"} <= set(lines)


def section_of(page: ET.Element, anchor: str) -> ET.Element:
    """The section whose heading has an anchor."""
    for section in tags(page, "section"):
        if section[0].get("id") == anchor:
            return section
    raise AssertionError(anchor)


def by_id(page: ET.Element, identifier: str) -> ET.Element:
    return next(element for element in page.iter() if element.get("id") == identifier)
