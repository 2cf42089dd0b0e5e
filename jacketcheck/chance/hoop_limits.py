"""Hoop action of the sleeve: yield under dilation and under clamping, and clamping itself."""

from __future__ import annotations

from typing import Final

from jacketcheck.chance.limit import BAR_TARGET, Limit, unfactored
from jacketcheck.limit_states.confinement import clamping
from jacketcheck.limit_states.hoop_yield import hoop_clamping, hoop_dilation
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR

__all__ = ["CLAMPING", "DILATION", "HOOP_FORCE", "HOOP_LIMITS", "LAPS", "RING"]

RING: Final = ("sleeve-yield", "sleeve-thickness", "column-concrete")
DILATION: Final = (*RING, "axial-strain")
CLAMPING: Final = (BAR_TARGET, "clamping-friction")
LAPS: Final = ("added-bar-tensile",)
HOOP_FORCE: Final = (*DILATION, *CLAMPING, *LAPS)
"""Variables of the hoop force: dilation, clamping and laps."""

HOOP_LIMITS: Final = (
    Limit(
        id="hoop-dilation",
        title="Hoop yield of the sleeve under dilation",
        effort="closed-form",
        event="hoop strain at the checked axial strain, laps included, exceeds the actual yield "
        "strain",
        variables=(*DILATION, *LAPS),
        ratio=unfactored(hoop_dilation, resistance_factor=AISC_TENSION_YIELD_FACTOR),
    ),
    Limit(
        id="hoop-clamping",
        title="Hoop yield of the sleeve under clamping",
        effort="closed-form",
        event="hoop stress of the clamping that fractured bars need, laps included, exceeds the "
        "actual yield strength",
        variables=("sleeve-yield", "sleeve-thickness", *CLAMPING, *LAPS),
        ratio=unfactored(hoop_clamping, resistance_factor=AISC_TENSION_YIELD_FACTOR),
    ),
    Limit(
        id="clamping",
        title="Clamping of the fractured bars",
        effort="closed-form",
        event="clamping that fractured bars need exceeds what the sleeve supplies up to yield, "
        "slip and the counted hoop strain",
        variables=(*RING, *CLAMPING, "slip-coefficient", "bolt-pretension"),
        ratio=unfactored(clamping),
    ),
)
