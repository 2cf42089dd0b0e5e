"""Variants: a table that overrides any field of the input by its path."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from typing import Any

from jacketcheck.errors import InputProblem

__all__ = ["apply_overrides"]


def apply_overrides(
    base: Mapping[str, Any], overrides: Mapping[str, Any], *, where: str
) -> tuple[dict[str, Any], list[InputProblem]]:
    """Copy `base` with every override put in its place.

    Overrides may be nested tables or dotted paths; the entries of a list are counted from one,
    so ``damage.1.surface`` is the first damage record. A whole list may be replaced as well.

    Parameters
    ----------
    base
        The parsed file without its variants.
    overrides
        The variant's table.
    where
        Path of the variant, for messages.

    Returns
    -------
    tuple
        The changed copy, and the problems found; the copy is only of use if there are none.
    """
    changed = copy.deepcopy(dict(base))
    problems = [
        InputProblem(f"{where}.{'.'.join(path)}", repr(value), reason)
        for path, value in _leaves(overrides, ())
        if (reason := _put(changed, path, value))
    ]
    return changed, problems


def _leaves(
    table: Mapping[str, Any], path: tuple[str, ...]
) -> Iterator[tuple[tuple[str, ...], Any]]:
    for key, value in table.items():
        here = (*path, *str(key).split("."))
        if isinstance(value, Mapping) and value:
            yield from _leaves(value, here)
        else:
            yield here, value


def _put(target: Any, path: tuple[str, ...], value: Any) -> str | None:
    """Set one value; return what is wrong with the path, if anything."""
    for key in path[:-1]:
        if isinstance(target, list):
            if (index := _index(target, key)) is None:
                return f"has no entry {key}, there are {len(target)}"
            target = target[index]
        elif isinstance(target, dict):
            target = target.setdefault(key, {})
        else:
            return f"goes on below {key!r}, which is not a table"
    last = path[-1]
    if isinstance(target, list):
        if (index := _index(target, last)) is None:
            return f"has no entry {last}, there are {len(target)}"
        target[index] = value
    elif isinstance(target, dict):
        target[last] = value
    else:
        return f"goes on below {path[-2]!r}, which is not a table"
    return None


def _index(entries: list[Any], key: str) -> int | None:
    """Position of the entry that `key` counts from one."""
    if not key.isascii() or not key.isdigit() or len(key) > 4:
        return None
    index = int(key) - 1
    return index if 0 <= index < len(entries) else None
