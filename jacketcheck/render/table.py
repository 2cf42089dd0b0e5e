"""The table of demand/capacity ratios as text or Markdown, and all that is printed around it."""

from __future__ import annotations

from jacketcheck.render.clauses import INHERITED, added_legend, clause_text, inherited_legend
from jacketcheck.render.closing import closing
from jacketcheck.render.numbers import MISSING, number_text, ratio_text, shown_value
from jacketcheck.render.side_by_side import GOVERNS, side_by_side
from jacketcheck.render.text_style import (
    TextStyle,
    emphasis,
    grid,
    heading,
    subheading,
    user_text,
)
from jacketcheck.render.verdict import (
    FOLLOWS,
    cause_note,
    consequence_legend,
    row_notes,
    verdict_text,
)
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result
from jacketcheck.units import DisplaySystem

__all__ = ["ALIGNMENT", "HEADINGS", "full_table", "report_text", "row_cells"]

HEADINGS = ("limit state", "where", "demand", "capacity", "unit", "ratio", "verdict", "clause")
ALIGNMENT = ("left", "left", "right", "right", "left", "right", "left", "left")


def report_text(
    report: CheckReport,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """Everything about a run: tables, comparison, plug-ins, cautions and what is not covered."""
    parts = [_head(report, style)]
    for table in report.tables:
        parts.append(subheading(f"{table.variant}, provisions {table.provisions}", style))
        parts.append(full_table(table, system=system, style=style, width=width))
    if len(report.tables) > 1:
        parts.append(subheading("Side by side: ratio of demand to capacity", style))
        parts.append(side_by_side(report, style=style, width=width))
    parts.append(_legend(report))
    parts.append(closing(report, style))
    return "\n\n".join(parts) + "\n"


def _legend(report: CheckReport) -> str:
    rows = [result for table in report.tables for result in table.results]
    mark = INHERITED if len(report.tables) > 1 else ""
    marks = [
        f"{GOVERNS} governs",
        "! exceeds 1",
        consequence_legend(report),
        "(…) reported without a verdict",
        inherited_legend(rows),
        inherited_legend(rows, mark) if mark else "",
        added_legend(rows) if mark else "",
        "ratios are rounded up",
    ]
    return f"{'; '.join(filter(None, marks))}."


def full_table(
    table: VariantResults,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """All rows of one variant, the governing one first and marked, notes numbered below."""
    notes: dict[str, int] = {}
    rows = [_row(result, table, system, notes) for result in table.results]
    if rows:
        rows[0][0] = f"{GOVERNS} {rows[0][0]}"
    blocks = [
        emphasis(verdict_text(table), style),
        grid(rows, headers=HEADINGS, align=ALIGNMENT, style=style, widths=_widths(width)),
    ]
    if notes:
        lines = (f"[{number}] {user_text(note, style)}" for note, number in notes.items())
        blocks.append(("\n\n" if style == "markdown" else "\n").join(lines))
    return "\n\n".join(blocks)


def row_cells(result: Result, system: DisplaySystem) -> list[str]:
    """Cells of one result, under `HEADINGS`; what has no ratio shows none."""
    numbers = [MISSING, MISSING, "", MISSING]
    if result.kind not in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}:
        demand, unit = shown_value(result.demand, result.unit, system)
        capacity, _ = shown_value(result.capacity, result.unit, system)
        ratio, _ = shown_value(result.ratio, "1", system)
        numbers = [number_text(demand), number_text(capacity), unit, ratio_text(ratio)]
    return [result.title, result.location, *numbers, result.status.value, clause_text(result)]


def _row(
    result: Result, table: VariantResults, system: DisplaySystem, notes: dict[str, int]
) -> list[str]:
    causes = cause_note(table, result)
    marks = "".join(
        f"[{notes.setdefault(note, len(notes) + 1)}]" for note in row_notes(table, result)
    )
    title, *others = row_cells(result, system)
    return [f"{FOLLOWS + ' ' if causes else ''}{title} {marks}".rstrip(), *others]


def _head(report: CheckReport, style: TextStyle) -> str:
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…"]
    if report.job.number:
        facts.insert(0, f"job {report.job.number}")
    if report.job.engineer:
        facts.append(f"prepared by {report.job.engineer}")
    codes = [f"provisions {name}: {codes}" for name, codes in report.provisions_titles.items()]
    lines = ["; ".join(facts), *codes]
    return "\n\n".join([heading(report.job.title, style), *(user_text(x, style) for x in lines)])


def _widths(width: int | None) -> list[int | None] | None:
    """Column widths so that a table fits a terminal; None for no limit."""
    if width is None:
        return None
    free = max(width - 64, 60)
    return [int(0.4 * free), int(0.28 * free), None, None, None, None, None, int(0.32 * free)]
