"""What a tension on the bolts takes from their slip resistance."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive
from jacketcheck.mechanics.slip import AISC_PRETENSION_RATIO

__all__ = ["aashto_slip_tension_reduction", "aisc_slip_tension_reduction"]


def _share_of_clamping_left(bolt_tension: Real, clamping: Real) -> Real:
    """One less tension over clamping, and zero where the tension takes all of it."""
    require_at_least(0.0, bolt_tension=bolt_tension, pretension=clamping)
    tension, clamping = np.broadcast_arrays(
        np.asarray(bolt_tension, dtype=float), np.asarray(clamping, dtype=float)
    )
    left: Floats = np.maximum(clamping - tension, 0.0)
    return left / np.where(clamping > 0.0, clamping, 1.0)


def aisc_slip_tension_reduction(
    bolt_tension: Real,
    *,
    pretension: Real,
    pretension_ratio: Real = AISC_PRETENSION_RATIO,
) -> Real:
    """Factor on the slip resistance of a bolt that is also pulled, AISC.

    Parameters
    ----------
    bolt_tension
        Factored tension on one bolt T_u/n_b [N], at least zero; scalar or array.
    pretension
        Specified minimum pretension T_b [N], at least zero.
    pretension_ratio
        Mean installed over specified pretension D_u [-], above zero.

    Returns
    -------
    Real
        Factor k_sc [-], from 1 down to 0.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``k_sc = 1 - T_u / (D_u T_b n_b) >= 0`` (Eq. J3-5a); the lower bound is the specification's
    own. Zero where there is no pretension.

    References
    ----------
    AISC 360-22 (2022), J3.10, Eq. J3-5a (J3.9 in the 2010 and 2016 editions).

    Examples
    --------
    >>> float(round(aisc_slip_tension_reduction(56.5e3, pretension=100e3), 3))
    0.5
    """
    require_positive(pretension_ratio=pretension_ratio)
    return _share_of_clamping_left(bolt_tension, np.multiply(pretension_ratio, pretension))


def aashto_slip_tension_reduction(bolt_tension: Real, *, pretension: Real) -> Real:
    """Factor on the slip resistance of a bolt that is also pulled, AASHTO.

    Parameters
    ----------
    bolt_tension
        Tension on one bolt T_u [N], at least zero; scalar or array.
    pretension
        Minimum required bolt tension P_t [N], at least zero.

    Returns
    -------
    Real
        Factor [-], from 1 down to 0.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``1 - T_u / P_t`` (Eq. 6.13.2.11-3); nothing is left once the tension reaches the pretension.

    References
    ----------
    AASHTO LRFD Bridge Design Specifications, 9th ed. (2020), 6.13.2.11, from memory.

    Examples
    --------
    >>> float(aashto_slip_tension_reduction(25e3, pretension=100e3))
    0.75
    """
    return _share_of_clamping_left(bolt_tension, pretension)
