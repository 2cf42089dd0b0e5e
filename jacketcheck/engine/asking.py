"""Asking one limit state for its answer: our own directly, anyone else's in isolation."""

from __future__ import annotations

import copy
from typing import Any, TypeAlias

import numpy as np

from jacketcheck.analysis.memo import Analysis, sharing
from jacketcheck.engine.validation import contract_problem
from jacketcheck.host.errands import Counter
from jacketcheck.host.host import Registered
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT, Outcome, call_isolated, describe
from jacketcheck.jacket.designs import design_count, has_designs
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import LimitState
from jacketcheck.results import Result

__all__ = ["Answer", "answer_of"]

Answer: TypeAlias = tuple[Result, ...] | str
"""Results that keep the contract, or how it was broken."""


def answer_of(
    one: Registered, jacket: Jacket, *, seconds: float = DEFAULT_TIME_LIMIT, steps: bool = True
) -> Outcome[Answer]:
    """Evaluate a limit state, whatever it does.

    A foreign one gets a copy of the jacket: neither a call that goes on after its time nor one
    that writes past the frozen records can touch what the other limit states are given. Analyses
    of the package are done once, for the original, in our own thread and off the foreign clock;
    what is handed out is again a copy. Without `steps` our own rows come without theirs.
    """
    if one.plugin.built_in:
        return _directly(one.limit_state, jacket, steps=steps)
    counter = Counter()

    def shared(analysis: Analysis) -> Any:
        return counter.ask(_copied, analysis, jacket)

    own = sharing(jacket, shared)
    return call_isolated(
        _answer,
        one.limit_state,
        own,
        name=f"{one.plugin.name}: {one.limit_state.provisions}/{one.limit_state.id}",
        seconds=seconds,
        counter=counter,
    )


def _copied(analysis: Analysis, jacket: Jacket) -> Any:
    with np.errstate(all="ignore"):
        return copy.deepcopy(analysis(jacket))


def _directly(limit_state: LimitState, jacket: Jacket, *, steps: bool) -> Outcome[Answer]:
    """Call a limit state of our own: no thread, and nothing that needs to be kept apart."""
    try:
        return Outcome(_answer(limit_state, jacket, steps=steps))
    except Exception as error:  # noqa: BLE001 - one broken check must not hide the others
        return Outcome(problem=describe(error), error=error)


def _answer(limit_state: LimitState, jacket: Jacket, *, steps: bool = True) -> Answer:
    shape = (design_count(jacket),) if has_designs(jacket) else ()
    with np.errstate(all="ignore"):  # what comes of it is judged by the contract
        return contract_problem(limit_state.evaluate(jacket), shape, steps=steps)
