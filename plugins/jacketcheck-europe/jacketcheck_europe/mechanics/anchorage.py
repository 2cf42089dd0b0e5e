"""Anchorage and laps of ribbed bars in tension."""

from __future__ import annotations

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within

__all__ = [
    "basic_anchorage_length",
    "bond_strength",
    "confinement_coefficient",
    "cover_coefficient",
    "design_anchorage_length",
    "design_lap_length",
    "lap_coefficient",
    "pressure_coefficient",
    "size_coefficient",
]


def size_coefficient(diameter: Real) -> Real:
    """Coefficient of bond for the size of the bar.

    Parameters
    ----------
    diameter
        Bar diameter φ [mm], above zero, below 132; scalar or array.

    Returns
    -------
    Real
        η_2 [-]: 1 up to 32 mm, ``(132 - φ)/100`` above.

    Raises
    ------
    DomainError
        If the diameter lies outside its range.

    References
    ----------
    EN 1992-1-1:2004, 8.4.2(2).

    Examples
    --------
    >>> float(size_coefficient(40.0))
    0.92
    """
    left = np.subtract(132.0, diameter)
    require_positive(diameter=diameter, diameter_left=left)
    return np.minimum(left / 100.0, 1.0)


def bond_strength(
    tensile_strength: Real,
    *,
    diameter: Real,
    partial_factor: Real,
    good_conditions: bool = True,
) -> Real:
    """Design value of the ultimate bond stress of a ribbed bar.

    Parameters
    ----------
    tensile_strength
        f_ctk,0.05 of the concrete [MPa], above zero, of C60/75 at most; scalar or array.
    diameter
        Bar diameter φ [mm], above zero, below 132.
    partial_factor
        γ_C [-], above zero.
    good_conditions
        Whether bond conditions are good, as they are of bars that stand upright.

    Returns
    -------
    Real
        f_bd [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``f_bd = 2.25 η_1 η_2 f_ctd`` with η_1 = 1 for good conditions, else 0.7, and
    ``f_ctd = f_ctk,0.05/γ_C`` (α_ct = 1).

    References
    ----------
    EN 1992-1-1:2004, 8.4.2, Eq. 8.2, and 3.1.6(2).

    Examples
    --------
    >>> float(bond_strength(2.0, diameter=25.0, partial_factor=1.5))
    3.0
    """
    require_positive(tensile_strength=tensile_strength, partial_factor=partial_factor)
    conditions = 1.0 if good_conditions else 0.7
    design = np.divide(tensile_strength, partial_factor)
    return 2.25 * conditions * size_coefficient(diameter) * design


def basic_anchorage_length(diameter: Real, *, bar_stress: Real, bond_strength: Real) -> Real:
    """Basic required anchorage length.

    Parameters
    ----------
    diameter
        Bar diameter φ [mm], above zero; scalar or array.
    bar_stress
        Stress of the bar where the anchorage begins σ_sd [MPa], at least zero.
    bond_strength
        f_bd [MPa], above zero.

    Returns
    -------
    Real
        ``l_b,rqd = (φ/4) σ_sd/f_bd`` [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    References
    ----------
    EN 1992-1-1:2004, Eq. 8.3.

    Examples
    --------
    >>> float(basic_anchorage_length(20.0, bar_stress=435.0, bond_strength=3.0))
    725.0
    """
    require_positive(diameter=diameter, bond_strength=bond_strength)
    require_at_least(0.0, bar_stress=bar_stress)
    return np.divide(diameter, 4.0) * bar_stress / bond_strength


def cover_coefficient(cover: Real, *, diameter: Real) -> Real:
    """Coefficient of anchorage for the concrete cover of straight bars.

    Parameters
    ----------
    cover
        c_d: the least of cover, side cover and half of the clear spacing [mm], at least zero;
        scalar or array.
    diameter
        Bar diameter φ [mm], above zero.

    Returns
    -------
    Real
        α_2 [-], from 0.7 to 1.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``α_2 = 1 - 0.15 (c_d - φ)/φ``, ``0.7 <= α_2 <= 1``; both bounds are the standard's.

    References
    ----------
    EN 1992-1-1:2004, Table 8.2 and Figure 8.3.

    Examples
    --------
    >>> float(cover_coefficient(40.0, diameter=20.0))
    0.85
    """
    require_at_least(0.0, cover=cover)
    require_positive(diameter=diameter)
    return np.clip(1.0 - 0.15 * np.subtract(cover, diameter) / diameter, 0.7, 1.0)


def confinement_coefficient(transverse_ratio: Real, *, position: Real) -> Real:
    """Coefficient of anchorage for transverse reinforcement that is not welded to the bar.

    Parameters
    ----------
    transverse_ratio
        λ: transverse area along the anchorage, less its least value, over the bar's area [-], at
        least zero; scalar or array.
    position
        K by the place of the transverse bar [-]: 0.1 around a corner, 0.05 outside of the bar, 0
        inside of it.

    Returns
    -------
    Real
        α_3 [-], from 0.7 to 1.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``α_3 = 1 - K λ``, ``0.7 <= α_3 <= 1``.

    References
    ----------
    EN 1992-1-1:2004, Table 8.2 and Figure 8.4.

    Examples
    --------
    >>> float(confinement_coefficient(2.0, position=0.1))
    0.8
    """
    require_at_least(0.0, transverse_ratio=transverse_ratio)
    require_within(0.0, 0.1, position=position)
    return np.clip(1.0 - np.multiply(position, transverse_ratio), 0.7, 1.0)


def pressure_coefficient(pressure: Real) -> Real:
    """Coefficient of anchorage for transverse pressure.

    Parameters
    ----------
    pressure
        Pressure across the plane of splitting along the anchorage p [MPa], at least zero; scalar
        or array.

    Returns
    -------
    Real
        α_5 [-], from 0.7 to 1.

    Raises
    ------
    DomainError
        If the pressure is not finite and at least zero.

    Notes
    -----
    ``α_5 = 1 - 0.04 p``, ``0.7 <= α_5 <= 1``.

    References
    ----------
    EN 1992-1-1:2004, Table 8.2.

    Examples
    --------
    >>> float(pressure_coefficient(5.0))
    0.8
    """
    require_at_least(0.0, pressure=pressure)
    return np.clip(1.0 - np.multiply(0.04, pressure), 0.7, 1.0)


def _reduced(
    basic_length: Real,
    *,
    form: Real,
    cover: Real,
    confinement: Real,
    welded: Real,
    pressure: Real,
) -> Real:
    """Basic length times the coefficients; cover, confinement and pressure share a bound."""
    require_at_least(0.0, basic_length=basic_length)
    require_within(
        0.7,
        1.0,
        form=form,
        cover=cover,
        confinement=confinement,
        welded=welded,
        pressure=pressure,
    )
    together = np.maximum(np.multiply(cover, confinement) * pressure, 0.7)
    return np.multiply(form, welded) * together * basic_length


def design_anchorage_length(
    basic_length: Real,
    *,
    diameter: Real,
    form: Real = 1.0,
    cover: Real = 1.0,
    confinement: Real = 1.0,
    welded: Real = 1.0,
    pressure: Real = 1.0,
) -> Real:
    """Design anchorage length of a bar in tension.

    Parameters
    ----------
    basic_length
        l_b,rqd from `basic_anchorage_length` [mm], at least zero; scalar or array.
    diameter
        Bar diameter φ [mm], above zero.
    form
        α_1 [-]: 1 for straight bars.
    cover
        α_2 from `cover_coefficient` [-].
    confinement
        α_3 from `confinement_coefficient` [-].
    welded
        α_4 [-]: 0.7 with a welded transverse bar, else 1.
    pressure
        α_5 from `pressure_coefficient` [-].

    Returns
    -------
    Real
        l_bd [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a coefficient is not between 0.7 and 1, or another argument is out of its range.

    Notes
    -----
    ``l_bd = α_1 α_2 α_3 α_4 α_5 l_b,rqd >= max(0.3 l_b,rqd, 10 φ, 100 mm)`` with
    ``α_2 α_3 α_5 >= 0.7``.

    References
    ----------
    EN 1992-1-1:2004, 8.4.4, Eq. 8.4 to 8.6.

    Examples
    --------
    >>> float(design_anchorage_length(725.0, diameter=20.0, cover=0.85))
    616.25
    """
    require_positive(diameter=diameter)
    reduced = _reduced(
        basic_length,
        form=form,
        cover=cover,
        confinement=confinement,
        welded=welded,
        pressure=pressure,
    )
    least = np.maximum(np.multiply(0.3, basic_length), np.multiply(10.0, diameter))
    return np.maximum(reduced, np.maximum(least, 100.0))


def lap_coefficient(lapped_share: Real) -> Real:
    """Coefficient of laps for the share of bars lapped at one section.

    Parameters
    ----------
    lapped_share
        Share of the bars lapped within 0.65 l_0 of the lap's middle ρ_1 [-], above zero, at most
        1; scalar or array.

    Returns
    -------
    Real
        α_6 [-], from 1 to 1.5.

    Raises
    ------
    DomainError
        If the share lies outside its range.

    Notes
    -----
    ``α_6 = (ρ_1/25%)**0.5``, ``1 <= α_6 <= 1.5``.

    References
    ----------
    EN 1992-1-1:2004, 8.7.3 and Table 8.3.

    Examples
    --------
    >>> float(lap_coefficient(1.0)), float(lap_coefficient(0.25))
    (1.5, 1.0)
    """
    require_positive(lapped_share=lapped_share)
    require_within(0.0, 1.0, lapped_share=lapped_share)
    return np.clip(np.sqrt(np.divide(lapped_share, 0.25)), 1.0, 1.5)


def design_lap_length(
    basic_length: Real,
    *,
    diameter: Real,
    lap: Real,
    form: Real = 1.0,
    cover: Real = 1.0,
    confinement: Real = 1.0,
    pressure: Real = 1.0,
) -> Real:
    """Design lap length of bars in tension.

    Parameters
    ----------
    basic_length
        l_b,rqd from `basic_anchorage_length` [mm], at least zero; scalar or array.
    diameter
        Bar diameter φ [mm], above zero.
    lap
        α_6 from `lap_coefficient` [-], from 1 to 1.5.
    form, cover, confinement, pressure
        α_1, α_2, α_3 and α_5 as for anchorage [-].

    Returns
    -------
    Real
        l_0 [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a coefficient or another argument lies outside its range.

    Notes
    -----
    ``l_0 = α_1 α_2 α_3 α_5 α_6 l_b,rqd >= max(0.3 α_6 l_b,rqd, 15 φ, 200 mm)``. The bound of 0.7
    on ``α_2 α_3 α_5`` is printed for anchorages; it is kept here, on the safe side.

    References
    ----------
    EN 1992-1-1:2004, 8.7.3, Eq. 8.10 and 8.11.

    Examples
    --------
    >>> float(design_lap_length(725.0, diameter=20.0, lap=1.5))
    1087.5
    """
    require_positive(diameter=diameter)
    require_within(1.0, 1.5, lap=lap)
    reduced = np.multiply(
        lap,
        _reduced(
            basic_length,
            form=form,
            cover=cover,
            confinement=confinement,
            welded=1.0,
            pressure=pressure,
        ),
    )
    least = np.maximum(np.multiply(0.3, lap) * basic_length, np.multiply(15.0, diameter))
    return np.maximum(reduced, np.maximum(least, 200.0))
