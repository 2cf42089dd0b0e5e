"""Exceedances counted over replicates of samples."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.chance.events import Event
from jacketcheck.chance.points import REPLICATES
from jacketcheck.chance.variables import Scattering
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["Counts", "Flags"]

Flags: TypeAlias = NDArray[np.bool_]
"""Yes or no for each sample."""
_Counted: TypeAlias = NDArray[np.int64]


@dataclass(eq=False)
class Counts:
    """What the samples of one effort say.

    Attributes
    ----------
    size
        Samples of a replicate.
    exceeded, unevaluated
        By event: samples of each replicate that exceed, and that could not be evaluated.
    any_low, any_high
        Samples of each replicate that exceed one of the events and none of a cheaper effort: where
        what could not be evaluated counts as holding, and where it counts as exceeded.
    names, values, ratios, largest
        Of the first samples: variables, their factors, ratios by event, and the largest ratio of
        all events, cheaper ones included.
    """

    size: int
    exceeded: dict[str, _Counted]
    unevaluated: dict[str, _Counted]
    any_low: _Counted
    any_high: _Counted
    names: tuple[str, ...]
    values: list[Floats] = field(default_factory=list)
    ratios: dict[str, list[Floats]] = field(default_factory=dict)
    largest: list[Floats] = field(default_factory=list)

    @classmethod
    def begin(cls, events: Sequence[Event], scattering: Scattering, size: int) -> Counts:
        """Nothing counted yet."""
        none = np.zeros(REPLICATES, dtype=np.int64)
        return cls(
            size=size,
            exceeded={event.id: none.copy() for event in events},
            unevaluated={event.id: none.copy() for event in events},
            any_low=none.copy(),
            any_high=none.copy(),
            names=scattering.names,
            ratios={event.id: [] for event in events},
        )

    @property
    def samples(self) -> int:
        """Samples of all replicates."""
        return self.size * REPLICATES

    @property
    def kept(self) -> int:
        """Samples whose ratios are kept."""
        return sum(len(part) for part in self.largest)

    def add(
        self, replicate: int, ratios: Mapping[str, Floats], before: Mapping[str, Floats]
    ) -> None:
        """Count the ratios of some samples; `before` are those of cheaper events."""
        (low, high), (low_before, high_before) = _any_of(ratios), _any_of(before)
        self.any_low[replicate] += np.count_nonzero(low & ~low_before)
        self.any_high[replicate] += np.count_nonzero(high & ~high_before)
        for name, ratio in ratios.items():
            self.exceeded[name][replicate] += np.count_nonzero(ratio > 1.0)
            self.unevaluated[name][replicate] += np.count_nonzero(np.isnan(ratio))

    def keep(
        self,
        factors: Mapping[str, Real],
        ratios: Mapping[str, Floats],
        before: Mapping[str, Floats],
        size: int,
    ) -> None:
        """Keep ratios of some samples for the ranking of variables."""
        rows = [np.broadcast_to(factors[name], size) for name in self.names]
        self.values.append(np.array(rows).reshape(len(rows), size))
        for name in self.ratios:
            self.ratios[name].append(np.asarray(ratios[name][:size]))
        worst = np.array([ratio[:size] for ratio in (*ratios.values(), *before.values())])
        # what could not be evaluated may exceed, so that it is the largest
        self.largest.append(np.max(np.where(np.isnan(worst), np.inf, worst), axis=0))


def _any_of(ratios: Mapping[str, Floats]) -> tuple[Flags | np.bool_, Flags | np.bool_]:
    """Samples that exceed any event, what could not be evaluated left out and counted in."""
    low: Flags | np.bool_ = np.bool_(0)
    high: Flags | np.bool_ = np.bool_(0)
    for ratio in ratios.values():
        low, high = low | (ratio > 1.0), high | ~(ratio <= 1.0)
    return low, high
