"""Elastic buckling of a cracked concrete column."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_positive

__all__ = ["CRITICAL_LOAD_FACTOR", "aci_effective_stiffness", "critical_load"]

CRITICAL_LOAD_FACTOR = 0.75
"""Factor on the critical load for the scatter of stiffness (ACI 318-19 6.6.4.5.2)."""


def aci_effective_stiffness(elastic_modulus: Real, *, diameter: Real) -> Real:
    """Flexural stiffness of a cracked circular column under load of short duration.

    Parameters
    ----------
    elastic_modulus
        Of the concrete [MPa].
    diameter
        Of the column [mm].

    Returns
    -------
    float or ndarray
        Effective stiffness EI [N mm²], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not positive.

    Notes
    -----
    ``EI = 0.4 E_c I_g``: ACI 318-19 6.6.4.4.4(a) with no sustained lateral load (β_dns = 0), since
    the sway is the earthquake's.

    Examples
    --------
    >>> f"{aci_effective_stiffness(25_000.0, diameter=1000.0):.3e}"
    '4.909e+14'

    References
    ----------
    ACI 318-19, 6.6.4.4.4(a).
    """
    require_positive(elastic_modulus=elastic_modulus, diameter=diameter)
    inertia = np.pi * np.power(diameter, 4.0) / 64.0
    return 0.4 * elastic_modulus * inertia


def critical_load(stiffness: Real, *, effective_length: Real) -> Real:
    """Euler load of a column.

    Parameters
    ----------
    stiffness
        Flexural stiffness EI [N mm²].
    effective_length
        Length between the points of contraflexure of the buckled shape [mm].

    Returns
    -------
    float or ndarray
        Critical load [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not positive.

    Notes
    -----
    ``P_c = π² EI / (k l)²``, ACI 318-19 (6.6.4.4.2).

    Examples
    --------
    >>> f"{critical_load(4.909e14, effective_length=20_000.0):.3e}"
    '1.211e+07'

    References
    ----------
    ACI 318-19, 6.6.4.4.2.
    """
    require_positive(stiffness=stiffness, effective_length=effective_length)
    return np.pi**2 * np.divide(stiffness, np.square(effective_length))
