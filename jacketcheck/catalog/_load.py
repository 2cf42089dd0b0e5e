"""Reading the catalogue's data files.

A data file is TOML with the source beside the figures. Where a standard prints a table, the file
holds it as a table: one line a row, columns between bars, the unit in brackets in the heading,
figures as printed: a decimal, a fraction like ``1-1/8``, or ``none``.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI

__all__ = [
    "UNITS",
    "PrintedTable",
    "aliases_of",
    "number",
    "read_file",
    "read_table",
    "sources_by_field",
]

UNITS: Mapping[str, float] = {
    "mm": 1.0,
    "mm2": 1.0,
    "in": INCH,
    "in2": INCH**2,
    "kN": 1000.0,
    "kip": KIP,
    "MPa": 1.0,
    "ksi": KSI,
}
"""Factors from the units in which standards print their tables to N, mm and MPa."""

_HEADING = re.compile(r"(?P<column>\S+) \[(?P<unit>\w+)\]")
_NUMBER_IN_NAME = re.compile(r"\d\S*")


@dataclass(frozen=True, slots=True)
class PrintedTable:
    """A table as a standard prints it, converted to N, mm and MPa.

    Attributes
    ----------
    settings
        All keys of the file.
    columns
        Names of the columns after the first.
    rows
        Figures by row name and column; a figure that is not printed is not there.
    """

    settings: Mapping[str, Any]
    columns: tuple[str, ...]
    rows: Mapping[str, Mapping[str, float]]

    @property
    def source(self) -> str:
        """Where the table stands."""
        return str(self.settings["source"])

    @property
    def sources(self) -> dict[str, str]:
        """Source of each column."""
        return {**dict.fromkeys(self.columns, self.source), **sources_by_field(self.settings)}


@lru_cache(maxsize=None)
def read_file(name: str) -> Mapping[str, Any]:
    """Parse ``data/NAME.toml`` once; callers must not change what they get."""
    return tomllib.loads(_data_folder().joinpath(f"{name}.toml").read_bytes().decode())


@lru_cache(maxsize=1)
def _data_folder() -> Traversable:
    return files("jacketcheck.catalog") / "data"


@lru_cache(maxsize=None)
def read_table(name: str) -> PrintedTable:
    """Parse the table in ``data/NAME.toml`` once; callers must not change what they get."""
    settings = read_file(name)
    heading, *lines = settings["table"].strip().splitlines()
    columns = [_column(cell) for cell in _cells(heading)[1:]]
    rows = {}
    for line in lines:
        row_name, *figures = _cells(line)
        rows[row_name] = {
            column: without_noise(number(figure) * factor)
            for (column, factor), figure in zip(columns, figures, strict=True)
            if figure != "none"
        }
    return PrintedTable(settings, tuple(column for column, _ in columns), rows)


def sources_by_field(table: Mapping[str, Any]) -> dict[str, str]:
    """Sources that a file gives for single fields: ``sources = [{ of = [...], text = ... }]``."""
    return {name: entry["text"] for entry in table.get("sources", ()) for name in entry["of"]}


def aliases_of(name: str, patterns: Iterable[str]) -> tuple[str, ...]:
    """Other spellings of a size, from patterns in which ``{n}`` stands for its number."""
    number = _NUMBER_IN_NAME.search(name)
    return tuple(pattern.format(n=number[0]) for pattern in patterns) if number else ()


def number(text: str) -> float:
    """Value of a decimal, or of a fraction with or without a whole number before it."""
    if "/" not in text:
        return float(text)
    whole, _, fraction = text.rpartition("-")
    over, under = fraction.split("/")
    return int(whole or 0) + int(over) / int(under)


def without_noise(value: float) -> float:
    """Drop what binary fractions add: 0.375 in are 9.525 mm, not 9.524999999999999."""
    return round(value, 9)


def _cells(line: str) -> list[str]:
    return [cell.strip() for cell in line.split("|")]


def _column(heading: str) -> tuple[str, float]:
    """Name of a column, and the factor that its unit stands for."""
    match = _HEADING.fullmatch(heading)
    if match is None:
        raise ValueError(f"column heading {heading!r} is not a name and a unit in brackets")
    return match["column"], UNITS[match["unit"]]
