"""A limit state as a ratio of demand to capacity between actual values."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import reduce
from typing import Final

import numpy as np

from jacketcheck.chance.realisation import Realisation
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Effort, LimitState
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Kind

__all__ = ["BAR_TARGET", "Limit", "NotApplicableError", "bar_target", "unfactored"]

BAR_TARGET: Final = "column-bar-target"
"""Stands for the variable that `bar_target` names."""


def bar_target(jacket: Jacket) -> str:
    """Variable behind the stress that fractured bars must reach again."""
    return "column-bar-yield" if jacket.judgement.bar_target == "yield" else "column-bar-tensile"


class NotApplicableError(Exception):
    """The jacket has nothing that the limit state is about; never leaves this package."""


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit state whose probability of exceedance is estimated.

    Attributes
    ----------
    id, title
        Limit state that it stands for.
    effort
        What one sample takes, as in `jacketcheck.limit_state.LimitState`.
    event
        What exceeds what, in a line.
    variables
        Random variables that scatter in it; the others are held at their means.
    ratio
        Demand over capacity of each sample [-], resistance factors taken out.
    steady
        Whether the ratio has no jumps, so that a first-order index says something: seams that slip
        let go of pressure at once.
    """

    id: str
    title: str
    effort: Effort
    event: str
    variables: tuple[str, ...]
    ratio: Callable[[Realisation], Real]
    steady: bool = True


def unfactored(
    limit_state: LimitState,
    *,
    resistance_factor: float = 1.0,
    model: str = "",
    clause: str = "",
    without: tuple[str, ...] = (),
) -> Callable[[Realisation], Real]:
    """Ratio of a built-in limit state between actual values.

    Parameters
    ----------
    limit_state
        Limit state; the largest of its ratios counts.
    resistance_factor
        Factor that its capacity holds and that is taken out.
    model
        Random variable that its capacity is multiplied with; none by default.
    clause
        Beginning of the clause of the rows that count; all by default.
    without
        Beginnings of the clauses of rows that do not count.
    """

    def ratio(sample: Realisation) -> Real:
        rows = limit_state.evaluate(sample.jacket)
        limits = [row for row in rows if row.kind is Kind.LIMIT]
        counted = [
            row
            for row in limits
            if row.clause.startswith(clause) and not row.clause.startswith(without)
        ]
        if not counted:
            reasons = [note for row in rows for note in row.notes] or ["no verdict"]
            raise NotApplicableError(reasons[0])
        worst: Real = reduce(np.maximum, (row.ratio for row in counted))
        capacity = sample.factors[model] if model else 1.0
        return np.multiply(worst, resistance_factor) / capacity

    return ratio
