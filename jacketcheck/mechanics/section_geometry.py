"""Closed-form geometry of circles, circular segments and bar rings.

A segment is the part of a disc between an extreme fibre and a straight chord; its depth runs from
that extreme fibre to the chord, so that depth 0 is nothing and depth equal to the diameter is the
whole disc.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, Real, require_finite, require_positive

__all__ = [
    "bar_ring",
    "chord_strips",
    "disc_plastic_modulus",
    "disc_second_moment",
    "ring_plastic_modulus",
    "segment_area",
    "segment_centroid",
    "segment_first_moment",
    "segment_second_moment",
]


def _half_angle(depth: Real, diameter: Real) -> Real:
    """Half the angle that the chord subtends at the centre [rad]."""
    require_positive(diameter=diameter)
    require_finite(depth=depth)
    ratio = np.asarray(depth) / diameter
    if np.any((ratio < 0.0) | (ratio > 1.0)):
        raise DomainError("depth / diameter", float(np.max(ratio)), "between 0 and 1")
    angle: Real = np.arccos(1.0 - 2.0 * ratio)
    return angle


def segment_area(depth: Real, *, diameter: Real) -> Real:
    """Area of a circular segment.

    Parameters
    ----------
    depth
        Distance from the extreme fibre to the chord [mm], 0 to `diameter`; scalar or array.
    diameter
        Diameter of the disc [mm]; broadcasts with `depth`.

    Returns
    -------
    float or ndarray
        Area [mm²].

    Raises
    ------
    DomainError
        If the depth is outside the disc or anything is not finite.

    Notes
    -----
    A = (D²/4)(θ − sin θ cos θ) with cos θ = 1 − 2a/D.

    References
    ----------
    Elementary geometry; also the compression zone of a circular column under the rectangular
    stress block, e.g. Wight, *Reinforced Concrete: Mechanics and Design*, 7th ed., ch. 11.

    Examples
    --------
    >>> round(float(segment_area(0.25, diameter=1.0)), 5)
    0.15355
    """
    theta = _half_angle(depth, diameter)
    area: Real = 0.25 * np.square(diameter) * (theta - np.sin(theta) * np.cos(theta))
    return area


def segment_first_moment(depth: Real, *, diameter: Real) -> Real:
    """First moment of a circular segment's area about the disc's centre.

    Parameters
    ----------
    depth
        Distance from the extreme fibre to the chord [mm], 0 to `diameter`.
    diameter
        Diameter of the disc [mm]; broadcasts with `depth`.

    Returns
    -------
    float or ndarray
        First moment A ȳ = D³ sin³θ / 12 [mm³].

    Raises
    ------
    DomainError
        If the depth is outside the disc or anything is not finite.

    References
    ----------
    Elementary geometry, see `segment_area`.

    Examples
    --------
    >>> round(float(segment_first_moment(0.5, diameter=1.0)), 5)
    0.08333
    """
    theta = _half_angle(depth, diameter)
    moment: Real = np.power(diameter, 3) * np.sin(theta) ** 3 / 12.0
    return moment


def segment_centroid(depth: Real, *, diameter: Real) -> Real:
    """Distance from the disc's centre to the centroid of a circular segment.

    Parameters
    ----------
    depth
        Distance from the extreme fibre to the chord [mm], above 0 and up to `diameter`.
    diameter
        Diameter of the disc [mm]; broadcasts with `depth`.

    Returns
    -------
    float or ndarray
        Distance ȳ [mm], towards the extreme fibre.

    Raises
    ------
    DomainError
        If the depth is zero (no area, no centroid), outside the disc, or not finite.

    References
    ----------
    Elementary geometry, see `segment_area`.

    Examples
    --------
    >>> round(float(segment_centroid(0.25, diameter=1.0)), 5)
    0.35251
    """
    require_positive(depth=depth)
    centroid: Real = segment_first_moment(depth, diameter=diameter) / segment_area(
        depth, diameter=diameter
    )
    return centroid


def segment_second_moment(depth: Real, *, diameter: Real) -> Real:
    """Second moment of a circular segment's area about the disc's centre, parallel to the chord.

    Parameters
    ----------
    depth
        Distance from the extreme fibre to the chord [mm], 0 to `diameter`.
    diameter
        Diameter of the disc [mm]; broadcasts with `depth`.

    Returns
    -------
    float or ndarray
        Second moment [mm⁴]; π D⁴/64 for the whole disc.

    Raises
    ------
    DomainError
        If the depth is outside the disc or anything is not finite.

    Notes
    -----
    I = (D⁴/64)(θ − sin θ cos θ + 2 sin³θ cos θ), the integral of y² over the segment.

    References
    ----------
    Elementary geometry, see `segment_area`.

    Examples
    --------
    >>> round(float(segment_second_moment(1.0, diameter=1.0)), 5)
    0.04909
    """
    theta = _half_angle(depth, diameter)
    sine, cosine = np.sin(theta), np.cos(theta)
    moment: Real = np.power(diameter, 4) / 64.0 * (theta - sine * cosine + 2.0 * sine**3 * cosine)
    return moment


def disc_second_moment(diameter: Real) -> Real:
    """Second moment of area of a disc about a diameter.

    Parameters
    ----------
    diameter
        Diameter [mm].

    Returns
    -------
    float or ndarray
        π D⁴/64 [mm⁴].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    Mechanics of materials.

    Examples
    --------
    >>> round(float(disc_second_moment(1.0)), 5)
    0.04909
    """
    require_positive(diameter=diameter)
    moment: Real = np.pi * np.power(diameter, 4) / 64.0
    return moment


def disc_plastic_modulus(diameter: Real) -> Real:
    """Plastic modulus of a solid disc.

    Parameters
    ----------
    diameter
        Diameter [mm].

    Returns
    -------
    float or ndarray
        D³/6 [mm³].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    Mechanics of materials.

    Examples
    --------
    >>> float(disc_plastic_modulus(6.0))
    36.0
    """
    require_positive(diameter=diameter)
    modulus: Real = np.power(diameter, 3) / 6.0
    return modulus


def ring_plastic_modulus(radius: Real, *, thickness: Real) -> Real:
    """Plastic modulus of a thin ring, e.g. a sleeve or many bars smeared over their circle.

    Parameters
    ----------
    radius
        Mean radius [mm].
    thickness
        Thickness [mm], small against the radius (1 % error at t = r/5).

    Returns
    -------
    float or ndarray
        4 r² t [mm³].

    Raises
    ------
    DomainError
        If anything is not finite and above zero.

    References
    ----------
    Mechanics of materials.

    Examples
    --------
    >>> float(ring_plastic_modulus(500.0, thickness=10.0))
    10000000.0
    """
    require_positive(radius=radius, thickness=thickness)
    modulus: Real = 4.0 * np.square(radius) * thickness
    return modulus


def chord_strips(diameter: float, *, edges: Floats) -> tuple[Floats, Floats]:
    """Exact area and first moment of the strips that parallel chords cut from a disc.

    Parameters
    ----------
    diameter
        Diameter of the disc [mm].
    edges
        Ascending chord positions [mm] measured from the centre, shape (n + 1,); what lies beyond
        the disc counts as nothing.

    Returns
    -------
    area, first_moment : tuple of ndarray
        Area [mm²] and first moment about the centre [mm³] of each strip, shape (n,).

    Raises
    ------
    DomainError
        If the diameter is not above zero or anything is not finite.

    References
    ----------
    Differences of `segment_area` and `segment_first_moment`.

    Examples
    --------
    >>> area, first_moment = chord_strips(2.0, edges=np.array([-1.0, 0.0, 1.0]))
    >>> area.round(4).tolist(), first_moment.round(4).tolist()
    ([1.5708, 1.5708], [-0.6667, 0.6667])
    """
    require_positive(diameter=diameter)
    require_finite(edges=edges)
    depth = np.clip(edges + 0.5 * diameter, 0.0, diameter)
    area = np.diff(np.asarray(segment_area(depth, diameter=diameter)))
    first_moment = -np.diff(np.asarray(segment_first_moment(depth, diameter=diameter)))
    return area, first_moment


def bar_ring(count: int, *, radius: float, first_angle: float = 0.0) -> tuple[Floats, Floats]:
    """Coordinates of bars at equal spacing on a circle.

    Parameters
    ----------
    count
        Number of bars, at least 1.
    radius
        Radius of the circle through the bar centres [mm].
    first_angle
        Angle of the first bar [rad], counter-clockwise from the x axis.

    Returns
    -------
    x, y : tuple of ndarray
        Coordinates from the column's centre [mm], shape (count,).

    Raises
    ------
    DomainError
        If the count is below 1 or a number is not finite.

    References
    ----------
    Elementary geometry.

    Examples
    --------
    >>> x, y = bar_ring(4, radius=100.0)
    >>> x.round(6).tolist()
    [100.0, 0.0, -100.0, -0.0]
    """
    require_positive(radius=radius)
    require_finite(first_angle=first_angle)
    if count < 1:
        raise DomainError("count", count, "at least 1")
    angle = first_angle + 2.0 * np.pi * np.arange(count) / count
    return radius * np.cos(angle), radius * np.sin(angle)
