"""Bond of the fractured bars: whether they are anchored again over the height of the repair."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from jacketcheck.analysis.bond import BarBond, bar_bonds
from jacketcheck.analysis.damaged_bars import debonding_bars
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import not_applicable
from jacketcheck.results import Result, Steps

__all__ = ["bar_bond", "bar_length"]

_NONE = "no bar is anchored by bond alone"
_CHIPPED = (
    "engineering judgement: grout bonds to a chipped and cleaned bar like concrete of its strength; "
    "rib spacing by judgement.rib_spacing_ratio"
)
_UNCHIPPED = (
    "engineering judgement: cracked concrete left around a bar has 'other' bond conditions; rib "
    "spacing by judgement.rib_spacing_ratio"
)


@limit_state(
    "bar-bond",
    title="Stress developed in the fractured bars",
    monotonic={"grout.strength": 0, "repair_height": 0},
    effort="bond",
)
def bar_bond(jacket: Jacket) -> list[Result]:
    """Stress that each group of fractured bars must and can develop at the top of the repair."""
    bars = debonding_bars(jacket)
    if not len(bars):
        return [not_applicable("Stress developed in the fractured bars", _NONE)]
    rows = []
    for index, bond in enumerate(bar_bonds(jacket)):
        steps = Steps()
        demand = _add_bond(jacket, bond, steps)
        capacity = steps.add("f_s", "largest over free-end slips", bond.developed_stress, "MPa",
                             "dσ/dx = 4 τ(s) Ω_y/d_b, ds/dx = ε(σ) from the fracture")  # fmt: skip
        row = _row("Stress developed in the fractured bars", jacket, index, demand, capacity, "MPa",
                   steps)  # fmt: skip
        rows.append(replace(row, saturates=True))
    return rows


@limit_state(
    "bar-length",
    title="Length to develop the fractured bars",
    monotonic={"grout.strength": 0, "repair_height": 0},
    effort="bond",
)
def bar_length(jacket: Jacket) -> list[Result]:
    """Length needed over length available; unlike the stress it tells how much is to spare."""
    bars = debonding_bars(jacket)
    if not len(bars):
        return [not_applicable("Length to develop the fractured bars", _NONE)]
    rows = []
    for index, bond in enumerate(bar_bonds(jacket)):
        steps = Steps()
        _add_bond(jacket, bond, steps)
        demand = steps.add("l_need", "shortest length that develops it", bond.needed_length, "mm",
                           "dσ/dx = 4 τ(s) Ω_y/d_b, ds/dx = ε(σ) from the fracture")  # fmt: skip
        rows.append(_row("Length to develop the fractured bars", jacket, index, demand,
                         bond.available_length, "mm", steps))  # fmt: skip
    return rows


def _add_bond(jacket: Jacket, bond: BarBond, steps: Steps) -> object:
    """Write down what the bond of a bar rests on, and return its target stress."""
    bar, law, layer = bond.conditions, bond.law, jacket.column.layer
    source = jacket.bond_model.source
    steps.add("d_b", layer.size, layer.diameter, "mm", layer.source)
    steps.add("f_ye", layer.steel.name, layer.steel.expected_yield, "MPa", layer.steel.source)
    steps.add("f_ue", layer.steel.name, layer.steel.expected_tensile, "MPa", layer.steel.source)
    if bar.surface == "chipped":
        steps.add("f_cm", "grout", bar.grout_strength, "MPa", "input grout.strength")
    else:
        steps.add("f_cm", "column concrete, expected", bar.concrete_strength, "MPa",
                  jacket.column.concrete.expected_source)  # fmt: skip
        steps.add("w_cr", "crack along the bar", bar.crack_width, "mm", "input damage")
        steps.add("c", "cover left", bar.cover, "mm", "input")
        steps.add("splitting", "sleeve", "held" if bar.splitting_held else "not held: seams slip", "",
                  "limit state seam-slip")  # fmt: skip
    steps.add("p_tr", "supplied and kept for the next cycle, on the core", bar.confining_pressure,
              "MPa", "limit states clamping, retained-pressure")  # fmt: skip
    steps.add("s_rib", "clear rib spacing", bar.clear_rib_spacing, "mm",
              "input judgement.rib_spacing_ratio × d_b")  # fmt: skip
    steps.add(
        "τ_max", f"{bar.surface} surface, pressure and cracks", law.peak_stress, "MPa", source
    )
    steps.add("τ_f", "residual", law.residual_stress, "MPa", source)
    steps.add("l", "fracture to top of repair", bond.available_length, "mm", "input")
    return steps.add("f_target", f"{jacket.judgement.bar_target} strength",
                     np.asarray(bond.target_stress)[()], "MPa", "input judgement.bar_target")  # fmt: skip


def _row(
    title: str,
    jacket: Jacket,
    index: int,
    demand: object,
    capacity: object,
    unit: str,
    steps: Steps,
) -> Result:
    bars = debonding_bars(jacket)
    unchipped = bars.groups[index].surface == "unchipped"
    return Result(
        title,
        bars.name(index),
        demand,  # type: ignore[arg-type]
        capacity,  # type: ignore[arg-type]
        unit,
        jacket.bond_model.source,
        steps.lines,
        (_UNCHIPPED if unchipped else _CHIPPED,),
    )
