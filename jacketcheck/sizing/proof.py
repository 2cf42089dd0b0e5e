"""Why nothing cheaper works: every cheaper design of the grid, and what became of it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.pareto import beats

__all__ = ["Proof", "prove"]


@dataclass(frozen=True, slots=True)
class Proof:
    """What became of the designs that take at most as much in everything, and less in something.

    Attributes
    ----------
    cheaper
        Number of these designs. Those that cannot be built take nothing and are not among them.
    closed_form
        How many a closed-form limit state rules out under the least demand, by limit state.
    bond
        How many bond rules out under the least demand, by limit state.
    sections
        How many the evaluation with section analysis rules out, by limit state.
    not_evaluated
        How many could not be evaluated, by limit state.
    """

    cheaper: int
    closed_form: dict[str, int]
    bond: dict[str, int]
    sections: dict[str, int]
    not_evaluated: dict[str, int]

    @property
    def is_proven(self) -> bool:
        """Whether every cheaper design was ruled out."""
        return not self.not_evaluated

    @property
    def is_closed_form(self) -> bool:
        """Whether closed-form limit states alone rule every cheaper design out."""
        return self.cheaper == sum(self.closed_form.values())


def prove(cost: Floats, fates: Fates) -> Proof:
    """Account for every design of the grid that beats one of a given cost.

    Parameters
    ----------
    cost
        Objectives of the design, shape (3,).
    fates
        What became of all designs, after the search.
    """
    cheaper = np.flatnonzero(beats(fates.costs, cost))
    unknown = fates.reasons_of(cheaper, Fate.NOT_EVALUATED)
    return Proof(
        cheaper=int(cheaper.size),
        closed_form=fates.reasons_of(cheaper, Fate.CLOSED_FORM),
        bond=fates.reasons_of(cheaper, Fate.BOND),
        sections=fates.reasons_of(cheaper, Fate.SECTIONS),
        not_evaluated=unknown,
    )
