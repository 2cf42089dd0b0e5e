"""Outcome of a sweep as JSON and CSV with every ratio, in N, mm and MPa; with a schema."""

from __future__ import annotations

import csv
import io
import math
from typing import Any, Literal, TypeAlias

from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.host.made_by import made_by
from jacketcheck.render.clauses import clause_text
from jacketcheck.render.records import plain_cell
from jacketcheck.sweep.report import SweepReport

__all__ = ["SweepDocument", "sweep_csv", "sweep_document", "sweep_json"]

SCHEMA_VERSION = 1
Number: TypeAlias = float | Literal["infinite"] | None
Value: TypeAlias = float | int | str | bool


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class FieldRecord(_Record):
    """One field that varies."""

    field: str
    unit: str = Field(description="Internal unit; 1 for counts and ratios, empty for names.")
    values: list[Value] = Field(description="Value in each design.")


class RowRecord(_Record):
    """One row of ratios."""

    limit_state: str
    provisions: str
    written_by: str = Field(description="Set whose rule this is, where provisions inherit it.")
    added_by: str = Field(description="Plug-in that added it to that set; empty for its own.")
    title: str
    where: str = Field(description="Empty where designs differ.")
    clause: str
    follows_from: list[str] = Field(description="Limit states whose loss some design has used.")
    ratios: list[Number] = Field(description="By design; null where there is none.")


class SweepDocument(_Record):
    """The whole sweep; lists over designs are all in the same order."""

    schema_version: Literal[1]
    made_by: str
    title: str
    source: str
    sha256: str
    variant: str
    provisions: list[str]
    exit_code: int
    designs: int
    fields: list[FieldRecord]
    verdicts: list[Literal["ok", "EXCEEDS", "NOT EVALUATED", "cannot be built"]]
    governing_ratios: list[Number] = Field(description="Ratio of the row that decides.")
    governing: list[str] = Field(description="Limit state; empty for what cannot be built.")
    followers: list[int] = Field(description="Rows that exceed as a consequence of that.")
    refusals: dict[int, str] = Field(description="Why a design cannot be built, by its number.")
    unevaluated: dict[str, str]
    rows: list[RowRecord]
    not_covered: list[str]
    cautions: list[str]


def sweep_document(report: SweepReport) -> SweepDocument:
    """Turn a sweep into the published record."""
    ratios = report.ratios
    return SweepDocument(
        schema_version=SCHEMA_VERSION,
        made_by=made_by(report.version, report.plugins, report.switched_off),
        title=report.job.title,
        source=report.source,
        sha256=report.digest,
        variant=report.variant,
        provisions=list(report.provisions_titles),
        exit_code=int(report.exit_code),
        designs=report.plan.count,
        fields=[
            FieldRecord(field=one.path, unit=one.unit, values=report.plan.column(index))
            for index, one in enumerate(report.plan.varied)
        ],
        verdicts=list(report.verdicts),
        governing_ratios=[_number(value) for value in ratios.governing_ratio.tolist()],
        governing=_governing(report),
        followers=report.ratios.followers.tolist(),
        refusals=report.refusals,
        unevaluated={row.limit_state: reason for row, reason in ratios.reasons.items()},
        rows=[
            RowRecord(
                limit_state=row.limit_state,
                provisions=row.provisions,
                written_by=row.written_by,
                added_by=row.added_by,
                title=row.title,
                where=ratios.places[place],
                clause=row.clause,
                follows_from=sorted(ratios.follows_from.get(row, ())),
                ratios=[_number(value) for value in ratios.ratio[place].tolist()],
            )
            for place, row in enumerate(ratios.rows)
        ],
        not_covered=list(report.not_covered),
        cautions=list(report.cautions),
    )


def sweep_json(report: SweepReport) -> str:
    """A sweep as JSON text."""
    return sweep_document(report).model_dump_json(indent=2) + "\n"


def sweep_csv(report: SweepReport) -> str:
    """A sweep as CSV text: one design a line, one ratio a column.

    Columns are named by field with its unit, and by limit state, place and clause.
    """
    ratios, plan = report.ratios, report.plan
    headers = [f"{one.path} [{one.unit}]" if one.unit else one.path for one in plan.varied]
    headers += ["verdict", "governing ratio", "governing", "rows that follow"]
    headers += [
        "; ".join(
            part for part in (row.limit_state, place, clause_text(row), row.provisions) if part
        )
        for row, place in zip(ratios.rows, ratios.places, strict=True)
    ]
    columns: list[list[Any]] = [plan.column(index) for index in range(len(plan.varied))]
    columns += [
        list(report.verdicts),
        [_number(value) for value in ratios.governing_ratio.tolist()],
        _governing(report),
        report.ratios.followers.tolist(),
    ]
    columns += [[_number(value) for value in row] for row in ratios.ratio.tolist()]
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(plain_cell(header) for header in headers)
    for cells in zip(*columns, strict=True):
        writer.writerow(plain_cell(cell) for cell in cells)
    return out.getvalue()


def _governing(report: SweepReport) -> list[str]:
    rows = report.ratios.rows
    if not rows:
        return [""] * report.plan.count
    return [
        "" if number in report.refusals else rows[place].limit_state
        for number, place in enumerate(report.ratios.governing.tolist())
    ]


def _number(value: float) -> Number:
    if math.isnan(value) or value == -math.inf:
        return None
    return "infinite" if math.isinf(value) else value
