"""Which built-in limit states have a probability, and why others have none.

A limit state is evaluated with actual values: resistance factors are taken out, a model's own
scatter is put in, and what a code sets at a lower or upper value is replaced by its mean with its
scatter. What is left is the ratio of demand to capacity of one sample; above 1 it is exceeded.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from jacketcheck.chance.bar_limits import BAR_LIMITS
from jacketcheck.chance.column_limits import COLUMN_LIMITS
from jacketcheck.chance.hoop_limits import HOOP_LIMITS
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.seam_limits import SEAM_LIMITS

__all__ = ["COVERED", "WITHOUT_PROBABILITY"]

COVERED: Final[tuple[Limit, ...]] = (*HOOP_LIMITS, *SEAM_LIMITS, *BAR_LIMITS, *COLUMN_LIMITS)
"""Limit states that have a probability."""

_LAYOUT: Final = "a rule of layout, which the jacket meets as drawn or not: no scatter"

WITHOUT_PROBABILITY: Final[Mapping[str, str]] = MappingProxyType(
    {
        "sleeve-gross-yield": "hoop-dilation and hoop-clamping count every sample that exceeds it",
        "bar-bond": "the same event as bar-length",
        "retained-pressure": "reported only: it has no limit",
        "p-delta": "tells whether an analysis may leave P-Delta out: no event",
        "annulus-clearance": _LAYOUT,
        "bolt-spacing": _LAYOUT,
        "bolt-edge-distance": _LAYOUT,
        "wrench-clearance": _LAYOUT,
        "bolt-threads": _LAYOUT,
    }
)
"""Why the other built-in limit states have none."""
