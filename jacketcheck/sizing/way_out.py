"""Bounds that are relaxed together until a design works, where within the bounds none does."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.probing import Probe
from jacketcheck.sizing.space import Combination, Space

__all__ = ["Move", "WayOut", "find_way_out", "stay"]

_MOST_MOVES: Final = 6
_MOST_RATIO: Final = 100.0
"""Ratio that an infinite one, and one that could not be evaluated, counts as."""


@dataclass(frozen=True, slots=True)
class Move:
    """One field that is led elsewhere.

    Attributes
    ----------
    path
        The field.
    before, value
        Value of the nearest design, and the new one.
    bound
        Bound that the new value passes; None where it stays within the bounds.
    """

    path: str
    before: Any
    value: Any
    bound: Any


@dataclass(frozen=True, slots=True)
class WayOut:
    """Fields that are led elsewhere together.

    Attributes
    ----------
    moves
        In the order in which they help most.
    works
        Whether the design then works, evaluated in full.
    governing, ratio
        Limit state with the largest ratio then, of those that follow from no other, and that ratio;
        NaN where it was not evaluated.
    exceeded
        Limit states above 1 then, with their ratios.
    follows
        What those among them follow from that are consequences of others.
    stuck
        Limit states beyond reach: no further field led anywhere by itself makes their ratio finite.
    """

    moves: tuple[Move, ...]
    works: bool
    governing: str
    ratio: float
    exceeded: dict[str, float]
    stuck: tuple[str, ...] = ()
    follows: dict[str, tuple[str, ...]] = field(default_factory=dict)


def find_way_out(
    space: Space, probe: Probe, nearest: int, *, tick: Callable[[int, int], None]
) -> WayOut | None:
    """Lead the design that comes nearest out of the bounds, field by field, until it works.

    Parameters
    ----------
    space, probe
        Designs, and how single ones are evaluated.
    nearest
        Design to start from.
    tick
        Told how many of how many fields have been led elsewhere.

    Returns
    -------
    WayOut or None
        None where nothing that was tried helps.

    Notes
    -----
    Each time that field is taken whose best value, within its bounds or just beyond, takes most off
    the sum of the logarithms of all ratios above 1: fields with bounds first, fields as written
    only if those do not suffice. In the end moves that are not needed are taken back. This finds a
    way, not the shortest or cheapest one, and may find none where there is one: it is given up
    where a ratio stays infinite whichever field is led elsewhere.
    """
    start = space.at(nearest)[0]
    walk = _Walk(probe, start, space.values(nearest))
    every = list(start.block.axes)
    for axes in ([axis for axis in every if not axis.is_written], every):
        while walk.penalty > 0.0 and len(walk.moves) < _MOST_MOVES:
            tick(len(walk.moves), _MOST_MOVES)
            if not walk.step(axes) or (walk.stuck and axes is every):
                break
        if walk.penalty == 0.0:
            break
    if not (walk.moves or walk.stuck):
        return None
    if walk.penalty == 0.0:
        walk.take_back()
    return walk.outcome()


class _Walk:
    """A design on its way out of the bounds."""

    def __init__(self, probe: Probe, start: Combination, values: dict[str, Any]) -> None:
        self._probe, self._start, self._values = probe, start, values
        self.moves: dict[str, Move] = {}
        self.stuck: tuple[str, ...] = ()
        axis = start.block.axes[0]
        self._ratios = self._along(axis, (values[axis.path],))[0][1]

    @property
    def penalty(self) -> float:
        """How far the design is from working; zero where it does."""
        return _penalty(self._ratios)

    def step(self, axes: list[Axis]) -> bool:
        """Move the field that helps most; whether one helps at all."""
        best: tuple[float, Move, dict[str, float]] | None = None
        lost = {name for name, ratio in self._ratios.items() if _weight(ratio) >= _MOST_RATIO}
        for axis in axes:
            if axis.path in self.moves:
                continue
            for move, ratios in self._moves(axis):
                lost -= {name for name in lost if _weight(ratios.get(name, 0.0)) < _MOST_RATIO}
                # a value within the bounds is as good as free, one beyond must help more
                weight = _penalty(ratios) + (1e-3 if move.bound is not None else 0.0)
                if best is None or weight < best[0]:
                    best = weight, move, ratios
        self.stuck = tuple(name for name in self._ratios if name in lost)
        if best is None or _penalty(best[2]) > self.penalty * (1.0 - 1e-3):
            return False
        self._take(best[1], best[2])
        return True

    def _moves(self, axis: Axis) -> Iterator[tuple[Move, dict[str, float]]]:
        before = self._values[axis.path]
        bounds: dict[Any, Any] = {one: None for one in axis.values if one != before}
        for side, bound in self._probe.sides(axis):
            bounds |= dict.fromkeys(side, bound)
        if bounds:
            for value, ratios in self._along(axis, tuple(bounds)):
                yield Move(axis.path, before, value, bounds[value]), ratios

    def _along(self, axis: Axis, values: tuple[Any, ...]) -> list[tuple[Any, dict[str, float]]]:
        return self._probe.along(self._start, self._values, axis.with_values(values), in_full=True)

    def _take(self, move: Move, ratios: dict[str, float]) -> None:
        self.moves[move.path] = move
        self._values[move.path], self._ratios = move.value, ratios

    def take_back(self) -> None:
        """Undo each move, or do less of it, as far as the design still works."""
        axes = {axis.path: axis for axis in self._start.block.axes}
        for move in tuple(self.moves.values()):
            others = [
                one for one in self._moves_less(axes[move.path], move) if not _penalty(one[1])
            ]
            if others:
                value, ratios = others[0]
                self._values[move.path], self._ratios = value, ratios
                bound = None if value in axes[move.path].values else move.bound
                self.moves[move.path] = Move(move.path, move.before, value, bound)
                if value == move.before:
                    del self.moves[move.path]

    def _moves_less(self, axis: Axis, move: Move) -> list[tuple[Any, dict[str, float]]]:
        """Values from that of the nearest design to that of a move, this one left out."""
        inside = tuple(one for one in axis.values if one != move.before)
        beyond = next((side for side, bound in self._probe.sides(axis) if move.value in side), ())
        steps = (move.before, *inside, *beyond)
        return self._along(axis, tuple(steps[: steps.index(move.value)]))

    def outcome(self) -> WayOut:
        """Where the walk has come to."""
        causes = self._probe.causes(self._ratios)
        return stay(self._ratios, self.stuck, causes, tuple(self.moves.values()))


def stay(
    ratios: Mapping[str, float],
    stuck: tuple[str, ...],
    follows: dict[str, tuple[str, ...]],
    moves: tuple[Move, ...] = (),
) -> WayOut:
    """Where some moves have led to, given the ratios of the design there by limit state."""
    own = [name for name in ratios if name not in follows]
    governing = max(own, key=lambda name: _weight(ratios[name]))
    exceeded = {name: ratio for name, ratio in ratios.items() if not ratio <= 1.0}
    return WayOut(
        moves=moves,
        works=not exceeded,
        governing=governing,
        ratio=ratios[governing],
        exceeded=dict(
            sorted(exceeded.items(), key=lambda pair: (pair[0] in follows, -_weight(pair[1])))
        ),
        stuck=tuple(name for name in stuck if name in exceeded),
        follows=follows,
    )


def _weight(ratio: float) -> float:
    return math.inf if math.isnan(ratio) else ratio


def _penalty(ratios: Mapping[str, float]) -> float:
    """Sum of the logarithms of the ratios above 1; what was not evaluated counts as exceeded."""
    return sum(
        math.log(min(_weight(one), _MOST_RATIO)) for one in ratios.values() if not one <= 1.0
    )
