"""From counts to the rows of the result: probabilities, intervals, indices, rankings."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from jacketcheck.chance.counts import Counts
from jacketcheck.chance.events import Event
from jacketcheck.chance.form import DesignPoint, design_points
from jacketcheck.chance.influence import rank_correlations, tail_shifts
from jacketcheck.chance.intervals import CONFIDENCE, Interval, replicate_interval
from jacketcheck.chance.model import EFFORTS, Model
from jacketcheck.chance.moving import moving_variables
from jacketcheck.chance.result import Driver, LimitChance, SystemChance
from jacketcheck.chance.variables import Scattering
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats

__all__ = ["limit_chances", "system_chance"]


def limit_chances(
    events: Sequence[Event],
    counts: Mapping[Effort, Counts],
    model: Model,
    *,
    at_means: Mapping[str, float],
) -> list[LimitChance]:
    """Rows of the events that were counted.

    Parameters
    ----------
    events
        What was counted.
    counts
        By effort.
    model
        What is the same for all samples.
    at_means
        Ratio with every variable at its mean, by event.
    """
    cheap = [event for event in events if event.effort != "sections"]
    moving = moving_variables(cheap, counts, model)
    scattering = {name: model.variables.among(names) for name, names in moving.items()}
    steady = [one for one in cheap if one.steady and 0.0 < at_means[one.id] < math.inf]
    points = _design_points(steady, model, scattering)
    return [
        _limit_chance(
            event,
            counts[event.effort],
            _FirstOrder(scattering.get(event.id), points.get(event.id)),
            ratio_at_means=at_means[event.id],
            reason=model.evaluation.failures.get(event.id, ""),
        )
        for event in events
    ]


class _FirstOrder(NamedTuple):
    """Variables that move an event, and its design point; None where they are not known."""

    scattering: Scattering | None
    point: DesignPoint | None

    @property
    def importance(self) -> dict[str, float]:
        """Importance of each variable at the design point."""
        if self.scattering is None or self.point is None:
            return {}
        shares = self.scattering.dependence.importance(self.point.alpha)
        return dict(zip(self.scattering.names, map(float, shares), strict=True))

    def moves(self, name: str) -> bool:
        """Whether a variable plays a part, as far as is known."""
        return self.scattering is None or name in self.scattering.names


def _limit_chance(
    event: Event, counts: Counts, first: _FirstOrder, *, ratio_at_means: float, reason: str
) -> LimitChance:
    exceeded, unevaluated = counts.exceeded[event.id], counts.unevaluated[event.id]
    probability, lowest, interval = _between(exceeded, exceeded + unevaluated, counts.size)
    ratios = np.concatenate(counts.ratios[event.id])
    drivers = _drivers(counts, ratios, probability, first.importance)
    missing = int(np.sum(unevaluated))
    return LimitChance(
        id=event.id,
        title=event.title,
        effort=event.effort,
        event=event.text,
        ratio_at_means=ratio_at_means,
        samples=counts.samples,
        exceeded=int(np.sum(exceeded)),
        unevaluated=missing,
        probability=probability,
        lowest=lowest,
        interval=interval,
        first_order_index=None if first.point is None else first.point.index,
        drivers=tuple(one for one in drivers if first.moves(one.name)),
        reason=reason if missing else "",
        declared=event.declared,
    )


def _between(
    low: NDArray[np.int64], high: NDArray[np.int64], size: int, *, confidence: float = CONFIDENCE
) -> tuple[float, float, Interval]:
    """Probability by the higher and by the lower count, and the interval that covers both."""
    shares = high / size, low / size
    of_high, of_low = (replicate_interval(one, size=size, confidence=confidence) for one in shares)
    interval = Interval(of_low.low, of_high.high)
    return float(np.mean(shares[0])), float(np.mean(shares[1])), interval


def _design_points(
    events: Sequence[Event], model: Model, scattering: Mapping[str, Scattering]
) -> dict[str, DesignPoint | None]:
    """Design points of some events, searched side by side."""
    by_id = {event.id: event for event in events}

    def margins(points: Mapping[str, Floats]) -> dict[str, Floats]:
        parts = {name: model.factors(scattering[name], one) for name, one in points.items()}
        ends = np.cumsum([one.shape[1] for one in points.values()])
        size = int(ends[-1])
        factors = {
            name: np.concatenate(
                [
                    np.broadcast_to(part[name], one.shape[1])
                    for part, one in zip(parts.values(), points.values(), strict=True)
                ]
            )
            for name in model.variables.means()
        }
        ratios = model.cheap_ratios([by_id[name] for name in points], factors, size=size)
        starts = [0, *ends[:-1].tolist()]
        with np.errstate(divide="ignore"):
            return {
                name: -np.log(ratios[name][start:end])
                for name, start, end in zip(points, starts, ends.tolist(), strict=True)
            }

    counts = {event.id: len(scattering[event.id].variables) for event in events}
    return design_points({name: count for name, count in counts.items() if count}, margins)


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
    """Union of all events, effort by effort."""
    present = sorted(counts, key=EFFORTS.index)
    confidence = 1.0 - (1.0 - CONFIDENCE) / len(present)
    increments: dict[Effort, float] = {}
    probability = lowest = low = high = 0.0
    for effort in present:
        one = counts[effort]
        most, least, part = _between(one.any_low, one.any_high, one.size, confidence=confidence)
        increments[effort] = most
        probability, lowest = probability + most, lowest + least
        low, high = low + part.low, high + part.high
    dearest = counts[present[-1]]
    probabilities = [row.probability for row in rows]
    probability = min(probability, 1.0)
    return SystemChance(
        probability=probability,
        lowest=min(lowest, 1.0),
        interval=Interval(min(low, 1.0), min(high, 1.0)),
        lower_bound=max(row.lowest for row in rows),
        upper_bound=min(sum(probabilities), 1.0),
        increments=increments,
        drivers=_drivers(dearest, np.concatenate(dearest.largest), probability, {}),
    )
