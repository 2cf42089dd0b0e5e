"""Shear of the column above and inside the repair, at the shear that the hinge brings."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.analysis.displacement import capacity_of_repaired
from jacketcheck.analysis.hinge import add_hinge
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import add_radii, hoop_demand
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.limit_states.seam_reserve import seam_hoop_forces
from jacketcheck.mechanics import degrading_column_shear as degrading
from jacketcheck.mechanics import guide_spec_column_shear as guide
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.jacket_shear import jacket_shear
from jacketcheck.mechanics.lateral_pressure import hoop_volumetric_ratio
from jacketcheck.results import Result, Steps

__all__ = ["add_hoop_stress_left", "column_shear", "repair_shear"]

_JACKET: Final = "Priestley, Seible, Xiao and Verma 1994, ACI Struct. J. 91(4)"
_SLEEVE_ALONE: Final = (
    "engineering judgement: damaged concrete, its hoops and the added bars are not counted; the "
    "hoop force of this shear is in the demand on sleeve and seams"
)
_SEAMS: Final = (
    "seam-slip",
    "seam-bolt-shear",
    "sleeve-bearing",
    "splice-bearing",
    "seam-bolt-row",
    "sleeve-net-rupture",
    "splice-gross-yield",
    "splice-net-rupture",
    "seam-block-shear",
    "hoop-clamping",
)
_NO_COMPRESSION: Final = (
    "8.6.2 counts the concrete (V_c) under axial compression only: without any, the strength falls "
    "to that of the hoops at once; a step of the code, not of the column"
)
_DESIGN_SHARE: Final = 0.85
_HINGE: Final = "plastic hinge method"
_DEGRADING: Final = "Kowalsky and Priestley 2000, ACI Struct. J. 97(3), 0.85 for design"


@limit_state(
    "column-shear",
    title="Shear of the column above the repair",
    monotonic={"column.ties.area": -1, "column.ties.spacing": 1},
    scatter=Scatter(
        "shear of the hinge's largest moment exceeds the degrading strength of the column",
        rules=("degrading-shear",),
        model="column-shear",
    ),
)
def column_shear(jacket: Jacket) -> list[Result]:
    """Two methods, both with a concrete part that falls with ductility; the smaller governs."""
    return [_guide_spec(jacket), _degrading(jacket)]


def _ductility(jacket: Jacket, steps: Steps) -> Real:
    """Displacement ductility: that of the demand, or of the capacity if no demand is given."""
    repaired, demand = capacity_of_repaired(jacket), jacket.demands.displacement
    if demand is None:
        reached = steps.add("Δ", "displacement capacity, no demand given", repaired.displacement,
                            "mm", _HINGE)  # fmt: skip
    else:
        reached = steps.add("Δ", "displacement demand", demand, "mm",
                            "input actions.displacement_demand")  # fmt: skip
    at_yield = steps.add("Δ_y", "idealised yield", repaired.yield_displacement, "mm", _HINGE)
    ductility = np.maximum(np.divide(reached, at_yield), 1.0)
    return steps.add("μ_D", "max(Δ/Δ_y, 1)", ductility, "1", _HINGE)


def _add_hoops(jacket: Jacket, steps: Steps) -> None:
    """Write down the column and its hoops."""
    column, ties = jacket.column, jacket.column.ties
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    steps.add("A_g", "π D²/4", column.gross_area, "mm2", "geometry")
    steps.figure("A_sp", ties.size, ties, "area", "mm2")
    steps.figure("f_yh", "specified", ties, "yield_strength", "MPa")
    steps.add("s", "spacing of the hoops", ties.spacing, "mm", "input column.hoops.spacing")
    axial_load = jacket.demands.axial_load
    steps.add("P", "with the earthquake", axial_load, "N", "input actions.axial_load")


def _guide_spec(jacket: Jacket) -> Result:
    steps, clause = Steps(), f"{GUIDE_SPEC} 8.6"
    demand = add_hinge(jacket, steps).shear
    ductility = _ductility(jacket, steps)
    _add_hoops(jacket, steps)
    concrete = _add_guide_concrete(jacket, steps, ductility, f"{clause}.2")
    hoops = _add_guide_hoops(jacket, steps, f"{clause}.3")
    factor = steps.add("φ", "shear", guide.GUIDE_SPEC_SHEAR_FACTOR, "1", f"{clause}.1")
    capacity = steps.add("φV_n", "φ (V_c + V_s)", factor * np.add(concrete, hoops), "N", clause)
    row = _row(demand, capacity, clause, steps, ("guide-spec-shear", factor))
    bare = np.any(np.less_equal(jacket.demands.axial_load, 0.0))
    return replace(row, notes=(_NO_COMPRESSION,)) if bare else row


def _add_guide_concrete(jacket: Jacket, steps: Steps, ductility: Real, clause: str) -> Real:
    column, ties = jacket.column, jacket.column.ties
    core, concrete = ties.core_diameter, column.concrete
    steps.add("D′", "circle of hoop centres", core, "mm", "geometry")
    ratio = hoop_volumetric_ratio(ties.area, core_diameter=core, spacing=ties.spacing)
    steps.add("ρ_s", "4 A_sp/(s D′)", ratio, "1", clause)
    factor = guide.guide_spec_concrete_factor(
        ductility, hoop_ratio=ratio, hoop_yield=ties.yield_strength
    )
    stress = np.minimum(np.multiply(ratio, ties.yield_strength), guide.LARGEST_HOOP_STRESS)
    steps.add("f_s", "ρ_s f_yh ≤ 0.35, in ksi", stress, "MPa", clause)
    steps.add("α′", "min(max(f_s/0.15 + 3.67 − μ_D, 0.3), 3), in ksi", factor, "1", clause)
    steps.figure("f′c", "specified", concrete, "specified", "MPa")
    shear = guide.guide_spec_concrete_shear(
        column.gross_area,
        concrete_strength=concrete.specified,
        axial_load=jacket.demands.axial_load,
        concrete_factor=factor,
    )
    stress = np.divide(shear, guide.guide_spec_effective_area(column.gross_area))
    expression = "0.032 α′ (1 + P/(2 A_g)) √f′c ≤ min(0.11, 0.047 α′) √f′c, in ksi and in"
    steps.add("v_c", expression, stress, "MPa", clause)
    return steps.add("V_c", "0.8 A_g v_c", shear, "N", clause)


def _add_guide_hoops(jacket: Jacket, steps: Steps, clause: str) -> Real:
    column, ties = jacket.column, jacket.column.ties
    shear = guide.guide_spec_hoop_shear(
        ties.area,
        hoop_yield=ties.yield_strength,
        core_diameter=ties.core_diameter,
        spacing=ties.spacing,
        concrete_strength=column.concrete.specified,
        gross_area=column.gross_area,
    )
    expression = "(π/2) A_sp f_yh D′/s ≤ 0.25 √f′c 0.8 A_g, in ksi and in"
    return steps.add("V_s", expression, shear, "N", clause)


def _degrading(jacket: Jacket) -> Result:
    steps = Steps()
    demand = add_hinge(jacket, steps).shear
    _add_hoops(jacket, steps)
    repaired, column = capacity_of_repaired(jacket), jacket.column
    steps.add("c", "neutral axis at the ultimate curvature", repaired.neutral_axis_depth, "mm",
              "section analysis")  # fmt: skip
    steps.add("a", "hinge to contraflexure", repaired.shear_span, "mm", "geometry")
    concrete = _add_degrading_concrete(jacket, steps)
    axial = degrading.degrading_axial_shear(
        jacket.demands.axial_load,
        diameter=column.diameter,
        neutral_axis_depth=repaired.neutral_axis_depth,
        shear_span=repaired.shear_span,
    )
    steps.add("V_p", "P (D − c)/(2 a)", axial, "N", _DEGRADING)
    hoops = _add_degrading_hoops(jacket, steps)
    total = np.add(concrete, axial) + hoops
    capacity = steps.add("0.85 V", "0.85 (V_c + V_p + V_s)", _DESIGN_SHARE * total, "N", _DEGRADING)
    return _row(demand, capacity, _DEGRADING, steps, ("degrading-shear", _DESIGN_SHARE))


def _add_degrading_concrete(jacket: Jacket, steps: Steps) -> Real:
    column, repaired = jacket.column, capacity_of_repaired(jacket)
    steps.add("φ_y", "idealised yield", repaired.yield_curvature, "1/mm", "section analysis")
    steps.add("φ_u", "ultimate", repaired.ultimate_curvature, "1/mm", "section analysis")
    ductility = steps.add("μ_φ", "φ_u/φ_y", repaired.ultimate_curvature / repaired.yield_curvature,
                          "1", "section analysis")  # fmt: skip
    concrete = column.concrete
    steps.figure("f′ce", "expected", concrete, "expected", "MPa")
    layer = column.layer
    steps.add("n", "longitudinal bars", layer.count, "1", "input column.bars.count")
    steps.figure("A_b", layer.size, layer, "area", "mm2")
    ratio = steps.add("ρ_l", "n A_b/A_g", layer.total_area / column.gross_area, "1", "geometry")
    shear = degrading.degrading_concrete_shear(
        column.gross_area,
        concrete_strength=concrete.expected,
        aspect_ratio=repaired.shear_span / column.diameter,
        bar_ratio=ratio,
        curvature_ductility=ductility,
    )
    factors = degrading.degrading_factors(
        aspect_ratio=repaired.shear_span / column.diameter,
        bar_ratio=ratio,
        curvature_ductility=ductility,
    )
    steps.add("α", "min(max(3 − a/D, 1), 1.5)", factors.aspect, "1", _DEGRADING)
    steps.add("β", "0.5 + 20 ρ_l ≤ 1", factors.bars, "1", _DEGRADING)
    steps.add("γ", "min(max(0.29 − 0.02 (μ_φ − 3), 0.05), 0.29)", factors.ductility, "1",
              _DEGRADING)  # fmt: skip
    return steps.add("V_c", "α β γ √f′ce 0.8 A_g", shear, "N", _DEGRADING)


def _add_degrading_hoops(jacket: Jacket, steps: Steps) -> Real:
    column, ties = jacket.column, jacket.column.ties
    cover = steps.add("c_h", "cover over the hoops", column.cover, "mm", "input column.cover")
    shear = degrading.degrading_hoop_shear(
        ties.area,
        hoop_yield=ties.yield_strength,
        diameter=column.diameter,
        neutral_axis_depth=capacity_of_repaired(jacket).neutral_axis_depth,
        hoop_cover=cover,
        spacing=ties.spacing,
    )
    expression = "(π/2) A_sp f_yh max(D − c − c_h, 0) √3/s"
    return steps.add("V_s", expression, shear, "N", f"{_DEGRADING}; cot 30° = √3")


def _row(
    demand: Real, capacity: Real, clause: str, steps: Steps, rule: tuple[str, float]
) -> Result:
    """Row of a method, with the key of its rule and its resistance factor."""
    title = "Shear of the column above the repair"
    return Result(title, "above the repair", demand, capacity, "N", clause, steps.lines,
                  rule=rule[0], resistance_factor=rule[1])  # fmt: skip


def _seam_forces(jacket: Jacket) -> tuple[Real, Real]:
    """Hoop force that the seams carry by strength, and before they slip [N/mm]."""
    forces = [force for _, force in seam_hoop_forces(jacket)]
    if not forces:
        raise NotEvaluatedError("no strength of the seams could be evaluated")
    bolts, action = jacket.bolts, hoop_action(jacket)
    slip = np.multiply(action.slip_force, bolts.columns) / bolts.tributary_height
    least = np.min(np.broadcast_arrays(*forces), axis=0)[()]
    return least, slip if bolts.pretensioned else np.inf


def add_hoop_stress_left(
    jacket: Jacket, steps: Steps, *, symbol: str, strength: Real, clause: str
) -> Real:
    """Write down the hoop stress that is left for shear, and return it [MPa].

    Parameters
    ----------
    jacket, steps
        Where from and where to.
    symbol, strength
        Yield strength of the sleeve that counts, and how it stands above [MPa].
    clause
        Rule of the shear.
    """
    sleeve, demand = jacket.sleeve, hoop_demand(jacket)
    thickness = steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    add_radii(jacket, steps)
    steps.add("p_dil", "dilation, expected yield", demand.dilation_pressure, "MPa",
              "as limit state hoop-dilation, with the sleeve's expected yield")  # fmt: skip
    steps.add("p_cl", "clamping that the bars need", demand.clamping_pressure, "MPa",
              "limit state clamping")  # fmt: skip
    steps.add("N_lap", "non-contact laps", demand.lap_force, "N/mm", "limit state added-bar-lap")
    forced = np.multiply(demand.clamping_pressure, sleeve.inner_radius) + demand.lap_force
    wall = steps.add("N_1", f"max({symbol} t − p_cl R_i − N_lap, 0)", np.maximum(
        np.multiply(strength, thickness) - forced, 0.0), "N/mm",
        "yield of the sleeve, beside what does not give way")  # fmt: skip
    least, slip = _seam_forces(jacket)
    steps.add("N_str", "least design strength of the seams", least, "N/mm",
              "limit states of seam bolts and seam plates")  # fmt: skip
    steps.add("N_slip", "slip of the hardest-worked row; none for snug bolts, which bear", slip,
              "N/mm", "friction, smallest slip coefficient")  # fmt: skip
    seam = steps.add("N_seam", "min(N_str, N_slip)", np.minimum(least, slip), "N/mm",
                     "series of parts")  # fmt: skip
    left = steps.add("N_2", "max(N_seam − max(p_dil, p_cl) R_i − N_lap, 0)", np.maximum(
        np.subtract(seam, np.add(demand.pressure_force, demand.lap_force)), 0.0), "N/mm",
        "seams, beside everything that pulls at them")  # fmt: skip
    return steps.add("σ_h", f"min({symbol}, N_1/t, N_2/t)",
                     np.minimum(wall, left) / thickness, "MPa", clause)  # fmt: skip


@limit_state(
    "repair-shear",
    title="Shear of the column inside the repair",
    scatter=Scatter(
        "the same shear exceeds the hoop action of the sleeve alone at its actual yield strength",
        rules=("sleeve-shear",),
        model="column-shear",
    ),
)
def repair_shear(jacket: Jacket) -> list[Result]:
    """Hoop action of the sleeve alone against the shear that the relocated hinge brings.

    The hoop stress is what the sleeve's yield leaves beside laps and clamping, or, if that is less,
    what its seams leave beside everything else that pulls at them: by strength, and for
    pretensioned bolts by slip. Dilation is a movement that a yielding sleeve gives way to; it takes
    nothing off the yield force, but it pulls at the seams.
    """
    steps, sleeve = Steps(), jacket.sleeve
    shear = add_hinge(jacket, steps).shear
    steps.figure("F_y", sleeve.steel.name, sleeve.steel, "yield_strength", "MPa")
    stress = add_hoop_stress_left(
        jacket, steps, symbol="F_y", strength=sleeve.steel.yield_strength, clause=_JACKET
    )
    unit = jacket_shear(1.0, thickness=sleeve.thickness, jacket_diameter=jacket.column.diameter)
    nominal = np.multiply(stress, unit)
    steps.add("V_sj", "(π/2) t σ_h D", nominal, "N", f"{_JACKET}, cracks at 45°")
    factor = steps.add("φ", "shear", guide.GUIDE_SPEC_SHEAR_FACTOR, "1", f"{GUIDE_SPEC} 8.6.1")
    capacity = steps.add("φV_sj", "φ V_sj", np.multiply(factor, nominal), "N", _JACKET)
    return [
        Result(
            "Shear of the column inside the repair",
            "over the height of the sleeve",
            shear,
            capacity,
            "N",
            _JACKET,
            steps.lines,
            (_SLEEVE_ALONE,),
            rule="sleeve-shear",
            resistance_factor=factor,
            follows_from=_SEAMS,
        )
    ]
