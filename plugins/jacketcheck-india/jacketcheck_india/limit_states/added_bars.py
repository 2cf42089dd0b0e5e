"""Added bars by the lengths of IS 456: in the footing, in the repair, and in their laps."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.grout_cubes import CYLINDER_OVER_CUBE
from jacketcheck.plugin import (
    AddedBarLayer,
    Jacket,
    NotEvaluatedError,
    Real,
    Result,
    Steps,
    add_struts_length,
    limit_state,
    not_applicable,
    only_valid,
    us_added_bar_anchorage,
    us_added_bar_lap,
    within_range,
)
from jacketcheck_india.codes import IS_456
from jacketcheck_india.mechanics.development import (
    LARGEST_LAPPED_BAR,
    LEAST_GRADE,
    close_lap_factor,
    design_bond_stress,
    development_length,
    lap_length,
)

__all__ = ["added_bar_anchorage", "added_bar_development", "added_bar_lap"]

_ANCHORAGE: Final = "Anchorage of the added bars in the footing"
_DEVELOPMENT: Final = "Development of the added bars in the repair"
_LAP: Final = "Laps of added bars and column bars"
_CLAUSE: Final = f"{IS_456} cl. 26.2.1"
_LAP_CLAUSE: Final = f"{IS_456} cl. 26.2.5.1"
_HOLE: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)
_IN_GROUT: Final = "engineering judgement: grout bonds like concrete of its strength"
_CYLINDER: Final = (
    "the table goes by the strength of 150 mm cubes, 5/4 of that of cylinders (IS 516:1959 5.6.1, "
    "from memory)"
)
_CUBES: Final = "IS 516:1959 5.6.1, from memory"
_FLEXURAL: Final = (
    "bars of a column in bending count as in flexural tension; where the earthquake lifts it, a "
    "lap in direct tension needs 2 L_d. All bars are lapped at one section, for which IS 456 asks "
    "for special precautions: here the sleeve"
)


@limit_state("added-bar-anchorage", title=_ANCHORAGE, provisions="india",
             monotonic={"added_bars.embedment": -1}, effort="closed-form")  # fmt: skip
def added_bar_anchorage(jacket: Jacket) -> list[Result]:
    """Embedment in grout by IS 456; adhesive and breakout stay as inherited."""
    inherited, added = us_added_bar_anchorage.evaluate(jacket), jacket.added_bars
    if added is None or added.bond_strength is not None:
        return list(inherited)
    _held_in_grout, *others = inherited
    return [_grouted(jacket, added), *others]


@limit_state("added-bar-development", title=_DEVELOPMENT, provisions="india",
             monotonic={"added_bars.height": -1}, effort="closed-form")  # fmt: skip
def added_bar_development(jacket: Jacket) -> list[Result]:
    """Development of the yield strength in the grout, from the top of the bars downwards."""
    if jacket.added_bars is None:
        return [not_applicable(_DEVELOPMENT, "no added bars")]
    steps = Steps()
    demand = _add_development(jacket.added_bars, jacket.grout.strength, "grout",
                              jacket.grout.source_of("strength"), steps)  # fmt: skip
    capacity = add_struts_length(jacket, steps)
    return [Result(_DEVELOPMENT, "grout", demand, capacity, "mm", _CLAUSE, steps.lines,
                   (_IN_GROUT, _CYLINDER))]  # fmt: skip


@limit_state("added-bar-lap", title=_LAP, provisions="india",
             monotonic={"added_bars.height": -1}, effort="closed-form")  # fmt: skip
def added_bar_lap(jacket: Jacket) -> list[Result]:
    """Length of the laps by IS 456; their hoop force and offset stay as inherited."""
    inherited = list(us_added_bar_lap.evaluate(jacket))
    if jacket.added_bars is None:
        return inherited
    hoops, *others = inherited
    return [hoops, _lap_length(jacket, jacket.added_bars), *others]


def _grouted(jacket: Jacket, added: AddedBarLayer) -> Result:
    if jacket.footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    steps = Steps()
    strength = np.minimum(jacket.footing.concrete_strength, jacket.grout.strength)
    source = (
        f"{jacket.footing.source_of('concrete_strength')}; {jacket.grout.source_of('strength')}"
    )
    length = _add_development(added, strength, "weaker of footing and grout", source, steps)
    return Result(_ANCHORAGE, "embedment in grout", length, added.embedment, "mm", _CLAUSE,
                  steps.lines, (_HOLE, _CYLINDER))  # fmt: skip


def _lap_length(jacket: Jacket, added: AddedBarLayer) -> Result:
    steps, layer = Steps(), added.layer
    development = _add_development(added, jacket.grout.strength, "grout",
                                   jacket.grout.source_of("strength"), steps)  # fmt: skip
    column = jacket.column.layer
    steps.figure("φ_c", column.size, column, "diameter", "mm")
    steps.add("s", "spacing of the added bars", layer.spacing, "mm", "geometry")
    between = np.maximum(layer.spacing - np.add(layer.diameter, column.diameter), 0.0)
    steps.add("s_l", "max(s − φ − φ_c, 0), between adjacent laps", between, "mm", "geometry")
    close = steps.add("k", "1.4 where s_l < max(75 mm, 6 φ), else 1",
                      close_lap_factor(between, bar_diameter=layer.diameter), "1",
                      f"{_LAP_CLAUSE}(c)")  # fmt: skip
    lapped = np.less_equal(layer.diameter, LARGEST_LAPPED_BAR)
    covered = np.logical_and(lapped, np.isfinite(development))
    length = lap_length(
        within_range(development, covered, 1.0),
        bar_diameter=within_range(layer.diameter, lapped, LARGEST_LAPPED_BAR),
        close_laps=close,
    )
    demand = steps.add("l_lap", "max(k max(L_d, 30 φ), 15 φ, 200 mm)", only_valid(length, covered),
                       "mm", _LAP_CLAUSE)  # fmt: skip
    # the code knows no laps of bars that stand apart: struts cross the offset first
    capacity = add_struts_length(jacket, steps)
    return Result(_LAP, "length of the laps", demand, capacity, "mm", _LAP_CLAUSE, steps.lines,
                  (_IN_GROUT, _FLEXURAL, _CYLINDER))  # fmt: skip


def _add_development(
    added: AddedBarLayer, strength: Real, concrete: str, source: str, steps: Steps
) -> Real:
    """Write down the development length of the expected yield strength and return it [mm]."""
    layer = added.layer
    steps.figure("φ", layer.size, layer, "diameter", "mm")
    stress = steps.figure("σ_s", "expected yield", layer.steel, "expected_yield", "MPa")
    steps.add("f′c", concrete, strength, "MPa", source)
    cubes = steps.add("f_ck", "f′c/0.8, 150 mm cubes", np.divide(strength, CYLINDER_OVER_CUBE),
                      "MPa", _CUBES)  # fmt: skip
    covered = np.greater_equal(cubes, LEAST_GRADE)
    bond = design_bond_stress(within_range(cubes, covered, LEAST_GRADE))
    told = "by grade, 1.6 for deformed bars"
    steps.add("τ_bd", told, only_valid(bond, covered), "MPa", f"{_CLAUSE}.1")
    length = only_valid(
        development_length(layer.diameter, bar_stress=stress, bond_stress=bond), covered
    )
    return steps.add("L_d", "φ σ_s/(4 τ_bd)", length, "mm", _CLAUSE)
