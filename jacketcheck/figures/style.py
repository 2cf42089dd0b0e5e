"""The look of every figure: restrained, and as readable in grey as in colour.

Nothing is told by colour alone: lines differ in dashes and carry their names, areas differ in
lightness and hatching. Settings hold inside `styled` only, so that neither a user's own settings
nor these leak into the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import wraps
from typing import Any, Final, NamedTuple, ParamSpec, TypeVar

import matplotlib.style
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

__all__ = [
    "CONCRETE",
    "FAINT",
    "FONT_SIZE",
    "GROUT",
    "INK",
    "LINES",
    "PAPER",
    "PLATE",
    "SLEEVE",
    "SMALL",
    "SOFT",
    "WARNING",
    "LineStyle",
    "chart",
    "drawing_area",
    "new_figure",
    "styled",
]

INK: Final = "#1c242b"
"""Outlines, text and what matters most."""
SOFT: Final = "#55606a"
"""Secondary lines and texts; dark enough for small print."""
FAINT: Final = "#dfe3e6"
PAPER: Final = "#ffffff"
CONCRETE: Final = "#dcdad3"
GROUT: Final = "#f3f1ea"
SLEEVE: Final = "#46586a"
PLATE: Final = "#90a1b1"
WARNING: Final = "#a83a14"
"""What exceeds its limit; never the only sign of it."""

FONT_SIZE: Final = 8.5
SMALL: Final = 7.5


class LineStyle(NamedTuple):
    """How one of several lines is drawn."""

    color: str
    dashes: str | tuple[float, tuple[float, ...]]
    marker: str


LINES: Final = (
    LineStyle("#17466b", "-", "o"),
    LineStyle("#b8561b", (0.0, (6.0, 2.0)), "s"),
    LineStyle("#5d6d1f", (0.0, (1.2, 1.6)), "^"),
    LineStyle("#7a4a86", (0.0, (7.0, 2.0, 1.2, 2.0)), "D"),
    LineStyle("#3d4650", (0.0, (3.0, 1.2)), "v"),
    LineStyle("#8c8f94", (0.0, (9.0, 2.0, 2.0, 2.0, 2.0, 2.0)), "P"),
)

_SETTINGS: Final[dict[str, Any]] = {
    "font.family": "sans-serif",
    "font.sans-serif": ["DejaVu Sans"],  # ships with the library, so that layouts do not vary
    "font.size": FONT_SIZE,
    "text.color": INK,
    "text.parse_math": False,  # a dollar sign in a name is a dollar sign
    "axes.edgecolor": SOFT,
    "axes.labelcolor": INK,
    "axes.linewidth": 0.8,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "axes.grid": True,
    "axes.axisbelow": True,
    "axes.formatter.useoffset": False,
    "axes.formatter.use_mathtext": False,
    "axes.unicode_minus": True,
    "grid.color": FAINT,
    "grid.linewidth": 0.6,
    "xtick.color": SOFT,
    "ytick.color": SOFT,
    "xtick.labelcolor": INK,
    "ytick.labelcolor": INK,
    "xtick.labelsize": SMALL,
    "ytick.labelsize": SMALL,
    "lines.linewidth": 1.7,
    "lines.solid_capstyle": "butt",
    "hatch.linewidth": 0.5,
    "patch.linewidth": 0.8,
    "svg.fonttype": "none",
    "svg.hashsalt": "jacketcheck",
}

Arguments = ParamSpec("Arguments")
Made = TypeVar("Made")


@contextmanager
def styled_context() -> Iterator[None]:
    """Settings of our own for as long as a figure is made or written, whatever was set before."""
    with matplotlib.style.context(["default", _SETTINGS]):
        yield


def styled(function: Callable[Arguments, Made]) -> Callable[Arguments, Made]:
    """Let a function make or write figures with the settings of this module."""

    @wraps(function)
    def call(*args: Arguments.args, **kwargs: Arguments.kwargs) -> Made:
        with styled_context():
            return function(*args, **kwargs)

    return call


def new_figure(width: float, height: float) -> Figure:
    """An empty figure of a size in inches, with a renderer that can measure text."""
    figure = Figure(figsize=(width, height))
    FigureCanvasAgg(figure)
    return figure


def _axes(figure: Figure, left: float, bottom: float, right: float, top: float) -> Axes:
    width, height = (float(size) for size in figure.get_size_inches())
    return figure.add_axes(
        (
            left / width,
            bottom / height,
            (width - left - right) / width,
            (height - bottom - top) / height,
        )
    )


def chart(
    figure: Figure,
    *,
    left: float = 0.72,
    bottom: float = 0.52,
    right: float = 0.2,
    top: float = 0.2,
) -> Axes:
    """Axes of a chart, with margins in inches."""
    return _axes(figure, left, bottom, right, top)


def drawing_area(
    figure: Figure,
    *,
    left: float = 0.05,
    bottom: float = 0.05,
    right: float = 0.05,
    top: float = 0.05,
) -> Axes:
    """Axes without frame and with equal scales, for what is drawn to scale; margins in inches."""
    axes = _axes(figure, left, bottom, right, top)
    axes.set_aspect("equal")
    axes.axis("off")
    return axes
