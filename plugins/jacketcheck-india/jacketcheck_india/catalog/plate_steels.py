"""Plate steels of IS 2062."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import PlateSteel, StrengthBand

__all__ = ["PLATE_STEELS"]

_LIMITS: Final = (20.0, 40.0, 100.0)
"""Upper ends of the bands [mm]; the last has none in the standard and is cut at 100 mm."""


def _steel(
    grade: str,
    yields: tuple[float, float, float],
    tensile_strength: float,
    *,
    expected_ratio: float,
    alias: str,
) -> PlateSteel:
    return PlateSteel(
        name=f"IS 2062 {grade}",
        bands=tuple(
            StrengthBand(limit, strength, tensile_strength)
            for limit, strength in zip(_LIMITS, yields, strict=True)
        ),
        expected_ratio=expected_ratio,
        elastic_modulus=200_000.0,
        source="IS 2062:2011 Table 2 as in IS 800:2007 Table 1 (above 40 mm from memory, E250 "
        "excepted)",
        sources={
            "expected_ratio": "engineering judgement: as plates of like grade in AISC 341-22 "
            "Table A3.2 for E250 (1.3), 1.2 for higher grades",
            "elastic_modulus": "IS 800:2007 cl. 2.2.4.1 (from memory)",
        },
        aliases=(alias,),
    )


PLATE_STEELS: Final = (
    _steel("E250", (250.0, 240.0, 230.0), 410.0, expected_ratio=1.3, alias="IS 2062 Fe 410 W"),
    _steel("E300", (300.0, 290.0, 280.0), 440.0, expected_ratio=1.2, alias="IS 2062 Fe 440"),
    _steel("E350", (350.0, 330.0, 320.0), 490.0, expected_ratio=1.2, alias="IS 2062 Fe 490"),
    _steel("E410", (410.0, 390.0, 380.0), 540.0, expected_ratio=1.2, alias="IS 2062 Fe 540"),
)
"""Grades by thickness; qualities A to C have the same strengths."""
