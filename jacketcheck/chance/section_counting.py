"""Counting events that need section analyses: some samples at a time."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.axial_strain import checked_axial_strain
from jacketcheck.analysis.base_state import CAPACITY_STRAIN, base_state
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import Analysis, for_each_design, remembered
from jacketcheck.analysis.shear import shear_force
from jacketcheck.chance.base_strain import RESIDUAL, BaseStrain, PowerLaw
from jacketcheck.chance.counts import Counts, Flags
from jacketcheck.chance.events import Event
from jacketcheck.chance.model import Model, Progress, without_progress
from jacketcheck.chance.points import REPLICATES
from jacketcheck.chance.realisation import realise, some_samples
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["Analysed", "analysed", "count_by_sections", "residual", "variables_behind"]

_BLOCK: Final = 64


def count_by_sections(
    events: Sequence[Event],
    model: Model,
    *,
    cheaper: Sequence[Event] = (),
    progress: Progress = without_progress,
) -> tuple[Counts, BaseStrain]:
    """Draw the samples with section analyses; count the events and say what the base does.

    The cheaper events are evaluated on the same samples once the strain of the base is known.
    """
    scattering = model.variables.scattering()
    points = [part.copy() for part in model.points(scattering, "sections")]
    size = points[0].shape[1]
    total = size * REPLICATES
    counts = Counts.begin(events, scattering, size)
    factors = model.factors(scattering, np.hstack(points))
    blocks = [slice(start, min(start + _BLOCK, total)) for start in range(0, total, _BLOCK)]
    parts = [
        analysed(events, model, some_samples(factors, part), part.stop - part.start)
        for part in progress(blocks, len(blocks), "block of samples")
    ]
    found = Analysed.joined(parts)
    strain = _base_of(found, factors, model)
    known: Mapping[str, Real] = {**factors, RESIDUAL: residual(strain, found, factors)}
    before = _with(model, strain).cheap_ratios(cheaper, known, size=total)
    for replicate in range(REPLICATES):
        part = slice(replicate * size, (replicate + 1) * size)
        counts.add(
            replicate,
            {name: ratio[part] for name, ratio in found.ratios.items()},
            {name: ratio[part] for name, ratio in before.items()},
        )
    counts.keep(factors, found.ratios, before, total)
    return counts, strain


def _base_of(found: Analysed, factors: Mapping[str, Real], model: Model) -> BaseStrain:
    """What the samples say of the base's strain and of the hinge's shear."""

    def moving(analysis: Analysis) -> dict[str, Floats]:
        return {name: np.asarray(factors[name]) for name in variables_behind(analysis, model)}

    strain = model.strain
    if not strain.leads(found.strain, found.holds):
        strain = strain.refined(found.strain, found.holds, found.share, moving(_base_strain))
    else:
        strain = strain.refined(found.strain, found.holds, found.share, {})
    known, behind = np.isfinite(found.shear), moving(shear_force)
    if np.count_nonzero(known) <= 2 * (len(behind) + 1):
        return strain
    fitted = PowerLaw.fitted(found.shear[known], {n: v[known] for n, v in behind.items()})
    return strain.with_shear(fitted)


def _with(model: Model, strain: BaseStrain) -> Model:
    return Model(model.jacket, model.variables, strain, model.settings, model.evaluation)


@dataclass(frozen=True, eq=False)
class Analysed:
    """Samples with section analyses of their own.

    Attributes
    ----------
    ratios
        By event, shape (samples,).
    strain
        Strain of the base [-]; NaN where it could not be found.
    holds
        Whether the base holds: its outermost fibre is not strained beyond that of its strength.
    share
        Share of the added bars in tension [-].
    shear
        Shear of the relocated hinge [N].
    """

    ratios: dict[str, Floats]
    strain: Floats
    holds: Flags
    share: Floats
    shear: Floats

    @classmethod
    def joined(cls, parts: Sequence[Analysed]) -> Analysed:
        """Samples of several blocks, one after the other."""
        return cls(
            {name: np.concatenate([one.ratios[name] for one in parts]) for name in parts[0].ratios},
            np.concatenate([one.strain for one in parts]),
            np.concatenate([one.holds for one in parts]),
            np.concatenate([one.share for one in parts]),
            np.concatenate([one.shear for one in parts]),
        )


def analysed(
    events: Sequence[Event], model: Model, factors: Mapping[str, Real], size: int
) -> Analysed:
    """Evaluate some samples with section analyses of their own."""
    samples = realise(model.jacket, factors)
    with np.errstate(all="ignore"):
        base = [_numbers(one) for one in for_each_design(_base, samples, size)]
    ratios = model.evaluation.ratios(events, samples, factors, size=size)
    strain, holds, share, shear = (np.array(column) for column in zip(*base, strict=True))
    return Analysed(ratios, strain, holds.astype(bool), share, shear)


def variables_behind(analysis: Analysis, model: Model) -> tuple[str, ...]:
    """Variables that move what an analysis finds: each is moved by a standard deviation."""
    scattering = model.variables.scattering()
    count = len(scattering.variables)
    normal = np.hstack([np.zeros((count, 1)), np.eye(count)])
    values: dict[str, Real] = {
        one.name: one.marginal.at(row)
        for one, row in zip(scattering.variables, normal, strict=True)
    }
    samples = realise(model.jacket, {**model.variables.means(), **values})
    with np.errstate(all="ignore"):
        found = for_each_design(analysis, samples, count + 1)
    first, *others = (np.nan if one is None else float(one) for one in found)
    return tuple(
        name
        for name, value in zip(scattering.names, others, strict=True)
        if np.isfinite(value) and abs(value - first) > _MOVED * abs(first)
    )


@remembered
def _base_strain(jacket: Jacket) -> Real:
    return checked_axial_strain(jacket).found


_MOVED: Final = 1e-6


@dataclass(frozen=True, eq=False)
class _Base:
    strain: Real
    holds: Real
    share: Real
    shear: Real


@remembered
def _base(jacket: Jacket) -> _Base:
    """Strain of the base and what goes with it."""
    found, state = checked_axial_strain(jacket), base_state(jacket)
    holds = np.logical_and(found.base_holds, np.less_equal(state.extreme_strain, CAPACITY_STRAIN))
    return _Base(found.found, holds, tension_share(jacket), shear_force(jacket))


def _numbers(found: Any) -> tuple[float, bool, float, float]:
    if found is None:
        return np.nan, False, 1.0, np.nan
    return float(found.strain), bool(found.holds), float(found.share), float(found.shear)


def residual(strain: BaseStrain, found: Analysed, factors: Mapping[str, Real]) -> Floats:
    """What the strain of each sample is over its fit; 1 where the base does not hold."""
    fitted = np.broadcast_to(np.asarray(strain.checked(factors).found, float), found.strain.shape)
    kept = found.holds & np.isfinite(found.strain) & (found.strain > 0.0)
    return np.where(kept & (strain.origin == "fitted"), found.strain / fitted, 1.0)
