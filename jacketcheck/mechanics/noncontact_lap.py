"""Laps of bars that do not touch: added bars in the annulus beside the bars of the column.

Force passes from one bar to the other by inclined struts. They shorten the length that counts and
push outwards, which hoops or sleeve must hold.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arguments import require_reduction
from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics._customary_units import INCH

__all__ = ["effective_lap_length", "lap_hoop_force", "lap_offset", "largest_lap_offset"]


def lap_offset(radial_offset: Real, *, bar_spacing: Real) -> Real:
    """Greatest distance between the centre of an added bar and that of the nearest column bar.

    Parameters
    ----------
    radial_offset
        Difference of the radii of the two circles of bars [mm], at least zero; scalar or array.
    bar_spacing
        Spacing of the column's bars along their circle [mm], above zero.

    Returns
    -------
    Real
        ``sqrt(radial**2 + (spacing/2)**2)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    An added bar that stands midway between two column bars, the worst place.

    References
    ----------
    Geometry.

    Examples
    --------
    >>> float(lap_offset(90.0, bar_spacing=240.0))
    150.0
    """
    require_at_least(0.0, radial_offset=radial_offset)
    require_positive(bar_spacing=bar_spacing)
    return np.hypot(radial_offset, np.multiply(0.5, bar_spacing))


def effective_lap_length(lap_length: Real, *, offset: Real) -> Real:
    """Length of a lap that counts when its bars stand apart.

    Parameters
    ----------
    lap_length
        Length over which the bars stand side by side [mm], at least zero; scalar or array.
    offset
        Distance between them [mm], at least zero.

    Returns
    -------
    Real
        ``l - s``, at least zero [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Struts at 45 degrees from the end of one bar reach the other only after the offset.

    References
    ----------
    McLean and Smith, Noncontact Lap Splices in Bridge Column-Shaft Connections, WA-RD 417.1 (1997);
    the same total length, lap plus spacing, in TxDOT Bridge Design Manual - LRFD, ch. 5 sec. 6.

    Examples
    --------
    >>> float(effective_lap_length(1200.0, offset=150.0))
    1050.0
    """
    require_at_least(0.0, lap_length=lap_length, offset=offset)
    return np.maximum(np.subtract(lap_length, offset), 0.0)


def largest_lap_offset(lap_length: Real) -> Real:
    """Distance up to which lapped bars count as a lap without further proof.

    Parameters
    ----------
    lap_length
        Required lap length [mm], at least zero; scalar or array.

    Returns
    -------
    Real
        The smaller of ``l/5`` and 6 in (152.4 mm) [mm].

    Raises
    ------
    DomainError
        If the length is not finite and at least zero.

    Notes
    -----
    Beyond it, the force has to be followed by struts and ties: `effective_lap_length` and
    `lap_hoop_force`.

    References
    ----------
    ACI 318-19 25.5.1.3.

    Examples
    --------
    >>> [round(float(largest_lap_offset(length)), 6) for length in (1000.0, 600.0)]
    [152.4, 120.0]
    """
    require_at_least(0.0, lap_length=lap_length)
    return np.minimum(np.divide(lap_length, 5.0), 6.0 * INCH)


def lap_hoop_force(
    bar_force: Real, *, bar_count: Real, lap_length: Real, tension_share: Real = 1.0
) -> Real:
    """Hoop force, for each unit of height, that a ring of noncontact laps asks for.

    Parameters
    ----------
    bar_force
        Largest force of one lapped bar, area times tensile strength ``A_l f_ul`` [N], at least
        zero; scalar or array.
    bar_count
        Number of lapped bars on the circle ``n``, at least one.
    lap_length
        Length of the lap that counts ``l_s`` [mm], above zero, from `effective_lap_length`.
    tension_share
        Share of the bars that are in tension at a time ``k`` [-], above zero, at most 1; all of
        them unless a section analysis says otherwise.

    Returns
    -------
    Real
        ``k n A_l f_ul / (2 pi l_s)`` [N/mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Each bar passes ``A_l f_ul / l_s`` to its neighbours for each unit of height. Struts at 45
    degrees push outwards with as much, a pressure of ``n A_l f_ul / (2 pi R l_s)`` on a circle of
    radius ``R``, and a hoop carries pressure times radius. The sources print it as the spacing of
    transverse bars, ``s_tr = 2 pi A_tr f_ytr l_s / (n A_l f_ul)``, and AASHTO with ``k``. It stands
    beside the hoop force from dilation and from clamping.

    References
    ----------
    McLean and Smith, WA-RD 417.1 (1997); AASHTO LRFD 9th ed. (2020), Eq. 5.10.8.4.2a-1; both from
    memory, the first as rederived here from equilibrium. For one face of a column the same as in
    TxDOT Bridge Design Manual - LRFD, ch. 5 sec. 6.

    Examples
    --------
    >>> force = lap_hoop_force(819.0 * 655.0, bar_count=16, lap_length=1000.0)
    >>> round(float(force))
    1366
    """
    require_at_least(0.0, bar_force=bar_force)
    require_at_least(1.0, bar_count=bar_count)
    require_positive(lap_length=lap_length)
    require_reduction(tension_share=tension_share)
    pulled = np.multiply(tension_share, bar_count) * bar_force
    return pulled / (2.0 * np.pi * np.asarray(lap_length))
