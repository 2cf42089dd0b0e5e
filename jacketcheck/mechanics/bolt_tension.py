"""Strength of one bolt in tension, alone and together with shear.

A bolt at a seam is pulled only where a one-sided splice plate pries on it. Nominal strengths are
returned; the resistance factors stand beside them as constants.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive
from jacketcheck.mechanics.bolt_strength import (
    AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR,
    AISC_BOLT_RESISTANCE_FACTOR,
    bolt_area,
)

__all__ = [
    "AASHTO_BOLT_TENSION_RESISTANCE_FACTOR",
    "aashto_bolt_tension_resistance",
    "aashto_bolt_tension_with_shear",
    "aisc_bolt_tension_strength",
    "aisc_tensile_stress_with_shear",
]

AASHTO_BOLT_TENSION_RESISTANCE_FACTOR: Final = 0.80
"""Resistance factor phi_t, bolts in tension (AASHTO LRFD 9th ed. (2020) 6.5.4.2, from memory)."""


def aisc_bolt_tension_strength(diameter: Real, *, tensile_stress: Real) -> Real:
    """Nominal tension strength of one bolt, AISC.

    Parameters
    ----------
    diameter
        Nominal bolt diameter [mm], above zero; scalar or array.
    tensile_stress
        Nominal tensile stress on the shank's area F_nt, or F'_nt from
        `aisc_tensile_stress_with_shear` [MPa], at least zero.

    Returns
    -------
    Real
        Nominal tension strength R_n [N]; the resistance factor is 0.75, as in
        shear.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = F_nt A_b`` (Eq. J3-1), or ``F'_nt A_b`` with shear (Eq. J3-2). The stress of Table J3.2
    already allows for the threads. Prying is the caller's to add to the demand.

    References
    ----------
    AISC 360-22 (2022), J3.7, Eq. J3-1; J3.8, Eq. J3-2.

    Examples
    --------
    >>> round(float(aisc_bolt_tension_strength(20.0, tensile_stress=620.0)))
    194779
    """
    require_at_least(0.0, tensile_stress=tensile_stress)
    return np.multiply(tensile_stress, bolt_area(diameter))


def aashto_bolt_tension_resistance(diameter: Real, *, tensile_strength: Real) -> Real:
    """Nominal tension resistance of one bolt, AASHTO.

    Parameters
    ----------
    diameter
        Nominal bolt diameter [mm], above zero; scalar or array.
    tensile_strength
        Specified minimum tensile strength of the bolt F_ub [MPa], above zero.

    Returns
    -------
    Real
        Nominal tension resistance T_n [N]; the resistance factor is
        `AASHTO_BOLT_TENSION_RESISTANCE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``T_n = 0.76 A_b F_ub`` (Eq. 6.13.2.10.2-1).

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.10.2, from memory.

    Examples
    --------
    >>> round(float(aashto_bolt_tension_resistance(20.0, tensile_strength=830.0)))
    198172
    """
    require_positive(tensile_strength=tensile_strength)
    return 0.76 * bolt_area(diameter) * np.asarray(tensile_strength)


def aisc_tensile_stress_with_shear(
    required_shear_stress: Real, *, tensile_stress: Real, shear_stress: Real
) -> Real:
    """Nominal tensile stress left in a bolt that is also sheared, AISC.

    Parameters
    ----------
    required_shear_stress
        Shear stress under factored loads on the shank's area f_rv [MPa], at least zero; scalar or
        array.
    tensile_stress
        Nominal tensile stress F_nt [MPa], above zero (Table J3.2).
    shear_stress
        Nominal shear stress F_nv [MPa], above zero (Table J3.2).

    Returns
    -------
    Real
        Nominal tensile stress F'_nt [MPa]. Zero where the shear alone exceeds the design shear
        stress ``phi F_nv``: such a bolt fails whatever its tension.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``F'_nt = 1.3 F_nt - F_nt f_rv / (phi F_nv) <= F_nt`` with phi = 0.75 (Eq. J3-3a). Shear up to
    30% of its design value leaves the tension whole.

    References
    ----------
    AISC 360-22 (2022), J3.8, Eq. J3-3a (J3.7 in the 2010 and 2016 editions).

    Examples
    --------
    >>> stress = aisc_tensile_stress_with_shear(140.0, tensile_stress=620.0, shear_stress=372.0)
    >>> round(float(stress), 1)
    494.9
    """
    require_at_least(0.0, required_shear_stress=required_shear_stress)
    require_positive(tensile_stress=tensile_stress, shear_stress=shear_stress)
    used = np.divide(required_shear_stress, np.multiply(AISC_BOLT_RESISTANCE_FACTOR, shear_stress))
    left = np.multiply(tensile_stress, np.minimum(1.3 - used, 1.0))
    stress: Floats = np.where(used <= 1.0, left, 0.0)
    return stress


def aashto_bolt_tension_with_shear(
    shear: Real, *, tension_resistance: Real, shear_resistance: Real
) -> Real:
    """Nominal tension resistance left in a bolt that is also sheared, AASHTO.

    Parameters
    ----------
    shear
        Shear on the bolt under factored loads P_u [N], at least zero; scalar or array.
    tension_resistance
        Nominal tension resistance without shear [N], above zero, from
        `aashto_bolt_tension_resistance`.
    shear_resistance
        Nominal shear resistance R_n [N], above zero, from `aashto_bolt_shear_resistance`.

    Returns
    -------
    Real
        Nominal tension resistance T_n [N]. Zero where the shear alone reaches the factored shear
        resistance.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Whole up to ``P_u / R_n = 0.33``, and times ``sqrt(1 - (P_u / (phi_s R_n))**2)`` beyond
    (Eq. 6.13.2.11-1 and -2), phi_s = 0.80. The step at 0.33 is the specification's.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.11, from memory.

    Examples
    --------
    >>> left = aashto_bolt_tension_with_shear(
    ...     60e3, tension_resistance=200e3, shear_resistance=125e3)
    >>> round(float(left))
    160000
    """
    require_at_least(0.0, shear=shear)
    require_positive(tension_resistance=tension_resistance, shear_resistance=shear_resistance)
    ratio = np.divide(shear, shear_resistance)
    used = np.minimum(ratio / AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR, 1.0)
    share: Floats = np.where(ratio <= 0.33, 1.0, np.sqrt(1.0 - np.square(used)))
    return np.multiply(tension_resistance, share)
