"""Development and lap length of straight deformed bars in tension.

The equations are for bars that are cast in; for a bar grouted into a drilled hole they rest on
the judgement that the grout holds it as well.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within

__all__ = [
    "LARGEST_BAR",
    "LARGEST_LAPPED_BAR",
    "LARGEST_STRENGTH",
    "LEAST_STRENGTH",
    "as3600_development_length",
    "as3600_equation_length",
    "as3600_lap_length",
    "counted_distance",
    "nzs3101_development_length",
    "nzs3101_lap_length",
]

LARGEST_BAR: Final = 50.0
"""Largest bar [mm] of AS/NZS 4671:2019 (from memory)."""

LARGEST_LAPPED_BAR: Final = 40.0
"""Largest bar [mm] that either standard lets be lapped (AS 3600:2018 cl. 13.2.1; NZS 3101:2006 cl.
8.7.2; both from memory)."""

LEAST_STRENGTH: Final = 20.0
LARGEST_STRENGTH: Final = 100.0
"""Least and largest f'c [MPa] that both standards cover (from memory)."""

_LAP_FACTOR: Final = 1.25
_NEAR: Final = 3.0
"""Clear distance of lapped bars, in diameters, up to which they count as touching."""


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
    length, least = _as3600_lengths(
        bar_diameter, bar_stress, concrete_strength, cover_dimension, position_factor
    )
    return np.maximum(length, least)


def as3600_equation_length(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    concrete_strength: Real,
    cover_dimension: Real,
    position_factor: Real = 1.0,
) -> Real:
    """Development length by the equation of AS 3600 alone, before its least value.

    Parameters
    ----------
    bar_diameter, bar_stress, concrete_strength, cover_dimension, position_factor
        As in `as3600_development_length` [mm, MPa, -].

    Returns
    -------
    Real
        ``L_sy.t`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    As in `as3600_development_length`.

    Examples
    --------
    >>> length = as3600_equation_length(
    ...     20.0, bar_stress=500.0, concrete_strength=25.0, cover_dimension=25.0)
    >>> round(float(length))
    859
    """
    length, _ = _as3600_lengths(
        bar_diameter, bar_stress, concrete_strength, cover_dimension, position_factor
    )
    return length


def _as3600_lengths(
    bar_diameter: Real,
    bar_stress: Real,
    concrete_strength: Real,
    cover_dimension: Real,
    position_factor: Real,
) -> tuple[Real, Real]:
    """Length by the equation, and its least value [mm]."""
    _require_bar(bar_diameter, bar_stress, concrete_strength, 120.0)
    require_positive(cover_dimension=cover_dimension)
    require_within(1.0, 1.3, position_factor=position_factor)
    k_2 = (132.0 - np.asarray(bar_diameter)) / 100.0
    k_3 = np.clip(1.0 - 0.15 * (np.divide(cover_dimension, bar_diameter) - 1.0), 0.7, 1.0)
    force = np.multiply(position_factor, bar_stress) * bar_diameter
    length = 0.5 * k_3 * force / (k_2 * np.sqrt(np.minimum(concrete_strength, 65.0)))
    return length, 0.058 * force


def as3600_lap_length(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    concrete_strength: Real,
    cover_dimension: Real,
    clear_distance: Real = 0.0,
    position_factor: Real = 1.0,
) -> Real:
    """Lap length in tension in narrow members such as columns, AS 3600.

    Parameters
    ----------
    bar_diameter
        Bar diameter d_b [mm], above zero and at most `LARGEST_LAPPED_BAR`; scalar or array.
    bar_stress, concrete_strength, cover_dimension, position_factor
        As in `as3600_development_length`.
    clear_distance
        Between the lapped bars [mm], at least zero.

    Returns
    -------
    Real
        Lap length L_sy.t.lap [mm], all bars lapped at one section.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``L_sy.t.lap = max(k_7 L_sy.t, L_sy.t + 1.5 s_b) >= 0.058 f_sy k_1 d_b`` with ``k_7 = 1.25`` and
    the clear distance ``s_b``, zero up to 3 d_b. The least development length does not enter
    L_sy.t here, as the table of the detailing handbook shows.

    References
    ----------
    AS 3600:2018, Concrete structures, cl. 13.2.2: equation and k_7 as in an engineers' calculator
    of splice lengths; s_b up to 3 d_b and the table of laps in Concrete Institute of Australia,
    Reinforcement Detailing Handbook Z06 (2010), Example 6.1.

    Examples
    --------
    >>> lap = as3600_lap_length(
    ...     20.0, bar_stress=500.0, concrete_strength=25.0, cover_dimension=25.0)
    >>> round(float(lap))
    1074
    """
    require_within(0.0, LARGEST_LAPPED_BAR, lapped_bar_diameter=bar_diameter)
    length, least = _as3600_lengths(
        bar_diameter, bar_stress, concrete_strength, cover_dimension, position_factor
    )
    apart = 1.5 * np.asarray(counted_distance(clear_distance, bar_diameter))
    return np.maximum(np.maximum(_LAP_FACTOR * np.asarray(length), length + apart), least)


def counted_distance(clear_distance: Real, bar_diameter: Real) -> Real:
    """Clear distance of lapped bars that lengthens their lap.

    Parameters
    ----------
    clear_distance
        Between the lapped bars [mm], at least zero; scalar or array.
    bar_diameter
        Bar diameter [mm], above zero.

    Returns
    -------
    Real
        The distance where it exceeds three bar diameters, else zero [mm].

    Raises
    ------
    DomainError
        If the distance is below zero.

    References
    ----------
    AS 3600:2018 cl. 13.2.2; NZS 3101:2006 cl. 8.7.2, from memory.

    Examples
    --------
    >>> float(counted_distance(50.0, 20.0)), float(counted_distance(80.0, 20.0))
    (0.0, 80.0)
    """
    require_at_least(0.0, clear_distance=clear_distance)
    near = np.less_equal(clear_distance, np.multiply(_NEAR, bar_diameter))
    return np.where(near, 0.0, clear_distance)


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


def nzs3101_lap_length(
    bar_diameter: Real,
    *,
    bar_stress: Real,
    concrete_strength: Real,
    clear_distance: Real = 0.0,
    position_factor: Real = 1.0,
) -> Real:
    """Lap length in tension, NZS 3101.

    Parameters
    ----------
    bar_diameter
        Bar diameter d_b [mm], above zero and at most `LARGEST_LAPPED_BAR`; scalar or array.
    bar_stress, concrete_strength, position_factor
        As in `nzs3101_development_length`.
    clear_distance
        Between the lapped bars s_L [mm], at least zero.

    Returns
    -------
    Real
        Lap length L_ds [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``L_ds = L_d``, and ``L_d + 1.5 s_L`` where the bars stand more than 3 d_b apart; L_d is the
    basic length.

    References
    ----------
    NZS 3101:Part 1:2006 (with Amendments 1 to 3), Concrete structures standard, cl. 8.7.2, from
    memory.

    Examples
    --------
    >>> lap = nzs3101_lap_length(
    ...     20.0, bar_stress=500.0, concrete_strength=25.0, clear_distance=100.0)
    >>> float(lap)
    1150.0
    """
    require_within(0.0, LARGEST_LAPPED_BAR, lapped_bar_diameter=bar_diameter)
    length = nzs3101_development_length(
        bar_diameter,
        bar_stress=bar_stress,
        concrete_strength=concrete_strength,
        position_factor=position_factor,
    )
    return length + 1.5 * np.asarray(counted_distance(clear_distance, bar_diameter))
