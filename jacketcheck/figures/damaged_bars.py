"""Damaged column bars in the vertical section: one bar for each state, each at its own heights."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.figures.sheet import Sheet
from jacketcheck.figures.style import CONCRETE, INK, SOFT
from jacketcheck.figures.words import joined, length_text
from jacketcheck.inputs.column import BarState
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.render.numbers import number_ranges
from jacketcheck.units import DisplaySystem

__all__ = ["BAR", "DamagedState", "damaged_states", "draw_state"]

BAR: Final[dict[str, Any]] = {"color": INK, "linewidth": 1.6, "zorder": 5}
_PLACES: Final[dict[BarState, float]] = {"fractured": 1.0, "buckled": 0.66, "yielded": 0.33}
"""Where the bar of a state stands, as a share of the bars' circle; the worst one outermost."""


@dataclass(frozen=True, slots=True)
class DamagedState:
    """Bars of one state.

    Attributes
    ----------
    state
        What happened to them.
    place
        Share of the radius of the bars' circle at which they are drawn.
    at
        Numbers of the bars by height above the footing [mm], the lowest first.
    counted
        Whether the state counts as a fracture in this check.
    """

    state: BarState
    place: float
    at: dict[float, tuple[int, ...]]
    counted: bool

    def caption(self, system: DisplaySystem) -> str:
        """State and heights in lines that fit beside the section."""
        heights = [length_text(height, system) for height in self.at]
        where = "\nand ".join(heights) if len(heights) < 3 else f"{heights[0]}\nto {heights[-1]}"
        return f"{self.state}\nat {where}"

    def sentence(self, system: DisplaySystem) -> str:
        """Which bars, and where."""
        where = [
            f"bar{'s' if len(numbers) > 1 else ''} {number_ranges(numbers)} at "
            f"{length_text(height, system)}"
            for height, numbers in self.at.items()
        ]
        counted = ", counted as fractured" if self.counted and self.state != "fractured" else ""
        return f"{self.state.capitalize()}{counted}: {joined(where)} above the footing."


def damaged_states(jacket: Jacket) -> Iterator[DamagedState]:
    """States that occur, the worst first; one design."""
    for state, place in _PLACES.items():
        bars = jacket.column.in_state(state)
        heights = sorted({float(bar.damage_height) for bar in bars})
        at = {
            height: tuple(bar.number for bar in bars if float(bar.damage_height) == height)
            for height in heights
        }
        if at:
            yield DamagedState(state, place, at, any(counts_as_fractured(b, jacket) for b in bars))


def draw_state(sheet: Sheet, one: DamagedState, x: float, *, low: float, high: float) -> None:
    """One bar with the marks of its state: open where fractured, bowed where buckled, else dots.

    What lies below the lowest damage is lighter where it does not count any more.
    """
    reach = sheet.points(4.5)
    lowest = min(one.at)
    sheet.line((x, x), (lowest, high), **BAR)
    sheet.line((x, x), (low, lowest), **{**BAR, "color": SOFT if one.counted else INK})
    for height in one.at:
        if one.state == "fractured":
            _break(sheet, x, height, reach)
        elif one.state == "buckled":
            _bow(sheet, x, height, reach)
        else:
            sheet.line((x,), (height,), marker="o", markersize=4.5, color=INK, zorder=7)


def _break(sheet: Sheet, x: float, height: float, reach: float) -> None:
    half = reach / 2.0
    sheet.line((x, x), (height - half, height + half), color=CONCRETE, linewidth=2.4, zorder=6)
    for y in (height - half, height + half):
        sheet.line((x - reach, x + reach), (y - reach / 3.0, y + reach / 3.0), zorder=7)


def _bow(sheet: Sheet, x: float, height: float, reach: float) -> None:
    """A bulge to the outside over the straight bar, which is painted over there."""
    share = np.linspace(0.0, 1.0, 21)
    y = height + 5.0 * reach * (share - 0.5)
    sheet.line((x, x), (float(y[0]), float(y[-1])), color=CONCRETE, linewidth=2.4, zorder=6)
    bulge = x + 0.6 * reach * (1.0 - np.cos(2.0 * np.pi * share))
    sheet.line(tuple(bulge.tolist()), tuple(y.tolist()), **{**BAR, "zorder": 7})
