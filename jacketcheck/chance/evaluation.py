"""Ratios of samples: the limit states themselves, asked about a jacket whose fields are samples."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.shear import shear_force
from jacketcheck.chance.events import Event
from jacketcheck.engine.dividing import Indexes, ask_designs
from jacketcheck.engine.evaluate import Answered
from jacketcheck.errors import DomainError
from jacketcheck.host.host import Host
from jacketcheck.jacket.designs import design_count
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind, Result

__all__ = ["Evaluation", "strained"]

_MOST_DIVISIONS: Final = 256
"""Divisions of a block of samples, with what they cost: enough to find some hundred that cannot be
evaluated one by one where the formula says which they are, and some twenty where it does not."""
_NO_RATIO: Final = "the ratio is not a number"
_NO_RULE: Final = "none of the rules that count stands among its limits"


@dataclass(frozen=True, eq=False)
class Evaluation:
    """How samples are evaluated, and what was in the way.

    Attributes
    ----------
    host
        Where limit states come from.
    failures
        Why samples of an event could not be evaluated, by event.
    lacking
        Events that were refused for another reason than the range of a formula.
    hopeless
        Events that lack something in every sample, which are not asked any more.
    not_applicable
        Events that the jacket has nothing for, with the reason.
    """

    host: Host
    failures: dict[str, str] = field(default_factory=dict)
    lacking: set[str] = field(default_factory=set)
    hopeless: set[str] = field(default_factory=set)
    not_applicable: dict[str, str] = field(default_factory=dict)

    def ratios(
        self, events: Sequence[Event], samples: Jacket, factors: Mapping[str, Real], *, size: int
    ) -> dict[str, Floats]:
        """Demand over capacity between actual values by event, shape (size,); NaN without one.

        Parameters
        ----------
        events
            What is asked.
        samples
            Jacket with actual values.
        factors
            Factors of all variables, those on capacities among them.
        size
            Number of samples.

        Notes
        -----
        A formula refuses many samples for the sake of one: they are divided until those stand
        alone, or until that takes too long; then whatever is left beside them has no ratio either.
        """
        # where nothing scatters, one sample stands for all
        count = design_count(samples)
        found = {event.id: np.full(count, np.nan) for event in events}
        by_provisions: dict[str, dict[str, Event]] = {}
        for event in [one for one in events if one.id not in self.hopeless]:
            by_provisions.setdefault(event.provisions, {})[event.limit_state] = event
        with np.errstate(all="ignore"):  # what comes of it shows in the ratio
            for provisions, asked in by_provisions.items():

                def take(answer: Answered, indexes: Indexes, asked: Any = asked) -> None:
                    event = asked[answer.limit_state]
                    factor = factors[event.model] if event.model else 1.0
                    model = np.broadcast_to(factor, count)[indexes]
                    found[event.id][indexes] = self._ratio(event, answer, model)

                ask_designs(
                    samples,
                    host=self.host,
                    provisions=provisions,
                    only=set(asked),
                    take=take,
                    most_divisions=_MOST_DIVISIONS,
                )
        return {name: np.broadcast_to(ratio, size) for name, ratio in found.items()}

    def _ratio(self, event: Event, answer: Answered, model: Floats) -> Floats:
        """The largest ratio of the limits that count, resistance factors and biases taken out.

        `model` is the factor of the event's model, by sample.
        """
        size = model.size
        if answer.refused:
            if not isinstance(answer.refusal, DomainError):
                self.lacking.add(event.id)
            if size > 1:
                told = f"{_in_words(answer)}; samples drawn with it are counted with it"
                self.failures[event.id] = told
            else:
                self.failures.setdefault(event.id, _in_words(answer))
            return np.full(size, np.nan)
        limits = [row for row in answer.results if row.kind is Kind.LIMIT]
        counted = [row for row in limits if not event.rules or row.rule in event.rules]
        if not counted:
            self.not_applicable[event.id] = _why_none(answer.results, limits)
            return np.full(size, np.nan)
        worst: Floats = np.full(size, -np.inf)
        for row in counted:
            ratio = row.ratio_between_actual_values
            own = not event.model_rules or row.rule in event.model_rules
            worst = np.maximum(worst, np.divide(ratio, model) if own else ratio)
        if np.any(np.isnan(worst)):
            self.failures.setdefault(event.id, _NO_RATIO)
        return worst


def _why_none(results: Sequence[Result], limits: Sequence[Result]) -> str:
    if limits:
        return _NO_RULE
    return next((note for row in results for note in row.notes), "no verdict")


def _in_words(answer: Answered) -> str:
    """Why a sample could not be evaluated, for an engineer."""
    error = answer.refusal
    if not isinstance(error, DomainError):
        return answer.reason
    value = f"{error.value:.4g}" if isinstance(error.value, float) else str(error.value)
    name = error.name.replace("_", " ")
    return f"outside the range of a formula: {name} {value}, which must be {error.allowed}"


def strained(samples: Jacket, strain: CheckedStrain, *, share: float, shear: Real) -> Jacket:
    """The samples without need of a section analysis: what limit states take from one is given.

    Parameters
    ----------
    samples
        Jacket with actual values.
    strain
        Checked axial strain of each, the model's factor included.
    share
        Share of the added bars in tension [-].
    shear
        Shear of the relocated hinge [N].
    """
    known: dict[Any, Any] = {checked_axial_strain: strain, shear_force: shear}
    if samples.added_bars is not None:
        known[tension_share] = share
    return assuming(samples, known)
