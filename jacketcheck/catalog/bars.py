"""Reinforcing bar sizes."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jacketcheck.catalog._load import aliases_of, read_table
from jacketcheck.catalog.records import Bar

__all__ = ["built_in_bars"]

_FILES = ("bars_astm", "bars_csa", "bars_en")


def built_in_bars() -> Iterator[Bar]:
    """US, Canadian and European bar sizes, each set from its smallest."""
    for file_name in _FILES:
        table = read_table(file_name)
        for name, row in table.rows.items():
            yield Bar(
                name=name,
                diameter=row["diameter"],
                # a standard without a column of areas defines them by the nominal diameter
                area=row.get("area", math.pi * row["diameter"] ** 2 / 4.0),
                source=table.source,
                aliases=aliases_of(name, table.settings["aliases"]),
            )
