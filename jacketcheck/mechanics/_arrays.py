"""Array types and range checks shared by every formula.

Most checks are of one plain number that is in range; it passes without being made an array.
"""

from __future__ import annotations

from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError

__all__ = [
    "Floats",
    "Real",
    "reject",
    "require_at_least",
    "require_at_least_or_infinite",
    "require_finite",
    "require_positive",
    "require_positive_or_infinite",
    "require_within",
]

Floats: TypeAlias = NDArray[np.float64]
Real: TypeAlias = float | NDArray[np.float64]
"""A number or an array of numbers; every formula broadcasts over its arguments."""

_INFINITE: Final = float("inf")


def reject(wrong: NDArray[np.bool_] | np.bool_, allowed: str, **quantity: Real) -> None:
    """Raise DomainError with the first number of a quantity that is wrong, as a plain float."""
    if np.any(wrong):
        [(name, value)] = quantity.items()
        where = np.asarray(wrong)
        first = float(np.broadcast_to(value, where.shape)[where].flat[0])
        raise DomainError(name, first, allowed, out_of_range=where)


def _require(name: str, values: Floats, good: NDArray[np.bool_], allowed: str) -> None:
    if not good.all():
        reject(~good, allowed, **{name: values})


def require_finite(**quantities: Real) -> None:
    """Raise DomainError naming the first quantity that holds a NaN or an infinity."""
    for name, value in quantities.items():
        if isinstance(value, float) and -_INFINITE < value < _INFINITE:
            continue
        values = np.asarray(value, dtype=float)
        _require(name, values, np.isfinite(values), "finite")


def require_positive(**quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is not finite and above zero."""
    for name, value in quantities.items():
        if isinstance(value, float) and 0.0 < value < _INFINITE:
            continue
        values = np.asarray(value, dtype=float)
        _require(name, values, (values > 0.0) & (values < np.inf), "finite and above zero")


def require_positive_or_infinite(**quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is a NaN or not above zero."""
    for name, value in quantities.items():
        values = np.asarray(value, dtype=float)
        _require(name, values, values > 0.0, "above zero, infinite included")


def require_at_least(bound: float, **quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is not finite and at least `bound`."""
    for name, value in quantities.items():
        if isinstance(value, float) and bound <= value < _INFINITE:
            continue
        values = np.asarray(value, dtype=float)
        good = (values >= bound) & (values < np.inf)
        _require(name, values, good, f"finite and at least {bound:g}")


def require_at_least_or_infinite(bound: float, **quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is a NaN or below `bound`."""
    for name, value in quantities.items():
        values = np.asarray(value, dtype=float)
        _require(name, values, values >= bound, f"at least {bound:g}, infinite included")


def require_within(lowest: float, highest: float, **quantities: Real) -> None:
    """Raise DomainError naming the first quantity that is a NaN or not between two bounds."""
    for name, value in quantities.items():
        values = np.asarray(value, dtype=float)
        good = (values >= lowest) & (values <= highest)
        _require(name, values, good, f"from {lowest:g} to {highest:g}")
