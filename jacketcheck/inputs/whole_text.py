"""A changed input written as a whole new file."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

from jacketcheck.inputs.overrides import apply_overrides
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.variant_text import variant_table
from jacketcheck.inputs.written import dotted
from jacketcheck.units import DisplaySystem

__all__ = ["toml_text", "whole_file"]


def whole_file(
    name: str,
    written: Mapping[str, Any],
    base: RepairInput,
    changed: RepairInput,
    *,
    system: DisplaySystem,
    heading: str = "",
) -> str:
    """Text of a repair file that holds a changed input; variants are not taken over.

    Parameters
    ----------
    name
        What the new file calls itself, ``job.variant``.
    written
        Tables of the input before, as they were written; what does not change is copied.
    base, changed
        The input before and after.
    system
        Units in which changed lengths are written where that is exact.
    heading
        Comment at the top, without its number signs.

    Returns
    -------
    str
        TOML text.
    """
    overrides = tomllib.loads(variant_table(name, base, changed, system=system))["variants"][name]
    tables, problems = apply_overrides(written, overrides)
    assert not problems, problems  # noqa: S101 - every path comes from the input itself
    tables["job"] = {**tables["job"], "variant": name}
    return "".join(f"# {line}\n" for line in heading.splitlines()) + toml_text(tables)


def toml_text(tables: Mapping[str, Any]) -> str:
    """Tables of texts, numbers, lists and tables as TOML.

    Examples
    --------
    >>> print(toml_text({"sleeve": {"steel": "ASTM A36"}, "damage": [{"bars": [1, 2]}]}), end="")
    <BLANKLINE>
    [sleeve]
    steel = "ASTM A36"
    <BLANKLINE>
    [[damage]]
    bars = [1, 2]
    """
    return "".join(f"{line}\n" for line in _lines(tables, ()))


def _lines(table: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[str]:
    below = {key: value for key, value in table.items() if _has_headers(value)}
    for key, value in table.items():
        if key not in below:
            yield f"{dotted([key])} = {_value(value)}"
    for key, value in below.items():
        here = (*path, key)
        if isinstance(value, Mapping):
            yield f"\n[{dotted(here)}]"
            yield from _lines(value, here)
        else:
            for entry in value:
                yield f"\n[[{dotted(here)}]]"
                yield from _lines(entry, here)


def _has_headers(value: object) -> bool:
    """Whether a value is written as a table or tables of its own, below the plain values."""
    if isinstance(value, list):
        return bool(value) and all(isinstance(entry, Mapping) for entry in value)
    return isinstance(value, Mapping)


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, list):
        return f"[{', '.join(_value(entry) for entry in value)}]"
    if isinstance(value, Mapping):
        pairs = (f"{dotted([key])} = {_value(entry)}" for key, entry in value.items())
        return f"{{ {', '.join(pairs)} }}"
    return str(value)
