"""Mean bond strengths over a length, and the bar stresses that they develop."""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_within,
)
from jacketcheck.mechanics._customary_units import PSI

__all__ = [
    "basic_design_bond_strength",
    "splice_bond_strength",
    "splitting_bar_stress",
    "uniform_bond_force",
    "uniform_bond_length",
]


def uniform_bond_length(bar_force: Real, *, bond_stress: Real, perimeter_diameter: Real) -> Real:
    """Length over which uniform bond stress takes up a bar force.

    Parameters
    ----------
    bar_force
        Force ``F`` [N], at least zero; scalar or array.
    bond_stress
        Bond stress ``tau`` [MPa], above zero.
    perimeter_diameter
        Diameter of the surface in bond ``d`` [mm], above zero: of the bar, or of a drilled hole.

    Returns
    -------
    Real
        ``l = F / (pi d tau)`` [mm], broadcast over the arguments; ``f_s d_b / (4 tau)`` for a bar
        of circular area.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Equilibrium.

    Examples
    --------
    >>> round(float(uniform_bond_length(382e3, bond_stress=12.0, perimeter_diameter=32.0)), 1)
    316.7
    """
    require_at_least(0.0, bar_force=bar_force)
    require_positive(bond_stress=bond_stress, perimeter_diameter=perimeter_diameter)
    return np.divide(bar_force, np.pi * np.multiply(perimeter_diameter, bond_stress))


def uniform_bond_force(length: Real, *, bond_stress: Real, perimeter_diameter: Real) -> Real:
    """Bar force that uniform bond stress takes up; the inverse of `uniform_bond_length`.

    Parameters
    ----------
    length
        Length in bond [mm], at least zero; scalar or array.
    bond_stress
        Bond stress [MPa], above zero.
    perimeter_diameter
        Diameter of the surface in bond [mm], above zero.

    Returns
    -------
    Real
        Force ``pi d tau l`` [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Equilibrium.

    Examples
    --------
    >>> round(float(uniform_bond_force(316.7, bond_stress=12.0, perimeter_diameter=32.0)))
    382058
    """
    require_at_least(0.0, length=length)
    require_positive(bond_stress=bond_stress, perimeter_diameter=perimeter_diameter)
    return np.pi * np.multiply(perimeter_diameter, bond_stress) * length


def splice_bond_strength(
    concrete_strength: Real,
    *,
    bar_diameter: Real,
    cover_dimension: Real,
    length: Real,
    transverse_area: Real = 0.0,
    transverse_yield: Real = 0.0,
    transverse_spacing: Real = 1.0,
) -> Real:
    """Mean bond stress at which a bar or splice of given length splits the concrete.

    Parameters
    ----------
    concrete_strength
        Compressive strength ``f'_c`` [MPa], above zero; scalar or array.
    bar_diameter
        Bar diameter ``d_b`` [mm], above zero.
    cover_dimension
        ``c``: the smaller of the clear cover and half the clear spacing of the bars [mm], at least
        zero.
    length
        Length of the anchorage or splice ``l`` [mm], above zero.
    transverse_area
        Area of one transverse bar that crosses the splitting crack, for each bar anchored ``A_tr``
        [mm²], at least zero.
    transverse_yield
        Yield strength of the transverse bars ``f_yt`` [MPa], at least zero.
    transverse_spacing
        Spacing of the transverse bars ``s`` [mm], above zero.

    Returns
    -------
    Real
        Bond stress ``u`` [MPa], broadcast over the arguments. The bar stress is ``4 u l / d_b``.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``u / sqrt(f'_c) = 1.2 + 3 c/d_b + 50 d_b/l + A_tr f_yt / (500 s d_b)`` in psi and inches. The
    source's limits are kept: ``c/d_b`` counts up to 2.5, the last term up to 3.

    References
    ----------
    Orangun, Jirsa and Breen, A Reevaluation of Test Data on Development Length and Splices, ACI J.
    74(3) (1977), 114-122; from memory.

    Examples
    --------
    >>> bond = splice_bond_strength(28.0, bar_diameter=25.4, cover_dimension=50.8, length=762.0)
    >>> round(float(bond), 3)
    3.896
    """
    require_positive(
        concrete_strength=concrete_strength,
        bar_diameter=bar_diameter,
        length=length,
        transverse_spacing=transverse_spacing,
    )
    require_at_least(
        0.0,
        cover_dimension=cover_dimension,
        transverse_area=transverse_area,
        transverse_yield=transverse_yield,
    )
    cover = np.minimum(np.divide(cover_dimension, bar_diameter), 2.5)
    hoops = np.multiply(transverse_area, np.divide(transverse_yield, PSI))
    hoops = np.minimum(hoops / (500.0 * np.multiply(transverse_spacing, bar_diameter)), 3.0)
    relative = 1.2 + 3.0 * cover + 50.0 * np.divide(bar_diameter, length) + hoops
    return relative * np.sqrt(np.divide(concrete_strength, PSI)) * PSI


def splitting_bar_stress(
    concrete_strength: Real,
    *,
    bar_diameter: Real,
    length: Real,
    minimum_cover: Real,
    maximum_cover: Real,
    transverse_index: Real = 0.0,
    transverse_effectiveness: Real = 12.0,
) -> Real:
    """Mean bar stress at which an anchorage or lap of given length splits the concrete.

    Parameters
    ----------
    concrete_strength
        Mean compressive strength ``f_cm`` [MPa], 15 to 110; scalar or array.
    bar_diameter
        Bar diameter ``phi`` [mm], above zero.
    length
        Length in bond ``l_b`` [mm], at least ten bar diameters.
    minimum_cover
        Smallest of the covers and half the clear spacing of the bars ``c_min`` [mm], at least
        ``0.5 phi``.
    maximum_cover
        The larger of the side cover and half the clear spacing ``c_max`` [mm], at least ``c_min``.
    transverse_index
        ``K_tr`` [-], 0 to 0.05.
    transverse_effectiveness
        Coefficient ``k_m`` [-], 12, 6 or 0; see
        `jacketcheck.mechanics.published_bond_laws.splitting_bond_strength`.

    Returns
    -------
    Real
        Bar stress ``f_stm`` [MPa], broadcast over the arguments; to be limited to the yield
        strength.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``54 (f_cm/25)**0.25 (l_b/phi)**0.55 (25/phi)**0.2
    ((c_min/phi)**0.25 (c_max/c_min)**0.1 + k_m K_tr)`` for ``25/phi <= 2``,
    ``0.5 <= c_min/phi <= 3.5``, ``c_max/c_min <= 5``: more cover and thinner bars are counted at
    these limits.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Eq. 6.1-19; agrees with the open-source
    library structuralcodes. Least length from memory.

    Examples
    --------
    >>> stress = splitting_bar_stress(
    ...     38.0, bar_diameter=25.0, length=500.0, minimum_cover=50.0, maximum_cover=50.0)
    >>> round(float(stress), 1)
    370.4
    """
    require_positive(bar_diameter=bar_diameter, minimum_cover=minimum_cover)
    require_at_least(0.0, transverse_effectiveness=transverse_effectiveness)
    require_within(15.0, 110.0, concrete_strength=concrete_strength)
    require_within(0.0, 0.05, transverse_index=transverse_index)
    require_at_least(10.0, length_over_diameter=np.divide(length, bar_diameter))
    require_at_least(0.5, cover_over_diameter=np.divide(minimum_cover, bar_diameter))
    require_at_least(1.0, cover_ratio=np.divide(maximum_cover, minimum_cover))
    relative = np.minimum(np.divide(minimum_cover, bar_diameter), 3.5)
    shape = np.minimum(np.divide(maximum_cover, minimum_cover), 5.0) ** 0.1
    confined = relative**0.25 * shape + np.multiply(transverse_effectiveness, transverse_index)
    size = np.minimum(np.divide(25.0, bar_diameter), 2.0) ** 0.2
    strength = np.divide(concrete_strength, 25.0) ** 0.25
    return 54.0 * strength * np.divide(length, bar_diameter) ** 0.55 * size * confined


def basic_design_bond_strength(
    characteristic_strength: Real,
    *,
    surface_factor: Real = 1.75,
    position_factor: Real = 1.0,
    size_factor: Real = 1.0,
    grade_factor: Real = 1.0,
    partial_factor: Real = 1.5,
) -> Real:
    """Basic design bond strength of the Model Code.

    Parameters
    ----------
    characteristic_strength
        Characteristic compressive strength ``f_ck`` [MPa], above zero; scalar or array.
    surface_factor
        ``eta_1`` [-]: 1.75 for ribbed bars.
    position_factor
        ``eta_2`` [-]: 1.0 for good, 0.7 for other bond conditions.
    size_factor
        ``eta_3`` [-]: 1.0 to 25 mm, ``(25/phi)**0.3`` beyond.
    grade_factor
        ``eta_4`` [-]: 1.0 for a characteristic yield strength of 500 MPa.
    partial_factor
        ``gamma_c`` [-].

    Returns
    -------
    Real
        ``f_bd,0 = eta_1 eta_2 eta_3 eta_4 (f_ck/25)**0.5 / gamma_c`` [MPa], broadcast over the
        arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Eq. 6.1-20 and 6.1-21; from memory.

    Examples
    --------
    >>> round(float(basic_design_bond_strength(30.0)), 3)
    1.278
    """
    require_positive(
        characteristic_strength=characteristic_strength,
        surface_factor=surface_factor,
        position_factor=position_factor,
        size_factor=size_factor,
        grade_factor=grade_factor,
        partial_factor=partial_factor,
    )
    factors = np.multiply(surface_factor, position_factor) * size_factor * grade_factor
    return factors * np.sqrt(np.divide(characteristic_strength, 25.0)) / partial_factor
