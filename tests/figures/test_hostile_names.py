"""Names are drawn as they are: no mathematics, no markup, no control characters."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from jacketcheck.figures import draw
from jacketcheck.figures.export import inline_svg, png_bytes
from jacketcheck.report import VariantResults

HOSTILE = [
    "$\\frac{a}{b}$ & <b>",
    "</svg><script>x()</script>",
    "a\u202eb\x07",
    "日本 ☃",
    "%s {0}",
    "_^$",
]


@pytest.mark.parametrize("name", HOSTILE)
def test_a_variant_may_have_any_name(name: str, table: VariantResults) -> None:
    named = replace(table, variant=name)
    ((_, drawing),) = draw("force-displacement", (named,), system="si")
    svg = inline_svg(drawing, prefix="p")
    tags = {element.tag for element in ET.fromstring(svg).iter()}  # noqa: S314 - our own drawing
    assert "script" not in tags
    assert "b" not in tags
    assert "\u202e" not in svg
    assert "\x07" not in svg
    assert png_bytes(drawing)


@pytest.mark.parametrize("title", HOSTILE)
def test_a_limit_state_may_have_any_title(title: str, table: VariantResults) -> None:
    rows = (replace(table.results[0], title=title), *table.results[1:3])
    ((_, drawing),) = draw("ratios", (replace(table, results=rows),), system="si")
    ET.fromstring(inline_svg(drawing, prefix="p"))  # noqa: S314 - our own drawing


def test_a_name_with_dollars_is_not_mathematics(table: VariantResults) -> None:
    ((_, drawing),) = draw("force-displacement", (replace(table, variant="$5$"),), system="si")
    assert ">$5$<" in inline_svg(drawing, prefix="p")
