"""Copies of an input with some fields replaced by path."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["replaced"]

Part = TypeVar("Part")


def replaced(repair: RepairInput, values: Mapping[str, Any]) -> RepairInput:
    """Copy of an input with fields replaced; nothing is validated, and arrays are welcome.

    Parameters
    ----------
    repair
        Validated input.
    values
        New value by dotted path; entries of a list are counted from one.

    Raises
    ------
    KeyError
        If a path leads nowhere.

    Examples
    --------
    >>> from jacketcheck.inputs import read_text
    >>> from jacketcheck.starter import starter_text
    >>> repair = read_text(starter_text("si")).base
    >>> replaced(repair, {"sleeve.thickness": 12.0}).sleeve.thickness
    12.0
    """
    for path, value in values.items():
        repair = _put(repair, path.split("."), value, path)
    return repair


def _put(part: Part, steps: list[str], value: Any, path: str) -> Part:
    if not steps:
        return value  # type: ignore[no-any-return] # whatever the caller wants there
    step, *below = steps
    if isinstance(part, tuple):
        if not (step.isdigit() and 1 <= int(step) <= len(part)):
            raise KeyError(path)
        index = int(step) - 1
        changed = _put(part[index], below, value, path)
        return (*part[:index], changed, *part[index + 1 :])  # type: ignore[return-value]
    if step not in getattr(type(part), "model_fields", {}):
        raise KeyError(path)
    changed = _put(getattr(part, step), below, value, path)
    return part.model_copy(update={step: changed})  # type: ignore[no-any-return,attr-defined]
