"""Words that a table is entered with, and factors that only reduce."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, TypeAlias, TypeVar

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = [
    "BarEnd",
    "ColumnFace",
    "Exposure",
    "HoleMaking",
    "HoleType",
    "Surface",
    "ThreadPosition",
    "Tightening",
    "choose",
    "require_reduction",
    "require_whole",
]

HoleType: TypeAlias = Literal[
    "standard",
    "oversized",
    "short-slot-perpendicular",
    "short-slot-parallel",
    "long-slot-perpendicular",
    "long-slot-parallel",
]
"""Hole type; slots by their long axis relative to the force."""

ThreadPosition: TypeAlias = Literal["included", "excluded"]
"""Whether threads lie in the shear planes."""

HoleMaking: TypeAlias = Literal["drilled", "punched"]
"""Drilled, or subpunched and reamed; or punched full size."""

Tightening: TypeAlias = Literal[
    "snug", "turn-of-nut", "calibrated-wrench", "direct-tension-indicator", "twist-off"
]
"""How the bolts are installed."""

Exposure: TypeAlias = Literal["painted", "weathering"]
"""Painted (or not subject to corrosion), or unpainted weathering steel."""

BarEnd: TypeAlias = Literal["straight", "hooked", "headed"]
"""How the end of a bar is made."""

Surface: TypeAlias = Literal["chipped", "unchipped"]
"""Whether the cracked concrete around a bar was removed before grouting."""

ColumnFace: TypeAlias = Literal["roughened", "smooth"]
"""Face of the column against the grout: roughened to an amplitude of 6 mm (1/4 in), or not."""

_Entry = TypeVar("_Entry")


def choose(table: Mapping[str, _Entry], key: str, *, name: str) -> _Entry:
    """Entry of a table; DomainError with the allowed words if there is none."""
    try:
        return table[key]
    except (KeyError, TypeError):
        raise DomainError(name, repr(key), f"one of {', '.join(table)}") from None


def require_reduction(**factors: Real) -> None:
    """Raise DomainError naming the first factor that is not above zero and at most one."""
    for name, value in factors.items():
        require_positive(**{name: value})
        if np.any(np.asarray(value) > 1.0):
            raise DomainError(name, float(np.max(value)), "above zero and at most 1")


def require_whole(bound: int, **numbers: Real) -> None:
    """Raise DomainError naming the first number that is not whole and at least `bound`."""
    for name, value in numbers.items():
        require_at_least(bound, **{name: value})
        values = np.asarray(value, dtype=float)
        if np.any(values % 1.0):
            bad = float(values[values % 1.0 > 0.0].flat[0])
            raise DomainError(name, bad, "a whole number")
