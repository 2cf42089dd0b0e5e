"""Strength and displacement that the repaired column has regained, and P-Delta."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.displacement import (
    ColumnCapacity,
    capacity_of_original,
    capacity_of_repaired,
)
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.relocated_hinge import P_DELTA_LIMIT, p_delta_ratio
from jacketcheck.results import Kind, Result, Steps

__all__ = ["displacement_capacity", "load_capacity", "p_delta"]

_HINGE = "plastic hinge, Caltrans SDC 1.4 (2006) 3.1.3"
_SHORTER = (
    "the repair shortens the span over which the hinge can rotate: the displacement capacity is "
    "smaller than the original's"
)
_NO_DEMAND = "no displacement demand was given (actions.displacement_demand): no verdict"


@limit_state("load-capacity", title="Lateral load capacity restored")
def load_capacity(jacket: Jacket) -> list[Result]:
    """Lateral strength of the repaired column against the original's."""
    steps = Steps()
    original, repaired = capacity_of_original(jacket), capacity_of_repaired(jacket)
    demand = steps.add("V_orig", "M_p / span, hinge at the footing", original.shear, "N", _HINGE)
    above = steps.add("V_above", "M_p / span, hinge above the repair", repaired.shear, "N", _HINGE)
    at_base = steps.add("V_base", "M_n of the base / span", _base_shear(jacket), "N", "statics")
    capacity = steps.add("V", "the smaller", np.minimum(above, at_base), "N", "statics")
    return [
        Result(
            "Lateral load capacity restored", "column", demand, capacity, "N", _HINGE, steps.lines
        )
    ]


def _base_shear(jacket: Jacket) -> Real:
    """Shear that goes with the base's moment strength [N]."""
    column = jacket.column
    moment = base_section(jacket).moment_capacity
    if column.curvature == "double":
        # hinges at both ends: base moment and the moment of the hinge at the top
        return np.add(moment, capacity_of_original(jacket).plastic_moment) / column.height
    return moment / column.height


def _add_capacity(steps: Steps, capacity: ColumnCapacity, mark: str) -> Real:
    steps.add(
        f"φ_y,{mark}", "idealised yield", capacity.yield_curvature, "1/mm", "section analysis"
    )
    steps.add(f"φ_u,{mark}", "ultimate", capacity.ultimate_curvature, "1/mm", "section analysis")
    steps.add(f"L_p,{mark}", "0.08 span + 0.022 f_ye d_b ≥ 0.044 f_ye d_b", capacity.hinge_length,
              "mm", _HINGE)  # fmt: skip
    steps.add(
        f"Δ_y,{mark}", "φ_y span²/3 for each hinge", capacity.yield_displacement, "mm", _HINGE
    )
    return steps.add(f"Δ_u,{mark}", "Δ_y + (φ_u − φ_y) L_p (span − L_p/2)", capacity.displacement,
                     "mm", _HINGE)  # fmt: skip


@limit_state("displacement-capacity", title="Displacement capacity")
def displacement_capacity(jacket: Jacket) -> list[Result]:
    """Displacement capacity against the demand, and beside the original's."""
    repaired = capacity_of_repaired(jacket)
    rows = []
    demand = jacket.demands.displacement
    if demand is not None:
        steps = Steps()
        steps.add("Δ_D", "displacement demand", demand, "mm", "input actions.displacement_demand")
        capacity = _add_capacity(steps, repaired, "rep")
        rows.append(
            Result("Displacement capacity", "against the demand", demand, capacity, "mm",
                   f"{_HINGE}; {GUIDE_SPEC} 4.8", steps.lines)
        )  # fmt: skip
    rows.append(_buckling(repaired, demand))
    steps = Steps()
    original = _add_capacity(steps, capacity_of_original(jacket), "orig")
    capacity = _add_capacity(steps, repaired, "rep")
    notes = (_SHORTER,) if np.any(np.less(capacity, original)) else ()
    rows.append(
        Result(
            "Displacement capacity",
            "beside the original column's",
            original,
            capacity,
            "mm",
            _HINGE,
            steps.lines,
            notes if demand is not None else (*notes, _NO_DEMAND),
            kind=Kind.REPORTED,
        )
    )
    return rows


def _buckling(repaired: ColumnCapacity, demand: Real | None) -> Result:
    """Displacement from which the bars above the repair buckle when it reverses; reported."""
    steps = Steps()
    source = "Goodnight, Kowalsky and Nau 2016"
    steps.add("ε_bb", "0.03 + 700 ρ_s f_yhe/E_s − 0.1 P/(f′ce A_g)", repaired.buckling_strain, "1",
              source)  # fmt: skip
    capacity = steps.add("Δ_bb", "displacement at which the extreme bar reaches it",
                         repaired.buckling_displacement, "mm", _HINGE)  # fmt: skip
    reached = steps.add("Δ", "displacement capacity" if demand is None else "displacement demand",
                        repaired.displacement if demand is None else demand, "mm", _HINGE)  # fmt: skip
    return Result(
        "Displacement at which bars buckle",
        "above the repair",
        reached,
        capacity,
        "mm",
        source,
        steps.lines,
        kind=Kind.REPORTED,
    )


@limit_state("p-delta", title="P-Delta")
def p_delta(jacket: Jacket) -> list[Result]:
    """Moment of the axial load on the displaced column over the plastic moment."""
    steps = Steps()
    repaired = capacity_of_repaired(jacket)
    clause = f"{GUIDE_SPEC} 4.11.5"
    given = jacket.demands.displacement
    displacement = repaired.displacement if given is None else given
    steps.add("Δ", "displacement capacity" if given is None else "displacement demand", displacement,
              "mm", _HINGE if given is None else "input actions.displacement_demand")  # fmt: skip
    steps.add(
        "P", "with the earthquake", jacket.demands.axial_load, "N", "input actions.axial_load"
    )
    steps.add("M_p", "hinge above the repair", repaired.plastic_moment, "N mm", "section analysis")
    # in double curvature each half of the column takes half of the displacement
    hinges = 2.0 if jacket.column.curvature == "double" else 1.0
    ratio = steps.add(
        "P Δ/M_p",
        "offset from hinge to contraflexure",
        p_delta_ratio(
            jacket.demands.axial_load,
            displacement=displacement / hinges,
            hinge_moment=repaired.plastic_moment,
        ),
        "1",
        clause,
    )
    limit = steps.add(
        "limit", "P-Delta may be left out of the analysis", P_DELTA_LIMIT, "1", clause
    )
    return [Result("P-Delta", "column", ratio, limit, "1", clause, steps.lines)]
