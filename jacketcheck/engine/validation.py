"""The contract of a limit state's answer, checked for our own and for anyone's."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from jacketcheck.results import Kind, Result, Step

__all__ = ["contract_problem"]


def contract_problem(  # noqa: PLR0911 - one return for each clause of the contract
    value: object, shape: tuple[int, ...]
) -> tuple[Result, ...] | str:
    """Return the results, broadcast over the designs, or say in one line what is wrong with them.

    Parameters
    ----------
    value
        What a limit state returned.
    shape
        Shape of a number over the designs: empty for a single design, else one length.
    """
    if value is None:
        return "returned nothing"
    if isinstance(value, Result):
        return "returned a Result, not a sequence of them"
    if not isinstance(value, list | tuple):
        return f"returned a {type(value).__name__}, not a sequence of Results"
    if not value:
        return "returned an empty sequence"
    for entry in value:
        if not isinstance(entry, Result):
            return f"returned a {type(entry).__name__} among its results"
        if problem := _entry_problem(entry, shape):
            return f"{problem} (row {entry.title!r}, {entry.location!r})"
    rows = [(row.title, row.location, row.clause) for row in value]
    if len(set(rows)) != len(rows):
        return "returned the same title, location and clause twice"
    return tuple(_broadcast(entry, shape) for entry in value)


def _entry_problem(entry: Result, shape: tuple[int, ...]) -> str | None:
    """What is wrong with one result, if anything."""
    if not isinstance(entry.kind, Kind):
        return "kind is not one of Kind"
    texts = (entry.title, entry.location, entry.unit, entry.clause, *entry.notes)
    if not all(isinstance(text, str) for text in texts):
        return "title, location, unit, clause and notes must be texts"
    if not all(isinstance(step, Step) for step in entry.steps):
        return "steps must be Step records"
    if entry.kind is not Kind.LIMIT:
        return None
    for name, value in (("demand", entry.demand), ("capacity", entry.capacity)):
        if problem := _number_problem(value, shape):
            return f"{name} {problem}"
    return None


def _number_problem(value: object, shape: tuple[int, ...]) -> str | None:
    try:
        numbers = np.asarray(value, dtype=float)
        np.broadcast_to(numbers, shape)
    except (TypeError, ValueError):
        return f"is not a number for each design: {str(value)[:60]}"
    # among many designs a NaN concerns its own design only, which then reads as not evaluated
    if not shape and np.isnan(numbers).any():
        return "is not a number (NaN)"
    if (numbers < 0.0).any():
        return f"is negative: {float(np.min(numbers)):g}"
    return None


def _broadcast(entry: Result, shape: tuple[int, ...]) -> Result:
    if not shape:
        return replace(entry, demand=_float(entry.demand), capacity=_float(entry.capacity))
    return replace(
        entry,
        demand=np.broadcast_to(np.asarray(entry.demand, float), shape),
        capacity=np.broadcast_to(np.asarray(entry.capacity, float), shape),
    )


def _float(value: object) -> float:
    return float(np.asarray(value, float))
