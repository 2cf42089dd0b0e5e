"""Elastic buckling of the column under its axial load."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states.editions import ACI
from jacketcheck.mechanics.column_stability import (
    CRITICAL_LOAD_FACTOR,
    aci_effective_stiffness,
    critical_load,
)
from jacketcheck.results import Result, Steps

__all__ = ["column_stability"]

_TITLE: Final = "Axial load against the critical load"
_SWAY: Final = {"single": (2.0, "cantilever"), "double": (1.0, "fixed at both ends, free to sway")}


@limit_state(
    "column-stability",
    title=_TITLE,
    monotonic={"demands.axial_load": 1, "column.height": 1},
    effort="closed-form",
    scatter=Scatter(
        "axial load exceeds the critical load with the actual modulus of the concrete",
        rules=("critical-load",),
    ),
)
def column_stability(jacket: Jacket) -> list[Result]:
    """The repair is left out: it stiffens the foot, where a cantilever is held anyhow."""
    steps, column = Steps(), jacket.column
    factor, fixity = _SWAY[column.curvature]
    steps.add("E_c", "concrete, expected strength", column.concrete.elastic_modulus, "MPa",
              "Mander, Priestley and Park 1988")  # fmt: skip
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    inertia = np.pi * np.power(column.diameter, 4.0) / 64.0
    steps.add("I_g", "π D⁴/64", inertia, "mm4", "geometry")
    stiffness = aci_effective_stiffness(column.concrete.elastic_modulus, diameter=column.diameter)
    steps.add("k", fixity, factor, "1", "input column.curvature")
    steps.add("L", "height", column.height, "mm", "input column.height")
    critical = steps.add(
        "P_c", "π² 0.4 E_c I_g/(k L)²",
        critical_load(stiffness, effective_length=np.multiply(factor, column.height)),
        "N", f"{ACI} 6.6.4.4.2 and 6.6.4.4.4(a), no sustained sway",
    )  # fmt: skip
    steps.add("φ_K", "scatter of the stiffness", CRITICAL_LOAD_FACTOR, "1", f"{ACI} 6.6.4.5.2")
    capacity = steps.add("φ_K P_c", "φ_K P_c", np.multiply(CRITICAL_LOAD_FACTOR, critical), "N",
                         f"{ACI} 6.6.4.5.2")  # fmt: skip
    demand = steps.add("P", "with the earthquake", jacket.demands.axial_load, "N",
                       "input actions.axial_load")  # fmt: skip
    return [Result(_TITLE, "column", demand, capacity, "N", f"{ACI} 6.6.4.5.2", steps.lines,
                   rule="critical-load", resistance_factor=CRITICAL_LOAD_FACTOR)]  # fmt: skip
