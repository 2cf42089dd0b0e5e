"""Where a field of the input was written: in the file, in a variant, or nowhere."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any, Final

from pydantic import BaseModel

from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.written import shown

__all__ = ["with_origins"]

_PATH: Final = re.compile(r"[a-z][a-z0-9_]*(?:\.[a-z0-9_]+)+")
_ABSENT: Final = object()


def with_origins(text: str, file: InputFile, variant: str) -> str:
    """Text whose fields of the input say which are of the variant, and which are defaults.

    Parameters
    ----------
    text
        Such as ``input sleeve.thickness``; fields that the file itself gives stay as they are.
    file, variant
        The input, and the variant of it that counts.

    Returns
    -------
    str
        Such as ``input sleeve.thickness (variant "thin")``.

    Examples
    --------
    >>> from jacketcheck.inputs import read_text
    >>> from jacketcheck.starter import starter_text
    >>> file = read_text(starter_text("us"))
    >>> with_origins("input judgement.crack_friction", file, file.base_name)
    'input judgement.crack_friction (default)'
    """

    def named(found: re.Match[str]) -> str:
        origin = _origin(found.group().split("."), file, variant)
        return f"{found.group()} ({origin})" if origin else found.group()

    return _PATH.sub(named, text)


def _origin(path: Sequence[str], file: InputFile, variant: str) -> str:
    """Origin of a field; nothing where the file gives it, or no value counts."""
    value = _at(file.variants[variant], path)
    if value is None or value is _ABSENT or isinstance(value, BaseModel):
        return ""
    written, base = file.written[variant], file.written[file.base_name]
    if _at(written, path) is _ABSENT:
        return "default"
    return "" if _at(written, path) == _at(base, path) else f"variant {shown(variant)}"


def _at(holder: Any, path: Sequence[str]) -> Any:
    """What stands at a path in a model or in tables; list entries count from one."""
    for step in path:
        if isinstance(holder, BaseModel):
            holder = getattr(holder, step) if step in type(holder).model_fields else _ABSENT
        elif isinstance(holder, Mapping):
            holder = holder.get(step, _ABSENT)
        elif isinstance(holder, list | tuple) and step.isdecimal() and 0 < int(step) <= len(holder):
            holder = holder[int(step) - 1]
        else:
            return _ABSENT
    return holder
