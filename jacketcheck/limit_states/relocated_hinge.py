"""The repair must stay stronger than the hinge that it relocates, at the base and above it."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.base_state import CAPACITY_STRAIN
from jacketcheck.analysis.height import worst_height
from jacketcheck.analysis.hinge import add_hinge
from jacketcheck.analysis.named_losses import added_bar_losses, pressure_losses
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Scatter, limit_state
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["base_moment", "moment_along_height"]

_CLAUSE: Final = f"{GUIDE_SPEC} 8.5, 8.9"
_COMPOSITE: Final = (
    "engineering judgement: the column counts as sound concrete confined by the sleeve, down to "
    "the footing; grout and added bars act with it as far as friction on its face hands their "
    "forces over; fractured bars are not counted below their fracture"
)


def clock_text(angle: Real) -> str:
    """A direction as a clock position; of designs that differ in it none is told."""
    angles = np.ravel(angle)
    if np.any(angles != angles[0]):
        return "several"
    minutes = round(float(angles[0]) / (2.0 * np.pi) * 720.0) % 720
    return f"{minutes // 60 or 12}:{minutes % 60:02d}"


@limit_state(
    "base-moment",
    title="Moment at the base against the relocated hinge",
    scatter=Scatter(
        "moment that the hinge's largest moment brings to the footing exceeds the "
        "strength of the base",
        rules=("base-moment",),
    ),
)
def base_moment(jacket: Jacket) -> list[Result]:
    """Moment strength of the repaired base against the overstrength demand of the hinge above."""
    steps = Steps()
    forces, base = add_hinge(jacket, steps), base_section(jacket)
    _add_section(jacket, steps)
    steps.add("C_ring", "friction on half of the column's face, over the sleeve's height",
              base.ring_limit, "N", "limit state grout-interface")  # fmt: skip
    clock = steps.add("direction", "side in compression, weakest of 24",
                      clock_text(base.weakest_direction), "", "section analysis")  # fmt: skip
    steps.add("M_n", "at ε_cu, grout ring at most C_ring", base.moment_capacity, "N mm",
              "section analysis of the repaired base")  # fmt: skip
    return [
        Result(
            "Moment at the base against the relocated hinge",
            f"top of footing, compression at {clock}",
            forces.base_moment,
            base.moment_capacity,
            "N mm",
            _CLAUSE,
            steps.lines,
            (_COMPOSITE,),
            rule="base-moment",
            follows_from=(*added_bar_losses(jacket), *pressure_losses(jacket)),
        )
    ]


@limit_state(
    "moment-along-height",
    title="Moment along the height of the repair",
    scatter=Scatter(
        "the same between footing and hinge, with what bond has developed there",
        rules=("moment-along-height",),
    ),
)
def moment_along_height(jacket: Jacket) -> list[Result]:
    """Where between base and hinge the demand comes nearest to the capacity."""
    steps = Steps()
    add_hinge(jacket, steps)
    _add_section(jacket, steps)
    worst = worst_height(jacket)
    layer = jacket.column.layer
    steps.figure("f_ye", layer.steel.name, layer.steel, "expected_yield", "MPa")
    steps.figure("d_b", layer.size, layer, "diameter", "mm")
    steps.add("z_h", "max(H − 0.022 f_ye d_b, H/2)", worst.hinge_bottom, "mm",
              "yield strain penetrates from the hinge into the repair")  # fmt: skip
    steps.add("z", "worst of the stations up to there", worst.height, "mm",
              "section analysis along the height")  # fmt: skip
    demand = steps.add("M(z)", "M_base − V_o z", worst.demand, "N mm", "statics")
    steps.add("C_ring(z)", "friction on half of the column's face above z", worst.ring_limit, "N",
              "limit state grout-interface")  # fmt: skip
    steps.add("direction", "side in compression", clock_text(worst.direction), "",
              "section analysis")  # fmt: skip
    steps.add("M_n(z)", "at ε_cu, ring at most C_ring(z), bars with what bond has developed at z",
              worst.capacity, "N mm", "section analysis along the height")  # fmt: skip
    return [
        Result(
            "Moment along the height of the repair",
            "between footing and hinge",
            demand,
            worst.capacity,
            "N mm",
            _CLAUSE,
            steps.lines,
            (_COMPOSITE,),
            rule="moment-along-height",
            follows_from=("bar-bond", *added_bar_losses(jacket), *pressure_losses(jacket)),
        )
    ]


def _add_section(jacket: Jacket, steps: Steps) -> None:
    """Write down what the strength of every section rests on."""
    axial_load = jacket.demands.axial_load
    steps.add("P", "with the earthquake", axial_load, "N", "input actions.axial_load")
    steps.add("ε_cu", "outermost fibre", CAPACITY_STRAIN, "1", f"{GUIDE_SPEC} 8.5, 8.9")
