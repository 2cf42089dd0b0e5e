"""Vertical section through the repair: footing, column, sleeve, grout, added and fractured bars."""

from __future__ import annotations

from typing import Final

from jacketcheck.figures.damaged_bars import BAR, damaged_states, draw_state
from jacketcheck.figures.drafting import block, break_line
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.sheet import Padding, Sheet
from jacketcheck.figures.style import (
    CONCRETE,
    GROUT,
    INK,
    PAPER,
    PLATE,
    SLEEVE,
    styled,
)
from jacketcheck.figures.words import length_text
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["vertical_section"]

_FOOTING: Final = "#cfccc3"


@styled
def vertical_section(jacket: Jacket, *, system: DisplaySystem) -> Drawing:
    """Draw a section through the column's axis; one design.

    Parameters
    ----------
    jacket
        The jacket.
    system
        Units of the dimensions.

    Returns
    -------
    Drawing
        To scale. A whole bar stands on the left, one for each state of damage on the right,
        whatever their places around the column, with every height of damage marked.
    """
    top = float(jacket.repair_height)
    outer = float(jacket.outer_diameter) / 2.0
    high, low = top + 0.28 * float(jacket.column.diameter), -_depth(jacket)
    sheet = Sheet(
        (-1.18 * outer, 1.18 * outer),
        (low, high),
        padding=Padding(left=96.0, right=104.0, bottom=14.0, top=12.0),
        width=7.0,
        tallest=5.2,
    )
    _ground(sheet, jacket, low, high)
    _sleeve(sheet, jacket)
    _bars(sheet, jacket, low, high)
    _left(sheet, jacket, outer, system)
    _right(sheet, jacket, outer, system)
    return Drawing(
        name="vertical-section",
        title="Vertical section through the repair",
        alt=_alt(jacket, system),
        figure=sheet.figure,
        remark="Through the column's axis, to scale. On the left one bar stands for all whole "
        "ones, on the right one for each state of damage, with every height at which it was found.",
    )


def _depth(jacket: Jacket) -> float:
    """How much of the footing is drawn [mm]."""
    depth = None if jacket.footing is None else jacket.footing.depth
    if depth is not None:
        return float(depth)
    embedment = 0.0 if jacket.added_bars is None else float(jacket.added_bars.embedment)
    return max(1.25 * embedment, 0.3 * float(jacket.column.diameter))


def _ground(sheet: Sheet, jacket: Jacket, low: float, high: float) -> None:
    radius, top = float(jacket.column.radius), float(jacket.repair_height)
    inner = float(jacket.sleeve.inner_radius)
    wide = 1.18 * float(jacket.outer_diameter) / 2.0
    sheet.add([block((-wide, wide), (low, 0.0), facecolor=_FOOTING, edgecolor="none")])
    sheet.line((-wide, wide), (0.0, 0.0), linewidth=1.2)
    sheet.add([block((-inner, inner), (0.0, top), facecolor=GROUT, linewidth=0.6)])
    sheet.add([block((-radius, radius), (0.0, high), facecolor=CONCRETE, edgecolor="none")])
    for x in (-radius, radius):
        sheet.line((x, x), (0.0, high), linewidth=0.8)
    for x in (-wide, wide):
        break_line(sheet, (x, x), (low, 0.0))
    break_line(sheet, (-radius, radius), (high, high))
    known = jacket.footing is not None and jacket.footing.depth is not None
    (sheet.line if known else lambda x, y: break_line(sheet, x, y))((-wide, wide), (low, low))
    sheet.text(-0.35 * radius, low / 2.0, "footing", color=INK)
    sheet.text(-0.35 * radius, 0.45 * top, "column", color=INK)


def _sleeve(sheet: Sheet, jacket: Jacket) -> None:
    inner, outer = float(jacket.sleeve.inner_radius), float(jacket.outer_diameter) / 2.0
    height = (float(jacket.sleeve.gap), float(jacket.sleeve.gap) + float(jacket.sleeve.height))
    for side in ((-outer, -inner), (inner, outer)):
        sheet.add([block(side, height, facecolor=SLEEVE)])


def _bars(sheet: Sheet, jacket: Jacket, low: float, high: float) -> None:
    radius = float(jacket.column.layer.circle_radius)
    sheet.line((-radius, -radius), (0.7 * low, high), **BAR)
    states = list(damaged_states(jacket))
    for one in states:
        draw_state(sheet, one, one.place * radius, low=0.7 * low, high=high)
    if not states:
        sheet.line((radius, radius), (0.7 * low, high), **BAR)
    if jacket.added_bars is None:
        return
    added = jacket.added_bars
    circle, hole = float(added.layer.circle_radius), float(added.hole_diameter) / 2.0
    half = max(float(added.layer.diameter) / 2.0, sheet.points(1.3))
    for x in (-circle, circle):
        bottom = -float(added.embedment)
        how = {"facecolor": PAPER, "edgecolor": INK, "linewidth": 0.5}
        sheet.add([block((x - hole, x + hole), (bottom, 0.0), **how)])
        ends = (bottom, float(added.height))
        sheet.add([block((x - half, x + half), ends, facecolor=PLATE, linewidth=0.6, zorder=6)])


def _left(sheet: Sheet, jacket: Jacket, outer: float, system: DisplaySystem) -> None:
    """Gap, sleeve and height of the repair; depth of the footing."""
    edge, x = -outer, -1.18 * outer
    gap, top = float(jacket.sleeve.gap), float(jacket.repair_height)
    sleeve_top = gap + float(jacket.sleeve.height)
    near, far = x - sheet.points(10.0), x - sheet.points(72.0)
    sleeve = f"sleeve {length_text(jacket.sleeve.height, system)}"
    sheet.upright(gap, sleeve_top, at=near, text=sleeve, edge=edge)
    sheet.upright(0.0, top, at=far, text=f"repair {length_text(top, system)}", edge=edge)
    if gap > 0.0:
        sheet.upright(0.0, gap, at=near, text=f"gap {length_text(gap, system)}", edge=edge)
    if jacket.footing is not None and jacket.footing.depth is not None:
        depth = float(jacket.footing.depth)
        text = f"footing {length_text(depth, system)}"
        sheet.upright(-depth, 0.0, at=far, text=text, edge=x)


def _right(sheet: Sheet, jacket: Jacket, outer: float, system: DisplaySystem) -> None:
    """Added bars, damage of the column's bars, and the hinge above the repair."""
    x = 1.18 * outer + sheet.points(24.0)
    if jacket.added_bars is not None:
        added = jacket.added_bars
        for start, end, what in (
            (0.0, float(added.height), "added bars"),
            (-float(added.embedment), 0.0, "embedment"),
        ):
            text = f"{what} {length_text(end - start, system)}"
            sheet.upright(start, end, at=x, text=text, edge=float(added.layer.circle_radius))
    top = float(jacket.repair_height)
    hinge = (float(jacket.column.radius), top + sheet.points(9.0))
    where = 1.18 * outer + sheet.points(6.0)
    sheet.note(hinge, (where, top + sheet.points(16.0)), "relocated hinge")
    radius, level = float(jacket.column.layer.circle_radius), -sheet.points(34.0)
    for one in damaged_states(jacket):
        spot = (one.place * radius + sheet.points(5.0), max(one.at))
        level = max(level + sheet.points(34.0), spot[1])
        sheet.note(spot, (x + sheet.points(14.0), level), one.caption(system))


def _alt(jacket: Jacket, system: DisplaySystem) -> str:
    sleeve = jacket.sleeve
    sentences = [
        (
            f"Repair {length_text(jacket.repair_height, system)} high at the base of a column of "
            f"{length_text(jacket.column.diameter, system)}: a sleeve "
            f"{length_text(sleeve.height, system)} high stands "
            f"{length_text(sleeve.gap, system)} above the footing, with "
            f"{length_text(jacket.grout.thickness, system)} of grout inside."
        )
    ]
    if jacket.added_bars is not None:
        added = jacket.added_bars
        sentences.append(
            f"Added bars {added.layer.size} reach {length_text(added.height, system)} above "
            f"the footing and {length_text(added.embedment, system)} into it."
        )
    sentences += [one.sentence(system) for one in damaged_states(jacket)]
    sentences.append("The relocated hinge forms right above the repair.")
    return " ".join(sentences)
