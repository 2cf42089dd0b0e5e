"""Exceedances counted over replicates of samples."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.chance.limit import Limit
from jacketcheck.chance.points import REPLICATES
from jacketcheck.chance.variables import Scattering
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["Counts", "Flags"]

Flags: TypeAlias = NDArray[np.bool_]
"""Yes or no for each sample."""


@dataclass(eq=False)
class Counts:
    """What the samples of one effort say.

    Attributes
    ----------
    size
        Samples of a replicate.
    exceeded, unevaluated
        By limit state: samples that exceed in each replicate, and those that could not be
        evaluated in all.
    any_new
        Samples of each replicate that exceed one of the limit states and none of a cheaper effort.
    names, values, ratios, largest
        Of the first samples: variables, their factors, ratios by limit state, and the largest
        ratio of all limit states, cheaper ones included.
    """

    size: int
    exceeded: dict[str, list[int]]
    unevaluated: dict[str, int]
    any_new: list[int]
    names: tuple[str, ...]
    values: list[Floats] = field(default_factory=list)
    ratios: dict[str, list[Floats]] = field(default_factory=dict)
    largest: list[Floats] = field(default_factory=list)

    @classmethod
    def begin(cls, limits: Sequence[Limit], scattering: Scattering, size: int) -> Counts:
        """Nothing counted yet."""
        ids = [limit.id for limit in limits]
        return cls(
            size=size,
            exceeded={name: [0] * REPLICATES for name in ids},
            unevaluated=dict.fromkeys(ids, 0),
            any_new=[0] * REPLICATES,
            names=scattering.names,
            ratios={name: [] for name in ids},
        )

    @property
    def kept(self) -> int:
        """Samples whose ratios are kept."""
        return sum(len(part) for part in self.largest)

    def add(
        self,
        replicate: int,
        exceeds: Mapping[str, Flags],
        unknown: Mapping[str, Flags],
        before: Flags,
    ) -> None:
        """Count some samples; what could not be evaluated exceeds."""
        new = np.zeros_like(before)
        for name, flags in exceeds.items():
            counted = flags | unknown[name]
            self.exceeded[name][replicate] += int(np.count_nonzero(counted))
            self.unevaluated[name] += int(np.count_nonzero(unknown[name]))
            new |= counted
        self.any_new[replicate] += int(np.count_nonzero(new & ~before))

    def keep(self, factors: Mapping[str, Real], ratios: Mapping[str, Floats], size: int) -> None:
        """Keep ratios of some samples for the ranking of variables."""
        rows = [np.broadcast_to(factors[name], size) for name in self.names]
        self.values.append(np.array(rows).reshape(len(rows), size))
        for name in self.ratios:
            self.ratios[name].append(np.asarray(ratios[name]))
        worst = np.array(list(ratios.values()))
        # what could not be evaluated counts as exceeded, so that it is the largest
        self.largest.append(np.max(np.where(np.isnan(worst), np.inf, worst), axis=0))
