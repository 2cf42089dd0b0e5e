"""Slip resistance of pretensioned bolts, and what snug-tight bolts hold by chance.

Friction needs clamping: a bolt that is only snug-tight has a design slip resistance of exactly
zero. Forces are those of one bolt; the resistance of a group is the sum over its bolts.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arguments import HoleType, choose, require_reduction
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "AASHTO_SLIP_RESISTANCE_FACTOR",
    "AISC_PRETENSION_RATIO",
    "aashto_hole_size_factor",
    "aashto_slip_resistance",
    "aashto_slip_tension_reduction",
    "aisc_filler_factor",
    "aisc_slip_resistance",
    "aisc_slip_resistance_factor",
    "aisc_slip_tension_reduction",
    "lowest_hole_size_factor",
    "probable_slip_load",
    "rcsc_slip_resistance_factor",
]

AISC_PRETENSION_RATIO: Final = 1.13
"""Mean installed over specified minimum pretension, D_u (AISC 360-22 J3.9; RCSC 2004 5.4)."""

AASHTO_SLIP_RESISTANCE_FACTOR: Final = 1.0
"""Slip is checked with R_r = R_n (AASHTO LRFD 9th ed. (2020), 6.13.2.2, from memory)."""

_AISC_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.00,
        "short-slot-perpendicular": 1.00,
        "oversized": 0.85,
        "short-slot-parallel": 0.85,
        "long-slot-perpendicular": 0.70,
        "long-slot-parallel": 0.70,
    }
)

_FOUR_STEP_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.00,
        "oversized": 0.85,
        "short-slot-perpendicular": 0.85,
        "short-slot-parallel": 0.85,
        "long-slot-perpendicular": 0.70,
        "long-slot-parallel": 0.60,
    }
)

_LOWEST_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {**_FOUR_STEP_FACTORS, "short-slot-parallel": 0.76}
)

_RCSC_FACTORS: Final[Mapping[str, Mapping[str, float]]] = MappingProxyType(
    {"2020": _AISC_FACTORS, "2004": _FOUR_STEP_FACTORS}
)


def aisc_slip_resistance_factor(hole: HoleType) -> float:
    """Resistance factor for slip by hole type, AISC.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Resistance factor phi [-] of load and resistance factor design.

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    Standard holes and short slots across the force 1.00, oversized holes and short slots along
    the force 0.85, long slots 0.70. The safety factors of allowable strength design are 1.50,
    1.76 and 2.14; this package works with factored forces only.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.9(a) to (c).

    Examples
    --------
    >>> aisc_slip_resistance_factor("short-slot-parallel")
    0.85
    """
    return choose(_AISC_FACTORS, hole, name="hole")


def rcsc_slip_resistance_factor(
    hole: HoleType, *, edition: Literal["2020", "2004"] = "2020"
) -> float:
    """Resistance factor for slip by hole type, RCSC.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.
    edition
        Edition of the specification.

    Returns
    -------
    float
        Resistance factor phi [-].

    Raises
    ------
    DomainError
        If the hole type or the edition is unknown.

    Notes
    -----
    The 2020 edition has the AISC factors. The 2004 edition, met on older drawings, puts all short
    slots at 0.85 and long slots along the force at 0.60, and goes with its own slip coefficients
    (Class A 0.33).

    References
    ----------
    RCSC, Specification for Structural Joints Using High-Strength Bolts (2020), 5.4, from memory;
    RCSC, Specification for Structural Joints Using ASTM A325 or A490 Bolts (2004), 5.4.

    Examples
    --------
    >>> rcsc_slip_resistance_factor("long-slot-parallel", edition="2004")
    0.6
    """
    return choose(choose(_RCSC_FACTORS, edition, name="edition"), hole, name="hole")


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


def aashto_hole_size_factor(hole: HoleType) -> float:
    """Hole size factor, AASHTO.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Factor K_h [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    Standard 1.00; oversized and short slots in either direction 0.85; long slots across the force
    0.70, along it 0.60.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Table 6.13.2.8-2, from memory; the
    same figures stand in RCSC (2004) 5.4.

    Examples
    --------
    >>> aashto_hole_size_factor("long-slot-parallel")
    0.6
    """
    return choose(_FOUR_STEP_FACTORS, hole, name="hole")


def lowest_hole_size_factor(hole: HoleType) -> float:
    """Hole size factor that no code undercuts, for slip that is not a matter of one code.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Factor [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    The smaller of AASHTO's and the Eurocode's for each hole: they part at short slots along the
    force, 0.85 and 0.76, and at long ones, 0.60 and 0.63.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Table 6.13.2.8-2, from memory; EN
    1993-1-8:2005 Table 3.6.

    Examples
    --------
    >>> lowest_hole_size_factor("short-slot-parallel")
    0.76
    """
    return choose(_LOWEST_FACTORS, hole, name="hole")


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


def _share_of_clamping_left(bolt_tension: Real, clamping: Real) -> Real:
    """One less tension over clamping, and zero where the tension takes all of it."""
    require_at_least(0.0, bolt_tension=bolt_tension, pretension=clamping)
    tension, clamping = np.broadcast_arrays(
        np.asarray(bolt_tension, dtype=float), np.asarray(clamping, dtype=float)
    )
    left: Floats = np.maximum(clamping - tension, 0.0)
    return left / np.where(clamping > 0.0, clamping, 1.0)


def aisc_slip_tension_reduction(
    bolt_tension: Real,
    *,
    pretension: Real,
    pretension_ratio: Real = AISC_PRETENSION_RATIO,
) -> Real:
    """Factor on the slip resistance of a bolt that is also pulled, AISC.

    Parameters
    ----------
    bolt_tension
        Factored tension on one bolt T_u/n_b [N], at least zero; scalar or array.
    pretension
        Specified minimum pretension T_b [N], at least zero.
    pretension_ratio
        Mean installed over specified pretension D_u [-], above zero.

    Returns
    -------
    Real
        Factor k_sc [-], from 1 down to 0.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``k_sc = 1 - T_u / (D_u T_b n_b) >= 0`` (Eq. J3-5a); the lower bound is the specification's
    own. Zero where there is no pretension.

    References
    ----------
    AISC 360-22 (2022), J3.10, Eq. J3-5a (J3.9 in the 2010 and 2016 editions).

    Examples
    --------
    >>> float(round(aisc_slip_tension_reduction(56.5e3, pretension=100e3), 3))
    0.5
    """
    require_positive(pretension_ratio=pretension_ratio)
    return _share_of_clamping_left(bolt_tension, np.multiply(pretension_ratio, pretension))


def aashto_slip_tension_reduction(bolt_tension: Real, *, pretension: Real) -> Real:
    """Factor on the slip resistance of a bolt that is also pulled, AASHTO.

    Parameters
    ----------
    bolt_tension
        Tension on one bolt T_u [N], at least zero; scalar or array.
    pretension
        Minimum required bolt tension P_t [N], at least zero.

    Returns
    -------
    Real
        Factor [-], from 1 down to 0.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``1 - T_u / P_t`` (Eq. 6.13.2.11-3); nothing is left once the tension reaches the pretension.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.11, from memory.

    Examples
    --------
    >>> float(aashto_slip_tension_reduction(25e3, pretension=100e3))
    0.75
    """
    return _share_of_clamping_left(bolt_tension, pretension)


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
