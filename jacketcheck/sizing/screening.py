"""First look at every design of a search: whether it can be built, and the closed-form checks."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final, TypeAlias

import numpy as np

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.engine.ratios import DesignRatios, ratios_of_designs
from jacketcheck.host.host import Host
from jacketcheck.inputs.sizing import FieldWork
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.many import Indexes
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.batches import Batches
from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.objectives import objectives
from jacketcheck.sizing.space import Combination, Space
from jacketcheck.sizing.tally import Tally

__all__ = ["Tick", "judge", "limit_states_of", "no_tick", "screen"]

Tick: TypeAlias = Callable[[str, int, int], None]
"""Told what is being done, how much is done, and of how much."""

_BATCH: Final = 4000


def no_tick(what: str, done: int, total: int) -> None:
    """Tell nobody how far the work is."""


def limit_states_of(host: Host, provisions: Sequence[str], effort: Effort) -> frozenset[str]:
    """Limit states that take an effort in every set of provisions that has them."""
    efforts: dict[str, set[Effort]] = {}
    for name in provisions:
        for one in host.limit_states(name):
            efforts.setdefault(one.limit_state.id, set()).add(one.limit_state.effort)
    return frozenset(name for name, found in efforts.items() if found == {effort})


def screen(
    space: Space,
    work: FieldWork,
    *,
    host: Host,
    provisions: Sequence[str],
    tick: Tick = no_tick,
) -> tuple[Fates, Tally]:
    """Find out which designs can be built, what they take, and which no closed form rules out.

    Returns
    -------
    tuple
        Fates, with the designs that are still in question as `Fate.OPEN`; and how near the designs
        come to each closed-form limit state under the least demand.
    """
    fates, tally = Fates.of(space.count), Tally()
    names = limit_states_of(host, provisions, "closed-form")
    batches = Batches(_BATCH)
    done = 0

    def evaluate(jacket: Jacket, designs: Indexes) -> None:
        found = ratios_of_designs(
            with_least_demand(jacket), host=host, provisions=provisions, only=names
        )
        fates.least_ratio[designs] = judge(found, designs, fates, tally, Fate.CLOSED_FORM)

    for combination in space.combinations:
        jacket, designs = _built(combination, space, work, fates)
        if jacket is not None and names:
            for batch in batches.add(jacket, designs):
                evaluate(*batch)
        done += combination.count
        tick("closed form", done, space.count)
    for batch in batches.rest():
        evaluate(*batch)
    return fates, tally


def _built(
    combination: Combination, space: Space, work: FieldWork, fates: Fates
) -> tuple[Jacket | None, Indexes]:
    """Jacket of the designs of a combination that can be built; what they take is written down."""
    found = combination.assemble(np.arange(combination.count), catalog=space.catalog)
    for refusal in found.refusals:
        reason = f"{refusal.path}: {refusal.reason}" if refusal.path else refusal.reason
        fates.decide(combination.first + refusal.indexes, Fate.CANNOT_BE_BUILT, reason)
    designs = combination.first + found.indexes
    if found.jacket is not None:
        fates.costs[designs] = objectives(found.jacket, work, count=designs.size)
    return found.jacket, designs


def judge(
    found: DesignRatios, designs: Indexes, fates: Fates, tally: Tally, rejection: Fate
) -> Floats:
    """Write down which designs exceed 1, and which could not be evaluated.

    Parameters
    ----------
    found
        Ratios of the designs.
    designs
        Their numbers.
    fates, tally
        Where to write.
    rejection
        Fate of a design that exceeds 1. One that exceeds 1 somewhere is ruled out even if
        something else could not be evaluated.

    Returns
    -------
    ndarray
        Largest ratio of each design that was found.
    """
    names, ratio = found.by_limit_state()
    tally.add(names, ratio, designs)
    for row, text in found.reasons.items():
        fates.explanations.setdefault(row.limit_state, text)
    if not names:
        return np.zeros(designs.size)
    known = np.where(np.isnan(ratio), -np.inf, ratio)
    worst: Floats = np.max(known, axis=0)
    which = np.argmax(known, axis=0)
    exceeds = worst > 1.0
    fates.exceeded[designs] = np.count_nonzero(known > 1.0, axis=0)
    unknown = np.isnan(ratio).any(axis=0) & ~exceeds
    missing = np.argmax(np.isnan(ratio), axis=0)
    for place, name in enumerate(names):
        fates.decide(designs[exceeds & (which == place)], rejection, name)
        fates.decide(designs[unknown & (missing == place)], Fate.NOT_EVALUATED, name)
    return worst
