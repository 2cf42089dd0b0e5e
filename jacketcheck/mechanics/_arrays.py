"""Array types and range checks shared by every formula."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError

__all__ = ["Floats", "Real", "require_at_least", "require_finite", "require_positive"]

Floats: TypeAlias = NDArray[np.float64]
Real: TypeAlias = float | NDArray[np.float64]
"""A number or an array of numbers; every formula broadcasts over its arguments."""


def _first_bad(value: Real, good: NDArray[np.bool_]) -> object:
    """The first offending number, as a plain float for the message."""
    values = np.asarray(value, dtype=float)
    return float(values[~good].flat[0]) if values.ndim else float(values)


def require_finite(**quantities: Real) -> None:
    """Raise DomainError naming the first quantity that holds a NaN or an infinity."""
    for name, value in quantities.items():
        good = np.isfinite(value)
        if not np.all(good):
            raise DomainError(name, _first_bad(value, np.asarray(good)), "finite")


def require_positive(**quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is not finite and above zero."""
    for name, value in quantities.items():
        good = np.isfinite(value) & (np.asarray(value) > 0.0)
        if not np.all(good):
            raise DomainError(name, _first_bad(value, np.asarray(good)), "finite and above zero")


def require_at_least(bound: float, **quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is not finite and at least `bound`."""
    for name, value in quantities.items():
        good = np.isfinite(value) & (np.asarray(value) >= bound)
        if not np.all(good):
            raise DomainError(
                name, _first_bad(value, np.asarray(good)), f"finite and at least {bound:g}"
            )
