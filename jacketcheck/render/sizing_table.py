"""Outcome of a search as text or Markdown: designs to choose from, and why none is cheaper."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from jacketcheck.host.made_by import made_by
from jacketcheck.render.axis_values import value_text
from jacketcheck.render.infeasibility_text import infeasibility_parts, state_name
from jacketcheck.render.numbers import number_text, ratio_text, shown_value
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, listed, paragraph
from jacketcheck.render.text_style import TextStyle, bullets, emphasis, grid, subheading
from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.fates import Fate
from jacketcheck.sizing.proof import Proof
from jacketcheck.sizing.report import SizedDesign, SizingReport
from jacketcheck.units import DisplaySystem, display

__all__ = ["sizing_text"]

_LISTED = 8
_FATES: Mapping[Fate, str] = {
    Fate.CANNOT_BE_BUILT: "cannot be built",
    Fate.CLOSED_FORM: "ruled out in closed form, under the least demand already",
    Fate.BOND: "ruled out by bond, under the least demand already",
    Fate.SECTIONS: "ruled out in full, with the demand that the section analysis finds",
    Fate.NOT_EVALUATED: "NOT EVALUATED, which is never a pass",
    Fate.WORKS: "work: every limit state evaluated and within 1",
    Fate.BEATEN: "beaten or equalled by one that works, not analysed further",
    Fate.NOT_REACHED: "not reached before the section analyses allowed were used up",
}


def sizing_text(
    report: SizingReport,
    *,
    system: DisplaySystem,
    style: TextStyle = "text",
    width: int | None = None,
    limit: int | None = None,
) -> str:
    """Everything about a search.

    Parameters
    ----------
    report
        Its outcome.
    system
        Units of the output.
    style, width
        Form of the output, and columns of the terminal.
    limit
        Designs shown at most.
    """
    columns = max(width or DEFAULT_WIDTH, 80)
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…", f"variant {report.variant}"]
    facts += [f"provisions {name}: {codes}" for name, codes in report.provisions_titles.items()]
    shown = report.front[:limit]
    parts = [
        job_heading(report.job, "Sizing", facts, style, columns),
        emphasis(_verdict(report), style),
    ]
    if shown:
        parts += _front(report, shown, system, style, width)
        parts += [
            subheading("Nothing cheaper works", style),
            *_proofs(report, shown, style, columns),
        ]
    if report.infeasibility is not None:
        parts += infeasibility_parts(report, report.infeasibility, system, style, columns)
    parts += [subheading("What was looked at", style), _grid(report, system, style, width)]
    parts.append(_fates(report, style, columns))
    parts.append(subheading("What designs are compared by", style))
    parts.append(_work(report, style, columns))
    parts.append(_footer(report, style))
    return "\n\n".join(parts) + "\n"


def _verdict(report: SizingReport) -> str:
    if not report.front:
        return "no design within the bounds was shown to work"
    count = len(report.front)
    plural = "designs" if count > 1 else "design"
    text = f"{count} {plural} to choose from: each works, and no other takes less of everything"
    if report.fates[Fate.NOT_REACHED]:
        text += "; there may be more, see what was not reached"
    return text


def _front(
    report: SizingReport,
    shown: tuple[SizedDesign, ...],
    system: DisplaySystem,
    style: TextStyle,
    width: int | None,
) -> list[str]:
    _, mass = display("kg", system)
    varied = report.varied
    headers = ["", f"steel {mass}", "bolts", "field work h", *(axis.path for axis in varied)]
    rows = [
        [
            str(design.number),
            number_text(shown_value(design.costs.steel_mass, "kg", system)[0]),
            str(design.costs.bolt_count),
            number_text(design.costs.field_hours, digits=3),
            *(value_text(axis, design.values.get(axis.path), system) for axis in varied),
            design.governing.title,
            ratio_text(shown_value(design.governing.ratio, "1", system)[0]),
        ]
        for design in shown
    ]
    table = grid(
        rows,
        headers=[*headers, "governed by", "ratio"],
        align=["right", "right", "right", "right", *["left"] * len(varied), "left", "right"],
        style=style,
        widths=None if width is None else [None] * 4 + [14] * len(varied) + [28, None],
    )
    parts = [table]
    if left := len(report.front) - len(shown):
        parts.append(f"{left} more not shown.")
    return [*parts, subheading("What they take", style), _takes(shown, system, style)]


def _takes(shown: tuple[SizedDesign, ...], system: DisplaySystem, style: TextStyle) -> str:
    _, mass = display("kg", system)
    metre = 1000.0

    def length(value: Any) -> str:
        text, unit = shown_value(float(value) * metre, "mm", system)
        return f"{text / 12.0:.0f} ft" if unit == "in" else f"{text / metre:.1f} m"

    rows = [
        [
            str(design.number),
            *(
                number_text(shown_value(value, "kg", system)[0])
                for value in (
                    design.quantities.sleeve_mass,
                    design.quantities.splice_mass,
                    design.quantities.bolt_mass,
                    design.quantities.added_bar_mass,
                )
            ),
            f"{float(design.quantities.hole_count):.0f}",
            length(design.quantities.drilled_length),
            str(design.quantities.chipped_bar_count),
            length(design.quantities.chipped_length),
            str(design.alike),
        ]
        for design in shown
    ]
    headers = [
        "", f"sleeve {mass}", f"splice {mass}", f"bolts {mass}", f"added bars {mass}",
        "holes in footing", "drilled", "bars chipped", "chipped", "others alike",
    ]  # fmt: skip
    return grid(rows, headers=headers, align=["right"] * len(headers), style=style)


def _proofs(
    report: SizingReport, shown: tuple[SizedDesign, ...], style: TextStyle, columns: int
) -> Iterator[str]:
    yield paragraph(
        "Cheaper is a design of the grid that can be built and takes at most as much steel, bolts "
        "and field work, and less of one of them.",
        style,
        columns,
    )
    yield listed(
        (f"design {design.number}: {_proof(design.proof, report)}" for design in shown),
        style,
        columns,
    )


def _proof(proof: Proof, report: SizingReport) -> str:
    if not proof.cheaper:
        return "no design of the grid is cheaper"
    ways = [
        f"{sum(found.values())} {how} ({_counted(found, report)})"
        for how, found in (
            ("exceed 1 in closed form, proven", proof.closed_form),
            ("exceed 1 in bond under the least demand", proof.bond),
            ("exceed 1 with section analysis", proof.sections),
            ("COULD NOT BE EVALUATED", proof.not_evaluated),
        )
        if found
    ]
    text = f"{proof.cheaper} cheaper: {'; '.join(ways)}"
    if not proof.is_proven:
        return f"{text}; it is not shown that none of these works"
    if proof.is_closed_form:
        return f"{text}; minimal on the grid by closed form alone"
    return f"{text}; minimal on the grid, as far as bond and section analysis are right"


def _counted(found: Mapping[str, int], report: SizingReport) -> str:
    names = [f"{state_name(name, report)} {count}" for name, count in list(found.items())[:4]]
    rest = sum(list(found.values())[4:])
    return ", ".join(names + [f"others {rest}"] * bool(rest))


def _grid(report: SizingReport, system: DisplaySystem, style: TextStyle, width: int | None) -> str:
    rows = []
    if report.tries_without_bars:
        rows.append(["added_bars", "none, with", "2", "input sizing.added_bars.left_out"])
    for axis in sorted(report.axes, key=lambda one: one.is_written):
        if axis.values == (None,):
            continue
        rows.append([axis.path, _values(axis, system), str(len(axis.values)), axis.source])
    return grid(
        rows,
        headers=["field", "values", "count", "source"],
        align=["left", "left", "right", "left"],
        style=style,
        widths=None if width is None else [None, max(width - 70, 30), None, 34],
    )


def _values(axis: Axis, system: DisplaySystem) -> str:
    texts = [value_text(axis, value, system) for value in axis.values]
    if len(texts) <= _LISTED:
        return ", ".join(texts)
    return f"{texts[0]}, {texts[1]}, … {texts[-1]}"


def _fates(report: SizingReport, style: TextStyle, columns: int) -> str:
    lines = [_fate(fate, report) for fate in _FATES if report.fates[fate]]
    title = f"Of {report.count:,} designs, {report.analysed:,} of which came to section analysis:"
    parts = [title, listed(lines, style, columns)]
    if report.refusals:
        reasons = [f"{reason}: {count:,}" for reason, count in report.refusals.items()]
        parts += ["Cannot be built:", listed(reasons[:_LISTED], style, columns)]
    if report.unevaluated:
        reasons = [f"{state_name(n, report)}: {why}" for n, why in report.unevaluated.items()]
        parts += ["COULD NOT BE EVALUATED in some designs:", listed(reasons, style, columns)]
    if report.unsettled and report.front:
        parts.append(
            f"{report.unsettled:,} designs that could not be evaluated might have been among those "
            "to choose from."
        )
    return "\n\n".join(parts) if style == "markdown" else "\n".join(parts)


def _fate(fate: Fate, report: SizingReport) -> str:
    text = f"{_FATES[fate]}: {report.fates[fate]:,}"
    decided = report.ruled_out.get(fate)
    return f"{text} ({_counted(decided, report)})" if decided else text


def _work(report: SizingReport, style: TextStyle, columns: int) -> str:
    work = report.work
    hours = (
        f"field work: {work.hours_per_bolt:g} h a bolt, {work.hours_per_hole:g} h a hole in the "
        f"footing and {work.hours_per_metre_drilled:g} h a metre drilled, "
        f"{work.hours_per_metre_chipped:g} h a metre of bar chipped free over the height of the "
        "repair (engineering judgement, sizing.field_work); an index to compare designs by, no "
        "estimate: what all of them need is left out"
    )
    lines = [
        "steel: sleeve, splice plates, bolts with nuts and washers, added bars",
        "bolts: those installed, without spares",
        hours,
    ]
    if report.default_bounds:
        lines.append(
            "the file names no bounds (sizing): stock plates and all sizes of its bolts were tried"
        )
    return listed(lines, style, columns)


def _footer(report: SizingReport, style: TextStyle) -> str:
    makers = made_by(report.version, report.plugins, report.switched_off)
    return "\n\n".join(
        [
            f"Made by {makers}.",
            bullets("Not covered here, for the engineer to check:", report.not_covered, style),
            bullets("Cautions:", report.cautions, style),
        ]
    )
