"""The two tables of a batch: one line for each result, and one for each pier."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from jacketcheck.batch.finding import shown_name
from jacketcheck.batch.journal import Entry
from jacketcheck.batch.records import Pier, PierTable, Row, unpacked
from jacketcheck.results import OPEN_POINT, Status
from jacketcheck.units import DisplaySystem, display

__all__ = [
    "FAILED",
    "INPUT_ERROR",
    "PIER_COLUMNS",
    "RESULT_COLUMNS",
    "Cell",
    "Column",
    "PierLine",
    "pier_lines",
    "result_cells",
]

Cell: TypeAlias = str | float | int | None
Column: TypeAlias = tuple[str, Literal["text", "number", "count"]]

INPUT_ERROR = "INPUT ERROR"
FAILED = "FAILED"

RESULT_COLUMNS: tuple[Column, ...] = (
    ("file", "text"),
    ("variant", "text"),
    ("provisions", "text"),
    ("limit_state", "text"),
    ("title", "text"),
    ("where", "text"),
    ("demand", "number"),
    ("capacity", "number"),
    ("unit", "text"),
    ("ratio", "number"),
    ("verdict", "text"),
    ("clause", "text"),
    ("written_by", "text"),
    ("origin", "text"),
    ("follows_from", "text"),
    ("consequence_of", "text"),
    ("notes", "text"),
)
"""Columns of ``results``, as those of ``check --format csv`` behind the name of the file."""

PIER_COLUMNS: tuple[Column, ...] = (
    ("file", "text"),
    ("number", "text"),
    ("job", "text"),
    ("variant", "text"),
    ("provisions", "text"),
    ("verdict", "text"),
    ("ratio", "number"),
    ("limit_state", "text"),
    ("title", "text"),
    ("where", "text"),
    ("within", "count"),
    ("exceed", "count"),
    ("follow", "count"),
    ("not_evaluated", "count"),
    ("message", "text"),
    ("sha256", "text"),
)
"""Columns of ``piers``: the verdict, and the limit state with the worst ratio that was found.

``follow`` counts the rows that exceed as a consequence of that limit state.
"""


@dataclass(frozen=True, slots=True)
class PierLine:
    """One variant of a pier under one set of provisions, or a file without results.

    Attributes
    ----------
    file, sha256
        Name of the file, and the hash of its content if it could be read.
    pier
        What its input says, and the message where there are no results.
    table
        Results; None where there are none.
    verdict
        Of the table, ``INPUT ERROR`` or ``FAILED``.
    """

    file: str
    sha256: str
    pier: Pier
    table: PierTable | None
    verdict: str

    @property
    def governing(self) -> Row | None:
        """The row with the worst ratio."""
        return self.table.governing if self.table is not None else None

    @property
    def message(self) -> str:
        """Why there are no results, or what could not be evaluated."""
        rows = self.table.unevaluated if self.table is not None else ()
        if not rows:
            return self.pier.message or self._open_points()
        first = ": ".join(text for text in (rows[0].title, rows[0].notes) if text)
        return first if len(rows) == 1 else f"{first} (and {len(rows) - 1} more)"

    def _open_points(self) -> str:
        """What the verdict still waits for."""
        rows = () if self.table is None else self.table.rows
        found = [row.notes for row in rows if OPEN_POINT in row.notes]
        return "; ".join(dict.fromkeys(notes[notes.index(OPEN_POINT) :] for notes in found))

    def count(self, status: Status) -> int:
        """Number of rows with a verdict."""
        rows = self.table.rows if self.table is not None else ()
        return sum(row.verdict == status.value for row in rows)

    @property
    def cells(self) -> tuple[Cell, ...]:
        """Cells under `PIER_COLUMNS`."""
        governing, table = self.governing, self.table
        return (
            self.file,
            self.pier.number,
            self.pier.title,
            table.variant if table is not None else "",
            table.provisions if table is not None else "",
            self.verdict,
            governing.ratio if governing is not None else None,
            governing.limit_state if governing is not None else "",
            governing.title if governing is not None else "",
            governing.where if governing is not None else "",
            self.count(Status.OK),
            self.count(Status.EXCEEDS),
            table.followers if table is not None else 0,
            self.count(Status.NOT_EVALUATED),
            self.message,
            self.sha256,
        )


def pier_lines(entry: Entry) -> Iterator[PierLine]:
    """Lines of a file; one with a message where it has no results."""
    file = shown_name(entry.name)
    pier = Pier(message=entry.problem) if entry.body is None else unpacked(entry.body)
    if entry.fate != "checked":
        verdict = FAILED if entry.fate == "failed" else INPUT_ERROR
        yield PierLine(file, entry.sha256, pier, None, verdict)
    for table in pier.tables:
        yield PierLine(file, entry.sha256, pier, table, table.verdict)


def result_cells(line: PierLine, system: DisplaySystem | None) -> Iterator[tuple[Cell, ...]]:
    """Cells under `RESULT_COLUMNS`, in internal units or those of a system.

    A file without results has one line all the same: whoever reads only this table must not miss
    it.
    """
    if line.table is None:
        nothing = (None, None, "", None)
        yield (line.file, *[""] * 5, *nothing, line.verdict, *[""] * 5, line.message)
        return
    for row, causes in zip(line.table.rows, line.table.causes, strict=True):
        factor, unit = (1.0, row.unit) if system is None else display(row.unit, system)
        yield (
            line.file, line.table.variant, line.table.provisions, row.limit_state, row.title,
            row.where, _scaled(row.demand, factor), _scaled(row.capacity, factor), unit, row.ratio,
            row.verdict, row.clause, row.written_by, row.origin, row.follows_from,
            " ".join(causes), row.notes,
        )  # fmt: skip


def _scaled(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor
