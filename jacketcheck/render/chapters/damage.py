"""Damage: every bar with its state, those that are alike in one row."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.damaged_bars import counts_as_fractured
from jacketcheck.jacket.column_parts import ColumnBar
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.render.numbers import MISSING, number_ranges, quantity_text
from jacketcheck.render.report_parts import Chapter, Column, Paragraph, Table
from jacketcheck.report import CheckReport
from jacketcheck.units import DisplaySystem

__all__ = ["damage"]

_HEADINGS = (
    "bars", "clock", "state", "height of damage", "crack along the bar", "spalled depth", "surface",
    "counted as",
)  # fmt: skip


def damage(report: CheckReport, *, system: DisplaySystem) -> Chapter:
    """States of the bars; variants with the same states share a table."""
    shared: dict[tuple[tuple[str, ...], ...], list[str]] = {}
    for table in report.tables:
        names = shared.setdefault(_rows(table.jacket, system), [])
        if table.variant not in names:
            names.append(table.variant)
    several = len(shared) > 1
    blocks: list[Paragraph | Table] = [
        Paragraph(
            "Bar 1 stands at the first angle of the input; numbers and clock positions run "
            "clockwise, seen from above. Heights are above the footing."
        )
    ]
    for rows, names in shared.items():
        caption = "Bars and their states"
        if several:
            caption += f": variant{'s' if len(names) > 1 else ''} {', '.join(names)}"
        blocks.append(Table(caption, tuple(Column(text) for text in _HEADINGS), rows))
    return Chapter("Damage and bar states", "damage", tuple(blocks))


def _rows(jacket: Jacket, system: DisplaySystem) -> tuple[tuple[str, ...], ...]:
    groups: dict[tuple[str, ...], list[ColumnBar]] = {}
    for bar in jacket.column.bars:
        groups.setdefault(_state(bar, jacket, system), []).append(bar)
    worst_first = sorted(groups.items(), key=lambda group: group[0][-1] == _WHOLE)
    return tuple(
        (
            number_ranges([bar.number for bar in bars]),
            ", ".join(_clock(bar.angle) for bar in bars) if len(bars) <= 6 else MISSING,
            *state,
        )
        for state, bars in worst_first
    )


_WHOLE = "whole"


def _state(bar: ColumnBar, jacket: Jacket, system: DisplaySystem) -> tuple[str, ...]:
    recorded = bool(bar.record)
    lengths = [
        quantity_text(value, "mm", system) if recorded else MISSING
        for value in (bar.damage_height, bar.crack_width, bar.spalling_depth)
    ]
    counted = "anchored by bond alone" if counts_as_fractured(bar, jacket) else _WHOLE
    return (bar.state, *lengths, bar.surface, counted)


def _clock(angle: float) -> str:
    minutes = round(angle / (2.0 * np.pi) * 720.0) % 720
    hour, minute = divmod(int(minutes), 60)
    return f"{hour or 12}:{minute:02d}"
