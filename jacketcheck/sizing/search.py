"""Second look at the designs that no closed form rules out: cheapest first, until none is left."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.analysis.memo import some_designs
from jacketcheck.engine.ratios import ratios_of_designs
from jacketcheck.host.host import Host
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.many import Indexes
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.batches import Batches
from jacketcheck.sizing.fates import Fate, Fates
from jacketcheck.sizing.pareto import beaten_by, cheapest_first, front
from jacketcheck.sizing.screening import Tick, judge, limit_states_of, no_tick
from jacketcheck.sizing.space import Space
from jacketcheck.sizing.tally import Tally

__all__ = ["Found", "search"]

_AT_A_TIME: Final = 64
_ANALYSED: Final = "section analysis"


@dataclass
class Found:
    """Outcome of a search.

    Attributes
    ----------
    front
        Designs that work and that none of the others beats, cheapest first.
    bond, full
        How near designs come to the limit states of bond under the least demand, and to all limit
        states in the full evaluation.
    worst_ratio
        Largest ratio, as far as it was evaluated, of each design that came to section analysis.
    analysed
        Number of designs that came to section analysis.
    """

    front: Indexes = field(default_factory=lambda: np.empty(0, dtype=np.intp))
    bond: Tally = field(default_factory=Tally)
    full: Tally = field(default_factory=Tally)
    worst_ratio: dict[int, float] = field(default_factory=dict)
    analysed: int = 0


def search(
    space: Space,
    fates: Fates,
    *,
    host: Host,
    provisions: Sequence[str],
    most: int,
    tick: Tick = no_tick,
) -> Found:
    """Find the designs that work and that no other one beats, among those still in question.

    Parameters
    ----------
    space, fates
        Designs, and what the screening has found of them; the fates are carried on.
    host, provisions
        What designs must satisfy.
    most
        Designs that may come to section analysis.
    tick
        Told how far the work is.

    Notes
    -----
    Designs are taken in the order of their costs, so that whatever beats a design comes before it.
    One that a working design beats or equals needs no evaluation: it cannot be in the front. The
    front is exact: every design outside was ruled out, could not be evaluated, or is beaten. Where
    the number of evaluations runs out, the remaining designs count as not reached.
    """
    run = _Run(space, fates, host, tuple(provisions), most, tick)
    run.to_the_end()
    works = fates.having(Fate.WORKS)
    run.found.front = works[front(fates.costs[works])]
    return run.found


@dataclass
class _Run:
    """One search under way."""

    space: Space
    fates: Fates
    host: Host
    provisions: tuple[str, ...]
    most: int
    tick: Tick
    found: Found = field(default_factory=Found)

    def to_the_end(self) -> None:
        """Take designs batch by batch until none is in question."""
        fates = self.fates
        while (waiting := fates.having(Fate.OPEN)).size:
            self._drop_beaten(waiting)
            waiting = fates.having(Fate.OPEN)
            room = self.most - self.found.analysed
            if room <= 0:
                fates.decide(waiting, Fate.NOT_REACHED)
                break
            if waiting.size:
                self._look_at(self._cheapest(waiting)[: min(room, _AT_A_TIME)])
            done = self.space.count - fates.count(Fate.OPEN)
            self.tick(_ANALYSED, done, self.space.count)

    def _drop_beaten(self, waiting: Indexes) -> None:
        costs = self.fates.costs
        works = self.fates.having(Fate.WORKS)
        best = works[front(costs[works])]
        self.fates.decide(waiting[beaten_by(costs[waiting], costs[best])], Fate.BEATEN)

    def _cheapest(self, waiting: Indexes) -> Indexes:
        """Waiting designs in order; of equal ones that which is least worked goes first."""
        costs, least = self.fates.costs[waiting], self.fates.least_ratio[waiting]
        return waiting[cheapest_first(costs, least)]

    def _look_at(self, designs: Indexes) -> None:
        """Evaluate designs in steps, each only for what the steps before have left."""
        quick = self._names("closed-form") | self._names("bond")
        rest = self._names("closed-form", "bond", others=True)
        for jacket, some in self._jackets(designs):
            left = _Left(jacket, some)
            self._step(left, self._names("bond"), Fate.BOND, least_demand=True)
            self.found.analysed += left.designs.size
            # with the strain that the section analysis of the base finds
            self._step(left, quick, Fate.SECTIONS)
            self._step(left, rest, Fate.SECTIONS)
            known = np.array([one in self.found.worst_ratio for one in left.designs.tolist()], bool)
            self.fates.decide(left.designs[known], Fate.WORKS)
            # no limit state has spoken about them: nothing to go by is no pass
            self.fates.decide(left.designs[~known], Fate.NOT_EVALUATED, "no limit state")

    def _step(
        self, left: _Left, names: frozenset[str], rejection: Fate, *, least_demand: bool = False
    ) -> None:
        if not (names and left.designs.size):
            return
        jacket = with_least_demand(left.jacket) if least_demand else left.jacket
        ratios = ratios_of_designs(jacket, host=self.host, provisions=self.provisions, only=names)
        tally = self.found.bond if least_demand else self.found.full
        worst = judge(ratios, left.designs, self.fates, tally, rejection)
        if not least_demand:
            self._keep_worst(left.designs, worst)
        left.keep(self.fates.fate[left.designs] == Fate.OPEN)

    def _keep_worst(self, designs: Indexes, worst: Floats) -> None:
        kept = self.found.worst_ratio
        for design, ratio in zip(designs.tolist(), worst.tolist(), strict=True):
            if ratio > -np.inf:
                kept[design] = max(kept.get(design, 0.0), ratio)

    def _names(self, *efforts: Effort, others: bool = False) -> frozenset[str]:
        """Limit states of some efforts, or all others."""
        chosen = frozenset[str]().union(
            *(limit_states_of(self.host, self.provisions, effort) for effort in efforts)
        )
        if not others:
            return chosen
        known = {
            one.limit_state.id for name in self.provisions for one in self.host.limit_states(name)
        }
        return frozenset(known) - chosen

    def _jackets(self, designs: Indexes) -> Iterator[tuple[Jacket, Indexes]]:
        """Jackets of some designs, brought together as far as they can be."""
        batches = Batches(_AT_A_TIME)
        for combination, places in self.space.grouped(designs):
            inner = designs[places] - combination.first
            built = combination.assemble(inner, catalog=self.space.catalog)
            assert built.jacket is not None  # noqa: S101 - screening has built them before
            yield from batches.add(built.jacket, designs[places][built.indexes])
        yield from batches.rest()


class _Left:
    """Designs of one jacket that are still in question."""

    def __init__(self, jacket: Jacket, designs: Indexes) -> None:
        self.jacket, self.designs = jacket, designs

    def keep(self, flags: NDArray[np.bool_]) -> None:
        """Leave the others out."""
        places = np.flatnonzero(flags)
        if 0 < places.size < self.designs.size:
            self.jacket = some_designs(self.jacket, places)
        self.designs = self.designs[places]
