"""Flat patterns as DXF drawings at full size.

One drawing for each pattern, in millimetres or inches as asked, the lower left corner of the plate
at the origin. Layers: ``CUT`` outline, ``HOLES``, ``MIDDLE`` line of the plate (of the seam on
splice plates), ``FAYING`` strips that stay free of paint, ``SIZES`` dimensions, ``WORDS`` text.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from importlib import import_module
from itertools import pairwise
from typing import Any, Final

from jacketcheck.errors import MissingExtraError
from jacketcheck.shop.patterns import FlatPattern, HoleCut
from jacketcheck.units import DisplaySystem, display

__all__ = ["LAYERS", "dxf_text", "require_ezdxf"]

LAYERS: Final = ("CUT", "HOLES", "MIDDLE", "FAYING", "SIZES", "WORDS")

_COLOURS: Final = {"CUT": 7, "HOLES": 1, "MIDDLE": 8, "FAYING": 3, "SIZES": 4, "WORDS": 7}
_LINETYPES: Final = {"MIDDLE": "CENTER", "FAYING": "DASHED"}
_TEXTS_PER_HEIGHT: Final = 60.0
_PERCENT_SIGNS: Final = re.compile("%%+")
_HALF_CIRCLE: Final = 1.0
"""Bulge of a polyline's segment that is half a circle."""


def require_ezdxf() -> Any:
    """The ezdxf package; MissingExtraError with what to install where it is missing."""
    try:
        return import_module("ezdxf")
    except ModuleNotFoundError as error:
        raise MissingExtraError("shop", "ezdxf") from error


def dxf_text(
    pattern: FlatPattern,
    *,
    words: Sequence[str],
    length_text: Callable[[float], str],
    system: DisplaySystem,
) -> str:
    """A pattern as the text of a DXF file.

    Parameters
    ----------
    pattern
        What to draw.
    words
        Lines of text beside the drawing.
    length_text
        How a length [mm] is written on a dimension line.
    system
        Units of the drawing: millimetres or inches.

    Raises
    ------
    MissingExtraError
        If ezdxf is not installed.
    """
    ezdxf = require_ezdxf()
    with _without_date(ezdxf):
        return _drawn(ezdxf, pattern, words=words, length_text=length_text, system=system)


@contextmanager
def _without_date(ezdxf: Any) -> Iterator[None]:
    """Leave the time and random numbers out of a drawing: equal inputs give equal files."""
    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def _drawn(
    ezdxf: Any,
    pattern: FlatPattern,
    *,
    words: Sequence[str],
    length_text: Callable[[float], str],
    system: DisplaySystem,
) -> str:
    document = ezdxf.new("R2010", setup=True)
    document.units = ezdxf.units.MM if system == "si" else ezdxf.units.IN
    document.header["$MEASUREMENT"] = 1 if system == "si" else 0
    for name in LAYERS:
        linetype = _LINETYPES.get(name, "CONTINUOUS")
        document.layers.add(name, color=_COLOURS[name], linetype=linetype)
    sheet = _Sheet(document.modelspace(), pattern, display("mm", system)[0], length_text)
    sheet.draw(words)
    # written by name: by themselves they come in another order each time
    document.classes.add_required_classes(document.dxfversion)
    document.classes.classes = dict(sorted(document.classes.classes.items()))
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


class _Sheet:
    """Draws one pattern into a model space."""

    def __init__(
        self, space: Any, pattern: FlatPattern, factor: float, length_text: Callable[[float], str]
    ) -> None:
        self._space = space
        self._pattern = pattern
        self._factor = factor
        self._length_text = length_text
        self._letter = max(pattern.height, pattern.length / 4.0) / _TEXTS_PER_HEIGHT

    def draw(self, words: Sequence[str]) -> None:
        """Everything, layer by layer."""
        pattern = self._pattern
        self._rectangle(0.0, pattern.length, "CUT")
        for hole in pattern.holes:
            self._hole(hole)
        middle, over = pattern.length / 2.0, 2.0 * self._letter
        self._space.add_line(
            self._point(middle, -over),
            self._point(middle, pattern.height + over),
            dxfattribs={"layer": "MIDDLE"},
        )
        for strip in pattern.strips:
            self._rectangle(strip.start, strip.end, "FAYING")
        self._dimensions()
        self._words(words)

    def _point(self, x: float, y: float) -> tuple[float, float]:
        """A point [mm] in the drawing's unit."""
        return x * self._factor, y * self._factor

    def _rectangle(self, start: float, end: float, layer: str) -> None:
        top = self._pattern.height
        corners = [(start, 0.0), (end, 0.0), (end, top), (start, top)]
        self._space.add_lwpolyline(
            [self._point(*corner) for corner in corners], close=True, dxfattribs={"layer": layer}
        )

    def _hole(self, hole: HoleCut) -> None:
        attributes = {"layer": "HOLES"}
        if hole.is_round:
            radius = hole.width / 2.0 * self._factor
            self._space.add_circle(self._point(hole.x, hole.y), radius, dxfattribs=attributes)
            return
        self._space.add_lwpolyline(
            [(*self._point(x, y), bulge) for x, y, bulge in _slot(hole)],
            format="xyb",
            close=True,
            dxfattribs=attributes,
        )

    def _dimensions(self) -> None:
        pattern, letter = self._pattern, self._letter
        columns = sorted({round(hole.x, 6) for hole in pattern.holes})
        rows = sorted({round(hole.y, 6) for hole in pattern.holes})
        for start, end in pairwise([0.0, *columns, pattern.length]):
            self._level(start, end, -4.0 * letter)
        self._level(0.0, pattern.length, -8.0 * letter)
        first, last = rows[0], rows[-1]
        pitch = (last - first) / max(len(rows) - 1, 1)
        spaces = f"{len(rows) - 1} × {self._length_text(pitch)} = {self._length_text(last - first)}"
        self._upright(0.0, first, -4.0 * letter, self._length_text(first))
        self._upright(first, last, -4.0 * letter, spaces)
        self._upright(last, pattern.height, -4.0 * letter, self._length_text(pattern.height - last))
        self._upright(0.0, pattern.height, -8.0 * letter, self._length_text(pattern.height))

    def _level(self, start: float, end: float, y: float) -> None:
        """A dimension along x."""
        self._space.add_linear_dim(
            base=self._point(0.0, y),
            p1=self._point(start, 0.0),
            p2=self._point(end, 0.0),
            text=self._length_text(end - start),
            override=self._style(),
            dxfattribs={"layer": "SIZES"},
        ).render()

    def _upright(self, start: float, end: float, x: float, text: str) -> None:
        """A dimension along y."""
        self._space.add_linear_dim(
            base=self._point(x, 0.0),
            p1=self._point(0.0, start),
            p2=self._point(0.0, end),
            angle=90,
            text=text,
            override=self._style(),
            dxfattribs={"layer": "SIZES"},
        ).render()

    def _style(self) -> dict[str, float]:
        letter = self._letter * self._factor
        return {"dimtxt": letter, "dimasz": letter, "dimexe": letter / 2.0, "dimexo": letter / 2.0}

    def _words(self, words: Sequence[str]) -> None:
        x, top = self._pattern.length + 6.0 * self._letter, self._pattern.height
        lines = (line for text in words for line in text.splitlines() or [""])
        for number, line in enumerate(lines):
            self._space.add_text(
                _as_written(line),
                height=self._letter * self._factor,
                dxfattribs={"layer": "WORDS"},
            ).set_placement(self._point(x, top - (1.0 + 1.8 * number) * self._letter))


def _as_written(line: str) -> str:
    """A line of text in which nothing is taken for a code of the drawing format.

    Two percent signs begin one (``%%c`` is a diameter sign, ``%%%`` a percent sign), and so does a
    caret.

    Examples
    --------
    >>> _as_written("5 % or 5 %%"), _as_written("2^3")
    ('5 % or 5 %%%%%%', '2^ 3')
    """
    return _PERCENT_SIGNS.sub(lambda found: 3 * found[0], line.replace("^", "^ "))


def _slot(hole: HoleCut) -> list[tuple[float, float, float]]:
    """Corners of a slot with round ends, each with the bulge of the segment that follows."""
    x, y = hole.x, hole.y
    radius = min(hole.width, hole.height) / 2.0
    straight = abs(hole.width - hole.height) / 2.0
    if hole.width > hole.height:
        return [
            (x - straight, y - radius, 0.0),
            (x + straight, y - radius, _HALF_CIRCLE),
            (x + straight, y + radius, 0.0),
            (x - straight, y + radius, _HALF_CIRCLE),
        ]
    return [
        (x + radius, y - straight, 0.0),
        (x + radius, y + straight, _HALF_CIRCLE),
        (x - radius, y + straight, 0.0),
        (x - radius, y - straight, _HALF_CIRCLE),
    ]
