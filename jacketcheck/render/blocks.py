"""Pieces that several outputs are put together from, as text or Markdown."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence
from typing import Literal, TypeAlias

from tabulate import tabulate

from jacketcheck.inputs.repair_file import Job
from jacketcheck.render.markdown import markdown_text

__all__ = [
    "DEFAULT_WIDTH",
    "TextStyle",
    "bullets",
    "heading",
    "numbered",
    "paragraph",
    "subheading",
    "table",
]

TextStyle: TypeAlias = Literal["text", "markdown"]
DEFAULT_WIDTH = 110
"""Columns of text output that does not go to a terminal."""
_FORMATS: dict[TextStyle, str] = {"text": "simple", "markdown": "pipe"}


def heading(job: Job, title: str, facts: Sequence[str], style: TextStyle) -> str:
    """Title of the job and of the output, and facts in a line."""
    lines = [f"job {job.number}"] if job.number else []
    lines += facts
    if job.engineer:
        lines.append(f"prepared by {job.engineer}")
    text, line = f"{title}: {job.title}", "; ".join(lines)
    if style == "markdown":
        return f"# {markdown_text(text)}\n\n{markdown_text(line)}"
    return f"{text}\n{'=' * len(text)}\n\n{line}"


def subheading(text: str, style: TextStyle, *, level: int = 2) -> str:
    """Heading of a part."""
    if style == "markdown":
        return f"{'#' * level} {markdown_text(text)}"
    return f"{text}\n{('-' if level == 2 else '·') * len(text)}"


def paragraph(text: str, style: TextStyle, width: int) -> str:
    """Text in lines of at most `width` columns; Markdown is left to its reader."""
    return text if style == "markdown" else textwrap.fill(text, width)


def bullets(
    title: str, lines: Iterable[str], style: TextStyle, width: int, *, mark: str = "-"
) -> str:
    """A list below a title."""
    gap = "\n\n" if style == "markdown" else "\n"
    return title + gap + "\n".join(_item(f"{mark} ", line, style, width) for line in lines)


def numbered(lines: Iterable[str], style: TextStyle, width: int) -> str:
    """A list with numbers."""
    return "\n".join(
        _item(f"{number}. ", line, style, width) for number, line in enumerate(lines, start=1)
    )


def _item(mark: str, line: str, style: TextStyle, width: int) -> str:
    if style == "markdown":
        return mark + line
    indent = " " * len(mark)
    return textwrap.fill(line, width, initial_indent=mark, subsequent_indent=indent)


def table(
    rows: Sequence[Sequence[str]],
    headers: Sequence[str],
    style: TextStyle,
    *,
    alignment: Sequence[str] | None = None,
    widths: Sequence[int | None] | None = None,
) -> str:
    """A table; column widths count in text only."""
    if style == "markdown":
        rows = [[cell.replace("|", "\\|") for cell in row] for row in rows]
    return tabulate(
        rows,
        headers=headers,
        tablefmt=_FORMATS[style],
        colalign=alignment if rows else None,
        disable_numparse=True,
        maxcolwidths=widths if style == "text" and rows else None,
    )
