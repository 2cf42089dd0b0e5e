"""Bearing and tear-out of plates at bolt holes, and what a row of seam bolts carries.

Deformation of the hole at service load counts as a design consideration throughout: a seam that
stretches loses confinement. Nominal strengths are returned.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.mechanics._arguments import HoleType, choose, require_whole
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "AASHTO_BEARING_RESISTANCE_FACTOR",
    "AISC_BEARING_RESISTANCE_FACTOR",
    "HoleStrengths",
    "bearing_strength",
    "clear_distance_between_holes",
    "clear_distance_to_edge",
    "hole_strength",
    "seam_row_strength",
    "tear_out_strength",
]

AISC_BEARING_RESISTANCE_FACTOR: Final = 0.75
"""Resistance factor for bearing and tear-out at bolt holes (AISC 360-22 J3.11)."""

AASHTO_BEARING_RESISTANCE_FACTOR: Final = 0.80
"""Resistance factor phi_bb, bolts bearing on material (AASHTO LRFD 9th ed. (2020) 6.5.4.2)."""

_ROUND_OR_ALONG: Final = (2.4, 1.2)
_LONG_SLOT_ACROSS: Final = (2.0, 1.0)
_COEFFICIENTS: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {
        "standard": _ROUND_OR_ALONG,
        "oversized": _ROUND_OR_ALONG,
        "short-slot-perpendicular": _ROUND_OR_ALONG,
        "short-slot-parallel": _ROUND_OR_ALONG,
        "long-slot-perpendicular": _LONG_SLOT_ACROSS,
        "long-slot-parallel": _ROUND_OR_ALONG,
    }
)


def clear_distance_to_edge(edge_distance: Real, *, hole: Real) -> Real:
    """Clear distance from the edge of a hole to the edge of the plate.

    Parameters
    ----------
    edge_distance
        Distance from the bolt line to the edge, along the force [mm]; scalar or array.
    hole
        Hole dimension along the force [mm], above zero.

    Returns
    -------
    Real
        Clear distance l_c [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero, or breaks through the edge.

    References
    ----------
    Geometry; l_c of AISC 360-22 (2022) J3.11, L_c of AASHTO LRFD 9th ed. (2020) 6.13.2.9.

    Examples
    --------
    >>> float(clear_distance_to_edge(38.0, hole=22.0))
    27.0
    """
    require_positive(hole=hole)
    clear = np.subtract(edge_distance, np.divide(hole, 2.0))
    require_at_least(0.0, clear_distance_to_edge=clear)
    return clear


def clear_distance_between_holes(spacing: Real, *, hole: Real) -> Real:
    """Clear distance between two neighbouring holes.

    Parameters
    ----------
    spacing
        Distance between the bolt lines, along the force [mm]; scalar or array.
    hole
        Hole dimension along the force [mm], above zero.

    Returns
    -------
    Real
        Clear distance l_c [mm].

    Raises
    ------
    DomainError
        If the hole is not finite and above zero, or runs into its neighbour.

    References
    ----------
    Geometry; l_c of AISC 360-22 (2022) J3.11, L_c of AASHTO LRFD 9th ed. (2020) 6.13.2.9.

    Examples
    --------
    >>> float(clear_distance_between_holes(75.0, hole=22.0))
    53.0
    """
    require_positive(hole=hole)
    clear = np.subtract(spacing, hole)
    require_at_least(0.0, clear_distance_between_holes=clear)
    return clear


def bearing_strength(
    diameter: Real, *, thickness: Real, tensile_strength: Real, hole: HoleType = "standard"
) -> Real:
    """Nominal bearing strength of a plate against one bolt.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    thickness
        Thickness of the plate t [mm], above zero.
    tensile_strength
        Specified minimum tensile strength of the plate F_u [MPa], above zero.
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    Real
        Nominal bearing strength R_n [N].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = 2.4 d t F_u``; 2.0 for long slots across the force. AISC and AASHTO agree on the
    nominal value and differ in the resistance factor.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.11a, Eq. J3-6a and J3-6e
    (J3.10 in the 2010 and 2016 editions); AASHTO LRFD Bridge Design Specifications, 9th ed.
    (2020), 6.13.2.9. Long slots from memory.

    Examples
    --------
    >>> float(bearing_strength(20.0, thickness=10.0, tensile_strength=400.0))
    192000.0
    """
    require_positive(diameter=diameter, thickness=thickness, tensile_strength=tensile_strength)
    coefficient, _ = choose(_COEFFICIENTS, hole, name="hole")
    return coefficient * np.multiply(diameter, thickness) * tensile_strength


def tear_out_strength(
    clear_distance: Real, *, thickness: Real, tensile_strength: Real, hole: HoleType = "standard"
) -> Real:
    """Nominal tear-out strength of a plate in front of one bolt.

    Parameters
    ----------
    clear_distance
        Clear distance along the force from the hole to the next hole or the plate's edge l_c
        [mm], at least zero; scalar or array.
    thickness
        Thickness of the plate t [mm], above zero.
    tensile_strength
        Specified minimum tensile strength of the plate F_u [MPa], above zero.
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    Real
        Nominal tear-out strength R_n [N].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_n = 1.2 l_c t F_u``; 1.0 for long slots across the force.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), J3.11a, Eq. J3-6c and J3-6f
    (J3.10 in the 2010 and 2016 editions); AASHTO LRFD Bridge Design Specifications, 9th ed.
    (2020), 6.13.2.9. Long slots from memory.

    Examples
    --------
    >>> float(tear_out_strength(30.0, thickness=10.0, tensile_strength=400.0))
    144000.0
    """
    require_at_least(0.0, clear_distance=clear_distance)
    require_positive(thickness=thickness, tensile_strength=tensile_strength)
    _, coefficient = choose(_COEFFICIENTS, hole, name="hole")
    return coefficient * np.multiply(clear_distance, thickness) * tensile_strength


def hole_strength(
    diameter: Real,
    *,
    clear_distance: Real,
    thickness: Real,
    tensile_strength: Real,
    hole: HoleType = "standard",
) -> Real:
    """Nominal strength of a plate at one bolt hole: the lesser of bearing and tear-out.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    clear_distance
        Clear distance along the force l_c [mm], at least zero.
    thickness
        Thickness of the plate t [mm], above zero.
    tensile_strength
        Specified minimum tensile strength of the plate F_u [MPa], above zero.
    hole
        Hole type; slots by their long axis relative to the force.

    Returns
    -------
    Real
        Nominal strength R_n [N]; the resistance factor is `AISC_BEARING_RESISTANCE_FACTOR` or
        `AASHTO_BEARING_RESISTANCE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The two meet at ``l_c = 2 d``, where AASHTO changes from one equation to the other.

    References
    ----------
    AISC 360-22 (2022), J3.11a; AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.9.

    Examples
    --------
    >>> float(hole_strength(20.0, clear_distance=30.0, thickness=10.0, tensile_strength=400.0))
    144000.0
    """
    bearing = bearing_strength(
        diameter, thickness=thickness, tensile_strength=tensile_strength, hole=hole
    )
    tear_out = tear_out_strength(
        clear_distance, thickness=thickness, tensile_strength=tensile_strength, hole=hole
    )
    return np.minimum(bearing, tear_out)


class HoleStrengths(NamedTuple):
    """Strength of one plate at the holes of a bolt row.

    Attributes
    ----------
    edge
        At the bolt that tears towards the plate's edge [N].
    inner
        At the other bolts, which tear towards their neighbour [N].
    """

    edge: Real
    inner: Real


def seam_row_strength(
    shear_per_plane: Real,
    *,
    columns: Real,
    sleeve: HoleStrengths,
    outside_plate: HoleStrengths,
    inside_plate: HoleStrengths | None = None,
) -> Real:
    """Hoop force that one horizontal row of bolts on one side of a seam carries.

    Parameters
    ----------
    shear_per_plane
        Shear strength of one bolt in one plane [N], above zero; scalar or array.
    columns
        Bolts in the row, at least one and whole.
    sleeve
        Strength of the sleeve at its holes.
    outside_plate
        Strength of the outside splice plate at its holes.
    inside_plate
        Strength of the inside splice plate; None for plates outside only.

    Returns
    -------
    Real
        Strength of the row [N], nominal or design as the arguments are.

    Raises
    ------
    DomainError
        If a strength is not finite or below zero, or there is no bolt.

    Notes
    -----
    The effective strength of a bolt is the least of its shear and of what the plates bear, and the
    row has their sum. A splice plate and the shear plane behind it form one path; two plates add
    up, as far as the sleeve between them bears. The sleeve tears towards the seam at the bolt
    nearest to it, a splice plate towards its own vertical edge at the bolt farthest from it: with
    two bolts or more these are different bolts. Bolts share as far as ductile holes let them, so
    that strengths with a resistance factor must all carry the same one.

    References
    ----------
    AISC 360-22 (2022), J3.7 user note and commentary, effective strength of individual fasteners.

    Examples
    --------
    >>> row = seam_row_strength(
    ...     100e3, columns=3,
    ...     sleeve=HoleStrengths(edge=80e3, inner=120e3),
    ...     outside_plate=HoleStrengths(edge=90e3, inner=150e3))
    >>> float(row)
    270000.0
    """
    inside = HoleStrengths(0.0, 0.0) if inside_plate is None else inside_plate
    require_positive(shear_per_plane=shear_per_plane)
    require_whole(1, columns=columns)
    require_at_least(
        0.0,
        sleeve_edge=sleeve.edge,
        sleeve_inner=sleeve.inner,
        outside_edge=outside_plate.edge,
        outside_inner=outside_plate.inner,
        inside_edge=inside.edge,
        inside_inner=inside.inner,
    )

    def bolt(sleeve_hole: Real, outside_hole: Real, inside_hole: Real) -> Floats:
        """Sleeve against both splice plates, each with its own shear plane."""
        paths = np.minimum(shear_per_plane, outside_hole) + np.minimum(shear_per_plane, inside_hole)
        effective: Floats = np.minimum(sleeve_hole, paths)
        return effective

    single = bolt(sleeve.edge, outside_plate.edge, inside.edge)
    nearest = bolt(sleeve.edge, outside_plate.inner, inside.inner)
    farthest = bolt(sleeve.inner, outside_plate.edge, inside.edge)
    between = bolt(sleeve.inner, outside_plate.inner, inside.inner)
    several = nearest + farthest + np.subtract(columns, 2.0) * between
    row: Floats = np.where(np.asarray(columns) < 2.0, single, several)
    return row
