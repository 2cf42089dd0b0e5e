"""Bar sizes of IS 1786."""

from __future__ import annotations

import math
from typing import Final

from jacketcheck.plugin import Bar

__all__ = ["BARS"]

_DIAMETERS: Final = (8, 10, 12, 16, 20, 25, 28, 32, 36, 40)
"""Nominal sizes [mm] from 8 mm on (IS 1786:2008 cl. 6.1, from memory)."""


def _bar(diameter: int) -> Bar:
    return Bar(
        name=f"IS {diameter}",
        diameter=float(diameter),
        area=math.pi * diameter**2 / 4.0,
        source="IS 1786:2008 (area π d²/4, up to 0.1% below the printed one; sizes from memory)",
        aliases=(f"IS 1786 {diameter} mm",),
    )


BARS: Final = tuple(_bar(diameter) for diameter in _DIAMETERS)
"""Bars by nominal diameter."""
