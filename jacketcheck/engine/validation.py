"""The contract of a limit state's answer, checked for our own and for anyone's."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from jacketcheck.inputs.written import printable
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind, Result, Step

__all__ = ["contract_problem"]


class _Breach(Exception):  # noqa: N818 - never leaves this module
    """An answer that breaks the contract; says how."""


def contract_problem(
    value: object, shape: tuple[int, ...], *, steps: bool = True
) -> tuple[Result, ...] | str:
    """Return the results, broadcast over the designs, or say in one line what is wrong with them.

    Parameters
    ----------
    value
        What a limit state returned.
    shape
        Shape of a number over the designs: empty for a single design, else one length.
    steps
        Whether the steps are kept; where nobody reads them, thousands of arrays need no copy.

    Returns
    -------
    tuple of Result, or str
        Copies that whoever answered cannot change any more; or the breach of the contract.
    """
    try:
        results = tuple(_checked(entry, shape, steps=steps) for entry in _entries(value))
        rows = [(row.title, row.location, row.clause) for row in results]
        if len(set(rows)) != len(rows):
            raise _Breach("returned the same title, location and clause twice")
    except _Breach as breach:
        return str(breach)
    return results


def _entries(value: object) -> list[Any] | tuple[Any, ...]:
    if value is None:
        raise _Breach("returned nothing")
    if isinstance(value, Result):
        raise _Breach("returned a Result, not a sequence of them")
    if not isinstance(value, list | tuple):
        raise _Breach(f"returned a {type(value).__name__}, not a sequence of Results")
    if not value:
        raise _Breach("returned an empty sequence")
    return value


def _checked(entry: object, shape: tuple[int, ...], *, steps: bool) -> Result:
    """A plain copy of one result, made once more so that its ratio is ours."""
    if not isinstance(entry, Result):
        raise _Breach(f"returned a {type(entry).__name__} among its results")
    try:
        _check_texts(entry)
        verdict = entry.kind is Kind.LIMIT
        return Result(
            title=_plain(entry.title),
            location=_plain(entry.location),
            demand=_numbers("demand", entry.demand, shape, verdict=verdict),
            capacity=_numbers("capacity", entry.capacity, shape, verdict=verdict),
            unit=_plain(entry.unit),
            clause=_plain(entry.clause),
            steps=tuple(_checked_step(step, shape) for step in entry.steps) if steps else (),
            notes=tuple(_plain(note) for note in entry.notes),
            kind=entry.kind,
            without_margin=bool(entry.without_margin),
            follows_from=tuple(_plain(name) for name in entry.follows_from),
            rule=_plain(entry.rule),
            resistance_factor=_factor("resistance_factor", entry.resistance_factor, shape),
            bias=_factor("bias", entry.bias, shape),
        )
    except _Breach as breach:
        raise _Breach(f"{breach} (row {entry.title!r}, {entry.location!r})") from breach


def _check_texts(entry: Result) -> None:
    if not isinstance(entry.kind, Kind):
        raise _Breach("kind is not one of Kind")
    if not (isinstance(entry.notes, list | tuple) and isinstance(entry.steps, list | tuple)):
        raise _Breach("notes and steps must be sequences")
    texts = (entry.title, entry.location, entry.unit, entry.clause, *entry.notes)
    if not all(isinstance(text, str) for text in texts):
        raise _Breach("title, location, unit, clause and notes must be texts")
    causes = entry.follows_from
    if not (isinstance(causes, list | tuple) and all(isinstance(one, str) for one in causes)):
        raise _Breach("follows_from must be a sequence of ids of limit states")
    if not entry.title.strip():
        raise _Breach("title is empty")
    if not isinstance(entry.rule, str):
        raise _Breach("rule is not a text")


def _checked_step(step: object, shape: tuple[int, ...]) -> Step:
    if not isinstance(step, Step):
        raise _Breach("steps must be Step records")
    symbol, expression, unit, source = step.symbol, step.expression, step.unit, step.source
    # written out, because there are a thousand steps to a jacket
    if not (
        isinstance(symbol, str)
        and isinstance(expression, str)
        and isinstance(unit, str)
        and isinstance(source, str)
    ):
        raise _Breach("symbol, expression, unit and source of a step must be texts")
    value = step.value
    if isinstance(value, float) and not shape:
        value = float(value)
    elif not isinstance(value, str):
        value = _numbers(f"step {step.symbol!r}", value, shape, verdict=False)
    else:
        value = _plain(value)
    return Step(_plain(symbol), _plain(expression), value, _plain(unit), _plain(source))


def _plain(text: str) -> str:
    """Text without anything that would act on a terminal or turn the direction of writing."""
    return text if text.isprintable() else printable(text)


def _numbers(name: str, value: object, shape: tuple[int, ...], *, verdict: bool) -> Real:
    """A number for each design; for a verdict it must be one that a ratio can be made of."""
    if not shape and isinstance(value, float) and value >= 0.0 and value < math.inf:
        return float(value)  # nothing can be wrong with it
    if type(value) is not np.ndarray and not isinstance(value, int | float | np.number):
        raise _Breach(f"{name} is not a number or an array: a {type(value).__name__}")
    numbers = np.asarray(value)
    if numbers.dtype.kind not in "iuf":
        raise _Breach(f"{name} is not a real number: {str(value)[:60]}")
    try:
        # a copy, so that what was returned cannot be changed afterwards
        numbers = np.array(np.broadcast_to(numbers, shape), dtype=float)
    except ValueError as error:
        text = f"{name} has the shape {numbers.shape}, which does not fit the designs' {shape}"
        raise _Breach(text) from error
    if verdict:
        _check_range(name, numbers)
    numbers.setflags(write=False)
    return numbers if numbers.ndim else float(numbers)


def _factor(name: str, value: object, shape: tuple[int, ...]) -> Real:
    """A factor on a capacity: a number above zero, or one for each design."""
    if isinstance(value, float) and 0.0 < value < math.inf:
        return float(value)
    factor = _numbers(name, value, shape, verdict=False)
    if not np.all(np.isfinite(factor) & np.greater(factor, 0.0)):
        raise _Breach(f"{name} is not a finite number above zero")
    return factor


def _check_range(name: str, numbers: Floats) -> None:
    # among many designs a NaN concerns its own design only, which then reads as not evaluated
    if not numbers.ndim and np.isnan(numbers):
        raise _Breach(f"{name} is not a number (NaN)")
    if np.any(numbers < 0.0):
        raise _Breach(f"{name} is negative: {float(np.nanmin(numbers)):g}")
    if name == "capacity" and np.any(np.isposinf(numbers)):
        raise _Breach("capacity is infinite, which any demand would pass")
