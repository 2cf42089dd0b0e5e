"""Designs that no other beats: at most as much of everything, and less of something."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats

__all__ = ["beaten_by", "beats", "cheapest_first", "front"]

Flags = NDArray[np.bool_]
Indexes = NDArray[np.intp]


def beats(costs: Floats, cost: Floats) -> Flags:
    """Which designs take at most as much as one design in everything, and less in something.

    Parameters
    ----------
    costs
        Shape (designs, objectives).
    cost
        Shape (objectives,).

    Examples
    --------
    >>> beats(np.array([[1.0, 2.0], [2.0, 2.0], [3.0, 1.0]]), np.array([2.0, 2.0])).tolist()
    [True, False, False]
    """
    flags: Flags = np.all(costs <= cost, axis=1) & np.any(costs < cost, axis=1)
    return flags


def beaten_by(costs: Floats, others: Floats) -> Flags:
    """Which designs another one beats or equals; both of shape (designs, objectives)."""
    flags = np.zeros(costs.shape[0], dtype=bool)
    for other in others:
        flags |= np.all(other <= costs, axis=1)
    return flags


def cheapest_first(costs: Floats, *tie_breakers: Floats) -> Indexes:
    """Order by the first objective, then by the next ones, then by the tie-breakers.

    Whatever beats a design stands before it; designs equal in everything keep their order.
    """
    keys = [*costs.T, *tie_breakers]
    order: Indexes = np.lexsort(keys[::-1])
    return order


def front(costs: Floats) -> Indexes:
    """Designs that no other beats, cheapest first; of equal designs the first.

    Parameters
    ----------
    costs
        Shape (designs, objectives).

    Examples
    --------
    >>> front(np.array([[2.0, 2.0], [1.0, 3.0], [2.0, 2.0], [3.0, 3.0]])).tolist()
    [1, 0]
    """
    kept: list[int] = []
    for index in cheapest_first(costs):
        if not kept or not np.any(np.all(costs[kept] <= costs[index], axis=1)):
            kept.append(int(index))
    return np.array(kept, dtype=np.intp)
