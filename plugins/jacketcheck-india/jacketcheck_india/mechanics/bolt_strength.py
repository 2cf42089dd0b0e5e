"""Strength of one bolt of bearing type in shear, in tension, and in both."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within
from jacketcheck_india.codes import BEARING_BOLT_FACTOR, YIELD_FACTOR
from jacketcheck_india.mechanics._tables import choose

__all__ = [
    "LARGEST_GRIP",
    "bolt_shear_capacity",
    "bolt_tension_capacity",
    "combined_bolt_ratio",
    "grip_factor",
    "long_joint_factor",
    "packing_factor",
]

LARGEST_GRIP: Final = 8.0
"""Largest grip over bolt diameter (IS 800:2007 cl. 10.3.3.2)."""


def long_joint_factor(joint_length: Real, *, diameter: Real) -> Real:
    """Reduction factor for long joints, beta_lj.

    Parameters
    ----------
    joint_length
        Distance between the first and the last row of bolts, along the force l_j [mm], at least
        zero; scalar or array.
    diameter
        Nominal diameter of the bolt d [mm], above zero.

    Returns
    -------
    Real
        Factor beta_lj [-].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``1.075 - l_j/(200 d)`` from 0.75 to 1.0, which is 1.0 up to ``l_j = 15 d``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.3.1, from memory.

    Examples
    --------
    >>> float(long_joint_factor(500.0, diameter=20.0))
    0.95
    """
    require_at_least(0.0, joint_length=joint_length)
    require_positive(diameter=diameter)
    return np.clip(1.075 - np.divide(joint_length, diameter) / 200.0, 0.75, 1.0)


def grip_factor(grip: Real, *, diameter: Real, long_joint_factor: Real = 1.0) -> Real:
    """Reduction factor for large grip lengths, beta_lg.

    Parameters
    ----------
    grip
        Total thickness of the connected plates l_g [mm], above zero and at most eight diameters;
        scalar or array.
    diameter
        Nominal diameter of the bolt d [mm], above zero.
    long_joint_factor
        Factor from `long_joint_factor`, which beta_lg must not exceed [-].

    Returns
    -------
    Real
        Factor beta_lg [-].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range; a grip above ``8 d`` is not
        permitted.

    Notes
    -----
    ``8 d/(3 d + l_g) <= beta_lj`` where the grip exceeds ``5 d``, else 1.0.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.3.2; the bound by beta_lj from memory.

    Examples
    --------
    >>> round(float(grip_factor(140.0, diameter=20.0)), 6)
    0.8
    """
    require_positive(grip=grip, diameter=diameter)
    ratio = np.divide(grip, diameter)
    require_within(0.0, LARGEST_GRIP, grip_over_diameter=ratio)
    require_within(0.75, 1.0, long_joint_factor=long_joint_factor)
    reduced = np.minimum(8.0 / (3.0 + ratio), long_joint_factor)
    return np.where(ratio > 5.0, reduced, 1.0)


def packing_factor(packing: Real) -> Real:
    """Reduction factor for shear carried through packing plates, beta_pk.

    Parameters
    ----------
    packing
        Thickness of the thicker packing t_pk [mm], at least zero and below 80; scalar or array.

    Returns
    -------
    Real
        Factor beta_pk [-].

    Raises
    ------
    DomainError
        If the thickness is not finite or lies outside its range.

    Notes
    -----
    ``1 - 0.0125 t_pk`` for packings thicker than 6 mm, else 1.0.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.3.3.

    Examples
    --------
    >>> float(packing_factor(8.0))
    0.9
    """
    require_at_least(0.0, packing=packing)
    factor = np.where(np.greater(packing, 6.0), 1.0 - 0.0125 * np.asarray(packing), 1.0)
    require_positive(packing_factor=factor)
    return factor


def bolt_shear_capacity(
    tensile_strength: Real,
    *,
    shank_area: Real,
    net_area: Real,
    threads: str,
    shear_planes: Real,
    reduction: Real = 1.0,
) -> Real:
    """Nominal shear capacity of one bolt.

    Parameters
    ----------
    tensile_strength
        Ultimate tensile stress of the bolt f_ub [MPa], above zero; scalar or array.
    shank_area
        Nominal plain shank area A_sb [mm²], above zero.
    net_area
        Net shear area at the threads A_nb, the tensile stress area [mm²], above zero.
    threads
        ``included`` in all shear planes, or ``excluded`` from all of them.
    shear_planes
        Number of shear planes, n_n with threads or n_s without, at least one.
    reduction
        Product of beta_lj, beta_lg and beta_pk [-], above zero and at most one.

    Returns
    -------
    Real
        Nominal capacity V_nsb [N]; divided by gamma_mb = 1.25 it is the design capacity V_dsb.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_nsb = f_ub/sqrt(3) (n_n A_nb + n_s A_sb) beta_lj beta_lg beta_pk``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.3.

    Examples
    --------
    >>> capacity = bolt_shear_capacity(
    ...     800.0, shank_area=314.0, net_area=245.0, threads="included", shear_planes=1)
    >>> round(float(capacity))
    113161
    """
    require_positive(
        tensile_strength=tensile_strength,
        shank_area=shank_area,
        net_area=net_area,
        reduction=reduction,
    )
    require_within(0.0, 1.0, reduction=reduction)
    require_at_least(1.0, shear_planes=shear_planes)
    counts_net = choose({"included": 1.0, "excluded": 0.0}, threads, name="threads") == 1.0
    area = net_area if counts_net else shank_area
    return np.multiply(tensile_strength, area) / math.sqrt(3.0) * shear_planes * reduction


def bolt_tension_capacity(
    tensile_strength: Real, *, yield_strength: Real, shank_area: Real, net_area: Real
) -> Real:
    """Nominal tension capacity of one bolt.

    Parameters
    ----------
    tensile_strength, yield_strength
        Ultimate tensile and yield stress of the bolt f_ub, f_yb [MPa], above zero; scalars or
        arrays.
    shank_area, net_area
        Shank area A_sb and net tensile stress area A_n [mm²], above zero.

    Returns
    -------
    Real
        Nominal capacity T_nb [N]; divided by gamma_mb = 1.25 it is the design capacity T_db.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``T_nb = 0.90 f_ub A_n <= f_yb A_sb gamma_mb/gamma_m0``.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.5.

    Examples
    --------
    >>> capacity = bolt_tension_capacity(
    ...     800.0, yield_strength=640.0, shank_area=314.0, net_area=245.0)
    >>> float(capacity)
    176400.0
    """
    require_positive(
        tensile_strength=tensile_strength,
        yield_strength=yield_strength,
        shank_area=shank_area,
        net_area=net_area,
    )
    shank = np.multiply(yield_strength, shank_area) * (BEARING_BOLT_FACTOR / YIELD_FACTOR)
    return np.minimum(0.90 * np.multiply(tensile_strength, net_area), shank)


def combined_bolt_ratio(
    shear: Real, *, design_shear_capacity: Real, tension: Real, design_tension_capacity: Real
) -> Real:
    """Demand over capacity of a bolt in shear and tension, as a ratio of loads.

    Parameters
    ----------
    shear, tension
        Factored forces on the bolt [N], at least zero; scalars or arrays.
    design_shear_capacity, design_tension_capacity
        Design capacities, partial safety factor included [N], above zero.

    Returns
    -------
    Real
        Ratio [-]; both forces divided by it are just carried.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The root of ``(V_sb/V_db)**2 + (T_b/T_db)**2 <= 1``; bolts of friction type have the same form
    with V_dsf and T_df. The seam's bolts are not pulled, so no limit state of this package asks
    for it.

    References
    ----------
    IS 800:2007, General construction in steel, cl. 10.3.6 and 10.4.6, from memory.

    Examples
    --------
    >>> ratio = combined_bolt_ratio(
    ...     30e3, design_shear_capacity=50e3, tension=80e3, design_tension_capacity=100e3)
    >>> round(float(ratio), 12)
    1.0
    """
    require_at_least(0.0, shear=shear, tension=tension)
    require_positive(
        design_shear_capacity=design_shear_capacity,
        design_tension_capacity=design_tension_capacity,
    )
    return np.hypot(
        np.divide(shear, design_shear_capacity), np.divide(tension, design_tension_capacity)
    )
