"""Least and largest pitch and edge distance of bolts."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_positive
from jacketcheck_australasia.mechanics._tables import choose

__all__ = [
    "EDGE_DISTANCE_RATIOS",
    "max_edge_distance",
    "max_outside_line_pitch",
    "max_pitch",
    "min_edge_distance",
    "min_pitch",
]

EDGE_DISTANCE_RATIOS: Final[Mapping[str, float]] = MappingProxyType(
    {"sheared or hand flame cut": 1.75, "machine flame cut, sawn or planed": 1.50, "rolled": 1.25}
)
"""Least edge distance over bolt diameter by kind of edge (AS 4100:2020 Table 9.5.2, 9.6.2 in the
1998 edition; NZS 3404:1997 Table 9.6.2; both from memory)."""


def min_pitch(diameter: Real) -> Real:
    """Least distance between centres of bolts.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d_f [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Least pitch ``2.5 d_f`` [mm].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.5.1 (9.6.1 in the 1998 edition); NZS 3404:Part 1:1997,
    cl. 9.6.1; both from memory.

    Examples
    --------
    >>> float(min_pitch(20.0))
    50.0
    """
    require_positive(diameter=diameter)
    return np.multiply(2.5, diameter)


def max_pitch(thickness: Real) -> Real:
    """Largest distance between centres of bolts.

    Parameters
    ----------
    thickness
        Thickness of the thinner ply t_p [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest pitch ``min(15 t_p, 200 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.5.3 (9.6.3 in the 1998 edition); NZS 3404:Part 1:1997,
    cl. 9.6.3; both from memory.

    Examples
    --------
    >>> float(max_pitch(10.0))
    150.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(15.0, thickness), 200.0)


def max_outside_line_pitch(thickness: Real) -> Real:
    """Largest distance between centres of bolts in an outside line along the force.

    Parameters
    ----------
    thickness
        Thickness of the thinner ply t_p [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest pitch ``min(4 t_p + 100 mm, 200 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.5.3 (9.6.3 in the 1998 edition); NZS 3404:Part 1:1997,
    cl. 9.6.3; both from memory.

    Examples
    --------
    >>> float(max_outside_line_pitch(10.0))
    140.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(4.0, thickness) + 100.0, 200.0)


def min_edge_distance(diameter: Real, *, edge: str = "sheared or hand flame cut") -> Real:
    """Least distance from the centre of a bolt to an edge.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d_f [mm], above zero; scalar or array.
    edge
        Kind of edge, a key of `EDGE_DISTANCE_RATIOS`.

    Returns
    -------
    Real
        Least edge distance [mm].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero, or the edge is unknown.

    Notes
    -----
    1.75, 1.50 or 1.25 bolt diameters. Tear-out may ask for more, see
    `jacketcheck_australasia.mechanics.ply_bearing`.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.5.2 (9.6.2 in the 1998 edition); NZS 3404:Part 1:1997,
    cl. 9.6.2; both from memory.

    Examples
    --------
    >>> float(min_edge_distance(20.0, edge="machine flame cut, sawn or planed"))
    30.0
    """
    require_positive(diameter=diameter)
    return np.multiply(choose(EDGE_DISTANCE_RATIOS, edge, name="edge"), diameter)


def max_edge_distance(thickness: Real) -> Real:
    """Largest distance from the centre of a bolt to the nearest edge.

    Parameters
    ----------
    thickness
        Thickness of the thinnest outer ply t_p [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest edge distance ``min(12 t_p, 150 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.5.4 (9.6.4 in the 1998 edition); NZS 3404:Part 1:1997,
    cl. 9.6.4; both from memory.

    Examples
    --------
    >>> float(max_edge_distance(10.0))
    120.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(12.0, thickness), 150.0)
