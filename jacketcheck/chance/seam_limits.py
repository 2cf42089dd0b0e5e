"""The two seams: slip, bolts and plates, each under the hoop force of the same sample."""

from __future__ import annotations

from typing import Final

from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import hoop_demand
from jacketcheck.chance.hoop_limits import HOOP_FORCE
from jacketcheck.chance.limit import Limit, unfactored
from jacketcheck.chance.realisation import Realisation
from jacketcheck.limit_states._us_codes import US_CODES
from jacketcheck.limit_states.seam_bolts import (
    seam_bolt_row,
    seam_bolt_shear,
    sleeve_bearing,
    splice_bearing,
)
from jacketcheck.limit_states.seam_plates import (
    seam_block_shear,
    sleeve_net_rupture,
    splice_gross_yield,
    splice_net_rupture,
)
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import demand_capacity_ratio

__all__ = ["SEAM_LIMITS"]

_AISC: Final = US_CODES[0]
_PLATE: Final = "bolted-plate"


def _slip(sample: Realisation) -> Real:
    demand, resistance = hoop_demand(sample.jacket), hoop_action(sample.jacket).slip_force
    return demand_capacity_ratio(demand.bolt_force, resistance)


SEAM_LIMITS: Final = (
    Limit(
        id="seam-slip",
        title="Slip of the seam bolts",
        effort="closed-form",
        event="hoop force on a bolt exceeds friction under its actual pretension; bolts that are "
        "only snug hold nothing; oversized and slotted holes hold less, by K_h of AASHTO",
        variables=(*HOOP_FORCE, "slip-coefficient", "bolt-pretension"),
        ratio=_slip,
    ),
    Limit(
        id="seam-bolt-shear",
        title="Shear of the seam bolts",
        effort="closed-form",
        event="hoop force on a bolt exceeds its shear strength by AISC, actual tensile strength",
        variables=(*HOOP_FORCE, "bolt-strength", "bolt-shear"),
        ratio=unfactored(
            seam_bolt_shear, resistance_factor=_AISC.shear, clause=_AISC.name
        ),
    ),
    Limit(
        id="sleeve-bearing",
        title="Bearing and tear-out of the sleeve at the bolts",
        effort="closed-form",
        event="hoop force on a row exceeds bearing or tear-out by AISC, actual tensile strength",
        variables=(*HOOP_FORCE, "sleeve-tensile", _PLATE),
        ratio=unfactored(
            sleeve_bearing, resistance_factor=_AISC.bearing, clause=_AISC.name, model=_PLATE
        ),
    ),
    Limit(
        id="splice-bearing",
        title="Bearing and tear-out of the splice plates at the bolts",
        effort="closed-form",
        event="hoop force on a row exceeds bearing or tear-out by AISC, actual tensile strength",
        variables=(*HOOP_FORCE, "splice-tensile", "splice-thickness", _PLATE),
        ratio=unfactored(
            splice_bearing, resistance_factor=_AISC.bearing, clause=_AISC.name, model=_PLATE
        ),
    ),
    Limit(
        id="seam-bolt-row",
        title="Strength of a bolt row",
        effort="closed-form",
        event="hoop force on a row exceeds the sum of each bolt's weakest path by AISC; the "
        "plates' model scatter is put on all of it",
        variables=(*HOOP_FORCE, "bolt-strength", "bolt-shear", "sleeve-tensile", "splice-tensile",
                   "splice-thickness", _PLATE),
        ratio=unfactored(
            seam_bolt_row,
            resistance_factor=min(_AISC.shear, _AISC.bearing),
            clause=_AISC.name,
            model=_PLATE,
        ),
    ),
    Limit(
        id="sleeve-net-rupture",
        title="Net section of the sleeve at the bolts",
        effort="closed-form",
        event="hoop force exceeds the net section at the actual tensile strength",
        variables=(*HOOP_FORCE, "sleeve-tensile", _PLATE),
        ratio=unfactored(
            sleeve_net_rupture, resistance_factor=_AISC.rupture, clause=_AISC.name, model=_PLATE
        ),
    ),
    Limit(
        id="splice-gross-yield",
        title="Yield of the splice plates over the seam",
        effort="closed-form",
        event="hoop force, with the bending of one-sided plates, exceeds the gross section at the "
        "actual yield strength",
        variables=(*HOOP_FORCE, "splice-yield", "splice-thickness", _PLATE),
        ratio=unfactored(
            splice_gross_yield,
            resistance_factor=_AISC.tension_yield,
            clause=_AISC.name,
            model=_PLATE,
        ),
    ),
    Limit(
        id="splice-net-rupture",
        title="Net section of the splice plates",
        effort="closed-form",
        event="hoop force, with the bending of one-sided plates, exceeds the net section at the "
        "actual tensile strength",
        variables=(*HOOP_FORCE, "splice-tensile", "splice-thickness", _PLATE),
        ratio=unfactored(
            splice_net_rupture, resistance_factor=_AISC.rupture, clause=_AISC.name, model=_PLATE
        ),
    ),
    Limit(
        id="seam-block-shear",
        title="Block shear at the seam",
        effort="closed-form",
        event="hoop force on a row exceeds block shear by AISC with actual strengths, sleeve or "
        "plates",
        variables=(*HOOP_FORCE, "sleeve-tensile", "splice-yield", "splice-tensile",
                   "splice-thickness", _PLATE),
        ratio=unfactored(
            seam_block_shear, resistance_factor=_AISC.block, clause=_AISC.name, model=_PLATE
        ),
    ),
)  # fmt: skip
