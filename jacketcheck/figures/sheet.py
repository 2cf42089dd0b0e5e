"""A drawing to scale: its frame, dimension lines and notes with leaders.

Positions are in millimetres of the real thing; `Sheet.points` turns printed points into them.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Literal, NamedTuple

from matplotlib.figure import Figure
from matplotlib.patches import Patch
from matplotlib.text import Text

from jacketcheck.figures.style import FONT_SIZE, INK, PAPER, SMALL, SOFT, drawing_area, new_figure

__all__ = ["Padding", "Sheet"]

_POINTS = 72.0
_TICK = 3.0
_GAP = 2.5
_THIN = 0.6


class Padding(NamedTuple):
    """Room around what is drawn, for dimensions and notes [points]."""

    left: float
    right: float
    bottom: float
    top: float


class Sheet:
    """Axes with equal scales that fit what is drawn.

    Parameters
    ----------
    x_range, y_range
        Extent of what is drawn [mm].
    padding
        Room around it.
    width, tallest
        Width of the figure, and the height that it may take at most [in].

    Attributes
    ----------
    figure, axes
        What to draw on.
    scale
        Millimetres of the real thing for each printed point.
    """

    def __init__(
        self,
        x_range: tuple[float, float],
        y_range: tuple[float, float],
        *,
        padding: Padding,
        width: float,
        tallest: float,
    ) -> None:
        across, up = x_range[1] - x_range[0], y_range[1] - y_range[0]
        room = width * _POINTS - padding.left - padding.right
        height_room = tallest * _POINTS - padding.bottom - padding.top
        self.scale = max(across / room, up / height_room)
        height = (up / self.scale + padding.bottom + padding.top) / _POINTS
        self.figure: Figure = new_figure(width, height)
        self.axes = drawing_area(self.figure, left=0.0, bottom=0.0, right=0.0, top=0.0)
        # what is narrower than the figure stands in its middle
        spare = (room - across / self.scale) / 2.0
        left = x_range[0] - self.points(padding.left + spare)
        bottom = y_range[0] - self.points(padding.bottom)
        self.axes.set_xlim(left, left + self.points(width * _POINTS))
        self.axes.set_ylim(bottom, bottom + self.points(height * _POINTS))

    def points(self, count: float) -> float:
        """Length [mm] that is printed with a length in points."""
        return count * self.scale

    def add(self, patches: Iterable[Patch]) -> None:
        """Add filled shapes, in this order."""
        for patch in patches:
            self.axes.add_patch(patch)

    def line(self, x: Iterable[float], y: Iterable[float], **how: Any) -> None:
        """A line through points."""
        settings = {"color": INK, "linewidth": 0.8, **how}
        self.axes.plot(list(x), list(y), **settings)

    def text(self, x: float, y: float, text: str, **how: Any) -> Text:
        """Text at a point."""
        settings: dict[str, Any] = {"ha": "center", "va": "center", "fontsize": FONT_SIZE, **how}
        return self.axes.text(x, y, text, **settings)

    def note(
        self,
        point: tuple[float, float],
        at: tuple[float, float],
        text: str,
        *,
        side: Literal["left", "right"] = "right",
    ) -> None:
        """Text with a thin leader that ends in a dot at a point.

        The text begins (side ``right``) or ends (side ``left``) where the leader does.
        """
        sign = 1.0 if side == "right" else -1.0
        self.line((point[0], at[0]), (point[1], at[1]), color=SOFT, linewidth=_THIN, zorder=8)
        dot = {"marker": "o", "markersize": 3.4, "markeredgecolor": PAPER, "markeredgewidth": 0.6}
        self.line((point[0],), (point[1],), color=SOFT, zorder=8, **dot)
        anchor = "left" if side == "right" else "right"
        self.text(at[0] + sign * self.points(3.0), at[1], text, ha=anchor, fontsize=SMALL, zorder=9)

    def across(
        self,
        start: float,
        end: float,
        *,
        at: float,
        text: str,
        edge: float | None = None,
        spill: Literal["left", "right"] = "right",
    ) -> None:
        """Horizontal dimension between two x at the height `at`.

        Extension lines come from the height `edge`. Text that does not fit between them goes
        beside them, on the side `spill`.
        """
        self.line((start, end), (at, at), color=SOFT, linewidth=_THIN)
        for x in (start, end):
            self._tick(x, at)
            if edge is not None:
                self._extension((x, x), (edge, at))
        label = self.text(
            (start + end) / 2.0, at + self.points(2.0), text, va="bottom", fontsize=SMALL
        )
        if self._extent(label)[0] > abs(end - start) - self.points(3.0):
            beyond = max(start, end) if spill == "right" else min(start, end)
            sign = 1.0 if spill == "right" else -1.0
            label.set(
                x=beyond + sign * self.points(5.0),
                y=at,
                ha="left" if spill == "right" else "right",
                va="center",
            )
            self._ground(label)

    def upright(
        self,
        start: float,
        end: float,
        *,
        at: float,
        text: str,
        edge: float | None = None,
        side: Literal["left", "right"] = "left",
    ) -> None:
        """Vertical dimension between two y at the position `at`, read from the right.

        Text that does not fit along the line stands level on the given side.
        """
        self.line((at, at), (start, end), color=SOFT, linewidth=_THIN)
        for y in (start, end):
            self._tick(at, y)
            if edge is not None:
                self._extension((edge, at), (y, y))
        label = self.text(
            at - self.points(2.0),
            (start + end) / 2.0,
            text,
            rotation=90.0,
            ha="right",
            fontsize=SMALL,
        )
        if self._extent(label)[1] > abs(end - start) - self.points(3.0):
            sign = 1.0 if side == "right" else -1.0
            label.set(x=at + sign * self.points(4.0), rotation=0.0)
            label.set_horizontalalignment("left" if side == "right" else "right")
            self._ground(label)

    def _tick(self, x: float, y: float) -> None:
        reach = self.points(_TICK) / 2.0
        self.line((x - reach, x + reach), (y - reach, y + reach), color=INK, linewidth=0.9)

    def _extension(self, x: tuple[float, float], y: tuple[float, float]) -> None:
        """From a little off the object to a little beyond the dimension line."""
        gap = self.points(_GAP)

        def stretched(ends: tuple[float, float]) -> tuple[float, float]:
            if ends[0] == ends[1]:
                return ends
            sign = 1.0 if ends[1] > ends[0] else -1.0
            return ends[0] + sign * gap, ends[1] + sign * gap

        self.line(stretched(x), stretched(y), color=SOFT, linewidth=0.4)

    def _ground(self, label: Text) -> None:
        label.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8})
        label.set_zorder(7)

    def _extent(self, label: Text) -> tuple[float, float]:
        """Width and height of a text [mm]."""
        box = label.get_window_extent()
        per_pixel = self.scale * _POINTS / self.figure.dpi
        return box.width * per_pixel, box.height * per_pixel
