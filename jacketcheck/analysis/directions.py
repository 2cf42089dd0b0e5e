"""Directions of bending, and the weakest of them."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats

__all__ = ["bending_directions", "weakest"]

_DIRECTIONS: Final = 24
_ALIKE: Final = 1e-5
"""Share by which strengths in two directions may differ and still count as equal."""


def bending_directions() -> Floats:
    """Clock angles of the bending directions that are looked at [rad], both senses included."""
    return np.linspace(0.0, 2.0 * np.pi, _DIRECTIONS, endpoint=False)


def weakest(moment: Floats) -> NDArray[np.intp]:
    """Place of the smallest moment along the last axis.

    A direction in which nothing balances the axial load, so that its moment is NaN, has no
    strength. Directions that mirror one another differ by rounding only: the first of them is
    taken, however they are rounded.
    """
    strength = np.fmax(moment, 0.0)
    least = np.min(strength, axis=-1, keepdims=True)
    return np.asarray(np.argmax(strength <= least * (1.0 + _ALIKE), axis=-1))
