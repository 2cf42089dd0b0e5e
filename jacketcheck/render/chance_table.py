"""Probabilities of exceedance as text or Markdown."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from jacketcheck.chance.intervals import Interval
from jacketcheck.chance.report import ChanceReport
from jacketcheck.chance.result import ChanceResult, Driver, LimitChance, SystemChance
from jacketcheck.chance.variables import Variable, Variables
from jacketcheck.limit_state import Effort
from jacketcheck.render.numbers import MISSING, number_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, job_heading, listed, paragraph
from jacketcheck.render.text_style import TextStyle, bullets, emphasis, grid, subheading

__all__ = ["chance_text", "interval_text", "probability_text"]

_SHOWN_DRIVERS = 3
_SYSTEM_DRIVERS = 6
_WEAKEST_DRIVER = 0.1
_SMALLEST = 1e-12
_SMALLEST_PLAIN, _NEARLY_ONE, _ALMOST_ONE = 1e-3, 0.99, 0.9995
_EFFORTS: Mapping[Effort, str] = {
    "closed-form": "closed form",
    "bond": "bond of bars",
    "sections": "section analyses",
}
_HEADINGS = (
    "limit state", "ratio at means", "probability", "95 % interval", "samples", "β",
    "β first order", "moved most by",
)  # fmt: skip
_ALIGNMENT = ("left", "right", "right", "left", "right", "right", "right", "left")


def chance_text(
    report: ChanceReport, *, style: TextStyle = "text", width: int | None = None
) -> str:
    """Everything about the estimates of a file."""
    columns = max(width or DEFAULT_WIDTH, 80)
    facts = [f"input {report.source}, SHA-256 {report.digest[:16]}…"]
    parts = [job_heading(report.job, "Probability of exceedance", facts, style, columns)]
    for variant, result in report.results.items():
        parts.append(subheading(variant, style))
        parts += _variant(result, style, columns, width)
    if len(report.results) > 1:
        parts += [subheading("Side by side", style), _side_by_side(report, style)]
    parts.append(_legend(style, columns))
    parts.append(f"Made by jacketcheck {report.version}.")
    parts.append(bullets("Cautions:", report.cautions, style))
    return "\n\n".join(parts) + "\n"


def _variant(result: ChanceResult, style: TextStyle, columns: int, width: int | None) -> list[str]:
    return [
        _system(result.system, style, columns),
        _settings(result, style, columns),
        _limits(result, style, width),
        *_unevaluated(result, style, columns),
        _list("What exceeds what:", {one.id: one.event for one in result.limits}, style, columns),
        _list("Read with this:", result.notes, style, columns),
        *_variables(result.variables, style, width),
        _list("Without a probability:", result.not_covered, style, columns),
        *(
            [_list("Does not apply:", result.not_applicable, style, columns)]
            if result.not_applicable
            else []
        ),
    ]


def _system(system: SystemChance, style: TextStyle, columns: int) -> str:
    low, high = system.interval
    lines = [
        emphasis(
            f"any limit state exceeded: probability {probability_text(system.probability)}, "
            f"95 % interval {interval_text(Interval(low, high))}",
            style,
        ),
        paragraph(
            f"bounds: {probability_text(system.lower_bound)} if the same samples exceed all of "
            f"them, {probability_text(system.upper_bound)} if never two at once",
            style,
            columns,
        ),
    ]
    if len(system.increments) > 1:
        shares = "; ".join(
            f"{_EFFORTS[effort]} {'' if index == 0 else 'adds '}{probability_text(share)}"
            for index, (effort, share) in enumerate(system.increments.items())
        )
        lines.append(paragraph(f"limit states by effort: {shares}", style, columns))
    moved = _drivers(system.drivers, _SYSTEM_DRIVERS)
    lines.append(paragraph(f"the largest ratio is moved most by: {moved}", style, columns))
    return "\n\n".join(lines) if style == "markdown" else "\n".join(lines)


def _settings(result: ChanceResult, style: TextStyle, columns: int) -> str:
    drawn = {limit.effort: limit.samples for limit in result.limits}
    counts = ", ".join(
        f"{drawn[effort]:,} {text}" for effort, text in _EFFORTS.items() if effort in drawn
    )
    settings = result.settings
    method = {"sobol": "scrambled Sobol points", "latin-hypercube": "Latin hypercube"}
    text = (
        f"{method.get(settings.method, 'random points')}, seed {settings.seed}; samples: {counts}"
    )
    return paragraph(text, style, columns)


def _limits(result: ChanceResult, style: TextStyle, width: int | None) -> str:
    return grid(
        [_row(limit) for limit in result.limits],
        headers=_HEADINGS,
        align=_ALIGNMENT,
        style=style,
        widths=None if width is None else _widths(width),
    )


def _row(limit: LimitChance) -> list[str]:
    return [
        f"{limit.title} ({limit.id})",
        number_text(limit.ratio_at_means, digits=3),
        probability_text(limit.probability),
        interval_text(limit.interval),
        f"{limit.exceeded:,}/{limit.samples:,}",
        _index_text(limit),
        MISSING if limit.first_order_index is None else f"{limit.first_order_index:.2f}",
        _drivers(limit.drivers, _SHOWN_DRIVERS),
    ]


def _widths(width: int) -> list[int | None]:
    free = max(width - 84, 48)
    return [int(0.5 * free), None, None, None, None, None, None, int(0.5 * free)]


def _index_text(limit: LimitChance) -> str:
    """Reliability index of the sampled probability; a bound where none or all exceed."""
    from statistics import NormalDist  # noqa: PLC0415 - only here

    normal = NormalDist()
    if 0.0 < limit.probability < 1.0:
        return f"{-normal.inv_cdf(limit.probability):.2f}"
    if limit.probability == 0.0:
        return f"> {math.floor(-100.0 * normal.inv_cdf(limit.interval.high)) / 100.0:.2f}"
    return MISSING


def probability_text(value: float) -> str:
    """A probability with two significant digits.

    Examples
    --------
    >>> probability_text(0.0754), probability_text(0.00045), probability_text(0.0)
    ('0.075', '4.5e-04', '0')
    >>> probability_text(0.9968), probability_text(0.99999)
    ('0.997', '> 0.999')
    """
    if value in {0.0, 1.0}:
        return f"{value:g}"
    if value > _NEARLY_ONE:
        return f"{value:.3f}" if value < _ALMOST_ONE else "> 0.999"
    return f"{value:.2g}" if value >= _SMALLEST_PLAIN else f"{value:.1e}"


def interval_text(interval: Interval) -> str:
    """Bounds of a probability, each rounded outwards to two significant digits.

    Examples
    --------
    >>> interval_text(Interval(0.0754, 0.0761)), interval_text(Interval(0.0, 2.81e-5))
    ('0.075 to 0.077', '0 to 2.9e-05')
    """
    return f"{_outwards(interval.low, math.floor)} to {_outwards(interval.high, math.ceil)}"


def _outwards(value: float, towards: Callable[[float], int]) -> str:
    if not _SMALLEST < value < 1.0:
        # what is smaller than any estimate could show
        bound = 0.0 if towards(0.5) == 0 else _SMALLEST
        return probability_text(bound if 0.0 < value < 1.0 else min(max(value, 0.0), 1.0))
    unit = 10.0 ** (math.floor(math.log10(value)) - 1)
    return probability_text(min(towards(value / unit) * unit, 1.0))


def _drivers(drivers: tuple[Driver, ...], count: int) -> str:
    """Names of the strongest, with rank correlations."""
    strong = [one for one in drivers[:count] if abs(one.correlation) >= _WEAKEST_DRIVER]
    return ", ".join(f"{one.name} {one.correlation:+.2f}" for one in strong) or MISSING


def _unevaluated(result: ChanceResult, style: TextStyle, columns: int) -> list[str]:
    found = [limit for limit in result.limits if limit.unevaluated]
    if not found:
        return []
    lines = {
        limit.id: f"{limit.unevaluated:,} of {limit.samples:,} samples "
        f"({probability_text(limit.unevaluated / limit.samples)}): {limit.reason}"
        for limit in found
    }
    return [_list("COULD NOT BE EVALUATED, counted as exceeded:", lines, style, columns)]


def _list(
    title: str, lines: Mapping[str, str] | tuple[str, ...], style: TextStyle, columns: int
) -> str:
    texts = (
        [f"{name}: {text}" for name, text in lines.items()] if isinstance(lines, Mapping) else lines
    )
    return title + ("\n\n" if style == "markdown" else "\n") + listed(texts, style, columns)


def _variables(variables: Variables, style: TextStyle, width: int | None) -> list[str]:
    """Table of the random variables, with sources and correlations."""
    sources: dict[str, int] = {}
    rows = [_variable_row(one, sources) for one in variables]
    table = grid(
        rows,
        headers=(
            "random variable",
            "what it is",
            "times",
            "distribution",
            "mean",
            "c.o.v.",
            "source",
        ),
        align=("left", "left", "left", "left", "right", "right", "left"),
        style=style,
        widths=None
        if width is None
        else [None, max(width // 4, 20), max(width // 5, 18), *[None] * 4],
    )
    correlations = [
        f"{first} and {second}: {coefficient:g} [{sources.setdefault(source, len(sources) + 1)}]"
        for (first, second), (coefficient, source) in variables.correlations.items()
    ]
    lines = [f"[{number}] {source}" for source, number in sources.items()]
    columns = max(width or DEFAULT_WIDTH, 80)
    return [
        table,
        _list("Correlation coefficients, the others zero:", tuple(correlations), style, columns),
        _list("Sources of the scatter:", tuple(lines), style, columns),
    ]


def _variable_row(one: Variable, sources: dict[str, int]) -> list[str]:
    scatter = "held" if one.held else number_text(one.marginal.variation, digits=2)
    return [
        one.name,
        one.title,
        one.relative_to,
        one.marginal.distribution,
        number_text(one.marginal.mean, digits=3),
        scatter,
        f"[{sources.setdefault(one.source, len(sources) + 1)}]",
    ]


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
        "factors. β: index whose normal probability is the sampled one. β first order: by the "
        "design point, an independent method; none where there is no single one. Moved most by: "
        "rank correlation of the variable with the ratio. Intervals are rounded outwards; where "
        "hardly any samples exceed, or nearly all, they are Clopper-Pearson's, else Student's over "
        "16 replicates.",
        style,
        columns,
    )
