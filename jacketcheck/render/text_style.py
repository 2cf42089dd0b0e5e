"""The two plain forms of output: text for a terminal, and Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, TypeAlias

from tabulate import tabulate

from jacketcheck.render.markdown import markdown_text

__all__ = ["TextStyle", "bullets", "emphasis", "grid", "heading", "subheading", "user_text"]

TextStyle: TypeAlias = Literal["text", "markdown"]
_FORMATS = {"text": "simple", "markdown": "pipe"}


def user_text(text: str, style: TextStyle) -> str:
    """A text that somebody wrote, on one line and without markup."""
    return markdown_text(text) if style == "markdown" else " ".join(text.split())


def heading(text: str, style: TextStyle) -> str:
    """Title of the whole output."""
    shown = user_text(text, style)
    return f"# {shown}" if style == "markdown" else f"{shown}\n{'=' * len(shown)}"


def subheading(text: str, style: TextStyle) -> str:
    """Title of a part."""
    shown = user_text(text, style)
    return f"## {shown}" if style == "markdown" else f"{shown}\n{'-' * len(shown)}"


def emphasis(text: str, style: TextStyle) -> str:
    """A line that must not be missed."""
    return f"**{user_text(text, style)}**" if style == "markdown" else text


def bullets(title: str, lines: Iterable[str], style: TextStyle) -> str:
    """A list under a line of its own."""
    gap = "\n\n" if style == "markdown" else "\n"
    return title + gap + "\n".join(f"- {line}" for line in lines)


def grid(
    rows: Sequence[Sequence[str]],
    *,
    headers: Sequence[str],
    align: Sequence[str],
    style: TextStyle,
    widths: Sequence[int | None] | None = None,
) -> str:
    """A table; `widths` wraps the columns of a text, and Markdown is never wrapped."""
    cells = [[user_text(cell, style) for cell in row] for row in rows]
    return tabulate(
        cells,
        headers=[user_text(header, style) for header in headers],
        tablefmt=_FORMATS[style],
        colalign=tuple(align) if cells else None,
        disable_numparse=True,
        maxcolwidths=list(widths) if widths is not None and style == "text" else None,
    )
