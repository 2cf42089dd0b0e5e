"""From counts to the rows of the result: probabilities, intervals, indices, rankings."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np

from jacketcheck.chance.counts import Counts
from jacketcheck.chance.evaluation import array_ratios
from jacketcheck.chance.form import DesignPoint, design_point
from jacketcheck.chance.influence import rank_correlations, tail_shifts
from jacketcheck.chance.intervals import CONFIDENCE, Interval, replicate_interval
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.model import EFFORTS, Model
from jacketcheck.chance.points import REPLICATES
from jacketcheck.chance.result import Driver, LimitChance, SystemChance
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats

__all__ = ["limit_chance", "system_chance"]


_NO_RATIO: Final = "the ratio is not a number"


def limit_chance(
    limit: Limit, counts: Counts, model: Model, *, ratio_at_means: float
) -> LimitChance:
    """Row of one limit state."""
    shares = np.array(counts.exceeded[limit.id]) / counts.size
    index, importance = _first_order(limit, model, ratio_at_means)
    unevaluated, probability = counts.unevaluated[limit.id], float(np.mean(shares))
    ratios = np.concatenate(counts.ratios[limit.id])
    drivers = _drivers(counts, ratios, probability, importance)
    names = model.names_of(limit)
    return LimitChance(
        id=limit.id,
        title=limit.title,
        effort=limit.effort,
        event=limit.event,
        ratio_at_means=ratio_at_means,
        samples=counts.size * REPLICATES,
        exceeded=sum(counts.exceeded[limit.id]),
        unevaluated=unevaluated,
        probability=probability,
        interval=replicate_interval(shares, size=counts.size),
        first_order_index=index,
        drivers=tuple(one for one in drivers if one.name in names),
        reason=model.failures.get(limit.id, _NO_RATIO) if unevaluated else "",
    )


def _first_order(
    limit: Limit, model: Model, ratio_at_means: float
) -> tuple[float | None, dict[str, float]]:
    """Reliability index by the design point, and the importance of each variable there."""
    wanted = limit.effort != "sections" and limit.steady and 0.0 < ratio_at_means < math.inf
    scattering = model.scattering([limit])
    found = _design_point(limit, model) if wanted else None
    if found is None:
        return None, {}
    shares = scattering.dependence.importance(found.alpha)
    return found.index, dict(zip(scattering.names, map(float, shares), strict=True))


def _design_point(limit: Limit, model: Model) -> DesignPoint | None:
    scattering = model.scattering([limit])

    def margin(points: Floats) -> Floats:
        ratios = array_ratios(
            [limit],
            model.jacket,
            model.factors(scattering, points),
            size=points.shape[1],
            strain=model.strain,
            failures={},
        )
        with np.errstate(divide="ignore"):
            return np.asarray(-np.log(ratios[limit.id]))

    return design_point(margin, len(scattering.variables))


def _drivers(
    counts: Counts, response: Floats, probability: float, importance: Mapping[str, float]
) -> tuple[Driver, ...]:
    """Variables by falling influence, with their importance where there is a design point."""
    values = np.hstack(counts.values) if counts.values else np.zeros((0, 0))
    shifts, error = tail_shifts(values, response, probability=probability)
    correlations = rank_correlations(values, response)
    drivers = [
        Driver(
            name, float(shift), abs(shift) > 3.0 * error, float(correlation), importance.get(name)
        )
        for name, shift, correlation in zip(counts.names, shifts, correlations, strict=True)
    ]
    drivers.sort(key=lambda one: -abs(one.shift))
    return tuple(drivers)


def system_chance(counts: Mapping[Effort, Counts], rows: Sequence[LimitChance]) -> SystemChance:
    """Union of all limit states, effort by effort."""
    present = sorted(counts, key=EFFORTS.index)
    confidence = 1.0 - (1.0 - CONFIDENCE) / len(present)
    increments: dict[Effort, float] = {}
    low = high = 0.0
    for effort in present:
        one = counts[effort]
        shares = np.array(one.any_new) / one.size
        increments[effort] = float(np.mean(shares))
        part = replicate_interval(shares, size=one.size, confidence=confidence)
        low, high = low + part.low, high + part.high
    dearest = counts[present[-1]]
    probabilities = [row.probability for row in rows]
    probability = min(sum(increments.values()), 1.0)
    return SystemChance(
        probability=probability,
        interval=Interval(min(low, 1.0), min(high, 1.0)),
        lower_bound=max(probabilities),
        upper_bound=min(sum(probabilities), 1.0),
        increments=increments,
        drivers=_drivers(dearest, np.concatenate(dearest.largest), probability, {}),
    )
