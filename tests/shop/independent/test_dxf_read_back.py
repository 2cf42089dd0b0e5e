"""Drawings read back with the DXF library, against geometry worked out here from the input alone.

The repair: inside diameter 62 in, sleeve 1/2 in, seam gap 1 in, height 54 - 2 in; 10 rows at 5 in,
2 lines at 3-1/2 in, edge distances 2 in; plates 3/8 in outside, 5/16 in inside; 1 in bolts.
"""

from __future__ import annotations

import io
import math
from itertools import product
from typing import Any

import ezdxf
import ezdxf.path
import ezdxf.units
import numpy as np
import pytest

from jacketcheck.render.shop_files import shop_files
from jacketcheck.shop import ShopPackage, dxf_text, flat_patterns
from jacketcheck.shop.drawing import LAYERS

INCH = 25.4


def read(text: str) -> Any:
    document = ezdxf.read(io.StringIO(text))
    assert document.audit().errors == []
    return document


def on_layer(document: Any, layer: str, kind: str = "*") -> list[Any]:
    return list(document.modelspace().query(f'{kind}[layer=="{layer}"]'))


def shoelace(points: list[tuple[float, float]]) -> float:
    x, y = np.transpose(points)
    return abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))) / 2.0


def expected_lines(mark: str) -> tuple[float, list[float]]:
    """Width [in] and hole lines [in] from the left, by angles around the column."""
    middle = 31.0 + 0.25
    angles = [(0.5 + 2.0) / middle, (0.5 + 2.0 + 3.5) / middle]
    if mark == "half-shell":
        # half a turn along the middle, less half a gap at either end
        width = math.pi * middle - 1.0
        left = [middle * angle - 0.5 for angle in angles]
        return width, [*left, *(width - x for x in reversed(left))]
    radius = 31.5 + 0.375 / 2.0 if mark == "splice-outside" else 31.0 - 0.3125 / 2.0
    half = radius * angles[1] + 2.0
    offsets = [radius * angle for angle in angles]
    return 2.0 * half, [half - offsets[1], half - offsets[0], half + offsets[0], half + offsets[1]]


@pytest.fixture(params=["us", "si"])
def system(request: pytest.FixtureRequest) -> Any:
    return request.param


@pytest.fixture(params=["half-shell", "splice-outside", "splice-inside"])
def mark(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_outline_and_developed_length(package: ShopPackage, mark: str, system: Any) -> None:
    document = read(shop_files(package, system=system)[f"{mark}.dxf"])
    unit = 1.0 if system == "us" else INCH
    width, _ = expected_lines(mark)
    (outline,) = on_layer(document, "CUT")
    points = [(x, y) for x, y in outline.get_points("xy")]
    assert outline.closed
    assert shoelace(points) == pytest.approx(width * 52.0 * unit**2, rel=1e-9)
    xs, ys = np.transpose(points)
    assert (min(xs), min(ys)) == (0.0, 0.0)
    assert max(xs) == pytest.approx(width * unit, rel=1e-9)
    assert max(ys) == pytest.approx(52.0 * unit, rel=1e-9)


def test_holes(package: ShopPackage, mark: str, system: Any) -> None:
    document = read(shop_files(package, system=system)[f"{mark}.dxf"])
    unit = 1.0 if system == "us" else INCH
    holes = on_layer(document, "HOLES")
    assert {hole.dxftype() for hole in holes} == {"CIRCLE"}
    assert len(holes) == 40
    # AISC 360-22 Table J3.3: 1-1/8 in for 1 in bolts
    assert {round(2.0 * hole.dxf.radius / unit, 9) for hole in holes} == {1.125}
    _, lines = expected_lines(mark)
    rows = [3.5 + 5.0 * row for row in range(10)]
    found = sorted((hole.dxf.center.x / unit, hole.dxf.center.y / unit) for hole in holes)
    np.testing.assert_allclose(found, sorted(product(lines, rows)), rtol=0, atol=1e-9)


def test_unit_layers_and_words(package: ShopPackage, mark: str, system: Any) -> None:
    document = read(shop_files(package, system=system)[f"{mark}.dxf"])
    assert document.units == (ezdxf.units.IN if system == "us" else ezdxf.units.MM)
    names = {layer.dxf.name for layer in document.layers}
    assert set(LAYERS) <= names
    words = " ".join(text.dxf.text for text in on_layer(document, "WORDS", "TEXT"))
    assert "cut 2" in words
    assert "never replace, the judgement of a licensed engineer" in words
    assert "AISC B" in words
    used = {entity.dxf.layer for entity in document.modelspace()}
    assert used == set(LAYERS)


def test_dimensions_say_what_they_measure(package: ShopPackage, mark: str) -> None:
    document = read(shop_files(package, system="si")[f"{mark}.dxf"])
    for dimension in on_layer(document, "SIZES", "DIMENSION"):
        measured = dimension.get_measurement()
        shown = dimension.dxf.text.rpartition("= ")[2].removesuffix(" mm")
        assert float(shown) == pytest.approx(measured, abs=0.00501)


def test_faying_strips_reach_as_far_as_the_plates(package: ShopPackage) -> None:
    files = shop_files(package, system="us")
    plate, _ = expected_lines("splice-outside")
    inside, _ = expected_lines("splice-inside")
    shell = read(files["half-shell.dxf"])
    strips = on_layer(shell, "FAYING")
    assert len(strips) == 2
    spans = [[x for x, _ in strip.get_points("xy")] for strip in strips]
    widths = {round(max(span) - min(span), 6) for span in spans}
    # the larger of both plates' half angles, on the sleeve's middle
    reach = max(plate / 2.0 / 31.6875, inside / 2.0 / 30.84375) * 31.25 - 0.5
    assert widths == {round(reach, 6)}


@pytest.mark.parametrize(
    ("hole", "width", "height"),
    [
        # AISC 360-22 Table J3.3, 1 in bolts: short slots 1-1/8 x 1-5/16, long 1-1/8 x 2-1/2 in
        ("short-slot-parallel", 1.3125, 1.125),
        ("short-slot-perpendicular", 1.125, 1.3125),
        ("long-slot-parallel", 2.5, 1.125),
        ("long-slot-perpendicular", 1.125, 2.5),
    ],
)
def test_slots(make_jacket: Any, hole: str, width: float, height: float) -> None:
    jacket = make_jacket(
        bolts={"seam_edge_distance": 60.0}, sleeve={"hole": hole}, splice={"hole": hole}
    )
    for pattern in flat_patterns(jacket):
        text = dxf_text(pattern, words=(), length_text=lambda _: "", system="us")
        slots = on_layer(read(text), "HOLES", "LWPOLYLINE")
        assert len(slots) == 40
        for slot, cut in zip(slots, pattern.holes, strict=True):
            outline = ezdxf.path.make_path(slot)
            points = np.array([(p.x, p.y) for p in outline.flattening(1e-5)])
            low, high = points.min(axis=0), points.max(axis=0)
            np.testing.assert_allclose(high - low, [width, height], atol=1e-4)
            np.testing.assert_allclose((high + low) / 2.0, [cut.x / INCH, cut.y / INCH], atol=1e-4)
            short, long = sorted((width, height))
            area = math.pi * short**2 / 4.0 + (long - short) * short
            assert shoelace([(x, y) for x, y in points]) == pytest.approx(area, rel=1e-3)
            assert cut.area / INCH**2 == pytest.approx(area, rel=1e-9)


def test_rolled_up_the_holes_of_all_plates_meet(package: ShopPackage) -> None:
    """Rolling each flat pattern onto its own radius brings every hole to the same angle."""
    angles = {}
    for pattern in package.patterns:
        middle = pattern.middle_radius
        # the sleeve's edge lies half a gap beside the seam, a plate's middle on it
        start = (
            INCH / 2.0 / middle if pattern.mark == "half-shell" else -pattern.length / 2 / middle
        )
        angles[pattern.mark] = sorted(
            {round(start + hole.x / middle, 9) for hole in pattern.holes if hole.x > 0.0}
        )
    right_of_the_seam = angles["half-shell"][:2]
    for mark in ("splice-outside", "splice-inside"):
        assert angles[mark][2:] == pytest.approx(right_of_the_seam, abs=1e-9)
        assert angles[mark][:2] == pytest.approx(
            [-a for a in reversed(right_of_the_seam)], abs=1e-9
        )
