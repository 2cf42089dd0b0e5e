"""The two steel codes of the built-in provisions, so that each check gives a row for either."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_states.editions import AASHTO, AISC
from jacketcheck.mechanics import block_shear, bolt_bearing, bolt_strength, plate_strength
from jacketcheck.mechanics._arrays import Real

__all__ = ["US_CODES", "SteelCode"]


@dataclass(frozen=True, slots=True)
class SteelCode:
    """Resistance factors and clauses of one code.

    Attributes
    ----------
    key, name
        Short name in the keys of rules, and code with edition.
    shear, bearing, tension_yield, rupture, block
        Resistance factors.
    shear_clause, filler_clause, bearing_clause, yield_clause, rupture_clause, block_clause
        Clauses without the code's name.
    """

    key: str
    name: str
    shear: float
    bearing: float
    tension_yield: float
    rupture: float
    block: float
    shear_clause: str
    filler_clause: str
    bearing_clause: str
    yield_clause: str
    rupture_clause: str
    block_clause: str

    @property
    def is_aashto(self) -> bool:
        """Whether the holes' making counts and shear is by tensile strength."""
        return self.name == AASHTO

    def factor_source(self, clause: str) -> str:
        """Where the resistance factor stands: AASHTO lists all, AISC prints it in the clause."""
        return f"{AASHTO} 6.5.4.2" if self.is_aashto else clause

    def hole_factor(self, jacket: Jacket) -> float:
        """Factor for punched holes."""
        if self.is_aashto:
            return plate_strength.punched_hole_factor(jacket.bolts.hole_making)
        return 1.0

    def hole_damage(self, jacket: Jacket) -> float:
        """Allowance added to each hole in a net section [mm]."""
        if self.is_aashto:
            return plate_strength.AASHTO_HOLE_DAMAGE
        metric = jacket.bolts.metric
        return plate_strength.AISC_HOLE_DAMAGE_METRIC if metric else plate_strength.AISC_HOLE_DAMAGE

    def long_joint_factor(self, jacket: Jacket) -> Real:
        """Factor on bolt shear for a joint that is long in the direction of the force [-]."""
        bolts = jacket.bolts
        length = bolt_strength.seam_joint_length(columns=bolts.columns, gauge=bolts.gauge)
        if self.is_aashto:
            return bolt_strength.aashto_long_joint_factor(length)
        return bolt_strength.aisc_long_joint_factor(length)

    def filler_factor(self, jacket: Jacket) -> Real:
        """Factor on bolt shear for fillers between sleeve and splice plates [-]."""
        splice = jacket.splice
        if self.is_aashto:
            return bolt_strength.aashto_filler_factor(
                splice.filler_thickness,
                connected_thickness=jacket.sleeve.thickness,
                splice_thickness=splice.total_thickness,
            )
        return bolt_strength.aisc_filler_shear_factor(splice.filler_thickness)

    def bolt_shear(self, jacket: Jacket, *, shear_planes: Real) -> Real:
        """Nominal shear strength of one bolt [N]."""
        bolts, factor = jacket.bolts, self.long_joint_factor(jacket)
        if self.is_aashto:
            alone = bolt_strength.aashto_bolt_shear_resistance(
                bolts.diameter,
                tensile_strength=bolts.tensile_strength,
                threads=bolts.threads,
                shear_planes=shear_planes,
                long_joint_factor=factor,
            )
        else:
            alone = bolt_strength.aisc_bolt_shear_strength(
                bolts.diameter,
                shear_stress=bolts.shear_stress,
                shear_planes=shear_planes,
                long_joint_factor=factor,
            )
        return np.multiply(alone, self.filler_factor(jacket))


US_CODES: Final = (
    SteelCode(
        key="aisc",
        name=AISC,
        shear=bolt_strength.AISC_BOLT_RESISTANCE_FACTOR,
        bearing=bolt_bearing.AISC_BEARING_RESISTANCE_FACTOR,
        tension_yield=plate_strength.AISC_TENSION_YIELD_FACTOR,
        rupture=plate_strength.AISC_RUPTURE_FACTOR,
        block=block_shear.AISC_BLOCK_SHEAR_FACTOR,
        shear_clause="J3.7",
        filler_clause="J5.2",
        bearing_clause="J3.11",
        yield_clause="J4.1(a)",
        rupture_clause="J4.1(b)",
        block_clause="J4.3",
    ),
    SteelCode(
        key="aashto",
        name=AASHTO,
        shear=bolt_strength.AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR,
        bearing=bolt_bearing.AASHTO_BEARING_RESISTANCE_FACTOR,
        tension_yield=plate_strength.AASHTO_TENSION_YIELD_FACTOR,
        rupture=plate_strength.AASHTO_NET_RUPTURE_FACTOR,
        block=block_shear.AASHTO_BLOCK_SHEAR_FACTOR,
        shear_clause="6.13.2.7",
        filler_clause="6.13.6.1.4",
        bearing_clause="6.13.2.9",
        yield_clause="6.8.2.1",
        rupture_clause="6.8.2.1",
        block_clause="6.13.4",
    ),
)
