"""A jacket in which every figure of the catalogue is told by its number, and its source by a mark.

Figures often have the same number, and sources the same text. Each figure is therefore moved by a
few parts in ten million, each by another, so that a step that prints it is known by its value; its
source is replaced by the path of the field, which the step has to print.
"""

from __future__ import annotations

import copy
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from typing import Any, Final

from jacketcheck.catalog.records import FayingClass
from jacketcheck.conformance.symbols import uses_any
from jacketcheck.jacket._roles import Figures
from jacketcheck.jacket.designs import leaves, with_values
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.results import Step

__all__ = ["MarkedFigures", "marked_figures", "wrongly_sourced"]

_STEP: Final = 1e-7
_SAME: Final = 1e-10
_INPUT: Final = "input "
_UNITS: Final = {
    **dict.fromkeys(("strain", "overstrength", "coefficient"), "1"),
    **dict.fromkeys(("strength", "stress", "yield", "tensile", "modulus", "expected"), "MPa"),
    "area": "mm2",
    "pretension": "N",
}
"""Units by the end of a field's name, the longer first; all others are lengths."""


class MarkedFigures:
    """A jacket with marks for sources, and the mark of each figure's number.

    Attributes
    ----------
    jacket
        One design.
    marks
        Mark by number.
    """

    def __init__(self, jacket: Jacket, marks: Mapping[float, str]) -> None:
        self.jacket = jacket
        self.marks = marks

    def mark_of(self, value: float, unit: str) -> str | None:
        """Mark of the figure with this number and unit, if it is one."""
        near = (mark for number, mark in self.marks.items() if _alike(number, value))
        return next((mark for mark in near if _unit(mark[1:-1]) == unit), None)


def marked_figures(jacket: Jacket) -> MarkedFigures:
    """Mark every figure of a jacket of one design that has a source other than the input."""
    known: dict[str, Any] = dict(leaves(jacket))
    numbers, marks = {}, {}
    for count, path in enumerate(_figures(jacket, ""), start=1):
        value = known.get(path)
        if isinstance(value, int | float) and not isinstance(value, bool) and value:
            numbers[path] = float(value) * (1.0 + count * _STEP)
            marks[numbers[path]] = _mark(path)
    return MarkedFigures(with_values(_with_marks(jacket, ""), numbers), marks)


def wrongly_sourced(steps: Sequence[Step], figures: MarkedFigures) -> Iterator[tuple[Step, str]]:
    """Steps that print a figure and cite another source, each with the path of the figure.

    A formula is no figure, whatever its value.
    """
    known: set[str] = set()
    for step in steps:
        if not isinstance(step.value, str) and not uses_any(step.expression, known):
            mark = figures.mark_of(float(step.value), step.unit)
            if mark is not None and mark not in step.source:
                yield step, mark[1:-1]
        known.add(step.symbol)


def _alike(number: float, value: float) -> bool:
    return math.isclose(number, value, rel_tol=_SAME, abs_tol=0.0)


def _unit(path: str) -> str:
    """Internal unit of a figure, by the name of its field."""
    name = path.rpartition(".")[2]
    return next((unit for ending, unit in _UNITS.items() if name.endswith(ending)), "mm")


def _mark(path: str) -> str:
    return f"⟨{path}⟩"


def _figures(part: Any, path: str) -> Iterator[str]:
    """Paths of all figures with a source of their own."""
    if isinstance(part, FayingClass):
        yield f"{path}.slip_coefficient"
    elif isinstance(part, tuple):
        for index, child in enumerate(part, start=1):
            yield from _figures(child, f"{path}.{index}")
    elif is_dataclass(part):
        if isinstance(part, Figures):
            yield from (f"{path}.{name}" for name in _marked_fields(part))
        for one in fields(part):
            if one.compare:
                yield from _figures(getattr(part, one.name), f"{path}.{one.name}".lstrip("."))


def _marked_fields(part: Figures) -> list[str]:
    own = {one.name for one in fields(part)}
    return [
        name for name, text in part.sources.items() if name in own and not text.startswith(_INPUT)
    ]


def _with_marks(part: Any, path: str) -> Any:
    """Copy of a part whose sources are the paths of the fields."""
    if isinstance(part, FayingClass):
        return _changed(part, {"source": _mark(f"{path}.slip_coefficient"), "sources": {}})
    if isinstance(part, tuple):
        return tuple(_with_marks(one, f"{path}.{at}") for at, one in enumerate(part, start=1))
    if not is_dataclass(part):
        return part
    changes: dict[str, Any] = {
        one.name: _with_marks(getattr(part, one.name), f"{path}.{one.name}".lstrip("."))
        for one in fields(part)
        if one.compare
    }
    if isinstance(part, Figures):
        marks = {name: _mark(f"{path}.{name}") for name in _marked_fields(part)}
        changes["sources"] = {**part.sources, **marks}
    if isinstance(part, Jacket):
        changes["memo"] = {}
    return _changed(part, changes)


def _changed(record: Any, changes: Mapping[str, Any]) -> Any:
    """Copy of a frozen record; not made by `replace`, which would check a catalogue's figures."""
    twin = copy.copy(record)
    for name, value in changes.items():
        object.__setattr__(twin, name, value)
    return twin
