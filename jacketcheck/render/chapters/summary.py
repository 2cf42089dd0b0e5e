"""Cover and summary: who, what, and what governs in each variant."""

from __future__ import annotations

from jacketcheck.inputs.load import InputFile
from jacketcheck.render.clauses import INHERITED, added_legend, by_rule_of, inherited_legend
from jacketcheck.render.numbers import MISSING
from jacketcheck.render.report_parts import (
    Align,
    Cell,
    Chapter,
    Column,
    Cover,
    Facts,
    Paragraph,
    Row,
    Table,
)
from jacketcheck.render.side_by_side import GOVERNS, comparison
from jacketcheck.render.table import row_cells
from jacketcheck.render.verdict import consequence_legend, consequences
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.results import Kind, Status
from jacketcheck.units import DisplaySystem

__all__ = ["cover", "running_line", "summary", "table_name", "verdict_cell"]

_KIND = "Check of a bolted, grouted steel jacket: calculation report"
_SYSTEMS = {"si": "SI", "us": "US customary"}


def cover(report: CheckReport, repair: InputFile, *, system: DisplaySystem, date: str) -> Cover:
    """What stands first: job, input, provisions and the verdict on each variant."""
    job = report.job
    facts = [
        ("job number", job.number),
        ("prepared by", job.engineer),
        ("date of the report", date),
        ("note", job.note),
        ("input file", report.source),
        ("SHA-256 of the input", report.digest),
        ("variants", "; ".join(report.variants)),
        *((f"provisions {name}", codes) for name, codes in report.provisions_titles.items()),
        ("units of the results", _SYSTEMS[system]),
        ("made by", f"jacketcheck {report.version}"),
    ]
    left_out = [name for name in repair.variants if name not in report.variants]
    if left_out:
        facts.insert(7, ("variants not in this report", "; ".join(left_out)))
    rows = [
        (
            table.variant,
            table.provisions,
            verdict_cell(table.status),
            _governed(table),
            row_cells(table.governing, system)[5],
        )
        for table in report.tables
    ]
    columns = ("variant", "provisions", "verdict", "governed by")
    return Cover(
        title=job.title,
        kind=_KIND,
        facts=Facts(tuple((term, text) for term, text in facts if text)),
        verdicts=Table(
            "Verdict on each variant",
            (*(Column(name) for name in columns), Column("ratio", "right")),
            tuple(rows),
        ),
    )


def running_line(report: CheckReport) -> str:
    """One line for every page."""
    parts = [report.job.number, report.job.title, f"input {report.digest[:12]}"]
    return " · ".join(part for part in parts if part)


def summary(report: CheckReport, *, system: DisplaySystem) -> Chapter:
    """What governs in numbers, and all variants side by side."""
    blocks: list[Table | Paragraph] = [_governing(report, system)]
    if len(report.tables) > 1:
        rows = [row for one in report.tables for row in one.results]
        found = (consequence_legend(report), inherited_legend(rows, INHERITED), added_legend(rows))
        legends = filter(None, found)
        blocks.append(_side_by_side(report))
        blocks.append(
            Paragraph(
                f"{GOVERNS} governs; ! exceeds 1; (…) reported without a verdict; n/a not "
                f"applicable; {''.join(f'{legend}; ' for legend in legends)}ratios are rounded up."
            )
        )
    return Chapter("Summary", "summary", tuple(blocks))


def table_name(report: CheckReport, table: VariantResults) -> str:
    """A variant, with its provisions where there are several."""
    if len(report.provisions) == 1:
        return table.variant
    return f"{table.variant}, provisions {table.provisions}"


def verdict_cell(status: Status) -> Cell:
    """A verdict that stands out where something is wrong."""
    alarm = status in {Status.EXCEEDS, Status.NOT_EVALUATED}
    return Cell(status.value, alarm=alarm, strong=alarm)


def _governed(table: VariantResults) -> str:
    governing = table.governing
    place = ", ".join(part for part in (governing.title, governing.location) if part)
    return place + by_rule_of(governing) + consequences(table)


def _governing(report: CheckReport, system: DisplaySystem) -> Table:
    rows: list[Row] = []
    for table in report.tables:
        title, where, demand, capacity, unit, ratio, _, clause = row_cells(table.governing, system)
        above = sum(row.status is Status.EXCEEDS for row in table.results)
        missing = sum(row.status is Status.NOT_EVALUATED for row in table.results)
        limits = sum(row.kind is Kind.LIMIT for row in table.results)
        rows.append(
            (
                table_name(report, table),
                f"{title}, {where}" if where else title,
                demand,
                capacity,
                unit,
                ratio,
                f"{above} of {limits}" + (f", {missing} not evaluated" if missing else ""),
                clause or MISSING,
            )
        )
    sides: tuple[tuple[str, Align], ...] = (
        ("variant", "left"),
        ("governing row", "left"),
        ("demand", "right"),
        ("capacity", "right"),
        ("unit", "left"),
        ("ratio", "right"),
        ("rows above 1", "left"),
        ("clause", "left"),
    )
    columns = tuple(Column(name, side) for name, side in sides)
    return Table("Governing row of each variant", columns, tuple(rows))


def _side_by_side(report: CheckReport) -> Table:
    found = comparison(report)
    columns = tuple(
        Column(heading, "right" if side == "right" else "left")
        for heading, side in zip(found.headings, found.align, strict=True)
    )
    *body, verdicts = found.rows
    rows: list[Row] = [
        tuple(Cell(text, alarm=True, strong=True) if text.endswith("!") else text for text in row)
        for row in body
    ]
    words = [Status(text) for text in verdicts[2:]]
    rows.append((Cell("verdict", strong=True), "", *(verdict_cell(word) for word in words)))
    return Table("Ratio of demand to capacity, variants side by side", columns, tuple(rows))
