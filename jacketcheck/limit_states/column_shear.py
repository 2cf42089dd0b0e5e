"""Shear of the column above the repair, at the shear that the relocated hinge brings."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.displacement import capacity_of_repaired
from jacketcheck.analysis.hinge import add_hinge
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.mechanics import degrading_column_shear as degrading
from jacketcheck.mechanics import guide_spec_column_shear as guide
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.lateral_pressure import hoop_volumetric_ratio
from jacketcheck.results import Result, Steps

__all__ = ["column_shear"]

_DESIGN_SHARE = 0.85
_DEGRADING = "Kowalsky and Priestley 2000, ACI Struct. J. 97(3), 0.85 for design"


@limit_state(
    "column-shear",
    title="Shear of the column above the repair",
    monotonic={"column.ties.area": -1, "column.ties.spacing": 1},
)
def column_shear(jacket: Jacket) -> list[Result]:
    """Two methods, both with a concrete part that falls with ductility; the smaller governs."""
    return [_guide_spec(jacket), _degrading(jacket)]


def _ductility(jacket: Jacket, steps: Steps) -> Real:
    """Displacement ductility: that of the demand, or of the capacity if no demand is given."""
    repaired, demand = capacity_of_repaired(jacket), jacket.demands.displacement
    reached = repaired.displacement if demand is None else demand
    ductility = np.maximum(np.divide(reached, repaired.yield_displacement), 1.0)
    what = "Δ_u/Δ_y, no demand given" if demand is None else "Δ_D/Δ_y"
    return steps.add("μ_D", what, ductility, "1", "plastic hinge method")


def _guide_spec(jacket: Jacket) -> Result:
    steps, column, ties = Steps(), jacket.column, jacket.column.ties
    clause = f"{GUIDE_SPEC} 8.6"
    demand = add_hinge(jacket, steps).shear
    ductility = _ductility(jacket, steps)
    ratio = hoop_volumetric_ratio(ties.area, core_diameter=ties.core_diameter, spacing=ties.spacing)
    steps.add("ρ_s", "4 A_sp/(s D′)", ratio, "1", clause)
    factor = steps.add(
        "α′",
        "ρ_s f_yh/0.15 ksi + 3.67 − μ_D",
        guide.guide_spec_concrete_factor(
            ductility, hoop_ratio=ratio, hoop_yield=ties.yield_strength
        ),
        "1",
        f"{clause}.2",
    )
    concrete = steps.add(
        "V_c",
        "0.8 A_g v_c",
        guide.guide_spec_concrete_shear(
            column.gross_area,
            concrete_strength=column.concrete.specified,
            axial_load=jacket.demands.axial_load,
            concrete_factor=factor,
        ),
        "N",
        f"{clause}.2",
    )
    hoops = steps.add(
        "V_s",
        "(π/2) A_sp f_yh D′/s",
        guide.guide_spec_hoop_shear(
            ties.area,
            hoop_yield=ties.yield_strength,
            core_diameter=ties.core_diameter,
            spacing=ties.spacing,
            concrete_strength=column.concrete.specified,
            gross_area=column.gross_area,
        ),
        "N",
        f"{clause}.3",
    )
    steps.add("φ", "shear", guide.GUIDE_SPEC_SHEAR_FACTOR, "1", clause)
    capacity = steps.add("φV_n", "φ (V_c + V_s)", guide.GUIDE_SPEC_SHEAR_FACTOR * (concrete + hoops),
                         "N", clause)  # fmt: skip
    return _row(demand, capacity, clause, steps)


def _degrading(jacket: Jacket) -> Result:
    steps, column, ties = Steps(), jacket.column, jacket.column.ties
    demand = add_hinge(jacket, steps).shear
    repaired = capacity_of_repaired(jacket)
    span = (column.height - np.asarray(jacket.repair_height)) / (
        2.0 if column.curvature == "double" else 1.0
    )
    curvature_ductility = steps.add(
        "μ_φ",
        "φ_u/φ_y of the hinge",
        repaired.ultimate_curvature / repaired.yield_curvature,
        "1",
        "section analysis",
    )
    depth = steps.add("c", "neutral axis at φ_u", repaired.neutral_axis_depth, "mm",
                      "section analysis")  # fmt: skip
    concrete = degrading.degrading_concrete_shear(
        column.gross_area,
        concrete_strength=column.concrete.expected,
        aspect_ratio=span / column.diameter,
        bar_ratio=column.layer.total_area / column.gross_area,
        curvature_ductility=curvature_ductility,
    )
    steps.add("V_c", "α β γ √f′c 0.8 A_g", concrete, "N", _DEGRADING)
    axial = degrading.degrading_axial_shear(
        jacket.demands.axial_load,
        diameter=column.diameter,
        neutral_axis_depth=depth,
        shear_span=span,
    )
    steps.add("V_p", "P (D − c)/(2 span)", axial, "N", _DEGRADING)
    hoops = degrading.degrading_hoop_shear(
        ties.area,
        hoop_yield=ties.yield_strength,
        diameter=column.diameter,
        neutral_axis_depth=depth,
        hoop_cover=column.cover,
        spacing=ties.spacing,
    )
    steps.add("V_s", "(π/2) A_sp f_yh (D − c − cover) cot 30°/s", hoops, "N", _DEGRADING)
    capacity = steps.add("0.85 V", "0.85 (V_c + V_p + V_s)", _DESIGN_SHARE * (concrete + axial + hoops),
                         "N", _DEGRADING)  # fmt: skip
    return _row(demand, capacity, _DEGRADING, steps)


def _row(demand: Real, capacity: Real, clause: str, steps: Steps) -> Result:
    title = "Shear of the column above the repair"
    return Result(title, "above the repair", demand, capacity, "N", clause, steps.lines)
