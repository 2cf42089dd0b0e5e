"""Single designs evaluated anew, within the bounds of a search and beyond them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.engine.ratios import ratios_of_designs
from jacketcheck.host.host import Host
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.many import Indexes
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.batches import Batches
from jacketcheck.sizing.beyond import beyond
from jacketcheck.sizing.screening import limit_states_of
from jacketcheck.sizing.space import Space

__all__ = ["Probe", "Relaxation"]

_WITH_SECTIONS: Final = 4
"""Values tried beyond a bound where each takes a section analysis."""


@dataclass(frozen=True, slots=True)
class Relaxation:
    """What a value beyond a bound does to the limit state that stands in the way.

    Attributes
    ----------
    limit_state
        Its id.
    path
        Field whose bound is passed.
    bound
        Last value within the bounds.
    value
        The nearest value beyond that brings the ratio to 1; where none does, the best one tried.
    ratio_before, ratio
        Ratio of the nearest design within the bounds, and with that value.
    then
        Limit state that is worst then, of those evaluated, and its ratio.
    then_ratio
        Its ratio.
    """

    limit_state: str
    path: str
    bound: Any
    value: Any
    ratio_before: float
    ratio: float
    then: str
    then_ratio: float


class Probe:
    """Evaluates single designs, within the bounds and beyond them."""

    def __init__(self, space: Space, host: Host, provisions: tuple[str, ...]) -> None:
        self._space, self._host, self._provisions = space, host, provisions
        self._cheap = limit_states_of(host, provisions, "closed-form") | limit_states_of(
            host, provisions, "bond"
        )

    def exceeded(self, design: int) -> dict[str, float]:
        """Limit states that a design exceeds in the full evaluation, the worst first."""
        combination, place = self._space.at(design)
        built = combination.assemble(np.array([place]), catalog=self._space.catalog)
        if built.jacket is None:
            return {}
        names, ratio = self._ratios(built.jacket, sections=True)
        found = {n: float(r) for n, r in zip(names, ratio[:, 0], strict=True) if r > 1.0}
        return dict(sorted(found.items(), key=lambda pair: -pair[1]))

    def relaxations(self, limit_state: str, design: int, *, sections: bool) -> Iterator[Relaxation]:
        """What each bound does to a limit state when it is passed, if that helps.

        With section analysis everything is evaluated, else only what is closed form or bond, under
        the least demand.
        """
        before = self._ratio_of(limit_state, design, sections=sections)
        if not np.isfinite(before):
            return
        for axis in self._space.at(design)[0].block.axes:
            for side, bound in self._sides(axis):
                values = side[:_WITH_SECTIONS] if sections else side
                for value, ratios in self._best(limit_state, design, axis, values, sections):
                    then, ratio = _worst(ratios), ratios[limit_state]
                    if (ratios[then] if sections else ratio) < before * (1.0 - 1e-6):
                        yield Relaxation(
                            limit_state, axis.path, bound, value, before, ratio, then, ratios[then]
                        )

    def _sides(self, axis: Axis) -> Iterator[tuple[tuple[Any, ...], Any]]:
        repair = self._space.blocks[-1].repair
        below, above = beyond(axis, repair, catalog=self._space.catalog)
        ordered = axis.values if isinstance(axis.values[0], str) else _in_order(axis.values)
        for side, bound in ((below, ordered[0]), (above, ordered[-1])):
            if side:
                yield side, bound

    def _best(
        self,
        limit_state: str,
        design: int,
        axis: Axis,
        values: tuple[Any, ...],
        sections: bool,  # noqa: FBT001 - handed on
    ) -> Iterator[tuple[Any, dict[str, float]]]:
        """First value that brings the limit state (in full: the worst of all) to 1, else the best.

        None where the limit state cannot be evaluated at any of them.
        """

        def rank(ratios: dict[str, float]) -> float:
            return ratios[_worst(ratios)] if sections else ratios[limit_state]

        rated = [
            (values[place], ratios)
            for place, ratios in self._along(design, axis.with_values(values), sections=sections)
            if np.isfinite(ratios.get(limit_state, np.nan))
        ]
        if rated:
            passing = [one for one in rated if rank(one[1]) <= 1.0]
            yield passing[0] if passing else min(rated, key=lambda one: _weight(rank(one[1])))

    def _along(
        self, design: int, axis: Axis, *, sections: bool
    ) -> list[tuple[int, dict[str, float]]]:
        """Ratios by limit state at each value of one axis, all else as the design has it."""
        line = self._space.beside(design, axis)
        batches = Batches(10_000)
        found: dict[int, dict[str, float]] = {}

        def evaluate(jacket: Jacket, places: Indexes) -> None:
            names, ratio = self._ratios(jacket, sections=sections)
            for column, place in enumerate(places.tolist()):
                found[place] = dict(zip(names, ratio[:, column].tolist(), strict=True))

        for combination in line.combinations:
            built = combination.assemble(np.arange(combination.count), catalog=line.catalog)
            if built.jacket is not None:
                for batch in batches.add(built.jacket, combination.first + built.indexes):
                    evaluate(*batch)
        for batch in batches.rest():
            evaluate(*batch)
        return sorted(found.items())

    def _ratio_of(self, limit_state: str, design: int, *, sections: bool) -> float:
        combination, place = self._space.at(design)
        built = combination.assemble(np.array([place]), catalog=self._space.catalog)
        if built.jacket is None:
            return np.nan
        names, ratio = self._ratios(built.jacket, sections=sections)
        return float(ratio[names.index(limit_state), 0]) if limit_state in names else np.nan

    def _ratios(self, jacket: Jacket, *, sections: bool) -> tuple[tuple[str, ...], Floats]:
        asked = jacket if sections else with_least_demand(jacket)
        only = None if sections else self._cheap
        found = ratios_of_designs(asked, host=self._host, provisions=self._provisions, only=only)
        return found.by_limit_state(governing=True)


def _in_order(values: tuple[Any, ...]) -> tuple[Any, ...]:
    """Numbers in order; None, which stands for a field that is not written, as it is."""
    return values if None in values else tuple(sorted(values))


def _worst(ratios: dict[str, float]) -> str:
    """Limit state with the largest ratio; one that was not evaluated counts as worst."""
    return max(ratios, key=lambda name: _weight(ratios[name]))


def _weight(ratio: float) -> float:
    return np.inf if np.isnan(ratio) else ratio
