"""Least and largest pitch and edge distance of bolts."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_positive
from jacketcheck_india.mechanics._tables import choose

__all__ = [
    "EDGE_DISTANCE_RATIOS",
    "max_corrosion_edge_distance",
    "max_edge_distance",
    "max_edge_line_pitch",
    "max_pitch",
    "max_tension_pitch",
    "min_edge_distance",
    "min_pitch",
]

EDGE_DISTANCE_RATIOS: Final[Mapping[str, float]] = MappingProxyType(
    {"sheared or hand flame cut": 1.7, "rolled, machine flame cut, sawn or planed": 1.5}
)
"""Least edge distance over hole diameter by kind of edge (IS 800:2007 cl. 10.2.4.2; 1.7 from
memory)."""


def min_pitch(diameter: Real) -> Real:
    """Least distance between centres of bolts.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Least pitch ``2.5 d`` [mm].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.2.

    Examples
    --------
    >>> float(min_pitch(20.0))
    50.0
    """
    require_positive(diameter=diameter)
    return np.multiply(2.5, diameter)


def max_pitch(thickness: Real) -> Real:
    """Largest distance between any two adjacent bolts.

    Parameters
    ----------
    thickness
        Thickness of the thinner plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest pitch ``min(32 t, 300 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.3.1, from memory.

    Examples
    --------
    >>> float(max_pitch(8.0))
    256.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(32.0, thickness), 300.0)


def max_tension_pitch(thickness: Real) -> Real:
    """Largest distance between bolts in a line along the force, in tension.

    Parameters
    ----------
    thickness
        Thickness of the thinner plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest pitch ``min(16 t, 200 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.3.2.

    Examples
    --------
    >>> float(max_tension_pitch(10.0))
    160.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(16.0, thickness), 200.0)


def max_edge_line_pitch(thickness: Real) -> Real:
    """Largest distance between bolts in a line adjacent and parallel to an edge.

    Parameters
    ----------
    thickness
        Thickness of the thinner outside plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest pitch ``min(100 mm + 4 t, 200 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.3.3.

    Examples
    --------
    >>> float(max_edge_line_pitch(10.0))
    140.0
    """
    require_positive(thickness=thickness)
    return np.minimum(100.0 + np.multiply(4.0, thickness), 200.0)


def min_edge_distance(hole: Real, *, edge: str = "sheared or hand flame cut") -> Real:
    """Least distance from the centre of a hole to an edge.

    Parameters
    ----------
    hole
        Hole diameter, or a slot's dimension towards the edge [mm], above zero; scalar or array.
    edge
        Kind of edge, a key of `EDGE_DISTANCE_RATIOS`.

    Returns
    -------
    Real
        Least edge distance [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero, or the edge is unknown.

    Notes
    -----
    1.7 or 1.5 hole diameters.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.4.2; 1.7 from memory.

    Examples
    --------
    >>> float(min_edge_distance(22.0, edge="rolled, machine flame cut, sawn or planed"))
    33.0
    """
    require_positive(hole=hole)
    return np.multiply(choose(EDGE_DISTANCE_RATIOS, edge, name="edge"), hole)


def max_edge_distance(thickness: Real, *, yield_strength: Real) -> Real:
    """Largest distance from the nearest line of bolts to an edge of an unstiffened part.

    Parameters
    ----------
    thickness
        Thickness of the thinner outer plate t [mm], above zero; scalar or array.
    yield_strength
        Yield stress of that plate f_y [MPa], above zero.

    Returns
    -------
    Real
        Largest edge distance ``12 t epsilon`` [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``epsilon = sqrt(250/f_y)``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.4.3, from memory.

    Examples
    --------
    >>> float(max_edge_distance(10.0, yield_strength=250.0))
    120.0
    """
    require_positive(thickness=thickness, yield_strength=yield_strength)
    return 12.0 * np.multiply(thickness, np.sqrt(np.divide(250.0, yield_strength)))


def max_corrosion_edge_distance(thickness: Real) -> Real:
    """Largest distance from the nearest line of bolts to an edge under corrosive influences.

    Parameters
    ----------
    thickness
        Thickness of the thinner plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest edge distance ``40 mm + 4 t`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.2.4.3, from memory.

    Examples
    --------
    >>> float(max_corrosion_edge_distance(10.0))
    80.0
    """
    require_positive(thickness=thickness)
    return 40.0 + np.multiply(4.0, thickness)
