"""Plate steels, and the plate thicknesses in which they are stocked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from jacketcheck.catalog._load import UNITS, number, read_file, sources_by_field, without_noise
from jacketcheck.catalog.records import PlateSteel, StrengthBand

__all__ = ["built_in_plate_steels", "stock_plate_thicknesses"]

_FILES = ("plate_steels_astm", "plate_steels_en")


def built_in_plate_steels() -> Iterator[PlateSteel]:
    """ASTM and European plate steels."""
    for file_name in _FILES:
        table = read_file(file_name)
        length, stress = UNITS[table["length_unit"]], UNITS[table["stress_unit"]]
        for entry in table["steels"]:
            yield PlateSteel(
                name=entry["name"],
                bands=tuple(
                    StrengthBand(
                        without_noise(thickness * length), yielding * stress, tensile * stress
                    )
                    for thickness, yielding, tensile in entry["bands"]
                ),
                expected_ratio=entry["expected_ratio"],
                elastic_modulus=table["elastic_modulus"] * stress,
                weathering=entry.get("weathering", False),
                source=entry["source"],
                sources={**sources_by_field(table), **sources_by_field(entry)},
                aliases=tuple(entry["aliases"]),
            )


def stock_plate_thicknesses(unit: Literal["in", "mm"]) -> tuple[float, ...]:
    """Plate thicknesses [mm] that a yard is likely to hold, thinnest first.

    Parameters
    ----------
    unit
        ``in`` for inch plates, ``mm`` for metric ones.

    References
    ----------
    Common practice, no published source.

    Examples
    --------
    >>> stock_plate_thicknesses("in")[:3]
    (6.35, 7.9375, 9.525)
    """
    written = read_file("plate_stock")[{"in": "inch", "mm": "metric"}[unit]]
    return tuple(without_noise(number(thickness) * UNITS[unit]) for thickness in written)
