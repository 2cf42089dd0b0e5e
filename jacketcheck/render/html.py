"""Building HTML without ever letting a text become markup.

Whatever is a plain string is escaped; only `Markup`, which nothing but this module's functions and
our own constants make, goes through as it is.
"""

from __future__ import annotations

import html
from typing import Final, TypeAlias

from jacketcheck.inputs.written import printable

__all__ = ["Markup", "element", "escaped", "joined", "void"]


class Markup(str):
    """Text that is markup already."""

    __slots__ = ()


Content: TypeAlias = "str | Markup"
_BLOCKS: Final = frozenset(
    {"table", "thead", "tbody", "tr", "section", "details", "figure", "ol", "ul", "dl", "header"}
)


def escaped(text: str) -> Markup:
    r"""A text as markup; line breaks stay, what cannot be printed becomes visible.

    That takes in the characters that reverse the direction of what follows.

    Examples
    --------
    >>> print(escaped('<b> & "c"'), escaped("a\u202eb"))
    &lt;b&gt; &amp; &quot;c&quot; a\u202eb
    """
    if isinstance(text, Markup):
        return text
    lines = (printable(line) for line in text.split("\n"))
    return Markup(html.escape("\n".join(lines), quote=True))


def element(name: str, /, *children: Content, **attributes: str | bool | None) -> Markup:
    """An element; attributes that are None or False are left out, True has no value.

    A trailing underscore in the name of an attribute is dropped, others become hyphens.

    Examples
    --------
    >>> print(element("td", "a < b", class_="number"))
    <td class="number">a &lt; b</td>
    """
    gap = "\n" if name in _BLOCKS else ""
    inside = gap.join(escaped(child) for child in children)
    return Markup(f"<{name}{_written(attributes)}>{gap}{inside}{gap}</{name}>")


def void(name: str, /, **attributes: str | bool | None) -> Markup:
    """An element without content, such as ``meta``."""
    return Markup(f"<{name}{_written(attributes)}>")


def joined(*parts: Content, gap: str = "\n") -> Markup:
    """Parts in a row; plain strings are escaped."""
    return Markup(gap.join(escaped(part) for part in parts))


def _written(attributes: dict[str, str | bool | None]) -> str:
    text = ""
    for key, value in attributes.items():
        name = key.rstrip("_").replace("_", "-")
        if value is True:
            text += f" {name}"
        elif isinstance(value, str):
            text += f' {name}="{escaped(value)}"'
    return text
