"""Reinforcement that crosses the breakout surface of anchors and takes their tension in its place.

Strength of the reinforcement, and the length that develops it on either side of the surface by the
way its ends are made.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arguments import BarEnd
from jacketcheck.mechanics._arrays import Real, require_positive
from jacketcheck.mechanics._customary_units import INCH, PSI
from jacketcheck.mechanics.development_length import simplified_development_length

__all__ = [
    "ANCHOR_REINFORCEMENT_FACTOR",
    "FARTHEST_REINFORCEMENT",
    "LARGEST_TESTED_BAR",
    "anchor_reinforcement_strength",
    "end_development_length",
    "hook_concrete_factor",
]

ANCHOR_REINFORCEMENT_FACTOR: Final = 0.75
"""Strength reduction factor of anchor reinforcement (ACI 318-19 17.5.2.1)."""

FARTHEST_REINFORCEMENT: Final = 0.5
"""Largest distance from the anchor over its embedment at which reinforcement counts. ACI 318-19
R17.5.2.1, from memory."""

LARGEST_TESTED_BAR: Final = 0.75 * INCH
"""Largest bar of the tests behind the provision [mm]: No. 6 (ACI 318-19 R17.5.2.1, from memory)."""

_CONFINED: Final = 1.6
"""psi_r of hooks and psi_p of heads that no ties confine (ACI 318-19 Tables 25.4.3.2, 25.4.4.3)."""
_LOCATION: Final = 1.25
"""psi_o outside of columns' cores (same tables)."""


def anchor_reinforcement_strength(area: Real, *, yield_strength: Real, angle: Real) -> Real:
    """Nominal tension that reinforcement across the breakout surface takes along the anchors.

    Parameters
    ----------
    area
        Area of all bars that cross the surface [mm²], above zero; scalar or array.
    yield_strength
        Specified yield strength [MPa], above zero.
    angle
        Angle between these bars and the anchors [rad], at least 0 and below pi/2.

    Returns
    -------
    Real
        ``A_s f_y cos(alpha)`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The bars must be developed on both sides of the surface, see `end_development_length`. The
    earthquake factor on breakout does not apply (17.10.5.4(b)).

    References
    ----------
    ACI 318-19 17.5.2.1(a).

    Examples
    --------
    >>> round(float(anchor_reinforcement_strength(1000.0, yield_strength=420.0, angle=0.0)))
    420000
    """
    require_positive(area=area, yield_strength=yield_strength)
    found = np.asarray(angle, dtype=float)
    if not np.all((found >= 0.0) & (found < np.pi / 2.0)):
        raise DomainError("angle", angle, "at least 0 and below a right angle")
    strength: Real = np.multiply(area, yield_strength) * np.cos(found)
    return strength


def hook_concrete_factor(concrete_strength: Real) -> Real:
    """Factor for the strength of concrete around hooks and heads ``psi_c``.

    Parameters
    ----------
    concrete_strength
        Specified compressive strength [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        ``f'_c/15000 + 0.6`` below 6000 psi, in psi, else 1 [-].

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    References
    ----------
    ACI 318-19 Tables 25.4.3.2 and 25.4.4.3, from memory.

    Examples
    --------
    >>> round(float(hook_concrete_factor(27.579)), 3)
    0.867
    """
    require_positive(concrete_strength=concrete_strength)
    return np.minimum(np.divide(concrete_strength, PSI) / 15_000.0 + 0.6, 1.0)


def end_development_length(
    bar_diameter: Real, *, yield_strength: Real, concrete_strength: Real, end: BarEnd
) -> Real:
    """Development length in tension of an uncoated bar by the way its end is made.

    Parameters
    ----------
    bar_diameter
        Bar diameter [mm], above zero; scalar or array.
    yield_strength
        Stress to be developed [MPa], above zero.
    concrete_strength
        Specified compressive strength [MPa], above zero; at most 10,000 psi count.
    end
        ``straight``, ``hooked`` or ``headed``.

    Returns
    -------
    Real
        Development length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Hooks: ``f_y psi_r psi_o psi_c/(55 sqrt(f'_c)) d_b**1.5``, heads with 75 for 55, in psi and
    inches, at least 8 d_b and 6 in; psi_c is f'_c/15,000 + 0.6 below 6000 psi. The factors of bars
    that no ties confine and that lie outside of a column's core count, 1.6 and 1.25. Straight bars
    by the table, not well spaced.

    References
    ----------
    ACI 318-19 25.4.3.1, 25.4.4.2 and Table 25.4.2.3, from memory.

    Examples
    --------
    >>> inches = end_development_length(
    ...     19.05, yield_strength=413.7, concrete_strength=27.58, end="hooked") / 25.4
    >>> round(float(inches), 1)
    19.4
    """
    if end == "straight":
        return simplified_development_length(
            bar_diameter,
            yield_strength=yield_strength,
            concrete_strength=concrete_strength,
            well_spaced=False,
        )
    require_positive(
        bar_diameter=bar_diameter,
        yield_strength=yield_strength,
        concrete_strength=concrete_strength,
    )
    strength = np.minimum(np.divide(concrete_strength, PSI), 10_000.0)
    factor = hook_concrete_factor(concrete_strength)
    stress = np.divide(yield_strength, PSI) * _CONFINED * _LOCATION * factor
    divisor = 55.0 if end == "hooked" else 75.0
    diameter = np.divide(bar_diameter, INCH)
    length = stress / (divisor * np.sqrt(strength)) * diameter**1.5
    return np.maximum(length, np.maximum(8.0 * diameter, 6.0)) * INCH
