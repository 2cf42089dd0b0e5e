"""The report as Markdown: the same content, with its figures in files."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

from markdown_it import MarkdownIt
from markdown_it.token import Token

from jacketcheck.inputs.written import printable
from jacketcheck.render.report_parts import Calculation, Chapter, Picture, Table
from tests.support.written_report import Written

PARSER = MarkdownIt("commonmark", {"html": True}).enable("table")


def tokens(text: str) -> list[Token]:
    flat: list[Token] = []
    for token in PARSER.parse(text):
        flat += [token, *(token.children or [])]
    return flat


def shown(text: str) -> str:
    """What a reader sees."""
    return " ".join("".join(one.content for one in tokens(text) if one.type == "text").split())


def blocks(chapters: tuple[Chapter, ...]) -> list[object]:
    found: list[object] = []
    for chapter in chapters:
        for block in chapter.blocks:
            found += [block, *blocks((block,))] if isinstance(block, Chapter) else [block]
    return found


def test_it_holds_no_markup_but_its_own(written: Written) -> None:
    kinds = {token.type for token in tokens(written.markdown.text)}
    assert not kinds & {"html_inline", "html_block", "fence", "code_block", "link_open"}
    assert "table_open" in kinds


def test_every_table_calculation_and_figure_is_there(written: Written) -> None:
    text = shown(written.markdown.text)
    count = 0
    for block in blocks(written.blocks.chapters):
        if isinstance(block, Table):
            assert " ".join(block.caption.split()) in text
            count += 1
        elif isinstance(block, Calculation):
            assert " ".join(block.title.split()) in text
            assert block.verdict in text
            count += block.steps is not None
        elif isinstance(block, Picture):
            assert f"Figure {block.number}. {block.title}" in text
    opened = sum(token.type == "table_open" for token in tokens(written.markdown.text))
    assert opened == count + 2  # cover and review


def test_tables_keep_their_cells(written: Written) -> None:
    rows = [line for line in written.markdown.text.splitlines() if line.startswith("|")]
    widths = [len(re.findall(r"(?<!\\)\|", line)) for line in rows]
    separators = [index for index, line in enumerate(rows) if re.fullmatch(r"[|\s:-]+", line)]
    for place in separators:
        assert widths[place] == widths[place - 1]


def test_figures_are_files_beside_it(written: Written) -> None:
    images = [token for token in tokens(written.markdown.text) if token.type == "image"]
    assert [token.attrs["src"] for token in images] == list(written.markdown.figures)
    pictures = [one for one in blocks(written.blocks.chapters) if isinstance(one, Picture)]
    for token, picture in zip(images, pictures, strict=True):
        assert token.content
        assert shown(token.content) == " ".join(printable(picture.alt).split())
    for svg in written.markdown.figures.values():
        root = ET.fromstring(svg.encode())  # noqa: S314 - our own drawing
        assert root.tag == "{http://www.w3.org/2000/svg}svg"
