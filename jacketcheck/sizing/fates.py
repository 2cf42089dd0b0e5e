"""What became of each design of a search."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import IntEnum
from typing import Any

import numpy as np
from numpy.typing import NDArray

from jacketcheck.jacket.many import Indexes
from jacketcheck.mechanics._arrays import Floats

__all__ = ["Fate", "Fates"]


class Fate(IntEnum):
    """What became of a design."""

    OPEN = 0
    """Nothing that was looked at so far speaks against it."""
    CANNOT_BE_BUILT = 1
    """Its geometry is impossible, or the catalogue has no such part."""
    CLOSED_FORM = 2
    """A closed-form limit state exceeds 1 even under the least demand."""
    BOND = 3
    """Bond of the bars exceeds 1 even under the least demand."""
    SECTIONS = 4
    """A limit state exceeds 1 in the full evaluation, section analysis included."""
    NOT_EVALUATED = 5
    """A limit state could not be evaluated; never a pass."""
    WORKS = 6
    """Every limit state was evaluated in full and stays within 1."""
    BEATEN = 7
    """A design that works takes at most as much of everything; not analysed any further."""
    NOT_REACHED = 8
    """The search was ended before its turn came."""


@dataclass
class Fates:
    """Fate of every design, what it takes, and what decided.

    Attributes
    ----------
    costs
        Objectives, shape (designs, 3); infinite where a design cannot be built.
    fate
        `Fate` by design.
    least_ratio
        Largest ratio under the least demand; NaN where it was not evaluated.
    exceeded
        Number of limit states above 1 where a design was looked at last.
    reason
        Place in `reasons` of what decided; -1 where nothing has.
    reasons
        Limit states, and rules of geometry, in the order of their first appearance.
    explanations
        Why limit states could not be evaluated, by limit state; the first one found.
    """

    costs: Floats
    fate: NDArray[np.int8]
    least_ratio: Floats
    exceeded: NDArray[np.int16]
    reason: NDArray[np.int16]
    reasons: list[str] = field(default_factory=list)
    explanations: dict[str, str] = field(default_factory=dict)
    _places: dict[str, int] = field(default_factory=dict)

    @classmethod
    def of(cls, count: int) -> Fates:
        """Fates of designs of which nothing is known yet."""
        return cls(
            costs=np.full((count, 3), np.inf),
            fate=np.zeros(count, dtype=np.int8),
            least_ratio=np.full(count, np.nan),
            exceeded=np.zeros(count, dtype=np.int16),
            reason=np.full(count, -1, dtype=np.int16),
        )

    def decide(self, designs: Indexes, fate: Fate, reason: str = "") -> None:
        """Write down what became of some designs."""
        self.fate[designs] = fate
        if reason:
            self.reason[designs] = self._places.setdefault(reason, len(self._places))
            if len(self.reasons) < len(self._places):
                self.reasons.append(reason)

    def count(self, fate: Fate) -> int:
        """Number of designs with a fate."""
        return int(np.count_nonzero(self.fate == fate))

    def having(self, fate: Fate) -> Indexes:
        """Designs with a fate."""
        return np.flatnonzero(self.fate == fate)

    def reasons_of(self, designs: Any, fate: Fate) -> dict[str, int]:
        """How many of some designs met a fate, by reason; the commonest first."""
        chosen = self.reason[designs][self.fate[designs] == fate]
        places, counts = np.unique(chosen[chosen >= 0], return_counts=True)
        order = np.argsort(-counts, kind="stable")
        return {self.reasons[int(places[i])]: int(counts[i]) for i in order}
