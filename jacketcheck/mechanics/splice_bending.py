"""Bending of splice plates that lie on one side of the sleeve only.

The hoop force leaves the sleeve at its mid-plane and crosses the seam at the mid-plane of the
plate. A single outside plate is therefore bent by the hoop force times the distance between the
two; a pair of plates, one on either side, is not. Everything is per unit of height.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arguments import require_reduction
from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = [
    "UNRELIEVED_MOMENT_FACTOR",
    "eccentric_splice_first_yield",
    "eccentric_splice_strength",
    "splice_eccentricity",
    "splice_moment",
    "splice_plate_shares",
]

UNRELIEVED_MOMENT_FACTOR: Final = 1.0
"""Share of the couple that the splice plate takes: all of it (engineering judgement, see
`splice_moment`)."""


def splice_eccentricity(
    sleeve_thickness: Real, *, outside_thickness: Real, inside_thickness: Real = 0.0
) -> Real:
    """Distance between the mid-plane of the sleeve and the force in the splice plates.

    Parameters
    ----------
    sleeve_thickness
        Thickness of the sleeve [mm], above zero; scalar or array.
    outside_thickness
        Thickness of the outside splice plate [mm], above zero.
    inside_thickness
        Thickness of the inside splice plate [mm]; zero for plates outside only.

    Returns
    -------
    Real
        Eccentricity e [mm]; zero with plates on both sides.

    Raises
    ------
    DomainError
        If a thickness is not finite or lies outside its range.

    Notes
    -----
    ``e = (t_sleeve + t_plate) / 2`` for one plate. Two plates share the hoop force so that its
    resultant stays in the sleeve; unequal ones then carry what `splice_plate_shares` gives.

    References
    ----------
    Statics.

    Examples
    --------
    >>> float(splice_eccentricity(6.0, outside_thickness=10.0))
    8.0
    >>> float(splice_eccentricity(6.0, outside_thickness=10.0, inside_thickness=10.0))
    0.0
    """
    require_positive(sleeve_thickness=sleeve_thickness, outside_thickness=outside_thickness)
    require_at_least(0.0, inside_thickness=inside_thickness)
    one_sided = np.add(sleeve_thickness, outside_thickness) / 2.0
    eccentricity: Floats = np.where(np.asarray(inside_thickness) > 0.0, 0.0, one_sided)
    return eccentricity


def splice_plate_shares(
    sleeve_thickness: Real, *, outside_thickness: Real, inside_thickness: Real = 0.0
) -> tuple[Real, Real]:
    """Shares of the hoop force in the outside and the inside splice plate.

    Parameters
    ----------
    sleeve_thickness
        Thickness of the sleeve [mm], above zero; scalar or array.
    outside_thickness
        Thickness of the outside splice plate [mm], above zero.
    inside_thickness
        Thickness of the inside splice plate [mm]; zero for plates outside only.

    Returns
    -------
    tuple
        Shares of the outside and the inside plate [-]; they add up to one.

    Raises
    ------
    DomainError
        If a thickness is not finite or lies outside its range.

    Notes
    -----
    Moments about the sleeve's mid-plane balance without bending:
    ``n_o (t_s + t_o) = n_i (t_s + t_i)``. Equal plates share alike; of unequal ones the thinner
    takes slightly more than half, because it lies nearer to the sleeve. Sharing by area instead
    would leave an eccentricity.

    References
    ----------
    Statics.

    Examples
    --------
    >>> shares = splice_plate_shares(6.0, outside_thickness=12.0, inside_thickness=6.0)
    >>> [round(float(share), 3) for share in shares]
    [0.4, 0.6]
    """
    require_positive(sleeve_thickness=sleeve_thickness, outside_thickness=outside_thickness)
    require_at_least(0.0, inside_thickness=inside_thickness)
    outside_arm = np.add(sleeve_thickness, outside_thickness)
    inside_arm = np.add(sleeve_thickness, inside_thickness)
    balanced = inside_arm / (outside_arm + inside_arm)
    outside: Floats = np.where(np.asarray(inside_thickness) > 0.0, balanced, 1.0)
    inside: Floats = np.asarray(1.0 - outside)
    return outside, inside


def splice_moment(
    hoop_force: Real, *, eccentricity: Real, moment_factor: Real = UNRELIEVED_MOMENT_FACTOR
) -> Real:
    """Bending moment in a one-sided splice plate over the seam, per unit of height.

    Parameters
    ----------
    hoop_force
        Hoop force at the seam N [N/mm], at least zero; scalar or array.
    eccentricity
        Distance from `splice_eccentricity` e [mm], at least zero.
    moment_factor
        Share k of the couple that the plate takes [-], above zero and at most one (engineering
        judgement).

    Returns
    -------
    Real
        Moment ``k N e`` [N mm per mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    Equilibrium at the seam asks for moments that add up to ``N e``, in the plate over the gap and
    in the sleeve beside the plate. Giving all of it to the plate (k = 1, the default) leaves the
    sleeve in pure hoop tension: a distribution in equilibrium, hence by the lower-bound theorem a
    safe one for ductile steel. It is also the elastic value of a flat strap joint before it
    deflects, and an upper bound on an elastic bed of grout.

    Free joints are relieved as they deflect into the line of force; Goland and Reissner give that
    relief for single-lap joints. It is not taken here: at a seam it would need the plate to move
    inwards, which the grout prevents.

    References
    ----------
    Statics; Goland and Reissner, The stresses in cemented joints, J. Appl. Mech. 11 (1944),
    A17-A27, for the relief that is left out, from memory.

    Examples
    --------
    >>> float(splice_moment(1000.0, eccentricity=8.0))
    8000.0
    """
    require_at_least(0.0, hoop_force=hoop_force, eccentricity=eccentricity)
    require_reduction(moment_factor=moment_factor)
    return np.multiply(moment_factor, hoop_force) * eccentricity


def _relative_couple(
    thickness: Real, steel_strength: Real, eccentricity: Real, net_ratio: Real, moment_factor: Real
) -> tuple[Real, Real]:
    """Axial strength of the plate, and the couple's lever arm over its thickness."""
    require_positive(thickness=thickness, steel_strength=steel_strength)
    require_at_least(0.0, eccentricity=eccentricity)
    require_reduction(net_ratio=net_ratio, moment_factor=moment_factor)
    axial = np.multiply(steel_strength, thickness) * net_ratio
    return axial, np.multiply(moment_factor, eccentricity) / thickness


def eccentric_splice_strength(
    thickness: Real,
    *,
    steel_strength: Real,
    eccentricity: Real,
    net_ratio: Real = 1.0,
    moment_factor: Real = UNRELIEVED_MOMENT_FACTOR,
) -> Real:
    """Hoop force that a splice plate carries with its bending, fully plastic.

    Parameters
    ----------
    thickness
        Thickness of the splice plate t [mm], above zero; scalar or array.
    steel_strength
        Yield strength for the gross section over the gap, or tensile strength for the net section
        at the bolts [MPa], above zero.
    eccentricity
        Distance from `splice_eccentricity` e [mm], at least zero.
    net_ratio
        Net over gross height of the section [-], above zero and at most one; 1 over the gap.
    moment_factor
        Share of the couple that the plate takes [-]; see `splice_moment`.

    Returns
    -------
    Real
        Nominal strength per unit of height [N/mm]; resistance factors as for tension without
        bending.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    The rectangle's plastic interaction ``(N/N_p)**2 + M/M_p <= 1`` with ``M = k N e`` is solved for
    N, so that demand over capacity is a ratio of loads:
    ``N = N_p / (sqrt(1 + 4 q**2) + 2 q)`` with ``q = k e / t``. With k = 1 a plate as thick as the
    sleeve keeps 24% of its axial strength, and one that is to yield the sleeve of the same steel
    must be three times as thick. Shear in the plate is neglected.

    References
    ----------
    Plastic theory of a rectangular section; AISC Steel Construction Manual, 16th ed. (2023),
    Eq. 9-1, interaction of flexure and axial force in connecting elements.

    Examples
    --------
    >>> strength = eccentric_splice_strength(18.0, steel_strength=250.0, eccentricity=12.0)
    >>> round(float(strength), 6)
    1500.0
    """
    axial, arm = _relative_couple(thickness, steel_strength, eccentricity, net_ratio, moment_factor)
    return axial / (np.sqrt(1.0 + 4.0 * np.square(arm)) + np.multiply(2.0, arm))


def eccentric_splice_first_yield(
    thickness: Real,
    *,
    yield_strength: Real,
    eccentricity: Real,
    net_ratio: Real = 1.0,
    moment_factor: Real = UNRELIEVED_MOMENT_FACTOR,
) -> Real:
    """Hoop force at which the face of a splice plate first yields with its bending.

    Parameters
    ----------
    thickness
        Thickness of the splice plate t [mm], above zero; scalar or array.
    yield_strength
        Yield strength of the plate [MPa], above zero.
    eccentricity
        Distance from `splice_eccentricity` e [mm], at least zero.
    net_ratio
        Net over gross height of the section [-], above zero and at most one; 1 over the gap.
    moment_factor
        Share of the couple that the plate takes [-]; see `splice_moment`.

    Returns
    -------
    Real
        Hoop force per unit of height [N/mm].

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``N = N_y / (1 + 6 q)`` with ``q = k e / t``. Beyond it the seam opens faster than its elastic
    stiffness says; it is no strength limit (`eccentric_splice_strength` is).

    References
    ----------
    Elastic beam theory.

    Examples
    --------
    >>> force = eccentric_splice_first_yield(10.0, yield_strength=250.0, eccentricity=8.0)
    >>> round(float(force), 1)
    431.0
    """
    axial, arm = _relative_couple(thickness, yield_strength, eccentricity, net_ratio, moment_factor)
    return axial / (1.0 + np.multiply(6.0, arm))
