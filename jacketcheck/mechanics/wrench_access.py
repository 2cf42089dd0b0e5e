"""Room for the wrench around the bolts of a seam."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = ["wrench_clearance_between_bolts", "wrench_clearance_to_obstruction"]


def wrench_clearance_to_obstruction(
    *, tightening_clearance: Real, entering_clearance: Real = 0.0, socket_diameter: Real = 0.0
) -> Real:
    """Least distance from a bolt's centre line to an obstruction beside it.

    Parameters
    ----------
    tightening_clearance
        Tabulated clearance for tightening [mm], above zero; scalar or array.
    entering_clearance
        Tabulated clearance for entering the bolt [mm], at least zero; zero where it is entered
        from the other side.
    socket_diameter
        Outside diameter of the socket [mm], at least zero.

    Returns
    -------
    Real
        Least distance [mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The largest of the two clearances and of the socket's radius. At a jacket the obstruction is
    the footing under the lowest bolt, a stiffener, or formwork for the grout.

    References
    ----------
    Geometry; clearances as tabulated in AISC Steel Construction Manual, 16th ed. (2023), Table
    7-15 and its companions, from memory.

    Examples
    --------
    >>> float(wrench_clearance_to_obstruction(tightening_clearance=35.0, socket_diameter=60.0))
    35.0
    """
    require_positive(tightening_clearance=tightening_clearance)
    require_at_least(0.0, entering_clearance=entering_clearance, socket_diameter=socket_diameter)
    clearance = np.maximum(tightening_clearance, entering_clearance)
    return np.maximum(clearance, np.divide(socket_diameter, 2.0))


def wrench_clearance_between_bolts(*, socket_diameter: Real, nut_width: Real) -> Real:
    """Least distance between bolt centres that lets a socket pass the next nut.

    Parameters
    ----------
    socket_diameter
        Outside diameter of the socket [mm], above zero; scalar or array.
    nut_width
        Width of the nut or hexagon head across its flats [mm], above zero.

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
    Radius of the socket plus that of the hexagon's corners, ``width / sqrt(3)``. No play is added.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> round(float(wrench_clearance_between_bolts(socket_diameter=60.0, nut_width=36.0)), 2)
    50.78
    """
    require_positive(socket_diameter=socket_diameter, nut_width=nut_width)
    return np.divide(socket_diameter, 2.0) + np.divide(nut_width, np.sqrt(3.0))
