"""Shear between column and grout, through which the added bars' force enters the column."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.dilation import bond_pressure
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI
from jacketcheck.mechanics.interface_shear import (
    aashto_interface_shear_limit,
    aci_friction_coefficient,
)
from jacketcheck.results import Result, Steps

__all__ = ["grout_interface"]

_TITLE = "Shear between column and grout"
_FACTOR = 0.90
_BAR_OVERSTRENGTH = 1.25
_JUDGEMENT = (
    "engineering judgement: half of the added bars pull at 1.25 f_y over half of the column's "
    "perimeter, held by friction under the pressure that the sleeve keeps; cohesion is not counted"
)


@limit_state(
    "grout-interface", title=_TITLE, monotonic={"added_bars.height": 0}, effort="closed-form"
)
def grout_interface(jacket: Jacket) -> list[Result]:
    """Vertical shear from the added bars against friction on the column's face."""
    added, column = jacket.added_bars, jacket.column
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    steps, surface = Steps(), "roughened" if jacket.column_face == "roughened" else "smooth"
    clause = f"{ACI} 22.9.4.2; {AASHTO} 5.7.4"
    steel = added.layer.steel
    steps.add(
        "A_s", "half of the added bars", added.layer.total_area / 2.0, "mm2", added.layer.source
    )
    steps.add("f_y", steel.name, steel.yield_strength, "MPa", steel.source)
    demand = steps.add(
        "V_u",
        "1.25 f_y A_s",
        _BAR_OVERSTRENGTH * np.multiply(steel.yield_strength, added.layer.total_area) / 2.0,
        "N",
        f"{ACI} 18.6.3.1 for 1.25; statics",
    )
    height = np.minimum(added.height, jacket.repair_height)
    area = steps.add("A_cv", "π D/2 × height of added bars",
                     np.pi * np.asarray(column.diameter) / 2.0 * height, "mm2", "geometry")  # fmt: skip
    pressure = steps.add("p", "supplied and kept for the next cycle, on the core",
                         bond_pressure(jacket), "MPa", "limit states clamping, retained-pressure")  # fmt: skip
    friction = steps.add("μ", f"{surface} face", aci_friction_coefficient(surface), "1",
                         f"{ACI} Table 22.9.4.2")  # fmt: skip
    limit = aashto_interface_shear_limit(
        area,
        concrete_strength=np.minimum(column.concrete.specified, jacket.grout.strength),
        surface=surface,
    )
    steps.add("V_max", "min(K_1 f′c, K_2) A_cv", limit, "N", f"{AASHTO} Eq. 5.7.4.3-4, -5")
    nominal = steps.add("V_n", "min(μ p A_cv, V_max)", np.minimum(friction * pressure * area, limit),
                        "N", clause)  # fmt: skip
    steps.add("φ", "shear", _FACTOR, "1", f"{AASHTO} 5.5.4.2")
    capacity = steps.add("φV_n", "φ V_n", _FACTOR * nominal, "N", clause)
    return [
        Result(_TITLE, f"{surface} face of the column", demand, capacity, "N", clause, steps.lines,
               (_JUDGEMENT,))
    ]  # fmt: skip
