"""Demand/capacity ratios of one variant as bars."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap
from typing import Final

import numpy as np
from matplotlib.axes import Axes

from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.style import INK, PLATE, SMALL, WARNING, chart, new_figure, styled
from jacketcheck.figures.words import joined
from jacketcheck.inputs.written import printable
from jacketcheck.render.numbers import ratio_text
from jacketcheck.report import VariantResults
from jacketcheck.results import Kind, Result, Status
from jacketcheck.units import DisplaySystem

__all__ = ["ratios"]

_WIDEST: Final = 2.0
"""Ratio at which the axis ends; longer bars are cut and carry their number."""
_WIDEST_NAME: Final = 54
_ROW: Final = 0.185
_TALLEST: Final = 8.1
"""Height of all rows [in] at which the figure and its caption still fit a page."""


@styled
def ratios(table: VariantResults, *, system: DisplaySystem) -> Drawing:
    """Draw the worst ratio of every limit state; one design.

    Parameters
    ----------
    table
        Results of one variant.
    system
        Not used: ratios have no unit.

    Returns
    -------
    Drawing
        The governing limit state at the top; what exceeds 1 is hatched.
    """
    del system
    rows = _worst_of_each(table)
    figure = new_figure(7.0, 0.75 + min(_ROW * max(len(rows), 1), _TALLEST))
    axes = chart(figure, left=3.5, right=0.95, top=0.25, bottom=0.5)
    values = [_value(row) for row in rows]
    finite = [value for value in values if np.isfinite(value)]
    limit = min(max([1.15, *(1.05 * value for value in finite)]), _WIDEST)
    if any(
        value > limit or row.status is Status.NOT_EVALUATED
        for value, row in zip(values, rows, strict=True)
    ):
        limit = max(limit, 1.5)
    axes.set_xlim(0.0, limit)
    axes.set_ylim(len(rows) - 0.4, -0.6)
    axes.grid(visible=False, axis="y")
    for place, (row, value) in enumerate(zip(rows, values, strict=True)):
        _bar(axes, place, row, value, limit)
    axes.axvline(1.0, color=INK, linewidth=1.1)
    axes.set_yticks(range(len(rows)), labels=[_name(row) for row in rows])
    axes.tick_params(axis="y", length=0.0)
    axes.set_xlabel("demand over capacity [–]")
    return Drawing(
        name="ratios",
        title="Demand over capacity by limit state",
        alt=_alt(table, rows),
        figure=figure,
        remark=_remark(rows, values, limit),
    )


def _remark(rows: Sequence[Result], values: Sequence[float], limit: float) -> str:
    parts = ["The worst row of each limit state, rounded up."]
    if any(value > 1.0 for value in values):
        parts.append("Hatched bars exceed 1.")
    if any(value > limit for value in values):
        parts.append(f"Bars beyond {limit:.3g} are cut.")
    if any(row.without_margin and row.status is Status.OK for row in rows):
        parts.append("What passes or does not, without a margin, stands last.")
    return " ".join(parts)


def _worst_of_each(table: VariantResults) -> list[Result]:
    worst: dict[str, Result] = {}
    for result in table.results:  # worst first
        if result.kind in {Kind.LIMIT, Kind.NOT_EVALUATED}:
            worst.setdefault(f"{result.limit_state} {result.title}", result)
    return list(worst.values())


def _value(row: Result) -> float:
    if row.status is Status.NOT_EVALUATED:
        return float("nan")
    return float(np.max(row.ratio))


def _bar(axes: Axes, place: int, row: Result, value: float, limit: float) -> None:
    """One bar, and its number in a column on the right."""
    exceeds = row.status is Status.EXCEEDS
    if np.isnan(value):
        text, exceeds = "not evaluated", True
    else:
        text = f"{ratio_text(value)} exceeds" if exceeds else ratio_text(value)
        axes.barh(
            place,
            min(value, limit),
            height=0.62,
            facecolor="#f3d9cd" if exceeds else PLATE,
            edgecolor=WARNING if exceeds else INK,
            hatch="/////" if exceeds else None,
            linewidth=0.7,
        )
    axes.text(
        1.02,
        place,
        text,
        transform=axes.get_yaxis_transform(),
        va="center",
        fontsize=SMALL,
        fontweight="bold" if exceeds else "normal",
        color=WARNING if exceeds else INK,
    )


def _name(row: Result) -> str:
    text = wrap(printable(row.title), _WIDEST_NAME) or ["–"]
    return text[0] if len(text) == 1 else f"{text[0]} …"


def _alt(table: VariantResults, rows: Sequence[Result]) -> str:
    missing = [row for row in rows if row.status is Status.NOT_EVALUATED]
    above = [row for row in rows if row.status is Status.EXCEEDS]
    within = [row for row in rows if row.status is Status.OK]
    sentences = [f"{len(rows)} limit states."]
    if missing:
        sentences.append(f"Not evaluated: {joined([row.title for row in missing])}.")
    if above:
        named = [f"{row.title} {ratio_text(_value(row))}" for row in above]
        sentences.append(f"{len(above)} exceed 1: {joined(named)}.")
    if within:
        named = [f"{row.title} {ratio_text(_value(row))}" for row in within[:5]]
        sentences.append(f"Largest within the limit: {joined(named)}.")
    sentences.append(f"Verdict: {table.status.value}.")
    return " ".join(sentences)
