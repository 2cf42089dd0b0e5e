"""Hoops of the column where the hinge forms now: above the repair."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.results import Result, Steps

__all__ = ["hinge_hoops"]

_TITLE: Final = "Hoops in the relocated hinge"
_CLAUSE: Final = f"{GUIDE_SPEC} 8.8.9, from memory"
_WIDEST: Final = 152.4
"""Largest spacing of hoops or spirals in a plastic hinge [mm], 6 in."""
_OLD: Final = (
    "a rule for new columns: the hinge moves to where this column's own hoops must confine the "
    "core and hold the bars; wider hoops ask for a longer repair or for confinement above it"
)


@limit_state(
    "hinge-hoops",
    title=_TITLE,
    monotonic={"column.ties.spacing": 1},
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def hinge_hoops(jacket: Jacket) -> list[Result]:
    """Spacing of the hoops above the repair, where they confine the hinge and hold its bars."""
    steps, column = Steps(), jacket.column
    layer, ties = column.layer, column.ties
    steps.add("D", "column", column.diameter, "mm", "input column.diameter")
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    allowed = np.minimum(np.minimum(column.diameter / 5.0, 6.0 * layer.diameter), _WIDEST)
    steps.add("s_max", "min(D/5, 6 d_b, 6 in)", allowed, "mm", _CLAUSE)
    steps.add("s", ties.kind, ties.spacing, "mm", "input column.hoops.spacing")
    return [Result(_TITLE, "above the repair", ties.spacing, allowed, "mm", _CLAUSE, steps.lines,
                   (_OLD,))]  # fmt: skip
