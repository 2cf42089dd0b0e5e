"""The jacket as one frozen record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from jacketcheck.catalog.bond_models import BondModel
from jacketcheck.inputs.actions import Judgement
from jacketcheck.jacket._roles import label
from jacketcheck.jacket.column_parts import DamagedColumn, FootingBlock
from jacketcheck.jacket.jacket_parts import AddedBarLayer, BoltGroup, Grout, Hole, Sleeve, Splice
from jacketcheck.jacket.model_factors import AS_PREDICTED, ModelFactors
from jacketcheck.mechanics._arguments import ColumnFace, HoleType, Surface
from jacketcheck.mechanics._arrays import Real

__all__ = ["Demands", "Jacket"]


@dataclass(frozen=True, slots=True)
class Demands:
    """What acts: axial compression [N]; axial strain [-] and displacement [mm] where given."""

    axial_load: Real
    axial_strain: Real | None
    displacement: Real | None


@dataclass(frozen=True, slots=True)
class Jacket:
    """A bolted, grouted steel jacket around the base of a damaged column.

    Attributes
    ----------
    repair_height
        Footing top to the top of the repair [mm].
    surface
        Preparation of the column's surface where nothing else is recorded.
    column_face
        ``roughened`` or ``smooth``: the column's face against the grout.
    models
        Factors on what the analyses predict: 1 for a design.
    memo
        Analyses that limit states share, kept so that each is done once; not part of the value,
        and never carried over by `dataclasses.replace`.
    """

    title: str = label()
    column: DamagedColumn = field(kw_only=True)
    repair_height: Real = field(kw_only=True)
    surface: Surface = field(kw_only=True)
    column_face: ColumnFace = field(kw_only=True)
    sleeve: Sleeve = field(kw_only=True)
    splice: Splice = field(kw_only=True)
    bolts: BoltGroup = field(kw_only=True)
    grout: Grout = field(kw_only=True)
    added_bars: AddedBarLayer | None = field(kw_only=True)
    footing: FootingBlock | None = field(kw_only=True)
    demands: Demands = field(kw_only=True)
    judgement: Judgement = field(kw_only=True)
    bond_model: BondModel = field(kw_only=True)
    models: ModelFactors = field(default=AS_PREDICTED, kw_only=True)
    memo: dict[Any, Any] = field(
        default_factory=dict, init=False, repr=False, compare=False, hash=False
    )

    @property
    def holes(self) -> dict[str, Hole]:
        """Bolt holes by ply; one entry, without a name, where all plies have the same."""
        sleeve, splice = self.sleeve.hole, self.splice.hole
        if sleeve.kind == splice.kind:
            return {"": sleeve}
        return {"sleeve": sleeve, "splice plates": splice}

    def least_hole(self, factor: Callable[[HoleType], float]) -> HoleType:
        """Hole type of the ply for which a factor is smallest, as it decides for slip.

        A bolt clamps all plies with one tension: the ply in which least is clamped slips first.
        """
        kinds: tuple[HoleType, ...] = (self.sleeve.hole.kind, self.splice.hole.kind)
        return min(kinds, key=factor)

    @property
    def grip(self) -> Real:
        """Thickness of the plates, fillers included, that a bolt clamps [mm]."""
        plates = np.add(self.sleeve.thickness, self.splice.total_thickness)
        grip: Real = np.add(plates, self.splice.filler_thickness)
        return grip

    @property
    def outer_diameter(self) -> Real:
        """Outside diameter of the sleeve [mm]."""
        return self.sleeve.inner_diameter + 2.0 * np.asarray(self.sleeve.thickness)
