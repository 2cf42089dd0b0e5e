"""Figures as SVG and PNG: the same input gives the same bytes."""

from __future__ import annotations

import io
import re
import warnings
from collections.abc import Iterator
from typing import Any, Final
from xml.etree import ElementTree as ET

from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.style import styled
from jacketcheck.inputs.written import printable

__all__ = ["inline_svg", "png_bytes", "standalone_svg"]

_SVG: Final = "http://www.w3.org/2000/svg"
_XLINK: Final = "http://www.w3.org/1999/xlink"
_FONTS: Final = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"
_REFERENCE: Final = re.compile(r"url\(#([^)]+)\)")
_INHERITED: Final = "stroke-linejoin: round; stroke-linecap: butt"
_DPI: Final = 200
_COORDINATES: Final = frozenset({"d", "x", "y", "width", "height", "transform", "points"})
_LONG_NUMBER: Final = re.compile(r"-?\d+\.\d{3,}")


def standalone_svg(drawing: Drawing) -> str:
    """A figure as an SVG file of its own, with its title and alternative text inside."""
    root = _svg(drawing, prefix=drawing.name)
    ET.register_namespace("", _SVG)
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + ET.tostring(root, encoding="unicode") + "\n"


def inline_svg(drawing: Drawing, *, prefix: str) -> str:
    """A figure as an SVG element to stand in HTML.

    Parameters
    ----------
    drawing
        The figure.
    prefix
        Begins every identifier, so that several figures may stand on one page.
    """
    root = _svg(drawing, prefix=prefix)
    for element in root.iter():
        element.tag = element.tag.removeprefix(f"{{{_SVG}}}")
    return ET.tostring(root, encoding="unicode")


def png_bytes(drawing: Drawing) -> bytes:
    """A figure as a PNG image that carries its alternative text."""
    words = {"Software": None, "Title": drawing.title, "Description": drawing.alt}
    return _saved(drawing, "png", dpi=_DPI, metadata=words)


def _svg(drawing: Drawing, *, prefix: str) -> ET.Element:
    content = _saved(drawing, "svg", metadata={"Date": None, "Creator": None}).decode("utf-8")
    root = ET.fromstring(content)  # noqa: S314 - written by our own library a moment ago
    _tidy(root)
    _rename(root, prefix)
    _describe(root, drawing, prefix)
    return root


@styled
def _saved(drawing: Drawing, form: str, **how: Any) -> bytes:
    buffer = io.BytesIO()
    with warnings.catch_warnings():
        # a script that the font lacks is drawn by whatever shows the file, or as boxes in a PNG
        warnings.filterwarnings("ignore", message=r"Glyph .* missing from font")
        drawing.figure.savefig(buffer, format=form, **how)
    return buffer.getvalue()


def _tidy(root: ET.Element) -> None:
    """Drop metadata and the style sheet, which would reach beyond the figure; set common fonts."""
    for parent in list(root.iter()):
        for child in list(parent):
            if child.tag in {f"{{{_SVG}}}metadata", f"{{{_SVG}}}style"}:
                parent.remove(child)
    root.set("style", _INHERITED)
    for element in root.iter():
        style = element.get("style")
        if style and "font" in style:
            element.set("style", re.sub(r"'DejaVu Sans'(, sans-serif)?", _FONTS, style))
        target = element.attrib.pop(f"{{{_XLINK}}}href", None)
        if target is not None:
            element.set("href", target)
        for key in _COORDINATES & element.attrib.keys():
            element.set(key, _LONG_NUMBER.sub(_rounded, element.attrib[key]).strip())


def _rounded(number: re.Match[str]) -> str:
    """A coordinate to a hundredth of a point."""
    return f"{float(number[0]):.2f}"


def _rename(root: ET.Element, prefix: str) -> None:
    """Number the identifiers that something refers to; drop all others."""
    used = {name for element in root.iter() for name in _references(element)}
    names = {name: f"{prefix}-{number}" for number, name in enumerate(sorted(used), start=1)}

    def renamed(match: re.Match[str]) -> str:
        return f"url(#{names[match[1]]})"

    for element in root.iter():
        for key, value in list(element.attrib.items()):
            if key == "id":
                del element.attrib[key]
                if value in names:
                    element.set("id", names[value])
            elif key == "href":
                element.set(key, f"#{names[value[1:]]}")
            else:
                element.set(key, _REFERENCE.sub(renamed, value))


def _references(element: ET.Element) -> Iterator[str]:
    target = element.get("href", "")
    if target.startswith("#"):
        yield target[1:]
    for value in element.attrib.values():
        yield from _REFERENCE.findall(value)


def _describe(root: ET.Element, drawing: Drawing, prefix: str) -> None:
    title, description = f"{prefix}-title", f"{prefix}-text"
    for name, identifier, text in reversed(
        (("title", title, drawing.title), ("desc", description, drawing.alt))
    ):
        element = ET.Element(f"{{{_SVG}}}{name}", {"id": identifier})
        element.text = printable(text)
        root.insert(0, element)
    root.set("role", "img")
    root.set("aria-labelledby", title)
    root.set("aria-describedby", description)
    for key in ("version", "width", "height"):
        root.attrib.pop(key, None)
    width, height = (float(size) for size in drawing.figure.get_size_inches())
    root.set("width", f"{width:g}in")
    root.set("height", f"{height:g}in")
