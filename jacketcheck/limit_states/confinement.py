"""Confining pressure: what the fractured bars need, what the sleeve supplies, what it keeps."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.clamping import clamping_need, crack_friction
from jacketcheck.analysis.damaged_bars import (
    add_anchorage_length,
    debonding_bars,
    target_figure,
)
from jacketcheck.analysis.hoop_action import hoop_action
from jacketcheck.analysis.hoop_demand import add_radii, add_rows
from jacketcheck.analysis.lap import lap_hoop_force
from jacketcheck.analysis.named_losses import supply_losses
from jacketcheck.analysis.retained import clamping_supply, retained
from jacketcheck.analysis.shear import add_shear_force
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import NoScatter, Scatter, limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.limit_states.editions import PRIESTLEY
from jacketcheck.mechanics import hoop
from jacketcheck.mechanics.retained_pressure import Loss, RetainedPressure
from jacketcheck.results import Kind, Result, Steps

__all__ = ["clamping", "retained_pressure"]

_SOURCE = f"{PRIESTLEY} ch. 7; FHWA-HRT-06-032 (2006)"
_SLIDES = (
    "engineering judgement: a seam slides at its full resistance, no farther than the dilating "
    "core asks for; its bolts keep their pretension"
)
_JUDGEMENT = (
    "engineering judgement: friction on the splitting crack and the hoop strain up to which "
    "clamping is counted (judgement.crack_friction, judgement.clamping_strain); the cover is the "
    "column's original one"
)


@limit_state(
    "clamping",
    title="Clamping of the fractured bars",
    effort="closed-form",
    scatter=Scatter(
        "clamping that fractured bars need exceeds what the sleeve supplies up to "
        "yield, slip and the counted hoop strain",
        rules=("clamping-pressure",),
        steady=False,
    ),
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
    _add_crack(jacket, steps)
    add_anchorage_length(jacket, steps, debonding_bars(jacket).groups[index])
    demand = steps.add("p_need", "A_b f_s/(μ l p_crack)", need.core_pressure[index], "MPa", _SOURCE)
    _add_supply(jacket, steps)
    pressure = hoop.core_pressure(
        supply.available, inner_radius=jacket.sleeve.inner_radius, core_radius=jacket.column.radius
    )
    steps.add("p_k", "kept for the next cycle", supply.kept, "MPa", "limit state retained-pressure")
    capacity = steps.add("p_c,av", "min(p(ε_cl), p_y, p_slip, p_k) R_i/R_c", pressure, "MPa",
                         _SOURCE)  # fmt: skip
    return Result(
        "Clamping of the fractured bars",
        debonding_bars(jacket).name(index),
        demand,
        capacity,
        "MPa",
        _SOURCE,
        steps.lines,
        (_JUDGEMENT,),
        rule="clamping-pressure",
        follows_from=supply_losses(jacket),
    )


def _add_crack(jacket: Jacket, steps: Steps) -> None:
    """Write down a bar's force and the splitting crack that it mobilises."""
    need, column, layer = clamping_need(jacket), jacket.column, jacket.column.layer
    steps.figure("A_b", layer.size, layer, "area", "mm2")
    steps.figure("f_s", f"{jacket.judgement.bar_target} strength to be reached", layer.steel,
                 target_figure(jacket), "MPa")  # fmt: skip
    steps.add("μ", "friction on the crack", crack_friction(jacket), "1",
              "input judgement.crack_friction")  # fmt: skip
    steps.add("n", "bars", layer.count, "1", "input column.bars.count")
    steps.add(
        "D′", "circle of bar centres", np.multiply(2.0, layer.circle_radius), "mm", "geometry"
    )
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.add("c", "original cover over the bars", np.add(column.cover, column.ties.diameter), "mm",
              "input column.cover, column.hoops.size")  # fmt: skip
    steps.add("p_crack", "min(π D′/(2 n) + 2 (d_b + c), 2 √2 (c + d_b))", need.crack_perimeter,
              "mm", _SOURCE)  # fmt: skip


def _add_supply(jacket: Jacket, steps: Steps) -> None:
    """Write down what limits the clamping pressure, at the inner face of the sleeve."""
    supply, action, sleeve = clamping_supply(jacket), hoop_action(jacket), jacket.sleeve
    add_radii(jacket, steps)
    steps.add("ε_cl", "hoop strain counted", jacket.judgement.clamping_strain, "1",
              "input judgement.clamping_strain")  # fmt: skip
    steps.add("u_0", "play before the sleeve engages", action.initial_play, "mm", "hole clearance")
    steps.add("du/dp", "sleeve, seams and grout in series", action.radial_compliance, "mm/MPa",
              "limit state hoop-dilation")  # fmt: skip
    steps.add("p(ε_cl)", "max(ε_cl R_c − u_0, 0)/(du/dp)", supply.at_hoop_strain, "MPa", _SOURCE)
    steps.figure("F_y", sleeve.steel.name, sleeve.steel, "yield_strength", "MPa")
    steps.add("t", "sleeve", sleeve.thickness, "mm", "input sleeve.thickness")
    steps.add("N_lap", "non-contact laps", lap_hoop_force(jacket), "N/mm",
              "limit state added-bar-lap")  # fmt: skip
    add_shear_force(jacket, steps)
    steps.add("p_y", "max(F_y t − N_lap − N_V, 0)/R_i", supply.at_yield, "MPa",
              "thin shell, beside laps and shear")  # fmt: skip
    slip = action.slip_force if jacket.bolts.pretensioned else np.inf
    steps.add(
        "V_slip", "one bolt, smallest slip coefficient; not for snug bolts", slip, "N", "friction"
    )
    add_rows(jacket, steps)
    steps.add("h_t", "max(s, e_end + s/2)", jacket.bolts.tributary_height, "mm", "tributary height")
    steps.add("n_c", "columns", jacket.bolts.columns, "1", "input bolts.columns")
    steps.add("p_slip", "max(V_slip n_c/h_t − N_lap − N_V, 0)/R_i", supply.at_slip, "MPa",
              "hardest-worked row, beside laps and shear")  # fmt: skip


@limit_state(
    "retained-pressure",
    title="Confining pressure kept for the next cycle",
    scatter=NoScatter(
        "reported only: it has no limit",
    ),
)
def retained_pressure(jacket: Jacket) -> list[Result]:
    """What slip, yield, and both leave of the pressure; reported, not judged.

    Bond counts on what this jacket keeps, so that its loss shows in the rows of the bars.
    """
    kept = retained(jacket)
    rows = (
        ("if the seams slip", Loss(kept.clearance, 0.0), kept.after_clearance, "p_y"),
        ("after yield at the checked strain", Loss(0.0, kept.yield_loss_alone), kept.after_yield,
         "p_y"),
        ("as this jacket is", kept.loss, kept.after_both, "p_y, p_slip"),
    )  # fmt: skip
    return [_kept(jacket, *one) for one in rows]


def _kept(jacket: Jacket, where: str, loss: Loss, state: RetainedPressure, limits: str) -> Result:
    steps, need = Steps(), clamping_need(jacket).largest_core_pressure
    _add_supply(jacket, steps)
    steps.add("ε_0", "ε_cl R_c/R_i", retained(jacket).hoop_strain, "1",
              "core's strain, carried to the sleeve")  # fmt: skip
    steps.add("ε_c", "checked", checked_axial_strain(jacket).value, "1",
              "limit state hoop-dilation")  # fmt: skip
    slip = steps.add("Δε_s", "seams that slide at p_slip while the core dilates to ε_c, until the "
                     "bolts bear", loss.slip, "1", "compatibility of the ring")  # fmt: skip
    plastic = steps.add("Δε_p", "wall that yields at p_y while the core dilates to ε_c",
                        loss.plastic, "1", "compatibility of the ring")  # fmt: skip
    steps.add("Δε", "Δε_s + Δε_p", np.add(slip, plastic), "1", "hoop strain lost")
    steps.add("p_0", f"min(ε_0 R_i/(du/dp), {limits})", state.before, "MPa",
              "compatibility of the ring")  # fmt: skip
    left = steps.add("p", f"min(max(ε_0 − Δε, 0) R_i/(du/dp), {limits})", state.retained, "MPa",
                     "compatibility of the ring")  # fmt: skip
    steps.add("p_c", "needed on the core", need, "MPa", "limit state clamping")
    demand = np.multiply(need, jacket.column.radius) / jacket.sleeve.inner_radius
    steps.add("p_need", "p_c R_c/R_i", demand, "MPa", "cracked grout")
    return Result(
        "Confining pressure kept for the next cycle",
        where,
        demand,
        left,
        "MPa",
        "compatibility of the ring; no clause",
        steps.lines,
        (_SLIDES,),
        kind=Kind.REPORTED,
    )
