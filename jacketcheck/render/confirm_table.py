"""The confirmation as text or Markdown."""

from __future__ import annotations

import math

from jacketcheck.as_built.records import (
    AS_BUILT,
    SPECIFIED,
    Confirmation,
    ConfirmedLine,
    LineVerdict,
    Recheck,
)
from jacketcheck.render.clauses import by_rule_of
from jacketcheck.render.closing import closing
from jacketcheck.render.numbers import ratio_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, paragraph
from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.render.side_by_side import side_by_side
from jacketcheck.render.text_style import TextStyle, emphasis, grid, subheading
from jacketcheck.render.verdict import consequences
from jacketcheck.results import Status
from jacketcheck.units import DisplaySystem

__all__ = ["confirmation_text"]

_MARKS = {LineVerdict.REJECTED: "!", LineVerdict.NOT_JUDGED: "?"}


def confirmation_text(
    confirmation: Confirmation,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """Lines with their verdicts, the check side by side, sources and cautions."""
    columns = max(width or DEFAULT_WIDTH, 80)
    sources: dict[str, int] = {}
    facts = [f"{name}, SHA-256 {digest[:16]}…" for name, digest in confirmation.sources]
    parts = [job_heading(confirmation.job, "Confirmation of what was built", facts, style, columns)]
    if confirmation.record_title:
        parts.append(paragraph(confirmation.record_title, style, columns))
    parts.append(_summary(confirmation, style, columns))
    parts.append(subheading("Line by line", style))
    parts.append(_lines(confirmation, system, style, columns, sources))
    if confirmation.not_recorded:
        fields = ", ".join(confirmation.not_recorded)
        parts.append(paragraph(f"Not recorded, and worth it: {fields}.", style, columns))
    parts.append(subheading("The check: ratio of demand to capacity", style))
    if confirmation.as_built_problem:
        text = f"NOT EVALUATED as built: {confirmation.as_built_problem}"
        parts.append(paragraph(text, style, columns))
    parts.append(side_by_side(confirmation.report, style=style, width=width))
    parts.append(_sources(sources, style, columns))
    parts.append(closing(confirmation.report, style))
    return "\n\n".join(parts) + "\n"


def _summary(confirmation: Confirmation, style: TextStyle, width: int) -> str:
    """How many lines of each verdict, and the check as built."""
    counts = [
        f"{len(lines)} {verdict.value}"
        for verdict in LineVerdict
        if (lines := confirmation.with_verdict(verdict))
    ]
    status = confirmation.as_built_status.value
    governing = [
        f"{one.governing.title} {ratio_text(float(one.governing.ratio))} "
        f"({one.provisions}{by_rule_of(one.governing)}{consequences(one)})"
        for one in confirmation.report.tables
        if one.variant == AS_BUILT
    ]
    text = f"{', '.join(counts)}. Check of everything as built: {status}"
    if governing:
        text += f", governed by {'; '.join(governing)}"
    if any(
        one.variant == SPECIFIED and one.status is Status.EXCEEDS
        for one in confirmation.report.tables
    ):
        text += (
            ". The repair exceeds as specified already: a line is judged by the ratios that it "
            "raises, and the repair as a whole is not confirmed"
        )
    return emphasis(text, style) if style == "markdown" else paragraph(text, style, width)


def _lines(
    confirmation: Confirmation,
    system: DisplaySystem,
    style: TextStyle,
    width: int,
    sources: dict[str, int],
) -> str:
    rows = [_row(line, system, sources) for line in confirmation.lines]
    free = max(width - 34, 60)  # beside the narrow columns and the gaps
    headers = ["part", "item", "specified", "as built", "verdict", "ratio", "remark", "source"]
    return grid(
        rows,
        headers=headers,
        align=["left"] * 5 + ["right", "left", "left"],
        style=style,
        widths=[
            None,
            int(0.22 * free),
            int(0.17 * free),
            int(0.17 * free),
            11,
            None,
            int(0.29 * free),
            None,
        ],
    )


def _row(line: ConfirmedLine, system: DisplaySystem, sources: dict[str, int]) -> list[str]:
    one, found = line.comparison, line.recheck
    mark = _MARKS.get(line.verdict)
    remarks = [one.note]
    if found is not None:
        remarks.append(_raised(found))
    return [
        one.part,
        f"{mark} {one.item}" if mark else one.item,
        shop_quantity(one.specified, one.unit, system),
        shop_quantity(one.measured, one.unit, system),
        line.verdict.value,
        "" if found is None or math.isnan(found.ratio) else ratio_text(found.ratio),
        "; ".join(filter(None, remarks)),
        f"[{sources.setdefault(f'{one.rule}: {one.source}', len(sources) + 1)}]",
    ]


def _raised(found: Recheck) -> str:
    """Which ratio a line raises most, and from what."""
    if found.problem:
        return ""
    if not found.governing:
        return "raises no ratio"
    before = "" if math.isnan(found.before) else f" from {ratio_text(found.before)}"
    return f"raises {found.governing}{before}"


def _sources(sources: dict[str, int], style: TextStyle, width: int) -> str:
    lines = [paragraph(f"[{number}] {text}", style, width) for text, number in sources.items()]
    gap = "\n\n" if style == "markdown" else "\n"
    return subheading("Rules and sources", style) + "\n\n" + gap.join(lines)
