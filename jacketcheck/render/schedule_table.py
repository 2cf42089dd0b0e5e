"""The bolt schedule as text or Markdown."""

from __future__ import annotations

from jacketcheck.host.made_by import made_by
from jacketcheck.render.shop_blocks import (
    DEFAULT_WIDTH,
    job_heading,
    listed,
    numbered,
    paragraph,
    part_heading,
)
from jacketcheck.render.shop_numbers import shop_quantity
from jacketcheck.render.text_style import TextStyle, bullets, grid, subheading, user_text
from jacketcheck.schedule.records import (
    BoltSchedule,
    Instruction,
    ScheduleLine,
    ScheduleReport,
    ScheduleSection,
    TighteningOrder,
    Verdict,
)
from jacketcheck.units import DisplaySystem

__all__ = ["schedule_text"]

_MARK = "!"


def schedule_text(
    report: ScheduleReport,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
) -> str:
    """All schedules with sources, steps, inspection and cautions."""
    writer = _Writer(system, style, max(width or DEFAULT_WIDTH, 80))
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…"]
    parts = [job_heading(report.job, "Bolt schedule", facts, style, writer.width)]
    for schedule in report.schedules:
        parts += writer.schedule(schedule)
    parts.append(writer.sources())
    makers = made_by(report.version, report.plugins, report.switched_off)
    parts.append(user_text(f"Made by {makers}.", style))
    parts.append(bullets("Cautions:", report.cautions, style))
    return "\n\n".join(parts) + "\n"


class _Writer:
    """Writes schedules and numbers their sources across all of them."""

    def __init__(self, system: DisplaySystem, style: TextStyle, width: int) -> None:
        self._system = system
        self._style: TextStyle = style
        self.width = width
        self._sources: dict[str, int] = {}

    def schedule(self, schedule: BoltSchedule) -> list[str]:
        """Parts of one schedule."""
        style = self._style
        parts = [subheading(f"{schedule.variant} — {schedule.designation}", style)]
        parts.append(self._open_points(schedule))
        parts += [part_heading("To order", style), self._orders(schedule)]
        for section in schedule.sections:
            parts += [part_heading(section.title, style), self._section(section)]
        parts.append(part_heading("Order of tightening", style))
        parts += self._map(schedule.tightening)
        for title, instructions in (
            ("Procedure", schedule.procedure),
            ("Inspection", schedule.inspection),
        ):
            parts.append(part_heading(title, style))
            parts.append(self._instructions(instructions, tick=title == "Inspection"))
        return parts

    def sources(self) -> str:
        """The list that the numbers in brackets point to."""
        title = subheading("Sources", self._style)
        lines = [
            paragraph(f"[{number}] {text}", self._style, self.width)
            for text, number in self._sources.items()
        ]
        gap = "\n\n" if self._style == "markdown" else "\n"
        return f"{title}\n\n" + gap.join(lines)

    def _cite(self, source: str) -> str:
        return f"[{self._sources.setdefault(source, len(self._sources) + 1)}]"

    def _open_points(self, schedule: BoltSchedule) -> str:
        points = schedule.open_points
        if not points:
            return "No open points: the bolts fit what the check counts, and can be installed."
        lines = [
            f"{point.verdict.value}: {point.item}: {self._value(point)}"
            + (f"; {point.note}" if point.note else "")
            for point in points
        ]
        count = f"{len(points)} open point{'s' if len(points) > 1 else ''} before ordering:"
        gap = "\n\n" if self._style == "markdown" else "\n"
        mark = f"- {_MARK}" if self._style == "markdown" else _MARK
        return f"{count}{gap}{listed(lines, self._style, self.width, mark=mark)}"

    def _orders(self, schedule: BoltSchedule) -> str:
        rows = [
            [
                order.part,
                order.description,
                str(order.per_seam),
                str(order.installed),
                str(order.spares),
                str(order.order),
                self._cite(order.source),
            ]
            for order in schedule.orders
        ]
        headers = ["part", "description", "per seam", "installed", "spare", "to order", "source"]
        return grid(
            rows,
            headers=headers,
            align=["left", "left", "right", "right", "right", "right", "left"],
            style=self._style,
            widths=[None, max(self.width - 62, 30), None, None, None, None, None],
        )

    def _section(self, section: ScheduleSection) -> str:
        rows = [
            [
                self._marked(line),
                self._value(line),
                "; ".join(text for text in (line.basis, line.note) if text),
                self._cite(line.source),
            ]
            for line in section.lines
        ]
        free = self.width - 14
        return grid(
            rows,
            headers=["item", "value", "remark", "source"],
            align=["left"] * 4,
            style=self._style,
            widths=[int(0.27 * free), int(0.37 * free), int(0.36 * free), None],
        )

    def _marked(self, line: ScheduleLine) -> str:
        is_open = line.verdict in {Verdict.PROBLEM, Verdict.NOT_EVALUATED}
        return f"{_MARK} {line.item}" if is_open else line.item

    def _value(self, line: ScheduleLine) -> str:
        return shop_quantity(line.value, line.unit, self._system)

    def _map(self, order: TighteningOrder) -> list[str]:
        count = len(order.numbers)
        rows = []
        for index, numbers in enumerate(order.numbers):
            row = count - index
            name = {1: f"{row} (bottom)", count: f"{row} (top)"}.get(row, str(row))
            left, right = numbers[: order.columns], numbers[order.columns :]
            rows.append([name, *map(str, left), "|", *map(str, right)])
        columns = range(1, order.columns + 1)
        headers = [
            "row",
            *(f"left {column}" for column in reversed(columns)),
            "seam",
            *(f"right {column}" for column in columns),
        ]
        text = (
            "Seen from outside; the same on both seams. Column 1 is next to the seam. Both for "
            f"snugging and for the final tightening. {self._cite(order.source)}"
        )
        alignment = ["left", *["right"] * order.columns, "center", *["right"] * order.columns]
        return [
            paragraph(text, self._style, self.width),
            grid(rows, headers=headers, align=alignment, style=self._style),
        ]

    def _instructions(self, lines: tuple[Instruction, ...], *, tick: bool) -> str:
        texts = [f"{line.text} {self._cite(line.source)}" for line in lines]
        if not tick:
            return numbered(texts, self._style, self.width)
        mark = "- [ ]" if self._style == "markdown" else "[ ]"
        return listed(texts, self._style, self.width, mark=mark)
