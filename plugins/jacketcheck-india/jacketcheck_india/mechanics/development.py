"""Design bond stress, development length and lap length of bars."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within

__all__ = [
    "LARGEST_LAPPED_BAR",
    "LEAST_GRADE",
    "close_lap_factor",
    "design_bond_stress",
    "development_length",
    "lap_length",
]

LEAST_GRADE: Final = 20.0
"""Lowest grade of concrete with a bond stress, M20 (IS 456:2000 cl. 26.2.1.1)."""

LARGEST_LAPPED_BAR: Final = 36.0
"""Largest bar that is lapped rather than welded [mm] (IS 456:2000 cl. 26.2.5.1(a))."""

_CLOSE_LAPS: Final = 1.4

_GRADES: Final = (LEAST_GRADE, 25.0, 30.0, 35.0, 40.0)
_STRESSES: Final = (1.2, 1.4, 1.5, 1.7, 1.9)
"""Plain bars in tension by grade of concrete (IS 456:2000 cl. 26.2.1.1)."""

_DEFORMED: Final = 1.60
_COMPRESSION: Final = 1.25


def design_bond_stress(
    cube_strength: Real, *, deformed: bool = True, compression: bool = False
) -> Real:
    """Design bond stress in the limit state method.

    Parameters
    ----------
    cube_strength
        Characteristic cube strength f_ck [MPa], at least 20; scalar or array. Between two grades
        the lower one counts.
    deformed
        Whether the bars are deformed bars to IS 1786.
    compression
        Whether the bars are in compression.

    Returns
    -------
    Real
        Design bond stress tau_bd [MPa].

    Raises
    ------
    DomainError
        If the strength is not finite and at least 20 MPa.

    Notes
    -----
    1.2, 1.4, 1.5, 1.7 and 1.9 MPa for M20, M25, M30, M35 and M40 and above; 60% more for deformed
    bars, 25% more in compression. No interpolation.

    References
    ----------
    IS 456:2000, Plain and reinforced concrete, cl. 26.2.1.1.

    Examples
    --------
    >>> round(float(design_bond_stress(32.0)), 6)
    2.4
    """
    require_at_least(LEAST_GRADE, cube_strength=cube_strength)
    # a strength that went through a conversion of units still is of its grade
    reached = np.multiply(cube_strength, 1.0 + 1e-9)
    stress: Real = np.asarray(_STRESSES)[np.searchsorted(_GRADES, reached, side="right") - 1]
    factor = (_DEFORMED if deformed else 1.0) * (_COMPRESSION if compression else 1.0)
    return np.multiply(factor, stress)


def development_length(bar_diameter: Real, *, bar_stress: Real, bond_stress: Real) -> Real:
    """Length over which a bar develops a stress.

    Parameters
    ----------
    bar_diameter
        Nominal diameter of the bar [mm], above zero; scalar or array.
    bar_stress
        Stress in the bar sigma_s [MPa], above zero.
    bond_stress
        Design bond stress tau_bd [MPa], above zero.

    Returns
    -------
    Real
        Development length L_d [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``L_d = phi sigma_s/(4 tau_bd)``. For bars that are cast in; for a bar grouted into a drilled
    hole it rests on the judgement that the grout holds it as well.

    References
    ----------
    IS 456:2000, Plain and reinforced concrete, cl. 26.2.1.

    Examples
    --------
    >>> float(development_length(20.0, bar_stress=360.0, bond_stress=1.92))
    937.5
    """
    require_positive(bar_diameter=bar_diameter, bar_stress=bar_stress, bond_stress=bond_stress)
    return np.multiply(bar_diameter, bar_stress) / np.multiply(4.0, bond_stress)


def close_lap_factor(clear_distance: Real, *, bar_diameter: Real) -> Real:
    """Factor on the lap length of bars whose laps stand close together.

    Parameters
    ----------
    clear_distance
        Between adjacent laps [mm], at least zero; scalar or array.
    bar_diameter
        Diameter of the lapped bars [mm], above zero.

    Returns
    -------
    Real
        1.4 below the larger of 75 mm and six diameters, else 1 [-].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    IS 456:2000, Plain and reinforced concrete, cl. 26.2.5.1(c)(2), from memory.

    Examples
    --------
    >>> float(close_lap_factor(100.0, bar_diameter=20.0))
    1.4
    """
    require_at_least(0.0, clear_distance=clear_distance)
    require_positive(bar_diameter=bar_diameter)
    apart = np.maximum(75.0, np.multiply(6.0, bar_diameter))
    return np.where(np.less(clear_distance, apart), _CLOSE_LAPS, 1.0)


def lap_length(
    development_length: Real,
    *,
    bar_diameter: Real,
    direct_tension: bool = False,
    close_laps: Real = 1.0,
) -> Real:
    """Length of a lap splice in tension.

    Parameters
    ----------
    development_length
        L_d of the smaller bar [mm], above zero; scalar or array.
    bar_diameter
        Its diameter [mm], above zero and at most `LARGEST_LAPPED_BAR`.
    direct_tension
        Whether the member is in direct tension rather than in bending.
    close_laps
        Factor from `close_lap_factor` [-], from 1 to 1.4.

    Returns
    -------
    Real
        Lap length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``max(L_d, 30 phi)`` in flexural and ``max(2 L_d, 30 phi)`` in direct tension, times 1.4 for
    close laps; straight length at least ``max(15 phi, 200 mm)``.

    References
    ----------
    IS 456:2000, Plain and reinforced concrete, cl. 26.2.5.1, as quoted in several notes on
    detailing and in SP 34 cl. 4.4.2; the factor 1.4 from memory.

    Examples
    --------
    >>> float(lap_length(800.0, bar_diameter=20.0))
    800.0
    >>> float(lap_length(800.0, bar_diameter=20.0, direct_tension=True))
    1600.0
    """
    require_positive(development_length=development_length, bar_diameter=bar_diameter)
    require_within(0.0, LARGEST_LAPPED_BAR, lapped_bar_diameter=bar_diameter)
    require_within(1.0, _CLOSE_LAPS, close_laps=close_laps)
    times = 2.0 if direct_tension else 1.0
    straight = np.maximum(np.multiply(15.0, bar_diameter), 200.0)
    lap = np.maximum(np.multiply(times, development_length), np.multiply(30.0, bar_diameter))
    return np.maximum(np.multiply(close_laps, lap), straight)
