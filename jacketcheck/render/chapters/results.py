"""All rows of every variant, and every step of each row."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Final, TypeAlias

import numpy as np

from jacketcheck.render.chapters.summary import table_name, verdict_cell
from jacketcheck.render.clauses import inherited_legend, owner_text
from jacketcheck.render.numbers import quantity_text
from jacketcheck.render.report_parts import (
    Align,
    Calculation,
    Cell,
    Chapter,
    Column,
    Paragraph,
    Row,
    Table,
)
from jacketcheck.render.side_by_side import GOVERNS
from jacketcheck.render.table import ALIGNMENT, HEADINGS, row_cells
from jacketcheck.render.verdict import FOLLOWS, cause_note, row_notes
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status, Step
from jacketcheck.units import DisplaySystem

__all__ = ["results_and_calculations"]

_Key: TypeAlias = tuple[object, ...]
_ALARMING: Final = frozenset({Status.EXCEEDS, Status.NOT_EVALUATED})
_ROW_WIDTHS: Final = (20, 15, 8, 8, 6, 6, 9, 23, 5)
_STEP_WIDTHS: Final = (13, 37, 16, 34)
_ELSEWHERE: Final = (
    "{} further rows equal those of an earlier variant in every number: the tables of results tell "
    "where their steps are."
)


@dataclass
class _Numbers:
    """Number of each calculation: rows that are equal in every number share one."""

    by_key: dict[_Key, int] = field(default_factory=dict)

    def of(self, result: Result) -> tuple[int, bool]:
        """Number of a row's calculation, and whether this is the first row that asks for it."""
        key, before = _key(result), len(self.by_key)
        number = self.by_key.setdefault(key, before + 1)
        return number, len(self.by_key) > before


def results_and_calculations(
    report: CheckReport, *, system: DisplaySystem
) -> tuple[Chapter, Chapter]:
    """The chapter of tables and the chapter of calculations, which the tables link to."""
    numbers = _Numbers()
    tables, calculations = [], []
    for place, table in enumerate(report.tables, start=1):
        name = table_name(report, table)
        rows: list[tuple[Result, int]] = []
        steps: list[Calculation | Paragraph] = []
        for result in table.results:
            number, first = numbers.of(result)
            rows.append((result, number))
            if first:
                steps.append(_calculation(result, number, system))
        elsewhere = len(rows) - len(steps)
        if elsewhere:
            steps.append(Paragraph(_ELSEWHERE.format(elsewhere)))
        blocks: list[Table | Paragraph] = [_table(table, rows, name, system)]
        if legend := inherited_legend(table.results):
            blocks.append(Paragraph(f"{legend}."))
        tables.append(Chapter(name, f"results-{place}", tuple(blocks)))
        calculations.append(Chapter(name, f"calculations-{place}", tuple(steps)))
    return (
        Chapter("Results", "results", tuple(tables)),
        Chapter("Calculations", "calculations", tuple(calculations)),
    )


def _table(
    table: VariantResults, rows: Iterable[tuple[Result, int]], name: str, system: DisplaySystem
) -> Table:
    notes: dict[str, int] = {}
    cells: list[Row] = []
    for result, number in rows:
        title, where, *numbers, verdict, clause = row_cells(result, system)
        causes = cause_note(table, result)
        told = row_notes(table, result)
        marks = "".join(f"[{notes.setdefault(note, len(notes) + 1)}]" for note in told)
        governs = result is table.governing
        mark = f"{GOVERNS} " if governs else f"{FOLLOWS} " if causes else ""
        first = Cell(f"{mark}{title} {marks}".rstrip(), strong=governs)
        steps = Cell(f"C{number}", link=_anchor(number))
        cells.append((first, where, *numbers, verdict_cell(Status(verdict)), clause, steps))
    sides: list[Align] = ["right" if side == "right" else "left" for side in ALIGNMENT]
    columns = [Column(text, side) for text, side in zip(HEADINGS, sides, strict=True)]
    return Table(
        f"All rows of {name}, what decides first",
        (*columns, Column("steps")),
        tuple(cells),
        notes=tuple(notes),
        widths=_ROW_WIDTHS,
    )


def _anchor(number: int) -> str:
    return f"calculation-{number}"


def _calculation(result: Result, number: int, system: DisplaySystem) -> Calculation:
    title = f"{result.title}, {result.location}" if result.location else result.title
    words = [
        result.clause,
        f"provisions {owner_text(result)}",
        f"limit state {result.limit_state}",
    ]
    return Calculation(
        anchor=_anchor(number),
        title=f"C{number} {title}",
        verdict=_verdict(result, system),
        alarm=result.status in _ALARMING,
        clause="; ".join(word for word in words if word),
        steps=_steps(result.steps, f"C{number} {title}", system) if result.steps else None,
        notes=result.notes,
    )


def _steps(steps: Iterable[Step], title: str, system: DisplaySystem) -> Table:
    columns = (Column("symbol"), Column("from"), Column("value", "right"), Column("source"))
    rows = tuple(
        (step.symbol, step.expression, quantity_text(step.value, step.unit, system), step.source)
        for step in steps
    )
    return Table(f"Steps of {title}", columns, rows, widths=_STEP_WIDTHS, plain=True)


def _verdict(result: Result, system: DisplaySystem) -> str:
    _, _, demand, capacity, unit, ratio, verdict, _ = row_cells(result, system)
    if result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}:
        return verdict
    of_unit = "" if unit == "—" else f" {unit}"
    return f"{demand}{of_unit} / {capacity}{of_unit} = {ratio}, {verdict}"


def _key(result: Result) -> _Key:
    """Equal for rows that were calculated alike."""
    steps = tuple(
        (step.symbol, step.expression, _value(step.value), step.unit, step.source)
        for step in result.steps
    )
    return (
        result.limit_state, result.title, result.location, result.provisions, result.clause,
        result.kind, result.unit, result.notes, result.origin, _value(result.demand),
        _value(result.capacity), steps,
    )  # fmt: skip


def _value(value: object) -> object:
    return value if isinstance(value, str) else np.asarray(value).tobytes()
