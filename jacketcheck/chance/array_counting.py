"""Counting limit states that need no section analysis: many samples at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.chance import direct
from jacketcheck.chance.counts import Counts, Flags
from jacketcheck.chance.evaluation import array_ratios
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.model import Model, Progress, without_progress
from jacketcheck.chance.points import REPLICATES, replicate_size
from jacketcheck.chance.realisation import some_samples
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["count_by_arrays"]

_BLOCK: Final = 16_384
_KEPT: Final = 4_096


def count_by_arrays(
    limits: Sequence[Limit],
    model: Model,
    *,
    effort: Effort,
    cheaper: Sequence[Limit] = (),
    progress: Progress = without_progress,
) -> Counts:
    """Draw the samples of an effort and evaluate blocks of them at once.

    Parameters
    ----------
    limits
        Limit states of this effort, which need no section analysis.
    model
        What is the same for all samples.
    effort
        Effort, which says how many samples.
    cheaper
        Limit states of less effort, evaluated on the same samples to tell what is new.
    progress
        Shows how far the work is.
    """
    scattering = model.scattering((*limits, *cheaper))
    size = replicate_size(model.settings.of(effort), model.settings.method)
    counting = _Counting(limits, cheaper, model, Counts.begin(limits, scattering, size))
    replicates = progress(model.points(scattering, effort), REPLICATES, "replicate")
    for replicate, points in enumerate(replicates):
        for start in range(0, size, _BLOCK):
            block = points[:, start : start + _BLOCK]
            counting.count(replicate, model.factors(scattering, block), block.shape[1])
    return counting.counts


@dataclass(frozen=True, eq=False)
class _Counting:
    """Limit states that are counted, cheaper ones beside them, and what was counted so far."""

    limits: Sequence[Limit]
    cheaper: Sequence[Limit]
    model: Model
    counts: Counts

    def count(self, replicate: int, factors: Mapping[str, Real], size: int) -> None:
        """Count a block of samples of a replicate."""
        everything = (*self.limits, *self.cheaper)
        exceeds, unknown = self._flags(everything, factors, size)
        before = np.zeros(size, dtype=bool)
        for limit in self.cheaper:
            before |= exceeds.pop(limit.id) | unknown.pop(limit.id)
        self.counts.add(replicate, exceeds, unknown, before)
        wanted = min(size, _KEPT - self.counts.kept)
        if wanted > 0:
            first = some_samples(factors, slice(0, wanted))
            self.counts.keep(first, self._ratios(everything, first, wanted), wanted)

    def _ratios(
        self, limits: Sequence[Limit], factors: Mapping[str, Real], size: int
    ) -> dict[str, Floats]:
        model = self.model
        return array_ratios(
            limits, model.jacket, factors, size=size, strain=model.strain, failures=model.failures
        )

    def _flags(
        self, limits: Sequence[Limit], factors: Mapping[str, Real], size: int
    ) -> tuple[dict[str, Flags], dict[str, Flags]]:
        """Which samples exceed each limit state, and which could not be evaluated."""
        model = self.model
        compared = [one for one in limits if model.ring is not None and one.id in direct.DIRECT]
        others = [one for one in limits if one not in compared]
        ratios = self._ratios(others, factors, size) if others else {}
        exceeds = {name: ratio > 1.0 for name, ratio in ratios.items()}
        unknown = {name: np.isnan(ratio) for name, ratio in ratios.items()}
        if compared and model.ring is not None:
            strain = model.strain.checked(factors).value
            with np.errstate(all="ignore"):  # what comes of it lies outside
                found, outside = direct.exceeded(model.ring, model.jacket, factors, strain)
            for one in compared:
                exceeds[one.id] = np.broadcast_to(found[one.id], size)
                unknown[one.id] = np.broadcast_to(outside, size)
                if np.any(outside):
                    model.failures.setdefault(one.id, _OUTSIDE)
        return exceeds, unknown


_OUTSIDE: Final = "pressure on the core beyond the confinement model"
