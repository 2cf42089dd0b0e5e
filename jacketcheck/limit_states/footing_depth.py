"""Concrete left under the drilled holes of the added bars."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, not_applicable
from jacketcheck.limit_states.editions import ACI
from jacketcheck.results import Result, Steps

__all__ = ["footing_depth"]

_TITLE: Final = "Concrete under the added bars"
_COVER: Final = 76.2
"""Cover of bars in concrete cast against the ground [mm], 3 in (ACI 318-19 Table 20.5.1.3.1)."""
_CLAUSE: Final = f"{ACI} Table 20.5.1.3.1; two hole diameters, so that drilling does not break out"


@limit_state(
    "footing-depth",
    title=_TITLE,
    monotonic={"added_bars.embedment": 1},
    effort="closed-form",
    scatter=LAYOUT_RULE,
)
def footing_depth(jacket: Jacket) -> list[Result]:
    """Embedment and what must stay below it, against the depth of the footing."""
    added, footing = jacket.added_bars, jacket.footing
    if added is None:
        return [not_applicable(_TITLE, "no added bars")]
    if footing is None or footing.depth is None:
        raise NotEvaluatedError(
            "no footing.depth: whether the drilled holes end inside of the footing is not known"
        )
    steps = Steps()
    steps.add("l", "embedment", added.embedment, "mm", "input added_bars.embedment")
    steps.add("d_h", "drilled hole", added.hole_diameter, "mm", "input added_bars.hole_diameter")
    below = steps.add("c", "max(3 in, 2 d_h)", np.maximum(_COVER, 2.0 * np.asarray(
        added.hole_diameter))[()], "mm", f"{_CLAUSE}, common practice")  # fmt: skip
    demand = steps.add("l + c", "l + c", np.add(added.embedment, below), "mm", "geometry")
    steps.add("h", "depth", footing.depth, "mm", "input footing.depth")
    return [Result(_TITLE, "footing", demand, footing.depth, "mm", _CLAUSE, steps.lines)]
