"""Column and base, by section analyses: one sample at a time."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.analysis.base import base_section
from jacketcheck.analysis.displacement import capacity_of_original, capacity_of_repaired
from jacketcheck.analysis.height import worst_height
from jacketcheck.analysis.hinge import hinge
from jacketcheck.chance.limit import Limit, NotApplicableError, unfactored
from jacketcheck.chance.realisation import Realisation
from jacketcheck.chance.variables import NAMES
from jacketcheck.limit_states.clearances import sleeve_gap
from jacketcheck.limit_states.column_shear import column_shear, repair_shear
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.guide_spec_column_shear import GUIDE_SPEC_SHEAR_FACTOR
from jacketcheck.results import demand_capacity_ratio

__all__ = ["COLUMN_LIMITS"]

_SHARE_FOR_DESIGN: Final = 0.85
_PLATES: Final = ("bolt-strength", "splice-yield", "sleeve-tensile", "splice-tensile", "bolt-shear",
                  "bolted-plate")  # fmt: skip
_SECTIONS: Final = tuple(
    name for name in NAMES if name not in {*_PLATES, "anchorage", "column-shear", "displacement"}
)


def _base_moment(sample: Realisation) -> Real:
    capacity = np.multiply(
        sample.factors["section-strength"], base_section(sample.jacket).moment_capacity
    )
    return demand_capacity_ratio(hinge(sample.jacket).base_moment, capacity)


def _moment_along_height(sample: Realisation) -> Real:
    worst = worst_height(sample.jacket)
    capacity = np.multiply(sample.factors["section-strength"], worst.capacity)
    return demand_capacity_ratio(worst.demand, capacity)


def _load_capacity(sample: Realisation) -> Real:
    jacket, column = sample.jacket, sample.jacket.column
    original, repaired = capacity_of_original(jacket), capacity_of_repaired(jacket)
    base = np.multiply(sample.factors["section-strength"], base_section(jacket).moment_capacity)
    top = original.plastic_moment if column.curvature == "double" else 0.0
    at_base = np.add(base, top) / column.height
    return demand_capacity_ratio(original.shear, np.minimum(repaired.shear, at_base))


def _displacement(sample: Realisation) -> Real:
    demand = sample.jacket.demands.displacement
    if demand is None:
        raise NotApplicableError("no displacement demand was given (actions.displacement_demand)")
    capacity = capacity_of_repaired(sample.jacket).displacement
    return demand_capacity_ratio(demand, np.multiply(sample.factors["displacement"], capacity))


COLUMN_LIMITS: Final = (
    Limit(
        id="base-moment",
        title="Moment at the base against the relocated hinge",
        effort="sections",
        event="moment that the hinge's largest moment brings to the footing exceeds the strength "
        "of the base",
        variables=_SECTIONS,
        ratio=_base_moment,
    ),
    Limit(
        id="moment-along-height",
        title="Moment along the height of the repair",
        effort="sections",
        event="the same between footing and hinge, with what bond has developed there",
        variables=_SECTIONS,
        ratio=_moment_along_height,
    ),
    Limit(
        id="load-capacity",
        title="Lateral load capacity restored",
        effort="sections",
        event="lateral strength of the original column exceeds that of the repaired one",
        variables=_SECTIONS,
        ratio=_load_capacity,
    ),
    Limit(
        id="displacement-capacity",
        title="Displacement capacity",
        effort="sections",
        event="displacement demand as written exceeds the capacity",
        variables=(*_SECTIONS, "displacement"),
        ratio=_displacement,
    ),
    Limit(
        id="column-shear",
        title="Shear of the column above the repair",
        effort="sections",
        event="shear of the hinge's largest moment exceeds the degrading strength of the column",
        variables=(*_SECTIONS, "column-shear"),
        ratio=unfactored(
            column_shear,
            resistance_factor=_SHARE_FOR_DESIGN,
            model="column-shear",
            clause="Kowalsky",
        ),
    ),
    Limit(
        id="repair-shear",
        title="Shear of the column inside the repair",
        effort="sections",
        event="the same shear exceeds the hoop action of the sleeve alone at its actual yield "
        "strength",
        variables=(*_SECTIONS, "column-shear"),
        ratio=unfactored(
            repair_shear, resistance_factor=GUIDE_SPEC_SHEAR_FACTOR, model="column-shear"
        ),
    ),
    Limit(
        id="sleeve-gap",
        title="Gap under the sleeve",
        effort="sections",
        event="rotation of the base closes the gap, so that the sleeve takes axial load",
        variables=_SECTIONS,
        ratio=unfactored(sleeve_gap, clause="geometry"),
    ),
)
