"""Design bond stress and development length of bars."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive

__all__ = ["LEAST_GRADE", "design_bond_stress", "development_length"]

LEAST_GRADE: Final = 20.0
"""Lowest grade of concrete with a bond stress, M20 (IS 456:2000 cl. 26.2.1.1)."""

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
