"""What an estimate rests on: events, random variables with sources, and what has no probability."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeVar

from jacketcheck.chance.base_strain import RESIDUAL
from jacketcheck.chance.result import ChanceResult
from jacketcheck.chance.variables import Variable
from jacketcheck.render.chance_numbers import probability_text
from jacketcheck.render.numbers import number_text
from jacketcheck.render.shop_blocks import DEFAULT_WIDTH, listed
from jacketcheck.render.text_style import TextStyle, grid, user_text

__all__ = ["background", "shared_notes", "titled"]

Entry = TypeVar("Entry")
Results = Mapping[str, ChanceResult]
_HEADINGS = ("random variable", "what it is", "times", "distribution", "mean", "c.o.v.", "source")
_ALIGNMENT = ("left", "left", "left", "left", "right", "right", "left")


def titled(title: str, lines: Iterable[str], style: TextStyle, columns: int) -> str:
    """A list under its title."""
    return title + ("\n\n" if style == "markdown" else "\n") + listed(lines, style, columns)


def shared_notes(results: Results) -> tuple[str, ...]:
    """Notes that all variants have."""
    first, *others = results.values()
    return tuple(note for note in first.notes if all(note in other.notes for other in others))


def background(results: Results, style: TextStyle, width: int | None) -> list[str]:
    """Parts that hold for all variants; what only some have names them."""
    columns = max(width or DEFAULT_WIDTH, 80)
    events = {
        f"{limit.title} ({limit.id})": limit.event
        for result in results.values()
        for limit in result.limits
    }
    parts = [titled("What exceeds what:", _named(events), style, columns)]
    without = _lines(results, lambda result: _named(result.without_probability))
    parts.append(titled("Without a probability:", without, style, columns))
    not_applicable = _lines(results, lambda result: _named(result.not_applicable))
    if not_applicable:
        parts.append(titled("Does not apply:", not_applicable, style, columns))
    return [*parts, *_variables(results, style, width, columns)]


def _named(texts: Mapping[str, str]) -> list[str]:
    return [f"{name}: {text}" for name, text in texts.items()]


def _by_variant(
    results: Results, entries: Callable[[ChanceResult], Iterable[Entry]]
) -> dict[Entry, str]:
    """Every entry once, with the variants that have it if not all have."""
    found: dict[Entry, list[str]] = {}
    for variant, result in results.items():
        for entry in entries(result):
            found.setdefault(entry, []).append(variant)
    return {
        entry: "" if len(having) == len(results) else ", ".join(having)
        for entry, having in found.items()
    }


def _lines(results: Results, entries: Callable[[ChanceResult], Iterable[str]]) -> list[str]:
    return [
        f"{line} [{having}]" if having else line
        for line, having in _by_variant(results, entries).items()
    ]


def _variables(results: Results, style: TextStyle, width: int | None, columns: int) -> list[str]:
    """Table of the random variables, with correlations and sources by number."""
    sources: dict[str, int] = {}

    def number(source: str) -> int:
        return sources.setdefault(source, len(sources) + 1)

    found = _by_variant(results, _scattering)
    rows = [_row(one, number(one.source), having) for one, having in found.items()]
    widths = [None, *_text_widths(width), *[None] * 4] if width else None
    table = grid(rows, headers=_HEADINGS, align=_ALIGNMENT, style=style, widths=widths)
    correlations = _lines(
        results,
        lambda result: [
            f"{first} and {second}: {coefficient:g} [{number(source)}]"
            for (first, second), (coefficient, source) in result.variables.correlations.items()
        ],
    )
    cut = _lines(results, _cut)
    numbered = [f"[{index}] {source}" for source, index in sources.items()]
    return [
        table,
        titled("Correlation coefficients, the others zero:", correlations, style, columns),
        *(
            [titled("Distributions cut to where formulas hold:", cut, style, columns)]
            if cut
            else []
        ),
        titled("Sources of the scatter:", numbered, style, columns),
    ]


def _titled_if(lines: list[str], title: str, style: TextStyle, columns: int) -> list[str]:
    return [titled(title, lines, style, columns)] if lines else []


def _cut(result: ChanceResult) -> list[str]:
    """Variables whose distributions are cut, with what of them that takes away."""
    return [
        f"{one.name}: factors from {one.marginal.lowest:.3g} to {one.marginal.highest:.3g} "
        f"({probability_text(one.marginal.cut_off)} cut off): {one.range_source}"
        for one in result.variables
        if one.range_source
    ]


def _scattering(result: ChanceResult) -> Iterable[Variable]:
    """Variables of the jacket; what a fit leaves over is no property of it."""
    return (one for one in result.variables if one.name != RESIDUAL)


def _text_widths(width: int) -> Sequence[int]:
    return max(width // 4, 20), max(width // 5, 18)


def _row(one: Variable, source: int, having: str) -> list[str]:
    scatter = "held" if one.held else number_text(one.marginal.variation, digits=2)
    return [
        f"{one.name} [{user_text(having, 'text')}]" if having else one.name,
        one.title,
        one.relative_to,
        one.marginal.distribution,
        number_text(one.marginal.mean, digits=3),
        scatter,
        f"[{source}]",
    ]
