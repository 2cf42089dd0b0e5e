"""The bolt schedule as JSON and CSV, in N, mm and MPa at full precision."""

from __future__ import annotations

import csv
import io
import math
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from jacketcheck.host.made_by import made_by
from jacketcheck.render.records import plain_cell
from jacketcheck.schedule.records import (
    BoltSchedule,
    Instruction,
    ScheduleLine,
    ScheduleReport,
)

__all__ = ["ScheduleDocument", "schedule_csv", "schedule_document", "schedule_json"]


class _Record(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class LineRecord(_Record):
    """One figure or word."""

    item: str
    value: float | str | None
    unit: str = Field(description="Internal unit: N, mm, MPa, N mm, deg; 1 for a number.")
    basis: str
    note: str
    verdict: Literal["", "ok", "PROBLEM", "NOT EVALUATED"]
    source: str


class SectionRecord(_Record):
    """Lines under one heading."""

    title: str
    lines: list[LineRecord]


class OrderRecord(_Record):
    """One part to order."""

    part: str
    description: str
    per_seam: int
    installed: int
    spares: int
    order: int
    source: str


class InstructionRecord(_Record):
    """One thing to do or to look at."""

    text: str
    source: str


class TighteningRecord(_Record):
    """Order of tightening: rows from the top, bolts from left to right seen from outside."""

    numbers: list[list[int]]
    columns: int
    source: str


class VariantRecord(_Record):
    """Schedule of one variant."""

    variant: str
    bolt: str
    exit_code: int
    orders: list[OrderRecord]
    sections: list[SectionRecord]
    tightening: TighteningRecord
    procedure: list[InstructionRecord]
    inspection: list[InstructionRecord]


class ScheduleDocument(_Record):
    """All schedules of a repair file."""

    schema_version: Literal[1]
    jacketcheck: str = Field(description="Version.")
    made_by: str = Field(description="jacketcheck and the plug-ins, each with its version.")
    title: str
    source: str
    sha256: str
    exit_code: int
    schedules: list[VariantRecord]
    cautions: list[str]


def schedule_document(report: ScheduleReport) -> ScheduleDocument:
    """Turn schedules into the published output record."""
    return ScheduleDocument(
        schema_version=1,
        jacketcheck=report.version,
        made_by=made_by(report.version, report.plugins, report.switched_off),
        title=report.job.title,
        source=report.source,
        sha256=report.digest,
        exit_code=int(report.exit_code),
        schedules=[_variant(schedule) for schedule in report.schedules],
        cautions=list(report.cautions),
    )


def schedule_json(report: ScheduleReport) -> str:
    """Schedules as JSON text."""
    return schedule_document(report).model_dump_json(indent=2) + "\n"


_CSV_COLUMNS = (
    "variant", "section", "item", "value", "unit", "basis", "note", "verdict", "source",
)  # fmt: skip


def schedule_csv(report: ScheduleReport) -> str:
    """Schedules as CSV text: parts to order first, then every line, then the cautions."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(_CSV_COLUMNS)
    for schedule in report.schedules:
        for row in _csv_rows(schedule):
            writer.writerow(plain_cell(cell) for cell in (schedule.variant, *row))
    for caution in report.cautions:
        writer.writerow(plain_cell(cell) for cell in ("", "cautions", caution, *[""] * 6))
    return out.getvalue()


def _csv_rows(schedule: BoltSchedule) -> list[tuple[object, ...]]:
    rows: list[tuple[object, ...]] = [
        ("to order", f"{order.part}: {order.description}", order.order, "1",
         f"{order.installed} installed + {order.spares} spare", "", "", order.source)
        for order in schedule.orders
    ]  # fmt: skip
    for section in schedule.sections:
        rows += [
            (section.title, line.item, line.value, line.unit, line.basis, line.note,
             line.verdict.value, line.source)
            for line in section.lines
        ]  # fmt: skip
    count = len(schedule.tightening.numbers)
    for index, numbers in enumerate(schedule.tightening.numbers):
        text = " ".join(map(str, numbers))
        rows.append(
            ("order of tightening", f"row {count - index} of {count} from the bottom", text, "",
             "left to right, seen from outside", "", "", schedule.tightening.source)
        )  # fmt: skip
    for title, lines in (("procedure", schedule.procedure), ("inspection", schedule.inspection)):
        rows += [
            (title, str(number), line.text, "", "", "", "", line.source)
            for number, line in enumerate(lines, start=1)
        ]
    return rows


def _variant(schedule: BoltSchedule) -> VariantRecord:
    return VariantRecord(
        variant=schedule.variant,
        bolt=schedule.designation,
        exit_code=int(schedule.exit_code),
        orders=[
            OrderRecord(
                part=order.part,
                description=order.description,
                per_seam=order.per_seam,
                installed=order.installed,
                spares=order.spares,
                order=order.order,
                source=order.source,
            )
            for order in schedule.orders
        ],
        sections=[
            SectionRecord(title=section.title, lines=[_line(line) for line in section.lines])
            for section in schedule.sections
        ],
        tightening=TighteningRecord(
            numbers=[list(row) for row in schedule.tightening.numbers],
            columns=schedule.tightening.columns,
            source=schedule.tightening.source,
        ),
        procedure=_instructions(schedule.procedure),
        inspection=_instructions(schedule.inspection),
    )


def _line(line: ScheduleLine) -> LineRecord:
    missing = isinstance(line.value, float) and not math.isfinite(line.value)
    return LineRecord(
        item=line.item,
        value=None if missing else line.value,
        unit=line.unit,
        basis=line.basis,
        note=line.note,
        verdict=line.verdict.value,
        source=line.source,
    )


def _instructions(lines: tuple[Instruction, ...]) -> list[InstructionRecord]:
    return [InstructionRecord(text=line.text, source=line.source) for line in lines]
