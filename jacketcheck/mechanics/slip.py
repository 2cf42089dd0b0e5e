"""Slip resistance of pretensioned bolts, and what snug-tight bolts hold by chance.

Friction needs clamping: a bolt that is only snug-tight has a design slip resistance of exactly
zero. Forces are those of one bolt; the resistance of a group is the sum over its bolts.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arguments import require_reduction
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "AASHTO_SLIP_RESISTANCE_FACTOR",
    "AISC_PRETENSION_RATIO",
    "aashto_slip_resistance",
    "aisc_filler_factor",
    "aisc_slip_resistance",
    "probable_slip_load",
]

AISC_PRETENSION_RATIO: Final = 1.13
"""Mean installed over specified minimum pretension, D_u (AISC 360-22 J3.9; RCSC 2004 5.4)."""

AASHTO_SLIP_RESISTANCE_FACTOR: Final = 1.0
"""Slip is checked with R_r = R_n (AASHTO LRFD 9th ed. (2020), 6.13.2.2, from memory)."""


def aisc_filler_factor(fillers: Real) -> Real:
    """Factor for fillers between the connected parts.

    Parameters
    ----------
    fillers
        Number of filler plates between two connected parts, at least zero; scalar or array.

    Returns
    -------
    Real
        Factor h_f [-]: 1.00 for none or one, 0.85 for two or more.

    Raises
    ------
    DomainError
        If the number is not finite and at least zero.

    Notes
    -----
    Two or more fillers that are developed by added bolts also have 1.00; that case is left out,
    on the safe side.

    References
    ----------
    AISC 360-22 (2022), J3.9, filler factor h_f.

    Examples
    --------
    >>> float(aisc_filler_factor(2))
    0.85
    """
    require_at_least(0.0, fillers=fillers)
    factor: Floats = np.where(np.asarray(fillers) > 1.0, 0.85, 1.0)
    return factor


def _applied(pretension: Real, *, pretensioned: bool | NDArray[np.bool_]) -> Floats:
    """Pretension where the bolts are pretensioned, exactly zero elsewhere."""
    applied: Floats = np.where(pretensioned, pretension, 0.0)
    return applied


def aisc_slip_resistance(
    slip_coefficient: Real,
    *,
    pretension: Real,
    slip_planes: Real,
    filler_factor: Real = 1.0,
    pretension_ratio: Real = AISC_PRETENSION_RATIO,
    pretensioned: bool | NDArray[np.bool_] = True,
) -> Real:
    """Nominal slip resistance of one bolt, AISC.

    Parameters
    ----------
    slip_coefficient
        Mean slip coefficient of the faying surface's class mu [-], above zero; scalar or array.
    pretension
        Specified minimum pretension T_b [N], at least zero.
    slip_planes
        Number of slip planes n_s, at least one.
    filler_factor
        Factor h_f from `aisc_filler_factor` [-], above zero and at most one.
    pretension_ratio
        Mean installed over specified pretension D_u [-], above zero.
    pretensioned
        Whether the bolts are installed to the minimum pretension; False gives exactly zero,
        whatever the other arguments.

    Returns
    -------
    Real
        Nominal slip resistance R_n [N], broadcast over the arguments; multiply by
        `aisc_slip_resistance_factor` for the design resistance.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = mu D_u h_f T_b n_s`` (Eq. J3-4). A pretension of zero, as of snug-tight bolts, has a
    resistance of zero. Slip coefficients differ by edition (Class A 0.35 in 2005, 0.30 from 2010).

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.9, Eq. J3-4 (J3.8 in the
    2010 and 2016 editions).

    Examples
    --------
    >>> float(round(aisc_slip_resistance(0.5, pretension=100e3, slip_planes=2)))
    113000.0
    >>> float(aisc_slip_resistance(0.5, pretension=100e3, slip_planes=2, pretensioned=False))
    0.0
    """
    require_positive(slip_coefficient=slip_coefficient, pretension_ratio=pretension_ratio)
    require_reduction(filler_factor=filler_factor)
    require_at_least(0.0, pretension=pretension)
    require_at_least(1.0, slip_planes=slip_planes)
    clamping = np.multiply(pretension_ratio, _applied(pretension, pretensioned=pretensioned))
    return np.multiply(slip_coefficient, filler_factor) * clamping * slip_planes


def aashto_slip_resistance(
    surface_factor: Real,
    *,
    pretension: Real,
    slip_planes: Real,
    hole_size_factor: Real,
    pretensioned: bool | NDArray[np.bool_] = True,
) -> Real:
    """Nominal slip resistance of one bolt, AASHTO.

    Parameters
    ----------
    surface_factor
        Surface condition factor of the faying surface's class K_s [-], above zero; scalar or
        array.
    pretension
        Minimum required bolt tension P_t [N], at least zero.
    slip_planes
        Number of slip planes N_s, at least one.
    hole_size_factor
        Factor K_h from `aashto_hole_size_factor` [-], above zero and at most one.
    pretensioned
        Whether the bolts are installed to the minimum tension; False gives exactly zero.

    Returns
    -------
    Real
        Nominal slip resistance R_n [N], broadcast over the arguments; it is also the factored
        resistance (`AASHTO_SLIP_RESISTANCE_FACTOR`).

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = K_h K_s N_s P_t`` (Eq. 6.13.2.8-1), without the ratio D_u of installed to minimum
    tension that AISC has: 13% less for the same surface. AASHTO asks for it under the Service II
    combination; the hoop force of a jacket has no service value, so it is compared with the force
    at the event checked.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.8.

    Examples
    --------
    >>> float(aashto_slip_resistance(0.5, pretension=1e5, slip_planes=2, hole_size_factor=1.0))
    100000.0
    """
    require_positive(surface_factor=surface_factor)
    require_reduction(hole_size_factor=hole_size_factor)
    require_at_least(0.0, pretension=pretension)
    require_at_least(1.0, slip_planes=slip_planes)
    clamping = _applied(pretension, pretensioned=pretensioned)
    return np.multiply(hole_size_factor, surface_factor) * clamping * slip_planes


def probable_slip_load(slip_coefficient: Real, *, bolt_tension: Real, slip_planes: Real) -> Real:
    """Probable load at which one bolt slips, from a measured tension.

    Parameters
    ----------
    slip_coefficient
        Mean slip coefficient of the faying surface mu [-], above zero; scalar or array.
    bolt_tension
        Tension measured or estimated in the bolt T [N], at least zero.
    slip_planes
        Number of slip planes n_s, at least one.

    Returns
    -------
    Real
        Probable slip load [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``mu T n_s``: Coulomb friction on mean values, with no factor on either side. It says what
    snug-tight bolts may hold by chance; it is never a design resistance, which for them is zero.

    References
    ----------
    Coulomb friction; Kulak, Fisher and Struik, Guide to Design Criteria for Bolted and Riveted
    Joints, 2nd ed. (1987), ch. 5, slip resistance of symmetric butt joints, from memory.

    Examples
    --------
    >>> float(probable_slip_load(0.5, bolt_tension=20e3, slip_planes=1))
    10000.0
    """
    require_positive(slip_coefficient=slip_coefficient)
    require_at_least(0.0, bolt_tension=bolt_tension)
    require_at_least(1.0, slip_planes=slip_planes)
    return np.multiply(slip_coefficient, bolt_tension) * slip_planes
