"""Bearing of one bolt on a plate."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_positive, require_within
from jacketcheck_india.mechanics._tables import choose

__all__ = ["bearing_capacity", "bearing_factor", "bearing_hole_factor"]

_HOLE_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.0,
        "oversized": 0.7,
        "short-slot-perpendicular": 0.7,
        "short-slot-parallel": 0.7,
        "long-slot-perpendicular": 0.5,
        "long-slot-parallel": 0.5,
    }
)


def bearing_hole_factor(hole: str) -> float:
    """Reduction of bearing in holes other than standard clearance holes.

    Parameters
    ----------
    hole
        Hole type: ``standard``, ``oversized``, or ``short-slot`` or ``long-slot`` with
        ``-perpendicular`` or ``-parallel``.

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
    0.7 for oversized and short slotted holes, 0.5 for long slotted holes. The code has it for
    bearing across a slot; slots along the force are reduced alike here, on the safe side.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.4, from memory.

    Examples
    --------
    >>> bearing_hole_factor("oversized")
    0.7
    """
    return choose(_HOLE_FACTORS, hole, name="hole")


def bearing_factor(
    *, end_distance: Real, pitch: Real, hole: Real, bolt_strength: Real, plate_strength: Real
) -> Real:
    """Factor for geometry and strength, k_b.

    Parameters
    ----------
    end_distance
        Centre of the hole to the edge that the bolt bears towards e [mm], above zero; scalar or
        array.
    pitch
        Distance to the next bolt along the force p [mm], above zero; infinite where there is none.
    hole
        Hole dimension along the force d_0 [mm], above zero.
    bolt_strength, plate_strength
        Ultimate tensile stress of bolt and plate, f_ub and f_u [MPa], above zero.

    Returns
    -------
    Real
        Factor k_b [-].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``k_b = min(e/(3 d_0), p/(3 d_0) - 0.25, f_ub/f_u, 1.0)``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.4.

    Examples
    --------
    >>> factor = bearing_factor(
    ...     end_distance=33.0, pitch=60.0, hole=22.0, bolt_strength=800.0, plate_strength=410.0)
    >>> float(factor)
    0.5
    """
    require_positive(
        end_distance=end_distance,
        hole=hole,
        bolt_strength=bolt_strength,
        plate_strength=plate_strength,
    )
    by_pitch = np.divide(pitch, np.multiply(3.0, hole)) - 0.25
    by_end = np.divide(end_distance, np.multiply(3.0, hole))
    by_strength = np.divide(bolt_strength, plate_strength)
    factor = np.minimum(np.minimum(by_end, by_pitch), np.minimum(by_strength, 1.0))
    require_positive(bearing_factor=factor)
    return factor


def bearing_capacity(
    diameter: Real,
    *,
    thickness: Real,
    plate_strength: Real,
    bearing_factor: Real,
    hole_factor: Real = 1.0,
) -> Real:
    """Nominal bearing capacity of a plate at one bolt.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d [mm], above zero; scalar or array.
    thickness
        Thickness of the plates that bear in one direction t [mm], above zero.
    plate_strength
        Ultimate tensile stress of the plate f_u [MPa], above zero.
    bearing_factor
        Factor k_b from `bearing_factor` [-], above zero and at most one.
    hole_factor
        Factor from `bearing_hole_factor` [-], above zero and at most one.

    Returns
    -------
    Real
        Nominal capacity V_npb [N]; divided by gamma_mb = 1.25 it is the design capacity V_dpb.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_npb = 2.5 k_b d t f_u``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.4.

    Examples
    --------
    >>> capacity = bearing_capacity(
    ...     20.0, thickness=10.0, plate_strength=410.0, bearing_factor=0.5)
    >>> float(capacity)
    102500.0
    """
    require_positive(
        diameter=diameter,
        thickness=thickness,
        plate_strength=plate_strength,
        bearing_factor=bearing_factor,
        hole_factor=hole_factor,
    )
    require_within(0.0, 1.0, bearing_factor=bearing_factor, hole_factor=hole_factor)
    area = np.multiply(diameter, thickness)
    return 2.5 * np.multiply(bearing_factor, hole_factor) * area * plate_strength
