"""Limits on spacing, end and edge distance of bolts.

Each function gives a limit; comparing it with the design is left to the limit states.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

import numpy as np

from jacketcheck.plugin import Real, require_positive
from jacketcheck_europe.mechanics._tables import HoleType, choose

__all__ = [
    "Exposure",
    "largest_edge_distance",
    "largest_spacing",
    "least_edge_distance",
    "least_spacing_across",
    "least_spacing_along",
]

Exposure: TypeAlias = Literal["painted", "weathering"]
"""Steel exposed to the weather under paint, or weathering steel without."""

_SPACING_ALONG: Final = 2.2
_SPACING_ACROSS: Final = 2.4
_ROUND_HOLE: Final = 1.2
_SLOT: Final = 1.5
_LARGEST_SPACING: Final[Mapping[str, float]] = MappingProxyType(
    {"painted": 200.0, "weathering": 175.0}
)
_LARGEST_EDGE: Final[Mapping[str, Callable[[Real], Real]]] = MappingProxyType(
    {
        "painted": lambda thickness: 4.0 * np.asarray(thickness) + 40.0,
        "weathering": lambda thickness: np.maximum(8.0 * np.asarray(thickness), 125.0),
    }
)


def least_spacing_along(hole: Real) -> Real:
    """Least spacing of bolts along the force.

    Parameters
    ----------
    hole
        Hole diameter, of slots the width d_0 [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``p_1 = 2.2 d_0`` [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero.

    References
    ----------
    EN 1993-1-8:2005, Table 3.3.

    Examples
    --------
    >>> round(float(least_spacing_along(22.0)), 1)
    48.4
    """
    require_positive(hole=hole)
    return np.multiply(_SPACING_ALONG, hole)


def least_spacing_across(hole: Real) -> Real:
    """Least spacing of bolts across the force.

    Parameters
    ----------
    hole
        Hole diameter, of slots the width d_0 [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``p_2 = 2.4 d_0`` [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero.

    References
    ----------
    EN 1993-1-8:2005, Table 3.3.

    Examples
    --------
    >>> round(float(least_spacing_across(22.0)), 1)
    52.8
    """
    require_positive(hole=hole)
    return np.multiply(_SPACING_ACROSS, hole)


def least_edge_distance(hole: Real, *, hole_type: HoleType = "standard") -> Real:
    """Least distance from a bolt to an edge, along or across the force.

    Parameters
    ----------
    hole
        Hole diameter, of slots the width d_0 [mm], above zero; scalar or array.
    hole_type
        Hole type.

    Returns
    -------
    Real
        ``1.2 d_0`` for round holes (e_1, e_2), ``1.5 d_0`` for slots (e_3, e_4) [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero, or the hole type is unknown.

    Notes
    -----
    From slots the distance counts from their axis, or from the centre of their round end.

    References
    ----------
    EN 1993-1-8:2005, Table 3.3 and Figure 3.1.

    Examples
    --------
    >>> round(float(least_edge_distance(22.0)), 1)
    26.4
    """
    require_positive(hole=hole)
    multiples = {
        "standard": _ROUND_HOLE,
        "oversized": _ROUND_HOLE,
        "short-slot-perpendicular": _SLOT,
        "short-slot-parallel": _SLOT,
        "long-slot-perpendicular": _SLOT,
        "long-slot-parallel": _SLOT,
    }
    return np.multiply(choose(multiples, hole_type, name="hole_type"), hole)


def largest_spacing(thickness: Real, *, exposure: Exposure) -> Real:
    """Largest spacing of bolts, along or across the force.

    Parameters
    ----------
    thickness
        Thickness of the thinner outer connected part t [mm], above zero; scalar or array.
    exposure
        ``painted`` steel exposed to the weather, or unprotected ``weathering`` steel.

    Returns
    -------
    Real
        ``min(14 t, 200 mm)``; for weathering steel ``min(14 t, 175 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero, or the exposure is unknown.

    Notes
    -----
    Of members in tension the limits hold for exposed ones, against corrosion; inside a building
    there are none.

    References
    ----------
    EN 1993-1-8:2005, Table 3.3 and its notes 1 and 3.

    Examples
    --------
    >>> float(largest_spacing(10.0, exposure="painted"))
    140.0
    """
    require_positive(thickness=thickness)
    limit = choose(_LARGEST_SPACING, exposure, name="exposure")
    return np.minimum(np.multiply(14.0, thickness), limit)


def largest_edge_distance(thickness: Real, *, exposure: Exposure) -> Real:
    """Largest distance from a bolt to an edge.

    Parameters
    ----------
    thickness
        Thickness of the thinner outer connected part t [mm], above zero; scalar or array.
    exposure
        ``painted`` steel exposed to the weather, or unprotected ``weathering`` steel.

    Returns
    -------
    Real
        ``4 t + 40 mm``; for weathering steel ``max(8 t, 125 mm)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero, or the exposure is unknown.

    References
    ----------
    EN 1993-1-8:2005, Table 3.3.

    Examples
    --------
    >>> float(largest_edge_distance(10.0, exposure="painted"))
    80.0
    """
    require_positive(thickness=thickness)
    return choose(_LARGEST_EDGE, exposure, name="exposure")(thickness)
