"""The repair must stay stronger than the hinge that it relocates, at the base and above it."""

from __future__ import annotations

import numpy as np

from jacketcheck.analysis.base import CAPACITY_STRAIN, base_section
from jacketcheck.analysis.height import worst_height
from jacketcheck.analysis.hinge import add_hinge
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import limit_state
from jacketcheck.limit_states.editions import GUIDE_SPEC
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Result, Steps

__all__ = ["base_moment", "moment_along_height"]

_CLAUSE = f"{GUIDE_SPEC} 8.5, 8.9"


def clock_text(angle: Real) -> str:
    """A direction as a clock position; of many designs the first is told."""
    hours = float(np.ravel(angle)[0]) / (2.0 * np.pi) * 12.0 % 12.0
    whole = int(hours)
    minutes = round((hours - whole) * 60.0)
    whole, minutes = (whole + 1, 0) if minutes == 60 else (whole, minutes)
    return f"{whole % 12 or 12}:{minutes:02d}"


@limit_state("base-moment", title="Moment at the base against the relocated hinge")
def base_moment(jacket: Jacket) -> list[Result]:
    """Moment strength of the repaired base against the overstrength demand of the hinge above."""
    steps = Steps()
    forces, base = add_hinge(jacket, steps), base_section(jacket)
    steps.add(
        "P", "with the earthquake", jacket.demands.axial_load, "N", "input actions.axial_load"
    )
    steps.add("ε_cu", "outermost fibre", CAPACITY_STRAIN, "1", f"{GUIDE_SPEC} 8.9")
    steps.add("direction", "side in compression, weakest of 24", clock_text(base.weakest_direction),
              "", "section analysis")  # fmt: skip
    steps.add("M_n", "expected strengths, fractured bars not counted", base.moment_capacity, "N mm",
              "section analysis of the repaired base")  # fmt: skip
    return [
        Result(
            "Moment at the base against the relocated hinge",
            f"top of footing, compression at {clock_text(base.weakest_direction)}",
            forces.base_moment,
            base.moment_capacity,
            "N mm",
            _CLAUSE,
            steps.lines,
        )
    ]


@limit_state("moment-along-height", title="Moment along the height of the repair")
def moment_along_height(jacket: Jacket) -> list[Result]:
    """Where between base and top of the repair the demand comes nearest to the capacity."""
    steps = Steps()
    add_hinge(jacket, steps)
    worst = worst_height(jacket)
    steps.add("z", "worst of 11 stations", worst.height, "mm", "section analysis along the height")
    steps.add("M(z)", "M_base − V_o z", worst.demand, "N mm", "statics")
    steps.add("direction", "side in compression", clock_text(worst.direction), "",
              "section analysis")  # fmt: skip
    steps.add("M_n(z)", "bars with the stress that bond has developed at z", worst.capacity, "N mm",
              "section analysis along the height")  # fmt: skip
    return [
        Result(
            "Moment along the height of the repair",
            "between footing and top of repair",
            worst.demand,
            worst.capacity,
            "N mm",
            _CLAUSE,
            steps.lines,
        )
    ]
