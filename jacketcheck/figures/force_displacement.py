"""Force-displacement of the original column and of each variant of the repair."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from textwrap import wrap
from typing import Final

import numpy as np
from matplotlib.axes import Axes

from jacketcheck.analysis.displacement import envelope_of_original, envelope_of_repaired
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.figures.drawing import Drawing
from jacketcheck.figures.labels import LineEnd, Mark, name_line_ends, name_positions
from jacketcheck.figures.style import LINES, chart, new_figure, styled
from jacketcheck.figures.words import axis_label, joined, quantity, shown
from jacketcheck.inputs.written import printable
from jacketcheck.mechanics.force_displacement import ForceDisplacement
from jacketcheck.report import VariantResults
from jacketcheck.results import Status
from jacketcheck.units import DisplaySystem

__all__ = ["force_displacement"]

_WIDEST_NAME: Final = 26
_ORIGINAL: Final = "original column"
_VERDICTS: Final = {Status.EXCEEDS: "exceeds", Status.NOT_EVALUATED: "not evaluated"}


@dataclass(frozen=True, eq=False)
class _Envelopes:
    """Envelopes with the names that share them, why others are missing, and the demands [mm]."""

    lines: list[tuple[list[str], ForceDisplacement]] = field(default_factory=list)
    missing: dict[str, str] = field(default_factory=dict)
    demands: list[float] = field(default_factory=list)


@styled
def force_displacement(tables: Sequence[VariantResults], *, system: DisplaySystem) -> Drawing:
    """Draw the envelope of the original column and of each variant; one design each.

    Parameters
    ----------
    tables
        Results of the variants; of one variant under several provisions the first counts.
    system
        Units of the axes.

    Returns
    -------
    Drawing
        To the ultimate displacement of each. Variants with the same envelope share a line.

    Raises
    ------
    NotEvaluatedError
        If there is no envelope at all.
    """
    found = _envelopes(tables)
    if not found.lines:
        raise NotEvaluatedError("; ".join(dict.fromkeys(found.missing.values())))
    names = [
        [part for name in names for part in wrap(name, _WIDEST_NAME)] for names, _ in found.lines
    ]
    figure = new_figure(7.0, max(3.4, 1.0 + 0.18 * sum(len(one) for one in names)))
    axes = chart(figure, right=2.0, top=0.45)
    marks = [Mark(shown(one, "mm", system), "demand") for one in found.demands]
    _frame(axes, found, marks, system)
    ends = []
    for index, (_, envelope) in enumerate(found.lines):
        style = LINES[index % len(LINES)]
        x = envelope.displacement * shown(1.0, "mm", system)
        y = envelope.force * shown(1.0, "N", system)
        axes.plot(x, y, color=style.color, linestyle=style.dashes)
        axes.plot(x[-1], y[-1], color=style.color, marker=style.marker, markersize=5.0)
        ends.append(LineEnd(float(x[-1]), float(y[-1]), "\n".join(names[index]), style.color))
    name_line_ends(axes, ends)
    name_positions(axes, marks)
    return Drawing(
        name="force-displacement",
        title="Force-displacement of the original column and the repair",
        alt=_alt(found, system),
        figure=figure,
        remark="Repaired columns with their hinge above the repair, P-Delta deducted. A variant "
        "that exceeds a limit need not reach this envelope.",
    )


def _frame(axes: Axes, found: _Envelopes, marks: Sequence[Mark], system: DisplaySystem) -> None:
    furthest = [shown(line.ultimate_displacement, "mm", system) for _, line in found.lines]
    highest = [shown(line.peak_force, "N", system) for _, line in found.lines]
    axes.set_xlim(0.0, 1.03 * max([*furthest, *(mark.x for mark in marks)]))
    axes.set_ylim(0.0, 1.1 * max(highest))
    axes.set_xlabel(axis_label("displacement of the column's top", "mm", system))
    axes.set_ylabel(axis_label("lateral force", "N", system))


def _envelopes(tables: Sequence[VariantResults]) -> _Envelopes:
    found = _Envelopes()
    for table in _first_of_each(tables):
        name = printable(table.variant)
        original = f"original column of {name}" if found.lines else _ORIGINAL
        if table.status is not Status.OK:
            name = f"{name} ({_VERDICTS[table.status]})"
        pairs = ((original, envelope_of_original), (name, envelope_of_repaired))
        for label, envelope in pairs:
            try:
                _collect(found, label, envelope(table.jacket))
            except NotEvaluatedError as error:
                found.missing[label] = str(error)
    given = {table.jacket.demands.displacement for table in tables}
    found.demands.extend(sorted(float(one) for one in given if one is not None))
    return found


def _first_of_each(tables: Sequence[VariantResults]) -> Iterator[VariantResults]:
    seen: set[str] = set()
    for table in tables:
        if table.variant not in seen:
            seen.add(table.variant)
            yield table


def _collect(found: _Envelopes, name: str, line: ForceDisplacement) -> None:
    for names, other in found.lines:
        same = np.array_equal(line.displacement, other.displacement)
        if same and np.array_equal(line.force, other.force):
            if not name.startswith(_ORIGINAL):
                names.append(name)
            return
    found.lines.append(([name], line))


def _alt(found: _Envelopes, system: DisplaySystem) -> str:
    sentences = [
        f"Line of {joined(names)}: largest force {quantity(line.peak_force, 'N', system)}, "
        f"ultimate displacement {quantity(line.ultimate_displacement, 'mm', system)}."
        for names, line in found.lines
    ]
    if found.demands:
        values = joined([quantity(value, "mm", system) for value in found.demands])
        sentences.append(f"The displacement demand is {values}.")
    sentences += [f"{name} is not drawn: {reason}." for name, reason in found.missing.items()]
    return " ".join(sentences)
