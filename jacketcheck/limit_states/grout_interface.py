"""Shear between column and grout, through which the added bars' force enters the column."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.interface import SHEAR_FACTOR, height_of_transfer, interface
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["grout_interface"]

_TITLE = "Shear between column and grout"
_CLAUSE = f"{ACI} 22.9.4.2; {AASHTO} 5.7.4"
_BAR_OVERSTRENGTH: Final = 1.25
_JUDGEMENT = (
    "engineering judgement: half of the added bars pull at 1.25 f_y over half of the column's "
    "perimeter, held by friction under the pressure that the sleeve keeps; cohesion is not counted"
)


@limit_state(
    "grout-interface", title=_TITLE, monotonic={"added_bars.height": 0}, effort="closed-form"
)
def grout_interface(jacket: Jacket) -> list[Result]:
    """Vertical shear from the added bars in tension against friction on the column's face."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    steps, steel = Steps(), added.layer.steel
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.add("A_b", added.layer.size, added.layer.area, "mm2", added.layer.source)
    half = steps.add("A_s", "n A_b/2", added.layer.total_area / 2.0, "mm2", "half of the bars")
    steps.add("f_y", steel.name, steel.yield_strength, "MPa", steel.source)
    force = np.multiply(_BAR_OVERSTRENGTH * steel.yield_strength, half)
    demand = steps.add("V_u", "1.25 f_y A_s", force, "N", f"{ACI} 18.6.3.1 for 1.25; statics")
    top = np.minimum(added.height, jacket.repair_height)
    capacity = _add_friction(jacket, steps, top)
    where = f"{interface(jacket).surface} face of the column"
    return [Result(_TITLE, where, demand, capacity, "N", _CLAUSE, steps.lines, (_JUDGEMENT,))]


def _add_friction(jacket: Jacket, steps: Steps, top: Real) -> Real:
    """Write down what friction passes between the sleeve's lower end and a height."""
    face, diameter = interface(jacket), jacket.column.diameter
    steps.add("h_a", "height of the added bars", top, "mm", "input added_bars.height")
    steps.add("g", "gap, in which nothing presses", jacket.sleeve.gap, "mm", "input repair.gap")
    height = steps.add("h", "max(h_a − g, 0)", height_of_transfer(jacket, top), "mm", "geometry")
    steps.add("D", "column", diameter, "mm", "input column.diameter")
    area = steps.add(
        "A_cv", "π D h/2", np.pi * np.multiply(diameter, height) / 2.0, "mm2", "geometry"
    )
    steps.add("p", "supplied and kept for the next cycle, on the core", face.pressure, "MPa",
              "limit states clamping, retained-pressure")  # fmt: skip
    steps.add("μ", f"{face.surface} face", face.friction, "1", f"{ACI} Table 22.9.4.2")
    steps.add("v_max", "min(K_1 f′c, K_2)", face.largest_stress, "MPa",
              f"{AASHTO} Eq. 5.7.4.3-4, -5")  # fmt: skip
    stress = np.minimum(np.multiply(face.friction, face.pressure), face.largest_stress)
    steps.add("V_n", "min(μ p, v_max) A_cv", stress * area, "N", _CLAUSE)
    steps.add("φ", "shear", SHEAR_FACTOR, "1", f"{AASHTO} 5.5.4.2")
    return steps.add("φV_n", "φ V_n", np.multiply(face.resistance, height), "N", _CLAUSE)
