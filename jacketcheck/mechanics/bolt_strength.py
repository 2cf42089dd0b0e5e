"""Strength of one bolt in shear.

What a bolt bears on is in `jacketcheck.mechanics.bolt_bearing`, its tension in
`jacketcheck.mechanics.bolt_tension`. Nominal strengths are returned; the resistance factors stand
beside them as constants.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.mechanics._arguments import (
    ThreadPosition,
    choose,
    require_reduction,
    require_whole,
)
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive
from jacketcheck.mechanics._customary_units import INCH

__all__ = [
    "AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR",
    "AISC_BOLT_RESISTANCE_FACTOR",
    "LONG_JOINT_LENGTH",
    "THIN_FILLER",
    "aashto_bolt_shear_resistance",
    "aashto_filler_factor",
    "aashto_long_joint_factor",
    "aisc_bolt_shear_strength",
    "aisc_filler_shear_factor",
    "aisc_long_joint_factor",
    "bolt_area",
    "seam_joint_length",
]

AISC_BOLT_RESISTANCE_FACTOR: Final = 0.75
"""Resistance factor for bolts in shear and in tension (AISC 360-22 J3.7 and J3.8)."""

AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR: Final = 0.80
"""Resistance factor phi_s, A325 and A490 bolts in shear (AASHTO LRFD 9th ed. (2020) 6.5.4.2)."""

LONG_JOINT_LENGTH: Final = 38.0 * INCH
"""Joint length beyond which bolt shear is reduced [mm] (AISC 360-22 Table J3.2; AASHTO LRFD 9th
ed. (2020) 6.13.2.7)."""

THIN_FILLER: Final = 0.25 * INCH
"""Thickness from which fillers reduce bolt shear [mm] (AISC 360-22 J5.2; AASHTO LRFD 9th ed. (2020)
6.13.6.1.4, from memory)."""

_AASHTO_SHEAR_RATIO: Final[Mapping[str, float]] = MappingProxyType(
    {"excluded": 0.56, "included": 0.45}
)


def bolt_area(diameter: Real) -> Real:
    """Area of the unthreaded shank.

    Parameters
    ----------
    diameter
        Nominal bolt diameter [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Area A_b [mm²].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    Geometry; A_b of AISC 360-22 (2022) J3.7 and AASHTO LRFD 9th ed. (2020) 6.13.2.7.

    Examples
    --------
    >>> round(float(bolt_area(20.0)), 2)
    314.16
    """
    require_positive(diameter=diameter)
    return np.pi * np.square(diameter) / 4.0


def seam_joint_length(*, columns: Real, gauge: Real) -> Real:
    """Length of a seam's bolted joint that counts as its joint length.

    Parameters
    ----------
    columns
        Vertical bolt lines on one side of the seam, at least one; scalar or array.
    gauge
        Horizontal spacing of the lines [mm], at least zero.

    Returns
    -------
    Real
        Joint length along the hoop force [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``(columns - 1) gauge``. Long joints are reduced because the end bolts along the line of force
    take more than the inner ones as the plates stretch; the length is therefore measured parallel
    to the force, on one side of a splice, between the outermost bolts. At a vertical seam the
    force is the hoop force: the height of the bolt lines does not count, however tall the sleeve.

    References
    ----------
    AISC 360-22 (2022), Table J3.2 footnote on fastener pattern length; AASHTO LRFD Bridge Design
    Specifications, 9th ed. (2020), C6.13.2.7; both wordings from memory.

    Examples
    --------
    >>> float(seam_joint_length(columns=3, gauge=80.0))
    160.0
    """
    require_whole(1, columns=columns)
    require_at_least(0.0, gauge=gauge)
    return np.subtract(columns, 1.0) * gauge


def _long_joint_factor(joint_length: Real, reduced: float) -> Real:
    require_at_least(0.0, joint_length=joint_length)
    # a length of 38 in that went through a conversion is not yet longer than 38 in
    is_long = np.asarray(joint_length) > LONG_JOINT_LENGTH * (1.0 + 1e-9)
    factor: Floats = np.where(is_long, reduced, 1.0)
    return factor


def aisc_long_joint_factor(joint_length: Real) -> Real:
    """Factor on bolt shear for a long joint, AISC.

    Parameters
    ----------
    joint_length
        Length between the outermost bolts, parallel to the force [mm], at least zero; scalar or
        array. For a seam see `seam_joint_length`.

    Returns
    -------
    Real
        Factor [-]: 1.0 up to 38 in, 0.833 beyond.

    Raises
    ------
    DomainError
        If the length is not finite and at least zero.

    Notes
    -----
    A step, as the specification has it. The stresses of Table J3.2 already hold 10% for joints up
    to 38 in.

    References
    ----------
    AISC 360-22 (2022), Table J3.2, footnote for end-loaded connections.

    Examples
    --------
    >>> float(aisc_long_joint_factor(1000.0))
    0.833
    """
    return _long_joint_factor(joint_length, 0.833)


def aashto_long_joint_factor(joint_length: Real) -> Real:
    """Factor on bolt shear for a long lap splice in tension, AASHTO.

    Parameters
    ----------
    joint_length
        Length between the outermost bolts on one side of the splice, parallel to the force [mm],
        at least zero; scalar or array. For a seam see `seam_joint_length`.

    Returns
    -------
    Real
        Factor [-]: 1.0 up to 38 in, 0.83 beyond.

    Raises
    ------
    DomainError
        If the length is not finite and at least zero.

    Notes
    -----
    A step, as the specification has it. Editions before the 8th had 0.80 beyond 50 in.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.7.

    Examples
    --------
    >>> float(aashto_long_joint_factor(1000.0))
    0.83
    """
    return _long_joint_factor(joint_length, 0.83)


def aisc_filler_shear_factor(filler_thickness: Real) -> Real:
    """Factor on bolt shear where bolts pass through fillers that are not developed, AISC.

    Parameters
    ----------
    filler_thickness
        Thickness of all fillers that a bolt passes through t [mm], at least zero; scalar or array.

    Returns
    -------
    Real
        Factor [-]: 1 up to 1/4 in, then ``1 - 0.4 (t - 0.25)`` with t in inches, at least 0.85.

    Raises
    ------
    DomainError
        If the thickness is not finite and at least zero.

    Notes
    -----
    The equation is in inches and converted here. Fillers that are extended and fastened outside the
    joint, so that they carry their share, would not reduce it: that case is left out, on the safe
    side.

    References
    ----------
    AISC 360-22 (2022), J5.2(a); the bound of 0.85 from memory.

    Examples
    --------
    >>> round(float(aisc_filler_shear_factor(12.7)), 3)
    0.9
    """
    require_at_least(0.0, filler_thickness=filler_thickness)
    reduced = 1.0 - 0.4 * (np.divide(filler_thickness, INCH) - 0.25)
    factor: Floats = np.clip(reduced, 0.85, 1.0)
    return factor


def aashto_filler_factor(
    filler_thickness: Real, *, connected_thickness: Real, splice_thickness: Real
) -> Real:
    """Factor on bolt shear where bolts pass through fillers that are not developed, AASHTO.

    Parameters
    ----------
    filler_thickness
        Thickness of all fillers that a bolt passes through [mm], at least zero; scalar or array.
    connected_thickness
        Thickness of the connected plate [mm], above zero.
    splice_thickness
        Thickness of the splice plates on both sides of it together [mm], above zero.

    Returns
    -------
    Real
        Factor R [-]: 1 below 1/4 in, then ``(1 + g)/(1 + 2 g)``.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    g is the area of the fillers over the smaller of the areas of the connected plate and of the
    splice plates; over the height of a seam all are alike, so that thicknesses stand for areas. The
    slip resistance is not reduced.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Eq. 6.13.6.1.4-1, from memory.

    Examples
    --------
    >>> round(float(aashto_filler_factor(
    ...     10.0, connected_thickness=20.0, splice_thickness=25.0)), 3)
    0.75
    """
    require_at_least(0.0, filler_thickness=filler_thickness)
    require_positive(connected_thickness=connected_thickness, splice_thickness=splice_thickness)
    share = np.divide(filler_thickness, np.minimum(connected_thickness, splice_thickness))
    thick = np.asarray(filler_thickness) >= THIN_FILLER * (1.0 - 1e-9)
    factor: Floats = np.where(thick, (1.0 + share) / (1.0 + 2.0 * share), 1.0)
    return factor


def aisc_bolt_shear_strength(
    diameter: Real, *, shear_stress: Real, shear_planes: Real, long_joint_factor: Real = 1.0
) -> Real:
    """Nominal shear strength of one bolt, AISC.

    Parameters
    ----------
    diameter
        Nominal bolt diameter [mm], above zero; scalar or array.
    shear_stress
        Nominal shear stress F_nv for the threads' position [MPa], above zero (Table J3.2).
    shear_planes
        Number of shear planes, at least one.
    long_joint_factor
        Factor from `aisc_long_joint_factor` [-], above zero and at most one.

    Returns
    -------
    Real
        Nominal shear strength R_n [N]; the resistance factor is `AISC_BOLT_RESISTANCE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = F_nv A_b`` for each plane (Eq. J3-1).

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.7, Eq. J3-1 and Table
    J3.2 (J3.6 in the 2010 and 2016 editions).

    Examples
    --------
    >>> round(float(aisc_bolt_shear_strength(20.0, shear_stress=372.0, shear_planes=2)))
    233734
    """
    require_positive(shear_stress=shear_stress)
    require_at_least(1.0, shear_planes=shear_planes)
    require_reduction(long_joint_factor=long_joint_factor)
    return np.multiply(shear_stress, bolt_area(diameter)) * shear_planes * long_joint_factor


def aashto_bolt_shear_resistance(
    diameter: Real,
    *,
    tensile_strength: Real,
    threads: ThreadPosition,
    shear_planes: Real,
    long_joint_factor: Real = 1.0,
) -> Real:
    """Nominal shear resistance of one bolt, AASHTO.

    Parameters
    ----------
    diameter
        Nominal bolt diameter [mm], above zero; scalar or array.
    tensile_strength
        Specified minimum tensile strength of the bolt F_ub [MPa], above zero.
    threads
        Whether threads are ``included`` in the shear planes or ``excluded`` from them.
    shear_planes
        Number of shear planes N_s, at least one.
    long_joint_factor
        Factor from `aashto_long_joint_factor` [-], above zero and at most one.

    Returns
    -------
    Real
        Nominal shear resistance R_n [N]; the resistance factor is
        `AASHTO_BOLT_SHEAR_RESISTANCE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = 0.56 A_b F_ub N_s`` with threads excluded, 0.45 with threads included. Editions before
    the 8th had 0.48 and 0.38.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Eq. 6.13.2.7-1 and -2.

    Examples
    --------
    >>> resistance = aashto_bolt_shear_resistance(
    ...     20.0, tensile_strength=830.0, threads="excluded", shear_planes=1)
    >>> round(float(resistance))
    146021
    """
    require_positive(tensile_strength=tensile_strength)
    require_at_least(1.0, shear_planes=shear_planes)
    require_reduction(long_joint_factor=long_joint_factor)
    ratio = choose(_AASHTO_SHEAR_RATIO, threads, name="threads")
    one_plane = ratio * bolt_area(diameter) * np.asarray(tensile_strength)
    return one_plane * shear_planes * long_joint_factor
