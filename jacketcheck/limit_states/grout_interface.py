"""Shear between column and grout, through which the added bars' force enters the column."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.analysis.interface import (
    SHEAR_FACTOR,
    Interface,
    height_of_transfer,
    interface,
)
from jacketcheck.analysis.named_losses import pressure_losses
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.interface_shear import (
    aashto_interface_limits,
    aci_friction_coefficient,
    aci_interface_shear_limit,
)
from jacketcheck.results import Result, Steps

__all__ = ["grout_interface"]

_TITLE = "Shear between column and grout"
_AASHTO: Final = f"{AASHTO} 5.7.4"
_ACI: Final = f"{ACI} 22.9.4"
_BAR_OVERSTRENGTH: Final = 1.25
_ACI_SHEAR_FACTOR: Final = 0.75
"""Strength reduction factor for shear (ACI 318-19 21.2.1)."""
_JUDGEMENT = (
    "engineering judgement: half of the added bars pull at 1.25 f_y over half of the column's "
    "perimeter, held by friction under the pressure that the sleeve keeps; cohesion is not "
    "counted. The pressure is there once the face has opened by w and slipped about 1 mm, which "
    "sections with full friction do not see"
)


class _Code(NamedTuple):
    """One code: clause, key of its rule, resistance factor."""

    clause: str
    rule: str
    factor: float


_BY_AASHTO: Final = _Code(_AASHTO, "aashto-interface-shear", SHEAR_FACTOR)
_BY_ACI: Final = _Code(_ACI, "aci-interface-shear", _ACI_SHEAR_FACTOR)


@limit_state(
    "grout-interface",
    title=_TITLE,
    monotonic={"added_bars.height": 0},
    effort="closed-form",
    scatter=Scatter(
        "1.25 times the actual yield force of half of the added bars exceeds "
        "friction under the pressure that the sleeve keeps, hardly any in samples "
        "that slip",
        rules=("aashto-interface-shear",),
        model="interface-friction",
        steady=False,
    ),
)
def grout_interface(jacket: Jacket) -> list[Result]:
    """Vertical shear from the added bars in tension against friction on the column's face.

    By AASHTO and by ACI, one row each. Sections count with AASHTO's.
    """
    added = jacket.added_bars
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    return [_aashto(jacket, added), _aci(jacket, added)]


def _aashto(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, face = Steps(), interface(jacket)
    demand = _add_demand(added, steps)
    area = _add_face(jacket, added, steps, face)
    steps.add("μ", f"{face.surface} face", face.friction, "1", f"{_AASHTO}.4")
    _add_weaker(jacket, steps)
    limits = aashto_interface_limits(face.surface)
    steps.add("K_1", f"{face.surface} face", limits.crushing, "1", f"{_AASHTO}.4")
    steps.add("K_2", f"{face.surface} face", limits.largest_stress, "MPa", f"{_AASHTO}.4")
    steps.add("v_max", "min(K_1 f′c, K_2)", face.largest_stress, "MPa",
              f"{AASHTO} Eq. 5.7.4.3-4, -5")  # fmt: skip
    stress = np.minimum(np.multiply(face.friction, face.pressure), face.largest_stress)
    steps.add("V_n", "min(μ p, v_max) A_cv", stress * area, "N", _AASHTO)
    steps.add("φ", "shear", SHEAR_FACTOR, "1", f"{AASHTO} 5.5.4.2")
    return _row(jacket, demand, steps, stress * area, _BY_AASHTO)


def _aci(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, face = Steps(), interface(jacket)
    demand = _add_demand(added, steps)
    area = _add_face(jacket, added, steps, face)
    friction = steps.add("μ", f"{face.surface} face", aci_friction_coefficient(face.surface), "1",
                         f"{ACI} Table 22.9.4.2")  # fmt: skip
    weaker = _add_weaker(jacket, steps)
    largest = aci_interface_shear_limit(1.0, concrete_strength=weaker, surface=face.surface)
    rough = "480 + 0.08 f′c, 1600" if face.surface == "roughened" else "800"
    steps.add("v_max", f"min(0.2 f′c, {rough}), in psi", largest, "MPa", f"{ACI} Table 22.9.4.4")
    stress = np.minimum(np.multiply(friction, face.pressure), largest)
    steps.add("V_n", "min(μ p, v_max) A_cv", stress * area, "N", _ACI)
    steps.add("φ", "shear", _ACI_SHEAR_FACTOR, "1", f"{ACI} 21.2.1")
    return _row(jacket, demand, steps, stress * area, _BY_ACI)


def _row(jacket: Jacket, demand: Real, steps: Steps, nominal: Real, code: _Code) -> Result:
    face, losses = interface(jacket), pressure_losses(jacket)
    capacity = steps.add("φV_n", "φ V_n", np.multiply(code.factor, nominal), "N", code.clause)
    where = f"{face.surface} face of the column"
    return Result(_TITLE, where, demand, capacity, "N", code.clause, steps.lines, (_JUDGEMENT,),
                  rule=code.rule, resistance_factor=code.factor, follows_from=losses)  # fmt: skip


def _add_demand(added: AddedBarLayer, steps: Steps) -> Real:
    """Write down the force of the added bars in tension and return it [N]."""
    steel = added.layer.steel
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.figure("A_b", added.layer.size, added.layer, "area", "mm2")
    half = steps.add("A_s", "n A_b/2", added.layer.total_area / 2.0, "mm2", "half of the bars")
    steps.figure("f_y", steel.name, steel, "yield_strength", "MPa")
    force = np.multiply(_BAR_OVERSTRENGTH * steel.yield_strength, half)
    return steps.add("V_u", "1.25 f_y A_s", force, "N", f"{ACI} 18.6.3.1 for 1.25; statics")


def _add_weaker(jacket: Jacket, steps: Steps) -> Real:
    """Write down the strength of the weaker of column and grout and return it [MPa]."""
    column, grout = jacket.column.concrete, jacket.grout
    steps.figure("f′c,c", "column, specified", column, "specified", "MPa")
    steps.figure("f′c,g", "grout", grout, "strength", "MPa")
    weaker = np.minimum(column.specified, grout.strength)
    return steps.add("f′c", "min(f′c,c, f′c,g)", weaker, "MPa", "the weaker of column and grout")


def _add_face(jacket: Jacket, added: AddedBarLayer, steps: Steps, face: Interface) -> Real:
    """Write down the face between the sleeve's lower end and the bars' top; its area [mm²]."""
    top, diameter = np.minimum(added.height, jacket.repair_height), jacket.column.diameter
    steps.add("h_a", "height of the added bars", top, "mm", "input added_bars.height")
    steps.add("g", "gap, in which nothing presses", jacket.sleeve.gap, "mm", "input repair.gap")
    height = steps.add("h", "max(h_a − g, 0)", height_of_transfer(jacket, top), "mm", "geometry")
    steps.add("D", "column", diameter, "mm", "input column.diameter")
    steps.add("p", "supplied and kept for the next cycle, on the core", face.pressure, "MPa",
              "limit states clamping, retained-pressure")  # fmt: skip
    strain = steps.add("ε_cl", "hoop strain at which this pressure is there",
                       jacket.judgement.clamping_strain, "1",
                       "input judgement.clamping_strain")  # fmt: skip
    opening = np.multiply(strain, diameter) / 2.0
    steps.add("w", "ε_cl D/2, opening of the face and its cracks by then", opening, "mm",
              "geometry")  # fmt: skip
    area = np.pi * np.multiply(diameter, height) / 2.0
    return steps.add("A_cv", "π D h/2", area, "mm2", "geometry")
