"""The whole input file as one model."""

from __future__ import annotations

from pydantic import Field

from jacketcheck.inputs.actions import Actions, Judgement
from jacketcheck.inputs.base import InputModel, Text
from jacketcheck.inputs.chance import Chance
from jacketcheck.inputs.column import Column, Damage
from jacketcheck.inputs.jacket import AddedBars, Bolts, Footing, Grout, Repair, Sleeve, Splice
from jacketcheck.inputs.sizing import Sizing
from jacketcheck.units import DisplaySystem

__all__ = ["Job", "RepairInput"]


class Job(InputModel):
    """Who and what; printed, never computed with."""

    title: Text = Field(min_length=1, description="Name of the structure and the column.")
    number: Text = Field(default="", description="Job number.")
    engineer: Text = Field(default="", description="Who prepared the input.")
    note: Text = Field(default="", description="Anything a reader should know.")
    variant: Text = Field(
        default="as written",
        min_length=1,
        max_length=60,
        description="What the file without overrides is called beside its variants.",
    )
    units: DisplaySystem = Field(
        default="si", description="Units of the printed results; input may use any."
    )


class RepairInput(InputModel):
    """One repair: a damaged column and the jacket around its base."""

    job: Job
    column: Column
    damage: tuple[Damage, ...] = Field(default=(), max_length=200)
    repair: Repair
    sleeve: Sleeve
    splice: Splice
    bolts: Bolts
    grout: Grout
    added_bars: AddedBars | None = None
    footing: Footing | None = None
    actions: Actions
    judgement: Judgement = Field(default_factory=Judgement)
    sizing: Sizing | None = None
    chance: Chance | None = None

    @property
    def breakout_is_open(self) -> bool:
        """Whether breakout of the added bars is said to be precluded, and not shown."""
        added = self.added_bars
        return added is not None and added.breakout_precluded and not added.anchor_reinforcement
