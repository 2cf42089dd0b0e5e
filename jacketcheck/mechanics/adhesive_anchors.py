"""Tension strength of bars glued into drilled holes: bond and concrete breakout of a ring of bars.

Nominal strengths for each bar. Strength reduction factors stand apart, for the check that uses
them.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arguments import require_reduction
from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_positive_or_infinite,
)
from jacketcheck.mechanics._customary_units import INCH, PSI

__all__ = [
    "ANCHOR_STRENGTH_REDUCTION",
    "SEISMIC_ANCHOR_FACTOR",
    "UNCRACKED_BOND_RATIO",
    "adhesive_bond_strength",
    "bond_influence_distance",
    "breakout_influence_distance",
    "breakout_strength",
    "edge_factor",
    "ring_area_share",
]

ANCHOR_STRENGTH_REDUCTION: Final = 0.65
"""Strength reduction factor for bond and for breakout, installation category 1, no supplementary
reinforcement. ACI 318-19 Table 17.5.3(b), from memory."""
SEISMIC_ANCHOR_FACTOR: Final = 0.75
"""Further factor on bond and on breakout in tension under earthquake.

ACI 318-19 17.10.5.4(b) and (e)."""
UNCRACKED_BOND_RATIO: Final = 2.0
"""Characteristic bond stress in uncracked over cracked concrete, where only the latter is known.

Engineering judgement: evaluated adhesives print about 1.6 to 2.1. A larger ratio spreads the
influence of a bar further and lowers the strength of a group."""


def adhesive_bond_strength(
    bond_stress: Real, *, bar_diameter: Real, embedment: Real, lightweight_factor: Real = 1.0
) -> Real:
    """Nominal bond strength of one bar in an adhesive, away from others and from edges.

    Parameters
    ----------
    bond_stress
        Characteristic bond stress in cracked concrete, seismic where the evaluation gives one
        ``tau_cr`` [MPa], above zero; scalar or array.
    bar_diameter
        Bar diameter ``d_a`` [mm], above zero.
    embedment
        Effective embedment ``h_ef`` [mm], above zero.
    lightweight_factor
        ``lambda_a`` [-], above zero, at most 1.

    Returns
    -------
    Real
        ``N_ba = lambda_a tau_cr pi d_a h_ef`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The code's design method covers embedments of 4 to 20 bar diameters (17.3.3, from memory);
    deeper bars are designed by development length.

    References
    ----------
    ACI 318-19 Eq. 17.6.5.2.1.

    Examples
    --------
    >>> round(float(adhesive_bond_strength(8.0, bar_diameter=32.0, embedment=600.0)))
    482549
    """
    require_positive(bond_stress=bond_stress, bar_diameter=bar_diameter, embedment=embedment)
    require_reduction(lightweight_factor=lightweight_factor)
    surface = np.pi * np.multiply(bar_diameter, embedment)
    return surface * bond_stress * lightweight_factor


def bond_influence_distance(bar_diameter: Real, *, uncracked_bond_stress: Real) -> Real:
    """Distance from a bar within which concrete is needed for its full adhesive bond.

    Parameters
    ----------
    bar_diameter
        Bar diameter ``d_a`` [mm], above zero; scalar or array.
    uncracked_bond_stress
        Characteristic bond stress in uncracked concrete ``tau_uncr`` [MPa], above zero.

    Returns
    -------
    Real
        ``c_Na = 10 d_a sqrt(tau_uncr / 1100 psi)`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    References
    ----------
    ACI 318-19 Eq. 17.6.5.1.2b.

    Examples
    --------
    >>> round(float(bond_influence_distance(32.0, uncracked_bond_stress=15.3)), 1)
    454.5
    """
    require_positive(bar_diameter=bar_diameter, uncracked_bond_stress=uncracked_bond_stress)
    return 10.0 * np.multiply(bar_diameter, np.sqrt(np.divide(uncracked_bond_stress, 1100.0 * PSI)))


def breakout_influence_distance(embedment: Real) -> Real:
    """Distance from a bar to which its breakout cone reaches at the surface.

    Parameters
    ----------
    embedment
        Effective embedment ``h_ef`` [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``1.5 h_ef`` [mm].

    Raises
    ------
    DomainError
        If the embedment is not finite and above zero.

    References
    ----------
    ACI 318-19 17.6.2.1.

    Examples
    --------
    >>> float(breakout_influence_distance(600.0))
    900.0
    """
    require_positive(embedment=embedment)
    return np.multiply(1.5, embedment)


def breakout_strength(
    concrete_strength: Real,
    *,
    embedment: Real,
    coefficient: Real = 17.0,
    lightweight_factor: Real = 1.0,
) -> Real:
    """Basic concrete breakout strength of one bar in cracked concrete.

    Parameters
    ----------
    concrete_strength
        Specified compressive strength ``f'_c`` [MPa], above zero; counted up to 8000 psi; scalar
        or array.
    embedment
        Effective embedment ``h_ef`` [mm], above zero.
    coefficient
        ``k_c`` in psi and inches [-]: 17 for post-installed anchors, up to 24 by evaluation.
    lightweight_factor
        ``lambda_a`` [-], above zero, at most 1.

    Returns
    -------
    Real
        ``N_b = k_c lambda_a sqrt(f'_c) h_ef**1.5`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    ACI 318-19 Eq. 17.6.2.2.1; limit on the strength of post-installed anchors 17.3.1, from memory.

    Examples
    --------
    >>> round(float(breakout_strength(28.0, embedment=600.0)) / 1e3)
    553
    """
    require_positive(
        concrete_strength=concrete_strength, embedment=embedment, coefficient=coefficient
    )
    require_reduction(lightweight_factor=lightweight_factor)
    root = np.sqrt(np.minimum(np.divide(concrete_strength, PSI), 8000.0))
    pounds = np.multiply(coefficient, lightweight_factor) * root
    return pounds * np.divide(embedment, INCH) ** 1.5 * PSI * INCH**2


def ring_area_share(
    influence_distance: Real,
    *,
    circle_radius: Real,
    count: Real,
    edge_distance: Real = np.inf,
) -> Real:
    """Share of a single bar's influence area that each bar of a ring has to itself.

    Parameters
    ----------
    influence_distance
        ``c_Na`` for bond, ``1.5 h_ef`` for breakout [mm], above zero; scalar or array.
    circle_radius
        Radius of the circle through the bar centres [mm], above zero.
    count
        Number of bars on the circle, at least one.
    edge_distance
        Least distance from a bar to an edge of the footing [mm], above zero; infinite if far.

    Returns
    -------
    Real
        ``A_N / (n A_N0)`` [-], above zero, at most 1, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``A_N0 = (2 c)**2``. The area of the ring is that between the circles of radius ``r + c`` and
    ``r - c`` (none inside where ``r < c``), cut down to the edge distance all around. ACI lets the
    area be drawn with straight sides, which is larger. All bars count, though bending pulls only
    some of them at a time: their neighbours are pulled nearly as hard.

    References
    ----------
    ACI 318-19 17.6.2.1 and 17.6.5.1, for a ring of bars on the safe side.

    Examples
    --------
    >>> share = ring_area_share(450.0, circle_radius=650.0, count=16)
    >>> round(float(share), 3)
    0.284
    """
    require_positive(influence_distance=influence_distance, circle_radius=circle_radius)
    require_at_least(1.0, count=count)
    require_positive_or_infinite(edge_distance=edge_distance)
    outward = np.minimum(influence_distance, edge_distance)
    outer = np.add(circle_radius, outward)
    inner = np.maximum(np.subtract(circle_radius, influence_distance), 0.0)
    whole = np.square(np.multiply(2.0, influence_distance))
    ring = np.pi * (np.square(outer) - np.square(inner)) / np.multiply(count, whole)
    alone = np.add(influence_distance, outward) / np.multiply(2.0, influence_distance)
    return np.minimum(ring, alone)


def edge_factor(edge_distance: Real, *, influence_distance: Real) -> Real:
    """Factor for the disturbance of stresses by an edge.

    Parameters
    ----------
    edge_distance
        Least distance from a bar to an edge ``c_a,min`` [mm], above zero or infinite; scalar or
        array.
    influence_distance
        ``c_Na`` for bond, ``1.5 h_ef`` for breakout [mm], above zero.

    Returns
    -------
    Real
        ``psi_ed = 0.7 + 0.3 c_a,min / c``, at most 1 [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    ACI 318-19 17.6.2.4 and 17.6.5.4; the equation from memory.

    Examples
    --------
    >>> round(float(edge_factor(300.0, influence_distance=600.0)), 3)
    0.85
    """
    require_positive_or_infinite(edge_distance=edge_distance)
    require_positive(influence_distance=influence_distance)
    return np.minimum(0.7 + 0.3 * np.divide(edge_distance, influence_distance), 1.0)
