"""The confirmation as JSON and CSV, in N, mm and MPa at full precision."""

from __future__ import annotations

import csv
import io
import math
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.as_built.records import Confirmation, ConfirmedLine
from jacketcheck.render.records import OutputDocument, plain_cell, report_document

__all__ = ["ConfirmationDocument", "confirmation_csv", "confirmation_document", "confirmation_json"]


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class ConfirmedLineRecord(_Record):
    """One line."""

    part: str
    item: str
    specified: float | str
    measured: float | str
    unit: str = Field(description="Internal unit; empty for words.")
    rule: str
    verdict: Literal["accepted", "accepted by recheck", "REJECTED", "NOT JUDGED", "not yet"]
    ratio: float | Literal["infinite"] | None = Field(
        description="Largest ratio that this line raises; null where it raises none."
    )
    before: float | Literal["infinite"] | None = Field(
        description="The same ratio as specified; null for a new row."
    )
    governing: str
    note: str
    source: str


class ConfirmationDocument(_Record):
    """The whole confirmation."""

    schema_version: Literal[1]
    title: str
    record: str
    sources: dict[str, str] = Field(description="SHA-256 by file.")
    exit_code: int
    as_built: Literal["ok", "EXCEEDS", "NOT EVALUATED"]
    as_built_problem: str
    lines: list[ConfirmedLineRecord]
    not_recorded: list[str]
    check: OutputDocument = Field(description="As specified and as built.")
    cautions: list[str]


def confirmation_document(confirmation: Confirmation) -> ConfirmationDocument:
    """Turn a confirmation into the published output record."""
    return ConfirmationDocument(
        schema_version=1,
        title=confirmation.job.title,
        record=confirmation.record_title,
        sources=dict(confirmation.sources),
        exit_code=int(confirmation.exit_code),
        as_built=confirmation.as_built_status.value,
        as_built_problem=confirmation.as_built_problem,
        lines=[_line(line) for line in confirmation.lines],
        not_recorded=list(confirmation.not_recorded),
        check=report_document(confirmation.report),
        cautions=list(confirmation.cautions),
    )


def confirmation_json(confirmation: Confirmation) -> str:
    """A confirmation as JSON text."""
    return confirmation_document(confirmation).model_dump_json(indent=2) + "\n"


def confirmation_csv(confirmation: Confirmation) -> str:
    """A confirmation as CSV text, one row a line, then the cautions."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    columns = tuple(ConfirmedLineRecord.model_fields)
    writer.writerow(columns)
    for line in confirmation.lines:
        row = _line(line).model_dump()
        writer.writerow(plain_cell(row[column]) for column in columns)
    for caution in confirmation.cautions:
        writer.writerow([plain_cell("cautions"), plain_cell(caution), *[""] * (len(columns) - 2)])
    return out.getvalue()


def _line(line: ConfirmedLine) -> ConfirmedLineRecord:
    one, found = line.comparison, line.recheck
    return ConfirmedLineRecord(
        part=one.part,
        item=one.item,
        specified=one.specified,
        measured=one.measured,
        unit=one.unit,
        rule=one.rule,
        verdict=line.verdict.value,
        ratio=None if found is None else _ratio(found.ratio),
        before=None if found is None else _ratio(found.before),
        governing="" if found is None else found.governing,
        note=one.note,
        source=one.source,
    )


def _ratio(ratio: float) -> float | Literal["infinite"] | None:
    if math.isnan(ratio):
        return None
    return "infinite" if math.isinf(ratio) else ratio
