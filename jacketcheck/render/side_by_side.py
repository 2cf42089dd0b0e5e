"""Variants and sets of provisions side by side: one ratio for each check and place."""

from __future__ import annotations

from typing import NamedTuple, TypeAlias

from jacketcheck.render.clauses import ADDED, INHERITED, whose
from jacketcheck.render.numbers import ratio_text, shown_value
from jacketcheck.render.text_style import TextStyle, grid
from jacketcheck.render.verdict import FOLLOWS
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status

__all__ = ["GOVERNS", "Comparison", "comparison", "side_by_side"]

GOVERNS = "»"
"""Mark of the row that decides."""

_Key: TypeAlias = tuple[str, str, str]


class _Cell(NamedTuple):
    text: str
    weight: float


_EMPTY = _Cell("", -3.0)


class Comparison(NamedTuple):
    """The table in cells: headings, rows with a verdict at the end, and how columns are aligned."""

    headings: list[str]
    rows: list[list[str]]
    align: list[str]


def comparison(report: CheckReport) -> Comparison:
    """One column for each variant and set of provisions, the worst rows first."""
    # codes word their titles each in its own way; within one code the title tells rows apart
    by_title = len(report.provisions) == 1
    names: dict[_Key, tuple[str, str]] = {}
    columns: list[dict[_Key, _Cell]] = []
    for table in report.tables:
        column: dict[_Key, _Cell] = {}
        for result in reversed(table.results):  # the worst of equal keys stays
            column[_key(result, by_title=by_title)] = _cell(result, table)
        for result in table.results:
            names.setdefault(_key(result, by_title=by_title), (result.title, result.location))
        columns.append(column)
    order = sorted(names, key=lambda key: -max(_at(column, key).weight for column in columns))
    rows = [[*names[key], *(_at(column, key).text for column in columns)] for key in order]
    rows.append(["verdict", "", *(table.status.value for table in report.tables)])
    return Comparison(
        headings=["limit state", "where", *(_heading(report, table) for table in report.tables)],
        rows=rows,
        align=["left", "left", *("right" for _ in columns)],
    )


def side_by_side(
    report: CheckReport, *, style: TextStyle = "text", width: int | None = None
) -> str:
    """The comparison as text or Markdown."""
    found = comparison(report)
    return grid(
        found.rows,
        headers=found.headings,
        align=found.align,
        style=style,
        widths=_widths(width, len(report.tables)),
    )


def _key(result: Result, *, by_title: bool) -> _Key:
    return (result.limit_state, result.title if by_title else "", result.location)


def _at(column: dict[_Key, _Cell], key: _Key) -> _Cell:
    return column.get(key, _EMPTY)


def _cell(result: Result, table: VariantResults) -> _Cell:
    inherited = (f" {INHERITED}" if whose(result) else "") + (
        f" {ADDED}" if result.added_by else ""
    )
    if result.kind is Kind.NOT_APPLICABLE:
        return _Cell(f"n/a{inherited}", -2.0)
    if result.status is Status.NOT_EVALUATED:
        return _Cell(f"{result.status.value}{inherited}", result.severity)
    text = ratio_text(shown_value(result.ratio, "1", "si")[0])
    if result.kind is Kind.REPORTED:
        return _Cell(f"({text}){inherited}", -1.0)
    mark = f"{GOVERNS} " if result is table.governing else ""
    if table.causes_of(result):
        mark = f"{FOLLOWS} "
    exceeds = " !" if result.status is Status.EXCEEDS else ""
    return _Cell(f"{mark}{text}{inherited}{exceeds}", result.severity)


def _heading(report: CheckReport, table: VariantResults) -> str:
    if len(report.provisions) == 1:
        return table.variant
    return table.provisions if len(report.variants) == 1 else f"{table.variant}, {table.provisions}"


def _widths(width: int | None, columns: int) -> list[int | None] | None:
    if width is None:
        return None
    free = max(width - 12 * columns, 50)
    column = max(9, (width - free) // max(columns, 1) - 2)
    return [int(0.55 * free), int(0.4 * free), *([column] * columns)]
