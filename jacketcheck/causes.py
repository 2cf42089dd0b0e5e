"""Which failures are consequences of others: decided here for every output.

A row names what it follows from (`Result.follows_from`). Among the rows that exceed 1 this makes a
graph, from each row to the failing rows of the limit states that it names. A row is a consequence
where that graph leads from it to a row that does not lead back to it. Rows that lead to each other
in a circle stand on their own, and so does a row whose named causes all pass or could not be
evaluated: nothing is hidden behind them.
"""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.results import Result, Status

__all__ = [
    "DesignCauses",
    "Roots",
    "causes_first",
    "causes_of_designs",
    "first_causes",
    "roots_of",
]

Roots: TypeAlias = tuple[frozenset[int], ...]
"""For each row the places of its first causes; empty for a row that stands on its own."""


def first_causes(
    names: Sequence[Hashable],
    follows: Sequence[Collection[Hashable]],
    exceeds: Sequence[bool],
) -> Roots:
    """The failing rows that each failing row is a consequence of, all the way back.

    Parameters
    ----------
    names
        What a row is called where others follow from it; several rows may share a name.
    follows
        Names that each row follows from.
    exceeds
        Whether each row exceeds 1; false also for what could not be evaluated.

    Examples
    --------
    >>> names, follows = ["bond", "moment", "slip", "shear"], [["slip"], ["bond"], [], []]
    >>> [sorted(places) for places in first_causes(names, follows, [True, True, True, True])]
    [[2], [2], [], []]
    >>> [sorted(places) for places in first_causes(names, follows, [True, True, False, True])]
    [[], [0], [], []]
    """
    failing = [place for place, fails in enumerate(exceeds) if fails]
    named: dict[Hashable, set[int]] = {}
    for place in failing:
        named.setdefault(names[place], set()).add(place)
    direct = {
        place: {cause for name in follows[place] for cause in named.get(name, ())}
        for place in failing
    }
    behind = {place: _reached(place, direct) for place in failing}
    first = {place for place in failing if all(place in behind[one] for one in behind[place])}
    return tuple(
        frozenset(behind[place] & first if place in behind and place not in first else ())
        for place in range(len(names))
    )


def _reached(start: int, direct: Mapping[int, set[int]]) -> set[int]:
    """Every row that a row leads to; itself only where it leads back to itself."""
    reached: set[int] = set()
    ahead = set(direct[start])
    while ahead:
        place = ahead.pop()
        reached.add(place)
        ahead |= direct[place] - reached
    return reached


def roots_of(results: Sequence[Result]) -> Roots:
    """First causes among the results of one jacket under one set of provisions."""
    return first_causes(
        [row.limit_state for row in results],
        [row.follows_from for row in results],
        [row.status is Status.EXCEEDS for row in results],
    )


def causes_first(results: Iterable[Result]) -> tuple[Result, ...]:
    """Results in the order in which they decide.

    What could not be evaluated stands first, then what exceeds on its own, then what follows from
    it, then the rest, each worst first.
    """
    given = tuple(results)
    consequences = {id(row) for row, roots in zip(given, roots_of(given), strict=True) if roots}

    def order(row: Result) -> tuple[int, float]:
        exceeds = 2 if id(row) in consequences else 1
        group = {Status.NOT_EVALUATED: 0, Status.EXCEEDS: exceeds}.get(row.status, 3)
        # stable: severities equal but for rounding keep the order of the limit states
        return group, -round(row.severity, 9)

    return tuple(sorted(given, key=order))


@dataclass(frozen=True, eq=False)
class DesignCauses:
    """Causes in many designs, which mostly fail in a few patterns.

    Attributes
    ----------
    patterns
        First causes by row, for each combination of failing rows that occurs.
    pattern_of
        Which of them each design shows.
    consequence
        Whether a row is a consequence in a design: shape (rows, designs).
    """

    patterns: tuple[Roots, ...]
    pattern_of: NDArray[np.intp]
    consequence: NDArray[np.bool_]

    def followers(self, design: int, places: Collection[int]) -> int:
        """How many rows of a design follow from any of some rows."""
        roots = self.patterns[int(self.pattern_of[design])]
        return sum(not row.isdisjoint(places) for row in roots)


def causes_of_designs(
    names: Sequence[Hashable],
    follows: Sequence[Collection[Hashable]],
    exceeds: NDArray[np.bool_],
) -> DesignCauses:
    """First causes in each design.

    Parameters
    ----------
    names, follows
        As in `first_causes`.
    exceeds
        Whether each row exceeds 1 in each design: shape (rows, designs).
    """
    if not exceeds.size:
        return DesignCauses((), np.empty(0, dtype=np.intp), np.zeros_like(exceeds))
    packed = np.packbits(exceeds, axis=0)
    _, examples, pattern_of = np.unique(packed, axis=1, return_index=True, return_inverse=True)
    patterns = tuple(
        first_causes(names, follows, exceeds[:, design].tolist()) for design in examples
    )
    shown = np.array([[bool(row) for row in roots] for roots in patterns], dtype=bool)
    flat = pattern_of.reshape(-1)
    return DesignCauses(patterns, flat, shown.reshape(len(patterns), len(names))[flat].T)
