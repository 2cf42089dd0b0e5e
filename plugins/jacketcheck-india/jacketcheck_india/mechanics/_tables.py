"""Words that a table is entered with."""

from __future__ import annotations

from collections.abc import Mapping

from jacketcheck.plugin import DomainError

__all__ = ["choose"]


def choose(table: Mapping[str, float], key: str, *, name: str) -> float:
    """Entry of a table; DomainError with the allowed words if there is none."""
    try:
        return table[key]
    except KeyError:
        raise DomainError(name, repr(key), f"one of {', '.join(table)}") from None
