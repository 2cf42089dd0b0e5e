"""Reinforcing steels."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from jacketcheck.catalog._load import UNITS, read_file, sources_by_field
from jacketcheck.catalog.bands import Bands
from jacketcheck.catalog.records import Bar, RebarSteel

__all__ = ["built_in_rebar_steels"]

_FILES = ("rebar_steels_astm", "rebar_steels_en", "rebar_steels_csa")
_STRENGTHS = ("yield_strength", "tensile_strength", "expected_yield", "expected_tensile")


def built_in_rebar_steels(bars: Mapping[str, Bar]) -> Iterator[RebarSteel]:
    """ASTM, European and Canadian steels; `bars` are the sizes by which strains are printed."""
    made: dict[str, RebarSteel] = {}
    for file_name in _FILES:
        table = read_file(file_name)
        stress = UNITS[table["stress_unit"]]
        for entry in table["steels"]:
            steel = RebarSteel(
                name=entry["name"],
                **{field: entry[field] * stress for field in _STRENGTHS},
                hardening_strain=_strains(entry, "hardening_strain", bars, made),
                ultimate_strain=_strains(entry, "ultimate_strain", bars, made),
                overstrength=entry["overstrength"],
                elastic_modulus=table["elastic_modulus"] * stress,
                source=entry.get("source", table["source"]),
                sources={**sources_by_field(table), **sources_by_field(entry)},
                aliases=tuple(entry["aliases"]),
            )
            made[steel.name] = steel
            yield steel


def _strains(
    entry: Mapping[str, Any],
    field: str,
    bars: Mapping[str, Bar],
    made: Mapping[str, RebarSteel],
) -> Bands:
    """Strains by bar diameter, or those of the steel that the file names instead."""
    written = entry[field]
    if isinstance(written, str):
        bands: Bands = getattr(made[written], field)
        return bands
    return tuple((bars[largest].diameter, strain) for largest, strain in written)
