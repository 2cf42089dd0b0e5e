"""Pieces of the shop's outputs: wrapped text, lists to tick off, headings of parts of parts."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from jacketcheck.inputs.repair_file import Job
from jacketcheck.render.text_style import TextStyle, heading, user_text

__all__ = ["DEFAULT_WIDTH", "job_heading", "listed", "numbered", "paragraph", "part_heading"]

DEFAULT_WIDTH = 110
"""Columns of text output that does not go to a terminal."""


def job_heading(job: Job, title: str, facts: Sequence[str], style: TextStyle, width: int) -> str:
    """Title of output and job, and facts in a line."""
    lines = [f"job {job.number}"] if job.number else []
    lines += facts
    if job.engineer:
        lines.append(f"prepared by {job.engineer}")
    return (
        f"{heading(f'{title}: {job.title}', style)}\n\n{paragraph('; '.join(lines), style, width)}"
    )


def part_heading(text: str, style: TextStyle) -> str:
    """Title of a part of a part."""
    shown = user_text(text, style)
    return f"### {shown}" if style == "markdown" else f"{shown}\n{'·' * len(shown)}"


def paragraph(text: str, style: TextStyle, width: int) -> str:
    """Text in lines of at most `width` columns; Markdown is left to its reader."""
    shown = user_text(text, style)
    return shown if style == "markdown" else textwrap.fill(shown, width)


def listed(lines: Iterable[str], style: TextStyle, width: int, *, mark: str = "-") -> str:
    """A list, each entry behind a mark."""
    return "\n".join(_item(f"{mark} ", line, style, width) for line in lines)


def numbered(lines: Iterable[str], style: TextStyle, width: int) -> str:
    """A list with numbers."""
    return "\n".join(
        _item(f"{number}. ", line, style, width) for number, line in enumerate(lines, start=1)
    )


def _item(mark: str, line: str, style: TextStyle, width: int) -> str:
    shown = user_text(line, style)
    if style == "markdown":
        return mark + shown
    indent = " " * len(mark)
    return textwrap.fill(shown, width, initial_indent=mark, subsequent_indent=indent)
