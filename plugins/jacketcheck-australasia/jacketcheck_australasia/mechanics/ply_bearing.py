"""Bearing and tear-out of a ply at one bolt."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive

__all__ = [
    "PLY_CAPACITY_FACTOR",
    "ply_bearing_capacity",
    "tear_out_distance_between_holes",
    "tear_out_distance_to_edge",
]

PLY_CAPACITY_FACTOR: Final = 0.90
"""Capacity factor of a ply in bearing (AS 4100:2020 Table 3.4, from memory; NZS 3404:1997 Table
3.3(1))."""


def tear_out_distance_to_edge(edge_distance: Real, *, hole: Real, diameter: Real) -> Real:
    """Distance a_e at the bolt that bears towards the edge of a ply.

    Parameters
    ----------
    edge_distance
        Centre of the hole to the edge, along the force [mm]; scalar or array.
    hole
        Hole dimension along the force [mm], above zero.
    diameter
        Nominal diameter of the bolt d_f [mm], above zero.

    Returns
    -------
    Real
        Distance a_e [mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the hole breaks through the edge.

    Notes
    -----
    ``a_e``: edge of the hole to the edge of the ply, plus half of the bolt's diameter.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.4 (9.3.2.4 in the 1998 edition); NZS 3404:Part
    1:1997, cl. 9.3.2.4; both from memory.

    Examples
    --------
    >>> float(tear_out_distance_to_edge(35.0, hole=22.0, diameter=20.0))
    34.0
    """
    require_positive(hole=hole, diameter=diameter)
    clear = np.subtract(edge_distance, np.divide(hole, 2.0))
    require_at_least(0.0, clear_distance_to_edge=clear)
    return clear + np.divide(diameter, 2.0)


def tear_out_distance_between_holes(spacing: Real, *, hole: Real, diameter: Real) -> Real:
    """Distance a_e at a bolt that bears towards the next hole.

    Parameters
    ----------
    spacing
        Centre to centre of the holes, along the force [mm]; scalar or array.
    hole
        Hole dimension along the force [mm], above zero.
    diameter
        Nominal diameter of the bolt d_f [mm], above zero.

    Returns
    -------
    Real
        Distance a_e [mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the holes run into each other.

    Notes
    -----
    As `tear_out_distance_to_edge`; the edge of the next hole counts as an edge of the ply.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.4 (9.3.2.4 in the 1998 edition); NZS 3404:Part
    1:1997, cl. 9.3.2.4; both from memory.

    Examples
    --------
    >>> float(tear_out_distance_between_holes(70.0, hole=22.0, diameter=20.0))
    58.0
    """
    require_positive(hole=hole, diameter=diameter)
    clear = np.subtract(spacing, hole)
    require_at_least(0.0, clear_distance_between_holes=clear)
    return clear + np.divide(diameter, 2.0)


def ply_bearing_capacity(
    diameter: Real, *, thickness: Real, tensile_strength: Real, tear_out_distance: Real
) -> Real:
    """Nominal bearing capacity of a ply at one bolt: the lesser of bearing and tear-out.

    Parameters
    ----------
    diameter
        Nominal diameter of the bolt d_f [mm], above zero; scalar or array.
    thickness
        Thickness of the ply t_p [mm], above zero.
    tensile_strength
        Tensile strength of the ply f_up [MPa], above zero.
    tear_out_distance
        Distance a_e [mm], at least zero.

    Returns
    -------
    Real
        Nominal capacity V_b [N]; the capacity factor is `PLY_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_b = 3.2 d_f t_p f_up <= a_e t_p f_up``: tear-out governs up to ``a_e = 3.2 d_f``.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.2.4 (9.3.2.4 in the 1998 edition); NZS 3404:Part
    1:1997, cl. 9.3.2.4; both from memory.

    Examples
    --------
    >>> capacity = ply_bearing_capacity(
    ...     20.0, thickness=10.0, tensile_strength=430.0, tear_out_distance=34.0)
    >>> float(capacity)
    146200.0
    """
    require_positive(diameter=diameter, thickness=thickness, tensile_strength=tensile_strength)
    require_at_least(0.0, tear_out_distance=tear_out_distance)
    length = np.minimum(np.multiply(3.2, diameter), tear_out_distance)
    return np.multiply(length, thickness) * tensile_strength
