"""Bond stress-slip laws with published parameters.

The strengths are mean values from tests with short bonded lengths. Influences that are not in
these parameters stand in `jacketcheck.mechanics.bond_factors`.
"""

from __future__ import annotations

from typing import Final, Literal, NamedTuple, TypeAlias

import numpy as np

from jacketcheck.mechanics._arguments import choose
from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_within,
)
from jacketcheck.mechanics.bond_law import BondLaw

__all__ = [
    "BondCondition",
    "SplittingConfinement",
    "clear_rib_spacing",
    "eligehausen_bond_law",
    "model_code_1990_bond_law",
    "pullout_bond_law",
    "splitting_bond_law",
    "splitting_bond_strength",
]

BondCondition: TypeAlias = Literal["good", "other"]
"""Bond condition of the Model Code: by position when cast and by surroundings."""
SplittingConfinement: TypeAlias = Literal["unconfined", "stirrups"]
"""Whether something holds the splitting cracks together once they have formed."""


class _PulloutSet(NamedTuple):
    strength: float  # times the square root of the concrete strength [MPa]
    slip_1: float
    slip_2: float


_EXPONENT: Final = 0.4
_RESIDUAL: Final = 0.4  # residual over peak stress
_PULLOUT: Final = {"good": _PulloutSet(2.5, 1.0, 2.0), "other": _PulloutSet(1.25, 1.8, 3.6)}
_POSITION: Final = {"good": 1.0, "other": 0.7}  # eta_2
# fib Model Code 2010 (2013), Table 6.1-1 and Eq. 6.1-5.


def clear_rib_spacing(bar_diameter: Real) -> Real:
    """Clear distance between ribs, estimated where it was not measured.

    Parameters
    ----------
    bar_diameter
        Bar diameter [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``0.42 d_b`` [mm].

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    Notes
    -----
    Engineering judgement: the ratio of the 25 mm bars behind the bond laws, whose ribs stood
    10.5 mm apart. ASTM A615 and A706 allow ribs up to 0.7 bar diameters from centre to centre, so
    real bars seldom have less. A smaller spacing makes the law fall sooner.

    References
    ----------
    Eligehausen, Popov and Bertero, UCB/EERC-83/23 (1983), from memory.

    Examples
    --------
    >>> float(clear_rib_spacing(25.0))
    10.5
    """
    require_positive(bar_diameter=bar_diameter)
    return np.multiply(0.42, bar_diameter)


def pullout_bond_law(
    concrete_strength: Real,
    *,
    clear_rib_spacing: Real,
    bond_condition: BondCondition,
) -> BondLaw:
    """Law of a bar that pulls out, its surroundings being held together.

    Parameters
    ----------
    concrete_strength
        Mean compressive strength of what surrounds the bar ``f_cm`` [MPa], above zero; scalar or
        array.
    clear_rib_spacing
        Clear distance between the ribs ``c_clear`` [mm], at least ``s_2``.
    bond_condition
        "good" or "other".

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``tau_max = 2.5 sqrt(f_cm)``, ``s_1 = 1.0``, ``s_2 = 2.0`` mm for good and ``1.25 sqrt(f_cm)``,
    ``1.8``, ``3.6`` mm for other conditions; ``s_3 = c_clear``, ``alpha = 0.4``,
    ``tau_f = 0.4 tau_max``. Meant for bars below yield with a cover of five bar diameters, or
    confined well enough not to split.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Table 6.1-1. Strengths and slips agree with
    the open-source library structuralcodes; the residual ratio is from memory.

    Examples
    --------
    >>> law = pullout_bond_law(38.0, clear_rib_spacing=12.0, bond_condition="good")
    >>> round(float(law.peak_stress), 2)
    15.41
    """
    require_positive(concrete_strength=concrete_strength, clear_rib_spacing=clear_rib_spacing)
    chosen = choose(_PULLOUT, bond_condition, name="bond_condition")
    peak = chosen.strength * np.sqrt(concrete_strength)
    return BondLaw(
        peak, chosen.slip_1, chosen.slip_2, clear_rib_spacing, _EXPONENT, _RESIDUAL * peak
    )


def splitting_bond_strength(
    concrete_strength: Real,
    *,
    bar_diameter: Real,
    minimum_cover: Real,
    maximum_cover: Real,
    bond_condition: BondCondition,
    transverse_index: Real = 0.0,
    transverse_effectiveness: Real = 12.0,
) -> Real:
    """Local bond stress at which the concrete around a bar splits.

    Parameters
    ----------
    concrete_strength
        Mean compressive strength of the concrete ``f_cm`` [MPa], 15 to 110; scalar or array.
    bar_diameter
        Bar diameter ``phi`` [mm], above zero.
    minimum_cover
        Smallest of the covers and half the clear spacing of the bars ``c_min`` [mm], at least
        ``0.5 phi``.
    maximum_cover
        The larger of the side cover and half the clear spacing ``c_max`` [mm], at least ``c_min``.
    bond_condition
        "good" or "other".
    transverse_index
        Transverse reinforcement index ``K_tr = n_t A_st / (n_b phi s_t)`` [-], 0 to 0.05.
    transverse_effectiveness
        Coefficient ``k_m`` [-]: 12 for bars held by a bend of the hoop, 6 for bars up to five bar
        diameters (at most 125 mm) from one, 0 for others.

    Returns
    -------
    Real
        Bond stress [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``tau = eta_2 6.5 (f_cm/25)**0.25 (25/phi)**0.2
    ((c_min/phi)**0.33 (c_max/c_min)**0.1 + k_m K_tr)`` with ``eta_2`` 1 for good and 0.7 for other
    conditions. As its parent, Eq. 6.1-19, it holds for ``25/phi <= 2``,
    ``0.5 <= c_min/phi <= 3.5``, ``1 <= c_max/c_min <= 5`` and ``K_tr <= 0.05``: more cover, and a
    bar thinner than 12.5 mm, are counted at these limits.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Eq. 6.1-5; agrees with the open-source
    library structuralcodes. Values of ``k_m`` (Fig. 6.1-3) from memory.

    Examples
    --------
    >>> tau = splitting_bond_strength(
    ...     38.0, bar_diameter=25.0, minimum_cover=50.0, maximum_cover=50.0, bond_condition="good")
    >>> round(float(tau), 3)
    9.072
    """
    require_positive(bar_diameter=bar_diameter, minimum_cover=minimum_cover)
    require_at_least(0.0, transverse_effectiveness=transverse_effectiveness)
    require_within(15.0, 110.0, concrete_strength=concrete_strength)
    require_within(0.0, 0.05, transverse_index=transverse_index)
    require_at_least(0.5, cover_over_diameter=np.divide(minimum_cover, bar_diameter))
    require_at_least(1.0, cover_ratio=np.divide(maximum_cover, minimum_cover))
    position = choose(_POSITION, bond_condition, name="bond_condition")
    relative = np.minimum(np.divide(minimum_cover, bar_diameter), 3.5)
    shape = np.minimum(np.divide(maximum_cover, minimum_cover), 5.0) ** 0.1
    confined = relative**0.33 * shape + np.multiply(transverse_effectiveness, transverse_index)
    size = np.minimum(np.divide(25.0, bar_diameter), 2.0) ** 0.2
    return position * 6.5 * np.divide(concrete_strength, 25.0) ** 0.25 * size * confined


def splitting_bond_law(
    pullout: BondLaw,
    *,
    splitting_strength: Real,
    confinement: SplittingConfinement,
) -> BondLaw:
    """Law of a bar around which the concrete splits, unless it pulls out first.

    Parameters
    ----------
    pullout
        Law of the same bar if it pulls out, from `pullout_bond_law`.
    splitting_strength
        Bond stress at splitting [MPa], above zero, from `splitting_bond_strength`; scalar or
        array.
    confinement
        "unconfined", or "stirrups" where something keeps the splitting cracks together.

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments; those of `pullout` where splitting takes more
        bond stress than pull-out.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The rising branch is that of the pull-out law up to the splitting stress, which it reaches at
    ``s_1``. From there the stress falls at once: unconfined to nothing at ``1.2 s_1``, with
    stirrups to ``0.4`` of the splitting stress at half the clear rib spacing. The weaker of the
    two laws at every slip.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Table 6.1-1. Slips agree with the
    open-source library structuralcodes; the residual ratios are from memory.

    Examples
    --------
    >>> pullout = pullout_bond_law(38.0, clear_rib_spacing=12.0, bond_condition="good")
    >>> law = splitting_bond_law(pullout, splitting_strength=9.07, confinement="stirrups")
    >>> round(float(law.slip_1), 3), round(float(law.residual_stress), 3)
    (0.266, 3.628)
    """
    require_positive(splitting_strength=splitting_strength)
    held = choose({"unconfined": False, "stirrups": True}, confinement, name="confinement")
    ratio = np.minimum(np.divide(splitting_strength, pullout.peak_stress), 1.0)
    splits = ratio < 1.0
    slip_1 = np.multiply(pullout.slip_1, ratio ** np.divide(1.0, pullout.exponent))
    peak = np.multiply(ratio, pullout.peak_stress)
    slip_3 = np.maximum(0.5 * pullout.slip_3, slip_1) if held else 1.2 * slip_1
    residual = _RESIDUAL * peak if held else 0.0
    return BondLaw(
        peak,
        slip_1,
        np.where(splits, slip_1, pullout.slip_2)[()],
        np.where(splits, slip_3, pullout.slip_3)[()],
        pullout.exponent,
        np.where(splits, residual, pullout.residual_stress)[()],
    )


def model_code_1990_bond_law(
    characteristic_strength: Real,
    *,
    bond_condition: BondCondition,
    clear_rib_spacing: Real | None = None,
) -> BondLaw:
    """Law of the former Model Code, kept for comparison.

    Parameters
    ----------
    characteristic_strength
        Characteristic compressive strength ``f_ck`` [MPa], above zero; scalar or array.
    bond_condition
        "good" or "other".
    clear_rib_spacing
        Clear distance between the ribs [mm] for confined concrete, at least 3 mm; None for
        unconfined concrete.

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    CEB-FIP Model Code 1990, Table 3.1.1. Slips and residual ratios as printed in Advances in Civil
    Engineering (2015), article 537405, Table 3; strengths from memory.

    Examples
    --------
    >>> law = model_code_1990_bond_law(30.0, bond_condition="good")
    >>> round(float(law.peak_stress), 2)
    10.95
    """
    require_positive(characteristic_strength=characteristic_strength)
    good = choose({"good": True, "other": False}, bond_condition, name="bond_condition")
    root = np.sqrt(characteristic_strength)
    if clear_rib_spacing is None:
        peak = (2.0 if good else 1.0) * root
        return BondLaw(peak, 0.6, 0.6, 1.0 if good else 2.5, _EXPONENT, 0.15 * peak)
    require_positive(clear_rib_spacing=clear_rib_spacing)
    peak = (2.5 if good else 1.25) * root
    return BondLaw(peak, 1.0, 3.0, clear_rib_spacing, _EXPONENT, 0.4 * peak)


def eligehausen_bond_law(
    concrete_strength: Real = 30.0, *, clear_rib_spacing: Real = 10.5
) -> BondLaw:
    """Law of the tests behind the Model Code, kept for comparison.

    Parameters
    ----------
    concrete_strength
        Compressive strength of the concrete [MPa], above zero; scalar or array.
    clear_rib_spacing
        Clear distance between the ribs [mm], at least 3 mm.

    Returns
    -------
    BondLaw
        Parameters, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``tau_1 = 13.5``, ``tau_3 = 5.0`` MPa at 30 MPa, both taken to grow with the square root of the
    strength; ``s_1 = 1.0``, ``s_2 = 3.0`` mm, ``s_3`` the clear rib spacing, ``alpha = 0.4``. Well
    confined 25 mm bars.

    References
    ----------
    Eligehausen, Popov and Bertero, Local Bond Stress-Slip Relationships of Deformed Bars under
    Generalized Excitations, UCB/EERC-83/23 (1983), from memory.

    Examples
    --------
    >>> float(eligehausen_bond_law().peak_stress)
    13.5
    """
    require_positive(concrete_strength=concrete_strength, clear_rib_spacing=clear_rib_spacing)
    growth = np.sqrt(np.divide(concrete_strength, 30.0))
    return BondLaw(13.5 * growth, 1.0, 3.0, clear_rib_spacing, 0.4, 5.0 * growth)
