"""Ratios of a sweep against the quantity that varies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import shorten
from typing import Any, Final

import numpy as np
from matplotlib.axes import Axes

from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.style import INK, LINES, SMALL, SOFT, WARNING, chart, new_figure, styled
from jacketcheck.figures.words import joined
from jacketcheck.inputs.written import printable
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.render.numbers import number_text, ratio_text
from jacketcheck.render.sweep_table import column_title, shown_number
from jacketcheck.sweep.report import CANNOT_BE_BUILT, SweepReport
from jacketcheck.sweep.vary import Varied
from jacketcheck.units import DisplaySystem

__all__ = ["sweep_plot"]

_TOP: Final = 2.0
"""Ratio at which the axis ends at the latest; lines beyond leave the figure."""
_WIDEST_NAME: Final = 46
_ROOM: Final = 90
"""Letters of names that go side by side under the axis."""
_MARKED: Final = 40
"""Designs from which points are not marked any more."""


@dataclass(frozen=True, eq=False)
class _Line:
    """Ratios over the designs that one line goes through."""

    name: str
    x: Floats
    ratio: Floats


@styled
def sweep_plot(report: SweepReport, *, system: DisplaySystem) -> Drawing:
    """Draw ratios against the first field that varies.

    Parameters
    ----------
    report
        A sweep.
    system
        Units of the axis.

    Returns
    -------
    Drawing
        Where one field varies: the limit states with the largest ratios. Where several do: the
        worst ratio, one line for each combination of the others. Six lines at most.
    """
    varied = report.plan.varied[0]
    x, names = _positions(report, system)
    lines, left_out = _lines(report, x, system)
    figure = new_figure(7.0, 4.2)
    axes = chart(figure, right=0.25, top=0.15, bottom=0.72 + 0.17 * len(lines))
    for place, (line, look) in enumerate(zip(lines, LINES, strict=False)):
        order = np.argsort(line.x, kind="stable")
        behind = len(lines) - 1 - place
        axes.plot(
            line.x[order],
            line.ratio[order],
            label=_label(line),
            color=look.color,
            # nothing lies between names
            linestyle="none" if names else look.dashes,
            marker=look.marker if line.x.size <= _MARKED else None,
            # what falls together still shows one behind the other
            linewidth=1.5 + 0.7 * behind,
            markersize=4.0 + 1.4 * behind if names else 3.2,
        )
    _frame(
        axes,
        lines,
        names,
        _axis_title(varied, system),
        by_state=len(report.plan.varied) == 1,
    )
    if lines:
        axes.legend(
            loc="upper left",
            bbox_to_anchor=(0.0, -0.16),
            frameon=False,
            fontsize=SMALL,
            borderaxespad=0.0,
        )
    return Drawing(
        name="sweep",
        title=f"Demand over capacity against {varied.path}",
        alt=_alt(report, lines, system),
        figure=figure,
        remark=_remark(report, lines, left_out),
    )


def _label(line: _Line) -> str:
    known = line.ratio[~np.isnan(line.ratio)]
    if known.size and float(np.min(known)) > _TOP:
        return f"{line.name} (beyond {_TOP:g})"
    return line.name


def _frame(axes: Axes, lines: list[_Line], names: list[str], title: str, *, by_state: bool) -> None:
    """Limit, scales and labels."""
    finite = np.concatenate([line.ratio[np.isfinite(line.ratio)] for line in lines] or [np.ones(1)])
    top = min(max(1.15, 1.06 * float(np.max(finite, initial=1.0))), _TOP)
    axes.set_ylim(0.0, top)
    for line, look in zip(lines, LINES, strict=False):
        off = line.x[line.ratio > top]
        axes.plot(
            off,
            np.full(off.size, 0.985 * top),
            linestyle="none",
            marker="^",
            color=look.color,
            markersize=5.0,
        )
    if any(bool(np.any(line.ratio > top)) for line in lines):
        axes.plot([], [], linestyle="none", marker="^", color=SOFT, label="ratio beyond the axis")
    axes.axhline(1.0, color=WARNING, linewidth=1.2)
    axes.annotate(
        "limit", (1.0, 1.0), xycoords=("axes fraction", "data"), xytext=(-2, 3),
        textcoords="offset points", ha="right", fontsize=SMALL, color=WARNING,
    )  # fmt: skip
    if names:
        turned = 25.0 if sum(map(len, names)) > _ROOM else 0.0
        axes.set_xticks(
            range(len(names)), labels=names, rotation=turned, ha="right" if turned else "center"
        )
        axes.set_xlim(-0.5, len(names) - 0.5)
    axes.set_xlabel(title, color=INK)
    axes.set_ylabel("demand over capacity [–]" if by_state else "largest demand over capacity [–]")
    axes.tick_params(colors=SOFT)


def _axis_title(varied: Varied, system: DisplaySystem) -> str:
    unit = column_title(varied, system).removeprefix(varied.path).strip()
    return f"{varied.path} [{unit}]" if unit else varied.path


def _positions(report: SweepReport, system: DisplaySystem) -> tuple[Floats, list[str]]:
    """Place of each design along the axis; names for the ticks where values are no numbers."""
    varied, column = report.plan.varied[0], report.plan.column(0)
    if varied.is_number:
        return np.array([shown_number(varied, value, system) for value in column]), []
    names = [printable(str(value)) for value in varied.values]
    return report.plan.places[0].astype(float), names


def _lines(report: SweepReport, x: Floats, system: DisplaySystem) -> tuple[list[_Line], int]:
    """Lines to draw, and how many are left out."""
    if len(report.plan.varied) == 1:
        found = list(_by_state(report, x))
    else:
        found = list(_by_others(report, x, system))
    found.sort(key=lambda line: -_height(line))
    return found[: len(LINES)], max(len(found) - len(LINES), 0)


def _by_state(report: SweepReport, x: Floats) -> Iterator[_Line]:
    names, ratio = report.ratios.by_limit_state(with_silent=False)
    for name, row in zip(names, ratio, strict=True):
        drawn = np.where(np.isfinite(row), row, np.nan)
        if np.isfinite(drawn).any() or np.isposinf(row).any():
            title = shorten(report.titles.get(name, name), _WIDEST_NAME, placeholder=" …")
            yield _Line(printable(title), x, np.where(np.isposinf(row), np.inf, drawn))


def _by_others(report: SweepReport, x: Floats, system: DisplaySystem) -> Iterator[_Line]:
    """Worst ratio for each combination of the other fields; side by side there is but one."""
    worst, plan = report.ratios.governing_ratio, report.plan
    if not plan.is_grid:
        yield _Line("worst ratio", x, worst)
        return
    _, owners = np.unique(plan.places[1:], axis=1, return_inverse=True)
    for owner in range(int(owners.max()) + 1):
        designs = np.flatnonzero(owners.ravel() == owner)
        parts = [
            f"{one.path} {_value(one, plan.column(index)[designs[0]], system)}"
            for index, one in enumerate(plan.varied[1:], start=1)
        ]
        yield _Line(printable(", ".join(parts)), x[designs], worst[designs])


def _value(varied: Varied, value: Any, system: DisplaySystem) -> str:
    if varied.is_number and not isinstance(value, int):
        unit = column_title(varied, system).removeprefix(varied.path)
        return number_text(shown_number(varied, value, system)) + unit
    return str(value)


def _height(line: _Line) -> float:
    known = line.ratio[~np.isnan(line.ratio)]
    return float(np.max(known, initial=0.0))


def _remark(report: SweepReport, lines: list[_Line], left_out: int) -> str:
    parts = []
    if left_out:
        parts.append(f"The {len(lines)} lines with the largest ratios of {len(lines) + left_out}.")
    if any(_height(line) > _TOP for line in lines):
        parts.append(f"Triangles at the top stand for ratios beyond {_TOP:g}.")
    missing = sum(verdict in {CANNOT_BE_BUILT, "NOT EVALUATED"} for verdict in report.verdicts)
    if missing:
        parts.append(f"{missing} designs have no ratio: not evaluated, or impossible to build.")
    return " ".join(parts)


def _alt(report: SweepReport, lines: list[_Line], system: DisplaySystem) -> str:
    varied = report.plan.varied[0]
    first, last = (_value(varied, varied.values[place], system) for place in (0, -1))
    sentences = [f"{report.plan.count} designs, {varied.path} from {first} to {last}."]
    for line in lines:
        known = line.ratio[~np.isnan(line.ratio)]
        if known.size:
            low, high = ratio_text(float(np.min(known))), ratio_text(float(np.max(known)))
            sentences.append(f"{line.name}: {low} to {high}.")
    verdicts = dict.fromkeys(report.verdicts)
    told = joined([f"{report.verdicts.count(word)} {word}" for word in verdicts])
    sentences.append(f"Verdicts: {told}.")
    return " ".join(sentences)
