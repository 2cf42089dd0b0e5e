"""Which bar an inspector means: by number, by the clock, or by a side of the column."""

from __future__ import annotations

import math

from jacketcheck.inputs.column import ColumnBars, Damage
from jacketcheck.inputs.jacket import Repair, SurfaceSector
from jacketcheck.mechanics._arguments import Surface

__all__ = ["bar_angle", "bar_numbers", "clock_angle", "nearest_bar", "overlap", "surface_at"]

_FULL = 2.0 * math.pi
_ROUNDING = 1e-9


def clock_angle(position: str) -> float:
    """Angle of a clock position [rad], clockwise from 12 o'clock.

    Examples
    --------
    >>> round(clock_angle("3:00"), 4), clock_angle("12:00")
    (1.5708, 0.0)
    """
    hours, _, minutes = position.partition(":")
    return (int(hours) % 12 + int(minutes or 0) / 60.0) / 12.0 * _FULL


def bar_angle(number: int, bars: ColumnBars) -> float:
    """Angle of a bar [rad] from 0 to 2π, clockwise from 12 o'clock; bar 1 at the first angle."""
    return (math.radians(bars.first_angle) + (number - 1) / bars.count * _FULL) % _FULL


def nearest_bar(position: str, bars: ColumnBars) -> int | None:
    """Number of the bar nearest to a clock position; None midway between two bars."""
    steps = (clock_angle(position) - math.radians(bars.first_angle)) / _FULL * bars.count
    if abs(steps - math.floor(steps) - 0.5) < 1e-6:
        return None
    return round(steps) % bars.count + 1


def bar_numbers(record: Damage, bars: ColumnBars) -> tuple[int, ...]:
    """Bars that a damage record names, in the order in which it names them."""
    by_clock = (nearest_bar(position, bars) for position in record.clock)
    return (*record.bars, *(number for number in by_clock if number is not None))


def surface_at(angle: float, repair: Repair) -> Surface:
    """Surface preparation at an angle [rad]: of the side that holds it, if one does."""
    for side in repair.sides:
        if _holds(side, angle):
            return side.surface
    return repair.surface


def _holds(side: SurfaceSector, angle: float) -> bool:
    return (angle - clock_angle(side.clock_from)) % _FULL <= _extent(side) + _ROUNDING


def _extent(side: SurfaceSector) -> float:
    """Angle from the beginning of a side to its end [rad]."""
    return (clock_angle(side.clock_to) - clock_angle(side.clock_from)) % _FULL


def overlap(side: SurfaceSector, other: SurfaceSector) -> bool:
    """Whether two sides share more than an end.

    Examples
    --------
    >>> north = SurfaceSector(clock_from="10:00", clock_to="2:00", surface="chipped")
    >>> east = SurfaceSector(clock_from="2:00", clock_to="4:00", surface="unchipped")
    >>> overlap(north, east), overlap(north, north)
    (False, True)
    """
    starts = clock_angle(side.clock_from), clock_angle(other.clock_from)
    extents = _extent(side), _extent(other)
    ahead = (starts[1] - starts[0]) % _FULL
    return ahead < extents[0] - _ROUNDING or (_FULL - ahead) % _FULL < extents[1] - _ROUNDING
