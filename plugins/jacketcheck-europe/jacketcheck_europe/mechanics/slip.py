"""Slip resistance of preloaded bolts."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive
from jacketcheck_europe.mechanics._tables import HoleType, choose

__all__ = ["hole_factor", "preload", "slip_resistance"]

_HOLE_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.00,
        "oversized": 0.85,
        "short-slot-perpendicular": 0.85,
        "long-slot-perpendicular": 0.70,
        "short-slot-parallel": 0.76,
        "long-slot-parallel": 0.63,
    }
)


def hole_factor(hole: HoleType) -> float:
    """Factor on slip resistance by hole type.

    Parameters
    ----------
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    float
        Factor k_s [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    References
    ----------
    EN 1993-1-8:2005, Design of joints, Table 3.6.

    Examples
    --------
    >>> hole_factor("short-slot-parallel")
    0.76
    """
    return choose(_HOLE_FACTORS, hole, name="hole")


def preload(tensile_strength: Real, *, stress_area: Real) -> Real:
    """Preload of a high-strength bolt.

    Parameters
    ----------
    tensile_strength
        Tensile strength of the bolt f_ub [MPa], above zero; scalar or array.
    stress_area
        Tensile stress area A_s [mm²], above zero.

    Returns
    -------
    Real
        Preload F_p,C [N].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``F_p,C = 0.7 f_ub A_s``, for bolts of class 8.8 and 10.9 tightened under control.

    References
    ----------
    EN 1993-1-8:2005, Eq. 3.7; EN 1090-2:2018, 8.5.1.

    Examples
    --------
    >>> float(preload(800.0, stress_area=245.0))
    137200.0
    """
    require_positive(tensile_strength=tensile_strength, stress_area=stress_area)
    return 0.7 * np.multiply(tensile_strength, stress_area)


def slip_resistance(
    slip_factor: Real,
    *,
    bolt_preload: Real,
    friction_surfaces: Real,
    hole_factor: Real,
    partial_factor: Real,
    bolt_tension: Real = 0.0,
) -> Real:
    """Design slip resistance of one bolt.

    Parameters
    ----------
    slip_factor
        Slip factor of the friction surface's class μ [-], above zero; scalar or array.
    bolt_preload
        Preload F_p,C [N], at least zero; zero for bolts that are only snug-tight.
    friction_surfaces
        Number of friction surfaces n, at least one.
    hole_factor
        Factor k_s from `hole_factor` [-], above zero.
    partial_factor
        γ_M3 at the ultimate, γ_M3,ser at the serviceability limit state [-], above zero.
    bolt_tension
        Tension on the bolt F_t,Ed at that limit state [N], at least zero.

    Returns
    -------
    Real
        Design slip resistance F_s,Rd (or F_s,Rd,ser) [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``F_s,Rd = k_s n μ (F_p,C - 0.8 F_t,Ed) / γ_M3``. Where the tension takes all of the clamping,
    or there is no preload, the resistance is zero.

    References
    ----------
    EN 1993-1-8:2005, 3.9.1, Eq. 3.6, and 3.9.2, Eq. 3.8.

    Examples
    --------
    >>> float(slip_resistance(
    ...     0.5, bolt_preload=100e3, friction_surfaces=2, hole_factor=1.0, partial_factor=1.25))
    80000.0
    """
    require_positive(
        slip_factor=slip_factor, hole_factor=hole_factor, partial_factor=partial_factor
    )
    require_at_least(0.0, bolt_preload=bolt_preload, bolt_tension=bolt_tension)
    require_at_least(1.0, friction_surfaces=friction_surfaces)
    clamping = np.maximum(np.subtract(bolt_preload, np.multiply(0.8, bolt_tension)), 0.0)
    friction = np.multiply(hole_factor, friction_surfaces) * slip_factor
    return friction * clamping / partial_factor
