"""Outcome of a sweep as text or Markdown: worst ratio and what governs, design by design."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np

from jacketcheck.render.clauses import by_rule_of
from jacketcheck.render.closing import closing
from jacketcheck.render.numbers import MISSING, ratio_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, listed
from jacketcheck.render.text_style import TextStyle, emphasis, grid, subheading
from jacketcheck.render.verdict import following
from jacketcheck.sweep.report import CANNOT_BE_BUILT, SweepReport
from jacketcheck.sweep.vary import Varied
from jacketcheck.units import DisplaySystem, display

__all__ = ["column_title", "shown_number", "sweep_text"]

_MOST_REASONS = 12


def sweep_text(
    report: SweepReport,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
    limit: int | None = None,
) -> str:
    """Everything about a sweep.

    Parameters
    ----------
    report
        Its outcome.
    system
        Units of the output.
    style, width
        Form of the output, and columns of the terminal.
    limit
        Designs shown at most.
    """
    columns = max(width or DEFAULT_WIDTH, 80)
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…", f"variant {report.variant}"]
    facts += [f"provisions {name}: {codes}" for name, codes in report.provisions_titles.items()]
    parts = [
        job_heading(report.job, "Sweep", facts, style, columns),
        emphasis(_verdict(report), style),
        _designs(report, system, style, width, limit),
    ]
    if limit is not None and report.plan.count > limit:
        left = report.plan.count - limit
        parts.append(f"{left:,} more designs not shown; --limit shows more, --format csv all.")
    parts += [subheading("Each limit state over all designs", style), _states(report, style)]
    parts += _reasons(report, style, columns)
    parts.append(closing(report, style, columns))
    return "\n\n".join(parts) + "\n"


def column_title(varied: Varied, system: DisplaySystem) -> str:
    """Path of a field with the unit of its column."""
    if not varied.is_number or varied.unit == "1":
        return varied.path
    return f"{varied.path} {display(varied.unit, system)[1]}"


def shown_number(varied: Varied, value: Any, system: DisplaySystem) -> float:
    """A number of a field in the unit of its column."""
    return float(value) * display(varied.unit, system)[0]


def _verdict(report: SweepReport) -> str:
    words = dict.fromkeys(("ok", "EXCEEDS", "NOT EVALUATED", CANNOT_BE_BUILT))
    counts = {word: report.verdicts.count(word) for word in words}
    told = ", ".join(f"{count:,} {word}" for word, count in counts.items() if count)
    return f"{report.plan.count:,} designs: {told}"


def _designs(
    report: SweepReport,
    system: DisplaySystem,
    style: TextStyle,
    width: int | None,
    limit: int | None,
) -> str:
    varied = report.plan.varied
    count = report.plan.count if limit is None else min(limit, report.plan.count)
    columns = [
        list(_cells(one, report.plan.column(index)[:count], system))
        for index, one in enumerate(varied)
    ]
    ratios, governing = report.ratios.governing_ratio, report.ratios.governing
    followers = report.ratios.followers
    rows = []
    for number in range(count):
        values = [column[number] for column in columns]
        verdict = report.verdicts[number]
        if verdict == CANNOT_BE_BUILT:
            rows.append([*values, verdict, MISSING, report.refusals[number]])
            continue
        row = report.ratios.rows[int(governing[number])]
        ratio = ratios[number]
        text = MISSING if np.isnan(ratio) else ratio_text(float(ratio))
        title = report.titles.get(row.limit_state, row.title)
        consequences = f"; {following(int(followers[number]))}" if followers[number] else ""
        rows.append([*values, verdict, text, f"{title}{by_rule_of(row)}{consequences}"])
    return grid(
        rows,
        headers=[
            *(column_title(one, system) for one in varied),
            "verdict",
            "ratio",
            "governed by",
        ],
        align=[*("right" if one.is_number else "left" for one in varied), "left", "right", "left"],
        style=style,
        widths=None if width is None else [*[None] * (len(varied) + 2), max(width - 60, 24)],
    )


def _cells(varied: Varied, values: Sequence[Any], system: DisplaySystem) -> Iterator[str]:
    """Values of a column; measured ones with as many decimals as the longest of them needs."""
    if not varied.is_number:
        for value in values:
            yield str(value).lower() if isinstance(value, bool) else str(value)
    elif all(isinstance(value, int) for value in values):
        yield from map(str, values)
    else:
        numbers = [shown_number(varied, value, system) for value in values]
        texts = [f"{number:.5g}" for number in numbers]
        if any("e" in text for text in texts):
            yield from texts
            return
        decimals = max(len(text.partition(".")[2]) for text in texts)
        yield from (f"{number:.{decimals}f}" for number in numbers)


def _states(report: SweepReport, style: TextStyle) -> str:
    names, ratio = report.ratios.by_limit_state()
    known = np.where(np.isnan(ratio), -np.inf, ratio)
    order = sorted(
        range(len(names)), key=lambda place: -float(np.max(known[place], initial=-np.inf))
    )
    rows = []
    for place in order:
        row = known[place][np.isfinite(known[place]) | np.isposinf(known[place])]
        if not row.size:
            continue
        rows.append(
            [
                report.titles.get(names[place], names[place]),
                ratio_text(float(np.min(row))),
                ratio_text(float(np.max(row))),
                f"{int(np.count_nonzero(row > 1.0)):,}",
                f"{int(np.count_nonzero(np.isnan(ratio[place]))):,}",
            ]
        )
    return grid(
        rows,
        headers=["limit state", "smallest", "largest", "exceed 1", "not evaluated"],
        align=["left", "right", "right", "right", "right"],
        style=style,
    )


def _reasons(report: SweepReport, style: TextStyle, columns: int) -> Iterator[str]:
    lines = [
        f"{report.titles.get(row.limit_state, row.title)}: {reason}"
        for row, reason in report.ratios.reasons.items()
    ]
    if lines:
        text = listed(lines[:_MOST_REASONS], style, columns)
        yield f"NOT EVALUATED in some designs:\n{text}"
