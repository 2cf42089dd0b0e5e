"""What the kit asks of a limit state."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping

import numpy as np

from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.case import check
from jacketcheck.conformance.marked_figures import wrongly_sourced
from jacketcheck.conformance.rows import (
    differences,
    fingerprint,
    keyed,
    place,
    rows_of,
    worst_ratios,
)
from jacketcheck.conformance.standard import EDGE_CASES
from jacketcheck.conformance.subjects import Subject
from jacketcheck.conformance.symbols import without_introduction
from jacketcheck.engine.asking import Answer
from jacketcheck.errors import DomainError, NotEvaluatedError
from jacketcheck.host.host import Registered
from jacketcheck.host.isolation import Outcome, call_isolated
from jacketcheck.jacket.designs import detached, leaves
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind, Result, Status
from jacketcheck.units import known_units

__all__ = ["LIMIT_STATE_CHECKS"]

_NUMERICAL_NOISE = 1e-6
"""What is left where a limit state solves no section itself: the strain of the base alone."""
_OF_SECTIONS = frozenset(
    {"base", "base_state", "closing", "displacement", "height", "hinge", "sections"}
)
"""Modules of analyses that solve sections."""
_HELD_BY_A_NUMBER = (
    "sleeve.thickness",
    "sleeve.steel.yield_strength",
    "bolts.pretension",
    "bolts.tensile_strength",
    "grout.strength",
    "repair_height",
)
"""Leaves in which a NaN must never become a pass, besides those declared monotonic."""


@check("limit state")
def answers(subject: Subject, bench: Bench) -> Iterator[str]:
    """Keeps the contract on ordinary jackets, and gives a verdict or a figure on one at least."""
    ordinary = {name: one for name, one in bench.jackets.items() if name not in EDGE_CASES}
    yield from _broken(subject.item, bench, ordinary)
    found = {name: bench.answer(subject.item, one, name) for name, one in bench.jackets.items()}
    if not any(_has_numbers(rows_of(outcome)) for outcome in found.values()):
        reasons = dict.fromkeys(str(one.problem) for one in found.values() if one.problem)
        said = f" ({'; '.join(reasons)})" if reasons else ""
        yield (
            f"gives no verdict and no figure on any of {len(found)} jackets{said}; give the kit a "
            "repair that the limit state is made for, with repairs={...}"
        )


@check("limit state")
def answers_at_the_edges(subject: Subject, bench: Bench) -> Iterator[str]:
    """Keeps the contract on the smallest and largest jackets, and where parts are not there."""
    edges = {name: one for name, one in bench.jackets.items() if name in EDGE_CASES}
    yield from _broken(subject.item, bench, edges)


@check("limit state")
def rows_name_their_sources(subject: Subject, bench: Bench) -> Iterator[str]:
    """Every row with numbers names its clause and has steps, each with symbol, rule and source."""
    seen: set[str] = set()
    for name, row in _rows(subject.item, bench):
        missing = [] if row.clause.strip() else ["no clause: name code, edition and clause"]
        if row.kind is Kind.LIMIT and not row.steps:
            missing.append("no steps: write them down with Steps().add(...)")
        for step in row.steps:
            lacks = [
                part
                for part in ("symbol", "expression", "source")
                if not getattr(step, part).strip()
            ]
            if lacks:
                missing.append(f"a step {step.symbol!r} without {' and '.join(lacks)}")
        for text in missing:
            if text not in seen:
                seen.add(text)
                yield f"on {name!r}: {place(row)} has {text}"


@check("limit state")
def symbols_are_introduced(subject: Subject, bench: Bench) -> Iterator[str]:
    """Every symbol of an expression is that of a step above it in the same row."""
    seen: set[tuple[str, str]] = set()
    for name, row in _rows(subject.item, bench):
        for step, symbol in without_introduction(row.steps):
            if (step.expression, symbol) not in seen:
                seen.add((step.expression, symbol))
                yield (
                    f"on {name!r}: {place(row)}: step {step.symbol!r} uses {symbol!r} in "
                    f"{step.expression!r}, and no step above says what it is; write it down "
                    f"first: Steps().add({symbol!r}, what it is, value, unit, source)"
                )


@check("limit state")
def figures_cite_their_source(subject: Subject, bench: Bench) -> Iterator[str]:
    """A step that prints a figure of the catalogue cites the source of that very figure."""
    seen: set[tuple[str, str]] = set()
    for name, figures in bench.marked.items():
        answer = bench.answer(subject.item, figures.jacket, f"{name}, figures marked")
        for row in rows_of(answer):
            for step, path in wrongly_sourced(row.steps, figures):
                if (step.symbol, path) not in seen:
                    seen.add((step.symbol, path))
                    record, _, field = path.rpartition(".")
                    yield (
                        f"on {name!r}: {place(row)}: step {step.symbol!r} prints {path} and cites "
                        f"{step.source!r}; write it down with Steps().figure({step.symbol!r}, "
                        f"what it is, jacket.{record}, {field!r}, {step.unit!r})"
                    )


@check("limit state")
def numbers_are_there(subject: Subject, bench: Bench) -> Iterator[str]:
    """Where a row has numbers, its demand, its capacity and every step are numbers."""
    for name, row in _rows(subject.item, bench):
        numbers: list[tuple[str, Real | str]] = [("its demand", row.demand)]
        if row.kind is Kind.LIMIT:
            numbers.append(("its capacity", row.capacity))
        numbers += [(f"step {step.symbol!r}", step.value) for step in row.steps]
        missing = [
            what
            for what, value in numbers
            if not isinstance(value, str) and bool(np.any(np.isnan(value)))
        ]
        if missing:
            yield (
                f"on {name!r}: {place(row)}: {', '.join(missing)} is not a number (NaN); raise "
                "NotEvaluatedError with a reason, so that the row says why"
            )


@check("limit state")
def units_are_known(subject: Subject, bench: Bench) -> Iterator[str]:
    """Every unit is an internal one that can be shown in either system."""
    allowed = ", ".join(sorted(known_units()))
    seen: set[str] = set()
    for _, row in _rows(subject.item, bench):
        used = {row.unit: place(row)}
        numbers = [one for one in row.steps if not isinstance(one.value, str)]
        used.update((one.unit, f"step {one.symbol!r}") for one in numbers)
        for unit, where in used.items():
            if unit not in known_units() and unit not in seen:
                seen.add(unit)
                yield f"{where} has the unit {unit!r}; use one of {allowed}"


@check("limit state")
def same_answer_twice(subject: Subject, bench: Bench) -> Iterator[str]:
    """Equal jackets get equal answers, to the last digit."""
    for name, jacket in bench.jackets.items():
        first = rows_of(bench.answer(subject.item, jacket, name))
        again = rows_of(bench.answer(subject.item, bench.twins[name], f"{name}, twin"))
        for text in differences(first, again):
            yield (
                f"on {name!r}, asked again: {text}; let it depend on the jacket alone, not on "
                "chance, time or earlier calls"
            )


@check("limit state")
def leaves_the_jacket_alone(subject: Subject, bench: Bench) -> Iterator[str]:
    """Neither the jacket nor an analysis that others share is changed."""
    for name, original in _bases(bench):
        bench.answer(subject.item, original, name)  # so that what it shares is there
        jacket = bench.seen_by(subject.item.limit_state.provisions, original)
        own = detached(jacket)
        own.memo.update(copy.deepcopy(jacket.memo))
        before, kept = fingerprint(own), fingerprint(own.memo)
        keys = tuple(own.memo)
        call_isolated(
            subject.item.limit_state.evaluate, own, name=name, seconds=bench.host.time_limit
        )
        if fingerprint(own) != before:
            changed = [
                path
                for (path, old), (_, new) in zip(leaves(jacket), leaves(own), strict=False)
                if fingerprint(old) != fingerprint(new)
            ]
            where = ", ".join(changed) or "its structure"
            yield f"on {name!r}: changes the jacket ({where}); make a copy with dataclasses.replace"
        if fingerprint({key: own.memo.get(key) for key in keys}) != kept:
            yield f"on {name!r}: changes a shared analysis; copy arrays before writing to them"


@check("limit state")
def one_design_or_many(subject: Subject, bench: Bench) -> Iterator[str]:
    """Many designs at once get what each gets alone."""
    for name, many in bench.many.items():
        together = bench.answer(subject.item, many, f"{name}, many designs")
        for index in range(3):
            label = f"{name}, design {index}"
            alone = rows_of(bench.answer(subject.item, bench.one_of_many(name, index), label))
            if not _has_numbers(alone):
                continue
            if not isinstance(together.value, tuple):
                told = together.problem or together.value
                yield (
                    f"on {name!r} as three designs: {told}; quantities may be arrays over designs: "
                    "use numpy functions, np.where and np.maximum instead of if and max"
                )
                break
            for text in differences(
                alone, rows_of(together), index=index, tolerance=_NUMERICAL_NOISE
            ):
                yield f"on {name!r}, design {index + 1} of three: {text} as when asked alone"


@check("limit state")
def units_of_the_input_do_not_matter(subject: Subject, bench: Bench) -> Iterator[str]:
    """The same repair written in the other system of units gets the same answer.

    To the tolerance of section analyses: strain of the base, laps and shear come from them.
    """
    for name, jacket in bench.jackets.items():
        first = rows_of(bench.answer(subject.item, jacket, name))
        label = f"{name}, rewritten"
        other = rows_of(bench.answer(subject.item, bench.rewritten[name], label))
        for text in differences(first, other, tolerance=_NUMERICAL_NOISE):
            yield (
                f"on {name!r}, written in other units: {text}; a jacket is in N, mm and MPa "
                "whatever the input was written in, and lengths must not be compared with =="
            )


@check("limit state")
def moves_as_declared(subject: Subject, bench: Bench) -> Iterator[str]:
    """The largest ratio moves in the declared direction, or not at all, when a leaf grows."""
    for leaf, direction in subject.item.limit_state.monotonic.items():
        if direction not in {-1, 0, 1}:
            yield f"monotonic[{leaf!r}] is {direction!r}; must be -1, 0 or 1"
            continue
        grown = {name: bench.grown(name, leaf) for name in bench.jackets}
        if not any(one is not None for one in grown.values()):
            yield f"monotonic names {leaf!r}, which is no number of any jacket; see `leaves`"
        for name, jacket in grown.items():
            if jacket is None or direction == 0:
                continue
            rows = rows_of(bench.answer(subject.item, jacket, f"{name}, {leaf} growing"))
            worst = worst_ratios(rows)
            if worst is not None and not _moves(worst, direction):
                shown = ", ".join(f"{one:.4g}" for one in np.atleast_1d(worst))
                yield (
                    f"on {name!r}: as {leaf} grows from 0.9 to 1.2 times its value, the "
                    f"largest ratio is {shown}; correct the limit state or what it declares"
                )


@check("limit state")
def no_pass_without_a_number(subject: Subject, bench: Bench) -> Iterator[str]:
    """What the answer depends on may be missing, but then it must not read as a pass."""
    declared = tuple(subject.item.limit_state.monotonic)
    for leaf in dict.fromkeys((*declared, *_HELD_BY_A_NUMBER)):
        for name in bench.bases:
            grown, holed = bench.grown(name, leaf), bench.holed(name, leaf)
            if grown is None or holed is None:
                continue
            moved = rows_of(bench.answer(subject.item, grown, f"{name}, {leaf} growing"))
            odd = rows_of(bench.answer(subject.item, holed, f"{name}, {leaf} missing"))
            for row in _passing_all_the_same(odd, moved):
                yield (
                    f"on {name!r} with a NaN for {leaf}: {place(row)} passes, though it depends on "
                    "it; use np.maximum and np.minimum, through which a NaN goes on"
                )


@check("limit state")
def takes_no_more_than_it_says(subject: Subject, bench: Bench) -> Iterator[str]:
    """What is not declared to take sections needs none, and rises with the demand on the base."""
    state = subject.item.limit_state
    effort = state.effort
    for name in bench.bases if effort != "sections" else ():
        least = bench.least(name, state.provisions)
        low = keyed(rows_of(bench.answer(subject.item, least, f"{name}, least demand")))
        high = keyed(rows_of(bench.answer(subject.item, bench.jackets[name], name)))
        if analyses := sorted(_analyses_of(least) & _OF_SECTIONS):
            yield (
                f"on {name!r}: asks for {', '.join(analyses)}, though its effort is {effort!r}; "
                'declare effort="sections"'
            )
        for key, row in low.items():
            if key in high and np.any(high[key].ratio < row.ratio * (1.0 - _NUMERICAL_NOISE)):
                yield (
                    f"on {name!r}: {place(row)} falls when the axial strain of the base and the "
                    'share of added bars in tension grow; declare effort="sections"'
                )


LIMIT_STATE_CHECKS = (
    answers,
    answers_at_the_edges,
    rows_name_their_sources,
    symbols_are_introduced,
    figures_cite_their_source,
    numbers_are_there,
    units_are_known,
    same_answer_twice,
    leaves_the_jacket_alone,
    one_design_or_many,
    units_of_the_input_do_not_matter,
    moves_as_declared,
    takes_no_more_than_it_says,
    no_pass_without_a_number,
)


def _broken(one: Registered, bench: Bench, jackets: Mapping[str, Jacket]) -> Iterator[str]:
    """Answers that break the contract; a refusal keeps it."""
    for name, jacket in jackets.items():
        outcome = bench.answer(one, jacket, name)
        if isinstance(outcome.value, tuple) or _refuses(outcome):
            continue
        if outcome.problem is None:
            yield f"on {name!r}: {outcome.value}"
        elif outcome.timed_out:
            yield f"on {name!r}: {outcome.problem}; do not wait for anything, vectorise loops"
        else:
            yield (
                f"on {name!r}: {outcome.problem}; raise NotEvaluatedError with a reason where "
                "something that is needed is not there"
            )


def _refuses(outcome: Outcome[Answer]) -> bool:
    return isinstance(outcome.error, NotEvaluatedError | DomainError)


def _analyses_of(jacket: Jacket) -> set[str]:
    """Modules whose analyses have been done of a jacket."""
    names = (key for key in jacket.memo if isinstance(key, str))
    return {name.split(".")[2] for name in names if name.startswith("jacketcheck.analysis.")}


def _has_numbers(rows: tuple[Result, ...]) -> bool:
    return any(row.kind in {Kind.LIMIT, Kind.REPORTED} for row in rows)


def _rows(one: Registered, bench: Bench) -> Iterator[tuple[str, Result]]:
    """Every row with numbers on every jacket."""
    for name, jacket in bench.jackets.items():
        for row in rows_of(bench.answer(one, jacket, name)):
            if row.kind in {Kind.LIMIT, Kind.REPORTED}:
                yield name, row


def _bases(bench: Bench) -> Iterator[tuple[str, Jacket]]:
    """Jackets with everything on them, as one design and as many."""
    for name in bench.bases:
        yield name, bench.jackets[name]
        yield f"{name}, many designs", bench.many[name]


def _moves(worst: Floats, direction: int) -> bool:
    """Whether ratios of growing designs go in a direction, where there are any."""
    found = np.atleast_1d(worst)
    with np.errstate(invalid="ignore"):
        steps = np.diff(found[~np.isnan(found)]) * direction
    return bool(np.all((steps >= -_NUMERICAL_NOISE) | np.isnan(steps)))


def _passing_all_the_same(odd: tuple[Result, ...], moved: tuple[Result, ...]) -> Iterator[Result]:
    """Rows that pass with a number missing, though their ratio moves with that number."""
    growing = keyed(moved)
    for key, row in keyed(odd).items():
        if row.status is Status.OK and key in growing:
            ratio = np.asarray(growing[key].ratio)
            if np.any(np.abs(ratio - ratio.flat[0]) > _NUMERICAL_NOISE):
                yield row
