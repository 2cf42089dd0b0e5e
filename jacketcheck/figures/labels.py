"""Names written beside lines, so that no legend has to be matched with them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from matplotlib.axes import Axes

from jacketcheck.figures.style import INK, SMALL, SOFT

__all__ = ["LineEnd", "Mark", "name_line_ends", "name_positions", "spread"]

_LINE_HEIGHT = 10.0
_SPACE = 3.0
_POINTS = 72.0


class LineEnd(NamedTuple):
    """Where a line ends, and its name; x and y in the units of the axes."""

    x: float
    y: float
    text: str
    color: str = INK


class Mark(NamedTuple):
    """A position along the horizontal axis, and its name."""

    x: float
    text: str
    color: str = INK


def spread(wanted: Sequence[float], sizes: Sequence[float], *, low: float) -> list[float]:
    """Centres of things in a row that must not overlap, near where they belong.

    Parameters
    ----------
    wanted
        Where each centre belongs, in any order.
    sizes
        Size of each thing along the row.
    low
        Where the row begins.

    Examples
    --------
    >>> spread([5.0, 5.0, 20.0], [4.0, 4.0, 4.0], low=0.0)
    [3.0, 7.0, 20.0]
    """
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    # runs of things that touch: [members, their sizes, where the run would be centred]
    runs: list[list[int]] = []
    starts: list[float] = []

    def start_of(run: list[int]) -> float:
        offsets = np.cumsum([0.0, *(sizes[one] for one in run)])
        own = [
            wanted[one] - sizes[one] / 2.0 - offset
            for one, offset in zip(run, offsets, strict=False)
        ]
        return max(float(np.mean(own)), low)

    def end_of(index: int) -> float:
        return starts[index] + sum(sizes[one] for one in runs[index])

    for one in order:
        runs.append([one])
        starts.append(start_of([one]))
        while len(runs) > 1 and end_of(-2) > starts[-1]:
            last = runs.pop()
            starts.pop()
            runs[-1] += last
            starts[-1] = start_of(runs[-1])
    centres = [0.0] * len(wanted)
    for run, start in zip(runs, starts, strict=True):
        at = start
        for one in run:
            centres[one] = at + sizes[one] / 2.0
            at += sizes[one]
    return centres


def name_line_ends(axes: Axes, ends: Sequence[LineEnd]) -> None:
    """Write each name on the right of the axes, at the height where its line ends.

    A thin leader joins the two where the name had to give way to another, or the line ends early.
    """
    if not ends:
        return
    height, width = _size(axes)
    to_points = axes.transData + axes.transAxes.inverted()
    spots = [to_points.transform((one.x, one.y)) for one in ends]
    sizes = [_LINE_HEIGHT * (one.text.count("\n") + 1) + _SPACE for one in ends]
    centres = spread([spot[1] * height for spot in spots], sizes, low=0.0)
    for one, (x, y), centre in zip(ends, spots, centres, strict=True):
        target = centre / height
        corners = [(x, y), (1.0, y), (1.0 + 8.0 / width, target), (1.0 + 11.0 / width, target)]
        axes.plot(
            [corner[0] for corner in corners],
            [corner[1] for corner in corners],
            transform=axes.transAxes,
            color=SOFT,
            linewidth=0.5,
            clip_on=False,
            zorder=1.5,
        )
        axes.text(
            1.0 + 13.0 / width,
            target,
            one.text,
            transform=axes.transAxes,
            color=one.color,
            fontsize=SMALL,
            va="center",
            ha="left",
        )


def name_positions(axes: Axes, marks: Sequence[Mark], *, down: bool = True) -> None:
    """Write names above the axes, each over its position.

    A thin line goes down from each through the axes, or only to their upper edge.
    """
    if not marks:
        return
    height, width = _size(axes)
    to_axes = axes.transData + axes.transAxes.inverted()
    xs = [float(to_axes.transform((one.x, 0.0))[0]) for one in marks]
    texts = [
        axes.text(
            x, 1.0, one.text, transform=axes.transAxes, fontsize=SMALL, ha="center", va="bottom"
        )
        for x, one in zip(xs, marks, strict=True)
    ]
    figure = axes.figure
    per_pixel = _POINTS / figure.dpi
    sizes = [text.get_window_extent().width * per_pixel + 8.0 for text in texts]
    centres = spread([x * width for x in xs], sizes, low=-20.0)
    for one, x, text, centre in zip(marks, xs, texts, centres, strict=True):
        text.set_x(centre / width)
        text.set_color(one.color)
        text.set_y(1.0 + 12.0 / height)
        axes.plot(
            [x, x, centre / width],
            [0.0 if down else 1.0, 1.0 + 1.0 / height, 1.0 + 10.0 / height],
            transform=axes.transAxes,
            color=SOFT,
            linewidth=0.6,
            dashes=(1.0, 2.0),
            clip_on=False,
            zorder=1.6,
        )


def _size(axes: Axes) -> tuple[float, float]:
    """Height and width of the axes [points]."""
    box = axes.get_window_extent()
    per_pixel = _POINTS / axes.figure.dpi
    return box.height * per_pixel, box.width * per_pixel
