"""Text that people wrote, made safe for Markdown."""

from __future__ import annotations

import html
import re

__all__ = ["markdown_text"]

_SPECIAL = re.compile(r"([\\`*_\[\]|~])")


def markdown_text(text: str) -> str:
    r"""Escape what Markdown and HTML would read as markup; line breaks become blanks.

    Meant for text inside a line, a heading or a table's cell.

    Examples
    --------
    >>> print(markdown_text("pier <3> | *north*"))
    pier &lt;3&gt; \| \*north\*
    """
    flat = " ".join(text.split())
    return html.escape(_SPECIAL.sub(r"\\\1", flat), quote=False)
