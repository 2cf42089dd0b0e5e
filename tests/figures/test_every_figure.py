"""What holds for every figure: whole, labelled, told in words, the same each time."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

import matplotlib as mpl
import numpy as np
import pytest
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.text import Text
from matplotlib.transforms import Bbox

from jacketcheck.figures import FIGURES, draw
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.export import inline_svg, png_bytes, standalone_svg
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.units import DisplaySystem
from tests.support.drawn_runs import drawing_of, drawings

SVG = "{http://www.w3.org/2000/svg}"
SYSTEMS: tuple[DisplaySystem, ...] = ("si", "us")
EVERY = [
    pytest.param(name, system, id=f"{name}-{system}") for name in FIGURES for system in SYSTEMS
]

# label of each axis, with its unit by system
LABELS = {
    "pressure": (("axial strain of the core [–]",) * 2,
                 ("pressure on the sleeve [MPa]", "pressure on the sleeve [ksi]")),
    "bar-stress": (("height above the footing [mm]", "height above the footing [in]"),
                   ("stress in the bar [MPa]", "stress in the bar [ksi]")),
    "moment-curvature": (("curvature [1/m]", "curvature [1/in]"),
                         ("moment [kN·m]", "moment [kip·ft]")),
    "moment-height": (("moment [kN·m]", "moment [kip·ft]"),
                      ("height above the footing [mm]", "height above the footing [in]")),
    "force-displacement": (("displacement of the column's top [mm]",
                            "displacement of the column's top [in]"),
                           ("lateral force [kN]", "lateral force [kip]")),
    "ratios": (("demand over capacity [–]",) * 2, ("", "")),
}  # fmt: skip


def drawn_anew(name: str, table: VariantResults) -> Drawing:
    return next(drawing for _, drawing in draw(name, (table,), system="si"))


@pytest.mark.parametrize(("name", "system"), EVERY)
def test_the_svg_is_well_formed_and_told_to_readers_of_the_screen(
    name: str, system: DisplaySystem, table: VariantResults
) -> None:
    drawing = drawing_of(name, table, system)
    root = ET.fromstring(  # noqa: S314 - our own drawing
        standalone_svg(drawing).removeprefix('<?xml version="1.0" encoding="UTF-8"?>')
    )
    title, text = list(root)[:2]
    assert root.tag == f"{SVG}svg"
    assert (title.tag, title.text) == (f"{SVG}title", drawing.title)
    assert (text.tag, text.text) == (f"{SVG}desc", drawing.alt)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == title.get("id")
    assert root.get("aria-describedby") == text.get("id")
    assert len(drawing.alt) > 80


@pytest.mark.parametrize(("name", "system"), EVERY)
def test_the_svg_is_complete_in_itself(
    name: str, system: DisplaySystem, table: VariantResults
) -> None:
    svg = inline_svg(drawing_of(name, table, system), prefix="p1")
    root = ET.fromstring(svg)  # noqa: S314 - our own drawing
    known = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(known) == len(set(known))
    assert all(identifier is not None and identifier.startswith("p1-") for identifier in known)
    asked = set(re.findall(r"url\(#([^)]+)\)", svg)) | set(re.findall(r'href="#([^"]+)"', svg))
    assert asked <= set(known)
    assert "http" not in svg
    for gone in ("<style", "<script", "<metadata", "<image", "DejaVu Sans', sans-serif, "):
        assert gone not in svg


@pytest.mark.parametrize(("name", "system"), EVERY)
def test_nothing_is_cut_off_and_no_texts_overlap(
    name: str, system: DisplaySystem, report: CheckReport
) -> None:
    for variant, drawing in drawings(name, report, system):
        boxes = [(text, box) for text, box in text_boxes(drawing) if text.strip()]
        frame = drawing.figure.bbox
        for text, box in boxes:
            inside = (
                box.x0 >= -1 and box.y0 >= -1 and box.x1 <= frame.x1 + 1 and box.y1 <= frame.y1 + 1
            )
            assert inside, f"{variant}: {text!r} is cut off"
        for (first, a), (second, b) in itertools.combinations(boxes, 2):
            assert not overlap(a, b), f"{variant}: {first!r} and {second!r} overlap"


def text_boxes(drawing: Drawing) -> list[tuple[str, Bbox]]:
    drawing.figure.draw_without_rendering()
    unused = {id(text) for axes in drawing.figure.axes for text in ticks_out_of_view(axes)}
    found = drawing.figure.findobj(lambda artist: isinstance(artist, Text) and artist.get_visible())
    texts = [text for text in found if isinstance(text, Text) and id(text) not in unused]
    return [(text.get_text(), text.get_window_extent()) for text in texts]


def ticks_out_of_view(axes: Axes) -> Iterator[Text]:
    """Labels that are kept for later and not drawn."""
    for axis in (axes.xaxis, axes.yaxis):
        low, high = sorted(axis.get_view_interval())
        for tick in axis.get_major_ticks():
            if not low <= tick.get_loc() <= high:
                yield from (tick.label1, tick.label2)


def overlap(a: Bbox, b: Bbox) -> bool:
    """Whether boxes share more than their rims."""
    across = min(a.x1, b.x1) - max(a.x0, b.x0)
    up = min(a.y1, b.y1) - max(a.y0, b.y0)
    return bool(across > 1.0 and up > 1.0)


@pytest.mark.parametrize("name", LABELS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_axes_carry_their_units(name: str, system: DisplaySystem, table: VariantResults) -> None:
    (axes,) = drawing_of(name, table, system).figure.axes
    place = SYSTEMS.index(system)
    assert (axes.get_xlabel(), axes.get_ylabel()) == tuple(label[place] for label in LABELS[name])


@pytest.mark.parametrize("name", sorted(set(FIGURES) - set(LABELS)))
def test_what_is_drawn_to_scale_has_equal_scales(name: str, table: VariantResults) -> None:
    figure = drawing_of(name, table).figure
    (axes,) = figure.axes
    figure.draw_without_rendering()
    (x0, y0), (x1, y1) = axes.transData.transform([(0.0, 0.0), (1000.0, 1000.0)])
    assert x1 - x0 == pytest.approx(y1 - y0, rel=1e-6)


@pytest.mark.parametrize("name", FIGURES)
def test_the_same_input_gives_the_same_bytes(name: str, table: VariantResults) -> None:
    first, second = drawn_anew(name, table), drawn_anew(name, table)
    assert standalone_svg(first) == standalone_svg(second)
    assert standalone_svg(first) == standalone_svg(first)
    assert png_bytes(first) == png_bytes(second)


def test_settings_of_the_user_neither_change_figures_nor_are_changed(table: VariantResults) -> None:
    plain = standalone_svg(drawn_anew("pressure", table))
    with mpl.rc_context({"font.size": 22.0, "axes.grid": False, "lines.linewidth": 9.0}):
        before = dict(mpl.rcParams)
        assert standalone_svg(drawn_anew("pressure", table)) == plain
        assert dict(mpl.rcParams) == before


def test_a_png_carries_its_text(table: VariantResults) -> None:
    content = png_bytes(drawn_anew("plan", table))
    assert content.startswith(b"\x89PNG")
    assert b"Description" in content
    assert b"Software" not in content


@pytest.mark.parametrize("name", FIGURES)
def test_lines_and_areas_differ_in_more_than_colour(name: str, report: CheckReport) -> None:
    for _, drawing in drawings(name, report, "si"):
        for axes in drawing.figure.axes:
            looks = [str(vars(line)["_dash_pattern"]) for line in coloured_lines(axes)]
            assert len(looks) == len(set(looks))


def coloured_lines(axes: Axes) -> list[Line2D]:
    """Curves that a reader must tell apart: long, and in one of the colours for curves."""
    from jacketcheck.figures.style import LINES

    colours = {style.color for style in LINES}
    return [
        line for line in axes.lines if line.get_color() in colours and np.size(line.get_xdata()) > 2
    ]
