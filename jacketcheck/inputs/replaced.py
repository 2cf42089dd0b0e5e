"""Copies of an input with some fields replaced by path."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jacketcheck.inputs.repair_file import RepairInput

__all__ = ["replaced"]


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


def _put(part: Any, steps: list[str], value: Any, path: str) -> Any:
    """Copy of a model or a tuple of models with one value replaced."""
    if not steps:
        return value
    step, *below = steps
    if isinstance(part, tuple):
        if not (step.isdigit() and 1 <= int(step) <= len(part)):
            raise KeyError(path)
        index = int(step) - 1
        changed = _put(part[index], below, value, path)
        return (*part[:index], changed, *part[index + 1 :])
    if step not in getattr(type(part), "model_fields", {}):
        raise KeyError(path)
    changed = _put(getattr(part, step), below, value, path)
    return part.model_copy(update={step: changed})
