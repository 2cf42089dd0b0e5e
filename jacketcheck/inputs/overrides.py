"""Variants: a table that overrides any field of the input by its path."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from typing import Any, TypeAlias

from jacketcheck.errors import InputProblem
from jacketcheck.inputs.written import dotted, shown

__all__ = ["REMOVE", "apply_overrides"]

REMOVE = "remove"
"""Key of a variant under which it lists the paths of fields that it does without."""

Path: TypeAlias = tuple[str, ...]
_GONE = object()


class _BadPath(Exception):  # noqa: N818 - never leaves this module
    """A path that leads nowhere; says why."""


def apply_overrides(
    base: Mapping[str, Any], overrides: Mapping[str, Any]
) -> tuple[dict[str, Any], list[InputProblem]]:
    """Copy `base` with every override put in its place.

    Overrides may be nested tables or dotted paths; the entries of a list are counted from one,
    so ``damage.1.surface`` is the first damage record. A whole list may be replaced as well.
    ``remove`` lists paths of fields that go back to their defaults, and of list entries that go.

    Parameters
    ----------
    base
        The parsed file without its variants.
    overrides
        The variant's table.

    Returns
    -------
    tuple
        The changed copy, and the problems found; the copy is only of use if there are none.

    Examples
    --------
    >>> base = {"sleeve": {"thickness": "10 mm"}, "footing": {"depth": "1 m"}}
    >>> apply_overrides(base, {"sleeve.thickness": "12 mm", "remove": ["footing"]})
    ({'sleeve': {'thickness': '12 mm'}}, [])
    """
    changed = copy.deepcopy(dict(base))
    problems: list[InputProblem] = []
    seen: set[Path] = set()
    for path, value in _leaves({k: v for k, v in overrides.items() if k != REMOVE}, ()):
        try:
            if path in seen:
                raise _BadPath("is overridden twice")
            seen.add(path)
            _put(changed, path, copy.deepcopy(value))
        except _BadPath as error:
            problems.append(InputProblem(dotted(path), shown(value), str(error)))
    problems += _remove(changed, overrides.get(REMOVE, []))
    return changed, problems


def _leaves(table: Mapping[str, Any], path: Path) -> Iterator[tuple[Path, Any]]:
    for key, value in table.items():
        here = (*path, *key.split("."))
        if isinstance(value, Mapping) and value:
            yield from _leaves(value, here)
        else:
            yield here, value


def _put(target: Any, path: Path, value: Any) -> None:
    """Set one value; tables on the way are made where there are none."""
    *above, last = path
    for key in above:
        if isinstance(target, dict):
            target = target.setdefault(key, {})
        else:
            target = target[_index(target, key)]
        if not isinstance(target, dict | list):
            raise _BadPath(f"goes on below {shown(key)}, which is not a table")
    target[_index(target, last) if isinstance(target, list) else last] = value


def _remove(target: dict[str, Any], written: object) -> list[InputProblem]:
    """Take out what a variant does without; entries of a list are counted before any goes."""
    if not (isinstance(written, list) and all(isinstance(path, str) for path in written)):
        return [InputProblem(REMOVE, shown(written), "must be a list of paths in quotes")]
    problems = []
    holders = []
    for path in written:
        try:
            holders.append(_mark_as_gone(target, path.split(".")))
        except _BadPath as error:
            problems.append(InputProblem(REMOVE, shown(path), str(error)))
    for holder in holders:
        _drop_marked(holder)
    return problems


def _mark_as_gone(target: Any, path: list[str]) -> Any:
    """Mark one field or list entry; return the table or list that holds it."""
    *above, last = path
    for key in above:
        target = target[_present(target, key)]
        if not isinstance(target, dict | list):
            raise _BadPath(f"goes on below {shown(key)}, which is not a table")
    target[_present(target, last)] = _GONE
    return target


def _drop_marked(holder: Any) -> None:
    if isinstance(holder, list):
        holder[:] = [entry for entry in holder if entry is not _GONE]
    else:
        for key in [key for key, value in holder.items() if value is _GONE]:
            del holder[key]


def _present(target: Any, key: str) -> str | int:
    """Key of a table, or position in a list, that is there."""
    if isinstance(target, list):
        return _index(target, key)
    if key not in target:
        raise _BadPath(f"holds no {shown(key)} in the file")
    return key


def _index(entries: list[Any], key: str) -> int:
    """Position of the entry that `key` counts from one."""
    written = key.isascii() and key.isdigit() and len(key) <= 4
    if not (written and 1 <= int(key) <= len(entries)):
        count = len(entries)
        raise _BadPath(f"has no entry {shown(key)}, there {'is' if count == 1 else 'are'} {count}")
    return int(key) - 1
