"""Shear of the column above the repair and inside the jacket, at the relocated hinge's shear."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.jacket_shear import jacket_shear as shear_of_hoops
from jacketcheck.plugin import (
    Jacket,
    Real,
    Result,
    Steps,
    add_hinge,
    add_hoop_stress_left,
    capacity_of_repaired,
)
from jacketcheck_europe.editions import EN_1992, EN_1992_2, EN_1998_2, EN_1998_3
from jacketcheck_europe.limit_states._rows import add_design_yield, resistance_row
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
_SEAMS: Final = (
    "the seams' own strength is that of the us provisions, with the resistance factors of the "
    "stricter of their codes"
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
    ductility = steps.add("μ_Δ,pl", "degraded in full", _FULLY_DEGRADED, "1", _EXISTING)
    column = _add_existing(jacket, factors, span=span, ductility=ductility, steps=steps)
    design = add_design_yield(sleeve.steel, factors, steps)
    left = add_hoop_stress_left(jacket, steps, symbol="f_yd", strength=design, clause=clause)
    hoops = steps.add(
        "V_j",
        "(π/2) t min(0.5 f_yd, σ_h) D_i",
        np.minimum(JACKET_STRESS_SHARE * np.asarray(design), left)[()]
        * shear_of_hoops(1.0, thickness=sleeve.thickness, jacket_diameter=sleeve.inner_diameter),
        "N",
        clause,
    )
    capacity = steps.add("V_tot", "V_R + V_j", column + hoops, "N", clause)
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
            notes=(_ANALOGY, _DAMAGED, _SEAMS),
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
    what = "capacity, as no demand is given" if demand is None else "displacement demand"
    steps.add("Δ_y", "at yield", repaired.yield_displacement, "mm", "plastic hinge method")
    steps.add("Δ_D", what, reached, "mm", "input actions.displacement_demand")
    return steps.add("μ_Δ,pl", "max(Δ_D/Δ_y − 1, 0)", plastic, "1", "definition")


def _add_existing(
    jacket: Jacket, factors: PartialFactors, *, span: Real, ductility: Real, steps: Steps
) -> Real:
    """Write down the shear resistance of the existing column and return it [N]."""
    column, ties = jacket.column, jacket.column.ties
    section = {
        "concrete_strength": _add_concrete(jacket, factors, steps),
        "core_area": _add_core(jacket, steps),
        "diameter": column.diameter,
        "shear_span": span,
    }
    ratio = column.layer.total_area / column.gross_area
    steps.figure("A_st", "all bars of the column", column.layer, "total_area", "mm2")
    steps.add("ρ_tot", "A_st/(π D²/4)", ratio, "1", "geometry")
    concrete = steps.add("V_c", "0.16 max(0.5, 100 ρ_tot) (1 − 0.16 min(5, L_V/D)) √f_c A_c",
                         shear.existing_concrete_shear(bar_ratio=ratio, **section), "N",
                         _EXISTING)  # fmt: skip
    steps.add("N_Ed", "with the earthquake", jacket.demands.axial_load, "N",
              "input actions.axial_load")  # fmt: skip
    depth = capacity_of_repaired(jacket).neutral_axis_depth
    steps.add("x", "neutral axis at the ultimate curvature", depth, "mm", "section analysis")
    axial = shear.existing_axial_shear(
        jacket.demands.axial_load, compression_depth=depth, **section
    )
    steps.add("V_N", "(D − x)/(2 L_V) min(N_Ed, 0.55 A_c f_c)", axial, "N", _EXISTING)
    yields = _add_hoops(jacket, factors, steps)
    steps.add("c", "cover of the hoops", column.cover, "mm", "input column.cover")
    hoops = steps.add(
        "V_w",
        "(π/2) (A_sw/s) f_yw (D − 2 c)",
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
        axial_shear=axial,
        concrete_shear=concrete,
        hoop_shear=hoops,
        plastic_ductility=ductility,
        member_factor=factors.existing_member,
    )
    return steps.add("V_R", "[V_N + (1 − 0.05 min(5, μ_Δ,pl)) (V_c + V_w)]/γ_el", resistance, "N",
                     _EXISTING)  # fmt: skip


def _add_concrete(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    """Write down the concrete's strength and return it, divided by its factor [MPa]."""
    strength = jacket.column.concrete.specified
    steps.figure("f_ck", "column", jacket.column.concrete, "specified", "MPa")
    steps.add("γ_C", "concrete", factors.concrete, "1", f"{EN_1992} 2.4.2.4")
    return steps.add("f_c", "f_ck/γ_C", np.divide(strength, factors.concrete), "MPa", _EXISTING)


def _add_core(jacket: Jacket, steps: Steps) -> Real:
    """Write down the area of the core inside of the hoops and return it [mm²]."""
    ties = jacket.column.ties
    inside = np.subtract(ties.core_diameter, ties.diameter)
    steps.add("D", "column", jacket.column.diameter, "mm", "input column.diameter")
    steps.add("D_c", "inside of the hoops", inside, "mm", "geometry")
    return steps.add("A_c", "π D_c²/4", np.pi * np.square(inside) / 4.0, "mm2", "geometry")


def _add_hoops(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    """Write down the hoops and return their design yield strength [MPa]."""
    ties = jacket.column.ties
    steps.figure("A_sw", ties.size, ties, "area", "mm2")
    steps.add("s", "hoops", ties.spacing, "mm", "input column.hoops.spacing")
    steps.figure("f_yk", "hoops", ties, "yield_strength", "MPa")
    steps.add("γ_S", "reinforcement", factors.reinforcement, "1", f"{EN_1992} 2.4.2.4")
    design = np.divide(ties.yield_strength, factors.reinforcement)
    return steps.add("f_yw", "f_yk/γ_S", design, "MPa", f"{EN_1992} 3.2.7(2)")


def _span(jacket: Jacket) -> Real:
    """Hinge to the point of contraflexure [mm]."""
    span = np.subtract(jacket.column.height, jacket.repair_height)
    return span / 2.0 if jacket.column.curvature == "double" else span


def _ductile_pier(jacket: Jacket, factors: PartialFactors) -> Result:
    steps, column, ties = Steps(), jacket.column, jacket.column.ties
    clause = f"{EN_1998_2} 5.6.3.4; {EN_1992} 6.2.3"
    demand = add_hinge(jacket, steps).shear
    core = np.divide(ties.core_diameter, 2.0)
    steps.add("r", "core, to the centre of the hoops", core, "mm", f"{EN_1998_2} 5.6.3.4")
    steps.add("r_s", "circle of the bars", column.layer.circle_radius, "mm", "geometry")
    section = shear.pier_section(concrete_radius=core, bar_circle_radius=column.layer.circle_radius)
    steps.add("z", "0.9 (r + 2 r_s/π)", section.lever_arm, "mm", f"{EN_1998_2} 5.6.3.3(2)")
    yields = _add_hoops(jacket, factors, steps)
    hoops = steps.add(
        "V_Rd,s",
        "(π/2) (A_sw/s) z f_yw, cracks at 45°",
        shear.pier_hoop_shear(
            ties.area, yield_strength=yields, spacing=ties.spacing, lever_arm=section.lever_arm
        ),
        "N",
        f"{EN_1992} Eq. 6.8",
    )
    crushing = _add_crushing(jacket, factors, section, steps)
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


def _add_crushing(
    jacket: Jacket, factors: PartialFactors, section: shear.PierSection, steps: Steps
) -> Real:
    """Write down the shear that crushes the struts and return it [N]."""
    strength = jacket.column.concrete.specified
    steps.add("b_w", "2 √(r² − (2 r_s/π)²)", section.web_width, "mm", f"{EN_1992} 6.2.3(1)")
    steps.figure("f_ck", "column", jacket.column.concrete, "specified", "MPa")
    steps.add("α_cc", "bridges", factors.compression, "1", f"{EN_1992_2} 3.1.6(101)")
    steps.add("γ_C", "concrete", factors.concrete, "1", f"{EN_1992} 2.4.2.4")
    design = steps.add(
        "f_cd",
        "α_cc f_ck/γ_C",
        design_compressive_strength(
            strength, coefficient=factors.compression, partial_factor=factors.concrete
        ),
        "MPa",
        f"{EN_1992} Eq. 3.15",
    )
    effectiveness = steps.add("ν_1", "0.6 (1 − f_ck/250 MPa)", strut_effectiveness(strength), "1",
                              f"{EN_1992} Eq. 6.6N")  # fmt: skip
    crushing = shear.pier_crushing_shear(
        design,
        effectiveness=effectiveness,
        lever_arm=section.lever_arm,
        web_width=section.web_width,
    )
    return steps.add("V_Rd,max", "b_w z ν_1 f_cd/2", crushing, "N", f"{EN_1992} Eq. 6.9")
