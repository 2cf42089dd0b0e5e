"""Bars glued into drilled holes and designed as fasteners: combined pull-out and concrete cone.

Characteristic resistances of one bar. What a bar of a ring has to itself of the surface is in
`jacketcheck.mechanics.adhesive_anchors.ring_area_share`.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_positive, require_within

__all__ = [
    "BOND_SEISMIC_FACTOR",
    "CONE_SEISMIC_FACTOR",
    "CRACKED_CONE_COEFFICIENT",
    "LARGEST_EMBEDMENT",
    "LEAST_EMBEDMENT",
    "bond_reach",
    "bond_resistance",
    "cone_reach",
    "cone_resistance",
]

CRACKED_CONE_COEFFICIENT: Final = 7.7
"""k_cr,N of post-installed fasteners in cracked concrete, in N and mm (EN 1992-4:2018 7.2.1.4, from
memory); an assessment may give a larger one."""

BOND_SEISMIC_FACTOR: Final = 0.85
"""α_eq of combined pull-out and concrete failure, groups (EN 1992-4:2018 Table C.3, from
memory)."""

CONE_SEISMIC_FACTOR: Final = 0.75
"""α_eq of concrete cone failure, groups of fasteners that are neither headed nor undercut
(EN 1992-4:2018 Table C.3, from memory)."""

LEAST_EMBEDMENT: Final = 4.0
"""Embedment in bar diameters from which bond fasteners are assessed (EAD 330499, and ACI 318-19
17.3.3 alike; from memory)."""

LARGEST_EMBEDMENT: Final = 20.0
"""Embedment in bar diameters up to which their bond counts as even (EAD 330499, and ACI 318-19
17.3.3 alike; from memory)."""

_LOWEST: Final = 12.0
_HIGHEST: Final = 90.0


def cone_resistance(
    concrete_strength: Real, *, embedment: Real, coefficient: Real = CRACKED_CONE_COEFFICIENT
) -> Real:
    """Characteristic resistance of one bar to concrete cone failure, away from others and edges.

    Parameters
    ----------
    concrete_strength
        Characteristic cylinder strength f_ck [MPa], from 12 to 90; scalar or array.
    embedment
        Effective embedment h_ef [mm], above zero.
    coefficient
        k_1 in N and mm, above zero: 7.7 in cracked, 11.0 in uncracked concrete.

    Returns
    -------
    Real
        N⁰_Rk,c [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``N⁰_Rk,c = k_1 √f_ck h_ef**1.5``.

    References
    ----------
    EN 1992-4:2018, 7.2.1.4, Eq. 7.2, from memory.

    Examples
    --------
    >>> round(float(cone_resistance(25.0, embedment=400.0)) / 1e3)
    308
    """
    require_within(_LOWEST, _HIGHEST, concrete_strength=concrete_strength)
    require_positive(embedment=embedment, coefficient=coefficient)
    return np.multiply(coefficient, np.sqrt(concrete_strength)) * np.power(embedment, 1.5)


def cone_reach(embedment: Real) -> Real:
    """Distance from a bar to which its concrete cone reaches at the surface.

    Parameters
    ----------
    embedment
        Effective embedment h_ef [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``c_cr,N = 1.5 h_ef`` [mm].

    Raises
    ------
    DomainError
        If the embedment is not finite and above zero.

    References
    ----------
    EN 1992-4:2018, 7.2.1.4(3), from memory.

    Examples
    --------
    >>> float(cone_reach(400.0))
    600.0
    """
    require_positive(embedment=embedment)
    return np.multiply(1.5, embedment)


def bond_resistance(bond_stress: Real, *, diameter: Real, embedment: Real) -> Real:
    """Characteristic bond resistance of one bar, away from others and edges.

    Parameters
    ----------
    bond_stress
        Characteristic bond stress in cracked concrete τ_Rk [MPa], above zero; scalar or array.
    diameter
        Bar diameter [mm], above zero.
    embedment
        Effective embedment h_ef [mm], above zero.

    Returns
    -------
    Real
        ``N⁰_Rk,p = τ_Rk π d h_ef`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    Without the factor ψ_sus for sustained tension, which an earthquake does not bring.

    References
    ----------
    EN 1992-4:2018, 7.2.1.6, Eq. 7.14, from memory.

    Examples
    --------
    >>> round(float(bond_resistance(8.0, diameter=25.0, embedment=400.0)) / 1e3)
    251
    """
    require_positive(bond_stress=bond_stress, diameter=diameter, embedment=embedment)
    return np.pi * np.multiply(diameter, embedment) * bond_stress


def bond_reach(diameter: Real, *, uncracked_bond_stress: Real, embedment: Real) -> Real:
    """Distance from a bar within which concrete is needed for its full bond.

    Parameters
    ----------
    diameter
        Bar diameter [mm], above zero; scalar or array.
    uncracked_bond_stress
        Characteristic bond stress in uncracked concrete C20/25 [MPa], above zero.
    embedment
        Effective embedment h_ef [mm], above zero.

    Returns
    -------
    Real
        ``c_cr,Np = s_cr,Np/2`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``s_cr,Np = 7.3 d √τ_Rk,ucr <= 3 h_ef``.

    References
    ----------
    EN 1992-4:2018, 7.2.1.6, Eq. 7.15, from memory; the same figure as the older
    ``20 d √(τ/7.5)`` of EOTA TR 029.

    Examples
    --------
    >>> round(float(bond_reach(25.0, uncracked_bond_stress=16.0, embedment=400.0)))
    365
    """
    require_positive(
        diameter=diameter, uncracked_bond_stress=uncracked_bond_stress, embedment=embedment
    )
    spacing = 7.3 * np.multiply(diameter, np.sqrt(uncracked_bond_stress))
    return np.minimum(spacing, np.multiply(3.0, embedment)) / 2.0
