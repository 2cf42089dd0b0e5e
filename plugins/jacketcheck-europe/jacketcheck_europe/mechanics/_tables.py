"""Tables that are entered with a word."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, TypeAlias, TypeVar

from jacketcheck.plugin import DomainError

__all__ = ["HoleType", "choose"]

HoleType: TypeAlias = Literal[
    "standard",
    "oversized",
    "short-slot-perpendicular",
    "short-slot-parallel",
    "long-slot-perpendicular",
    "long-slot-parallel",
]
"""Hole type; slots by their long axis relative to the force."""

Entry = TypeVar("Entry")


def choose(table: Mapping[str, Entry], key: str, *, name: str) -> Entry:
    """Entry of a table; DomainError with the allowed words if there is none."""
    if key not in table:
        raise DomainError(name, repr(key), f"one of {', '.join(table)}")
    return table[key]
