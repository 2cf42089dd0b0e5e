"""What a reader of an estimate must know, and what the estimate leaves out."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.events import Event
from jacketcheck.chance.model import Model
from jacketcheck.chance.result import LimitChance

__all__ = ["remarks"]

_CONDITION: Final = (
    "given an earthquake that forms the relocated hinge; not a probability for a year or a life"
)
_ONE_VALUE: Final = (
    "one value of each variable holds for the whole repair: bolts, bars and plates of a kind are "
    "fully correlated"
)
_JUDGEMENT: Final = (
    "scatter marked engineering judgement, or from memory, is to be replaced by the job's own "
    "(chance.variables) where it matters"
)


def _strain_note(strain: BaseStrain) -> str:
    if strain.origin == "declared":
        return "the declared axial strain leads; the strain of the base stays clearly below it"
    if strain.origin == "fitted":
        return (
            "the base's strain follows a fit to the samples with section analyses "
            f"(R² {strain.determination:.2f}, coefficient of variation "
            f"{strain.residual.marginal.variation:.2g} left over); samples whose base does not "
            "hold are counted by base-moment"
        )
    if strain.origin == "largest":
        return (
            "the base's strain is the largest of the few samples with section analyses; more of "
            "them allow a fit"
        )
    return (
        "the base's strain is frozen at its value for mean strengths, which is not on the safe "
        "side: ask for section samples, or declare actions.axial_strain"
    )


def _lap_note(strain: BaseStrain) -> str:
    share = f"laps pull on the sleeve with {strain.tension_share:.2g} of the added bars in tension"
    if strain.origin == "frozen":
        return f"{share}, as with mean strengths"
    return f"{share}, the largest share of any section analysis: the safe side"


def remarks(
    events: Sequence[Event],
    model: Model,
    rows: Sequence[LimitChance],
    *,
    only: Collection[str] | None = None,
) -> tuple[str, ...]:
    """Notes on an estimate of some events."""
    notes = [_CONDITION, _ONE_VALUE]
    if only is not None:
        notes.append("only what was asked for is counted, for the repair as a whole too")
    elif not model.settings.section_samples:
        notes.append(
            "without section samples the repair as a whole leaves out everything that needs a "
            "section analysis: base, column, displacement"
        )
    moved = {driver.name for row in rows if row.effort != "sections" for driver in row.drivers}
    if "axial-strain" in moved:
        notes.append(_strain_note(model.strain))
    if model.jacket.added_bars is not None and "added-bar-tensile" in moved:
        notes.append(_lap_note(model.strain))
    if model.jacket.demands.displacement is not None and any(
        event.effort == "sections" for event in events
    ):
        notes.append("the displacement demand is taken as written, without scatter")
    return (*notes, _JUDGEMENT)
