"""Many designs in one jacket: stacking, taking some, and replacing values by arrays.

A jacket is a tree of frozen records. Its leaves are numbers (or arrays over designs), labels, and
choices such as the hole type. Designs may differ in numbers and labels; a choice is one for all.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import fields
from functools import cache
from typing import Any, Final, TypeGuard, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

from jacketcheck.jacket._roles import is_label, shared_label
from jacketcheck.jacket.jacket import Jacket

__all__ = [
    "choices",
    "design_count",
    "detached",
    "has_designs",
    "joined",
    "leaves",
    "pick",
    "read_only",
    "repeated",
    "stack",
    "take",
    "with_values",
]

Record = TypeVar("Record")
Integers = NDArray[np.integer[Any]]

_SHAPE = "shape over designs"


def _is_number(value: object) -> TypeGuard[Any]:
    return isinstance(value, int | float | np.ndarray | np.number) and not isinstance(value, bool)


_PLAIN: Final = (float, str, int, type(None))
"""Leaves that hold no array over designs."""


def _is_record(value: object) -> bool:
    return hasattr(type(value), "__dataclass_fields__")


def _children(record: Any) -> list[tuple[str, Any, bool]]:
    """Name, value and whether it is a label, for all that belongs to the value of a record."""
    roles = _roles(cast("Hashable", type(record)))
    return [(name, getattr(record, name), shown_only) for name, shown_only in roles]


@cache
def _roles(kind: Any) -> tuple[tuple[str, bool], ...]:
    """Name and whether it is a label, for all fields that belong to the value of a record."""
    return tuple((one.name, is_label(one)) for one in fields(kind) if one.compare)


def leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Dotted path and value of every leaf that is not a label; tuples count from one.

    Examples
    --------
    >>> from jacketcheck.jacket.jacket import Demands
    >>> dict(leaves(Demands(axial_load=1.0, axial_strain=None, displacement=2.0)))
    {'axial_load': 1.0, 'axial_strain': None, 'displacement': 2.0}
    """
    if _is_record(value):
        for name, child, shown_only in _children(value):
            if not shown_only:
                yield from leaves(child, f"{path}.{name}" if path else name)
    elif isinstance(value, tuple):
        for index, child in enumerate(value, start=1):
            yield from leaves(child, f"{path}.{index}")
    else:
        yield path, value


def choices(jacket: Jacket) -> tuple[tuple[str, Any], ...]:
    """Path and value of every leaf that designs of one jacket must share; no numbers, no labels."""
    return tuple((path, value) for path, value in leaves(jacket) if not _is_number(value))


def has_designs(jacket: Jacket) -> bool:
    """Whether any field is an array over designs."""
    return bool(_design_shape(jacket))


def design_count(jacket: Jacket) -> int:
    """Number of designs; 1 for a jacket without arrays."""
    shape = _design_shape(jacket)
    return shape[0] if shape else 1


def _design_shape(jacket: Jacket) -> tuple[int, ...]:
    """Shape of a number over the designs, looked up once for each jacket."""
    if _SHAPE not in jacket.memo:
        shapes = {np.shape(value) for _, value in leaves(jacket) if _is_number(value)}
        jacket.memo[_SHAPE] = np.broadcast_shapes(*shapes)
    shape: tuple[int, ...] = jacket.memo[_SHAPE]
    return shape


def pick(record: Record, index: int) -> Record:
    """One design of a jacket (or of a part of one), without arrays.

    Of an array with further axes one row is left.
    """

    def picked(value: Any) -> Any:
        if isinstance(value, np.ndarray) and value.ndim:
            place = index if value.shape[0] > 1 else 0
            if value.ndim > 1:
                return value[place : place + 1]
            return bool(value[place]) if value.dtype == bool else float(value[place])
        return value

    chosen: Record = _mapped(record, picked)
    return chosen


def take(record: Record, indexes: Integers) -> Record:
    """Some designs of a jacket (or of a part of one), in the order of `indexes`."""

    def taken(value: Any) -> Any:
        if isinstance(value, np.ndarray) and value.ndim and value.shape[0] > 1:
            return _frozen(value[indexes])
        return value

    chosen: Record = _mapped(record, taken)
    return chosen


def read_only(record: Record) -> Record:
    """Copy of a jacket (or of a part of one) whose arrays cannot be written to."""
    frozen: Record = _mapped(record, _frozen)
    return frozen


def detached(jacket: Jacket) -> Jacket:
    """Copy that shares no memory, so that whoever gets it cannot change the original.

    No analysis comes with it.
    """
    twin = copy.deepcopy(jacket, {id(jacket.memo): {_SHAPE: _design_shape(jacket)}})
    for _, value in leaves(twin):
        if isinstance(value, np.ndarray):
            value.setflags(write=False)
    return twin


def with_values(jacket: Jacket, values: Mapping[str, Any]) -> Jacket:
    """Copy with some leaves replaced; the paths are those of `leaves`.

    Raises
    ------
    KeyError
        If the jacket has no such leaf.
    """
    known = {path for path, _ in leaves(jacket)}
    if unknown := sorted(set(values) - known):
        raise KeyError(f"no such field of a jacket: {', '.join(unknown)}")
    changes = {tuple(path.split(".")): value for path, value in values.items()}
    changed: Jacket = _replaced(jacket, changes)
    return changed


def stack(jackets: Sequence[Jacket]) -> Jacket:
    """Put jackets that differ in numbers and labels only into one.

    Raises
    ------
    ValueError
        If there is none, if one is of many designs already, or if they differ in a choice; the
        message names the field.
    """
    if not jackets:
        raise ValueError("no jacket to stack")
    if any(has_designs(jacket) for jacket in jackets):
        raise ValueError("only jackets of one design can be stacked")
    stacked: Jacket = _joined(jackets, [1] * len(jackets), "")
    return stacked


def joined(jackets: Sequence[Jacket]) -> Jacket:
    """Put jackets of one design or of many into one, their designs one after the other.

    The number of designs stays the sum, also where all of them are alike.

    Raises
    ------
    ValueError
        If there is none, or if they differ in a choice; the message names the field.
    """
    if not jackets:
        raise ValueError("no jacket to join")
    counts = [design_count(jacket) for jacket in jackets]
    whole: Jacket = _joined(jackets, counts, "")
    return whole if has_designs(whole) else repeated(whole, sum(counts))


def repeated(jacket: Jacket, count: int) -> Jacket:
    """Jacket of `count` designs that are all alike, from one of a single design."""
    return with_values(jacket, {"repair_height": np.full(count, jacket.repair_height, float)})


def _mapped(value: Any, change: Callable[[Any], Any]) -> Any:
    """Copy of a tree with its arrays changed by a function."""
    if isinstance(value, np.ndarray):
        return change(value)
    if isinstance(value, _PLAIN):
        return value
    if isinstance(value, tuple):
        mapped = tuple(_mapped(child, change) for child in value)
        return mapped if any(a is not b for a, b in zip(mapped, value, strict=True)) else value
    if not _is_record(value):
        return value
    changed = {}
    for name, shown_only in _roles(cast("Hashable", type(value))):
        child = getattr(value, name)
        # most leaves are plain: they are told apart here, without another call
        if shown_only or isinstance(child, _PLAIN):
            continue
        if (new := _mapped(child, change)) is not child:
            changed[name] = new
    # what nothing changes in is not copied: designs share it
    return _renewed(value, changed) if changed or isinstance(value, Jacket) else value


def _renewed(record: Any, changed: Mapping[str, Any]) -> Any:
    """Copy of a record with fresh memory, if it has any.

    Not made by `dataclasses.replace`: a catalogue's record would check itself once more, and
    refuse an array over designs.
    """
    fresh: dict[str, Any] = {"memo": {}} if isinstance(record, Jacket) else {}
    twin = copy.copy(record)
    for name, value in {**changed, **fresh}.items():
        object.__setattr__(twin, name, value)
    return twin


def _replaced(value: Any, changes: Mapping[tuple[str, ...], Any]) -> Any:
    if () in changes:
        return _frozen(changes[()])
    heads = {path[0] for path in changes}
    below = {
        head: {path[1:]: new for path, new in changes.items() if path[0] == head} for head in heads
    }
    if isinstance(value, tuple):
        return tuple(
            _replaced(child, below[str(index)]) if str(index) in below else child
            for index, child in enumerate(value, start=1)
        )
    return _renewed(
        value, {name: _replaced(getattr(value, name), inner) for name, inner in below.items()}
    )


def _frozen(value: Any) -> Any:
    if isinstance(value, np.ndarray):
        value = value.view()
        value.setflags(write=False)
    return value


def _joined(values: Sequence[Any], counts: Sequence[int], path: str) -> Any:
    first = values[0]
    if all(_is_number(value) for value in values):
        return _joined_numbers(values, counts)
    if all(type(value) is type(first) for value in values):
        if _is_record(first):
            return _joined_records(values, counts, path)
        if isinstance(first, tuple) and len({len(value) for value in values}) == 1:
            return tuple(
                _joined(column, counts, f"{path}.{index}")
                for index, column in enumerate(zip(*values, strict=True), start=1)
            )
        if all(value == first for value in values):
            return first
    raise ValueError(f"designs differ in {path}, which must be the same for all")


def _joined_numbers(values: Sequence[Any], counts: Sequence[int]) -> Any:
    """One number where all designs share it, else an array over all designs."""
    first = values[0]
    if not any(np.ndim(value) for value in values) and all(value == first for value in values):
        return first
    pairs = zip(values, counts, strict=True)
    return _frozen(np.concatenate([np.full(count, value, dtype=float) for value, count in pairs]))


def _joined_records(values: Sequence[Any], counts: Sequence[int], path: str) -> Any:
    changed = {}
    for name, _, shown_only in _children(values[0]):
        column = [getattr(value, name) for value in values]
        if shown_only:
            changed[name] = shared_label(column)
        else:
            changed[name] = _joined(column, counts, f"{path}.{name}" if path else name)
    return _renewed(values[0], changed)
