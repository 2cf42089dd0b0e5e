"""The steps of a check with numbers, one line each."""

from __future__ import annotations

from collections.abc import Sequence

from tabulate import tabulate

from jacketcheck.render.clauses import owner_text
from jacketcheck.render.numbers import MISSING, quantity_text, ratio_text, shown_value
from jacketcheck.results import Kind, Result, Status
from jacketcheck.units import DisplaySystem

__all__ = ["explanation"]


def explanation(
    result: Result, *, system: DisplaySystem, causes: Sequence[str] = (), markdown: bool = False
) -> str:
    """All steps of one result: symbol, expression, value with unit, source.

    Parameters
    ----------
    result
        What is explained.
    system
        Units of the output.
    causes
        What it follows from, one note each.
    markdown
        Whether to write Markdown.
    """
    title = f"{result.title}, {result.location}" if result.location else result.title
    head = f"### {title}" if markdown else f"{title}\n{'-' * len(title)}"
    place = f"({owner_text(result)}, limit state {result.limit_state})"
    blocks = [head, f"{result.clause} {place}".lstrip()]
    if result.steps:
        rows = [
            [
                step.symbol,
                step.expression,
                quantity_text(step.value, step.unit, system),
                step.source,
            ]
            for step in result.steps
        ]
        blocks.append(
            tabulate(
                rows,
                headers=["symbol", "from", "value", "source"],
                tablefmt="pipe" if markdown else "simple",
                colalign=("left", "left", "right", "left"),
                disable_numparse=True,
            )
        )
    blocks.append(_verdict(result, system))
    blocks += [f"Note: {note}" for note in (*causes, *result.notes)]
    return "\n\n".join(blocks)


def _verdict(result: Result, system: DisplaySystem) -> str:
    if result.kind in {Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED}:
        return str(result.status.value)
    demand = quantity_text(result.demand, result.unit, system)
    capacity = quantity_text(result.capacity, result.unit, system)
    ratio = ratio_text(shown_value(result.ratio, "1", system)[0])
    if result.status is Status.NOT_EVALUATED:
        ratio = MISSING
    return f"demand {demand} / capacity {capacity} = {ratio}  {result.status.value}"
