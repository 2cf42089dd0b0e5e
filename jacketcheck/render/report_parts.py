"""What a report is made of, before it becomes HTML or Markdown.

Texts are plain: whoever writes a form of output escapes them for that form.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

__all__ = [
    "Align",
    "Block",
    "Bullets",
    "Calculation",
    "Cell",
    "Chapter",
    "Column",
    "Cover",
    "Facts",
    "Paragraph",
    "Picture",
    "Report",
    "Row",
    "SignOff",
    "Table",
]

Align: TypeAlias = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell that is more than plain text.

    Attributes
    ----------
    text
        What it says.
    link
        Anchor inside the report that it leads to.
    alarm
        Whether it tells that something exceeds its limit or could not be evaluated.
    strong
        Whether it stands out.
    """

    text: str
    link: str = ""
    alarm: bool = False
    strong: bool = False


Row: TypeAlias = Sequence["str | Cell"]


@dataclass(frozen=True, slots=True)
class Column:
    """Heading of a column, and the side that its cells keep to."""

    heading: str
    align: Align = "left"


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under headings.

    Attributes
    ----------
    caption
        What the table holds.
    columns, rows
        As many cells in each row as there are columns; the first one names the row.
    notes
        Numbered texts below.
    widths
        Share of the whole width that each column takes [%]; empty for what the contents ask for.
    plain
        Whether the caption is for readers only who do not see the page, because what stands above
        says the same.
    """

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    notes: tuple[str, ...] = ()
    widths: tuple[int, ...] = ()
    plain: bool = False


@dataclass(frozen=True, slots=True)
class Facts:
    """Terms with what belongs to each."""

    pairs: tuple[tuple[str, str | Cell], ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """One paragraph."""

    text: str
    alarm: bool = False
    strong: bool = False


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list of texts, each with what stands out in front of it where there is something."""

    items: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A figure.

    Attributes
    ----------
    name
        Fit for a file, unique in the report.
    number
        Counted through the report.
    title, remark, alt
        Caption, what a reader must know, and the content in words.
    svg
        An ``svg`` element with identifiers of its own.
    """

    name: str
    number: int
    title: str
    remark: str
    alt: str
    svg: str


@dataclass(frozen=True, slots=True)
class Calculation:
    """All steps of one row, which a reader may fold away on a screen.

    Attributes
    ----------
    anchor
        What tables link to.
    title, verdict
        The row, and what came of it.
    alarm
        Whether it exceeds its limit or could not be evaluated: unfolded from the start.
    clause
        Rule, provisions and limit state.
    steps
        Symbol, expression, value and source of each step; None where there are none.
    notes
        What a reader must know.
    """

    anchor: str
    title: str
    verdict: str
    alarm: bool
    clause: str
    steps: Table | None
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SignOff:
    """Lines that an engineer fills in by hand: what to tick, and what to write."""

    ticks: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Chapter:
    """A part of the report with a heading; chapters may hold chapters."""

    title: str
    anchor: str
    blocks: tuple[Block, ...]


Block: TypeAlias = Table | Facts | Paragraph | Bullets | Picture | Calculation | SignOff | Chapter


@dataclass(frozen=True, slots=True)
class Cover:
    """What stands first.

    Attributes
    ----------
    title
        Of the job.
    kind
        What kind of document this is.
    facts
        Job, input, provisions, maker.
    verdicts
        One row for each variant and set of provisions.
    """

    title: str
    kind: str
    facts: Facts
    verdicts: Table


@dataclass(frozen=True, slots=True)
class Report:
    """The whole report.

    Attributes
    ----------
    cover, chapters
        In this order.
    running
        One line that identifies the report on every page.
    """

    cover: Cover
    chapters: tuple[Chapter, ...]
    running: str
