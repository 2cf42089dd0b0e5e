"""Plan of the jacket: column, bars by state, grout, sleeve, seams and added bars."""

from __future__ import annotations

import math
from collections.abc import Iterator
from textwrap import wrap
from typing import Any, Final

from matplotlib.patches import Patch, Rectangle

from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.figures.bar_symbols import STATE_WORDS, added_bar_symbol, bar_symbol
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.ring import place, radial_block, sector
from jacketcheck.figures.seam_geometry import seam_geometry
from jacketcheck.figures.sheet import Padding, Sheet
from jacketcheck.figures.style import (
    CONCRETE,
    GROUT,
    INK,
    PAPER,
    PLATE,
    SLEEVE,
    SMALL,
    SOFT,
    styled,
)
from jacketcheck.figures.words import joined, length_text
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.render.numbers import number_ranges
from jacketcheck.units import DisplaySystem

__all__ = ["plan"]

_FULL: Final = 2.0 * math.pi
_MOST_NUMBERS: Final = 48
_KEY_WIDTH: Final = 150.0
_KEY_CHARACTERS: Final = 27
_CRACKED: Final = {"facecolor": CONCRETE, "edgecolor": SOFT, "hatch": "xxxx", "linewidth": 0.6}
_FREED: Final = {
    "facecolor": GROUT,
    "edgecolor": SOFT,
    "linewidth": 0.6,
    "linestyle": (0.0, (3.0, 1.5)),
}


@styled
def plan(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw the plan; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the dimensions.

    Returns
    -------
    Drawing
        Seen from above, 12 o'clock at the top, to scale.
    """
    reach = float(jacket.outer_diameter) / 2.0 + seam_geometry(jacket).outside_reach
    sheet = Sheet(
        (-reach, reach),
        (-reach, reach),
        padding=Padding(left=24.0, right=24.0 + _KEY_WIDTH, bottom=56.0, top=20.0),
        width=7.0,
        tallest=5.0,
    )
    _concrete(sheet, jacket)
    _steel(sheet, jacket)
    _bars(sheet, jacket)
    _clock(sheet, reach)
    _dimensions(sheet, jacket, reach, system)
    _key(sheet, jacket, reach)
    return Drawing(
        "plan", "Plan of the jacket with bars by state", _alt(jacket, system), sheet.figure
    )


def _concrete(sheet: Sheet, jacket: Jacket) -> None:
    column = jacket.column
    outline = {"edgecolor": INK, "linewidth": 0.8}
    sleeve = float(jacket.sleeve.inner_radius)
    sheet.add([sector(0.0, _FULL, 0.0, sleeve, facecolor=GROUT, edgecolor="none")])
    sheet.add([sector(0.0, _FULL, 0.0, float(column.radius), facecolor=CONCRETE, **outline)])
    core = float(column.ties.core_diameter) / 2.0
    inside = float(column.layer.circle_radius) - float(column.layer.diameter)
    for first, count in _runs(jacket):
        how = _FREED if first.surface == "chipped" else _CRACKED
        spacing = _FULL / len(column.bars)
        start = first.angle - spacing / 2.0
        sheet.add([sector(start, count * spacing, inside, float(column.radius), **how)])
    ring = sector(0.0, _FULL, core, core, facecolor="none", edgecolor=SOFT, linewidth=0.7)
    ring.set_linestyle((0.0, (5.0, 1.5)))
    sheet.add([ring])


def _runs(jacket: Jacket) -> list[tuple[ColumnBar, int]]:
    """Neighbouring bars that must be anchored again and have the same surface: first, and count."""
    bars = jacket.column.bars
    marks = [bar.surface if counts_as_fractured(bar, jacket) else "" for bar in bars]
    starts = [index for index, mark in enumerate(marks) if mark and mark != marks[index - 1]]
    if not starts and marks[0]:
        starts = [0]  # all around
    runs = []
    for start in starts:
        count = 1
        while count < len(bars) and marks[(start + count) % len(bars)] == marks[start]:
            count += 1
        runs.append((bars[start], count))
    return runs


def _steel(sheet: Sheet, jacket: Jacket) -> None:
    sleeve, splice = jacket.sleeve, jacket.splice
    seam = seam_geometry(jacket)
    inner, outer = float(sleeve.inner_radius), float(jacket.outer_diameter) / 2.0
    outline = {"edgecolor": INK, "linewidth": 0.5}
    for start in (float(sleeve.seam_angle), float(sleeve.seam_angle) + math.pi):
        gap = seam.half_gap / inner
        shell = sector(start + gap, math.pi - 2.0 * gap, inner, outer, facecolor=SLEEVE, **outline)
        half = seam.half_width / inner
        plates = [(outer, outer + float(splice.outside_thickness))]
        if float(splice.inside_thickness) > 0.0:
            plates.append((inner - float(splice.inside_thickness), inner))
        sheet.add([shell])
        sheet.add(
            sector(start - half, 2.0 * half, low, high, facecolor=PLATE, **outline)
            for low, high in plates
        )
        for line in seam.bolt_lines:
            for sign in (-1.0, 1.0):
                sheet.add(_bolt(jacket, start + sign * line / inner))


def _bolt(jacket: Jacket, clock: float) -> Iterator[Patch]:
    bolts, seam = jacket.bolts, seam_geometry(jacket)
    inner = float(jacket.sleeve.inner_radius) - seam.inside_reach
    outer = float(jacket.outer_diameter) / 2.0 + seam.outside_reach
    head = float(bolts.head_height)
    how = {"facecolor": INK, "edgecolor": PAPER, "linewidth": 0.25, "zorder": 5}
    yield radial_block(clock, inner, outer, float(bolts.diameter), **how)
    yield radial_block(clock, inner, inner + head, float(bolts.nut_width), **how)
    yield radial_block(clock, outer - head, outer, float(bolts.nut_width), **how)


def _bars(sheet: Sheet, jacket: Jacket) -> None:
    layer, bars = jacket.column.layer, jacket.column.bars
    radius = float(layer.circle_radius)
    size = max(float(layer.diameter) / 2.0, sheet.points(3.6))
    for bar in bars:
        sheet.add(bar_symbol(*place(bar.angle, radius), size, bar.state))
        if bar.state != "intact" or bar.number == 1 or len(bars) <= _MOST_NUMBERS:
            x, y = place(bar.angle, radius - size - sheet.points(9.5))
            weight = "normal" if bar.state == "intact" else "bold"
            sheet.text(x, y, str(bar.number), fontsize=SMALL, fontweight=weight)
    if jacket.added_bars is not None:
        added = jacket.added_bars.layer
        for index in range(int(added.count)):
            clock = float(added.first_angle) + _FULL * index / int(added.count)
            where = place(clock, float(added.circle_radius))
            sheet.add(added_bar_symbol(*where, max(float(added.diameter) / 2.0, sheet.points(2.8))))


def _clock(sheet: Sheet, reach: float) -> None:
    for hour in (12, 3, 6, 9):
        clock = hour / 12.0 * _FULL
        near, far = place(clock, reach + sheet.points(3.0)), place(clock, reach + sheet.points(8.0))
        sheet.line((near[0], far[0]), (near[1], far[1]), color=SOFT, linewidth=0.7)
        x, y = place(clock, reach + sheet.points(15.0))
        sheet.text(x, y, str(hour), fontsize=SMALL, color=SOFT)


def _dimensions(sheet: Sheet, jacket: Jacket, reach: float, system: DisplaySystem) -> None:
    column, sleeve = float(jacket.column.radius), float(jacket.sleeve.inner_radius)
    for level, (radius, what) in enumerate(((column, "column"), (sleeve, "sleeve inside"))):
        sheet.across(
            -radius,
            radius,
            at=-reach - sheet.points(34.0 + 15.0 * level),
            text=f"{what} {length_text(2.0 * radius, system)}",
        )


def _key(sheet: Sheet, jacket: Jacket, reach: float) -> None:
    """Symbols with their meaning and the bars that they stand for, right of the plan."""
    x, y = reach + sheet.points(40.0), reach - sheet.points(6.0)
    size = sheet.points(4.2)
    for state, word in STATE_WORDS.items():
        bars = jacket.column.in_state(state)
        if bars:
            sheet.add(bar_symbol(x, y, size, state))
            which = f"{len(bars)} bars" if state == "intact" else _numbers(bars)
            text = "\n".join(wrap(f"{word}: {which}", _KEY_CHARACTERS))
            if state == "buckled" and counts_as_fractured(bars[0], jacket):
                text += "\n(counted as fractured)"
            y -= _entry(sheet, x, y, text)
    if jacket.added_bars is not None:
        added = jacket.added_bars.layer
        sheet.add(added_bar_symbol(x, y, size))
        y -= _entry(sheet, x, y, f"added: {int(added.count)} bars {added.size}")
    y -= sheet.points(6.0)
    for how, text in _areas(jacket):
        sheet.add([_swatch(sheet, x, y, how)])
        y -= _entry(sheet, x, y, text)


def _areas(jacket: Jacket) -> Iterator[tuple[dict[str, Any], str]]:
    surfaces = {bar.surface for bar in jacket.column.bars if counts_as_fractured(bar, jacket)}
    if "chipped" in surfaces:
        yield _FREED, "chipped free, filled\nwith grout"
    if "unchipped" in surfaces:
        yield _CRACKED, "cracked concrete\nleft in place"
    plain: dict[str, Any] = {"edgecolor": INK, "linewidth": 0.6}
    yield {**plain, "facecolor": CONCRETE}, "column"
    yield {**plain, "facecolor": GROUT}, "grout"
    yield {**plain, "facecolor": SLEEVE}, "half-shells of the sleeve"
    yield {**plain, "facecolor": PLATE}, "splice plates"


def _swatch(sheet: Sheet, x: float, y: float, how: dict[str, Any]) -> Patch:
    half = sheet.points(4.5)
    return Rectangle((x - 1.3 * half, y - half), 2.6 * half, 2.0 * half, **how)


def _entry(sheet: Sheet, x: float, y: float, text: str) -> float:
    lines = text.count("\n") + 1
    sheet.text(
        x + sheet.points(12.0), y - sheet.points(4.6 * (lines - 1)), text, ha="left", fontsize=SMALL
    )
    return sheet.points(8.0 + 9.6 * lines)


def _numbers(bars: tuple[ColumnBar, ...]) -> str:
    return number_ranges([bar.number for bar in bars])


def _alt(jacket: Jacket, system: DisplaySystem) -> str:
    column, sleeve, bolts = jacket.column, jacket.sleeve, jacket.bolts
    states = []
    for state, word in STATE_WORDS.items():
        bars = column.in_state(state)
        if bars:
            plural = "s" if len(bars) > 1 else ""
            which = "" if state == "intact" else f" (bar{plural} {_numbers(bars)})"
            states.append(f"{len(bars)} {word}{which}")
    angle = math.degrees(float(sleeve.seam_angle))
    sentences = [
        (
            f"Plan seen from above, to scale: column of {length_text(column.diameter, system)} "
            f"diameter with {len(column.bars)} bars {column.layer.size}: {joined(states)}."
        ),
        (
            f"Around it {length_text(jacket.grout.thickness, system)} of grout and a sleeve of "
            f"{length_text(sleeve.thickness, system)} plate with an inside diameter of "
            f"{length_text(sleeve.inner_diameter, system)}, in two half-shells joined at "
            f"{angle:g}° and {angle + 180.0:g}° clockwise from 12 o'clock, each side with "
            f"{int(bolts.columns)} lines of bolts."
        ),
    ]
    if jacket.added_bars is not None:
        added = jacket.added_bars.layer
        circle = f"a circle of {length_text(2.0 * float(added.circle_radius), system)}"
        sentences.append(
            f"{int(added.count)} added bars {added.size} stand in the grout on {circle}."
        )
    surfaces = {bar.surface for bar in column.bars if counts_as_fractured(bar, jacket)}
    if surfaces:
        how = {"chipped": "chipped free", "unchipped": "left in cracked concrete"}
        sentences.append(f"Fractured bars are {joined([how[one] for one in sorted(surfaces)])}.")
    return " ".join(sentences)
