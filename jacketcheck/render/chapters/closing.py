"""The end of a report: judgement, plug-ins, cautions, what is not covered, and the review."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from jacketcheck.inputs.actions import Judgement
from jacketcheck.inputs.load import InputFile
from jacketcheck.render.report_parts import Bullets, Chapter, Column, Paragraph, SignOff, Table
from jacketcheck.report import CheckReport

__all__ = ["cautions", "judgement", "plugins", "review"]

_MARK: Final = "engineering judgement"


def judgement(report: CheckReport, repair: InputFile) -> Chapter:
    """Inputs that rest on engineering judgement, and results that say so."""
    written = repair.written[repair.base_name].get("judgement", {})
    columns = tuple(Column(text) for text in ("field", "meaning", "value", "from"))
    rows = tuple(
        (
            f"judgement.{name}",
            info.description or "",
            _value(getattr(repair.base.judgement, name), report),
            "the file" if name in written else "default",
        )
        for name, info in Judgement.model_fields.items()
    )
    notes = tuple(sorted(_notes(report).items(), key=lambda pair: pair[1]))
    blocks: list[Table | Paragraph | Bullets] = [
        Table(
            "Inputs that rest on engineering judgement (variants may override them)", columns, rows
        )
    ]
    if notes:
        blocks.append(Paragraph("Results that rest on engineering judgement:"))
        blocks.append(Bullets(tuple((f"{', '.join(titles)}: ", note) for note, titles in notes)))
    return Chapter("Engineering judgement", "judgement", tuple(blocks))


def _notes(report: CheckReport) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for table in report.tables:
        for result in table.results:
            for note in result.notes:
                if _MARK in note.lower():
                    titles = found.setdefault(note, [])
                    if result.title not in titles:
                        titles.append(result.title)
    return found


def _value(value: object, report: CheckReport) -> str:
    if value is None:  # only overstrength may be left to the steel of the column's bars
        steels = (table.jacket.column.layer.steel for table in report.tables)
        found = dict.fromkeys((float(one.overstrength), one.name) for one in steels)
        return "; ".join(f"{factor:g} of {name}, by the catalog" for factor, name in found)
    return f"{value:g}" if isinstance(value, float) else str(value)


def plugins(report: CheckReport) -> Chapter:
    """Everything that was asked, with versions and problems."""
    headings = ("plug-in", "distribution", "version", "provisions", "limit states", "problems")
    rows = tuple(
        (
            plugin.name,
            plugin.distribution,
            plugin.version,
            ", ".join(plugin.provisions) or "–",
            str(len(plugin.limit_states)),
            "; ".join(plugin.problems) or "none",
        )
        for plugin in report.plugins
    )
    blocks: list[Table | Paragraph] = [
        Table("Plug-ins and their versions", tuple(Column(text) for text in headings), rows)
    ]
    if report.switched_off:
        blocks.append(Paragraph(f"Switched off: {', '.join(report.switched_off)}.", alarm=True))
    return Chapter("Plug-ins and versions", "plugins", tuple(blocks))


def cautions(report: CheckReport) -> Chapter:
    """Cautions, and what is left to the engineer."""
    return Chapter(
        "Cautions and what is not covered",
        "cautions",
        (
            Bullets(tuple(("", text) for text in report.cautions)),
            Paragraph("Not covered here, for the engineer to check:", strong=True),
            Bullets(tuple(("", text) for text in report.not_covered)),
        ),
    )


def review(report: CheckReport) -> Chapter:
    """Room for the engineer's review and signature."""
    return Chapter("Review by the engineer", "review", (SignOff(tuple(_ticks(report)), _LINES),))


_LINES: Final = (
    "Variant accepted",
    "Remarks",
    "Reviewed by",
    "Licence number",
    "Date",
    "Signature",
)


def _ticks(report: CheckReport) -> Iterator[str]:
    yield "Input compared with drawings, inspection records and test results"
    yield "Provisions and editions are those that apply to this structure"
    if any(problem for plugin in report.plugins for problem in plugin.problems):
        yield "Problems of plug-ins looked into"
    yield "Values that rest on engineering judgement accepted"
    yield "What is not covered here dealt with elsewhere"
