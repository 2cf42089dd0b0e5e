"""Development length of straight deformed bars in tension.

Both equations are for bars that are cast in; for a bar grouted into a drilled hole they rest on
the judgement that the grout holds it as well.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_positive, require_within

__all__ = [
    "LARGEST_BAR",
    "LEAST_STRENGTH",
    "as3600_development_length",
    "nzs3101_development_length",
]

LARGEST_BAR: Final = 50.0
"""Largest bar [mm] of AS/NZS 4671:2019 (from memory)."""

LEAST_STRENGTH: Final = 20.0
"""Least f'c [MPa] that either standard covers (from memory)."""


def _require_bar(bar_diameter: Real, bar_stress: Real, concrete_strength: Real, top: float) -> None:
    require_positive(bar_diameter=bar_diameter, bar_stress=bar_stress)
    require_within(0.0, LARGEST_BAR, bar_diameter=bar_diameter)
    require_within(LEAST_STRENGTH, top, concrete_strength=concrete_strength)


def as3600_development_length(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    concrete_strength: Real,
    cover_dimension: Real,
    position_factor: Real = 1.0,
) -> Real:
    """Basic development length in tension, AS 3600.

    Parameters
    ----------
    bar_diameter
        Bar diameter d_b [mm], above zero and at most 50; scalar or array.
    bar_stress
        Stress to be developed, f_sy where it is the yield strength [MPa], above zero.
    concrete_strength
        Characteristic cylinder strength f'c [MPa], from 20 to 120.
    cover_dimension
        c_d: the lesser of the cover and half of the clear distance to the next bar that develops
        stress [mm], above zero.
    position_factor
        k_1 [-]: 1.3 for horizontal bars with more than 300 mm of concrete cast below, 1.0 for
        others.

    Returns
    -------
    Real
        Basic development length L_sy.tb [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``L_sy.tb = 0.5 k_1 k_3 f_sy d_b / (k_2 sqrt(f'c)) >= 0.058 f_sy k_1 d_b`` with
    ``k_2 = (132 - d_b)/100``, ``k_3 = 1 - 0.15 (c_d - d_b)/d_b`` from 0.7 to 1.0, and no more than
    65 MPa counted for f'c; these bounds are the standard's own. The refined length of 13.1.2.3,
    which counts ties and pressure, is not taken.

    References
    ----------
    AS 3600:2018, Concrete structures, cl. 13.1.2.2; seen for the 2009 edition, whose equation and
    clause number are the same, in a bar maker's design notes, and for f_sy = 500 MPa as a table.

    Examples
    --------
    >>> length = as3600_development_length(
    ...     20.0, bar_stress=500.0, concrete_strength=32.0, cover_dimension=20.0)
    >>> round(float(length))
    789
    """
    _require_bar(bar_diameter, bar_stress, concrete_strength, 120.0)
    require_positive(cover_dimension=cover_dimension)
    require_within(1.0, 1.3, position_factor=position_factor)
    k_2 = (132.0 - np.asarray(bar_diameter)) / 100.0
    k_3 = np.clip(1.0 - 0.15 * (np.divide(cover_dimension, bar_diameter) - 1.0), 0.7, 1.0)
    force = np.multiply(position_factor, bar_stress) * bar_diameter
    length = 0.5 * k_3 * force / (k_2 * np.sqrt(np.minimum(concrete_strength, 65.0)))
    return np.maximum(length, 0.058 * force)


def nzs3101_development_length(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    concrete_strength: Real,
    position_factor: Real = 1.0,
) -> Real:
    """Basic development length in tension, NZS 3101.

    Parameters
    ----------
    bar_diameter
        Bar diameter d_b [mm], above zero and at most 50; scalar or array.
    bar_stress
        Stress to be developed, f_y where it is the yield strength [MPa], above zero.
    concrete_strength
        Specified cylinder strength f'c [MPa], from 20 to 100.
    position_factor
        alpha_a [-]: 1.3 for top bars with more than 300 mm of concrete cast below, 1.0 for others.

    Returns
    -------
    Real
        Basic development length L_db [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``L_db = 0.5 alpha_a f_y d_b / sqrt(f'c) >= 300 mm``, no more than 70 MPa counted for f'c. The
    factors of 8.6.3.3, which count cover and ties, are not taken.

    References
    ----------
    NZS 3101:Part 1:2006 (with Amendments 1 to 3), Concrete structures standard, cl. 8.6.3.2,
    from memory.

    Examples
    --------
    >>> length = nzs3101_development_length(20.0, bar_stress=500.0, concrete_strength=25.0)
    >>> float(length)
    1000.0
    """
    _require_bar(bar_diameter, bar_stress, concrete_strength, 100.0)
    require_within(1.0, 1.3, position_factor=position_factor)
    force = np.multiply(position_factor, bar_stress) * bar_diameter
    return np.maximum(0.5 * force / np.sqrt(np.minimum(concrete_strength, 70.0)), 300.0)
