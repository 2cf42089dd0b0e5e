"""Bolts in shear and in tension."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within
from jacketcheck_europe.mechanics._tables import choose

__all__ = [
    "HighStrengthClass",
    "bolt_shear_resistance",
    "bolt_tension_resistance",
    "high_strength_class",
    "long_joint_factor",
    "packing_factor",
    "shear_and_tension",
    "small_bolt_factor",
]

_LEAST_STRENGTH: Final = 800.0
_UPPER_STRENGTH: Final = 1000.0


class HighStrengthClass(NamedTuple):
    """Property class that a bolt counts as.

    Attributes
    ----------
    tensile_strength
        Nominal f_ub of the class [MPa].
    shear_coefficient
        α_v with threads where they were asked for [-].
    """

    tensile_strength: Real
    shear_coefficient: Real


def high_strength_class(tensile_strength: Real, *, threads: str) -> HighStrengthClass:
    """Property class, 8.8 or 10.9, that a bolt's strength reaches.

    Parameters
    ----------
    tensile_strength
        Specified tensile strength [MPa], at least 800; scalar or array.
    threads
        Whether threads are ``included`` in or ``excluded`` from the shear planes.

    Returns
    -------
    HighStrengthClass
        Nominal strength [MPa] and shear coefficient [-] of the class, shaped like the argument.

    Raises
    ------
    DomainError
        If a bolt does not reach class 8.8, or the word is unknown.

    Notes
    -----
    α_v is 0.6 for class 8.8 and 0.5 for class 10.9 with threads in the plane, 0.6 for both with
    the shank in it. Bolts of other standards count as the class that they reach, with no more
    than its strength: between 800 and 1000 MPa as 8.8.

    References
    ----------
    EN 1993-1-8:2005, 3.1.2, Table 3.1 and Table 3.4.

    Examples
    --------
    >>> found = high_strength_class(830.0, threads="included")
    >>> float(found.tensile_strength), float(found.shear_coefficient)
    (800.0, 0.6)
    """
    require_at_least(_LEAST_STRENGTH, tensile_strength=tensile_strength)
    in_thread = choose({"included": 0.5, "excluded": 0.6}, threads, name="threads")
    upper = np.greater_equal(tensile_strength, _UPPER_STRENGTH)
    return HighStrengthClass(
        np.where(upper, _UPPER_STRENGTH, _LEAST_STRENGTH)[()], np.where(upper, in_thread, 0.6)[()]
    )


def packing_factor(packing: Real, *, diameter: Real) -> Real:
    """Reduction of bolt shear where bolts pass through packings, β_p.

    Parameters
    ----------
    packing
        Thickness of the packings t_p [mm], at least zero; scalar or array.
    diameter
        Nominal diameter of the bolt d [mm], above zero.

    Returns
    -------
    Real
        Factor β_p [-].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``9 d/(8 d + 3 t_p)`` for packings thicker than a third of the diameter, else 1.0.

    References
    ----------
    EN 1993-1-8:2005, 3.6.1(12), Eq. 3.3, from memory.

    Examples
    --------
    >>> float(packing_factor(20.0, diameter=20.0))
    0.8181818181818182
    """
    require_at_least(0.0, packing=packing)
    require_positive(diameter=diameter)
    return np.minimum(9.0 / (8.0 + 3.0 * np.divide(packing, diameter)), 1.0)


def bolt_shear_resistance(
    area: Real,
    *,
    tensile_strength: Real,
    shear_coefficient: Real,
    partial_factor: Real,
    joint_factor: Real = 1.0,
) -> Real:
    """Design shear resistance of one bolt in one plane.

    Parameters
    ----------
    area
        Stress area with threads in the shear plane, area of the shank without [mm²], above zero;
        scalar or array.
    tensile_strength
        Tensile strength of the bolt f_ub [MPa], above zero.
    shear_coefficient
        α_v [-], above zero; see `high_strength_class`.
    partial_factor
        γ_M2 [-], above zero.
    joint_factor
        Factors of `long_joint_factor`, `small_bolt_factor` and `packing_factor` [-], above zero, at
        most 1.

    Returns
    -------
    Real
        F_v,Rd for each shear plane [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``F_v,Rd = α_v f_ub A / γ_M2``.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> float(bolt_shear_resistance(
    ...     245.0, tensile_strength=800.0, shear_coefficient=0.6, partial_factor=1.25))
    94080.0
    """
    require_positive(
        area=area,
        tensile_strength=tensile_strength,
        shear_coefficient=shear_coefficient,
        partial_factor=partial_factor,
        joint_factor=joint_factor,
    )
    require_within(0.0, 1.0, joint_factor=joint_factor)
    nominal = np.multiply(shear_coefficient, tensile_strength) * area
    return nominal * joint_factor / partial_factor


def bolt_tension_resistance(
    stress_area: Real, *, tensile_strength: Real, partial_factor: Real
) -> Real:
    """Design tension resistance of one bolt.

    Parameters
    ----------
    stress_area
        Tensile stress area A_s [mm²], above zero; scalar or array.
    tensile_strength
        Tensile strength of the bolt f_ub [MPa], above zero.
    partial_factor
        γ_M2 [-], above zero.

    Returns
    -------
    Real
        F_t,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``F_t,Rd = 0.9 f_ub A_s / γ_M2``; countersunk bolts are not covered.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> float(bolt_tension_resistance(245.0, tensile_strength=800.0, partial_factor=1.25))
    141120.0
    """
    require_positive(
        stress_area=stress_area, tensile_strength=tensile_strength, partial_factor=partial_factor
    )
    return 0.9 * np.multiply(tensile_strength, stress_area) / partial_factor


def shear_and_tension(shear_ratio: Real, *, tension_ratio: Real) -> Real:
    """Utilisation of a bolt in shear and tension together.

    Parameters
    ----------
    shear_ratio
        F_v,Ed over F_v,Rd [-], at least zero; scalar or array.
    tension_ratio
        F_t,Ed over F_t,Rd [-], at least zero; itself not to exceed 1.

    Returns
    -------
    Real
        ``F_v,Ed/F_v,Rd + F_t,Ed/(1.4 F_t,Rd)`` [-], not to exceed 1.

    Raises
    ------
    DomainError
        If an argument is not finite and at least zero.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> round(float(shear_and_tension(0.5, tension_ratio=0.5)), 4)
    0.8571
    """
    require_at_least(0.0, shear_ratio=shear_ratio, tension_ratio=tension_ratio)
    return np.add(shear_ratio, np.divide(tension_ratio, 1.4))


def long_joint_factor(joint_length: Real, *, diameter: Real) -> Real:
    """Factor on bolt shear for a long joint.

    Parameters
    ----------
    joint_length
        Length between the outermost bolts along the force L_j [mm], at least zero; scalar or array.
        At a seam see `jacketcheck.mechanics.bolt_strength.seam_joint_length`.
    diameter
        Bolt diameter d [mm], above zero.

    Returns
    -------
    Real
        Factor β_Lf [-], from 1 up to 15 d down to 0.75.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``β_Lf = 1 - (L_j - 15 d) / (200 d)``, ``0.75 <= β_Lf <= 1``; both bounds are the standard's.

    References
    ----------
    EN 1993-1-8:2005, 3.8, Eq. 3.5.

    Examples
    --------
    >>> float(long_joint_factor(800.0, diameter=20.0))
    0.875
    """
    require_at_least(0.0, joint_length=joint_length)
    require_positive(diameter=diameter)
    beyond = np.subtract(joint_length, np.multiply(15.0, diameter))
    return np.clip(1.0 - beyond / np.multiply(200.0, diameter), 0.75, 1.0)


def small_bolt_factor(diameter: Real, *, hole: Real) -> Real:
    """Factor on bolt shear for M12 and M14 in holes with 2 mm of clearance.

    Parameters
    ----------
    diameter
        Bolt diameter [mm], above zero; scalar or array.
    hole
        Hole diameter [mm], above the bolt's.

    Returns
    -------
    Real
        Factor [-]: 0.85 for bolts up to 14 mm with a clearance of 2 mm or more, else 1.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    References
    ----------
    EN 1993-1-8:2005, 3.6.1(5).

    Examples
    --------
    >>> float(small_bolt_factor(12.0, hole=14.0)), float(small_bolt_factor(12.0, hole=13.0))
    (0.85, 1.0)
    """
    clearance = np.subtract(hole, diameter)
    require_positive(diameter=diameter, clearance=clearance)
    # 2 mm that went through a conversion are still 2 mm
    loose = np.less_equal(diameter, 14.0) & np.greater_equal(clearance, 2.0 - 1e-9)
    return np.where(loose, 0.85, 1.0)[()]
