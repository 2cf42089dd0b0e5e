"""Limits on spacing and edge distance of the bolts at a seam.

Each function gives a limit; comparing it with the design is left to the limit states. Where a
specification prints inches with rounded millimetres, the inches are used.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.mechanics._arguments import Exposure, HoleType, choose
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics._customary_units import INCH

__all__ = [
    "aashto_max_edge_distance",
    "aashto_max_sealing_spacing",
    "aashto_min_end_distance",
    "aashto_min_spacing",
    "aisc_max_edge_distance",
    "aisc_max_spacing",
    "aisc_min_edge_distance",
    "aisc_min_spacing",
    "aisc_preferred_spacing",
]

_MAX_SPACING: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {"painted": (24.0, 12.0 * INCH), "weathering": (14.0, 7.0 * INCH)}
)
_MAX_EDGE: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {"painted": (12.0, 6.0 * INCH), "weathering": (8.0, 5.0 * INCH)}
)
_KEEPS_CLEAR_DISTANCE: Final[Mapping[str, bool]] = MappingProxyType(
    {
        "standard": False,
        "oversized": True,
        "short-slot-perpendicular": True,
        "short-slot-parallel": True,
        "long-slot-perpendicular": True,
        "long-slot-parallel": True,
    }
)


def aisc_min_spacing(diameter: Real, *, hole: Real) -> Real:
    """Least distance between bolt centres, AISC.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    hole
        Hole dimension in the direction of the spacing [mm], above zero.

    Returns
    -------
    Real
        Least spacing [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    2-2/3 d, and a clear distance of one diameter between holes or slots.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.4 (J3.3 in the 2010 and
    2016 editions).

    Examples
    --------
    >>> float(aisc_min_spacing(24.0, hole=27.0))
    64.0
    """
    require_positive(diameter=diameter, hole=hole)
    return np.maximum(np.multiply(8.0, diameter) / 3.0, np.add(hole, diameter))


def aisc_preferred_spacing(diameter: Real) -> Real:
    """Preferred distance between bolt centres, AISC.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Preferred spacing 3 d [mm].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.4 user note.

    Examples
    --------
    >>> float(aisc_preferred_spacing(24.0))
    72.0
    """
    require_positive(diameter=diameter)
    return np.multiply(3.0, diameter)


def aashto_min_spacing(diameter: Real, *, hole: Real, hole_type: HoleType) -> Real:
    """Least distance between bolt centres, AASHTO.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    hole
        Hole dimension in the direction of the spacing [mm], above zero.
    hole_type
        Hole type.

    Returns
    -------
    Real
        Least spacing [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero, or the hole type is unknown.

    Notes
    -----
    3 d; oversized and slotted holes also keep a clear distance of 2 d.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.6.1, clear distance from
    memory.

    Examples
    --------
    >>> float(aashto_min_spacing(24.0, hole=27.0, hole_type="standard"))
    72.0
    """
    require_positive(diameter=diameter, hole=hole)
    spacing = np.multiply(3.0, diameter)
    if choose(_KEEPS_CLEAR_DISTANCE, hole_type, name="hole_type"):
        return np.maximum(spacing, np.add(hole, np.multiply(2.0, diameter)))
    return spacing


def aisc_max_spacing(thickness: Real, *, exposure: Exposure) -> Real:
    """Largest distance between bolts along the edge of plates in contact, AISC.

    Parameters
    ----------
    thickness
        Thickness of the thinner plate t [mm], above zero; scalar or array.
    exposure
        ``painted`` (or not subject to corrosion) or ``weathering`` (unpainted weathering steel).

    Returns
    -------
    Real
        Largest spacing [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero, or the exposure is unknown.

    Notes
    -----
    ``min(24 t, 12 in)`` painted, ``min(14 t, 7 in)`` weathering.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.6(a) and (b) (J3.5 in the
    2010 and 2016 editions).

    Examples
    --------
    >>> float(aisc_max_spacing(6.0, exposure="painted"))
    144.0
    """
    require_positive(thickness=thickness)
    multiple, limit = choose(_MAX_SPACING, exposure, name="exposure")
    return np.minimum(np.multiply(multiple, thickness), limit)


def aashto_max_sealing_spacing(thickness: Real) -> Real:
    """Largest distance between bolts that seal a joint against moisture, AASHTO.

    Parameters
    ----------
    thickness
        Thickness of the thinner outside plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest spacing [mm] of a single line beside a free edge.

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    Notes
    -----
    ``s <= 4.0 + 4.0 t <= 7.0`` in inches, the equation's own units. Staggered second lines, which
    allow more, are left out.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), Eq. 6.13.2.6.2-1.

    Examples
    --------
    >>> round(float(aashto_max_sealing_spacing(12.7)), 1)
    152.4
    """
    require_positive(thickness=thickness)
    inches = np.divide(thickness, INCH)
    return INCH * np.minimum(4.0 + 4.0 * inches, 7.0)


def aisc_min_edge_distance(standard_hole_distance: Real, *, increment: Real = 0.0) -> Real:
    """Least distance from the centre of a hole to an edge, AISC.

    Parameters
    ----------
    standard_hole_distance
        Value of Table J3.4 for the bolt's diameter [mm], above zero; scalar or array.
    increment
        Value C_2 of Table J3.5 for oversized and slotted holes [mm], at least zero.

    Returns
    -------
    Real
        Least edge distance [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Slots count by their long axis relative to the edge: an increment where it points at the edge,
    none where it runs along it. Tear-out may ask for more.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.5, Tables J3.4 and J3.5
    (J3.4 in the 2010 and 2016 editions).

    Examples
    --------
    >>> float(aisc_min_edge_distance(28.0, increment=2.0))
    30.0
    """
    require_positive(standard_hole_distance=standard_hole_distance)
    require_at_least(0.0, increment=increment)
    return np.add(standard_hole_distance, increment)


def aashto_min_end_distance(
    table_distance: Real, *, diameter: Real, hole: Real, hole_type: HoleType
) -> Real:
    """Least distance from the centre of a hole to an edge or end, AASHTO.

    Parameters
    ----------
    table_distance
        Value of Table 6.13.2.6.6-1 for the bolt's diameter [mm], above zero; scalar or array.
    diameter
        Nominal bolt diameter d [mm], above zero.
    hole
        Hole dimension in the direction of the distance [mm], above zero.
    hole_type
        Hole type.

    Returns
    -------
    Real
        Least distance [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero, or the hole type is unknown.

    Notes
    -----
    The table's value; oversized and slotted holes also keep a clear distance of one diameter. The
    specification asks for that at ends; it is applied to every edge, on the safe side.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.6.5 and 6.13.2.6.6, from
    memory.

    Examples
    --------
    >>> float(aashto_min_end_distance(28.6, diameter=22.2, hole=28.0, hole_type="oversized"))
    36.2
    """
    require_positive(table_distance=table_distance, diameter=diameter, hole=hole)
    if choose(_KEEPS_CLEAR_DISTANCE, hole_type, name="hole_type"):
        return np.maximum(table_distance, np.add(diameter, np.divide(hole, 2.0)))
    return np.multiply(1.0, table_distance)


def aisc_max_edge_distance(thickness: Real, *, exposure: Exposure) -> Real:
    """Largest distance from the centre of a bolt to the nearest edge of plates in contact, AISC.

    Parameters
    ----------
    thickness
        Thickness of the plate t [mm], above zero; scalar or array.
    exposure
        ``painted`` (or not subject to corrosion) or ``weathering`` (unpainted weathering steel).

    Returns
    -------
    Real
        Largest edge distance [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero, or the exposure is unknown.

    Notes
    -----
    ``min(12 t, 6 in)``; for weathering steel ``min(8 t, 5 in)``, which is also AASHTO's limit. The
    latter was seen only second-hand for the 2022 edition and is kept because it is the stricter.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.6 (J3.5 in the 2010 and
    2016 editions).

    Examples
    --------
    >>> float(aisc_max_edge_distance(6.0, exposure="painted"))
    72.0
    """
    require_positive(thickness=thickness)
    multiple, limit = choose(_MAX_EDGE, exposure, name="exposure")
    return np.minimum(np.multiply(multiple, thickness), limit)


def aashto_max_edge_distance(thickness: Real) -> Real:
    """Largest distance from the centre of a bolt to the nearest edge, AASHTO.

    Parameters
    ----------
    thickness
        Thickness of the thinnest outside plate t [mm], above zero; scalar or array.

    Returns
    -------
    Real
        Largest edge distance ``min(8 t, 5 in)`` [mm].

    Raises
    ------
    DomainError
        If the thickness is not finite and above zero.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.6.6.

    Examples
    --------
    >>> float(aashto_max_edge_distance(10.0))
    80.0
    """
    require_positive(thickness=thickness)
    return np.minimum(np.multiply(8.0, thickness), 5.0 * INCH)
