"""Anchorage of the added bars in the footing by the development length of IS 456."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import (
    AddedBarLayer,
    Jacket,
    NotEvaluatedError,
    Result,
    Steps,
    limit_state,
    only_valid,
    us_added_bar_anchorage,
    within_range,
)
from jacketcheck_india.codes import IS_456
from jacketcheck_india.mechanics.development import (
    LEAST_GRADE,
    design_bond_stress,
    development_length,
)

__all__ = ["added_bar_anchorage"]

_TITLE: Final = "Anchorage of the added bars in the footing"
_CLAUSE: Final = f"{IS_456} cl. 26.2.1"
_GROUT: Final = (
    "engineering judgement: grout in a roughened and cleaned drilled hole holds the bar as cast "
    "concrete would"
)
_CYLINDER: Final = (
    "the table goes by cube strength and is entered with the cylinder strength of the input, which "
    "is smaller"
)


@limit_state("added-bar-anchorage", title=_TITLE, provisions="india",
             monotonic={"added_bars.embedment": -1}, effort="closed-form")  # fmt: skip
def added_bar_anchorage(jacket: Jacket) -> list[Result]:
    """Embedment in grout by IS 456; adhesive and breakout stay as inherited."""
    inherited, added = us_added_bar_anchorage.evaluate(jacket), jacket.added_bars
    if added is None or added.bond_strength is not None:
        return list(inherited)
    _held_in_grout, *others = inherited
    return [_grouted(jacket, added), *others]


def _grouted(jacket: Jacket, added: AddedBarLayer) -> Result:
    if jacket.footing is None:
        raise NotEvaluatedError("no footing is given for the added bars")
    steps, layer = Steps(), added.layer
    steps.figure("φ", layer.size, layer, "diameter", "mm")
    stress = steps.figure("σ_s", "expected yield", layer.steel, "expected_yield", "MPa")
    strength = np.minimum(jacket.footing.concrete_strength, jacket.grout.strength)
    steps.add("f′c", "weaker of footing and grout", strength, "MPa", "input")
    covered = np.greater_equal(strength, LEAST_GRADE)
    bond = design_bond_stress(within_range(strength, covered, LEAST_GRADE))
    told = "by grade, 1.6 for deformed bars"
    steps.add("τ_bd", told, only_valid(bond, covered), "MPa", f"{_CLAUSE}.1")
    length = only_valid(
        development_length(layer.diameter, bar_stress=stress, bond_stress=bond), covered
    )
    steps.add("L_d", "φ σ_s/(4 τ_bd)", length, "mm", _CLAUSE)
    return Result(_TITLE, "embedment in grout", length, added.embedment, "mm", _CLAUSE,
                  steps.lines, (_GROUT, _CYLINDER))  # fmt: skip
