"""Bearing of plates at bolt holes, by the distances around each bolt."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive
from jacketcheck_europe.mechanics._tables import HoleType, choose

__all__ = [
    "bearing_resistance",
    "end_bolt_coefficient",
    "hole_reduction",
    "inner_bolt_coefficient",
    "single_lap_bearing_limit",
    "transverse_coefficient",
]

_HOLE_REDUCTIONS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "standard": 1.0,
        "oversized": 0.8,
        "short-slot-perpendicular": 0.6,
        "long-slot-perpendicular": 0.6,
        "short-slot-parallel": 1.0,
        "long-slot-parallel": 1.0,
    }
)


def _coefficient(by_distance: Real, bolt_strength: Real, plate_strength: Real) -> Real:
    require_positive(bolt_strength=bolt_strength, plate_strength=plate_strength)
    by_bolt = np.minimum(np.divide(bolt_strength, plate_strength), 1.0)
    # a distance too small for any resistance leaves none
    return np.maximum(np.minimum(by_distance, by_bolt), 0.0)


def end_bolt_coefficient(
    end_distance: Real, *, hole: Real, bolt_strength: Real, plate_strength: Real
) -> Real:
    """Coefficient of bearing along the force, for the bolt next to the plate's end.

    Parameters
    ----------
    end_distance
        Distance to the end along the force e_1 [mm], at least zero; scalar or array.
    hole
        Hole diameter d_0 [mm], above zero.
    bolt_strength
        Tensile strength of the bolt f_ub [MPa], above zero.
    plate_strength
        Tensile strength of the plate f_u [MPa], above zero.

    Returns
    -------
    Real
        α_b [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``α_b = min(e_1/(3 d_0), f_ub/f_u, 1)``.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> alpha = end_bolt_coefficient(40.0, hole=22.0, bolt_strength=800.0, plate_strength=470.0)
    >>> round(float(alpha), 4)
    0.6061
    """
    require_at_least(0.0, end_distance=end_distance)
    require_positive(hole=hole)
    by_distance = np.divide(end_distance, np.multiply(3.0, hole))
    return _coefficient(by_distance, bolt_strength, plate_strength)


def inner_bolt_coefficient(
    spacing: Real, *, hole: Real, bolt_strength: Real, plate_strength: Real
) -> Real:
    """Coefficient of bearing along the force, for a bolt behind another one.

    Parameters
    ----------
    spacing
        Spacing along the force p_1 [mm], at least zero; scalar or array.
    hole
        Hole diameter d_0 [mm], above zero.
    bolt_strength
        Tensile strength of the bolt f_ub [MPa], above zero.
    plate_strength
        Tensile strength of the plate f_u [MPa], above zero.

    Returns
    -------
    Real
        α_b [-], broadcast over the arguments; zero where the spacing leaves nothing.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``α_b = min(p_1/(3 d_0) - 1/4, f_ub/f_u, 1)``.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> alpha = inner_bolt_coefficient(60.0, hole=22.0, bolt_strength=800.0, plate_strength=470.0)
    >>> round(float(alpha), 4)
    0.6591
    """
    require_at_least(0.0, spacing=spacing)
    require_positive(hole=hole)
    by_distance = np.divide(spacing, np.multiply(3.0, hole)) - 0.25
    return _coefficient(by_distance, bolt_strength, plate_strength)


def transverse_coefficient(
    *, edge_distance: Real = np.inf, spacing: Real = np.inf, hole: Real
) -> Real:
    """Coefficient of bearing across the force.

    Parameters
    ----------
    edge_distance
        Distance to the edge across the force e_2 [mm], at least zero; scalar or array. Infinite
        for a bolt that has none beside it.
    spacing
        Spacing across the force p_2 [mm], at least zero; infinite for a single line.
    hole
        Hole diameter d_0 [mm], above zero.

    Returns
    -------
    Real
        k_1 [-], broadcast over the arguments; zero where the distances leave nothing.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``k_1 = min(2.8 e_2/d_0 - 1.7, 1.4 p_2/d_0 - 1.7, 2.5)``. The first printing left the spacing
    out for edge bolts; the corrigendum of 2009 has it (from memory), and so have later handbooks.

    References
    ----------
    EN 1993-1-8:2005 with AC:2009, Table 3.4; Steel Buildings in Europe, Multi-storey steel
    buildings, Part 5: Joint design, 3.3.1.2.

    Examples
    --------
    >>> round(float(transverse_coefficient(edge_distance=30.0, spacing=60.0, hole=22.0)), 3)
    2.118
    """
    require_positive(hole=hole)
    edge_distance, spacing = np.asarray(edge_distance), np.asarray(spacing)
    require_at_least(
        0.0,
        edge_distance=np.where(np.isposinf(edge_distance), 0.0, edge_distance),
        spacing=np.where(np.isposinf(spacing), 0.0, spacing),
    )
    by_edge = 2.8 * edge_distance / hole - 1.7
    by_spacing = 1.4 * spacing / hole - 1.7
    return np.maximum(np.minimum(np.minimum(by_edge, by_spacing), 2.5), 0.0)


def hole_reduction(hole: HoleType) -> float:
    """Factor on bearing resistance by hole type.

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
    0.8 for oversized holes and 0.6 for slots across the force. The standard names no factor for
    slots along the force; there the distances count from the end of the slot.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4, note 1, from memory.

    Examples
    --------
    >>> hole_reduction("oversized")
    0.8
    """
    return choose(_HOLE_REDUCTIONS, hole, name="hole")


def bearing_resistance(
    diameter: Real,
    *,
    thickness: Real,
    plate_strength: Real,
    along: Real,
    across: Real,
    partial_factor: Real,
    reduction: Real = 1.0,
) -> Real:
    """Design bearing resistance of a plate against one bolt.

    Parameters
    ----------
    diameter
        Bolt diameter d [mm], above zero; scalar or array.
    thickness
        Thickness of the plate t [mm], above zero.
    plate_strength
        Tensile strength of the plate f_u [MPa], above zero.
    along
        α_b from `end_bolt_coefficient` or `inner_bolt_coefficient` [-], at least zero.
    across
        k_1 from `transverse_coefficient` [-], at least zero.
    partial_factor
        γ_M2 [-], above zero.
    reduction
        Factor from `hole_reduction` [-], above zero.

    Returns
    -------
    Real
        F_b,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``F_b,Rd = k_1 α_b f_u d t / γ_M2``.

    References
    ----------
    EN 1993-1-8:2005, Table 3.4.

    Examples
    --------
    >>> resistance = bearing_resistance(
    ...     20.0, thickness=10.0, plate_strength=470.0, along=0.6061, across=2.118,
    ...     partial_factor=1.25)
    >>> round(float(resistance) / 1e3, 1)
    96.5
    """
    require_positive(
        diameter=diameter,
        thickness=thickness,
        plate_strength=plate_strength,
        partial_factor=partial_factor,
        reduction=reduction,
    )
    require_at_least(0.0, along=along, across=across)
    pressed = np.multiply(diameter, thickness) * plate_strength
    return np.multiply(across, along) * reduction * pressed / partial_factor


def single_lap_bearing_limit(
    diameter: Real, *, thickness: Real, plate_strength: Real, partial_factor: Real
) -> Real:
    """Largest bearing resistance in a single lap joint with one bolt row.

    Parameters
    ----------
    diameter
        Bolt diameter d [mm], above zero; scalar or array.
    thickness
        Thickness of the plate t [mm], above zero.
    plate_strength
        Tensile strength of the plate f_u [MPa], above zero.
    partial_factor
        γ_M2 [-], above zero.

    Returns
    -------
    Real
        Limit on F_b,Rd [N].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``F_b,Rd <= 1.5 f_u d t / γ_M2``, with washers under head and nut.

    References
    ----------
    EN 1993-1-8:2005, 3.6.1(10), Eq. 3.2.

    Examples
    --------
    >>> float(single_lap_bearing_limit(
    ...     20.0, thickness=10.0, plate_strength=400.0, partial_factor=1.25))
    96000.0
    """
    return bearing_resistance(
        diameter,
        thickness=thickness,
        plate_strength=plate_strength,
        along=1.0,
        across=1.5,
        partial_factor=partial_factor,
    )
