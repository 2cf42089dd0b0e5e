"""Symbols of bars in plan; they differ in shape and filling, not in colour."""

from __future__ import annotations

import math
from typing import Final

from matplotlib.patches import Circle, Patch, PathPatch, Polygon, Wedge
from matplotlib.path import Path

from jacketcheck.figures.style import INK, PAPER, PLATE
from jacketcheck.inputs.column import BarState

__all__ = ["STATE_WORDS", "added_bar_symbol", "bar_symbol"]

STATE_WORDS: Final[dict[BarState, str]] = {
    "intact": "intact",
    "yielded": "yielded",
    "buckled": "buckled",
    "fractured": "fractured",
}
"""States from the best to the worst."""

_EDGE: Final = {"edgecolor": INK, "linewidth": 0.8, "zorder": 6}


def bar_symbol(x: float, y: float, radius: float, state: BarState) -> list[Patch]:
    """Shapes of one column bar: a ring; with a dot; half full; full with a gap across."""
    ring = Circle((x, y), radius, facecolor=PAPER, **_EDGE)
    if state == "intact":
        return [ring]
    if state == "yielded":
        return [ring, Circle((x, y), 0.36 * radius, facecolor=INK, edgecolor="none", zorder=7)]
    if state == "buckled":
        half = Wedge((x, y), radius, 90.0, 270.0, facecolor=INK, edgecolor="none", zorder=7)
        return [ring, half]
    full = Circle((x, y), radius, facecolor=INK, **_EDGE)
    reach = 1.05 * radius * math.sqrt(0.5)
    path = Path([(x - reach, y - reach), (x + reach, y + reach)])
    gap = PathPatch(path, edgecolor=PAPER, linewidth=1.8, facecolor="none", zorder=7)
    return [full, gap]


def added_bar_symbol(x: float, y: float, radius: float) -> list[Patch]:
    """Shape of one added bar: a square on its corner."""
    reach = 1.25 * radius
    corners = [(x, y + reach), (x + reach, y), (x, y - reach), (x - reach, y)]
    return [Polygon(corners, closed=True, facecolor=PLATE, **_EDGE)]
