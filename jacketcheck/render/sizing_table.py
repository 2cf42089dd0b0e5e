"""Outcome of a search as text or Markdown: designs to choose from, and why none is cheaper."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from jacketcheck.inputs.fields import value_at
from jacketcheck.render.axis_values import value_text
from jacketcheck.render.clauses import by_rule_of
from jacketcheck.render.closing import closing
from jacketcheck.render.infeasibility_text import infeasibility_parts, state_name
from jacketcheck.render.numbers import ratio_text, shown_value
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, listed, paragraph
from jacketcheck.render.text_style import TextStyle, emphasis, grid, subheading
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
        parts += _front(report, shown, system, style, columns)
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
    parts.append(closing(report, style))
    return "\n\n".join(parts) + "\n"


def _verdict(report: SizingReport) -> str:
    if not report.front:
        return "no design within the bounds was shown to work"
    count = len(report.front)
    if count > 1:
        text = (
            f"{count} designs to choose from: each works, and none that works takes less of one "
            "thing without more of another"
        )
    else:
        text = "1 design to choose from: it works, and none that works takes less of anything"
    if report.fates[Fate.NOT_REACHED]:
        text += "; there may be more, see what was not reached"
    return text


def _front(
    report: SizingReport,
    shown: tuple[SizedDesign, ...],
    system: DisplaySystem,
    style: TextStyle,
    columns: int,
) -> Iterator[str]:
    """What the designs take and what governs; fields in which they differ, then those shared."""
    _, mass = display("kg", system)
    texts = {
        axis: [_value(axis, design, system) for design in shown]
        for axis in report.axes
        if not axis.is_written and any(design.values.get(axis.path) is not None for design in shown)
    }
    differ = [axis for axis, column in texts.items() if len(set(column)) > 1]
    rows = [
        [
            str(design.number),
            _mass(design.costs.steel_mass, system),
            str(design.costs.bolt_count),
            f"{design.costs.field_hours:.1f}",
            *(texts[axis][place] for axis in differ),
            f"{design.governing.title}{by_rule_of(design.governing)}",
            ratio_text(shown_value(design.governing.ratio, "1", system)[0]),
        ]
        for place, design in enumerate(shown)
    ]
    headers = ["", f"steel {mass}", "bolts", "field work h", *(axis.path for axis in differ)]
    yield grid(
        rows,
        headers=[*headers, "governed by", "ratio"],
        align=["right", "right", "right", "right", *["left"] * len(differ), "left", "right"],
        style=style,
        widths=[None] * 4 + [16] * len(differ) + [46, None] if style == "text" else None,
    )
    if left := len(report.front) - len(shown):
        yield f"{left:,} more not shown; --limit shows more, --format csv all."
    shared = [f"{axis.path} {column[0]}" for axis, column in texts.items() if axis not in differ]
    if shared:
        who = "All of them" if len(shown) > 1 else "It"
        verb = "have" if len(shown) > 1 else "has"
        yield paragraph(f"{who} {verb}: {'; '.join(shared)}.", style, columns)
    yield paragraph(
        "--save FILE writes a design as the table of a variant, to check, draw and order by.",
        style,
        columns,
    )
    yield subheading("What they take" if len(shown) > 1 else "What it takes", style)
    yield _takes(shown, system, style)
    yield paragraph(
        "Holes for added bars in the footing; alike are other designs of the grid that take the "
        "same steel, bolts and field work, not analysed once this one worked.",
        style,
        columns,
    )


def _value(axis: Axis, design: SizedDesign, system: DisplaySystem) -> str:
    """Value of an axis; where it is a multiple of the bolt diameter, what that was rounded to."""
    value = design.values.get(axis.path)
    if axis.in_diameters and value is not None:
        length = value_text(
            replace(axis, in_diameters=False), value_at(axis.path, design.repair), system
        )
        return f"{length} ({value_text(axis, value, system)})"
    return value_text(axis, value, system)


def _mass(value: Any, system: DisplaySystem) -> str:
    number = float(shown_value(float(value), "kg", system)[0])
    return f"{number:.0f}" if number >= 100.0 else f"{number:.1f}"


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
                _mass(value, system)
                for value in (
                    design.quantities.sleeve_mass,
                    design.quantities.splice_mass,
                    design.quantities.bolt_mass,
                    design.quantities.added_bar_mass,
                )
            ),
            str(design.bolt_rows),
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
        "bolt rows", "holes", "drilled", "bars chipped", "chipped", "alike",
    ]  # fmt: skip
    return grid(
        rows,
        headers=headers,
        align=["right"] * len(headers),
        style=style,
    )


def _proofs(
    report: SizingReport, shown: tuple[SizedDesign, ...], style: TextStyle, columns: int
) -> Iterator[str]:
    yield paragraph(
        "Cheaper is a design of the grid that can be built and takes at most as much steel, bolts "
        "and field work, and less of one of them. Every one of these was evaluated. Closed-form "
        "limit states and bond were evaluated under the least demand that a design can have, which "
        "section analysis can only raise; what exceeds 1 there is ruled out for good. Each counts "
        "under the limit state that it exceeds most.",
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
        f"{sum(found.values()):,} exceed 1 {how} ({_counted(found, report)})"
        for how, found in (
            ("in closed form", proof.closed_form),
            ("in bond", proof.bond),
            ("with the demand from section analysis", proof.sections),
        )
        if found
    ]
    if proof.not_evaluated:
        unknown = f"{sum(proof.not_evaluated.values()):,} COULD NOT BE EVALUATED"
        ways.append(f"{unknown} ({_counted(proof.not_evaluated, report)})")
    return f"{proof.cheaper:,} cheaper: {'; '.join(ways)}. {_conclusion(proof)}"


def _conclusion(proof: Proof) -> str:
    if not proof.is_proven:
        return "It is NOT shown that none of these works"
    if proof.is_closed_form:
        return "Minimal on the grid: proven by closed form alone"
    proven = sum(proof.closed_form.values())
    return (
        f"Minimal on the grid: proven in closed form against {proven:,} of them, against the other "
        f"{proof.cheaper - proven:,} as far as the numerical solutions go"
    )


def _counted(found: Mapping[str, int], report: SizingReport) -> str:
    names = [f"{state_name(name, report)} {count:,}" for name, count in list(found.items())[:4]]
    rest = sum(list(found.values())[4:])
    return ", ".join(names + [f"others {rest:,}"] * bool(rest))


def _grid(report: SizingReport, system: DisplaySystem, style: TextStyle, width: int | None) -> str:
    rows = []
    if report.tries_without_bars:
        rows.append(
            ["added_bars", "left out, or as below", "2", "input sizing.added_bars.left_out"]
        )
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
    if report.fates[Fate.NOT_REACHED]:
        parts.append(f"--analyses allows more than {report.most:,} section analyses.")
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
            "the file names no bounds (table sizing): stock plates, all sizes of its bolts, one to "
            "four bolt lines on each side of a seam, and chipping or not were tried"
        )
    return listed(lines, style, columns)
