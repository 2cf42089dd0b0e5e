"""Editions of the codes, and partial safety factors that several clauses share."""

from __future__ import annotations

from typing import Final

__all__ = [
    "BEARING_BOLT_FACTOR",
    "IS_456",
    "IS_800",
    "ULTIMATE_FACTOR",
    "YIELD_FACTOR",
    "is_800",
]

IS_800: Final = "IS 800:2007"
IS_456: Final = "IS 456:2000"

YIELD_FACTOR: Final = 1.10
"""gamma_m0, resistance governed by yielding (IS 800:2007 Table 5, from memory)."""

ULTIMATE_FACTOR: Final = 1.25
"""gamma_m1, resistance governed by ultimate stress (IS 800:2007 Table 5, from memory)."""

BEARING_BOLT_FACTOR: Final = 1.25
"""gamma_mb, bolts of bearing type, and plates that they bear on (IS 800:2007 Table 5)."""


def is_800(clause: str) -> str:
    """A clause of IS 800 with its edition.

    Examples
    --------
    >>> is_800("10.3.3")
    'IS 800:2007 cl. 10.3.3'
    """
    return f"{IS_800} cl. {clause}"
