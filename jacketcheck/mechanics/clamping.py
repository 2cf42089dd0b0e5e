"""Lateral clamping that lets bars anchor by friction across the splitting surface.

A bar that pulls out of cracked concrete rides up on its ribs and pushes the concrete apart along
a splitting surface. As long as hoops and sleeve press that surface together, friction on it carries
the bar's force. Demand and supply are pressures; both stand here.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_at_least_or_infinite,
    require_positive,
)

__all__ = [
    "CLAMPING_HOOP_STRAIN",
    "ClampingPressure",
    "available_clamping_pressure",
    "column_hoop_clamping_pressure",
    "crack_perimeter",
    "required_clamping_pressure",
    "ring_crack_perimeter",
    "separate_crack_perimeter",
]

CLAMPING_HOOP_STRAIN: Final = 0.001
"""Hoop strain up to which splitting cracks stay rough enough to transfer friction [-].

Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7; Seible et al.,
J. Compos. Constr. 1(2) (1997); from memory. 0.0015 is also in use.
"""


def ring_crack_perimeter(
    bar_count: Real, *, bar_circle_diameter: Real, bar_diameter: Real, cover: Real
) -> Real:
    """Length of splitting crack for each bar when one crack runs through all bars.

    Parameters
    ----------
    bar_count
        Number of bars on the circle ``n``, at least one; scalar or array.
    bar_circle_diameter
        Diameter of the circle of bar centres ``D'`` [mm], above zero.
    bar_diameter
        Bar diameter ``d_b`` [mm], above zero.
    cover
        Clear cover over the bars ``c`` [mm], at least zero.

    Returns
    -------
    Real
        ``pi D' / (2 n) + 2 (d_b + c)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Seible, Priestley, Hegemier and Innamorato, Seismic Retrofit of RC Columns with Continuous
    Carbon Fiber Jackets, J. Compos. Constr. 1(2) (1997), 52-62; Priestley, Seible and Calvi (1996),
    ch. 7; both from memory.

    Examples
    --------
    >>> value = ring_crack_perimeter(
    ...     20, bar_circle_diameter=1068.0, bar_diameter=32.0, cover=50.0)
    >>> round(float(value), 1)
    247.9
    """
    require_at_least(1.0, bar_count=bar_count)
    require_positive(bar_circle_diameter=bar_circle_diameter, bar_diameter=bar_diameter)
    require_at_least(0.0, cover=cover)
    along_circle = np.multiply(np.pi, bar_circle_diameter) / np.multiply(2.0, bar_count)
    return along_circle + 2.0 * np.add(bar_diameter, cover)


def separate_crack_perimeter(bar_diameter: Real, *, cover: Real) -> Real:
    """Length of splitting crack for each bar when every bar splits off a wedge of its own.

    Parameters
    ----------
    bar_diameter
        Bar diameter ``d_b`` [mm], above zero; scalar or array.
    cover
        Clear cover over the bar ``c`` [mm], at least zero.

    Returns
    -------
    Real
        ``2 sqrt(2) (c + d_b)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7, from memory.

    Examples
    --------
    >>> round(float(separate_crack_perimeter(32.0, cover=50.0)), 1)
    231.9
    """
    require_positive(bar_diameter=bar_diameter)
    require_at_least(0.0, cover=cover)
    return np.multiply(2.0 * sqrt(2.0), np.add(cover, bar_diameter))


def crack_perimeter(
    bar_count: Real, *, bar_circle_diameter: Real, bar_diameter: Real, cover: Real
) -> Real:
    """Length of splitting crack for each bar: the shorter of the two patterns.

    Parameters
    ----------
    bar_count
        Number of bars on the circle, at least one; scalar or array.
    bar_circle_diameter
        Diameter of the circle of bar centres [mm], above zero.
    bar_diameter
        Bar diameter [mm], above zero.
    cover
        Clear cover over the bars [mm], at least zero; that of the original column unless the
        concrete there has been made good. Engineering judgement.

    Returns
    -------
    Real
        Smaller of `ring_crack_perimeter` and `separate_crack_perimeter` [mm].

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7;
    FHWA-HRT-06-032 (2006); both from memory.

    Examples
    --------
    >>> value = crack_perimeter(20, bar_circle_diameter=1068.0, bar_diameter=32.0, cover=50.0)
    >>> round(float(value), 1)
    231.9
    """
    ring = ring_crack_perimeter(
        bar_count, bar_circle_diameter=bar_circle_diameter, bar_diameter=bar_diameter, cover=cover
    )
    return np.minimum(ring, separate_crack_perimeter(bar_diameter, cover=cover))


def required_clamping_pressure(
    bar_force: Real,
    *,
    anchorage_length: Real,
    crack_perimeter: Real,
    friction_coefficient: Real = 1.4,
) -> Real:
    """Lateral pressure that anchors a bar by friction on its splitting crack.

    Parameters
    ----------
    bar_force
        Bar force to be anchored, area times stress ``A_b f_s`` [N], at least zero; scalar or
        array.
    anchorage_length
        Length over which it is anchored ``l`` [mm], above zero.
    crack_perimeter
        Length of splitting crack for each bar ``p`` [mm], above zero.
    friction_coefficient
        Coefficient ``mu`` on the rough crack [-], above zero.

    Returns
    -------
    Real
        Clamping pressure ``f_l = A_b f_s / (mu p l)`` [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The stress ``f_s`` is the one that the bar must develop, overstrength included. Seible et al.
    write the demand without friction and with the yield stress: ``A_s f_y / (p l)``. That is this
    equation for ``f_s = 1.4 f_y`` with ``mu = 1.4``, the overstrength cancelling the friction; or
    for ``f_s = f_y`` with ``mu = 1``. The equivalence is ours, the sources do not state it.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7;
    FHWA-HRT-06-032, Seismic Retrofitting Manual for Highway Structures, Part 1 (2006); Seible,
    Priestley, Hegemier and Innamorato, J. Compos. Constr. 1(2) (1997), 52-62; all from memory.

    Examples
    --------
    >>> float(required_clamping_pressure(
    ...     280e3, anchorage_length=500.0, crack_perimeter=200.0))
    2.0
    """
    require_at_least(0.0, bar_force=bar_force)
    require_positive(
        anchorage_length=anchorage_length,
        crack_perimeter=crack_perimeter,
        friction_coefficient=friction_coefficient,
    )
    surface = np.multiply(crack_perimeter, anchorage_length)
    return np.divide(bar_force, np.multiply(friction_coefficient, surface))


@dataclass(frozen=True, eq=False)
class ClampingPressure:
    """Clamping pressure that a sleeve can supply, and what limits it; attributes share one shape.

    Pressures are those on the inner face of the sleeve [MPa];
    `jacketcheck.mechanics.hoop.core_pressure` carries them to the core.

    Attributes
    ----------
    at_hoop_strain
        Pressure at the limiting dilation strain with the sleeve elastic and the seams held.
    at_yield
        Pressure at which the sleeve yields.
    at_slip
        Pressure at which the seams slip; infinite where they are not taken to slip.
    kept
        What is kept after slip and yield; infinite where losses are not looked at.
    available
        The smallest of the four.
    governed_by
        "hoop strain", "yield", "slip" or "loss".
    play_not_closed
        Whether the dilation does not even close the play, so that nothing is available.
    """

    at_hoop_strain: Real
    at_yield: Real
    at_slip: Real
    kept: Real
    available: Real
    governed_by: NDArray[np.str_]
    play_not_closed: NDArray[np.bool_]


def available_clamping_pressure(
    *,
    core_radius: Real,
    radial_compliance: Real,
    yield_pressure: Real,
    slip_pressure: Real,
    hoop_strain: Real = CLAMPING_HOOP_STRAIN,
    radial_play: Real = 0.0,
    kept_pressure: Real = np.inf,
) -> ClampingPressure:
    """Clamping pressure that a sleeve supplies before the splitting cracks open too far.

    Parameters
    ----------
    core_radius
        Radius of the face between core and grout [mm], above zero; scalar or array.
    radial_compliance
        Outward movement of that face for each unit of pressure on the sleeve [mm/MPa], above zero;
        from `jacketcheck.mechanics.hoop.radial_compliance`.
    yield_pressure
        Pressure at which the sleeve yields [MPa], at least zero; less what other hoop forces take.
    slip_pressure
        The same for slip of the seams [MPa], at least zero; infinite for bolts in bearing, whose
        slip is counted in `radial_play` instead.
    hoop_strain
        Dilation strain of the core up to which the cracks transfer friction [-], above zero.
    radial_play
        Outward movement before the sleeve engages [mm], at least zero.
    kept_pressure
        Pressure that the sleeve keeps after it has slipped or yielded [MPa], at least zero, from
        `jacketcheck.mechanics.retained_pressure.retained_pressure`.

    Returns
    -------
    ClampingPressure
        Available pressure and what governs, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``(eps R_c - play) / (du/dp)``, at least zero, not above yield, not above slip. With stiff seams
    and no annulus the first is ``eps E t / R``, on which
    `jacketcheck.mechanics.jacket_thickness.clamping_thickness` rests. The strain is that of the
    cracked core, so flexible seams and grout use part of it up: this is our reading and the
    conservative one.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7, from memory.

    Examples
    --------
    >>> supply = available_clamping_pressure(
    ...     core_radius=600.0, radial_compliance=0.3, yield_pressure=2.5, slip_pressure=1.8)
    >>> float(supply.at_hoop_strain), float(supply.available), str(supply.governed_by)
    (2.0, 1.8, 'slip')
    """
    require_positive(
        core_radius=core_radius,
        radial_compliance=radial_compliance,
        hoop_strain=hoop_strain,
    )
    require_at_least(0.0, radial_play=radial_play, yield_pressure=yield_pressure)
    require_at_least_or_infinite(0.0, slip_pressure=slip_pressure, kept_pressure=kept_pressure)
    movement = np.multiply(hoop_strain, core_radius) - radial_play
    at_hoop_strain = np.maximum(movement, 0.0) / radial_compliance
    limits = np.stack(
        np.broadcast_arrays(slip_pressure, yield_pressure, at_hoop_strain, kept_pressure)
    )
    governing = np.argmin(limits, axis=0)
    names = np.array(["slip", "yield", "hoop strain", "loss"])
    return ClampingPressure(
        at_hoop_strain=limits[2][()],
        at_yield=limits[1][()],
        at_slip=limits[0][()],
        kept=limits[3][()],
        available=np.min(limits, axis=0),
        governed_by=names[governing],
        play_not_closed=np.broadcast_to(np.less_equal(movement, 0.0), governing.shape)[()],
    )


def column_hoop_clamping_pressure(
    hoop_area: Real,
    *,
    diameter: Real,
    spacing: Real,
    elastic_modulus: Real,
    hoop_strain: Real = CLAMPING_HOOP_STRAIN,
) -> Real:
    """Clamping pressure of the column's own hoops at a given hoop strain.

    Parameters
    ----------
    hoop_area
        Area of one hoop bar [mm2], above zero; scalar or array.
    diameter
        Column diameter [mm], above zero, as the source takes it.
    spacing
        Spacing of the hoops [mm], above zero.
    elastic_modulus
        Elastic modulus of the hoops [MPa], above zero.
    hoop_strain
        Hoop strain [-], above zero and below yield.

    Returns
    -------
    Real
        ``f_h = 2 eps A_h E_h / (D s)`` [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    At a strain of 0.001 this is the printed ``0.002 A_h E_h / (D s)``. Hoops whose laps have lost
    their cover do not count.

    References
    ----------
    Seible, Priestley, Hegemier and Innamorato, J. Compos. Constr. 1(2) (1997), 52-62, from memory.

    Examples
    --------
    >>> value = column_hoop_clamping_pressure(
    ...     129.0, diameter=1200.0, spacing=150.0, elastic_modulus=200e3)
    >>> round(float(value), 3)
    0.287
    """
    require_positive(
        hoop_area=hoop_area,
        diameter=diameter,
        spacing=spacing,
        elastic_modulus=elastic_modulus,
        hoop_strain=hoop_strain,
    )
    hoop_force = np.multiply(hoop_strain, elastic_modulus) * hoop_area
    return 2.0 * hoop_force / np.multiply(diameter, spacing)
