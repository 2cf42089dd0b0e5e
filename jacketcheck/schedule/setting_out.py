"""The schedule's lines on rolling the shells and on where the seams stand."""

from __future__ import annotations

import math
from typing import Final

from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.schedule.records import ScheduleLine, ScheduleSection, Verdict

__all__ = ["bars_behind_seams", "setting_out_section"]

_GEOMETRY: Final = "geometry"
_COLD_STRAIN: Final = 0.05
_COLD_SOURCE: Final = (
    "as ASME BPVC Section VIII Division 1 UCS-79, 5 % without heat treatment (from memory; "
    "engineering judgement: a jacket is no vessel)"
)


def setting_out_section(jacket: Jacket) -> ScheduleSection:
    """Cold strain of the plates, and bars behind the seams."""
    return ScheduleSection("Rolling and setting out", (_rolling(jacket), _seams(jacket)))


def _rolling(jacket: Jacket) -> ScheduleLine:
    """Strain of the outer fibre of the plate that is bent most for its radius."""
    sleeve, splice = jacket.sleeve, jacket.splice
    inside, wall = float(sleeve.inner_radius), float(sleeve.thickness)
    plies = [(wall, inside), (float(splice.outside_thickness), inside + wall)]
    if (inner := float(splice.inside_thickness)) > 0.0:
        plies.append((inner, inside - inner))
    strain = max(thickness / (2.0 * radius + thickness) for thickness, radius in plies)
    good = strain <= _COLD_STRAIN
    return ScheduleLine(
        "strain of cold rolling, outer fibre",
        strain,
        "1",
        _COLD_SOURCE,
        f"t/(2 R) with R at mid-thickness, at most {_COLD_STRAIN:g}",
        "roll to the radius of the flat patterns; check with a template at edges and middle"
        if good
        else "too tight a radius for cold rolling: roll hot, or take thinner plates",
        Verdict.OK if good else Verdict.PROBLEM,
    )


def bars_behind_seams(jacket: Jacket) -> tuple[ColumnBar, ...]:
    """Bars that count as fractured and stand behind a splice plate."""
    half_width = float(jacket.splice.width) / 2.0 / float(jacket.sleeve.inner_radius)

    def behind(bar: ColumnBar) -> bool:
        # seams lie opposite each other
        off = (bar.angle - float(jacket.sleeve.seam_angle)) % math.pi
        return min(off, math.pi - off) <= half_width + 1e-9

    return tuple(
        bar for bar in jacket.column.bars if counts_as_fractured(bar, jacket) and behind(bar)
    )


def _seams(jacket: Jacket) -> ScheduleLine:
    names = ", ".join(str(bar.number) for bar in bars_behind_seams(jacket))
    note = "a seam gives before the wall does: turn the seams (sleeve.seam_angle) away from them"
    return ScheduleLine(
        "fractured bars behind a seam",
        names or "none",
        "",
        _GEOMETRY,
        "within half the width of a splice plate",
        note if names else "",
    )
