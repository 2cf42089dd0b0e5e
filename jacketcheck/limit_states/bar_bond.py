"""Bond of the fractured bars: whether they are anchored again over the height of the repair."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.bond import BarBond, bar_bonds
from jacketcheck.analysis.clamping import clamping_need
from jacketcheck.analysis.damaged_bars import add_anchorage_length, debonding_bars, target_figure
from jacketcheck.analysis.named_losses import pressure_losses
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import NoScatter, Scatter, limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["bar_bond", "bar_length"]

_STRESS: Final = "Stress developed in the fractured bars"
_LENGTH: Final = "Length to develop the fractured bars"
_NONE: Final = "no bar is anchored by bond alone"
_EQUATIONS: Final = "dσ/dx = 4 τ(s) Ω_y/d_b, ds/dx = ε(σ) from the fracture"
_CHIPPED: Final = (
    "engineering judgement: grout bonds to a chipped and cleaned bar like concrete of its "
    "strength; rib spacing by judgement.rib_spacing_ratio"
)
_PARTLY: Final = (
    "engineering judgement: the sleeve keeps less pressure than the bars need; between none and "
    "that one, bond goes from splitting to held in proportion, r"
)
_UNCHIPPED: Final = (
    "engineering judgement: cracked concrete left around a bar has 'other' bond conditions; rib "
    "spacing by judgement.rib_spacing_ratio"
)


@limit_state(
    "bar-bond",
    title=_STRESS,
    monotonic={"grout.strength": 0, "repair_height": 0},
    effort="bond",
    scatter=NoScatter(
        "the same event as bar-length",
    ),
)
def bar_bond(jacket: Jacket) -> list[Result]:
    """Stress that each group of fractured bars must and can develop at the top of the repair."""
    bars, rows = debonding_bars(jacket), []
    for index, bond in enumerate(bar_bonds(jacket)):
        steps = Steps()
        demand = _add_bond(jacket, index, steps)
        capacity = steps.add("f_s", "min(f_ue, largest over free-end slips)",
                             bond.developed_stress, "MPa", _EQUATIONS)  # fmt: skip
        row = Result(_STRESS, bars.name(index), demand, capacity, "MPa", jacket.bond_model.source,
                     steps.lines, _notes(jacket, index), without_margin=True,
                     rule="bond-stress", follows_from=pressure_losses(jacket))  # fmt: skip
        rows.append(row)
    return rows or [not_applicable(_STRESS, _NONE)]


@limit_state(
    "bar-length",
    title=_LENGTH,
    monotonic={"grout.strength": 0, "repair_height": 0},
    effort="bond",
    scatter=Scatter(
        "length that develops the bars' target stress with their actual bond exceeds "
        "the length available; in samples that slip, splitting is not held",
        rules=("bond-length",),
        steady=False,
    ),
)
def bar_length(jacket: Jacket) -> list[Result]:
    """Length needed over length available; unlike the stress it tells how much is to spare."""
    bars, rows = debonding_bars(jacket), []
    for index, bond in enumerate(bar_bonds(jacket)):
        steps = Steps()
        _add_bond(jacket, index, steps)
        demand = steps.add("l_need", "shortest length that develops it", bond.needed_length, "mm",
                           _EQUATIONS)  # fmt: skip
        row = Result(_LENGTH, bars.name(index), demand, bond.available_length, "mm",
                     jacket.bond_model.source, steps.lines, _notes(jacket, index),
                     rule="bond-length", follows_from=pressure_losses(jacket))  # fmt: skip
        rows.append(row)
    return rows or [not_applicable(_LENGTH, _NONE)]


def _notes(jacket: Jacket, index: int) -> tuple[str, ...]:
    unchipped = debonding_bars(jacket).groups[index].surface == "unchipped"
    surface = _UNCHIPPED if unchipped else _CHIPPED
    whole = np.all(np.greater_equal(bar_bonds(jacket)[index].held_share, 1.0))
    return (surface,) if whole else (surface, _PARTLY)


def _add_bond(jacket: Jacket, index: int, steps: Steps) -> Real:
    """Write down what the bond of a bar rests on, and return its target stress [MPa]."""
    bond, layer = bar_bonds(jacket)[index], jacket.column.layer
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.figure("f_ye", layer.steel.name, layer.steel, "expected_yield", "MPa")
    steps.figure("f_ue", layer.steel.name, layer.steel, "expected_tensile", "MPa")
    _add_law(jacket, index, steps)
    add_anchorage_length(jacket, steps, debonding_bars(jacket).groups[index])
    target = np.asarray(bond.target_stress)[()]
    source = jacket.column.layer.steel.source_of(target_figure(jacket))
    return steps.add("f_target", f"{jacket.judgement.bar_target} strength", target, "MPa",
                     f"{source}; input judgement.bar_target")  # fmt: skip


def _add_law(jacket: Jacket, index: int, steps: Steps) -> None:
    """Write down what surrounds a bar and the local law that follows."""
    bond: BarBond = bar_bonds(jacket)[index]
    bar, law, source = bond.conditions, bond.law, jacket.bond_model.source
    if bar.surface == "chipped":
        steps.add("f_cm", "grout", bar.grout_strength, "MPa", jacket.grout.source_of("strength"))
    else:
        concrete = jacket.column.concrete
        steps.add("f_cm", "column concrete, expected", bar.concrete_strength, "MPa",
                  concrete.source_of("expected"))  # fmt: skip
        steps.add("w_cr", "crack along the bar", bar.crack_width, "mm", "input damage")
        steps.add("c", "cover left, at least d_b/2", bar.cover, "mm",
                  "input column.cover, damage.spalling_depth")  # fmt: skip
    steps.add("p_k", "kept for the next cycle, on the core", bar.confining_pressure, "MPa",
              "limit state retained-pressure")  # fmt: skip
    steps.add("p_n", "needed on the core", clamping_need(jacket).core_pressure[index], "MPa",
              "limit state clamping")  # fmt: skip
    steps.add("r", "min(1, p_k/p_n)", bond.held_share, "1", "engineering judgement")
    steps.add("r_rib", "clear rib spacing over diameter", jacket.judgement.rib_spacing_ratio, "1",
              "input judgement.rib_spacing_ratio")  # fmt: skip
    steps.add("s_rib", "r_rib d_b", bar.clear_rib_spacing, "mm", "clear rib spacing")
    steps.add("τ_max", f"held by r, splitting by 1 − r; {bar.surface} surface, pressure, cracks",
              law.peak_stress, "MPa", source)  # fmt: skip
    steps.add("τ_f", "residual, likewise", law.residual_stress, "MPa", source)
