"""Reinforcing steels of IS 1786."""

from __future__ import annotations

from typing import Final

from jacketcheck.plugin import RebarSteel

__all__ = ["REBAR_STEELS"]

_LARGEST_BAR: Final = 50.0


def _steel(
    grade: str,
    *,
    yield_strength: float,
    tensile_strength: float,
    ultimate_strain: float,
    source: str,
    strain_source: str,
) -> RebarSteel:
    return RebarSteel(
        name=f"IS 1786 {grade}",
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
        expected_yield=1.15 * yield_strength,
        expected_tensile=1.20 * tensile_strength,
        hardening_strain=((_LARGEST_BAR, 0.010),),
        ultimate_strain=((_LARGEST_BAR, ultimate_strain),),
        overstrength=1.35,
        elastic_modulus=200_000.0,
        source=source,
        sources={
            "expected_yield": "engineering judgement: 1.15 f_y, as EN 1998-2:2005 Annex E",
            "expected_tensile": "engineering judgement: 1.20 f_u, as EN 1998-2:2005 Annex E",
            "hardening_strain": "engineering judgement: 0.010, no published value",
            "ultimate_strain": strain_source,
            "overstrength": "engineering judgement: γ_o of concrete members in EN 1998-2:2005 5.3, "
            "to which Indian seismic guidelines for bridges are close",
            "elastic_modulus": "IS 456:2000 cl. 5.6.3 (from memory)",
        },
        aliases=(grade, grade.replace(" ", "")),
    )


_STRAIN_UNSPECIFIED: Final = (
    "engineering judgement: 0.04; no uniform elongation is specified for grades without D"
)
_STRAIN_D: Final = "IS 1786:2008 Table 3: total elongation at maximum force, 5% (from memory)"

REBAR_STEELS: Final = (
    _steel(
        "Fe 415",
        yield_strength=415.0,
        tensile_strength=485.0,
        ultimate_strain=0.04,
        source="IS 1786:2008 Table 3, as in a steel maker's data",
        strain_source=_STRAIN_UNSPECIFIED,
    ),
    _steel(
        "Fe 500",
        yield_strength=500.0,
        tensile_strength=545.0,
        ultimate_strain=0.04,
        source="IS 1786:2008 Table 3, as in a steel maker's data",
        strain_source=_STRAIN_UNSPECIFIED,
    ),
    _steel(
        "Fe 415D",
        yield_strength=415.0,
        tensile_strength=500.0,
        ultimate_strain=0.05,
        source="IS 1786:2008 Table 3 (from memory)",
        strain_source=_STRAIN_D,
    ),
    _steel(
        "Fe 500D",
        yield_strength=500.0,
        tensile_strength=565.0,
        ultimate_strain=0.05,
        source="IS 1786:2008 Table 3 (from memory)",
        strain_source=_STRAIN_D,
    ),
)
"""Grades with and without the ductility that D stands for."""
