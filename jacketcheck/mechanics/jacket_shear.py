"""Shear that the hoop action of a steel jacket carries."""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_positive

__all__ = ["jacket_shear"]


def jacket_shear(
    hoop_stress: Real, *, thickness: Real, jacket_diameter: Real, crack_angle: Real = np.pi / 4.0
) -> Real:
    """Shear strength that a circular steel jacket adds to a column.

    Parameters
    ----------
    hoop_stress
        Hoop stress that the jacket can develop [MPa], above zero: its yield strength, or less
        where seams or bolts limit it; scalar or array.
    thickness
        Wall thickness [mm], above zero.
    jacket_diameter
        Diameter of the jacket [mm], above zero; the inner one is conservative.
    crack_angle
        Angle between the diagonal cracks and the column's axis [rad], between 0 and pi/2; 45
        degrees by default, which is conservative against the 35 and 30 degrees also in use.

    Returns
    -------
    Real
        Shear ``(pi / 2) t fyj D cot(theta)`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The jacket acts as hoops of area ``t`` per unit of height, over its whole diameter.  Only
    within the height of the jacket.

    References
    ----------
    Priestley, Seible, Xiao and Verma, Steel Jacket Retrofitting of Reinforced Concrete Bridge
    Columns for Enhanced Shear Strength, ACI Struct. J. 91(4) (1994), title 91-S39; Priestley,
    Seible and Calvi, Seismic Design and Retrofit of Bridges (1996) (form from memory).

    Examples
    --------
    >>> round(float(jacket_shear(250.0, thickness=10.0, jacket_diameter=1200.0)) / 1e3)
    4712
    """
    require_positive(
        hoop_stress=hoop_stress,
        thickness=thickness,
        jacket_diameter=jacket_diameter,
        crack_angle=crack_angle,
    )
    if np.any(np.asarray(crack_angle) >= 0.5 * np.pi):
        raise DomainError("crack_angle", float(np.max(crack_angle)), "below pi/2")
    hoops = 0.5 * np.pi * np.multiply(thickness, hoop_stress)
    shear: Real = hoops * jacket_diameter / np.tan(crack_angle)
    return shear
