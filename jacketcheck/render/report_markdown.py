"""The report as Markdown, with its figures as files beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from jacketcheck.inputs.written import printable
from jacketcheck.render.markdown import markdown_text
from jacketcheck.render.report_parts import (
    Block,
    Bullets,
    Calculation,
    Cell,
    Chapter,
    Facts,
    Paragraph,
    Picture,
    Report,
    SignOff,
    Table,
)

__all__ = ["MarkdownReport", "report_markdown"]

_XML: Final = '<?xml version="1.0" encoding="UTF-8"?>\n'
_NAMESPACE: Final = 'xmlns="http://www.w3.org/2000/svg"'


@dataclass(frozen=True)
class MarkdownReport:
    """A report in Markdown.

    Attributes
    ----------
    text
        The report.
    figures
        Content of each SVG file by its path, relative to the report.
    """

    text: str
    figures: dict[str, str]


def report_markdown(report: Report, *, folder: str) -> MarkdownReport:
    """Write a report as Markdown.

    Parameters
    ----------
    report
        From `jacketcheck.render.report_blocks`.
    folder
        Name of the folder beside the report that its figures go to.

    Returns
    -------
    MarkdownReport
        Text, in which every text of the input is escaped, and figures.
    """
    writer = _Writer(folder)
    cover = report.cover
    parts = [f"# {_plain(cover.title)}", _plain(cover.kind)]
    parts += writer.block(cover.facts, 2)
    parts += writer.block(cover.verdicts, 2)
    for number, chapter in enumerate(report.chapters, start=1):
        parts += writer.chapter(chapter, 2, f"{number} ")
    return MarkdownReport("\n\n".join(parts) + "\n", writer.figures)


class _Writer:
    """Turns blocks into paragraphs of Markdown and collects the figures on the way."""

    def __init__(self, folder: str) -> None:
        self._folder = folder
        self.figures: dict[str, str] = {}

    def chapter(self, chapter: Chapter, level: int, number: str = "") -> Iterator[str]:
        yield f"{'#' * level} {number}{_plain(chapter.title)}"
        for block in chapter.blocks:
            yield from self.block(block, level)

    def block(self, block: Block, level: int) -> Iterator[str]:
        match block:
            case Chapter():
                yield from self.chapter(block, level + 1)
            case Table():
                yield from _table(block)
            case Facts():
                lines = (f"- **{_plain(term)}:** {_cell(what)}" for term, what in block.pairs)
                yield "\n".join(lines)
            case Paragraph():
                text = _plain(block.text)
                yield f"**{text}**" if block.strong or block.alarm else text
            case Bullets():
                yield "\n".join(_bullet(lead, text) for lead, text in block.items)
            case Picture():
                yield from self._picture(block)
            case Calculation():
                yield from _calculation(block, level + 1)
            case SignOff():
                yield "\n".join(f"- [ ] {_plain(text)}" for text in block.ticks)
                yield _grid(
                    ["to be filled in", "by the engineer"], [(one, "") for one in block.lines]
                )

    def _picture(self, picture: Picture) -> Iterator[str]:
        path = f"{self._folder}/{picture.name}.svg"
        self.figures[path] = _XML + picture.svg.replace("<svg ", f"<svg {_NAMESPACE} ", 1) + "\n"
        target = path if path.isascii() and path.replace("/", "").isalnum() else f"<{path}>"
        yield f"![{_plain(picture.alt)}]({target})"
        yield f"**Figure {picture.number}. {_plain(picture.title)}**"
        if picture.remark:
            yield _plain(picture.remark)


def _plain(text: str) -> str:
    """A text in one line; what cannot be printed becomes visible."""
    return markdown_text(printable(" ".join(text.split())))


def _cell(cell: str | Cell) -> str:
    if isinstance(cell, str):
        return _plain(cell)
    text = _plain(cell.text)
    return f"**{text}**" if text and (cell.alarm or cell.strong) else text


def _bullet(lead: str, text: str) -> str:
    return f"- **{_plain(lead)}** {_plain(text)}" if lead else f"- {_plain(text)}"


def _table(table: Table) -> Iterator[str]:
    if not table.plain:
        yield f"**{_plain(table.caption)}**"
    sides = ["---:" if column.align == "right" else "---" for column in table.columns]
    yield _grid([column.heading for column in table.columns], table.rows, sides)
    if table.notes:
        yield "\n".join(
            f"- \\[{number}\\] {_plain(note)}" for number, note in enumerate(table.notes, 1)
        )


def _grid(
    headings: Sequence[str], rows: Sequence[Sequence[str | Cell]], sides: Sequence[str] = ()
) -> str:
    lines = [[_plain(heading) for heading in headings], [*(sides or ["---"] * len(headings))]]
    lines += [[_cell(cell) for cell in row] for row in rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def _calculation(one: Calculation, level: int) -> Iterator[str]:
    yield f"{'#' * min(level, 6)} {_plain(one.title)}"
    verdict = _plain(one.verdict)
    yield f"**{verdict}**" if one.alarm else verdict
    yield _plain(one.clause)
    if one.steps is not None:
        yield from _table(one.steps)
    for note in one.notes:
        yield f"Note: {_plain(note)}"
