"""Added bars: anchorage in the footing, development in the repair, and their laps."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.added_bars import footing_anchorage, lap_length
from jacketcheck.analysis.lap import lap_hoop_force, tension_share
from jacketcheck.analysis.repair_anchorage import repair_anchorage
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.jacket_parts import AddedBarLayer
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import AASHTO, ACI, AISC, FIB, GUIDE_SPEC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.adhesive_anchors import (
    ANCHOR_STRENGTH_REDUCTION,
    SEISMIC_ANCHOR_FACTOR,
)
from jacketcheck.mechanics.noncontact_lap import largest_lap_offset
from jacketcheck.mechanics.plate_strength import AISC_TENSION_YIELD_FACTOR
from jacketcheck.results import Kind, Result, Steps

__all__ = ["added_bar_anchorage", "added_bar_development", "added_bar_lap"]

_ANCHORAGE: Final = "Anchorage of the added bars in the footing"
_NONE: Final = "no added bars"
_EDGES: Final = (
    "engineering judgement: the edges of the footing are taken as far away, and no bars of the "
    "footing as crossing the cone"
)
_OFFSET: Final = "beyond this offset the force is followed by struts, as the hoop force above does"
_IN_GROUT: Final = (
    "engineering judgement: grout bonds like concrete of its strength; while the seams hold, the "
    "bars pull out of it and do not split it"
)
_GROUT: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)
_PRECLUDED: Final = (
    "engineering judgement: struts and ties preclude breakout (added_bars.breakout_precluded); "
    "show it when the footing is checked"
)
_BREAKOUT: Final = (
    "a cone of concrete breaks out of the footing before the bars yield; show by struts and ties "
    "that it cannot (added_bars.breakout_precluded)"
)


@limit_state(
    "added-bar-anchorage",
    title=_ANCHORAGE,
    monotonic={"added_bars.embedment": -1},
    effort="closed-form",
)
def added_bar_anchorage(jacket: Jacket) -> list[Result]:
    """Embedment in grout or adhesive, and breakout of the ring of bars."""
    added = jacket.added_bars
    if added is None:
        return [not_applicable(_ANCHORAGE, _NONE)]
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
    steps.add("l_d", "3/40 f_s/√f′c ψ_g/min(c_b/d_b, 2.5) d_b, in and psi",
              grouted.development_length, "mm", f"{ACI} 25.4.2.4")  # fmt: skip
    steps.add("l_ac", "0.79 d_b f_s/√f′c, in and ksi", grouted.guide_specification_length, "mm",
              f"{GUIDE_SPEC} 8.8.4")  # fmt: skip
    steps.add("l_test", "shortest that yielded bars in tests of grouted ducts",
              grouted.least_tested_length, "mm", "Steuck, Eberhard and Stanton 2009")  # fmt: skip
    demand = steps.add("l_need", "max(l_d, l_ac, l_test)", grouted.required_length, "mm", clause)
    steps.add("l", "embedment", added.embedment, "mm", "input added_bars.embedment")
    return Result(_ANCHORAGE, "embedment in grout", demand, added.embedment, "mm", clause,
                  steps.lines, (_GROUT,))  # fmt: skip


def _adhesive(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.5"
    _add_bar(added, steps)
    steps.add("τ_cr", "characteristic bond stress, cracked concrete", added.bond_strength or 0.0,
              "MPa", "input added_bars.bond_strength")  # fmt: skip
    steps.add("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment")
    steps.add("N_ba", "τ_cr π d_b h_ef", found.adhesive.single_bond_strength, "N", clause)
    steps.add("ψ_A", "A_Na/(n A_Na0), ring of bars", found.adhesive.bond_share, "1", clause)
    nominal = steps.add("N_a", "ψ_A N_ba", found.adhesive.bond_strength, "N", clause)
    factor = _add_anchor_factor(steps)
    capacity = steps.add("φN_a", "φ N_a", np.multiply(factor, nominal), "N", clause)
    steps.add("f_ye", added.layer.steel.name, found.target_stress, "MPa", added.layer.steel.source)
    demand = steps.add("N_u", "f_ye A_b", np.multiply(found.target_stress, added.layer.area), "N",
                       "statics")  # fmt: skip
    notes = [_EDGES]
    if np.any(found.adhesive.outside_method):
        notes.append("embedment outside 4 to 20 bar diameters, the range of the anchor method")
    return Result(_ANCHORAGE, "bond of the adhesive", demand, capacity, "N", clause, steps.lines,
                  tuple(notes))  # fmt: skip


def _add_anchor_factor(steps: Steps) -> float:
    """Write down the resistance factor of anchors and return it."""
    steps.add("φ_0", "post-installed anchor, sensitive to installation",
              ANCHOR_STRENGTH_REDUCTION, "1", f"{ACI} 17.5.3")  # fmt: skip
    steps.add("φ_E", "earthquake", SEISMIC_ANCHOR_FACTOR, "1", f"{ACI} 17.10.5.4")
    factor = ANCHOR_STRENGTH_REDUCTION * SEISMIC_ANCHOR_FACTOR
    return steps.add("φ", "φ_0 φ_E", factor, "1", f"{ACI} 17.10.5.4")


def _breakout(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, found = Steps(), footing_anchorage(jacket)
    clause = f"{ACI} 17.6.2"
    _add_bar(added, steps)
    steps.add("f_ye", added.layer.steel.name, found.target_stress, "MPa", added.layer.steel.source)
    steps.add("h_ef", "embedment", added.embedment, "mm", "input added_bars.embedment")
    steps.add("N_b", "17 λ √f′c h_ef^1.5, lb and in", found.adhesive.single_breakout_strength, "N",
              clause)  # fmt: skip
    steps.add("ψ_A", "A_Nc/(n A_Nc0), ring of bars", found.adhesive.breakout_share, "1", clause)
    steps.add("N_cb", "ψ_A N_b", found.adhesive.breakout_strength, "N", clause)
    _add_anchor_factor(steps)
    capacity = steps.add("φf", "φ N_cb/A_b", found.breakout_stress, "MPa", clause)
    precluded = added.breakout_precluded
    return Result(
        _ANCHORAGE,
        "breakout of the ring of bars",
        found.target_stress,
        capacity,
        "MPa",
        clause,
        steps.lines,
        (_EDGES, _PRECLUDED if precluded else _BREAKOUT),
        kind=Kind.REPORTED if precluded else Kind.LIMIT,
    )


@limit_state(
    "added-bar-development",
    title="Development of the added bars in the repair",
    monotonic={"added_bars.height": -1},
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
    held = "may split" if np.any(found.splits) else "held"
    steps.add("splitting", "by the sleeve", held, "", "limit state seam-slip")
    steps.add("τ_max", "grout, good bond, no pressure counted", found.law.peak_stress, "MPa", FIB)
    demand = steps.add("l_need", "shortest length that develops f_ye", found.needed_length, "mm",
                       "dσ/dx = 4 τ(s)/d_b, ds/dx = ε(σ)")  # fmt: skip
    capacity = _add_lap_length(jacket, added, steps)
    return [Result(title, "grout", demand, capacity, "mm", clause, steps.lines, (_IN_GROUT,))]


def _add_lap_length(jacket: Jacket, added: AddedBarLayer, steps: Steps) -> Real:
    """Write down the length of the added bars that counts in the repair and return it [mm]."""
    lap = lap_length(jacket)
    steps.add("h_a", "height of the added bars", added.height, "mm", "input added_bars.height")
    steps.add("g", "gap, in which nothing holds the struts", jacket.sleeve.gap, "mm",
              "input repair.gap")  # fmt: skip
    steps.add("a", "offset to the column bar beside it", lap.offset, "mm", "geometry")
    return steps.add("l_s", "max(max(h_a − g, 0) − a, 0)", lap.available, "mm", "struts at 45°")


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
    return [_lap_force(jacket, added, title), _lap_offset(jacket, added, title)]


def _lap_force(jacket: Jacket, added: AddedBarLayer, title: str) -> Result:
    steps, sleeve = Steps(), jacket.sleeve
    clause = f"McLean and Smith 1997; {AASHTO} Eq. 5.10.8.4.2a-1"
    _add_bar(added, steps)
    steps.add("f_ue", added.layer.steel.name, added.layer.steel.expected_tensile, "MPa",
              added.layer.steel.source)  # fmt: skip
    steps.add("n", "added bars", added.layer.count, "1", "input added_bars.count")
    steps.add("k", "share in tension under the base demand", tension_share(jacket), "1",
              "section analysis of the repaired base")  # fmt: skip
    _add_lap_length(jacket, added, steps)
    demand = steps.add("N_lap", "k n A_b f_ue/(2 π l_s)", lap_hoop_force(jacket), "N/mm", clause)
    steps.add("F_y", sleeve.steel.name, sleeve.steel.yield_strength, "MPa", sleeve.steel.source)
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    factor = steps.add("φ", "yield in tension", AISC_TENSION_YIELD_FACTOR, "1", f"{AISC} J4.1(a)")
    strength = np.multiply(sleeve.steel.yield_strength, sleeve.thickness) * factor
    capacity = steps.add("φF_y t", "φ F_y t", strength, "N/mm", f"{AISC} J4.1(a)")
    where = "hoop force alone, beside yield of the sleeve"
    return Result(title, where, demand, capacity, "N/mm", clause, steps.lines)


def _lap_offset(jacket: Jacket, added: AddedBarLayer, title: str) -> Result:
    steps, clause = Steps(), f"{ACI} 25.5.1.3"
    _add_lap_length(jacket, added, steps)
    allowed = largest_lap_offset(added.height)
    steps.add("a_max", "min(h_a/5, 6 in)", allowed, "mm", f"{clause}, without struts and ties")
    return Result(title, "offset of the bars", lap_length(jacket).offset, allowed, "mm", clause,
                  steps.lines, (_OFFSET,), kind=Kind.REPORTED)  # fmt: skip


def _add_bar(added: AddedBarLayer, steps: Steps) -> None:
    steps.add("d_b", added.layer.size, added.layer.diameter, "mm", added.layer.source)
    steps.add("A_b", added.layer.size, added.layer.area, "mm2", added.layer.source)
