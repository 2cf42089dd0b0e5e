"""Counting limit states that need section analyses: one sample after the other."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from jacketcheck.chance.base_strain import RESIDUAL, BaseStrain
from jacketcheck.chance.counts import Counts, Flags
from jacketcheck.chance.evaluation import array_ratios, section_sample, single_ratios
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.model import Model, Progress, without_progress
from jacketcheck.chance.points import REPLICATES
from jacketcheck.chance.realisation import one_sample
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["count_by_sections"]


def count_by_sections(
    limits: Sequence[Limit],
    model: Model,
    *,
    cheaper: Sequence[Limit] = (),
    progress: Progress = without_progress,
) -> tuple[Counts, BaseStrain]:
    """Draw the samples with section analyses, one after the other; and say what the base does.

    The cheaper limit states are evaluated on the same samples once the strain of the base is known.
    """
    scattering = model.scattering((*limits, *cheaper))
    points = [part.copy() for part in model.points(scattering, "sections")]
    size = points[0].shape[1]
    counts = Counts.begin(limits, scattering, size)
    factors = model.factors(scattering, np.hstack(points))
    total = size * REPLICATES
    found = _analysed(limits, model, factors, progress(range(total), total, "sample"))
    moving = {name: np.asarray(factors[name]) for name in scattering.names}
    strain = model.strain.refined(found.strain, found.holds, found.share, _behind(limits, moving))
    before = array_ratios(
        cheaper,
        model.jacket,
        {**factors, RESIDUAL: _residual(strain, found, factors)},
        size=total,
        strain=strain,
        failures=model.failures,
    )
    exceeded_before = np.zeros(total, dtype=bool)
    for ratio in before.values():
        exceeded_before |= ~(ratio <= 1.0)
    for replicate in range(REPLICATES):
        part = slice(replicate * size, (replicate + 1) * size)
        own = {name: ratio[part] for name, ratio in found.ratios.items()}
        counts.add(
            replicate,
            {name: ratio > 1.0 for name, ratio in own.items()},
            {name: np.isnan(ratio) for name, ratio in own.items()},
            exceeded_before[part],
        )
    counts.keep(factors, {**found.ratios, **before}, total)
    return counts, strain


@dataclass(frozen=True, eq=False)
class _Analysed:
    ratios: dict[str, Floats]
    strain: Floats
    holds: Flags
    share: Floats


def _analysed(
    limits: Sequence[Limit], model: Model, factors: Mapping[str, Real], samples: Iterable[int]
) -> _Analysed:
    rows = []
    for index in samples:
        one = one_sample(factors, index)
        sample = section_sample(model.jacket, one)
        ratios = single_ratios(limits, sample.realisation, failures=model.failures)
        rows.append((ratios, sample.base_strain, sample.base_holds, sample.tension_share))
    return _Analysed(
        ratios={limit.id: np.array([row[0][limit.id] for row in rows]) for limit in limits},
        strain=np.array([row[1] for row in rows]),
        holds=np.array([row[2] for row in rows], dtype=bool),
        share=np.array([row[3] for row in rows]),
    )


def _residual(strain: BaseStrain, found: _Analysed, factors: Mapping[str, Real]) -> Floats:
    """What the strain of each sample is over its fit; 1 where the base does not hold."""
    fitted = np.broadcast_to(np.asarray(strain.checked(factors).found, float), found.strain.shape)
    kept = found.holds & np.isfinite(found.strain) & (found.strain > 0.0)
    return np.where(kept & (strain.origin == "fitted"), found.strain / fitted, 1.0)


def _behind(limits: Sequence[Limit], moving: Mapping[str, Floats]) -> dict[str, Floats]:
    """Variables that may move the strain of the base: those of the sections, no model's factor."""
    names = {name for limit in limits for name in limit.variables}
    return {name: values for name, values in moving.items() if name in names - _NOT_BEHIND}


_NOT_BEHIND: Final = {
    "axial-strain", "interface-friction", "column-shear", "displacement", "slip-coefficient",
    "bolt-pretension", "bond-stress", "clamping-friction",
}  # fmt: skip
