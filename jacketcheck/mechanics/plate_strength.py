"""Strength of the sleeve and the splice plates in tension and shear, gross and net of bolt holes.

Areas may be those of a whole plate or of a strip; at a seam the handy strip is one bolt pitch high
and holds one hole. Nominal strengths are returned; the resistance factors stand beside them.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

import numpy as np

from jacketcheck.mechanics._arguments import HoleMaking, choose, require_reduction
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics._customary_units import INCH

__all__ = [
    "AASHTO_HOLE_DAMAGE",
    "AASHTO_NET_RUPTURE_FACTOR",
    "AASHTO_SHEAR_RUPTURE_FACTOR",
    "AASHTO_SHEAR_YIELD_FACTOR",
    "AASHTO_TENSION_YIELD_FACTOR",
    "AISC_HOLE_DAMAGE",
    "AISC_HOLE_DAMAGE_METRIC",
    "AISC_RUPTURE_FACTOR",
    "AISC_SHEAR_YIELD_FACTOR",
    "AISC_TENSION_YIELD_FACTOR",
    "LARGEST_EFFECTIVE_AREA_RATIO",
    "aashto_shear_rupture_resistance",
    "aashto_shear_yield_resistance",
    "aisc_shear_rupture_strength",
    "aisc_shear_yield_strength",
    "effective_net_area",
    "gross_yield_strength",
    "net_rupture_strength",
    "net_width",
    "punched_hole_factor",
    "seam_strip_width",
]

AISC_TENSION_YIELD_FACTOR: Final = 0.90
"""Resistance factor, tensile yielding of connecting elements (AISC 360-22 J4.1(a))."""

AISC_RUPTURE_FACTOR: Final = 0.75
"""Resistance factor, tensile and shear rupture (AISC 360-22 J4.1(b), J4.2(b))."""

AISC_SHEAR_YIELD_FACTOR: Final = 1.00
"""Resistance factor, shear yielding of connecting elements (AISC 360-22 J4.2(a))."""

AASHTO_TENSION_YIELD_FACTOR: Final = 0.95
"""Resistance factor phi_y, yielding of the gross section (AASHTO LRFD 9th ed. (2020) 6.5.4.2)."""

AASHTO_NET_RUPTURE_FACTOR: Final = 0.80
"""Resistance factor phi_u, fracture of the net section (AASHTO LRFD 9th ed. (2020) 6.5.4.2)."""

AASHTO_SHEAR_YIELD_FACTOR: Final = 1.00
"""Resistance factor phi_v, shear (AASHTO LRFD 9th ed. (2020) 6.5.4.2, from memory)."""

AASHTO_SHEAR_RUPTURE_FACTOR: Final = 0.80
"""Resistance factor phi_vu, shear rupture of connection elements (AASHTO LRFD 9th ed. (2020)
6.5.4.2, from memory)."""

AISC_HOLE_DAMAGE: Final = INCH / 16.0
"""Allowance for damage around a hole, added to its width [mm]: 1/16 in (AISC 360-22 B4.3b)."""

AISC_HOLE_DAMAGE_METRIC: Final = 2.0
"""The same allowance as rounded for metric bolts [mm] (AISC 360-22 B4.3b)."""

AASHTO_HOLE_DAMAGE: Final = 0.0
"""No allowance: AASHTO takes the nominal hole and reduces punched holes by `punched_hole_factor`
(AASHTO LRFD 9th ed. (2020) 6.8.3 and 6.8.2.1, from memory) [mm]."""

LARGEST_EFFECTIVE_AREA_RATIO: Final = 0.85
"""Largest net over gross area that splice plates may count on (AASHTO LRFD 9th ed. (2020)
6.13.5.2; AISC 360-10 J4.1(b), both from memory)."""

_PUNCHED_HOLE_FACTORS: Final[Mapping[str, float]] = MappingProxyType(
    {"drilled": 1.0, "punched": 0.90}
)


def seam_strip_width(*, pitch: Real, end_distance: Real) -> Real:
    """Height of the strip with one bolt row whose net section is weakest.

    Parameters
    ----------
    pitch
        Vertical spacing of the bolt rows [mm], above zero; scalar or array.
    end_distance
        First and last row to the plate's horizontal ends [mm], above zero.

    Returns
    -------
    Real
        Height of the strip [mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``min(pitch, end_distance + pitch / 2)``: an inner strip lies half a pitch to either side of a
    row, an end strip reaches to the plate's end. Each carries the hoop force of its own height, so
    that the one with the larger share of hole governs. Taking the whole height at once would let
    a short end borrow from the rows beside it.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> float(seam_strip_width(pitch=80.0, end_distance=30.0))
    70.0
    """
    require_positive(pitch=pitch, end_distance=end_distance)
    return np.minimum(pitch, np.add(end_distance, np.divide(pitch, 2.0)))


def net_width(gross_width: Real, *, hole_count: Real, hole: Real, damage: Real) -> Real:
    """Width of a plate net of the bolt holes in a straight line across the force.

    Parameters
    ----------
    gross_width
        Width across the force [mm], above zero; scalar or array.
    hole_count
        Number of holes in the line, at least zero.
    hole
        Hole dimension across the force [mm], above zero.
    damage
        Allowance added to each hole [mm], at least zero: `AISC_HOLE_DAMAGE`,
        `AISC_HOLE_DAMAGE_METRIC` or `AASHTO_HOLE_DAMAGE`.

    Returns
    -------
    Real
        Net width [mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the holes leave nothing.

    Notes
    -----
    Holes are not staggered.

    References
    ----------
    AISC 360-22, Specification for Structural Steel Buildings (2022), B4.3b; AASHTO LRFD Bridge
    Design Specifications, 9th ed. (2020), 6.8.3.

    Examples
    --------
    >>> float(net_width(75.0, hole_count=1, hole=22.0, damage=AISC_HOLE_DAMAGE_METRIC))
    51.0
    """
    require_positive(gross_width=gross_width, hole=hole)
    require_at_least(0.0, hole_count=hole_count, damage=damage)
    width = np.subtract(gross_width, np.multiply(hole_count, np.add(hole, damage)))
    require_positive(net_width=width)
    return width


def effective_net_area(net_area: Real, *, gross_area: Real) -> Real:
    """Net area of a splice plate that counts in tension.

    Parameters
    ----------
    net_area
        Net area A_n [mm²], above zero; scalar or array.
    gross_area
        Gross area A_g [mm²], at least the net area.

    Returns
    -------
    Real
        Effective net area A_e [mm²].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``A_e = A_n <= 0.85 A_g``; every part of the plate is bolted, so there is no shear lag. AASHTO
    has the limit for splice plates. AISC printed it up to the 2010 edition; worked examples to the
    2022 edition do without. It is kept for both, on the safe side: at a seam the holes take more
    than 15% of the section anyway unless the pitch exceeds about seven bolt diameters.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.5.2; AISC 360-10, Specification
    for Structural Steel Buildings (2010), J4.1(b); both from memory.

    Examples
    --------
    >>> float(effective_net_area(950.0, gross_area=1000.0))
    850.0
    """
    require_positive(net_area=net_area, gross_area=gross_area)
    require_at_least(0.0, area_of_holes=np.subtract(gross_area, net_area))
    return np.minimum(net_area, np.multiply(LARGEST_EFFECTIVE_AREA_RATIO, gross_area))


def punched_hole_factor(hole_making: HoleMaking) -> float:
    """Reduction factor for the way holes are made, AASHTO.

    Parameters
    ----------
    hole_making
        ``drilled`` (or subpunched and reamed), or ``punched`` full size.

    Returns
    -------
    float
        Factor R_p [-].

    Raises
    ------
    DomainError
        If the word is unknown.

    Notes
    -----
    1.0 for drilled, 0.90 for holes punched full size. AISC has no such factor; its hole damage
    allowance stands for it.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.8.2.1, R_p.

    Examples
    --------
    >>> punched_hole_factor("punched")
    0.9
    """
    return choose(_PUNCHED_HOLE_FACTORS, hole_making, name="hole_making")


def gross_yield_strength(yield_strength: Real, *, gross_area: Real) -> Real:
    """Nominal strength of a plate for yielding of the gross section.

    Parameters
    ----------
    yield_strength
        Specified minimum yield strength F_y [MPa], above zero; scalar or array.
    gross_area
        Gross area across the force A_g [mm²], above zero.

    Returns
    -------
    Real
        Nominal strength [N]; the resistance factor is `AISC_TENSION_YIELD_FACTOR` or
        `AASHTO_TENSION_YIELD_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``F_y A_g``.

    References
    ----------
    AISC 360-22 (2022), J4.1(a), Eq. J4-1; AASHTO LRFD Bridge Design Specifications, 9th ed.
    (2020), Eq. 6.8.2.1-1.

    Examples
    --------
    >>> float(gross_yield_strength(250.0, gross_area=750.0))
    187500.0
    """
    require_positive(yield_strength=yield_strength, gross_area=gross_area)
    return np.multiply(yield_strength, gross_area)


def net_rupture_strength(
    tensile_strength: Real, *, effective_net_area: Real, hole_factor: Real = 1.0
) -> Real:
    """Nominal strength of a plate for rupture of the net section.

    Parameters
    ----------
    tensile_strength
        Specified minimum tensile strength F_u [MPa], above zero; scalar or array.
    effective_net_area
        Effective net area across the force A_e [mm²], above zero.
    hole_factor
        Factor from `punched_hole_factor` with AASHTO, 1.0 with AISC [-].

    Returns
    -------
    Real
        Nominal strength [N]; the resistance factor is `AISC_RUPTURE_FACTOR` or
        `AASHTO_NET_RUPTURE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``F_u A_e``, times ``R_p`` with AASHTO.

    References
    ----------
    AISC 360-22 (2022), J4.1(b), Eq. J4-2; AASHTO LRFD Bridge Design Specifications, 9th ed.
    (2020), Eq. 6.8.2.1-2.

    Examples
    --------
    >>> float(net_rupture_strength(400.0, effective_net_area=500.0))
    200000.0
    """
    require_positive(tensile_strength=tensile_strength, effective_net_area=effective_net_area)
    require_reduction(hole_factor=hole_factor)
    return np.multiply(tensile_strength, effective_net_area) * hole_factor


def aisc_shear_yield_strength(yield_strength: Real, *, gross_area: Real) -> Real:
    """Nominal strength of a plate for shear yielding, AISC.

    Parameters
    ----------
    yield_strength
        Specified minimum yield strength F_y [MPa], above zero; scalar or array.
    gross_area
        Gross area subject to shear A_gv [mm²], above zero.

    Returns
    -------
    Real
        Nominal strength [N]; the resistance factor is `AISC_SHEAR_YIELD_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``0.60 F_y A_gv``.

    References
    ----------
    AISC 360-22 (2022), J4.2(a), Eq. J4-3.

    Examples
    --------
    >>> float(aisc_shear_yield_strength(250.0, gross_area=1000.0))
    150000.0
    """
    return 0.60 * gross_yield_strength(yield_strength, gross_area=gross_area)


def aisc_shear_rupture_strength(tensile_strength: Real, *, net_area: Real) -> Real:
    """Nominal strength of a plate for shear rupture, AISC.

    Parameters
    ----------
    tensile_strength
        Specified minimum tensile strength F_u [MPa], above zero; scalar or array.
    net_area
        Net area subject to shear A_nv [mm²], above zero.

    Returns
    -------
    Real
        Nominal strength [N]; the resistance factor is `AISC_RUPTURE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``0.60 F_u A_nv``.

    References
    ----------
    AISC 360-22 (2022), J4.2(b), Eq. J4-4.

    Examples
    --------
    >>> float(aisc_shear_rupture_strength(400.0, net_area=1000.0))
    240000.0
    """
    return 0.60 * net_rupture_strength(tensile_strength, effective_net_area=net_area)


def aashto_shear_yield_resistance(yield_strength: Real, *, gross_area: Real) -> Real:
    """Nominal resistance of a connection element for shear yielding, AASHTO.

    Parameters
    ----------
    yield_strength
        Specified minimum yield strength F_y [MPa], above zero; scalar or array.
    gross_area
        Gross area subject to shear A_vg [mm²], above zero.

    Returns
    -------
    Real
        Nominal resistance [N]; the resistance factor is `AASHTO_SHEAR_YIELD_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``0.58 F_y A_vg``.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.5.3, from memory.

    Examples
    --------
    >>> float(aashto_shear_yield_resistance(250.0, gross_area=1000.0))
    145000.0
    """
    return 0.58 * gross_yield_strength(yield_strength, gross_area=gross_area)


def aashto_shear_rupture_resistance(
    tensile_strength: Real, *, net_area: Real, hole_factor: Real
) -> Real:
    """Nominal resistance of a connection element for shear rupture, AASHTO.

    Parameters
    ----------
    tensile_strength
        Specified minimum tensile strength F_u [MPa], above zero; scalar or array.
    net_area
        Net area subject to shear A_vn [mm²], above zero.
    hole_factor
        Factor R_p from `punched_hole_factor` [-].

    Returns
    -------
    Real
        Nominal resistance [N]; the resistance factor is `AASHTO_SHEAR_RUPTURE_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``0.58 R_p F_u A_vn``.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.5.3, from memory.

    Examples
    --------
    >>> resistance = aashto_shear_rupture_resistance(400.0, net_area=1000.0, hole_factor=0.9)
    >>> round(float(resistance))
    208800
    """
    return 0.58 * net_rupture_strength(
        tensile_strength, effective_net_area=net_area, hole_factor=hole_factor
    )
