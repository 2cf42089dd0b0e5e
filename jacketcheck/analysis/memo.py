"""Doing each analysis of a jacket once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from functools import wraps
from typing import Any, TypeVar

import numpy as np

from jacketcheck.jacket.designs import design_count, has_designs, pick
from jacketcheck.jacket.jacket import Jacket

__all__ = ["design_by_design", "remembered"]

Value = TypeVar("Value")
Record = TypeVar("Record")


def remembered(function: Callable[[Jacket], Value]) -> Callable[[Jacket], Value]:
    """Keep what a function found with the jacket, errors excluded."""
    key = f"{function.__module__}.{function.__qualname__}"

    @wraps(function)
    def call(jacket: Jacket) -> Value:
        if key not in jacket.memo:
            jacket.memo[key] = function(jacket)
        found: Value = jacket.memo[key]
        return found

    return call


def design_by_design(function: Callable[[Jacket], Record]) -> Callable[[Jacket], Record]:
    """Let a function of one design take a jacket of many, one after the other.

    The function must return a dataclass of numbers; those of many designs become arrays.
    """

    @wraps(function)
    def call(jacket: Jacket) -> Record:
        if not has_designs(jacket):
            return function(jacket)
        records = [function(pick(jacket, index)) for index in range(design_count(jacket))]
        first: Any = records[0]
        columns = {
            one.name: np.array([getattr(record, one.name) for record in records])
            for one in fields(first)
        }
        joined: Record = type(first)(**columns)
        return joined

    return call
