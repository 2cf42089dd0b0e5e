"""Added bars: anchorage in the footing, development in the repair, and their laps."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.added_bars import footing_anchorage, lap_length, repair_anchorage
from jacketcheck.analysis.lap import lap_hoop_force, tension_share
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI, FIB, GUIDE_SPEC
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    SEISMIC_ANCHOR_FACTOR,
)
from jacketcheck.mechanics.noncontact_lap import largest_lap_offset
from jacketcheck.results import Kind, Result, Steps

__all__ = ["added_bar_anchorage", "added_bar_development", "added_bar_lap"]

_NONE = "no added bars"
_GROUT = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)
_PRECLUDED = (
    "engineering judgement: struts and ties preclude breakout (added_bars.breakout_precluded); "
    "show it when the footing is checked"
)
_BREAKOUT = (
    "a cone of concrete breaks out of the footing before the bars yield; show by struts and ties "
    "that it cannot (added_bars.breakout_precluded)"
)


@limit_state(
    "added-bar-anchorage",
    title="Anchorage of the added bars in the footing",
    monotonic={"added_bars.embedment": -1},
    effort="closed-form",
)
def added_bar_anchorage(jacket: Jacket) -> list[Result]:
    """Embedment in grout or adhesive, and breakout of the ring of bars."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable("Anchorage of the added bars in the footing", _NONE)]
    held = _grouted(jacket, added) if added.bond_strength is None else _adhesive(jacket, added)
    return [held, _breakout(jacket, added)]


def _grouted(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    grouted = found.grouted
    assert grouted is not None  # noqa: S101 - bars without an adhesive are grouted
    clause = f"{ACI} 25.4.2; {GUIDE_SPEC} 8.8.4"
    _add_bar(added, steps)
    steps.add("f_s", "expected yield", found.target_stress, "MPa", added.layer.steel.source)
    steps.add("c_b", "half of the bar spacing", added.layer.spacing / 2.0, "mm", "geometry")
    steps.add("l_d", "3/(40) f_s/√f′c ψ_g/((c_b + K_tr)/d_b) d_b, in and psi",
              grouted.development_length, "mm", f"{ACI} 25.4.2.4")  # fmt: skip
    steps.add("l_ac", "0.79 d_b f_s/√f′c, in and ksi", grouted.guide_specification_length, "mm",
              f"{GUIDE_SPEC} 8.8.4")  # fmt: skip
    steps.add("l_test", "shortest that yielded bars in tests of grouted ducts",
              grouted.least_tested_length, "mm", "Steuck, Eberhard and Stanton 2009")  # fmt: skip
    demand = steps.add("l_need", "the longer", grouted.required_length, "mm", clause)
    return Result("Anchorage of the added bars in the footing", "embedment in grout", demand,
                  added.embedment, "mm", clause, steps.lines, (_GROUT,))  # fmt: skip


def _adhesive(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.5"
    _add_bar(added, steps)
    steps.add("τ_cr", "characteristic bond stress, cracked concrete", added.bond_strength or 0.0,
              "MPa", "input added_bars.bond_strength")  # fmt: skip
    steps.add("N_ba", "τ_cr π d_b h_ef", found.adhesive.single_bond_strength, "N", clause)
    steps.add("A_Na/(n A_Na0)", "ring of bars", found.adhesive.bond_share, "1", clause)
    nominal = steps.add("N_a", "share × N_ba", found.adhesive.bond_strength, "N", clause)
    factor = steps.add("φ", "0.65 × 0.75 with earthquake",
                       ANCHOR_STRENGTH_REDUCTION * SEISMIC_ANCHOR_FACTOR, "1",
                       f"{ACI} 17.5.3, 17.10.5.4")  # fmt: skip
    capacity = steps.add("φN_a", "φ N_a", np.multiply(factor, nominal), "N", clause)
    demand = steps.add("N_u", "f_ye A_b", np.multiply(found.target_stress, added.layer.area), "N",
                       added.layer.steel.source)  # fmt: skip
    notes = []
    if np.any(found.adhesive.outside_method):
        notes.append("embedment outside 4 to 20 bar diameters, the range of the anchor method")
    return Result("Anchorage of the added bars in the footing", "bond of the adhesive", demand,
                  capacity, "N", clause, steps.lines, tuple(notes))  # fmt: skip


def _breakout(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.2"
    _add_bar(added, steps)
    steps.add("N_b", "17 λ √f′c h_ef^1.5, lb and in", found.adhesive.single_breakout_strength, "N",
              clause)  # fmt: skip
    steps.add("A_Nc/(n A_Nc0)", "ring of bars", found.adhesive.breakout_share, "1", clause)
    steps.add("N_cb", "share × N_b", found.adhesive.breakout_strength, "N", clause)
    capacity = steps.add("φf", "0.65 × 0.75 N_cb/A_b", found.breakout_stress, "MPa", clause)
    precluded = added.breakout_precluded
    return Result(
        "Anchorage of the added bars in the footing",
        "breakout of the ring of bars",
        found.target_stress,
        capacity,
        "MPa",
        clause,
        steps.lines,
        (_PRECLUDED if precluded else _BREAKOUT,),
        kind=Kind.REPORTED if precluded else Kind.LIMIT,
    )


@limit_state(
    "added-bar-development",
    title="Development of the added bars in the repair",
    monotonic={"added_bars.height": -1, "grout.strength": -1},
    effort="closed-form",
)
def added_bar_development(jacket: Jacket) -> list[Result]:
    """Length that develops the added bars' yield strength from their top downwards."""
    title, added = "Development of the added bars in the repair", jacket.added_bars
    if added is None:
        return [not_applicable(title, _NONE)]
    steps, found = Steps(), repair_anchorage(jacket)
    clause = f"{FIB} 6.1.1; McLean and Smith 1997 for the offset"
    _add_bar(added, steps)
    steps.add("f_ye", added.layer.steel.name, added.layer.steel.expected_yield, "MPa",
              added.layer.steel.source)  # fmt: skip
    steps.add("τ_max", "grout, good bond, no pressure counted", found.law.peak_stress, "MPa", FIB)
    demand = steps.add("l_need", "shortest length that develops f_ye", found.needed_length, "mm",
                       "dσ/dx = 4 τ(s)/d_b, ds/dx = ε(σ)")  # fmt: skip
    steps.add("a", "offset to the column bar beside it", found.offset, "mm", "geometry")
    capacity = steps.add("l", "height above footing − a", found.available_length, "mm", clause)
    return [Result(title, "grout", demand, capacity, "mm", clause, steps.lines)]


@limit_state(
    "added-bar-lap",
    title="Laps of added bars and column bars",
    monotonic={"added_bars.height": -1},
    effort="closed-form",
)
def added_bar_lap(jacket: Jacket) -> list[Result]:
    """Hoop force of the noncontact laps against yield of the sleeve, and their offset."""
    title, added = "Laps of added bars and column bars", jacket.added_bars
    if added is None:
        return [not_applicable(title, _NONE)]
    steps, found, sleeve = Steps(), lap_length(jacket), jacket.sleeve
    clause = f"McLean and Smith 1997; {AASHTO} Eq. 5.10.8.4.2a-1"
    _add_bar(added, steps)
    steps.add("f_ue", added.layer.steel.name, added.layer.steel.expected_tensile, "MPa",
              added.layer.steel.source)  # fmt: skip
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.add("k", "share in tension under the base demand", tension_share(jacket), "1",
              "section analysis of the repaired base")  # fmt: skip
    steps.add("l_s", "height above footing − offset", found.available, "mm", "geometry")
    demand = steps.add("N_lap", "k n A_b f_ue/(2π l_s)", lap_hoop_force(jacket), "N/mm", clause)
    capacity = steps.add("φF_y t", "0.90 F_y t", 0.9 * np.multiply(sleeve.steel.yield_strength,
                                                                  sleeve.thickness),
                         "N/mm", "AISC 360-22 J4.1(a)")  # fmt: skip
    offset = Steps()
    offset.add("l", "height above footing", added.height, "mm", "input added_bars.height")
    allowed = offset.add("a_max", "min(l/5, 6 in) without struts and ties",
                         largest_lap_offset(added.height), "mm", f"{ACI} 25.5.1.3")  # fmt: skip
    offset.add("a", "offset to the column bar beside it", found.offset, "mm", "geometry")
    return [
        Result(title, "hoop force alone, beside yield of the sleeve", demand, capacity, "N/mm",
               clause, steps.lines),
        Result(title, "offset of the bars", found.offset, allowed, "mm", f"{ACI} 25.5.1.3",
               offset.lines,
               ("beyond this offset the force is followed by struts, as the hoop force above does",),
               kind=Kind.REPORTED),
    ]  # fmt: skip


def _add_bar(added: AddedBarLayer, steps: Steps) -> None:
    steps.add("d_b", added.layer.size, added.layer.diameter, "mm", added.layer.source)
    steps.add("A_b", added.layer.size, added.layer.area, "mm2", added.layer.source)
