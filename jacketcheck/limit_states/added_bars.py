"""Added bars inside the repair: their development, and their laps with the column's bars."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.added_bars import add_struts_length, lap_length
from jacketcheck.analysis.lap import lap_hoop_force, tension_share
from jacketcheck.analysis.named_losses import pressure_losses
from jacketcheck.analysis.repair_anchorage import repair_anchorage
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states._added_bar_steps import add_added_bar
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI, AISC, FIB
from jacketcheck.mechanics.noncontact_lap import largest_lap_offset
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR
from jacketcheck.results import Kind, Result, Steps

__all__ = ["added_bar_development", "added_bar_lap"]

_NONE: Final = "no added bars"
_OFFSET: Final = "beyond this offset the force is followed by struts, as the hoop force above does"
_IN_GROUT: Final = (
    "engineering judgement: grout bonds like concrete of its strength; as far as the sleeve keeps "
    "the pressure that the bars need, they pull out of it and do not split it; between no pressure "
    "and that one, bond is in proportion"
)


@limit_state(
    "added-bar-development",
    title="Development of the added bars in the repair",
    monotonic={"added_bars.height": -1},
    effort="bond",
    scatter=Scatter(
        "length that develops the actual yield strength exceeds the length beside "
        "the column bars; in samples that slip, splitting is not held",
        rules=("grout-development",),
        model="anchorage",
        steady=False,
    ),
)
def added_bar_development(jacket: Jacket) -> list[Result]:
    """Length that develops the added bars' yield strength from their top downwards."""
    title, added = "Development of the added bars in the repair", jacket.added_bars
    if added is None:
        return [not_applicable(title, _NONE)]
    steps, found = Steps(), repair_anchorage(jacket)
    clause = f"{FIB} 6.1.1; McLean and Smith 1997 for the offset"
    add_added_bar(added, steps)
    steps.figure("f_ye", added.layer.steel.name, added.layer.steel, "expected_yield", "MPa")
    steps.add("p_k", "kept by the sleeve, at the circle of the bars", found.kept_pressure, "MPa",
              "limit state retained-pressure")  # fmt: skip
    steps.add("p_n", "needed there, as limit state clamping, for the added bars in grout",
              found.needed_pressure, "MPa", "limit state clamping")  # fmt: skip
    steps.add("r", "min(1, p_k/p_n)", found.held_share, "1", "engineering judgement")
    steps.add("τ_max", "held by r, splitting by 1 − r, grout, good bond, no pressure counted",
              found.law.peak_stress, "MPa", FIB)  # fmt: skip
    demand = steps.add("l_need", "shortest length that develops f_ye", found.needed_length, "mm",
                       "dσ/dx = 4 τ(s)/d_b, ds/dx = ε(σ)")  # fmt: skip
    capacity = add_struts_length(jacket, steps)
    causes = pressure_losses(jacket) if np.any(np.less(found.held_share, 1.0)) else ()
    return [Result(title, "grout", demand, capacity, "mm", clause, steps.lines, (_IN_GROUT,),
                   rule="grout-development", follows_from=causes)]  # fmt: skip


@limit_state(
    "added-bar-lap",
    title="Laps of added bars and column bars",
    monotonic={"added_bars.height": -1},
    effort="closed-form",
    scatter=Scatter(
        "hoop force of the laps at the actual tensile strength exceeds yield of the sleeve",
        rules=("lap-hoop-force",),
    ),
)
def added_bar_lap(jacket: Jacket) -> list[Result]:
    """Hoop force of the noncontact laps against yield of the sleeve, and their offset."""
    title, added = "Laps of added bars and column bars", jacket.added_bars
    if added is None:
        return [not_applicable(title, _NONE)]
    return [_lap_force(jacket, added, title), _lap_offset(jacket, added, title)]


def _lap_force(jacket: Jacket, added: AddedBarLayer, title: str) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"McLean and Smith 1997; {AASHTO} Eq. 5.10.8.4.2a-1"
    add_added_bar(added, steps)
    steps.figure("f_ue", added.layer.steel.name, added.layer.steel, "expected_tensile", "MPa")
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.add("k", "share of their yield force with which the bars pull under the base demand",
              tension_share(jacket), "1", "section analysis of the repaired base")  # fmt: skip
    add_struts_length(jacket, steps)
    demand = steps.add("N_lap", "k n A_b f_ue/(2 π l_s)", lap_hoop_force(jacket), "N/mm", clause)
    steps.figure("F_y", sleeve.steel.name, sleeve.steel, "yield_strength", "MPa")
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    factor = steps.add("φ", "yield in tension", AISC_TENSION_YIELD_FACTOR, "1", f"{AISC} J4.1(a)")
    strength = np.multiply(sleeve.steel.yield_strength, sleeve.thickness) * factor
    capacity = steps.add("φF_y t", "φ F_y t", strength, "N/mm", f"{AISC} J4.1(a)")
    where = "hoop force alone, beside yield of the sleeve"
    return Result(title, where, demand, capacity, "N/mm", clause, steps.lines,
                  rule="lap-hoop-force", resistance_factor=factor)  # fmt: skip


def _lap_offset(jacket: Jacket, added: AddedBarLayer, title: str) -> Result:
    steps, clause = Steps(), f"{ACI} 25.5.1.3"
    add_struts_length(jacket, steps)
    allowed = largest_lap_offset(added.height)
    steps.add("a_max", "min(h_a/5, 6 in)", allowed, "mm", f"{clause}, without struts and ties")
    return Result(title, "offset of the bars", lap_length(jacket).offset, allowed, "mm", clause,
                  steps.lines, (_OFFSET,), kind=Kind.REPORTED)  # fmt: skip
