"""Flat lengths of plates that are rolled to a circle, and where their holes come to lie."""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = ["developed_half_shell", "offset_on_radius"]


def developed_half_shell(inner_diameter: Real, *, thickness: Real, seam_gap: Real) -> Real:
    """Flat length of one of two half-shells, along the middle of the plate.

    Parameters
    ----------
    inner_diameter
        Inside diameter after rolling D_i [mm], above zero; scalar or array.
    thickness
        Plate thickness t [mm], above zero.
    seam_gap
        Opening between the half-shells at each seam, along the middle of the plate g [mm], at
        least zero.

    Returns
    -------
    Real
        Length ``π (D_i + t)/2 - g`` [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range, or nothing is left between the gaps.

    Notes
    -----
    The middle of a plate neither stretches nor shortens as long as the radius is at least some
    five thicknesses; the sleeves meant here have fifty and more.

    References
    ----------
    Geometry; position of the neutral line in rolling, common practice, no published source.

    Examples
    --------
    >>> round(float(developed_half_shell(1500.0, thickness=10.0, seam_gap=20.0)), 2)
    2351.9
    """
    require_positive(inner_diameter=inner_diameter, thickness=thickness)
    require_at_least(0.0, seam_gap=seam_gap)
    length = np.pi * np.add(inner_diameter, thickness) / 2.0 - seam_gap
    if np.any(length <= 0.0):
        raise DomainError("seam_gap", float(np.max(seam_gap)), "less than half the circumference")
    return length


def offset_on_radius(offset: Real, *, from_radius: Real, to_radius: Real) -> Real:
    """Arc offset on another radius of a point on the same radial line.

    Parameters
    ----------
    offset
        Distance along the arc from a reference line [mm], at least zero; scalar or array.
    from_radius, to_radius
        Radius that the offset is measured on, and the one it is wanted on [mm], above zero.

    Returns
    -------
    Real
        Distance along the other arc [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``offset R_to/R_from``. Holes that meet on one radial line lie farther apart on an outside plate
    than on the sleeve, and closer on an inside plate: flat patterns must not share one gauge.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> round(float(offset_on_radius(100.0, from_radius=800.0, to_radius=812.0)), 3)
    101.5
    """
    require_at_least(0.0, offset=offset)
    require_positive(from_radius=from_radius, to_radius=to_radius)
    return np.multiply(offset, np.divide(to_radius, from_radius))
