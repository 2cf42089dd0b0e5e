"""Strength and displacement that the repaired column has regained, and P-Delta."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.damaged_bars import debonding_bars
from jacketcheck.analysis.displacement import (
    ColumnCapacity,
    capacity_of_original,
    capacity_of_repaired,
)
from jacketcheck.analysis.hinge_model import HINGE_CAUSES, HingeModel, hinge_model
from jacketcheck.analysis.hoop_action import tie_ratio
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import NoScatter, Scatter, limit_state
from jacketcheck.limit_states._rows import not_evaluated
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.relocated_hinge import P_DELTA_LIMIT, p_delta_ratio
from jacketcheck.results import Kind, Result, Steps

__all__ = [
    "add_counted_displacement",
    "buckling_row",
    "displacement_capacity",
    "load_capacity",
    "no_capacity_notes",
    "p_delta",
]

_HINGE: Final = "plastic hinge, Caltrans SDC 1.4 (2006) 3.1.3"
_SECTION: Final = "section analysis"
_SHORTER: Final = (
    "the repair shortens the span over which the hinge can rotate: the displacement capacity is "
    "smaller than the original's"
)
_BUCKLES: Final = (
    "bars above the repair buckle when the demand reverses, before the section is exhausted: see "
    "its own row"
)
_DIRECTION: Final = (
    "bending in the direction in which the section above the repair is weakest; where bars held by "
    "bond stay below the stress of the others, curvature at failure is smaller in other "
    "directions, by up to 7 % in trials"
)
_AGAINST: Final = "against the demand"
_NO_CAPACITY: Final = (
    "no displacement capacity is counted, because the model of the hinge does not hold: {}; the "
    "displacement shown among the steps is that of bars that never let go, above a repair that "
    "stays elastic"
)
_LOWER_BOUND: Final = (
    "a lower bound: the strain belongs to tension over a longer hinge than that of the "
    "displacement capacity; bars of tested columns buckle later"
)
_NO_DEMAND: Final = "no displacement demand is given (actions.displacement_demand)"


@limit_state(
    "load-capacity",
    title="Lateral load capacity restored",
    scatter=Scatter(
        "lateral strength of the original column exceeds that of the repaired one",
        rules=("lateral-load",),
    ),
)
def load_capacity(jacket: Jacket) -> list[Result]:
    """Lateral strength of the repaired column against the original's."""
    steps, height = Steps(), jacket.column.height
    original, repaired = capacity_of_original(jacket), capacity_of_repaired(jacket)
    steps.add("M_p,orig", "hinge at the footing", original.plastic_moment, "N mm", _SECTION)
    steps.add("a_orig", "footing to contraflexure", original.shear_span, "mm", "geometry")
    demand = steps.add("V_orig", "M_p,orig/a_orig", original.shear, "N", "statics")
    steps.add("M_p,rep", "hinge above the repair", repaired.plastic_moment, "N mm", _SECTION)
    steps.add("a_rep", "hinge to contraflexure", repaired.shear_span, "mm", "geometry")
    above = steps.add("V_above", "M_p,rep/a_rep", repaired.shear, "N", "statics")
    moment = base_section(jacket).moment_capacity
    steps.add("M_n", "repaired base", moment, "N mm", "limit state base-moment")
    steps.add("L", "column height", height, "mm", "input column.height")
    if jacket.column.curvature == "double":
        # hinges at both ends: the base's moment and that of the hinge at the top
        expression, total = "(M_n + M_p,orig)/L", np.add(moment, original.plastic_moment)
    else:
        expression, total = "M_n/L", moment
    at_base = steps.add("V_base", expression, np.divide(total, height), "N", "statics")
    capacity = steps.add("V", "min(V_above, V_base)", np.minimum(above, at_base), "N", "statics")
    return [
        Result(
            "Lateral load capacity restored",
            "column",
            demand,
            capacity,
            "N",
            _HINGE,
            steps.lines,
            rule="lateral-load",
            follows_from=("bar-bond", "base-moment"),
        )
    ]


def _add_capacity(jacket: Jacket, steps: Steps, capacity: ColumnCapacity, mark: str) -> Real:
    """Write down yield and ultimate displacement of a column and return the latter [mm]."""
    layer = jacket.column.layer
    steps.figure("f_ye", layer.steel.name, layer.steel, "expected_yield", "MPa")
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.add("n_h", "hinges", capacity.hinges, "1", "input column.curvature")
    steps.add(f"φ_y,{mark}", "idealised yield", capacity.yield_curvature, "1/mm", _SECTION)
    steps.add(f"φ_u,{mark}", "ultimate", capacity.ultimate_curvature, "1/mm", _SECTION)
    steps.add(f"a_{mark}", "hinge to contraflexure", capacity.shear_span, "mm", "geometry")
    steps.add(f"L_p,{mark}", f"0.08 a_{mark} + 0.022 f_ye d_b ≥ 0.044 f_ye d_b",
              capacity.hinge_length, "mm", _HINGE)  # fmt: skip
    steps.add(f"Δ_y,{mark}", f"n_h φ_y,{mark} a_{mark}²/3", capacity.yield_displacement, "mm",
              _HINGE)  # fmt: skip
    plastic = f"n_h (φ_u,{mark} − φ_y,{mark}) L_p,{mark} (a_{mark} − L_p,{mark}/2)"
    return steps.add(f"Δ_u,{mark}", f"Δ_y,{mark} + {plastic}", capacity.displacement, "mm", _HINGE)


@limit_state(
    "displacement-capacity",
    title="Displacement capacity",
    scatter=Scatter(
        "displacement demand as written exceeds the capacity, or that at which bars buckle",
        rules=("displacement-demand", "bar-buckling"),
        model="displacement",
    ),
)
def displacement_capacity(jacket: Jacket) -> list[Result]:
    """Displacement capacity against the demand, and beside the original's."""
    repaired = capacity_of_repaired(jacket)
    rows: list[Result] = []
    unequal: tuple[str, ...] = (_DIRECTION,) if debonding_bars(jacket).groups else ()
    demand = jacket.demands.displacement
    if demand is not None:
        steps = Steps()
        steps.add("Δ_D", "displacement demand", demand, "mm", "input actions.displacement_demand")
        found = _add_capacity(jacket, steps, repaired, "rep")
        capacity = add_counted_displacement(jacket, steps, found, "Δ_u,rep")
        buckles = np.any(np.less(repaired.buckling_displacement, demand))
        told = (*unequal, _BUCKLES) if buckles else unequal
        told = (*told, *no_capacity_notes(hinge_model(jacket)))
        rows.append(
            Result("Displacement capacity", _AGAINST, demand, capacity, "mm",
                   f"{_HINGE}; {GUIDE_SPEC} 4.8", steps.lines, told, rule="displacement-demand",
                   follows_from=HINGE_CAUSES)
        )  # fmt: skip
    if demand is None:
        rows.append(not_evaluated("Displacement capacity", _NO_DEMAND, location=_AGAINST))
    rows.append(buckling_row(jacket))
    steps = Steps()
    original = _add_capacity(jacket, steps, capacity_of_original(jacket), "orig")
    found = _add_capacity(jacket, steps, repaired, "rep")
    capacity = add_counted_displacement(jacket, steps, found, "Δ_u,rep")
    notes = (*unequal, _SHORTER) if np.any(np.less(capacity, original)) else unequal
    notes = (*notes, *no_capacity_notes(hinge_model(jacket)))
    rows.append(
        Result(
            "Displacement capacity",
            "beside the original column's",
            original,
            capacity,
            "mm",
            _HINGE,
            steps.lines,
            notes,
            kind=Kind.REPORTED,
        )
    )
    return rows


def add_counted_displacement(jacket: Jacket, steps: Steps, displacement: Real, symbol: str) -> Real:
    """Write down what of a displacement capacity is counted and return it [mm].

    None where the model of the hinge does not hold: the rows of the causes say why.
    """
    holds = hinge_model(jacket).holds
    steps.add("k_h", "1 where bars, base and repair hold the hinge in its place, else 0",
              np.where(holds, 1.0, 0.0)[()], "1",
              f"limit states {', '.join(HINGE_CAUSES)}")  # fmt: skip
    return steps.add("Δ_cap", f"k_h {symbol}", np.where(holds, displacement, 0.0)[()], "mm",
                     "no capacity from a model that does not hold")  # fmt: skip


def no_capacity_notes(model: HingeModel) -> tuple[str, ...]:
    """Why no displacement capacity is counted; nothing where it is."""
    return (_NO_CAPACITY.format("; ".join(model.reasons)),) if model.reasons else ()


def buckling_row(jacket: Jacket) -> Result:
    """Displacement from which the bars above the repair buckle when it reverses.

    A limit where a demand is given: the capacity of the section counts on bars that stay straight.
    """
    steps, source = Steps(), "Goodnight, Kowalsky and Nau 2016"
    repaired = capacity_of_repaired(jacket)
    _add_buckling_strain(jacket, repaired, steps, source)
    buckles = steps.add(
        "Δ_bb", "displacement at which the extreme bar reaches it, at most the capacity",
        np.minimum(repaired.buckling_displacement, repaired.displacement), "mm", _HINGE,
    )  # fmt: skip
    is_limit = jacket.demands.displacement is not None
    capacity = buckles
    if is_limit:
        # infinite where the section is exhausted before its bars buckle
        most = steps.add("Δ_u,rep", "ultimate, limit state displacement-capacity",
                         repaired.displacement, "mm", _HINGE)  # fmt: skip
        capacity = add_counted_displacement(
            jacket, steps, np.minimum(buckles, most), "min(Δ_bb, Δ_u,rep)"
        )
    return Result(
        "Displacement at which bars buckle",
        "above the repair",
        _add_displacement(jacket, repaired, steps),
        capacity,
        "mm",
        source,
        steps.lines,
        (_LOWER_BOUND, *no_capacity_notes(hinge_model(jacket))),
        kind=Kind.LIMIT if is_limit else Kind.REPORTED,
        rule="bar-buckling",
        follows_from=HINGE_CAUSES if is_limit else (),
    )


def _add_buckling_strain(
    jacket: Jacket, repaired: ColumnCapacity, steps: Steps, source: str
) -> None:
    """Write down the strain after which the bars buckle, at least their yield strain."""
    column, ties, steel = jacket.column, jacket.column.ties, jacket.column.layer.steel
    steps.figure("A_sp", ties.size, ties, "area", "mm2")
    steps.add("s", "spacing of the hoops", ties.spacing, "mm", "input column.hoops.spacing")
    steps.add("D′", "circle of hoop centres", ties.core_diameter, "mm", "geometry")
    steps.add("ρ_s", "4 A_sp/(s D′)", tie_ratio(jacket), "1", "volumetric ratio of the hoops")
    steps.figure("f_yhe", "hoops, expected yield", ties, "expected_yield", "MPa")
    steps.figure("E_s", "hoops", ties, "elastic_modulus", "MPa")
    axial_load = jacket.demands.axial_load
    steps.add("P", "with the earthquake", axial_load, "N", "input actions.axial_load")
    steps.figure("f′ce", "expected", column.concrete, "expected", "MPa")
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    steps.add("A_g", "π D²/4", column.gross_area, "mm2", "geometry")
    steps.figure("f_ye", steel.name, steel, "expected_yield", "MPa")
    steps.figure("E", steel.name, steel, "elastic_modulus", "MPa")
    steps.add("ε_bb", "max(0.03 + 700 ρ_s f_yhe/E_s − 0.1 P/(f′ce A_g), f_ye/E)",
              repaired.buckling_strain, "1", source)  # fmt: skip


@limit_state(
    "p-delta",
    title="P-Delta",
    scatter=NoScatter(
        "tells whether an analysis may leave P-Delta out: no event",
    ),
)
def p_delta(jacket: Jacket) -> list[Result]:
    """Moment of the axial load on the displaced column over the plastic moment."""
    steps, demands = Steps(), jacket.demands
    repaired, clause = capacity_of_repaired(jacket), f"{GUIDE_SPEC} 4.11.5"
    displacement = _add_displacement(jacket, repaired, steps)
    steps.add("P", "with the earthquake", demands.axial_load, "N", "input actions.axial_load")
    steps.add("M_p", "hinge above the repair", repaired.plastic_moment, "N mm", _SECTION)
    # in double curvature each half of the column takes half of the displacement
    steps.add("n_h", "hinges", repaired.hinges, "1", "input column.curvature")
    ratio = p_delta_ratio(
        demands.axial_load,
        displacement=np.divide(displacement, repaired.hinges),
        hinge_moment=repaired.plastic_moment,
    )
    steps.add("θ_PΔ", "P Δ/(n_h M_p)", ratio, "1", clause)
    model = hinge_model(jacket)
    steps.add("k_h", "1 where bars, base and repair hold the hinge in its place, else 0",
              np.where(model.holds, 1.0, 0.0)[()], "1",
              f"limit states {', '.join(HINGE_CAUSES)}")  # fmt: skip
    limit = steps.add("limit", "0.25 k_h: P-Delta may be left out of the analysis",
                      np.where(model.holds, P_DELTA_LIMIT, 0.0)[()], "1", clause)  # fmt: skip
    return [
        Result(
            "P-Delta",
            "column",
            ratio,
            limit,
            "1",
            clause,
            steps.lines,
            no_capacity_notes(model),
            rule="p-delta-ratio",
            follows_from=HINGE_CAUSES,
        )
    ]


def _add_displacement(jacket: Jacket, repaired: ColumnCapacity, steps: Steps) -> Real:
    """Write down the displacement demand, or the capacity where none is given [mm]."""
    given = jacket.demands.displacement
    if given is None:
        return steps.add("Δ", "displacement capacity", repaired.displacement, "mm", _HINGE)
    return steps.add("Δ", "displacement demand", given, "mm", "input actions.displacement_demand")
