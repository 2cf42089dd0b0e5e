"""What a run of the command line gives back, for tests in any folder."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

__all__ = ["Ran", "Run"]


@dataclass(frozen=True)
class Ran:
    """Exit code and what was printed."""

    code: int
    out: str
    err: str


Run: TypeAlias = Callable[..., Ran]
