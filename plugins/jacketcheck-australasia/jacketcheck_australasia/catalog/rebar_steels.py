"""Reinforcing steels of AS/NZS 4671."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import RebarSteel

__all__ = ["REBAR_STEELS"]

_LARGEST_BAR: Final = 50.0
_STANDARD: Final = "AS/NZS 4671:2019 Table 7.2(A): R_ek and least R_m/R_e (from memory)"


def _steel(
    grade: str,
    *,
    yield_strength: float,
    tensile_strength: float,
    expected_yield: float,
    expected_tensile: float,
    uniform_elongation: float,
    overstrength: float,
    overstrength_source: str,
) -> RebarSteel:
    return RebarSteel(
        name=f"AS/NZS 4671 {grade}",
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
        expected_yield=expected_yield,
        expected_tensile=expected_tensile,
        hardening_strain=((_LARGEST_BAR, 0.010),),
        ultimate_strain=((_LARGEST_BAR, 0.6 * uniform_elongation),),
        overstrength=overstrength,
        elastic_modulus=200_000.0,
        source=_STANDARD,
        sources={
            "expected_yield": "NZSEE assessment guidelines (2017) C5, 1.08 of the lower "
            "characteristic yield strength (from memory); 500N: engineering judgement, 1.10",
            "expected_tensile": "engineering judgement: 1.40 (300E), 1.25 (500E) and 1.20 (500N) "
            "of the expected yield strength",
            "hardening_strain": "engineering judgement: 0.010, no published value",
            "ultimate_strain": "engineering judgement: 0.6 of the uniform elongation A_gt of "
            "AS/NZS 4671:2019 (15%, 10%, 5%; from memory)",
            "overstrength": overstrength_source,
            "elastic_modulus": "AS 3600:2018 cl. 3.2.2; NZS 3101:2006 cl. 5.3.4 (from memory)",
        },
        aliases=(f"Grade {grade}", f"D{grade}"),
    )


_NZS_3101: Final = "NZS 3101:2006 cl. 2.6.5.5 (from memory)"

REBAR_STEELS: Final = (
    _steel(
        "300E",
        yield_strength=300.0,
        tensile_strength=345.0,
        expected_yield=324.0,
        expected_tensile=454.0,
        uniform_elongation=0.15,
        overstrength=1.25,
        overstrength_source=_NZS_3101,
    ),
    _steel(
        "500E",
        yield_strength=500.0,
        tensile_strength=575.0,
        expected_yield=540.0,
        expected_tensile=675.0,
        uniform_elongation=0.10,
        overstrength=1.35,
        overstrength_source=_NZS_3101,
    ),
    _steel(
        "500N",
        yield_strength=500.0,
        tensile_strength=540.0,
        expected_yield=550.0,
        expected_tensile=660.0,
        uniform_elongation=0.05,
        overstrength=1.40,
        overstrength_source="engineering judgement: upper characteristic yield strength of "
        "650 MPa over 500 MPa, and hardening",
    ),
)
"""Ductility classes E (earthquake, New Zealand) and N (normal, Australia)."""
