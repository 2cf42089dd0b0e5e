"""Confining pressure: what the fractured bars need, what the sleeve supplies, what it keeps."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.clamping import clamping_need, clamping_supply
from jacketcheck.analysis.damaged_bars import debonding_bars, target_stress
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.retained import retained
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import PRIESTLEY
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Kind, Result, Steps

__all__ = ["clamping", "retained_pressure"]

_SOURCE = f"{PRIESTLEY} ch. 7; FHWA-HRT-06-032 (2006)"
_JUDGEMENT = (
    "engineering judgement: friction on the splitting crack and the hoop strain up to which "
    "clamping is counted (judgement.crack_friction, judgement.clamping_strain); the cover is the "
    "column's original one"
)


@limit_state(
    "clamping",
    title="Clamping of the fractured bars",
    effort="closed-form",
)
def clamping(jacket: Jacket) -> list[Result]:
    """Pressure on the core needed by each group of fractured bars, against what is supplied."""
    if not len(debonding_bars(jacket)):
        return [
            not_applicable("Clamping of the fractured bars", "no bar is anchored by bond alone")
        ]
    return [_clamping(jacket, index) for index in range(len(debonding_bars(jacket)))]


def _clamping(jacket: Jacket, index: int) -> Result:
    steps, need, supply = Steps(), clamping_need(jacket), clamping_supply(jacket)
    layer = jacket.column.layer
    steps.add("A_b", layer.size, layer.area, "mm2", layer.source)
    steps.add("f_s", f"{jacket.judgement.bar_target} strength to be reached",
              target_stress(jacket), "MPa", layer.steel.source)  # fmt: skip
    steps.add("μ", "friction on the crack", jacket.judgement.crack_friction, "1",
              "input judgement.crack_friction")  # fmt: skip
    steps.add("l", "fracture to top of repair", need.length[index], "mm", "input")
    steps.add("p_crack", "min(π D′/(2n) + 2(d_b + c), 2√2 (c + d_b))", need.crack_perimeter, "mm",
              _SOURCE)  # fmt: skip
    demand = steps.add("p_c", "A_b f_s/(μ l p_crack)", need.core_pressure[index], "MPa", _SOURCE)
    add_supply(jacket, steps)
    ratio = jacket.sleeve.inner_radius / jacket.column.radius
    capacity = steps.add("p_c,av", "min(…) R_i/R_c", supply.available * ratio, "MPa", _SOURCE)
    return Result(
        "Clamping of the fractured bars",
        debonding_bars(jacket).name(index),
        demand,
        capacity,
        "MPa",
        _SOURCE,
        steps.lines,
        (_JUDGEMENT,),
    )


def add_supply(jacket: Jacket, steps: Steps) -> None:
    """Write down what limits the clamping pressure, at the inner face of the sleeve."""
    supply, action = clamping_supply(jacket), hoop_action(jacket)
    steps.add("ε_cl", "hoop strain counted", jacket.judgement.clamping_strain, "1",
              "input judgement.clamping_strain")  # fmt: skip
    steps.add("u_0", "play before the sleeve engages", action.initial_play, "mm", "hole clearance")
    steps.add("p(ε_cl)", "(ε_cl R_c − u_0)/(du/dp)", supply.at_hoop_strain, "MPa", _SOURCE)
    steps.add("p_y", "F_y t/R_i", supply.at_yield, "MPa", "thin shell")
    steps.add("p_slip", "smallest μ, no D_u; not for snug bolts", supply.at_slip, "MPa", "friction")


@limit_state(
    "retained-pressure", title="Confining pressure kept for the next cycle", effort="closed-form"
)
def retained_pressure(jacket: Jacket) -> list[Result]:
    """What slip, yield, and both leave of the pressure; reported, not judged.

    Bond counts on what this jacket keeps, so that its loss shows in the rows of the bars.
    """
    kept = retained(jacket)
    need = (
        np.multiply(clamping_need(jacket).largest_core_pressure, jacket.column.radius)
        / jacket.sleeve.inner_radius
    )
    cases = (
        ("if the seams slip", kept.slip_loss, kept.after_slip),
        ("after yield at the checked strain", kept.yield_loss, kept.after_yield),
        ("as this jacket is", kept.after_both.lost_strain, kept.after_both),
    )
    rows = []
    for where, loss, state in cases:
        steps = Steps()
        steps.add("Δε", "hoop strain lost", loss, "1",
                  "2δ/(πD) for slip, ε_max − F_y/E for yield")  # fmt: skip
        steps.add("p_0", "without loss, at ε_cl", state.before, "MPa", "thin shell, seams, grout")
        left: Real = steps.add("p", "(ε_cl − Δε) R_i/(du/dp), 0 ≤ p ≤ p_y", state.retained, "MPa",
                               "compatibility of the ring")  # fmt: skip
        demand = steps.add("p_need", "clamping need × R_c/R_i", need, "MPa", "limit state clamping")
        rows.append(
            Result(
                "Confining pressure kept for the next cycle",
                where,
                demand,
                left,
                "MPa",
                "compatibility of the ring; no clause",
                steps.lines,
                kind=Kind.REPORTED,
            )
        )
    return rows
