"""Plate steels of AS/NZS 3678."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import PlateSteel, StrengthBand

__all__ = ["PLATE_STEELS"]


def _steel(
    grade: str,
    tensile_strength: float,
    yields: tuple[tuple[float, float], ...],
    *,
    expected_ratio: float,
    source: str,
    weathering: bool = False,
) -> PlateSteel:
    return PlateSteel(
        name=f"AS/NZS 3678 {grade}",
        bands=tuple(StrengthBand(limit, strength, tensile_strength) for limit, strength in yields),
        expected_ratio=expected_ratio,
        elastic_modulus=200_000.0,
        weathering=weathering,
        source=source,
        sources={
            "expected_ratio": "engineering judgement: as plates of like grade in AISC 341-22 "
            "Table A3.2 (1.3 and 1.1), 1.2 for Grade 350",
            "elastic_modulus": "AS 4100:2020 cl. 2.2.4 (from memory; NZS 3404 has 205 000 MPa)",
        },
        aliases=(f"AS/NZS 3678 Grade {grade}",),
    )


_FROM_MEMORY: Final = "AS/NZS 3678:2016 as in AS 4100:2020 Table 2.1 (from memory)"

PLATE_STEELS: Final = (
    _steel(
        "250",
        410.0,
        ((8.0, 280.0), (12.0, 260.0), (50.0, 250.0), (80.0, 240.0)),
        expected_ratio=1.3,
        source=_FROM_MEMORY,
    ),
    _steel(
        "300",
        430.0,
        ((8.0, 320.0), (12.0, 310.0), (20.0, 300.0), (50.0, 280.0), (80.0, 270.0)),
        expected_ratio=1.3,
        source="AS/NZS 3678:2016, 10 to 50 mm as in a mill's data sheet; up to 8 mm and above "
        "50 mm from memory",
    ),
    _steel(
        "350",
        450.0,
        ((12.0, 360.0), (20.0, 350.0), (80.0, 340.0)),
        expected_ratio=1.2,
        source=_FROM_MEMORY,
    ),
    _steel(
        "WR350",
        450.0,
        ((50.0, 340.0),),
        expected_ratio=1.2,
        source=_FROM_MEMORY,
        weathering=True,
    ),
)
"""Grades by thickness; impact-tested variants (L0, L15, S0) have the same strengths."""
