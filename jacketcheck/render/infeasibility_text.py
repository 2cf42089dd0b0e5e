"""Why no design of a search works, as text or Markdown."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from jacketcheck.render.axis_values import value_text
from jacketcheck.render.numbers import MISSING, ratio_text
from jacketcheck.render.shop_blocks import listed, paragraph
from jacketcheck.render.text_style import TextStyle, grid, subheading
from jacketcheck.sizing.fates import Fate
from jacketcheck.sizing.infeasibility import Infeasibility, Obstacle
from jacketcheck.sizing.probing import Relaxation
from jacketcheck.sizing.report import SizingReport
from jacketcheck.sizing.way_out import Move, WayOut
from jacketcheck.units import DisplaySystem

__all__ = ["infeasibility_parts", "state_name"]

_SLIP = "seam-slip"
_MOST_OBSTACLES = 12
_MOST_CONFLICTS = 8
_MOST_RELAXATIONS = 12


def infeasibility_parts(
    report: SizingReport,
    found: Infeasibility,
    system: DisplaySystem,
    style: TextStyle,
    columns: int,
) -> Iterator[str]:
    """What stands in the way, the design that comes nearest, and which bound to relax."""
    yield subheading("What stands in the way", style)
    yield from _obstacles(report, found, style, columns)
    if found.conflicts:
        pairs = [f"{state_name(a, report)} and {state_name(b, report)}" for a, b in found.conflicts]
        yield _list(
            "Passed by some designs each, by none together:",
            pairs[:_MOST_CONFLICTS],
            style,
            columns,
        )
    if found.nearest >= 0:
        yield subheading("The design that comes nearest", style)
        yield from _nearest(report, found, system, style, columns)
    if found.relaxations:
        yield subheading("Which bound to relax, each by itself", style)
        yield from _relaxations(report, found, system, style, columns)
    if found.nearest >= 0:
        yield subheading("Which bounds to relax together", style)
        yield from _way_out(report, found.way_out, system, style, columns)


def state_name(name: str, report: SizingReport) -> str:
    """Title of a limit state, or the name itself where nobody brings it."""
    return report.titles.get(name, name)


def _obstacles(
    report: SizingReport, found: Infeasibility, style: TextStyle, columns: int
) -> Iterator[str]:
    if not found.obstacles:
        yield paragraph(_nothing_evaluated(report), style, columns)
        return
    for title, chosen in _kinds(found):
        if chosen:
            yield paragraph(title, style, columns)
            yield grid(
                [_obstacle(one, report) for one in chosen[:_MOST_OBSTACLES]],
                headers=["limit state", "smallest ratio", "passed by", "of"],
                align=["left", "right", "right", "right"],
                style=style,
            )


def _kinds(found: Infeasibility) -> Iterator[tuple[str, list[Obstacle]]]:
    never = [one for one in found.obstacles if not one.passed]
    yield (
        "No design passes, not even under the least demand that it can have:",
        [one for one in never if one.at_least],
    )
    yield (
        "No design passes of those that came to section analysis:",
        [one for one in never if not one.at_least],
    )
    if not never:
        yield "Each limit state is passed by some designs, these by the fewest:", [*found.obstacles]


def _obstacle(one: Obstacle, report: SizingReport) -> list[str]:
    return [
        state_name(one.limit_state, report),
        ratio_text(one.smallest_ratio),
        f"{one.passed:,}",
        f"{one.evaluated:,}",
    ]


def _nothing_evaluated(report: SizingReport) -> str:
    if report.fates[Fate.CANNOT_BE_BUILT] == report.count:
        return "None of the designs can be built; the reasons stand below."
    return "No limit state speaks against the designs that could be evaluated, see below."


def _nearest(
    report: SizingReport,
    found: Infeasibility,
    system: DisplaySystem,
    style: TextStyle,
    columns: int,
) -> Iterator[str]:
    values = found.nearest_values
    axes = {axis.path: axis for axis in report.axes}
    shown = [
        f"{path} = {value_text(axes[path], value, system)}"
        for path, value in values.items()
        if path in axes and value is not None and len(axes[path].values) > 1
    ]
    if shown:
        yield paragraph("; ".join(shown), style, columns)
    lines = [
        f"{state_name(name, report)}: {ratio_text(ratio)}"
        f"{_causes(found.nearest_follows.get(name, ()), report)}"
        for name, ratio in found.nearest_exceeds.items()
    ]
    if lines:
        yield _list("It exceeds:", lines, style, columns)


def _causes(names: Sequence[str], report: SizingReport) -> str:
    causes = ", ".join(state_name(name, report) for name in names)
    return f", follows from {causes}" if names else ""


def _relaxations(
    report: SizingReport,
    found: Infeasibility,
    system: DisplaySystem,
    style: TextStyle,
    columns: int,
) -> Iterator[str]:
    yield paragraph(
        "One field at a time, from the design that comes nearest to the limit state, closed form "
        "and bond under the least demand only: a ratio above 1 in the last column stays above 1.",
        style,
        columns,
    )
    yield grid(
        [_relaxation(one, report, system) for one in found.relaxations[:_MOST_RELAXATIONS]],
        headers=["limit state", "ratio", "field", "from", "to", "then", "governs then", "ratio"],
        align=["left", "right", "left", "left", "left", "right", "left", "right"],
        style=style,
    )


def _relaxation(one: Relaxation, report: SizingReport, system: DisplaySystem) -> list[str]:
    axis = next(axis for axis in report.axes if axis.path == one.path)
    return [
        state_name(one.limit_state, report),
        ratio_text(one.ratio_before),
        one.path,
        value_text(axis, one.bound, system),
        value_text(axis, one.value, system),
        ratio_text(one.ratio),
        state_name(one.then, report),
        MISSING if math.isnan(one.then_ratio) else ratio_text(one.then_ratio),
    ]


def _list(title: str, lines: list[str], style: TextStyle, columns: int) -> str:
    return title + ("\n\n" if style == "markdown" else "\n") + listed(lines, style, columns)


def _way_out(
    report: SizingReport,
    found: WayOut | None,
    system: DisplaySystem,
    style: TextStyle,
    columns: int,
) -> Iterator[str]:
    if found is None:
        yield paragraph(
            "None of the values just beyond a bound brings the nearest design closer to working, "
            "evaluated in full.",
            style,
            columns,
        )
        return
    if found.moves:
        yield paragraph(
            "From the design that comes nearest, one field after the other, each time the one that "
            "helps most; evaluated in full. A way out, neither the only nor the cheapest one: set "
            "the bounds accordingly and size again.",
            style,
            columns,
        )
        yield grid(
            [_move(one, report, system) for one in found.moves],
            headers=["field", "from", "to", "bound to relax"],
            align=["left"] * 4,
            style=style,
        )
    ratio = MISSING if math.isnan(found.ratio) else ratio_text(found.ratio)
    governing = f"{state_name(found.governing, report)} {ratio}"
    if found.works:
        yield paragraph(f"This design works, governed by {governing}.", style, columns)
    elif found.moves:
        lines = [
            f"{state_name(name, report)}: {MISSING if math.isnan(one) else ratio_text(one)}"
            f"{_causes(found.follows.get(name, ()), report)}"
            for name, one in found.exceeded.items()
        ]
        yield _list("This design still does not work; it exceeds:", lines, style, columns)
    if found.stuck:
        names = ", ".join(state_name(name, report) for name in found.stuck)
        what = ", such as bolts.tightening or bolts.faying_class" if _SLIP in found.stuck else ""
        yield paragraph(
            f"Beyond the reach of these fields: {names}. No value that was tried for any one of "
            f"them makes this ratio finite; something else of the file must change{what}.",
            style,
            columns,
        )


def _move(one: Move, report: SizingReport, system: DisplaySystem) -> list[str]:
    axis = next(axis for axis in report.axes if axis.path == one.path)
    if one.bound is None:
        bound = "none, within the bounds"
    else:
        what = "as written" if axis.is_written else f"sizing.{one.path}"
        bound = f"{what}, {value_text(axis, one.bound, system)}"
    return [
        one.path,
        value_text(axis, one.before, system),
        value_text(axis, one.value, system),
        bound,
    ]
