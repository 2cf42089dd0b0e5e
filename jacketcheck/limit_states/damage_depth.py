"""How deep the damage reaches into the concrete that the checks count as sound."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states._rows import LAYOUT_RULE, not_applicable
from jacketcheck.results import Kind, Result, Steps

__all__ = ["damage_depth"]

_TITLE: Final = "Depth of spalling"
_CLAUSE: Final = "geometry; common practice, no published source"
_CORE: Final = (
    "sections, dilation and clamping count the core inside of the bars as sound concrete; where it "
    "is crushed it must be replaced first"
)
_INTACT: Final = (
    "spalling and cracks recorded at bars that are not anchored by bond: the concrete is replaced "
    "by grout, and the bars stay continuous into the footing; no check asks for their bond"
)


@limit_state("damage-depth", title=_TITLE, effort="closed-form", scatter=LAYOUT_RULE)
def damage_depth(jacket: Jacket) -> list[Result]:
    """The deepest spalling against the depth of the inner face of the bars."""
    column = jacket.column
    recorded = [bar for bar in column.bars if bar.record]
    if not recorded:
        return [not_applicable(_TITLE, "no damage is recorded")]
    steps = Steps()
    steps.add("c", "clear cover", column.cover, "mm", "input column.cover")
    steps.figure("d_t", column.ties.size, column.ties, "diameter", "mm")
    steps.figure("d_b", column.layer.size, column.layer, "diameter", "mm")
    depth = steps.add("c + d_t + d_b", "c + d_t + d_b", column.cover + np.add(
        column.ties.diameter, column.layer.diameter), "mm", "inner face of the bars")  # fmt: skip
    deepest = np.max(np.stack(np.broadcast_arrays(*(b.spalling_depth for b in recorded))), axis=0)
    steps.add("s_d", "deepest spalling", deepest[()], "mm", "input damage, spalling_depth")
    rows = [Result(_TITLE, "against the core", deepest[()], depth, "mm", _CLAUSE, steps.lines,
                   (_CORE,))]  # fmt: skip
    touched = [bar for bar in recorded if bar.state in {"intact", "yielded"}
               and (np.any(np.greater(bar.crack_width, 0.0))
                    or np.any(np.greater(bar.spalling_depth, 0.0)))]  # fmt: skip
    if touched:
        rows.append(_beside(jacket, float(len(touched))))
    return rows


def _beside(jacket: Jacket, touched: float) -> Result:
    steps = Steps()
    steps.add("n_d", "bars that hold, with cracks or spalling", touched, "1", "input damage")
    count = steps.add("n", "bars", jacket.column.layer.count, "1", "input column.bars.count")
    return Result("Cracks and spalling at bars that hold", "bars recorded", touched, count, "1",
                  _CLAUSE, steps.lines, (_INTACT,), kind=Kind.REPORTED)  # fmt: skip
