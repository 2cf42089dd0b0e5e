"""Figures that a standard prints by bands of thickness, diameter or length."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, Real, require_positive

__all__ = ["Bands", "band_index", "band_value", "bands_are_ordered"]

Bands: TypeAlias = tuple[tuple[float, float], ...]
"""Pairs of the largest value that a band covers and the figure printed for it, ascending."""

_ROUNDING = 1.0 + 1e-9


def band_index(upper_limits: Sequence[float], value: Real, *, name: str) -> NDArray[np.intp]:
    """Index of the band that holds `value`; a limit belongs to the band below it.

    Parameters
    ----------
    upper_limits
        Largest value of each band, ascending.
    value
        Scalar or array, above zero.
    name
        What `value` is called in a message.

    Returns
    -------
    NDArray[np.intp]
        Index, in the shape of `value`.

    Raises
    ------
    DomainError
        If a value is not above zero, or lies beyond the last band.

    Examples
    --------
    >>> int(band_index((16.0, 40.0), 16.0, name="thickness"))
    0
    """
    require_positive(**{name: value})
    limits = np.asarray(upper_limits, dtype=float) * _ROUNDING
    values = np.asarray(value, dtype=float)
    beyond = values > limits[-1]
    if np.any(beyond):
        raise DomainError(name, float(values[beyond].flat[0]), f"at most {upper_limits[-1]:g}")
    return np.asarray(np.searchsorted(limits, values))


def band_value(bands: Bands, value: Real, *, name: str) -> Real:
    """Figure printed for the band that holds `value`; scalar or array like `value`.

    Raises
    ------
    DomainError
        As `band_index`.

    Examples
    --------
    >>> band_value(((32.26, 0.09), (57.33, 0.06)), 35.81, name="diameter")
    0.06
    """
    limits, figures = zip(*bands, strict=True)
    picked: Floats = np.asarray(figures)[band_index(limits, value, name=name)]
    return picked if picked.ndim else float(picked)


def bands_are_ordered(upper_limits: Sequence[float]) -> bool:
    """Whether there is a band, and each ends above the one before."""
    return len(upper_limits) > 0 and all(low < high for low, high in pairwise(upper_limits))
