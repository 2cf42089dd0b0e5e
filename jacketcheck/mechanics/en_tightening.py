"""Tightening of EN 14399 assemblies: torque method and combined method."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, Real, require_positive
from jacketcheck.mechanics.bolt_installation import tightening_torque

__all__ = [
    "COMBINED_METHOD_COEFFICIENT_K1",
    "TorqueSteps",
    "combined_method_rotation",
    "torque_method_steps",
]

COMBINED_METHOD_COEFFICIENT_K1: Final = 0.13
"""Torque coefficient for the first step of the combined method with k-class K1 (EN 1090-2:2018
8.5.4, from memory; 0.125 in the 2008 edition)."""

_FIRST_STEP: Final = 0.75
"""First step over the reference torque (EN 1090-2:2018 8.5.3 and 8.5.4)."""
_SECOND_STEP: Final = 1.10
"""Second step of the torque method over the reference torque (EN 1090-2:2018 8.5.3)."""
_BANDS: Final = (2.0, 6.0, 10.0)
_ROTATIONS: Final = np.array([60.0, 90.0, 120.0])


class TorqueSteps(NamedTuple):
    """Torque of the first and of the second step [N mm]."""

    first: Real
    second: Real


def torque_method_steps(
    diameter: Real, *, pretension: Real, torque_coefficient: Real
) -> TorqueSteps:
    """Torques of the two steps of the torque method.

    Parameters
    ----------
    diameter
        Nominal bolt diameter d [mm], above zero; scalar or array.
    pretension
        Nominal minimum preload F_p,C [N], above zero.
    torque_coefficient
        Mean k_m that the maker declares for the lot (k-class K2), or found by test [-], above zero.

    Returns
    -------
    TorqueSteps
        0.75 and 1.10 times ``k_m d F_p,C`` [N mm].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    All bolts get the first step before any gets the second. The first step is that of the combined
    method as well.

    References
    ----------
    EN 1090-2:2018, 8.5.3.

    Examples
    --------
    >>> steps = torque_method_steps(20.0, pretension=172e3, torque_coefficient=0.12)
    >>> round(steps.first), round(steps.second)
    (309600, 454080)
    """
    require_positive(pretension=pretension)
    reference = tightening_torque(
        diameter, tension=pretension, torque_coefficient=torque_coefficient
    )
    return TorqueSteps(_FIRST_STEP * reference, _SECOND_STEP * reference)


def combined_method_rotation(clamp_length: Real, *, diameter: Real) -> Real:
    """Rotation of the nut in the second step of the combined method.

    Parameters
    ----------
    clamp_length
        Thickness between head and nut, packs and washers included t [mm], above zero; scalar or
        array.
    diameter
        Nominal bolt diameter d [mm], above zero.

    Returns
    -------
    Real
        Rotation beyond the first step [°].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero, or the clamp length exceeds ten diameters.

    Notes
    -----
    60° below 2 d, 90° from there to below 6 d, 120° up to 10 d; faces normal to the bolt.

    References
    ----------
    EN 1090-2:2018, 8.5.4 and Table 21.

    Examples
    --------
    >>> float(combined_method_rotation(45.0, diameter=20.0))
    90.0
    """
    require_positive(clamp_length=clamp_length, diameter=diameter)
    slenderness = np.divide(clamp_length, diameter)
    if np.any(slenderness > _BANDS[-1] * (1.0 + 1e-9)):
        raise DomainError(
            "clamp_length / diameter",
            float(np.max(slenderness)),
            "at most 10; the rotation of a longer bolt has to be found by test",
        )
    # a limit belongs to the band above it, whatever a conversion has made of it
    band = np.searchsorted(_BANDS[:2], slenderness * (1.0 + 1e-9), side="right")
    rotation: Floats = _ROTATIONS[band]
    return rotation
