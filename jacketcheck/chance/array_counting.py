"""Counting events that need no section analysis: many samples at once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from jacketcheck.chance.counts import Counts
from jacketcheck.chance.events import Event
from jacketcheck.chance.model import Model, Progress, without_progress
from jacketcheck.chance.points import REPLICATES, replicate_size
from jacketcheck.chance.realisation import some_samples
from jacketcheck.limit_state import Effort

__all__ = ["count_by_arrays"]

_BLOCK: Final = 8_192
_KEPT: Final = 4_096


def count_by_arrays(
    events: Sequence[Event],
    model: Model,
    *,
    effort: Effort,
    cheaper: Sequence[Event] = (),
    progress: Progress = without_progress,
) -> Counts:
    """Draw the samples of an effort and evaluate blocks of them at once.

    Parameters
    ----------
    events
        Events of this effort, which need no section analysis.
    model
        What is the same for all samples.
    effort
        Effort, which says how many samples.
    cheaper
        Events of less effort, evaluated on the same samples to tell what is new.
    progress
        Shows how far the work is.
    """
    scattering = model.variables.scattering()
    size = replicate_size(model.settings.of(effort), model.settings.method)
    counts = Counts.begin(events, scattering, size)
    cheaper_ids = {event.id for event in cheaper}
    replicates = progress(model.points(scattering, effort), REPLICATES, "replicate")
    for replicate, points in enumerate(replicates):
        for start in range(0, size, _BLOCK):
            block = points[:, start : start + _BLOCK]
            count = block.shape[1]
            factors = model.factors(scattering, block)
            found = model.cheap_ratios((*events, *cheaper), factors, size=count)
            before = {name: found.pop(name) for name in cheaper_ids}
            counts.add(replicate, found, before)
            wanted = min(count, _KEPT - counts.kept)
            if wanted > 0:
                counts.keep(some_samples(factors, slice(0, wanted)), found, before, wanted)
    return counts
