"""Shear of the column above the repair and inside the jacket, at the relocated hinge's shear."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.jacket_shear import jacket_shear as shear_of_hoops
from jacketcheck.plugin import Jacket, Real, Result, Steps, add_hinge, capacity_of_repaired
from jacketcheck_europe.editions import EN_1992, EN_1992_2, EN_1998_2, EN_1998_3
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import column_shear as shear
from jacketcheck_europe.mechanics.concrete import (
    design_compressive_strength,
    strut_effectiveness,
)
from jacketcheck_europe.mechanics.jackets import JACKET_STRESS_SHARE
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["column_shear", "jacket_shear"]

_TITLE: Final = "Shear of the column above the repair"
_ABOVE: Final = "above the repair"
_JACKETED: Final = "Shear of the column inside the jacket"
_EXISTING: Final = f"{EN_1998_3} A.3.3.1, Eq. A.12"
_FULLY_DEGRADED: Final = 5.0
_ANALOGY: Final = (
    "engineering judgement: EN 1998-3 is for buildings and is taken for a pier; specified "
    "strengths stand for mean ones over the confidence factor"
)
_DAMAGED: Final = (
    "engineering judgement: the damaged region counts as degraded in full (μ_Δ,pl ≥ 5); the jacket "
    "acts as hoops across cracks at 45°, with half of its yield strength"
)


def column_shear(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """By EN 1998-3, which degrades with ductility, and as the hinge of a ductile pier."""
    return [_existing(jacket, factors), _ductile_pier(jacket, factors)]


def jacket_shear(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Damaged column and jacket together."""
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"{EN_1998_3} A.4.3.2"
    demand = add_hinge(jacket, steps).shear
    span = steps.add("L_V", "footing to contraflexure", np.add(_span(jacket), jacket.repair_height),
                     "mm", "statics")  # fmt: skip
    column = _add_existing(jacket, factors, span=span, ductility=_FULLY_DEGRADED, steps=steps)
    design = np.divide(sleeve.steel.yield_strength, factors.section)
    steps.add("f_yj,d", "f_y/γ_M0", design, "MPa", sleeve.steel.source)
    hoops = steps.add(
        "V_j",
        "0.5 (π/2) t f_yj,d D_i",
        shear_of_hoops(
            JACKET_STRESS_SHARE * design,
            thickness=sleeve.thickness,
            jacket_diameter=sleeve.inner_diameter,
        ),
        "N",
        clause,
    )
    capacity = steps.add(
        "V_R + V_j", "added, the jacket staying elastic", column + hoops, "N", clause
    )
    return [
        resistance_row(
            _JACKETED,
            "repaired region",
            steps,
            demand=demand,
            capacity=capacity,
            unit="N",
            clause=f"{_EXISTING}; A.4.3.2",
            factors=factors,
            notes=(_ANALOGY, _DAMAGED),
        )
    ]


def _existing(jacket: Jacket, factors: PartialFactors) -> Result:
    steps = Steps()
    demand = add_hinge(jacket, steps).shear
    ductility = _add_ductility(jacket, steps)
    span = steps.add("L_V", "hinge to contraflexure", _span(jacket), "mm", "statics")
    capacity = _add_existing(jacket, factors, span=span, ductility=ductility, steps=steps)
    return resistance_row(
        _TITLE,
        _ABOVE,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=_EXISTING,
        factors=factors,
        notes=(_ANALOGY,),
    )


def _add_ductility(jacket: Jacket, steps: Steps) -> Real:
    """Plastic part of the displacement ductility: of the demand, or of the capacity."""
    repaired, demand = capacity_of_repaired(jacket), jacket.demands.displacement
    reached = repaired.displacement if demand is None else demand
    plastic = np.maximum(np.divide(reached, repaired.yield_displacement) - 1.0, 0.0)
    what = "Δ_u/Δ_y − 1, no demand given" if demand is None else "Δ_D/Δ_y − 1"
    return steps.add("μ_Δ,pl", what, plastic, "1", "plastic hinge method")


def _add_existing(
    jacket: Jacket, factors: PartialFactors, *, span: Real, ductility: Real, steps: Steps
) -> Real:
    """Write down the shear resistance of the existing column and return it [N]."""
    column, ties = jacket.column, jacket.column.ties
    strength = steps.add(
        "f_c",
        "f_ck/γ_C",
        np.divide(column.concrete.specified, factors.concrete),
        "MPa",
        "input column.concrete_strength",
    )
    yields = steps.add("f_yw", "f_yk/γ_S", np.divide(ties.yield_strength, factors.reinforcement),
                       "MPa", ties.source)  # fmt: skip
    depth = steps.add("x", "neutral axis at φ_u", capacity_of_repaired(jacket).neutral_axis_depth,
                      "mm", "section analysis")  # fmt: skip
    core = np.pi * np.square(np.subtract(ties.core_diameter, ties.diameter)) / 4.0
    steps.add("A_c", "π D_c²/4, inside of the hoops", core, "mm2", "geometry")
    hoops = steps.add(
        "V_w",
        "(π/2) A_sw f_yw (D − 2c)/s",
        shear.circular_hoop_shear(
            ties.area,
            yield_strength=yields,
            hoop_diameter=np.subtract(column.diameter, 2.0 * np.asarray(column.cover)),
            spacing=ties.spacing,
        ),
        "N",
        f"{EN_1998_3} Eq. A.14",
    )
    steps.add("γ_el", "primary member", factors.existing_member, "1", f"{EN_1998_3} A.3.3.1(1)")
    resistance = shear.existing_column_shear(
        jacket.demands.axial_load,
        diameter=column.diameter,
        core_area=core,
        compression_depth=depth,
        shear_span=span,
        concrete_strength=strength,
        bar_ratio=column.layer.total_area / column.gross_area,
        plastic_ductility=ductility,
        hoop_shear=hoops,
        member_factor=factors.existing_member,
    )
    return steps.add("V_R", "axial load, concrete and hoops, degraded with μ_Δ,pl", resistance, "N",
                     _EXISTING)  # fmt: skip


def _span(jacket: Jacket) -> Real:
    """Hinge to the point of contraflexure [mm]."""
    span = np.subtract(jacket.column.height, jacket.repair_height)
    return span / 2.0 if jacket.column.curvature == "double" else span


def _ductile_pier(jacket: Jacket, factors: PartialFactors) -> Result:
    steps, column, ties = Steps(), jacket.column, jacket.column.ties
    clause = f"{EN_1998_2} 5.6.3.4; {EN_1992} 6.2.3"
    demand = add_hinge(jacket, steps).shear
    section = shear.pier_section(
        concrete_radius=ties.core_diameter / 2.0, bar_circle_radius=column.layer.circle_radius
    )
    steps.add("z", "0.9 (r + 2 r_s/π), core", section.lever_arm, "mm", f"{EN_1998_2} 5.6.3.3(2)")
    yields = steps.add("f_ywd", "f_yk/γ_S", np.divide(ties.yield_strength, factors.reinforcement),
                       "MPa", ties.source)  # fmt: skip
    hoops = steps.add(
        "V_Rd,s",
        "(π/2) (A_h/s) z f_ywd, θ = 45°",
        shear.pier_hoop_shear(
            ties.area, yield_strength=yields, spacing=ties.spacing, lever_arm=section.lever_arm
        ),
        "N",
        f"{EN_1992} Eq. 6.8",
    )
    crushing = steps.add(
        "V_Rd,max",
        "b_w z ν_1 f_cd/2",
        shear.pier_crushing_shear(
            design_compressive_strength(
                column.concrete.specified,
                coefficient=factors.compression,
                partial_factor=factors.concrete,
            ),
            effectiveness=strut_effectiveness(column.concrete.specified),
            lever_arm=section.lever_arm,
            web_width=section.web_width,
        ),
        "N",
        f"{EN_1992} Eq. 6.9; {EN_1992_2} 3.1.6(101)",
    )
    steps.add("γ_Bd", "brittle failure", factors.pier_shear, "1", f"{EN_1998_2} 5.6.2(2)")
    capacity = steps.add("V_Rd/γ_Bd", "min(V_Rd,s, V_Rd,max)/γ_Bd",
                         np.minimum(hoops, crushing) / factors.pier_shear, "N", clause)  # fmt: skip
    return resistance_row(
        _TITLE,
        _ABOVE,
        steps,
        demand=demand,
        capacity=capacity,
        unit="N",
        clause=clause,
        factors=factors,
    )
