"""Bar sizes of AS/NZS 4671."""

from __future__ import annotations

import math
from typing import Final

from jacketcheck.plugin import Bar

__all__ = ["BARS"]

_DIAMETERS: Final = (10, 12, 16, 20, 24, 25, 28, 32, 36, 40)
"""Preferred diameters [mm]; 24 and 28 are Australian, 25 is New Zealand's (from memory)."""


def _bar(diameter: int) -> Bar:
    return Bar(
        name=f"AS/NZS {diameter}",
        diameter=float(diameter),
        area=math.pi * diameter**2 / 4.0,
        source="AS/NZS 4671:2019 (nominal area π d²/4; sizes from memory)",
        aliases=(f"N{diameter}", f"HD{diameter}"),
    )


BARS: Final = tuple(_bar(diameter) for diameter in _DIAMETERS)
"""Bars by nominal diameter."""
