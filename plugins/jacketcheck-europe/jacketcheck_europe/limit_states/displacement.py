"""Displacement capacity with the plastic hinge of EN 1998-2 Annex E, and buckling of its bars."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import (
    HINGE_CAUSES,
    ColumnCapacity,
    Jacket,
    Kind,
    Real,
    Result,
    Steps,
    add_counted_displacement,
    buckling_row,
    capacity_of_original,
    capacity_of_repaired,
    hinge_model,
    no_capacity_notes,
    not_evaluated,
)
from jacketcheck_europe.editions import EN_1998_2
from jacketcheck_europe.limit_states._rows import resistance_row
from jacketcheck_europe.mechanics import hinges
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["displacement_capacity", "hinge_hoops"]

_TITLE: Final = "Displacement capacity"
_CLAUSE: Final = f"{EN_1998_2} E.3.2, 4.2.4.4(2)"
_SHORTER: Final = (
    "the repair shortens the span over which the hinge can rotate: the displacement capacity is "
    "smaller than the original's"
)
_HINGE: Final = (
    "engineering judgement: the hinge length of EN 1998-2 is for hinges at a foundation or deck "
    "and is taken for the hinge above the repair, the repair itself as rigid"
)
_BUCKLES: Final = (
    "bars above the repair buckle when the demand reverses, before the section is exhausted: see "
    "the reported row"
)
_HOOPS: Final = "Hoops in the relocated hinge"
_NEW_PIERS: Final = (
    "a rule for new piers: the hinge moves to where this column's own hoops must hold the bars; "
    "wider hoops ask for a longer repair or for confinement above it"
)
_LEAST_RATIO: Final = (
    "the strength ratio of the hoops' steel is not counted: the rule's smallest spacing, δ = 5"
)
_NO_DEMAND: Final = "no displacement demand was given (actions.displacement_demand): no verdict"


def displacement_capacity(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Displacement capacity against the demand, and beside the original's."""
    demand = jacket.demands.displacement
    rows = [
        not_evaluated(_TITLE, _NO_DEMAND, location="against the demand", clause=_CLAUSE)
        if demand is None
        else _against_demand(jacket, demand, factors)
    ]
    rows.append(buckling_row(jacket))
    steps = Steps()
    original = _add_capacity(
        jacket,
        capacity_of_original(jacket),
        repair_height=0.0,
        mark="orig",
        factors=factors,
        steps=steps,
    )
    repaired = _add_counted(jacket, factors, steps)
    notes = (_SHORTER,) if np.any(np.less(repaired, original)) else ()
    notes = (*notes, *no_capacity_notes(hinge_model(jacket)))
    rows.append(
        resistance_row(
            _TITLE,
            "beside the original column's",
            steps,
            demand=original,
            capacity=repaired,
            unit="mm",
            clause=_CLAUSE,
            factors=factors,
            notes=(_HINGE, *notes),
            kind=Kind.REPORTED,
        )
    )
    return rows


def _against_demand(jacket: Jacket, demand: Real, factors: PartialFactors) -> Result:
    steps = Steps()
    buckles = np.any(np.less(capacity_of_repaired(jacket).buckling_displacement, demand))
    steps.add("d_Ed", "displacement demand", demand, "mm", "input actions.displacement_demand")
    return resistance_row(
        _TITLE,
        "against the demand",
        steps,
        demand=demand,
        capacity=_add_counted(jacket, factors, steps),
        unit="mm",
        clause=_CLAUSE,
        factors=factors,
        follows_from=HINGE_CAUSES,
        notes=(_HINGE, *((_BUCKLES,) if buckles else ()), *no_capacity_notes(hinge_model(jacket))),
    )


def hinge_hoops(jacket: Jacket, factors: PartialFactors) -> list[Result]:
    """Spacing of the column's hoops against the largest that restrains the bars of a hinge."""
    del factors  # the rule has none
    layer, ties = jacket.column.layer, jacket.column.ties
    steps, clause = Steps(), f"{EN_1998_2} 6.2.2(2), Eq. 6.9"
    steps.figure("d_bL", layer.size, layer, "diameter", "mm")
    demand = steps.add("s_L", f"spacing of {ties.size}", ties.spacing, "mm",
                       "input column.hoops.spacing")  # fmt: skip
    capacity = steps.add("s_L,max", "5 d_bL", hinges.largest_hoop_spacing(layer.diameter), "mm",
                         clause)  # fmt: skip
    return [Result(_HOOPS, "above the repair", demand, capacity, "mm", clause, steps.lines,
                   (_NEW_PIERS, _LEAST_RATIO))]  # fmt: skip


def _add_counted(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    return add_counted_displacement(jacket, steps, _add_repaired(jacket, factors, steps), "d_u,rep")


def _add_repaired(jacket: Jacket, factors: PartialFactors, steps: Steps) -> Real:
    return _add_capacity(
        jacket,
        capacity_of_repaired(jacket),
        repair_height=jacket.repair_height,
        mark="rep",
        factors=factors,
        steps=steps,
    )


def _add_capacity(
    jacket: Jacket,
    capacity: ColumnCapacity,
    *,
    repair_height: Real,
    mark: str,
    factors: PartialFactors,
    steps: Steps,
) -> Real:
    """Write down a displacement capacity and return it [mm]."""
    layer = jacket.column.layer
    number = 2.0 if jacket.column.curvature == "double" else 1.0
    span = steps.add(f"L_{mark}", "hinge to contraflexure",
                     np.subtract(jacket.column.height, repair_height) / number, "mm",
                     "statics")  # fmt: skip
    steps.figure("d_bL", layer.size, layer, "diameter", "mm")
    steps.figure("f_yk", layer.steel.name, layer.steel, "yield_strength", "MPa")
    length = steps.add(
        f"L_p,{mark}",
        f"0.10 L_{mark} + 0.015 f_yk d_bL",
        hinges.plastic_hinge_length(
            span, yield_strength=layer.steel.yield_strength, bar_diameter=layer.diameter
        ),
        "mm",
        f"{EN_1998_2} Eq. E.19",
    )
    steps.add(
        f"Φ_y,{mark}", "idealised yield", capacity.yield_curvature, "1/mm", "section analysis"
    )
    steps.add(f"Φ_u,{mark}", "ultimate", capacity.ultimate_curvature, "1/mm", "section analysis")
    depth = np.add(jacket.column.radius, np.multiply(2.0 / np.pi, layer.circle_radius))
    steps.add("D", "column", jacket.column.diameter, "mm", "input column.diameter")
    steps.add("r_s", "circle of the bars", layer.circle_radius, "mm", "geometry")
    steps.add("d", "D/2 + 2 r_s/π", depth, "mm", f"{EN_1998_2} 5.6.3.3(2)")
    steps.add(f"λ_{mark}", f"min(1, √(L_{mark}/(3 d)))",
              np.minimum(np.sqrt(np.divide(span, 3.0 * depth)), 1.0), "1",
              f"{EN_1998_2} Eq. E.20")  # fmt: skip
    steps.add("γ_R,p", "rotation", factors.hinge_rotation, "1", f"{EN_1998_2} 4.2.4.4(2)")
    rotation = steps.add(
        f"θ_p,{mark}",
        f"(Φ_u,{mark} − Φ_y,{mark}) L_p,{mark} (1 − L_p,{mark}/(2 L_{mark})) λ_{mark}/γ_R,p",
        hinges.design_plastic_rotation(
            capacity.ultimate_curvature,
            yield_curvature=capacity.yield_curvature,
            hinge_length=length,
            span=span,
            effective_depth=depth,
            partial_factor=factors.hinge_rotation,
        ),
        "1",
        _CLAUSE,
    )
    steps.add("n_h", "hinges", number, "1", "input column.curvature")
    steps.add(f"d_y,{mark}", "at yield", capacity.yield_displacement, "mm", "plastic hinge method")
    displacement = np.add(capacity.yield_displacement, number * rotation * span)
    return steps.add(f"d_u,{mark}", f"d_y,{mark} + n_h θ_p,{mark} L_{mark}", displacement, "mm",
                     _CLAUSE)  # fmt: skip
