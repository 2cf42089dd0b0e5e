"""Doing each analysis of a jacket once, and sharing it with copies of the jacket."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from functools import wraps
from typing import Any, TypeAlias, TypeVar

import numpy as np

from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.designs import (
    design_count,
    detached,
    has_designs,
    pick,
    with_values,
)
from jacketcheck.jacket.jacket import Jacket

__all__ = ["Analysis", "assuming", "design_by_design", "remembered", "sharing"]

Value = TypeVar("Value")
Record = TypeVar("Record")
Analysis: TypeAlias = Callable[[Jacket], Any]

_SHARED = "who does shared analyses"
_DESIGNS = "each design by itself"


@dataclass(frozen=True, slots=True)
class _Refusal:
    """Remembered in place of a value that there is none of."""

    reason: str


def remembered(function: Callable[[Jacket], Value]) -> Callable[[Jacket], Value]:
    """Keep what a function found with the jacket; that it refused as well, other errors not.

    A copy made by `sharing` has the functions of this package done for it.
    """
    key = _key(function)
    own = function.__module__.startswith(f"{__name__.partition('.')[0]}.")

    @wraps(function)
    def call(jacket: Jacket) -> Value:
        if key not in jacket.memo:
            someone = jacket.memo.get(_SHARED) if own else None
            try:
                jacket.memo[key] = function(jacket) if someone is None else someone(call)
            except NotEvaluatedError as error:
                jacket.memo[key] = _Refusal(str(error))
        found = jacket.memo[key]
        if isinstance(found, _Refusal):
            raise NotEvaluatedError(found.reason)
        value: Value = found
        return value

    return call


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
    twin.memo.update({_key(analysis): outcome for analysis, outcome in found.items()})
    return twin


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

    The function must return a dataclass of numbers; those of many designs become arrays.
    """

    @wraps(function)
    def call(jacket: Jacket) -> Record:
        if not has_designs(jacket):
            return function(jacket)
        records = [function(one) for one in _single_designs(jacket)]
        first: Any = records[0]
        columns = {
            one.name: np.array([getattr(record, one.name) for record in records])
            for one in fields(first)
        }
        joined: Record = type(first)(**columns)
        return joined

    return call


def _single_designs(jacket: Jacket) -> tuple[Jacket, ...]:
    """Each design by itself, picked once so that what is found of one is kept with it."""
    if _DESIGNS not in jacket.memo:
        count = design_count(jacket)
        jacket.memo[_DESIGNS] = tuple(pick(jacket, index) for index in range(count))
    found: tuple[Jacket, ...] = jacket.memo[_DESIGNS]
    return found
