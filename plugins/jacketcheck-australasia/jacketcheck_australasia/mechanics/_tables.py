"""Words that a table is entered with."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from jacketcheck.plugin import DomainError

__all__ = ["by_hole", "choose"]


def choose(table: Mapping[str, float], key: str, *, name: str) -> float:
    """Entry of a table; DomainError with the allowed words if there is none."""
    try:
        return table[key]
    except KeyError:
        raise DomainError(name, repr(key), f"one of {', '.join(table)}") from None


def by_hole(
    *, standard: float, oversized_or_short_slot: float, long_slot: float
) -> Mapping[str, float]:
    """Table by hole type for codes that do not ask which way a slot points."""
    return MappingProxyType(
        {
            "standard": standard,
            "oversized": oversized_or_short_slot,
            "short-slot-perpendicular": oversized_or_short_slot,
            "short-slot-parallel": oversized_or_short_slot,
            "long-slot-perpendicular": long_slot,
            "long-slot-parallel": long_slot,
        }
    )
