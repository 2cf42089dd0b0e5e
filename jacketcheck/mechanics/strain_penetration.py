"""Rotation at the end of a column from bars that slip in the member that anchors them.

Two published measures are given.  `penetration_length` extends the column by the length over which
yield strain penetrates, and goes with the plastic hinge lengths of the same authors;
`slip_at_yield` is the slip of a well anchored bar at its yield stress.  Only one of them may be
used at a time, and neither adds plastic rotation to a hinge length that already contains
``0.022 fye db``.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, require_at_least, require_finite, require_positive

__all__ = ["penetration_length", "slip_at_stress", "slip_at_yield", "slip_rotation"]


def penetration_length(expected_yield: Real, *, bar_diameter: Real) -> Real:
    """Length by which yield strain penetrates into the member that anchors a bar.

    Parameters
    ----------
    expected_yield
        Expected yield strength of the longitudinal bars [MPa], above zero; scalar or array.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Length ``0.022 fye db`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    The curvature is taken as constant over this length below the hinge section.

    References
    ----------
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    Eq. 4.30 (equation number from memory).

    Examples
    --------
    >>> round(float(penetration_length(475.0, bar_diameter=32.0)), 1)
    334.4
    """
    require_positive(expected_yield=expected_yield, bar_diameter=bar_diameter)
    return 0.022 * np.multiply(expected_yield, bar_diameter)


def slip_at_yield(
    yield_strength: Real,
    *,
    bar_diameter: Real,
    concrete_strength: Real,
    bond_exponent: Real = 0.4,
) -> Real:
    """Slip of a fully anchored bar at the face of its anchorage when it yields.

    Parameters
    ----------
    yield_strength
        Yield strength of the bar [MPa], above zero; scalar or array.
    bar_diameter
        Bar diameter [mm], above zero.
    concrete_strength
        Compressive strength of the member that anchors the bar [MPa], above zero.
    bond_exponent
        Exponent of the local bond law [-], above zero; 0.4 in fib Model Code 2010.

    Returns
    -------
    Real
        Slip [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``s_y = 2.54 [(db / 8437) (fy / sqrt f'c) (2 alpha + 1)]**(1 / alpha) + 0.34``, fitted to
    pull-out tests of bars with ample anchorage length in well confined concrete.  It is the SI
    form of ``0.1 [(db / 4000) ...] + 0.013`` in inches and psi, 0.34 mm being 0.013 in rounded up.

    References
    ----------
    Zhao and Sritharan, Modeling of Strain Penetration Effects in Fiber-Based Analysis of
    Reinforced Concrete Structures, ACI Struct. J. 104(2) (2007), 133-141 (coefficients from
    memory).

    Examples
    --------
    >>> round(float(slip_at_yield(455.0, bar_diameter=25.4, concrete_strength=30.0)), 2)
    0.69
    """
    require_positive(
        yield_strength=yield_strength,
        bar_diameter=bar_diameter,
        concrete_strength=concrete_strength,
        bond_exponent=bond_exponent,
    )
    ratio = np.divide(bar_diameter, 8437.0) * np.divide(yield_strength, np.sqrt(concrete_strength))
    exponent = np.asarray(bond_exponent)
    return 2.54 * np.power(ratio * (2.0 * exponent + 1.0), 1.0 / exponent) + 0.34


def slip_at_stress(bar_stress: Real, *, yield_strength: Real, slip_at_yield: Real) -> Real:
    """Slip of a bar at a stress up to yield.

    Parameters
    ----------
    bar_stress
        Stress [MPa], tension positive, at most `yield_strength`; compression gives zero.
    yield_strength
        Yield strength [MPa], above zero.
    slip_at_yield
        Slip at yield [mm], above zero, see `slip_at_yield`.

    Returns
    -------
    Real
        Slip [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range, a stress above yield included: beyond yield the
        slip is part of the plastic hinge length.

    Notes
    -----
    Proportional to stress, as in the source.

    References
    ----------
    Zhao and Sritharan, ACI Struct. J. 104(2) (2007), 133-141.

    Examples
    --------
    >>> float(slip_at_stress(227.5, yield_strength=455.0, slip_at_yield=0.7))
    0.35
    """
    require_finite(bar_stress=bar_stress)
    require_positive(yield_strength=yield_strength, slip_at_yield=slip_at_yield)
    ratio = np.asarray(np.divide(bar_stress, yield_strength))
    if np.any(ratio > 1.0 + 1e-9):
        raise DomainError("bar_stress", float(np.max(bar_stress)), "at most the yield strength")
    slip: Real = np.maximum(ratio, 0.0) * slip_at_yield
    return slip


def slip_rotation(slip: Real, *, distance_to_neutral_axis: Real) -> Real:
    """Rotation of the column's end from slip of its extreme tension bar.

    Parameters
    ----------
    slip
        Slip of the extreme tension bar [mm], at least zero; scalar or array.
    distance_to_neutral_axis
        Distance from that bar to the neutral axis [mm], above zero.

    Returns
    -------
    Real
        Rotation [rad], broadcast over the arguments.

    Raises
    ------
    DomainError
        If the slip is negative or the distance not above zero.

    Notes
    -----
    The end of the column stays plane and turns about the neutral axis.

    References
    ----------
    Compatibility.

    Examples
    --------
    >>> float(slip_rotation(0.7, distance_to_neutral_axis=700.0))
    0.001
    """
    require_positive(distance_to_neutral_axis=distance_to_neutral_axis)
    require_at_least(0.0, slip=slip)
    return np.divide(slip, distance_to_neutral_axis)
