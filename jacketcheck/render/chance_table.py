"""Probabilities of exceedance as text or Markdown."""

from __future__ import annotations

from collections.abc import Mapping

from jacketcheck.chance.report import ChanceReport
from jacketcheck.chance.result import ChanceResult, LimitChance, SystemChance
from jacketcheck.limit_state import Effort
from jacketcheck.render.chance_background import background, shared_notes, titled
from jacketcheck.render.chance_numbers import (
    driver_text,
    index_text,
    interval_text,
    probability_text,
)
from jacketcheck.render.closing import closing
from jacketcheck.render.numbers import MISSING, number_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, paragraph
from jacketcheck.render.text_style import TextStyle, emphasis, grid, subheading

__all__ = ["chance_text"]

_SHOWN_DRIVERS = 3
_SYSTEM_DRIVERS = 6
_EFFORTS: Mapping[Effort, str] = {
    "closed-form": "closed form",
    "bond": "bond of bars",
    "sections": "section analyses",
}
_METHODS = {
    "sobol": "scrambled Sobol points",
    "latin-hypercube": "Latin hypercube",
    "random": "random points",
}
_HEADINGS = (
    "limit state", "ratio at means", "probability", "95 % interval", "exceed/samples", "β",
    "β FORM", "moved most by",
)  # fmt: skip
_ALIGNMENT = ("left", "right", "right", "left", "right", "right", "right", "left")


def chance_text(
    report: ChanceReport, *, style: TextStyle = "text", width: int | None = None
) -> str:
    """Everything about the estimates of a file."""
    columns = max(width or DEFAULT_WIDTH, 80)
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…"]
    shared = shared_notes(report.results)
    parts = [
        job_heading(report.job, "Probability of exceedance", facts, style, columns),
        titled("Read with this:", shared, style, columns),
    ]
    for variant, result in report.results.items():
        parts.append(subheading(variant, style))
        parts += _variant(result, shared, style, width)
    if len(report.results) > 1:
        parts += [subheading("Side by side", style), _side_by_side(report, style)]
    parts.append(subheading("Background", style))
    parts += [_legend(style, columns), *background(report.results, style, width)]
    parts.append(closing(report, style))
    return "\n\n".join(parts) + "\n"


def _variant(
    result: ChanceResult, shared: tuple[str, ...], style: TextStyle, width: int | None
) -> list[str]:
    columns = max(width or DEFAULT_WIDTH, 80)
    own = [note for note in result.notes if note not in shared]
    parts = [
        _system(result.system, style, columns),
        _settings(result, style, columns),
        _limits(result, style, width),
    ]
    unevaluated = [
        f"{limit.id}: {limit.unevaluated:,} of {limit.samples:,} samples "
        f"({probability_text(limit.unevaluated / limit.samples)}): {limit.reason}; probability "
        f"{probability_text(limit.lowest)} if they hold, {probability_text(limit.probability)} if "
        f"they exceed{': the answer is open' if limit.open else ''}"
        for limit in result.limits
        if limit.unevaluated
    ]
    if unevaluated:
        title = "COULD NOT BE EVALUATED, counted as exceeded in the table:"
        parts.append(titled(title, unevaluated, style, columns))
    undeclared = [f"{limit.id}: {limit.event}" for limit in result.limits if not limit.declared]
    if undeclared:
        parts.append(titled("Resistance taken as nominal:", undeclared, style, columns))
    if own:
        parts.append(titled("Of this variant:", own, style, columns))
    return parts


def _system(system: SystemChance, style: TextStyle, columns: int) -> str:
    lines = [
        emphasis(
            "any of the limit states below exceeded: probability "
            f"{probability_text(system.probability)}, 95 % interval "
            f"{interval_text(system.interval)}",
            style,
        ),
        paragraph(
            f"bounds: {probability_text(system.lower_bound)} if the same samples exceed all of "
            f"them, {probability_text(system.upper_bound)} if never two at once",
            style,
            columns,
        ),
    ]
    if system.lowest < system.probability:
        lines.append(
            paragraph(
                f"{probability_text(system.lowest)} if what could not be evaluated holds; it is "
                "counted as exceeded",
                style,
                columns,
            )
        )
    if len(system.increments) > 1:
        shares = "; ".join(
            f"{_EFFORTS[effort]} {'' if index == 0 else 'adds '}{probability_text(share)}"
            for index, (effort, share) in enumerate(system.increments.items())
        )
        lines.append(paragraph(f"limit states by effort: {shares}", style, columns))
    moved = driver_text(system.drivers, _SYSTEM_DRIVERS)
    lines.append(paragraph(f"moved most by: {moved}", style, columns))
    return "\n\n".join(lines) if style == "markdown" else "\n".join(lines)


def _settings(result: ChanceResult, style: TextStyle, columns: int) -> str:
    """How many samples were drawn, and how."""
    settings = result.settings
    drawn = {limit.effort: limit.samples for limit in result.limits}
    counts = []
    for effort, text in _EFFORTS.items():
        if effort in drawn:
            method = settings.drawn(effort)
            own = "" if method == settings.method else f" ({_METHODS[method]}, as they are few)"
            counts.append(f"{drawn[effort]:,} {text}{own}")
    text = f"{_METHODS[settings.method]}, seed {settings.seed}; samples: {', '.join(counts)}"
    return paragraph(text, style, columns)


def _limits(result: ChanceResult, style: TextStyle, width: int | None) -> str:
    return grid(
        [_row(limit) for limit in result.limits],
        headers=_HEADINGS,
        align=_ALIGNMENT,
        style=style,
        widths=_widths(width),
    )


def _row(limit: LimitChance) -> list[str]:
    return [
        limit.title,
        number_text(limit.ratio_at_means, digits=3),
        probability_text(limit.probability),
        interval_text(limit.interval),
        f"{limit.exceeded:,}/{limit.samples:,}",
        index_text(limit),
        MISSING if limit.first_order_index is None else f"{limit.first_order_index:.2f}",
        driver_text(limit.drivers, _SHOWN_DRIVERS),
    ]


def _widths(width: int | None) -> list[int | None] | None:
    if width is None:
        return None
    free = max(width - 88, 48)
    return [int(0.5 * free), None, None, None, None, None, None, int(0.5 * free)]


def _side_by_side(report: ChanceReport, style: TextStyle) -> str:
    results = report.results
    titles = {limit.id: limit.title for result in results.values() for limit in result.limits}
    found = {
        (variant, limit.id): limit for variant, result in results.items() for limit in result.limits
    }

    def cell(variant: str, name: str) -> str:
        limit = found.get((variant, name))
        return MISSING if limit is None else probability_text(limit.probability)

    def likeliest(name: str) -> float:
        return max(found[key].probability for key in found if key[1] == name)

    order = sorted(titles, key=lambda name: -likeliest(name))
    rows = [
        ["any of them", *(probability_text(one.system.probability) for one in results.values())],
        *([titles[name], *(cell(variant, name) for variant in results)] for name in order),
    ]
    return grid(
        rows,
        headers=["limit state", *results],
        align=["left", *["right"] * len(results)],
        style=style,
    )


def _legend(style: TextStyle, columns: int) -> str:
    return paragraph(
        "Ratio at means: demand over capacity with every variable at its mean, without resistance "
        "factors. β: index whose normal probability is the sampled one. β FORM: by the first-order "
        "method's design point, independent of the samples; none where there is no single one, or "
        "none nearer than 12. Moved most by: how many standard deviations a variable lies off its "
        "mean in the samples that exceed (in the worst twentieth where fewer exceed, in the worse "
        "half where more do), if that stands out of the scatter; also the relative change of the "
        "probability with the variable's mean, in standard deviations. Intervals are rounded "
        "outwards; where hardly any samples exceed, or nearly all, they are Clopper-Pearson's, "
        "else Student's over 16 replicates.",
        style,
        columns,
    )
