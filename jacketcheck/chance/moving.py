"""Which variables move an event: found by moving them, one after the other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from jacketcheck.chance.counts import Counts
from jacketcheck.chance.events import Event
from jacketcheck.chance.model import Model
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Floats, Real

__all__ = ["moving_variables"]


def moving_variables(
    events: Sequence[Event], counts: Mapping[Effort, Counts], model: Model
) -> dict[str, tuple[str, ...]]:
    """Names of the variables that move the ratio of each event, in the order of all variables.

    Parameters
    ----------
    events
        Events that need no section analysis.
    counts
        Samples that have been counted, by effort.
    model
        What is the same for all samples.

    Notes
    -----
    Each variable is moved by one standard deviation to either side while the others stay: from the
    means of all, and for each event from the sample that comes nearest to its limit, the one that
    exceeds it most, and some between. A variable that changes no ratio from any of them is taken to
    play no part.
    """
    found: dict[str, tuple[str, ...]] = {}
    for effort in dict.fromkeys(event.effort for event in events):
        group = [event for event in events if event.effort == effort]
        found |= _moving(group, _places(group, counts[effort]), counts[effort].names, model)
    return {event.id: found[event.id] for event in events}


def _places(events: Sequence[Event], counts: Counts) -> Floats:
    """Factors of telling samples, shape (variables, places)."""
    values = np.hstack(counts.values)
    chosen: set[int] = set()
    for event in events:
        ratio = np.concatenate(counts.ratios[event.id])
        with np.errstate(divide="ignore"):
            distance = np.abs(np.log(ratio))
        chosen.add(int(np.argmin(np.where(np.isfinite(distance), distance, np.inf))))
        by_ratio = np.argsort(np.where(np.isnan(ratio), -np.inf, ratio), kind="stable")
        exceed = by_ratio[ratio.size - np.count_nonzero(ratio > 1.0) :]
        between = exceed[[len(exceed) // 4, len(exceed) // 2]] if exceed.size else exceed
        chosen |= {int(by_ratio[-1]), *between.tolist()}
    return values[:, sorted(chosen)]


def _moving(
    events: Sequence[Event], places: Floats, names: Sequence[str], model: Model
) -> dict[str, tuple[str, ...]]:
    means = model.variables.means()
    if not names:
        return {event.id: () for event in events}
    variations = [model.variables.by_name[name].marginal.variation for name in names]
    start = np.array([float(np.asarray(means[name])) for name in names])[:, None]
    places = np.hstack([start, places])
    moved = np.repeat(places[:, :, None], 2 * len(names) + 1, axis=2)
    for index, variation in enumerate(variations):
        moved[index, :, 2 * index + 1] /= 1.0 + variation
        moved[index, :, 2 * index + 2] *= 1.0 + variation
    values: dict[str, Real] = {name: row.ravel() for name, row in zip(names, moved, strict=True)}
    ratios = model.cheap_ratios(events, {**means, **values}, size=moved[0].size)
    found = {}
    for name, ratio in ratios.items():
        moves = _moves(ratio.reshape(moved.shape[1:])).reshape(len(names), 2).any(axis=1)
        found[name] = tuple(np.array(names)[moves].tolist())
    return found


def _moves(ratio: Floats) -> np.ndarray[tuple[int], np.dtype[np.bool_]]:
    """Which columns differ anywhere from the first; what has no ratio says nothing."""
    start, moved = ratio[:, :1], ratio[:, 1:]
    with np.errstate(invalid="ignore"):
        differs = np.abs(moved - start) > 1e-9 * np.abs(start)
    both = np.isfinite(moved) & np.isfinite(start)
    moves: np.ndarray[tuple[int], np.dtype[np.bool_]] = (
        (both & differs) | (np.isinf(moved) != np.isinf(start))
    ).any(axis=0)
    return moves
