"""Parts of rings around the column, by clock angles and radii."""

from __future__ import annotations

import math
from typing import Any

from matplotlib.patches import Polygon, Wedge

__all__ = ["place", "radial_block", "sector"]


def place(clock: float, radius: float) -> tuple[float, float]:
    """Point at a clock angle [rad] and a radius [mm]: x to 3 o'clock, y to 12 o'clock.

    Examples
    --------
    >>> [round(one, 6) for one in place(math.pi / 2, 10.0)]
    [10.0, 0.0]
    """
    return radius * math.sin(clock), radius * math.cos(clock)


def sector(clock: float, extent: float, inner: float, outer: float, **how: Any) -> Wedge:
    """Part of a ring from a clock angle on, clockwise [rad], between two radii [mm]."""
    start = 90.0 - math.degrees(clock + extent)
    end = 90.0 - math.degrees(clock)
    return Wedge((0.0, 0.0), outer, start, end, width=outer - inner, **how)


def radial_block(clock: float, inner: float, outer: float, breadth: float, **how: Any) -> Polygon:
    """A straight block that points outwards, such as a bolt in plan."""
    along, across = place(clock, 1.0), place(clock + math.pi / 2.0, breadth / 2.0)
    corners = [
        (radius * along[0] + sign * across[0], radius * along[1] + sign * across[1])
        for radius, sign in ((inner, -1.0), (inner, 1.0), (outer, 1.0), (outer, -1.0))
    ]
    return Polygon(corners, closed=True, **how)
