"""Reading HTML as a browser would, strictly."""

from __future__ import annotations

import warnings
from collections.abc import Iterator
from xml.etree import ElementTree as ET

__all__ = ["parsed", "tags", "text_of"]


def parsed(page: str) -> ET.Element:
    """Tree of a page; raises at the first thing that is not valid HTML syntax."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        import html5lib

    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    tree: ET.Element = parser.parse(page)
    return tree


def tags(tree: ET.Element, name: str) -> Iterator[ET.Element]:
    """Elements of a name, those of drawings included."""
    for element in tree.iter():
        if isinstance(element.tag, str) and element.tag.rpartition("}")[2] == name:
            yield element


def text_of(element: ET.Element) -> str:
    """Everything that an element says, white space joined."""
    return " ".join("".join(element.itertext()).split())
