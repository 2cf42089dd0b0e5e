"""Outcome of a sweep as text or Markdown: worst ratio and what governs, design by design."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np

from jacketcheck.host.made_by import made_by
from jacketcheck.render.numbers import MISSING, number_text, ratio_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, listed, paragraph
from jacketcheck.render.text_style import TextStyle, bullets, emphasis, grid, subheading
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
    parts += [subheading("What exceeds 1 where", style), _states(report, style)]
    parts += _reasons(report, style, columns)
    makers = made_by(report.version, report.plugins, report.switched_off)
    parts += [
        paragraph(f"Made by {makers}.", style, columns),
        bullets("Not covered here, for the engineer to check:", report.not_covered, style),
        bullets("Cautions:", report.cautions, style),
    ]
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
    columns = [report.plan.column(index) for index in range(len(varied))]
    ratios, governing = report.ratios.governing_ratio, report.ratios.governing
    rows = []
    for number in range(report.plan.count)[:limit]:
        values = [
            _cell(one, column[number], system) for one, column in zip(varied, columns, strict=True)
        ]
        verdict = report.verdicts[number]
        if verdict == CANNOT_BE_BUILT:
            rows.append([*values, verdict, MISSING, report.refusals[number]])
            continue
        row = report.ratios.rows[int(governing[number])]
        ratio = ratios[number]
        text = MISSING if np.isnan(ratio) else ratio_text(float(ratio))
        rows.append([*values, verdict, text, report.titles.get(row.limit_state, row.title)])
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


def _cell(varied: Varied, value: Any, system: DisplaySystem) -> str:
    if not varied.is_number:
        return str(value).lower() if isinstance(value, bool) else str(value)
    if isinstance(value, int):
        return str(value)
    return number_text(shown_number(varied, value, system))


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
