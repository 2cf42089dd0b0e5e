"""A run as JSON and CSV, in N, mm and MPa at full precision, with a published schema.

JSON has no infinity and no NaN: an infinite number is written as the text ``infinite`` and a
missing one as null.
"""

from __future__ import annotations

import csv
import io
import math
from typing import Any, Literal, TypeAlias

import numpy as np
from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Result, Status, Step

__all__ = ["OutputDocument", "plain_cell", "report_csv", "report_document", "report_json"]

SCHEMA_VERSION = 1
Number: TypeAlias = float | Literal["infinite"] | None
_STARTS_A_FORMULA = frozenset("=+-@")


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class StepRecord(_Record):
    """One line of a calculation."""

    symbol: str
    expression: str
    value: Number | str
    unit: str = Field(description="Internal unit: N, mm, MPa and products; 1 for a ratio.")
    source: str


class RowRecord(_Record):
    """One result."""

    limit_state: str
    title: str
    where: str
    demand: Number
    capacity: Number
    unit: str
    ratio: Number = Field(description="Demand over capacity; null where there is none.")
    verdict: Literal["ok", "EXCEEDS", "reported", "not applicable", "NOT EVALUATED"]
    clause: str
    provisions: str = Field(description="Set of provisions that was asked for.")
    written_by: str = Field(
        description="Set whose rule this is; another than provisions where those inherit it."
    )
    origin: str = Field(description="Distribution that the limit state comes from.")
    added_by: str = Field(description="Plug-in that added it to that set; empty for its own.")
    follows_from: list[str] = Field(
        description="Limit states whose loss this row's numbers have used; a failure of the row "
        "is a consequence where one of them fails."
    )
    consequence_of: list[str] = Field(
        description="Limit states whose failure this row's failure is a consequence of."
    )
    notes: list[str]
    steps: list[StepRecord]


class TableRecord(_Record):
    """Results of one variant under one set of provisions, what decides first."""

    variant: str
    provisions: str
    verdict: Literal["ok", "EXCEEDS", "NOT EVALUATED"]
    governing: str = Field(description="Limit state that decides.")
    followers: int = Field(description="Rows that exceed as a consequence of it.")
    rows: list[RowRecord]


class PluginRecord(_Record):
    """A plug-in that was asked."""

    name: str
    distribution: str
    version: str
    provisions: list[str]
    problems: list[str]


class OutputDocument(_Record):
    """The whole run."""

    schema_version: Literal[1]
    jacketcheck: str = Field(description="Version.")
    title: str
    source: str
    sha256: str
    exit_code: int
    tables: list[TableRecord]
    plugins: list[PluginRecord]
    switched_off: list[str]
    not_covered: list[str]
    cautions: list[str]


def report_document(report: CheckReport) -> OutputDocument:
    """Turn a run into the published output record."""
    return OutputDocument(
        schema_version=SCHEMA_VERSION,
        jacketcheck=report.version,
        title=report.job.title,
        source=report.source,
        sha256=report.digest,
        exit_code=int(report.exit_code),
        tables=[_table(table) for table in report.tables],
        plugins=[
            PluginRecord(
                name=plugin.name,
                distribution=plugin.distribution,
                version=plugin.version,
                provisions=list(plugin.provisions),
                problems=list(plugin.problems),
            )
            for plugin in report.plugins
        ],
        switched_off=list(report.switched_off),
        not_covered=list(report.not_covered),
        cautions=list(report.cautions),
    )


def report_json(report: CheckReport) -> str:
    """The run as JSON text."""
    return report_document(report).model_dump_json(indent=2) + "\n"


_CSV_COLUMNS = (
    "variant", "provisions", "limit_state", "title", "where", "demand", "capacity", "unit",
    "ratio", "verdict", "clause", "written_by", "origin", "follows_from", "consequence_of", "notes",
)  # fmt: skip


def report_csv(report: CheckReport) -> str:
    """The run as CSV text, one line for each result."""
    origins = {plugin.distribution: plugin.origin for plugin in report.plugins}
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_CSV_COLUMNS)
    for table in report.tables:
        for result in table.results:
            row = _row(result, table)
            writer.writerow(
                plain_cell(value)
                for value in (
                    table.variant, table.provisions, row.limit_state, row.title, row.where,
                    row.demand, row.capacity, row.unit, row.ratio, row.verdict, row.clause,
                    row.written_by, origins.get(row.origin, row.origin),
                    " ".join(row.follows_from), " ".join(row.consequence_of),
                    " | ".join(row.notes),
                )
            )  # fmt: skip
    return out.getvalue()


def plain_cell(value: object) -> object:
    """Keep a spreadsheet from reading a text as a formula: it then begins with an apostrophe.

    Examples
    --------
    >>> plain_cell("=1+1"), plain_cell(" @now"), plain_cell(-1.5), plain_cell("a - b")
    ("'=1+1", "' @now", -1.5, 'a - b')
    """
    if isinstance(value, str) and value.lstrip()[:1] in _STARTS_A_FORMULA:
        return f"'{value}"
    return "" if value is None else value


def _table(table: VariantResults) -> TableRecord:
    return TableRecord(
        variant=table.variant,
        provisions=table.provisions,
        verdict=table.status.value,
        governing=table.governing.limit_state,
        followers=table.followers,
        rows=[_row(result, table) for result in table.results],
    )


def _row(result: Result, table: VariantResults) -> RowRecord:
    bare = result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}
    bare = bare or result.status is Status.NOT_EVALUATED
    return RowRecord(
        limit_state=result.limit_state,
        title=result.title,
        where=result.location,
        demand=None if bare else _number(result.demand),
        capacity=None if bare else _number(result.capacity),
        unit=result.unit,
        ratio=None if bare else _number(result.ratio),
        verdict=result.status.value,
        clause=result.clause,
        provisions=result.provisions,
        written_by=result.written_by,
        origin=result.origin,
        added_by=result.added_by,
        follows_from=list(result.follows_from),
        consequence_of=list(dict.fromkeys(one.limit_state for one in table.causes_of(result))),
        notes=list(result.notes),
        steps=[_step(step) for step in result.steps],
    )


def _step(step: Step) -> StepRecord:
    value: Any = step.value if isinstance(step.value, str) else _number(step.value)
    return StepRecord(
        symbol=step.symbol,
        expression=step.expression,
        value=value,
        unit=step.unit,
        source=step.source,
    )


def _number(value: Any) -> Number:
    number = float(np.max(value))
    if math.isnan(number):
        return None
    return "infinite" if math.isinf(number) else number
