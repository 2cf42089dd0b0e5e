"""What a sweep varies, as it is written: a path, and a range or a list of values."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.fields import InputField, field_at
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.written import shown
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.units import parse_quantity

__all__ = ["MAX_VALUES", "Varied", "read_varied"]

MAX_VALUES: Final = 100_000
"""Values of one field at most."""

_ROUNDING: Final = 1e-6
"""Share of a step by which a range may miss its stop."""

_RANGES: Final = {
    False: "START:STOP:COUNT, or START:STOP:STEP with the unit of the step",
    True: "START:STOP, or START:STOP:STEP",
}
"""Ranges of what is measured, and of what is counted."""

_ARRAYS: Final = frozenset({"added_bars.count"})
"""Counts that may be an array over designs."""


@dataclass(frozen=True, slots=True)
class Varied:
    """One field and the values that it takes.

    Attributes
    ----------
    path
        Path of the field.
    values
        Values in internal units.
    unit
        Internal unit; ``1`` for a count or a ratio, empty for names and kinds.
    is_array
        Whether designs that differ in it are evaluated in one array.
    """

    path: str
    values: tuple[Any, ...]
    unit: str
    is_array: bool

    @property
    def is_number(self) -> bool:
        """Whether values are numbers."""
        return bool(self.unit)


def read_varied(text: str, repair: RepairInput, *, catalog: Catalog) -> Varied:
    """Read ``path=start:stop:count``, ``path=start:stop:step`` or ``path=value,value,...``.

    Parameters
    ----------
    text
        As written. In a range of something measured, a whole number without a unit is the count of
        values, anything else the step; in a range of something counted, the third part is the step
        and may be left out.
    repair
        Input that the sweep starts from.
    catalog
        What values may name.

    Raises
    ------
    InputError
        If the field is not there, or with every value that it would not accept.

    Examples
    --------
    >>> from jacketcheck.catalog.catalog import built_in_catalog
    >>> from jacketcheck.inputs import read_text
    >>> from jacketcheck.starter import starter_text
    >>> repair = read_text(starter_text("si")).base
    >>> read_varied("sleeve.thickness=10 mm:14 mm:3", repair, catalog=built_in_catalog()).values
    (10.0, 12.0, 14.0)
    >>> read_varied("sleeve.thickness=10 mm:14 mm:1 mm", repair, catalog=built_in_catalog()).values
    (10.0, 11.0, 12.0, 13.0, 14.0)
    """
    path, equals, written = (part.strip() for part in text.partition("="))
    if not (equals and path and written):
        message = "must be PATH=START:STOP:COUNT, PATH=START:STOP:STEP or PATH=VALUE,VALUE,…"
        raise _refusal(text, message)
    field = field_at(path, repair)
    numeric = field.is_number or field.is_count
    if numeric and ":" in written:
        values = _range(text, written, field, catalog)
    else:
        values = _listed(written, field, catalog)
    unit = field.quantity.unit if field.quantity is not None else "1" if field.is_count else ""
    angle = unit == "deg"
    is_array = (field.is_number and not angle) or path in _ARRAYS
    return Varied(path, values, unit, is_array)


def _range(text: str, written: str, field: InputField, catalog: Catalog) -> tuple[Any, ...]:
    parts = [part.strip() for part in written.split(":")]
    if field.is_count and len(parts) == 2:
        parts.append("1")
    if len(parts) != 3 or not all(parts):
        raise _refusal(text, f"must be {_RANGES[field.is_count]}")
    first, last = _all(parts[:2], field, catalog)
    if first == last:
        raise _refusal(text, "starts where it stops")
    if field.is_count or not parts[2].isdigit():
        values = _stepped(text, first, last, parts[2], field)
    else:
        count = int(parts[2])
        if not 2 <= count <= MAX_VALUES:
            raise _refusal(text, f"has a count of {count}; must be from 2 to {MAX_VALUES:,}")
        values = np.linspace(first, last, count)
    if field.is_count:
        return tuple(round(one) for one in values.tolist())
    return tuple(float(f"{one:.12g}") for one in values.tolist())


def _stepped(text: str, first: float, last: float, written: str, field: InputField) -> Floats:
    """Values from the first to the last, both included."""
    step = _step(text, written, field)
    steps = abs(last - first) / step
    if steps > MAX_VALUES - 1:
        raise _refusal(text, f"has more than {MAX_VALUES:,} values")
    count = round(steps)
    if count < 1 or abs(steps - count) > _ROUNDING:
        raise _refusal(text, f"does not come to its stop in steps of {written}")
    return np.asarray(np.linspace(first, last, count + 1))


def _step(text: str, written: str, field: InputField) -> float:
    unit = "1" if field.quantity is None else field.quantity.unit
    try:
        step = parse_quantity(written, unit)
    except ValueError as error:
        problem = f"step {shown(written)} {error}; must be {_RANGES[field.is_count]}"
        raise _refusal(text, problem) from error
    if step <= 0.0 or (field.is_count and not step.is_integer()):
        allowed = "a whole number above zero" if field.is_count else "above zero"
        raise _refusal(text, f"step {shown(written)} must be {allowed}")
    return step


def _listed(written: str, field: InputField, catalog: Catalog) -> tuple[Any, ...]:
    values = _all([part.strip() for part in written.split(",")], field, catalog)
    repeated = next((one for index, one in enumerate(values) if one in values[:index]), None)
    if repeated is not None:
        raise _refusal(f"{field.path}={written}", f"has {shown(repeated)} twice")
    return values


def _all(texts: list[str], field: InputField, catalog: Catalog) -> tuple[Any, ...]:
    """Values of a field; every one that cannot be used is told."""
    found: list[Any] = []
    problems: list[InputProblem] = []
    for text in texts:
        try:
            found.append(field.read(_typed(text, field), catalog=catalog))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems, source="--vary")
    return tuple(found)


def _typed(text: str, field: InputField) -> Any:
    """What stands in a file without quotes becomes what it would be there."""
    if text in {"true", "false"}:
        return text == "true"
    if field.is_count and text.lstrip("+-").isdigit():
        return int(text)
    return text


def _refusal(text: str, message: str) -> InputError:
    return InputError([InputProblem("--vary", shown(text), message)], source="options")
