"""Slip of bolts of friction type. Forces are those of one bolt."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within
from jacketcheck_india.mechanics._tables import choose

__all__ = [
    "LARGEST_FRICTION_COEFFICIENT",
    "SLIP_FACTOR_SERVICE",
    "SLIP_FACTOR_ULTIMATE",
    "proof_load",
    "slip_capacity",
    "slip_hole_factor",
]

SLIP_FACTOR_ULTIMATE: Final = 1.25
"""gamma_mf where slip is designed at ultimate load (IS 800:2007 cl. 10.4.3)."""

SLIP_FACTOR_SERVICE: Final = 1.10
"""gamma_mf where slip is designed at service load (IS 800:2007 cl. 10.4.3)."""

LARGEST_FRICTION_COEFFICIENT: Final = 0.55
"""Largest coefficient that may be counted (IS 800:2007 cl. 10.4.3, from memory)."""

_HOLE_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.0,
        "oversized": 0.85,
        "short-slot-perpendicular": 0.85,
        "short-slot-parallel": 0.85,
        "long-slot-perpendicular": 0.85,
        "long-slot-parallel": 0.70,
    }
)


def proof_load(tensile_strength: Real, *, tensile_stress_area: Real) -> Real:
    """Minimum tension of a bolt at installation.

    Parameters
    ----------
    tensile_strength
        Ultimate tensile stress of the bolt f_ub [MPa], above zero; scalar or array.
    tensile_stress_area
        Net area at the threads A_nb [mm²], above zero.

    Returns
    -------
    Real
        Proof load F_o [N].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``F_o = A_nb f_o`` with ``f_o = 0.70 f_ub``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.4.3.

    Examples
    --------
    >>> float(round(proof_load(800.0, tensile_stress_area=245.0)))
    137200.0
    """
    require_positive(tensile_strength=tensile_strength, tensile_stress_area=tensile_stress_area)
    return 0.70 * np.multiply(tensile_strength, tensile_stress_area)


def slip_hole_factor(hole: str) -> float:
    """Factor for the type of hole, K_h.

    Parameters
    ----------
    hole
        Hole type: ``standard``, ``oversized``, or ``short-slot`` or ``long-slot`` with
        ``-perpendicular`` or ``-parallel`` to the force.

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
    Clearance holes 1.0; oversized and short slotted holes, and long slots across the force, 0.85;
    long slots along the force 0.7.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.4.3, as quoted in lecture notes of an Indian
    institute of technology.

    Examples
    --------
    >>> slip_hole_factor("long-slot-parallel")
    0.7
    """
    return choose(_HOLE_FACTORS, hole, name="hole")


def slip_capacity(
    friction_coefficient: Real,
    *,
    bolt_tension: Real,
    interfaces: Real,
    hole_factor: Real = 1.0,
    long_joint_factor: Real = 1.0,
) -> Real:
    """Nominal shear capacity of one bolt as governed by slip.

    Parameters
    ----------
    friction_coefficient
        Coefficient of friction mu_f [-], above zero and at most 0.55; scalar or array.
    bolt_tension
        Minimum tension at installation F_o [N], at least zero; zero for snug-tight bolts.
    interfaces
        Number of effective interfaces n_e, at least one.
    hole_factor
        Factor K_h from `slip_hole_factor` [-].
    long_joint_factor
        Factor beta_lj from `jacketcheck_india.mechanics.bolt_strength.long_joint_factor` [-].

    Returns
    -------
    Real
        Nominal capacity V_nsf [N]; divided by `SLIP_FACTOR_ULTIMATE` or `SLIP_FACTOR_SERVICE` it
        is the design capacity V_dsf.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_nsf = mu_f n_e K_h F_o``, in long joints times beta_lj.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.4.3; 10.4.3.1 for long joints, from memory.

    Examples
    --------
    >>> float(round(slip_capacity(0.5, bolt_tension=137200.0, interfaces=1)))
    68600.0
    """
    require_positive(friction_coefficient=friction_coefficient, hole_factor=hole_factor)
    require_within(0.0, LARGEST_FRICTION_COEFFICIENT, friction_coefficient=friction_coefficient)
    require_at_least(0.0, bolt_tension=bolt_tension)
    require_at_least(1.0, interfaces=interfaces)
    require_within(0.0, 1.0, hole_factor=hole_factor)
    require_within(0.75, 1.0, long_joint_factor=long_joint_factor)
    friction = np.multiply(friction_coefficient, interfaces) * bolt_tension
    return np.multiply(friction, hole_factor) * long_joint_factor
