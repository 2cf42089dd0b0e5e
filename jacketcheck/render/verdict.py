"""The verdict on a variant in a line: what decides, what follows from it, what else exceeds."""

from __future__ import annotations

from typing import Final

from jacketcheck.render.clauses import by_rule_of
from jacketcheck.render.numbers import ratio_text, shown_value
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status

_SILENT: Final = (
    "passes or does not: this ratio tells no margin while it passes, so that the row stands below "
    "those that do, and does not govern"
)

__all__ = [
    "FOLLOWS",
    "cause_note",
    "consequence_legend",
    "consequences",
    "following",
    "row_notes",
    "verdict_text",
]

FOLLOWS: Final = "↳"
"""Mark of a row that exceeds as a consequence of another."""


def verdict_text(table: VariantResults) -> str:
    """Verdict, governing row, and how many rows follow from it or exceed beside it."""
    governing = table.governing
    where = f", {governing.location}" if governing.location else ""
    text = f"{table.status.value}: governed by {governing.title}{where}"
    if governing.kind is Kind.LIMIT:
        text += f", ratio {ratio_text(shown_value(governing.ratio, '1', 'si')[0])}"
    return f"{text}{by_rule_of(governing)}{consequences(table)}{_open_points(table)}"


def _open_points(table: VariantResults) -> str:
    """What the verdict still waits for, told behind it; empty where nothing is open."""
    found = table.open_points
    count = f"{len(found)} open point{'' if len(found) == 1 else 's'}"
    return f"; {count}: {'; '.join(found)}" if found else ""


def consequences(table: VariantResults) -> str:
    """How many rows exceed beside the governing one, told behind it; empty where none do."""
    parts = []
    if table.followers:
        parts.append(following(table.followers))
    if table.others:
        more = "more " if table.governing.kind is Kind.LIMIT else ""
        parts.append(f"{_rows(table.others, more)} exceed{'s' if table.others == 1 else ''} 1")
    return "".join(f"; {part}" for part in parts)


def following(count: int) -> str:
    """How many rows follow from what governs."""
    return f"{_rows(count)} follow{'s' if count == 1 else ''} from it"


def cause_note(table: VariantResults, result: Result) -> tuple[str, ...]:
    """What a row follows from, as a note; none where it stands on its own."""
    causes = dict.fromkeys(one.title for one in table.causes_of(result))
    if not causes:
        return ()
    told = f"follows from {', '.join(causes)}: calculated with what is lost there"
    return (f"{told}, and to be looked at again once that is mended",)


def row_notes(table: VariantResults, result: Result) -> tuple[str, ...]:
    """Every note of a row in a table: causes, why its place tells nothing, and its own."""
    silent = result.without_margin and result.status is Status.OK
    return (*cause_note(table, result), *([_SILENT] if silent else []), *result.notes)


def consequence_legend(report: CheckReport) -> str:
    """What the mark of consequences means; empty where there are none."""
    marked = any(table.causes_of(row) for table in report.tables for row in table.results)
    return f"{FOLLOWS} exceeds 1 and follows from another row that does" if marked else ""


def _rows(count: int, more: str = "") -> str:
    return f"{count} {more}row{'' if count == 1 else 's'}"
