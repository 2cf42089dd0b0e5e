"""The summary of a batch as text: counts, the worst piers, and how each limit state fares."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.render.numbers import MISSING, ratio_text
from jacketcheck.render.text_style import bullets, grid, heading, subheading
from jacketcheck.render.verdict import following

if TYPE_CHECKING:  # a batch writes its summary, so that it must be able to import this module
    from jacketcheck.batch.summary import BatchSummary, LimitStateCount
    from jacketcheck.batch.tables import PierLine

__all__ = ["batch_text"]

_VERDICTS = ("ok", "EXCEEDS", "NOT EVALUATED", "INPUT ERROR", "FAILED")
_LONGEST_MESSAGE = 160
_LEGEND = (
    "Ratios are rounded up; – stands for none, or for one that reads 1 whenever it passes. Every\n"
    "pier and every result is in the tables."
)


def batch_text(summary: BatchSummary, *, width: int | None = None) -> str:
    """Everything about an inventory as a whole.

    Parameters
    ----------
    summary
        What was found.
    width
        Columns of the terminal; None for lines of any length.
    """
    total = sum(summary.files.values())
    parts = [heading(f"{total} file{'s' if total != 1 else ''} in {summary.folder}", "text")]
    parts.append("\n".join(_facts(summary)))
    parts.append(_verdicts(summary))
    if summary.worst:
        parts += _worst(summary, width)
    if summary.troubles:
        parts += _troubles(summary, width)
    if summary.limit_states:
        parts += _limit_states(summary, width)
    parts.append(_LEGEND)
    parts.append(_made_by(summary))
    parts.append(bullets("Not covered here, for the engineer to check:", NOT_COVERED, "text"))
    parts.append(bullets("Cautions:", CAUTIONS, "text"))
    return "\n\n".join(parts) + "\n"


def _facts(summary: BatchSummary) -> Iterator[str]:
    scope = {"base": "each file without its variants", "all": "every variant in each file"}
    yield f"checked: {scope[summary.variants]}, {summary.jackets} tables of results"
    for name, title in summary.provisions_titles.items():
        yield f"provisions {name}: {title}"


def _verdicts(summary: BatchSummary) -> str:
    rows = [[verdict, str(summary.files.get(verdict, 0))] for verdict in _VERDICTS]
    return grid(rows, headers=("verdict", "files"), align=("left", "right"), style="text")


def _worst(summary: BatchSummary, width: int | None) -> Iterator[str]:
    yield subheading(f"Largest ratios, {_many(len(summary.worst), summary.jackets)}", "text")
    several = _has_several(summary)
    rows = [[*_names(line, several=several), *_governing(line)] for line in summary.worst]
    names = _name_headings(several=several)
    yield grid(
        rows,
        headers=(*names, "ratio", "verdict", "governed by", "where"),
        align=(*("left" for _ in names), "right", "left", "left", "left"),
        style="text",
        widths=_widths(width, (*(20 for _ in names), 0, 0, 25, 20)),
    )


def _governing(line: PierLine) -> list[str]:
    row = line.governing
    if row is None or row.ratio is None:
        return [MISSING, line.verdict, "", ""]
    followers = 0 if line.table is None else line.table.followers
    title = f"{row.title}; {following(followers)}" if followers else row.title
    return [ratio_text(row.ratio), line.verdict, title, row.where]


def _troubles(summary: BatchSummary, width: int | None) -> Iterator[str]:
    shown = _many(len(summary.troubles), summary.trouble_count)
    yield subheading(f"Not checked in full, {shown}", "text")
    several = _has_several(summary)
    names = _name_headings(several=several)
    yield grid(
        [
            [*_names(line, several=several), line.verdict, _cut(line.message)]
            for line in summary.troubles
        ],
        headers=(*names, "verdict", "what is wrong"),
        align=(*("left" for _ in names), "left", "left"),
        style="text",
        widths=_widths(width, (*(20 for _ in names), 0, 60)),
    )


def _limit_states(summary: BatchSummary, width: int | None) -> Iterator[str]:
    yield subheading("By limit state: number of tables in which it is", "text")
    several = len(summary.provisions_titles) > 1
    ranked = sorted(summary.limit_states.items(), key=lambda item: _rank(item[1]))
    yield grid(
        [
            [*([provisions] if several else []), *_count_cells(count)]
            for (provisions, _), count in ranked
        ],
        headers=(
            *(["provisions"] if several else []),
            *("limit state", "ok", "EXCEEDS", "NOT EVALUATED", "governs", "worst", "in"),
        ),
        align=(
            *(["left"] if several else []),
            *("left", "right", "right", "right", "right", "right", "left"),
        ),
        style="text",
        widths=_widths(width, (*([0] if several else []), 30, 0, 0, 0, 0, 0, 25)),
    )


def _rank(count: LimitStateCount) -> tuple[int, int, float, str]:
    worst = -1.0 if count.worst is None else count.worst
    return (-count.not_evaluated, -count.exceed, -worst, count.title)


def _count_cells(count: LimitStateCount) -> list[str]:
    return [
        count.title,
        *(str(number) for number in (count.within, count.exceed, count.not_evaluated)),
        str(count.governs),
        MISSING if count.worst is None else ratio_text(count.worst),
        count.worst_file,
    ]


def _made_by(summary: BatchSummary) -> str:
    made_by = [f"jacketcheck {summary.version}"]
    made_by += [
        f"{plugin.name} ({plugin.origin})" + (" with problems" if plugin.problems else "")
        for plugin in summary.plugins
        if not plugin.built_in
    ]
    if summary.switched_off:
        made_by.append(f"switched off: {', '.join(summary.switched_off)}")
    return f"Made by {'; '.join(made_by)}."


def _has_several(summary: BatchSummary) -> bool:
    return summary.variants == "all" or len(summary.provisions_titles) > 1


def _name_headings(*, several: bool) -> tuple[str, ...]:
    return ("file", "variant", "provisions") if several else ("file",)


def _names(line: PierLine, *, several: bool) -> list[str]:
    if not several:
        return [line.file]
    table = line.table
    return [line.file, *((table.variant, table.provisions) if table is not None else ("", ""))]


def _many(shown: int, total: int) -> str:
    return f"{shown} of {total}" if shown < total else "all"


def _cut(text: str) -> str:
    return text if len(text) <= _LONGEST_MESSAGE else f"{text[:_LONGEST_MESSAGE]}…"


def _widths(width: int | None, shares: tuple[int, ...]) -> list[int | None] | None:
    """Column widths so that a table fits a terminal; a share of zero is never wrapped."""
    if width is None:
        return None
    free = max(width - 14 * shares.count(0), 60)
    return [max(8, free * share // sum(shares)) if share else None for share in shares]
