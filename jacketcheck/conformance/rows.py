"""Comparing what limit states answered, and what they were given."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from typing import Any, TypeAlias

import numpy as np

from jacketcheck.engine.asking import Answer
from jacketcheck.host.isolation import Outcome
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind, Result

__all__ = ["differences", "fingerprint", "keyed", "place", "rows_of", "worst_ratios"]

Key: TypeAlias = tuple[str, str, int]


def rows_of(outcome: Outcome[Answer]) -> tuple[Result, ...]:
    """Rows of an answer; none where there is no answer that keeps the contract."""
    return outcome.value if isinstance(outcome.value, tuple) else ()


def place(row: Result) -> str:
    """How a row is named in a message."""
    return f"row {row.title!r}{f', {row.location!r}' if row.location else ''}, {row.clause!r}"


def differences(
    first: Sequence[Result],
    second: Sequence[Result],
    *,
    index: int | None = None,
    tolerance: float = 0.0,
) -> Iterator[str]:
    """How rows differ from those that they should equal.

    Parameters
    ----------
    first, second
        Rows to compare.
    index
        Design of `second` that `first` is of; None if both are of the same designs.
    tolerance
        Relative.
    """
    theirs = keyed(second)
    for key, row in keyed(first).items():
        other = theirs.pop(key, None)
        if other is None:
            yield f"{place(row)} is not there"
        elif other.kind is not row.kind:
            yield f"{place(row)} is {other.kind.value} instead of {row.kind.value}"
        elif row.kind in {Kind.LIMIT, Kind.REPORTED}:
            for name in ("demand", "capacity"):
                wanted, found = getattr(row, name), _design(getattr(other, name), index)
                if not _alike(wanted, found, tolerance):
                    yield f"{place(row)} has {name} {found} instead of {wanted}"
    if index is None:
        for row in theirs.values():
            yield f"{place(row)} is there as well"


def worst_ratios(rows: Sequence[Result]) -> Floats | None:
    """Largest ratio of each design over all rows with a verdict; None where there is none."""
    ratios = [np.asarray(row.ratio) for row in rows if row.kind is Kind.LIMIT]
    return np.max(np.broadcast_arrays(*ratios), axis=0) if ratios else None


def fingerprint(value: Any) -> Any:
    """What compares equal as long as nothing in a tree of records, sequences and arrays changes."""
    if isinstance(value, np.ndarray):
        return value.shape, value.tobytes()
    if is_dataclass(value) and not isinstance(value, type):
        named = {one.name: getattr(value, one.name) for one in fields(value) if one.compare}
        return type(value).__name__, fingerprint(named)
    if isinstance(value, Mapping):
        return tuple((key, fingerprint(one)) for key, one in value.items())
    if isinstance(value, list | tuple):
        return tuple(fingerprint(one) for one in value)
    return repr(value) if isinstance(value, float) else value


def keyed(rows: Sequence[Result]) -> dict[Key, Result]:
    """Rows by title, clause and how many of these came before.

    Not by location, in which the words of many designs may differ from those of one.
    """
    seen: Counter[tuple[str, str]] = Counter()
    keyed = {}
    for row in rows:
        keyed[row.title, row.clause, seen[row.title, row.clause]] = row
        seen[row.title, row.clause] += 1
    return keyed


def _design(value: Real, index: int | None) -> Real:
    return value if index is None or np.ndim(value) == 0 else float(np.asarray(value)[index])


def _alike(first: Real, second: Real, tolerance: float) -> bool:
    return bool(
        np.allclose(first, second, rtol=tolerance, atol=tolerance * 1e-3, equal_nan=True)
        if tolerance
        else np.array_equal(first, second, equal_nan=True)
    )
