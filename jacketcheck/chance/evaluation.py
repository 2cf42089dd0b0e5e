"""Ratios of samples; one that cannot be evaluated neither stops the others nor passes."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.axial_strain import CheckedStrain, checked_axial_strain
from jacketcheck.analysis.base_state import CAPACITY_STRAIN, base_state
from jacketcheck.analysis.hinge import hinge, original_response
from jacketcheck.analysis.interface import SHEAR_FACTOR, interface
from jacketcheck.analysis.lap import tension_share
from jacketcheck.analysis.memo import assuming
from jacketcheck.analysis.shear import shear_force
from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.limit import Limit, NotApplicableError
from jacketcheck.chance.realisation import Realisation, realise, some_samples
from jacketcheck.host.outcome import describe
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = [
    "Failures",
    "SectionSample",
    "array_ratios",
    "section_sample",
    "single_ratios",
    "with_strain",
]

Failures = dict[str, str]
"""Why the first sample of a limit state that could not be evaluated could not, by limit state."""

_MOST_DIVISIONS: Final = 256
"""Halvings of a block of samples: enough for some twenty that cannot be evaluated."""


def array_ratios(
    limits: Sequence[Limit],
    jacket: Jacket,
    factors: Mapping[str, Real],
    *,
    size: int,
    strain: BaseStrain,
    failures: Failures,
) -> dict[str, Floats]:
    """Ratios of many samples at once, shape (size,); NaN where there is none.

    Parameters
    ----------
    limits
        Limit states that need no section analysis.
    jacket
        One design with specified and expected values.
    factors
        Factor of every variable: numbers, or arrays over samples.
    size
        Number of samples.
    strain
        Axial strain of the core and share of added bars in tension.
    failures
        Takes up why samples could not be evaluated.

    Notes
    -----
    A formula refuses many samples for the sake of one. They are halved until each of those stands
    alone, or until so many are found that it would take too long: then whatever is left beside
    them has no ratio either.
    """
    found = {limit.id: np.full(size, np.nan) for limit in limits}
    divisions = _MOST_DIVISIONS
    # one half after the other until the samples that cannot be evaluated stand alone
    parts = deque([(tuple(limits), slice(0, size))])
    while parts:
        which, part = parts.popleft()
        count = part.stop - part.start
        known, broken = _tried(which, jacket, some_samples(factors, part), strain, count)
        for name, ratios in known.items():
            found[name][part] = ratios
        if not broken:
            continue
        if count > 1 and divisions:
            divisions -= 1
            again, middle = tuple(limit for limit, _ in broken), (part.start + part.stop) // 2
            halves = slice(part.start, middle), slice(middle, part.stop)
            parts.extend((again, half) for half in halves)
        else:
            beside = "; those drawn with it are counted with it" if count > 1 else ""
            for limit, error in broken:
                failures.setdefault(limit.id, f"{describe(error)}{beside}")
    return found


def _tried(
    limits: Sequence[Limit],
    jacket: Jacket,
    factors: Mapping[str, Real],
    strain: BaseStrain,
    size: int,
) -> tuple[dict[str, Floats], list[tuple[Limit, Exception]]]:
    with np.errstate(all="ignore"):  # what comes of it shows in the ratio
        sample = with_strain(realise(jacket, factors), strain, jacket)
    return _evaluated(limits, sample, size)


def _evaluated(
    limits: Sequence[Limit], sample: Realisation, size: int
) -> tuple[dict[str, Floats], list[tuple[Limit, Exception]]]:
    found: dict[str, Floats] = {}
    broken: list[tuple[Limit, Exception]] = []
    with np.errstate(all="ignore"):  # what comes of it shows in the ratio
        for limit in limits:
            try:
                found[limit.id] = np.broadcast_to(np.asarray(limit.ratio(sample), float), size)
            except NotApplicableError:
                raise
            except Exception as error:  # noqa: BLE001 - one sample must not hide the others
                broken.append((limit, error))
    return found, broken


def with_strain(sample: Realisation, strain: BaseStrain, jacket: Jacket) -> Realisation:
    """The sample without need of a section analysis; the column's shear is the jacket's."""
    known: dict[Any, Any] = {
        checked_axial_strain: strain.checked(sample.factors),
        shear_force: shear_force(jacket),
    }
    if sample.jacket.added_bars is not None:
        known[tension_share] = strain.tension_share
    return replace(sample, jacket=assuming(sample.jacket, known))


@dataclass(frozen=True, eq=False)
class SectionSample:
    """One sample with section analyses of its own.

    Attributes
    ----------
    realisation
        The sample.
    base_strain
        Strain of the base [-]; NaN where it could not be found.
    base_holds
        Whether the base holds: its outermost fibre is not strained beyond that of its strength.
    tension_share
        Share of the added bars in tension [-].
    """

    realisation: Realisation
    base_strain: float
    base_holds: bool
    tension_share: float


def section_sample(jacket: Jacket, factors: Mapping[str, Real]) -> SectionSample:
    """Analyse one sample.

    A base that is stronger than its analysis by a factor is strained as the analysed one under a
    demand that is smaller by it, so that it holds wherever its strength exceeds the demand. The
    checked strain gets the model's factor, and friction on the column's face its own instead of a
    resistance factor.
    """
    sample = realise(jacket, factors)
    try:
        with np.errstate(all="ignore"):
            return _analysed(sample)
    except Exception:  # noqa: BLE001 - each limit state finds out by itself what it lacks
        return SectionSample(sample, np.nan, base_holds=False, tension_share=1.0)


def _analysed(sample: Realisation) -> SectionSample:
    jacket, factors = sample.jacket, sample.factors
    known: dict[Any, Any] = {one: one(jacket) for one in (original_response, hinge)}
    demand = known[hinge]
    eased = replace(demand, base_moment=demand.base_moment / factors["section-strength"])
    base = assuming(jacket, {**known, hinge: eased})
    found, share = checked_axial_strain(base), float(tension_share(base))
    known[base_state] = base_state(base)
    known[checked_axial_strain] = CheckedStrain(
        found.declared,
        found.found,
        found.base_holds,
        float(np.multiply(found.value, factors["axial-strain"])),
    )
    strained = assuming(jacket, known)
    face = interface(strained)
    friction = np.multiply(face.resistance, factors["interface-friction"]) / SHEAR_FACTOR
    known[interface] = replace(face, resistance=float(friction))
    return SectionSample(
        replace(sample, jacket=assuming(jacket, known)),
        float(found.found),
        bool(found.base_holds) and float(known[base_state].extreme_strain) <= CAPACITY_STRAIN,
        share,
    )


def single_ratios(
    limits: Sequence[Limit], sample: Realisation, *, failures: Failures
) -> dict[str, float]:
    """Ratios of one sample; NaN where there is none."""
    found, broken = _evaluated(limits, sample, 1)
    for limit, error in broken:
        failures.setdefault(limit.id, describe(error))
        found[limit.id] = np.full(1, np.nan)
    return {name: float(value[0]) for name, value in found.items()}
