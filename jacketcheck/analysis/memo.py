"""Doing each analysis of a jacket once, and sharing it with copies of the jacket."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import partial, wraps
from threading import Lock
from typing import Any, TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import JacketcheckError
from jacketcheck.jacket.designs import (
    design_count,
    detached,
    has_designs,
    pick,
    repeated,
    take,
    with_values,
)
from jacketcheck.jacket.jacket import Jacket

__all__ = [
    "Analysis",
    "assuming",
    "design_by_design",
    "divided",
    "for_each_design",
    "remembered",
    "remembered_for_all",
    "same_where",
    "sharing",
    "some_designs",
]

Value = TypeVar("Value")
Record = TypeVar("Record")
Analysis: TypeAlias = Callable[[Jacket], Any]

_SHARED = "who does shared analyses"
_DESIGNS = "each design by itself"
_ORIGIN = "designs that it was picked from"
_ASSUMED = "counts as found"
_ALIKE = 32
"""Outcomes kept by `same_where`."""


@dataclass(frozen=True, slots=True)
class _Refusal:
    """Remembered in place of a value that there is none of."""

    error: JacketcheckError


def _remember(jacket: Jacket, key: str, find: Callable[[], Any]) -> Any:
    """What was found of a jacket before, or is found now; a refusal is remembered like a value.

    Every error that is raised on purpose counts as one, others do not: they are no answer.
    """
    if key not in jacket.memo:
        try:
            jacket.memo[key] = find()
        except JacketcheckError as error:
            jacket.memo[key] = _Refusal(error)
    return _value(jacket.memo[key])


def _value(found: Any) -> Any:
    if isinstance(found, _Refusal):
        raise found.error.with_traceback(None)
    return found


def remembered(function: Callable[[Jacket], Value]) -> Callable[[Jacket], Value]:
    """Keep what a function found with the jacket; that it refused as well, other errors not.

    A copy made by `sharing` has the functions of this package done for it.
    """
    key = _key(function)
    own = function.__module__.startswith(f"{__name__.partition('.')[0]}.")

    @wraps(function)
    def call(jacket: Jacket) -> Value:
        someone = jacket.memo.get(_SHARED) if own else None
        find = partial(function, jacket) if someone is None else partial(someone, call)
        value: Value = _remember(jacket, key, find)
        return value

    return call


def remembered_for_all(function: Callable[[Jacket], Value]) -> Callable[[Jacket], Value]:
    """Remembered, and for a design that was picked from many found for all of them together.

    The function must take arrays over designs and return a record of numbers, or a tuple of such.
    Where it refuses some of them, the others are found without them.
    """
    key = f"{_key(function)}, design by design"

    @wraps(function)
    def found(jacket: Jacket) -> Value:
        if _ORIGIN not in jacket.memo:
            return function(jacket)
        designs, index = jacket.memo[_ORIGIN]
        answers = _remember(designs, key, lambda: _answers(together, designs))
        record, place = answers[index]
        value: Value = pick(_value(record), place)
        return value

    together = remembered(found)
    return together


def _answers(together: Analysis, designs: Jacket) -> list[tuple[Any, int]]:
    """For each design the record or the refusal that holds for it, and its place in the record."""
    count = design_count(designs)
    try:
        record = together(designs)
    except JacketcheckError as error:
        parts = divided(count, error)
        if not parts:
            return [(_Refusal(error), 0)] * count
        found = [_answers(together, some_designs(designs, part)) for part in parts]
        answers: list[Any] = [None] * count
        for part, rows in zip(parts, found, strict=True):
            for index, row in zip(part.tolist(), rows, strict=True):
                answers[index] = row
        return answers
    return [(record, index) for index in range(count)]


def for_each_design(analysis: Analysis, designs: Jacket, count: int) -> list[Any]:
    """What a remembered analysis finds of each of some designs; None where it refuses one."""
    if not has_designs(designs):
        designs = repeated(designs, count)
    return [
        None if isinstance(record, _Refusal) else pick(record, place)
        for record, place in _answers(analysis, designs)
    ]


def divided(count: int, error: BaseException | None) -> list[NDArray[np.intp]]:
    """Parts of some designs that are asked by themselves, because together they were refused.

    Those that an error says to be out of range stand apart from the others; where it does not say,
    every other one does, so that what refuses few is soon left with them. No parts of one alone.

    That all are out of range does not settle it: a formula may be asked of all for the sake of
    some.
    """
    every = np.arange(count)
    if count == 1:
        return []
    wrong = error.out_of_range if isinstance(error, JacketcheckError) else None
    if wrong is not None and wrong.shape == (count,) and 0 < np.count_nonzero(wrong) < count:
        return [every[~wrong], every[wrong]]
    return [every[::2], every[1::2]]


def same_where(
    key: Callable[[Jacket], Hashable],
) -> Callable[[Callable[[Jacket], Value]], Callable[[Jacket], Value]]:
    """Let jackets that are alike in what a function looks at share what it finds.

    Parameters
    ----------
    key
        Everything that the function depends on. Outcomes of the keys seen last are kept.
    """

    def decorate(function: Callable[[Jacket], Value]) -> Callable[[Jacket], Value]:
        kept: OrderedDict[Hashable, Value] = OrderedDict()
        # limit states may run in threads of their own
        lock = Lock()

        @wraps(function)
        def call(jacket: Jacket) -> Value:
            name = key(jacket)
            with lock:
                if name in kept:
                    kept.move_to_end(name)
                    return kept[name]
            found = function(jacket)
            with lock:
                kept[name] = found
                if len(kept) > _ALIKE:
                    kept.popitem(last=False)
            return found

        return call

    return decorate


def _key(function: Analysis) -> str:
    return f"{function.__module__}.{function.__qualname__}"


def assuming(jacket: Jacket, found: Mapping[Analysis, Any]) -> Jacket:
    """Copy of a jacket for which some analyses count as done.

    Parameters
    ----------
    jacket
        One design or many; what was found of it before is not taken over.
    found
        Outcome by analysis.
    """
    twin = with_values(jacket, {})
    _assume(twin, {_key(analysis): outcome for analysis, outcome in found.items()})
    return twin


def _assume(jacket: Jacket, found: Mapping[str, Any]) -> None:
    jacket.memo.update(found)
    jacket.memo[_ASSUMED] = found


def some_designs(jacket: Jacket, indexes: NDArray[np.intp]) -> Jacket:
    """Some designs of a jacket of many, with what has been found of each by itself.

    What counts as found by `assuming` does so for them as well.
    """
    part = take(jacket, indexes)
    if _DESIGNS in jacket.memo:
        part.memo[_DESIGNS] = tuple(jacket.memo[_DESIGNS][index] for index in indexes.tolist())
    if _ASSUMED in jacket.memo:
        _assume(part, {key: take(one, indexes) for key, one in jacket.memo[_ASSUMED].items()})
    return part


def sharing(jacket: Jacket, someone: Callable[[Analysis], Any]) -> Jacket:
    """Detached copy that has the analyses of this package done by someone else.

    Parameters
    ----------
    jacket
        The original.
    someone
        Takes an analysis and returns what it found for the original, as a copy; a function, so
        that the copied jacket can itself be copied.
    """
    twin = detached(jacket)
    twin.memo[_SHARED] = someone
    return twin


def design_by_design(function: Callable[[Jacket], Record]) -> Callable[[Jacket], Record]:
    """Let a function of one design take a jacket of many, one after the other.

    The function must return a dataclass of numbers; those of many designs become arrays. What was
    found of one design, or that it was refused, is kept with it: whoever asks for the others
    without it need not find them again.
    """
    key = _key(function)

    @wraps(function)
    def call(jacket: Jacket) -> Record:
        if _ORIGIN in jacket.memo or not has_designs(jacket):
            return function(jacket)
        records = _each(function, key, _single_designs(jacket))
        first: Any = records[0]
        columns = {
            one.name: np.array([getattr(record, one.name) for record in records])
            for one in fields(first)
        }
        joined: Record = type(first)(**columns)
        return joined

    return call


def _each(function: Analysis, key: str, designs: Sequence[Jacket]) -> list[Any]:
    """What is found of each design; where any is refused, an error that says which are."""
    records: list[Any] = []
    refused = np.zeros(len(designs), dtype=bool)
    first: JacketcheckError | None = None
    for index, one in enumerate(designs):
        try:
            records.append(_remember(one, key, partial(function, one)))
        except JacketcheckError as error:
            refused[index] = True
            first = first or error
    if first is not None:
        first.out_of_range = refused
        raise first.with_traceback(None)
    return records


def _single_designs(jacket: Jacket) -> tuple[Jacket, ...]:
    """Each design by itself, picked once so that what is found of one is kept with it."""
    if _DESIGNS not in jacket.memo:
        count = design_count(jacket)
        jacket.memo[_DESIGNS] = tuple(_picked(jacket, index) for index in range(count))
    found: tuple[Jacket, ...] = jacket.memo[_DESIGNS]
    return found


def _picked(jacket: Jacket, index: int) -> Jacket:
    one = pick(jacket, index)
    one.memo[_ORIGIN] = jacket, index
    if _ASSUMED in jacket.memo:
        _assume(one, {key: pick(found, index) for key, found in jacket.memo[_ASSUMED].items()})
    return one
