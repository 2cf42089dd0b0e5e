"""How near the designs of a search come to each limit state, and which of them go together."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from jacketcheck.jacket.many import Indexes
from jacketcheck.mechanics._arrays import Floats

__all__ = ["StateTally", "Tally"]

Flags = NDArray[np.bool_]


@dataclass
class StateTally:
    """One limit state over the designs that were looked at.

    Attributes
    ----------
    evaluated, passed
        Number of designs.
    smallest_ratio, design
        Smallest ratio, and the design that has it; -1 if none was evaluated.
    """

    evaluated: int = 0
    passed: int = 0
    smallest_ratio: float = np.inf
    design: int = -1

    def add(self, ratio: Floats, passed: Flags, designs: Indexes) -> None:
        """Count some designs; a ratio of minus infinity is that of a state that does not apply."""
        known = np.isfinite(ratio) | np.isposinf(ratio)
        self.evaluated += int(np.count_nonzero(known))
        self.passed += int(np.count_nonzero(passed & known))
        if not known.any():
            return
        best = int(np.argmin(np.where(known, ratio, np.inf)))
        if self.design < 0 or ratio[best] < self.smallest_ratio:
            self.smallest_ratio, self.design = float(ratio[best]), int(designs[best])


@dataclass
class Tally:
    """Counts over all designs that were looked at with one effort.

    Attributes
    ----------
    states
        By limit state.
    """

    states: dict[str, StateTally] = field(default_factory=dict)
    _together: dict[tuple[str, str], int] = field(default_factory=dict)

    def add(self, names: tuple[str, ...], ratio: Floats, designs: Indexes) -> None:
        """Count some designs.

        Parameters
        ----------
        names
            Limit states.
        ratio
            Largest ratio of each, shape (names, designs); minus infinity where one does not apply,
            NaN where it could not be evaluated.
        designs
            Numbers of the designs.
        """
        passed = ratio <= 1.0
        for name, row, good in zip(names, ratio, passed, strict=True):
            self.states.setdefault(name, StateTally()).add(row, good, designs)
        both = passed.astype(np.float64) @ passed.T.astype(np.float64)
        for i, first in enumerate(names):
            for j in range(i):
                key = (names[j], first)
                self._together[key] = self._together.get(key, 0) + round(both[i, j])

    def never_passed(self) -> tuple[str, ...]:
        """Limit states that apply to designs and that none of them passes; the worst first."""
        names = [n for n, one in self.states.items() if one.evaluated and not one.passed]
        return tuple(sorted(names, key=lambda name: -self.states[name].smallest_ratio))

    def conflicts(self) -> tuple[tuple[str, str], ...]:
        """Pairs of limit states that some designs pass, but none passes together."""
        return tuple(
            pair
            for pair, count in self._together.items()
            if not count and all(self.states[name].passed for name in pair)
        )
