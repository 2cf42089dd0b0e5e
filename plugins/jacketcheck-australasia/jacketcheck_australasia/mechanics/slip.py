"""Slip of bolts in friction-type joints (bolting category 8.8/TF).

Slip is a serviceability limit state in both codes: AS 4100:2020 cl. 3.5.5 and 9.2.3, NZS 3404:1997
cl. 9.3.3. Forces are those of one bolt.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within
from jacketcheck_australasia.mechanics._tables import by_hole, choose

__all__ = ["AS_ROLLED_SLIP_FACTOR", "SLIP_CAPACITY_FACTOR", "slip_capacity", "slip_hole_factor"]

SLIP_CAPACITY_FACTOR: Final = 0.70
"""Capacity factor for slip (AS 4100:2020 cl. 3.5.5, from memory; NZS 3404:1997 Table 3.3(2))."""

AS_ROLLED_SLIP_FACTOR: Final = 0.35
"""Slip factor of clean as-rolled surfaces (AS 4100:2020 cl. 9.2.3.2, NZS 3404:1997 cl. 9.3.3.2,
both from memory); other surfaces need a test."""

_HOLE_FACTORS: Final = by_hole(standard=1.0, oversized_or_short_slot=0.85, long_slot=0.70)


def slip_hole_factor(hole: str) -> float:
    """Factor for the type of hole, k_h.

    Parameters
    ----------
    hole
        Hole type: ``standard``, ``oversized``, or ``short-slot`` or ``long-slot`` with
        ``-perpendicular`` or ``-parallel``.

    Returns
    -------
    float
        Factor k_h [-].

    Raises
    ------
    DomainError
        If the hole type is unknown.

    Notes
    -----
    Standard holes 1.0, short slots and oversize holes 0.85, long slots 0.70, whichever way a slot
    points.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.3.1 (9.3.3.1 in the 1998 edition); NZS 3404:Part
    1:1997, Steel structures standard, cl. 9.3.3.1; both from memory.

    Examples
    --------
    >>> slip_hole_factor("oversized")
    0.85
    """
    return choose(_HOLE_FACTORS, hole, name="hole")


def slip_capacity(
    slip_factor: Real, *, bolt_tension: Real, interfaces: Real, hole_factor: Real = 1.0
) -> Real:
    """Nominal shear capacity of one bolt for slip.

    Parameters
    ----------
    slip_factor
        Slip factor mu [-], above zero; scalar or array.
    bolt_tension
        Minimum bolt tension at installation N_ti [N], at least zero; zero for bolts that are only
        snug-tight.
    interfaces
        Number of effective interfaces n_ei, at least one.
    hole_factor
        Factor k_h from `slip_hole_factor` [-].

    Returns
    -------
    Real
        Nominal capacity V_sf [N], broadcast over the arguments; the capacity factor is
        `SLIP_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_sf = mu n_ei N_ti k_h``. The codes compare it with the shear under serviceability loads.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.2.3.1 (9.3.3.1 in the 1998 edition); NZS 3404:Part
    1:1997, Steel structures standard, cl. 9.3.3.1; both from memory.

    Examples
    --------
    >>> float(round(slip_capacity(0.35, bolt_tension=145e3, interfaces=1)))
    50750.0
    """
    require_positive(slip_factor=slip_factor)
    require_at_least(0.0, bolt_tension=bolt_tension)
    require_at_least(1.0, interfaces=interfaces)
    require_positive(hole_factor=hole_factor)
    require_within(0.0, 1.0, hole_factor=hole_factor)
    return np.multiply(slip_factor, interfaces) * bolt_tension * hole_factor
