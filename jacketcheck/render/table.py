"""The table of demand/capacity ratios, and variants side by side, as text or Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal, TypeAlias

from tabulate import tabulate

from jacketcheck.render.numbers import MISSING, number_text, ratio_text, shown_value
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status
from jacketcheck.units import DisplaySystem

__all__ = ["TextStyle", "full_table", "report_text", "side_by_side"]

TextStyle: TypeAlias = Literal["text", "markdown"]
_FORMATS = {"text": "simple", "markdown": "pipe"}
_HEADINGS = ("limit state", "where", "demand", "capacity", "unit", "ratio", "verdict", "clause")
_ALIGNMENT = ("left", "left", "right", "right", "left", "right", "left", "left")
_MARK = "»"


def report_text(
    report: CheckReport,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """Everything about a run: tables, comparison, plug-ins, cautions and what is not covered."""
    parts = [_heading(report, style)]
    for table in report.tables:
        parts.append(_subheading(_name(report, table), style))
        parts.append(full_table(table, system=system, style=style, width=width))
    if len(report.tables) > 1:
        parts.append(_subheading("Side by side: ratio of demand to capacity", style))
        parts.append(side_by_side(report, style=style, width=width))
    parts.append(_footer(report, style))
    return "\n\n".join(parts) + "\n"


def full_table(
    table: VariantResults,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """All rows of one variant, the governing one first and marked, notes numbered below."""
    notes: dict[str, int] = {}
    rows = [_row(result, system, notes) for result in table.results]
    if rows:
        rows[0][0] = f"{_MARK} {rows[0][0]}"
    text = tabulate(
        rows,
        headers=_HEADINGS,
        tablefmt=_FORMATS[style],
        colalign=_ALIGNMENT,
        disable_numparse=True,
        maxcolwidths=_widths(width) if style == "text" else None,
    )
    blocks = [_verdict_line(table, style), text]
    if notes:
        blocks.append("\n".join(f"[{number}] {note}" for note, number in notes.items()))
    return "\n\n".join(blocks)


def side_by_side(
    report: CheckReport, *, style: TextStyle = "text", width: int | None = None
) -> str:
    """One column for each variant and set of provisions, one row for each check and place."""
    keys: dict[tuple[str, str], str] = {}
    for table in report.tables:
        for result in table.results:
            keys.setdefault((result.limit_state, result.location), result.title)
    cells = [
        [_cell(table, limit_state, where) for table in report.tables] for limit_state, where in keys
    ]
    order = sorted(range(len(cells)), key=lambda row: -max(_weight(cell) for cell in cells[row]))
    names = list(keys.items())
    rows = [[names[row][1], names[row][0][1], *(text for text, _ in cells[row])] for row in order]
    columns = [_column_name(report, table) for table in report.tables]
    rows.append(["verdict", "", *(str(table.status.value) for table in report.tables)])
    return tabulate(
        rows,
        headers=["limit state", "where", *columns],
        tablefmt=_FORMATS[style],
        colalign=("left", "left", *("right" for _ in columns)),
        disable_numparse=True,
        maxcolwidths=_comparison_widths(width, len(columns)) if style == "text" else None,
    )


def _row(result: Result, system: DisplaySystem, notes: dict[str, int]) -> list[str]:
    marks = "".join(f"[{notes.setdefault(note, len(notes) + 1)}]" for note in result.notes)
    title = f"{result.title} {marks}".rstrip()
    verdict = str(result.status.value)
    if result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}:
        blank = MISSING
        return [title, result.location, blank, blank, "", blank, verdict, result.clause]
    demand, unit = shown_value(result.demand, result.unit, system)
    capacity, _ = shown_value(result.capacity, result.unit, system)
    ratio, _ = shown_value(result.ratio, "1", system)
    return [
        title,
        result.location,
        number_text(demand),
        number_text(capacity),
        unit,
        ratio_text(ratio),
        verdict,
        result.clause,
    ]


def _cell(table: VariantResults, limit_state: str, where: str) -> tuple[str, float]:
    """Worst ratio of a check at a place, as text and as a weight to sort by."""
    found = [r for r in table.results if (r.limit_state, r.location) == (limit_state, where)]
    if not found:
        return "", -3.0
    worst = max(found, key=lambda result: result.severity)
    if worst.kind is Kind.NOT_APPLICABLE:
        return "n/a", -2.0
    if worst.status is Status.NOT_EVALUATED:
        return str(worst.status.value), worst.severity
    text = ratio_text(shown_value(worst.ratio, "1", "si")[0])
    if worst.kind is Kind.REPORTED:
        return f"({text})", -1.0
    mark = f"{_MARK} " if worst is table.governing else ""
    return f"{mark}{text}{' !' if worst.status is Status.EXCEEDS else ''}", worst.severity


def _weight(cell: tuple[str, float]) -> float:
    return cell[1]


def _verdict_line(table: VariantResults, style: TextStyle) -> str:
    governing = table.governing
    where = f", {governing.location}" if governing.location else ""
    text = f"{table.status.value}: governed by {governing.title}{where}"
    if governing.kind is Kind.LIMIT:
        text += f", ratio {ratio_text(shown_value(governing.ratio, '1', 'si')[0])}"
    return f"**{text}**" if style == "markdown" else text


def _name(report: CheckReport, table: VariantResults) -> str:
    return f"{table.variant} — {report.provisions_titles[table.provisions]}"


def _column_name(report: CheckReport, table: VariantResults) -> str:
    if len(report.provisions) == 1:
        return table.variant
    return table.provisions if len(report.variants) == 1 else f"{table.variant}, {table.provisions}"


def _heading(report: CheckReport, style: TextStyle) -> str:
    title = report.job.title
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…"]
    if report.job.number:
        facts.insert(0, f"job {report.job.number}")
    if report.job.engineer:
        facts.append(f"prepared by {report.job.engineer}")
    head = f"# {title}" if style == "markdown" else f"{title}\n{'=' * len(title)}"
    return head + "\n\n" + "; ".join(facts)


def _subheading(text: str, style: TextStyle) -> str:
    return f"## {text}" if style == "markdown" else f"{text}\n{'-' * len(text)}"


def _footer(report: CheckReport, style: TextStyle) -> str:
    made_by = [f"jacketcheck {report.version}"]
    made_by += [
        f"{plugin.name} ({plugin.origin})" + (" with problems" if plugin.problems else "")
        for plugin in report.plugins
        if not plugin.built_in
    ]
    if report.switched_off:
        made_by.append(f"switched off: {', '.join(report.switched_off)}")
    blocks = [
        f"{_MARK} governs; ! exceeds 1; (…) reported without a verdict; ratios are rounded up.",
        "Made by " + "; ".join(made_by) + ".",
        _bullets("Not covered here, for the engineer to check:", report.not_covered, style),
        _bullets("Cautions:", report.cautions, style),
    ]
    return "\n\n".join(blocks)


def _bullets(title: str, lines: Iterable[str], style: TextStyle) -> str:
    gap = "\n\n" if style == "markdown" else "\n"
    return title + gap + "\n".join(f"- {line}" for line in lines)


def _widths(width: int | None) -> Sequence[int | None] | None:
    """Column widths so that a table fits a terminal; None for no limit."""
    if width is None:
        return None
    free = max(width - 64, 60)
    return (int(0.4 * free), int(0.28 * free), None, None, None, None, None, int(0.32 * free))


def _comparison_widths(width: int | None, columns: int) -> Sequence[int | None] | None:
    if width is None:
        return None
    free = max(width - 12 * columns, 50)
    column = max(9, (width - free) // max(columns, 1) - 2)
    return (int(0.55 * free), int(0.4 * free), *([column] * columns))
