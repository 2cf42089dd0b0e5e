"""Horizontal dimensions of a seam, the same above its elevation and above its section."""

from __future__ import annotations

from jacketcheck.figures.seam_geometry import SeamGeometry
from jacketcheck.figures.sheet import Sheet
from jacketcheck.figures.words import length_text
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.units import DisplaySystem

__all__ = ["LEVELS_HEIGHT", "dimension_widths"]

_FIRST, _STEP, _LEVELS = 13.0, 18.0, 3
LEVELS_HEIGHT = _FIRST + _STEP * (_LEVELS - 1) + 14.0
"""Room that the dimensions take above the seam [points]."""


def dimension_widths(
    sheet: Sheet, jacket: Jacket, seam: SeamGeometry, *, top: float, system: DisplaySystem
) -> None:
    """Draw the dimensions from the height `top` upwards.

    Edge distances stand on the left, gauges and the gap on the right: both halves are alike, and
    so no text gets in the way of another.
    """
    bolts = jacket.bolts
    first, last = seam.bolt_lines[0], seam.bolt_lines[-1]

    def across(start: float, end: float, text: str, level: int, *, leftwards: bool = False) -> None:
        at = top + sheet.points(_FIRST + _STEP * level)
        sheet.across(start, end, at=at, text=text, edge=top, spill="left" if leftwards else "right")

    to_edge = length_text(bolts.plate_edge_distance, system)
    across(-seam.half_width, -last, to_edge, 0, leftwards=True)
    if last > first:
        spaces, gauge = len(seam.bolt_lines) - 1, length_text(bolts.gauge, system)
        across(first, last, f"{spaces} × {gauge}" if spaces > 1 else gauge, 0)
    across(-first, -seam.half_gap, length_text(bolts.seam_edge_distance, system), 1, leftwards=True)
    if seam.half_gap > 0.0:
        across(-seam.half_gap, seam.half_gap, length_text(jacket.sleeve.seam_gap, system), 1)
    across(-seam.half_width, seam.half_width, length_text(2.0 * seam.half_width, system), 2)
