"""Development of the added bars in the repair, in grout that the seams hold together or not."""

from __future__ import annotations

from dataclasses import dataclass

from jacketcheck.analysis.added_bars import (
    added_bar_conditions,
    added_bar_steels,
    lap_length,
)
from jacketcheck.analysis.memo import remembered_for_all
from jacketcheck.analysis.retained import retained
from jacketcheck.catalog.bond_models import grouted_law, law_where_held
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.mechanics.bond_development import bonded_length
from jacketcheck.mechanics.bond_law import BondLaw

__all__ = ["RepairAnchorage", "repair_anchorage"]


@dataclass(frozen=True, eq=False)
class RepairAnchorage:
    """Development of the added bars in the repair, from their top downwards.

    Attributes
    ----------
    law
        Local bond law in the grout, without pressure.
    splits
        Whether the seams slip, so that the grout may split.
    offset
        Greatest distance from an added bar to the column bar beside it [mm].
    available_length
        Length above the gap less that offset [mm].
    needed_length
        Length that develops the target stress [mm]; infinite where none does.
    """

    law: BondLaw
    splits: Real
    offset: Real
    available_length: Real
    needed_length: Real


@remembered_for_all
def repair_anchorage(jacket: Jacket) -> RepairAnchorage:
    """Development of the added bars in the repair."""
    if jacket.added_bars is None:
        raise NotEvaluatedError("there are no added bars")
    added, lap, splits = jacket.added_bars, lap_length(jacket), retained(jacket).slips
    law = law_where_held(grouted_law, added_bar_conditions(jacket), splits=splits)
    return RepairAnchorage(
        law=law,
        splits=splits,
        offset=lap.offset,
        available_length=lap.available,
        needed_length=bonded_length(
            added.layer.steel.expected_yield,
            bar_diameter=added.layer.diameter,
            law=law,
            steel=added_bar_steels(added),
        ),
    )
