"""What a reader of an estimate must know, and what the estimate leaves out."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.limits import COVERED, WITHOUT_PROBABILITY
from jacketcheck.chance.model import Model
from jacketcheck.host.host import Host

__all__ = ["left_out", "remarks"]

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
    limits: Sequence[Limit], model: Model, *, only: Collection[str] | None = None
) -> tuple[str, ...]:
    """Notes on an estimate of some limit states."""
    notes = [_CONDITION, _ONE_VALUE]
    if only is not None:
        notes.append("only what was asked for is counted, for the repair as a whole too")
    elif not model.settings.section_samples:
        notes.append(
            "without section samples the repair as a whole leaves out everything that needs a "
            "section analysis: base, column, displacement"
        )
    if any("axial-strain" in limit.variables for limit in limits):
        notes.append(_strain_note(model.strain))
    lapped = model.jacket.added_bars is not None
    if lapped and any("added-bar-tensile" in limit.variables for limit in limits):
        notes.append(_lap_note(model.strain))
    demand = model.jacket.demands.displacement
    if demand is not None and any(limit.id == "displacement-capacity" for limit in limits):
        notes.append("the displacement demand is taken as written, without scatter")
    return (*notes, _JUDGEMENT)


def left_out(
    host: Host | None, *, only: Collection[str] | None, with_sections: bool
) -> dict[str, str]:
    """Limit states without a probability, with reasons."""
    reasons = dict(WITHOUT_PROBABILITY)
    if not with_sections:
        reason = "needs section analyses, of which no sample was asked for (section samples)"
        reasons |= {limit.id: reason for limit in COVERED if limit.effort == "sections"}
    if only is not None:
        reasons |= {limit.id: "was not asked for" for limit in COVERED if limit.id not in only}
    known = {limit.id for limit in COVERED} | set(reasons)
    for one in () if host is None else host.registered:
        if one.limit_state.id not in known:
            reasons[one.limit_state.id] = f"of plug-in {one.plugin.name}: no scatter is known of it"
    return reasons
