"""Single designs evaluated anew, within the bounds of a search and beyond them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.causes import first_causes
from jacketcheck.engine.ratios import ratios_of_designs
from jacketcheck.host.host import Host
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.many import Indexes
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.batches import Batches
from jacketcheck.sizing.beyond import beyond
from jacketcheck.sizing.screening import limit_states_of
from jacketcheck.sizing.space import Combination, Space

__all__ = ["Probe", "Relaxation"]


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
        self._follows: dict[str, set[str]] = {}
        self._cheap = limit_states_of(host, provisions, "closed-form") | limit_states_of(
            host, provisions, "bond"
        )

    def in_full(self, design: int) -> dict[str, float]:
        """Ratio of a design by limit state, section analysis included; empty if not buildable."""
        return self._of(design, in_full=True)

    def causes(self, ratios: Mapping[str, float]) -> dict[str, tuple[str, ...]]:
        """What each exceeded limit state follows from, of what this design exceeds as well.

        A limit state counts as following from what any of its rows has named so far.
        """
        names = list(ratios)
        follows = [self._follows.get(name, set()) for name in names]
        roots = first_causes(names, follows, [ratios[name] > 1.0 for name in names])
        return {
            name: tuple(names[place] for place in sorted(places))
            for name, places in zip(names, roots, strict=True)
            if places
        }

    def relaxations(self, limit_states: Sequence[str], design: int) -> Iterator[Relaxation]:
        """What each bound does to some limit states when it is passed, if that helps.

        Only what is closed form or bond is evaluated, under the least demand.
        """
        start, values = self._space.at(design)[0], self._space.values(design)
        before = self._of(design, in_full=False)
        for axis in start.block.axes:
            sides = list(self.sides(axis))
            beyond_it = tuple(value for side, _ in sides for value in side)
            line = self.along(start, values, axis.with_values(beyond_it), in_full=False)
            for side, bound in sides:
                there = [(value, ratios) for value, ratios in line if value in side]
                for name in limit_states:
                    found = [one for one in there if np.isfinite(one[1].get(name, np.nan))]
                    if found and name in before:
                        value, ratios = _first_or_best(found, name)
                        one = _relaxation(name, axis.path, bound, value, before[name], ratios)
                        if one.ratio < one.ratio_before * (1.0 - 1e-6):
                            yield one

    def sides(self, axis: Axis) -> Iterator[tuple[tuple[Any, ...], Any]]:
        """Values beyond each end of an axis, the nearest first, with the bound that they pass."""
        repair = self._space.blocks[-1].repair
        below, above = beyond(axis, repair, catalog=self._space.catalog)
        ordered = axis.values if isinstance(axis.values[0], str) else _in_order(axis.values)
        for side, bound in ((below, ordered[0]), (above, ordered[-1])):
            if side:
                yield side, bound

    def along(
        self, start: Combination, values: Mapping[str, Any], axis: Axis, *, in_full: bool
    ) -> list[tuple[Any, dict[str, float]]]:
        """Ratios by limit state at each value of one axis that can be built.

        Parameters
        ----------
        start, values
            Where the design comes from, and the value of each of its axes.
        axis
            What varies.
        in_full
            Whether everything is evaluated, section analysis included; else only what is closed
            form or bond, under the least demand.
        """
        line = self._space.line(start, values, axis)
        batches = Batches(10_000)
        found: dict[int, dict[str, float]] = {}

        def evaluate(jacket: Jacket, places: Indexes) -> None:
            names, ratio = self._ratios(jacket, in_full=in_full)
            for column, place in enumerate(places.tolist()):
                found[place] = dict(zip(names, ratio[:, column].tolist(), strict=True))

        for combination in line.combinations:
            built = combination.assemble(np.arange(combination.count), catalog=line.catalog)
            if built.jacket is not None:
                for batch in batches.add(built.jacket, combination.first + built.indexes):
                    evaluate(*batch)
        for batch in batches.rest():
            evaluate(*batch)
        return [(axis.values[place], ratios) for place, ratios in sorted(found.items())]

    def _of(self, design: int, *, in_full: bool) -> dict[str, float]:
        combination, place = self._space.at(design)
        built = combination.assemble(np.array([place]), catalog=self._space.catalog)
        if built.jacket is None:
            return {}
        names, ratio = self._ratios(built.jacket, in_full=in_full)
        return dict(zip(names, ratio[:, 0].tolist(), strict=True))

    def _ratios(self, jacket: Jacket, *, in_full: bool) -> tuple[tuple[str, ...], Floats]:
        asked = jacket if in_full else with_least_demand(jacket)
        only = None if in_full else self._cheap
        found = ratios_of_designs(asked, host=self._host, provisions=self._provisions, only=only)
        for row, causes in found.follows_from.items():
            self._follows.setdefault(row.limit_state, set()).update(causes)
        return found.by_limit_state(with_silent=False)


def _relaxation(  # noqa: PLR0917 - the fields of the record
    name: str, path: str, bound: Any, value: Any, before: float, ratios: dict[str, float]
) -> Relaxation:
    then = _worst(ratios)
    return Relaxation(name, path, bound, value, before, ratios[name], then, ratios[then])


def _first_or_best(
    found: list[tuple[Any, dict[str, float]]], limit_state: str
) -> tuple[Any, dict[str, float]]:
    """First value that brings a limit state to 1, else the one that brings it lowest."""
    passing = [one for one in found if one[1][limit_state] <= 1.0]
    return passing[0] if passing else min(found, key=lambda one: one[1][limit_state])


def _in_order(values: tuple[Any, ...]) -> tuple[Any, ...]:
    """Numbers in order; None, which stands for a field that is not written, as it is."""
    return values if None in values else tuple(sorted(values))


def _worst(ratios: dict[str, float]) -> str:
    """Limit state with the largest ratio; one that was not evaluated counts as worst."""
    return max(ratios, key=lambda name: _weight(ratios[name]))


def _weight(ratio: float) -> float:
    return np.inf if np.isnan(ratio) else ratio
