"""Development of the added bars in the repair, in grout that the sleeve holds as far as it can."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.analysis.added_bars import (
    added_bar_conditions,
    added_bar_steels,
    lap_length,
)
from jacketcheck.analysis.kept import held_share
from jacketcheck.analysis.memo import remembered_for_all
from jacketcheck.analysis.retained import retained
from jacketcheck.catalog.bond_models import grouted_law, law_as_held
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics import clamping
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bond_development import (
    DevelopmentCurve,
    bonded_length,
    development_curve,
)
from jacketcheck.mechanics.bond_law import LocalBondLaw

__all__ = ["RepairAnchorage", "development_as_held", "repair_anchorage"]


@dataclass(frozen=True, eq=False)
class RepairAnchorage:
    """Development of the added bars in the repair, from their top downwards.

    Attributes
    ----------
    law
        Local bond law in the grout, without pressure where it is held.
    kept_pressure, needed_pressure
        Pressure that the sleeve keeps at the circle of the bars, and that they need there so that
        the grout does not split [MPa].
    held_share
        Share of a bar's surface that the former holds [-].
    offset
        Greatest distance from an added bar to the column bar beside it [mm].
    available_length
        Length above the gap less that offset [mm].
    needed_length
        Length that develops the target stress [mm]; infinite where none does.
    """

    law: LocalBondLaw
    kept_pressure: Real
    needed_pressure: Real
    held_share: Real
    offset: Real
    available_length: Real
    needed_length: Real


@remembered_for_all
def repair_anchorage(jacket: Jacket) -> RepairAnchorage:
    """Development of the added bars in the repair.

    What they need is found by the rule for fractured bars, at their yield strength and with the
    grout around them.
    """
    if jacket.added_bars is None:
        raise NotEvaluatedError("there are no added bars")
    added, lap = jacket.added_bars, lap_length(jacket)
    layer, conditions = added.layer, added_bar_conditions(jacket)
    kept = np.multiply(retained(jacket).pressure, jacket.sleeve.inner_radius) / layer.circle_radius
    need = clamping.required_clamping_pressure(
        np.multiply(layer.area, layer.steel.expected_yield),
        anchorage_length=np.maximum(lap.available, 1.0),
        crack_perimeter=clamping.crack_perimeter(
            layer.count,
            bar_circle_diameter=np.multiply(2.0, layer.circle_radius),
            bar_diameter=layer.diameter,
            cover=conditions.grout_cover,
        ),
        friction_coefficient=jacket.judgement.crack_friction,
    )
    share = held_share(kept, need)
    law = law_as_held(grouted_law, conditions, share=share)
    return RepairAnchorage(
        law=law,
        kept_pressure=kept,
        needed_pressure=need,
        held_share=share,
        offset=lap.offset,
        available_length=lap.available,
        needed_length=bonded_length(
            layer.steel.expected_yield,
            bar_diameter=layer.diameter,
            law=law,
            steel=added_bar_steels(added),
        ),
    )


@remembered_for_all
def development_as_held(jacket: Jacket) -> DevelopmentCurve:
    """Stress that an added bar develops over any length, the grout held as far as it is."""
    if jacket.added_bars is None:
        raise NotEvaluatedError("there are no added bars")
    return development_curve(
        bar_diameter=jacket.added_bars.layer.diameter,
        law=repair_anchorage(jacket).law,
        steel=added_bar_steels(jacket.added_bars),
    )
