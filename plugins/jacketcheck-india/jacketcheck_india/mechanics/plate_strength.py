"""Plates in tension, gross and net of the holes, and block shear."""

from __future__ import annotations

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive
from jacketcheck_india.codes import ULTIMATE_FACTOR, YIELD_FACTOR
from jacketcheck_india.mechanics._tables import choose

__all__ = [
    "BlockAreas",
    "block_shear_design_strength",
    "gross_yield_capacity",
    "hole_allowance",
    "net_rupture_capacity",
]

_ALLOWANCES: Final[Mapping[str, float]] = MappingProxyType({"drilled": 0.0, "punched": 2.0})


def hole_allowance(hole_making: str) -> float:
    """What is added to a hole's diameter in a net section.

    Parameters
    ----------
    hole_making
        ``drilled``, or ``punched`` full size.

    Returns
    -------
    float
        Allowance [mm].

    Raises
    ------
    DomainError
        If the word is unknown.

    Notes
    -----
    2 mm for directly punched holes.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 6.3.1 and 3.6.1, from memory.

    Examples
    --------
    >>> hole_allowance("punched")
    2.0
    """
    return choose(_ALLOWANCES, hole_making, name="hole_making")


def gross_yield_capacity(yield_strength: Real, *, gross_area: Real) -> Real:
    """Nominal tension capacity for yield of the gross section.

    Parameters
    ----------
    yield_strength
        Yield stress f_y [MPa], above zero; scalar or array.
    gross_area
        Gross area A_g [mm²], above zero.

    Returns
    -------
    Real
        Nominal capacity [N]; divided by gamma_m0 = 1.10 it is the design strength T_dg.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``T_dg = A_g f_y/gamma_m0``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 6.2, from memory.

    Examples
    --------
    >>> float(gross_yield_capacity(250.0, gross_area=1000.0))
    250000.0
    """
    require_positive(yield_strength=yield_strength, gross_area=gross_area)
    return np.multiply(yield_strength, gross_area)


def net_rupture_capacity(tensile_strength: Real, *, net_area: Real) -> Real:
    """Nominal tension capacity for rupture of the net section of a plate.

    Parameters
    ----------
    tensile_strength
        Ultimate stress f_u [MPa], above zero; scalar or array.
    net_area
        Net effective area A_n [mm²], above zero.

    Returns
    -------
    Real
        Nominal capacity [N]; divided by gamma_m1 = 1.25 it is the design strength T_dn.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``T_dn = 0.9 A_n f_u/gamma_m1``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 6.3.1, from memory.

    Examples
    --------
    >>> float(net_rupture_capacity(410.0, net_area=1000.0))
    369000.0
    """
    require_positive(tensile_strength=tensile_strength, net_area=net_area)
    return 0.9 * np.multiply(tensile_strength, net_area)


class BlockAreas(NamedTuple):
    """Areas on the boundary of a block.

    Attributes
    ----------
    gross_shear, net_shear
        Gross and net area in shear along the force, A_vg and A_vn [mm²].
    gross_tension, net_tension
        Gross and net area in tension across the force, A_tg and A_tn [mm²]; zero for a single row
        with a shear plane on either side.
    """

    gross_shear: Real
    net_shear: Real
    gross_tension: Real
    net_tension: Real


def block_shear_design_strength(
    areas: BlockAreas, *, yield_strength: Real, tensile_strength: Real
) -> Real:
    """Design strength of a bolted plate for block shear.

    Parameters
    ----------
    areas
        Areas on the boundary of the block [mm²]; scalars or arrays.
    yield_strength, tensile_strength
        Yield and ultimate stress f_y, f_u [MPa], above zero.

    Returns
    -------
    Real
        Design strength T_db [N], partial safety factors included.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The smaller of ``A_vg f_y/(sqrt(3) gamma_m0) + 0.9 A_tn f_u/gamma_m1`` and
    ``0.9 A_vn f_u/(sqrt(3) gamma_m1) + A_tg f_y/gamma_m0``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 6.4.1, from memory.

    Examples
    --------
    >>> areas = BlockAreas(1000.0 * math.sqrt(3.0), 800.0 * math.sqrt(3.0), 500.0, 400.0)
    >>> strength = block_shear_design_strength(
    ...     areas, yield_strength=275.0, tensile_strength=500.0)
    >>> round(float(strength))
    394000
    """
    require_positive(
        gross_shear=areas.gross_shear,
        net_shear=areas.net_shear,
        yield_strength=yield_strength,
        tensile_strength=tensile_strength,
    )
    require_at_least(0.0, gross_tension=areas.gross_tension, net_tension=areas.net_tension)
    at_yield = np.divide(yield_strength, YIELD_FACTOR)
    at_rupture = 0.9 * np.divide(tensile_strength, ULTIMATE_FACTOR)
    shear_yields = at_yield * areas.gross_shear / math.sqrt(3.0) + at_rupture * areas.net_tension
    shear_ruptures = at_rupture * areas.net_shear / math.sqrt(3.0) + at_yield * areas.gross_tension
    return np.minimum(shear_yields, shear_ruptures)
