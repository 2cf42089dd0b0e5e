"""What is kept of a file that was checked: every row of its tables, small enough to be sent."""

from __future__ import annotations

import json
import math
import zlib
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any, NamedTuple

import numpy as np

from jacketcheck.causes import first_causes
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status

__all__ = ["Pier", "PierTable", "Row", "packed", "pier_of", "unpacked"]

_JUDGED = {Status.OK.value, Status.EXCEEDS.value}


class Row(NamedTuple):
    """One result; numbers are None where there are none.

    Attributes
    ----------
    limit_state, title, where
        What was checked.
    demand, capacity, unit
        In internal units: N, mm, MPa.
    ratio, verdict
        Demand over capacity, and what it means.
    clause, written_by, origin
        Rule, the set of provisions whose rule it is, and the distribution that brings it.
    follows_from, notes
        Limit states whose loss the numbers have used, and what a reader must know.
    without_margin
        Whether the ratio reads 1 whenever the row passes, and hence tells nothing then.
    """

    limit_state: str
    title: str
    where: str
    demand: float | None
    capacity: float | None
    unit: str
    ratio: float | None
    verdict: str
    clause: str
    written_by: str
    origin: str
    follows_from: str
    notes: str
    without_margin: bool = False


@dataclass(frozen=True, slots=True)
class PierTable:
    """Results of one variant under one set of provisions, what decides first."""

    variant: str
    provisions: str
    verdict: str
    rows: tuple[Row, ...]

    @property
    def governing(self) -> Row | None:
        """The worst row that has a verdict on a ratio; None where no ratio could be found."""
        return next((row for row in self.rows if row.verdict in _JUDGED), None)

    @property
    def causes(self) -> tuple[tuple[str, ...], ...]:
        """For each row the limit states whose failure it is a consequence of."""
        roots = first_causes(
            [row.limit_state for row in self.rows],
            [row.follows_from.split() for row in self.rows],
            [row.verdict == Status.EXCEEDS.value for row in self.rows],
        )
        return tuple(
            tuple(dict.fromkeys(self.rows[place].limit_state for place in sorted(places)))
            for places in roots
        )

    @property
    def followers(self) -> int:
        """How many rows exceed as a consequence of the limit state that governs."""
        governing = self.governing
        return sum(governing is not None and governing.limit_state in one for one in self.causes)

    @property
    def unevaluated(self) -> tuple[Row, ...]:
        """Rows that could not be evaluated."""
        return tuple(row for row in self.rows if row.verdict == Status.NOT_EVALUATED.value)


@dataclass(frozen=True, slots=True)
class Pier:
    """One file: its tables, or the message of why there are none."""

    title: str = ""
    number: str = ""
    tables: tuple[PierTable, ...] = ()
    message: str = field(default="", kw_only=True)


def pier_of(report: CheckReport) -> Pier:
    """Keep what a batch shows of a report."""
    tables = (
        PierTable(one.variant, one.provisions, one.status.value, tuple(_rows(one)))
        for one in report.tables
    )
    return Pier(report.job.title, report.job.number or "", tuple(tables))


def _rows(table: VariantResults) -> Iterable[Row]:
    for result in table.results:
        demand, capacity, ratio = _numbers(result)
        yield Row(
            result.limit_state, result.title, result.location,
            demand, capacity, result.unit, ratio, result.status.value,
            result.clause, result.written_by, result.origin, " ".join(result.follows_from),
            " | ".join(result.notes), result.without_margin,
        )  # fmt: skip


def _numbers(result: Result) -> tuple[float | None, float | None, float | None]:
    bare = result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}
    if bare or result.status is Status.NOT_EVALUATED:
        return None, None, None
    return _number(result.demand), _number(result.capacity), _number(result.ratio)


def _number(value: Any) -> float | None:
    number = float(np.max(value))
    return None if math.isnan(number) else number


def packed(pier: Pier) -> bytes:
    """A pier as compressed JSON."""
    tables = [[one.variant, one.provisions, one.verdict, one.rows] for one in pier.tables]
    text = json.dumps([pier.title, pier.number, pier.message, tables], ensure_ascii=False)
    return zlib.compress(text.encode(), level=1)


def unpacked(body: bytes) -> Pier:
    """The pier that was packed.

    Raises
    ------
    InputError
        If it is damaged.
    """
    try:
        title, number, message, tables = json.loads(zlib.decompress(body))
        return Pier(
            title,
            number,
            tuple(
                PierTable(variant, provisions, verdict, tuple(Row(*row) for row in rows))
                for variant, provisions, verdict, rows in tables
            ),
            message=message,
        )
    except (zlib.error, ValueError, TypeError) as error:
        problem = InputProblem("", "", "is damaged: a result; --fresh begins anew")
        raise InputError([problem], source="journal") from error
