"""Plates in tension, gross and net of bolt holes, and block tearing."""

from __future__ import annotations

from math import sqrt

import numpy as np

from jacketcheck.mechanics.block_shear import BlockShearAreas
from jacketcheck.plugin import Real, require_at_least, require_positive

__all__ = [
    "block_tearing_resistance",
    "net_yield_resistance",
    "plastic_resistance",
    "rupture_resistance",
]


def plastic_resistance(yield_strength: Real, *, gross_area: Real, partial_factor: Real) -> Real:
    """Design plastic resistance of the gross section.

    Parameters
    ----------
    yield_strength
        Yield strength f_y [MPa], above zero; scalar or array.
    gross_area
        Gross area A [mm²], above zero.
    partial_factor
        γ_M0 [-], above zero.

    Returns
    -------
    Real
        N_pl,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``N_pl,Rd = A f_y / γ_M0``.

    References
    ----------
    EN 1993-1-1:2005, 6.2.3(2), Eq. 6.6.

    Examples
    --------
    >>> float(plastic_resistance(355.0, gross_area=2000.0, partial_factor=1.0))
    710000.0
    """
    require_positive(
        yield_strength=yield_strength, gross_area=gross_area, partial_factor=partial_factor
    )
    return np.multiply(gross_area, yield_strength) / partial_factor


def rupture_resistance(tensile_strength: Real, *, net_area: Real, partial_factor: Real) -> Real:
    """Design ultimate resistance of the net section.

    Parameters
    ----------
    tensile_strength
        Tensile strength f_u [MPa], above zero; scalar or array.
    net_area
        Net area A_net [mm²], above zero: gross less the holes as they are, without allowance.
    partial_factor
        γ_M2 [-], above zero.

    Returns
    -------
    Real
        N_u,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``N_u,Rd = 0.9 A_net f_u / γ_M2``.

    References
    ----------
    EN 1993-1-1:2005, 6.2.3(2), Eq. 6.7.

    Examples
    --------
    >>> round(float(rupture_resistance(470.0, net_area=1560.0, partial_factor=1.25)) / 1e3, 1)
    527.9
    """
    require_positive(
        tensile_strength=tensile_strength, net_area=net_area, partial_factor=partial_factor
    )
    return 0.9 * np.multiply(net_area, tensile_strength) / partial_factor


def net_yield_resistance(yield_strength: Real, *, net_area: Real, partial_factor: Real) -> Real:
    """Design resistance of the net section in a connection of category C.

    Parameters
    ----------
    yield_strength
        Yield strength f_y [MPa], above zero; scalar or array.
    net_area
        Net area A_net [mm²], above zero.
    partial_factor
        γ_M0 [-], above zero.

    Returns
    -------
    Real
        N_net,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``N_net,Rd = A_net f_y / γ_M0``: where slip is excluded at the ultimate limit state, the net
    section must not yield, or the plates thin and lose their clamping.

    References
    ----------
    EN 1993-1-1:2005, 6.2.3(4), Eq. 6.8; EN 1993-1-8:2005, 3.4.1(1)c.

    Examples
    --------
    >>> float(net_yield_resistance(355.0, net_area=1560.0, partial_factor=1.0))
    553800.0
    """
    return plastic_resistance(yield_strength, gross_area=net_area, partial_factor=partial_factor)


def block_tearing_resistance(
    areas: BlockShearAreas,
    *,
    yield_strength: Real,
    tensile_strength: Real,
    section_factor: Real,
    rupture_factor: Real,
    tension_share: Real = 1.0,
) -> Real:
    """Design resistance of a bolt group to block tearing.

    Parameters
    ----------
    areas
        Areas on the boundary of the block [mm²], holes deducted as they are; scalars or arrays.
    yield_strength
        Yield strength of the plate f_y [MPa], above zero.
    tensile_strength
        Tensile strength of the plate f_u [MPa], above zero.
    section_factor
        γ_M0 [-], above zero.
    rupture_factor
        γ_M2 [-], above zero.
    tension_share
        1 for a symmetric group under a concentric force, 0.5 under an eccentric one [-].

    Returns
    -------
    Real
        V_eff,1,Rd or V_eff,2,Rd [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_eff,1,Rd = f_u A_nt/γ_M2 + f_y A_nv/(√3 γ_M0)``; V_eff,2,Rd has half of the first term.

    References
    ----------
    EN 1993-1-8:2005, 3.10.2, Eq. 3.9 and 3.10; Steel Buildings in Europe, Multi-storey steel
    buildings, Part 5: Joint design, 3.2.2.3.

    Examples
    --------
    >>> areas = BlockShearAreas(gross_shear=2000.0, net_shear=1500.0, net_tension=500.0)
    >>> resistance = block_tearing_resistance(
    ...     areas, yield_strength=355.0, tensile_strength=470.0, section_factor=1.0,
    ...     rupture_factor=1.25)
    >>> round(float(resistance) / 1e3, 1)
    495.4
    """
    require_positive(
        net_shear=areas.net_shear,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
        section_factor=section_factor,
        rupture_factor=rupture_factor,
        tension_share=tension_share,
    )
    require_at_least(0.0, net_tension=areas.net_tension)
    tension = np.multiply(tension_share, tensile_strength) * areas.net_tension / rupture_factor
    shear = np.multiply(yield_strength, areas.net_shear) / (sqrt(3.0) * np.asarray(section_factor))
    return tension + shear
