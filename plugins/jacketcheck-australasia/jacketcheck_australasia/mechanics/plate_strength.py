"""Plates in tension, gross and net of the holes, and block shear."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics.block_shear import BlockShearAreas
from jacketcheck.plugin import Real, require_at_least, require_positive, require_within

__all__ = [
    "BLOCK_SHEAR_CAPACITY_FACTOR",
    "TENSION_CAPACITY_FACTOR",
    "block_shear_capacity",
    "gross_yield_capacity",
    "net_fracture_capacity",
]

TENSION_CAPACITY_FACTOR: Final = 0.90
"""Capacity factor of members and connection components in tension, yield and fracture alike
(AS 4100:2020 Table 3.4, from memory; NZS 3404:1997 Table 3.3(1))."""

BLOCK_SHEAR_CAPACITY_FACTOR: Final = 0.75
"""Capacity factor for block shear (AS 4100:2020 Table 3.4 and cl. 9.1.9, from memory)."""


def gross_yield_capacity(yield_strength: Real, *, gross_area: Real) -> Real:
    """Nominal tension capacity for yield of the gross section.

    Parameters
    ----------
    yield_strength
        Yield stress used in design f_y [MPa], above zero; scalar or array.
    gross_area
        Gross area A_g [mm²], above zero.

    Returns
    -------
    Real
        Nominal capacity N_t [N]; the capacity factor is `TENSION_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``N_t = A_g f_y``.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 7.2; NZS 3404:Part 1:1997, cl. 7.2; both from memory.

    Examples
    --------
    >>> float(gross_yield_capacity(300.0, gross_area=1000.0))
    300000.0
    """
    require_positive(yield_strength=yield_strength, gross_area=gross_area)
    return np.multiply(yield_strength, gross_area)


def net_fracture_capacity(
    tensile_strength: Real, *, net_area: Real, distribution_factor: Real = 1.0
) -> Real:
    """Nominal tension capacity for fracture of the net section.

    Parameters
    ----------
    tensile_strength
        Tensile strength used in design f_u [MPa], above zero; scalar or array.
    net_area
        Net area A_n [mm²], above zero.
    distribution_factor
        Factor for the distribution of forces k_t [-], from 0.75 to 1: 1 for a plate whose whole
        width is connected.

    Returns
    -------
    Real
        Nominal capacity N_t [N]; the capacity factor is `TENSION_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``N_t = 0.85 k_t A_n f_u``; holes count with their own diameter, without an allowance.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 7.2 and 9.1.10; NZS 3404:Part 1:1997, cl. 7.2; both from
    memory.

    Examples
    --------
    >>> float(net_fracture_capacity(430.0, net_area=1000.0))
    365500.0
    """
    require_positive(tensile_strength=tensile_strength, net_area=net_area)
    require_within(0.75, 1.0, distribution_factor=distribution_factor)
    return 0.85 * np.multiply(tensile_strength, net_area) * distribution_factor


def block_shear_capacity(
    areas: BlockShearAreas,
    *,
    yield_strength: Real,
    tensile_strength: Real,
    stress_factor: Real = 1.0,
) -> Real:
    """Nominal capacity of a connection component for block shear, AS 4100.

    Parameters
    ----------
    areas
        Areas on the boundary of the block [mm²]; scalars or arrays.
    yield_strength
        Yield stress of the component f_yc [MPa], above zero.
    tensile_strength
        Tensile strength of the component f_uc [MPa], above zero.
    stress_factor
        Factor k_bs [-], from 0.5 to 1: 1 where the tension is uniform, as at a seam.

    Returns
    -------
    Real
        Nominal capacity R_bs [N]; the capacity factor is `BLOCK_SHEAR_CAPACITY_FACTOR`.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``R_bs = 0.6 f_uc A_nv + k_bs f_uc A_nt <= 0.6 f_yc A_gv + k_bs f_uc A_nt``. Came with Amendment
    1 (2012) of the 1998 edition; no such rule of NZS 3404 is known here.

    References
    ----------
    AS 4100:2020, Steel structures, cl. 9.1.9, from memory.

    Examples
    --------
    >>> areas = BlockShearAreas(gross_shear=2000.0, net_shear=1500.0, net_tension=500.0)
    >>> float(block_shear_capacity(areas, yield_strength=300.0, tensile_strength=430.0))
    575000.0
    """
    require_positive(
        gross_shear=areas.gross_shear,
        net_shear=areas.net_shear,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
    )
    require_at_least(0.0, net_tension=areas.net_tension)
    require_within(0.5, 1.0, stress_factor=stress_factor)
    shear = 0.6 * np.minimum(
        np.multiply(tensile_strength, areas.net_shear),
        np.multiply(yield_strength, areas.gross_shear),
    )
    return shear + np.multiply(stress_factor, tensile_strength) * areas.net_tension
