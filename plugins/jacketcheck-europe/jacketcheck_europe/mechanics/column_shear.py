"""Shear of circular columns: existing ones by EN 1998-3, ductile piers by EN 1998-2."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.plugin import DomainError, Real, require_at_least, require_positive

__all__ = [
    "LEAST_SHEAR_SPAN_RATIO",
    "PierSection",
    "circular_hoop_shear",
    "existing_axial_shear",
    "existing_column_shear",
    "existing_concrete_shear",
    "pier_crushing_shear",
    "pier_hoop_shear",
    "pier_section",
]

LEAST_SHEAR_SPAN_RATIO: Final = 2.0
"""Shear span over depth up to which the web of a column may crush along its diagonal, which the
standard covers for rectangular webs only (EN 1998-3:2005 A.3.3.1(3))."""


def circular_hoop_shear(
    hoop_area: Real, *, yield_strength: Real, hoop_diameter: Real, spacing: Real
) -> Real:
    """Contribution of circular hoops to the shear resistance of an existing column.

    Parameters
    ----------
    hoop_area
        Area of one hoop bar A_sw [mm²], above zero; scalar or array.
    yield_strength
        Yield strength of the hoops, divided by its partial factor f_yw [MPa], above zero.
    hoop_diameter
        Column diameter less twice the cover D - 2c [mm], above zero.
    spacing
        Spacing of the hoops s [mm], above zero.

    Returns
    -------
    Real
        V_w [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``V_w = (π/2) (A_sw/s) f_yw (D - 2c)``.

    References
    ----------
    EN 1998-3:2005, A.3.3.1(1), Eq. A.14, from memory.

    Examples
    --------
    >>> round(float(circular_hoop_shear(
    ...     200.0, yield_strength=350.0, hoop_diameter=1100.0, spacing=100.0)) / 1e3)
    1210
    """
    require_positive(
        hoop_area=hoop_area,
        yield_strength=yield_strength,
        hoop_diameter=hoop_diameter,
        spacing=spacing,
    )
    return 0.5 * np.pi * np.multiply(hoop_area, yield_strength) * hoop_diameter / spacing


def existing_concrete_shear(
    core_area: Real,
    *,
    concrete_strength: Real,
    bar_ratio: Real,
    diameter: Real,
    shear_span: Real,
) -> Real:
    """Contribution of the concrete to the shear resistance of an existing column, undegraded.

    Parameters
    ----------
    core_area
        A_c: area of the core inside of the hoops, π D_c²/4 [mm²], above zero; scalar or array.
    concrete_strength
        Concrete strength, divided by its partial factor f_c [MPa], above zero.
    bar_ratio
        Total longitudinal reinforcement ratio ρ_tot [-], at least zero.
    diameter
        Depth of the section h, of a circular column its diameter D [mm], above zero.
    shear_span
        Moment over shear at the end section L_V [mm], above twice the diameter.

    Returns
    -------
    Real
        V_c [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range; a short column, whose web may crush, among them.

    Notes
    -----
    ``V_c = 0.16 max(0.5, 100 ρ_tot) (1 - 0.16 min(5, L_V/h)) √f_c A_c`` in N, mm and MPa.

    References
    ----------
    EN 1998-3:2005, A.3.3.1(1), Eq. A.12; A_c of circular columns from memory.

    Examples
    --------
    >>> shear = existing_concrete_shear(
    ...     0.9e6, concrete_strength=16.0, bar_ratio=0.01, diameter=1200.0, shear_span=6000.0)
    >>> round(float(shear) / 1e3)
    115
    """
    require_positive(
        core_area=core_area,
        concrete_strength=concrete_strength,
        diameter=diameter,
        shear_span=shear_span,
    )
    require_at_least(0.0, bar_ratio=bar_ratio)
    slenderness = np.divide(shear_span, diameter)
    if np.any(slenderness <= LEAST_SHEAR_SPAN_RATIO):
        raise DomainError("shear_span over diameter", float(np.min(slenderness)), "above 2")
    return (
        0.16
        * np.maximum(0.5, np.multiply(100.0, bar_ratio))
        * (1.0 - 0.16 * np.minimum(5.0, slenderness))
        * np.sqrt(concrete_strength)
        * core_area
    )


def existing_axial_shear(
    axial_load: Real,
    *,
    core_area: Real,
    concrete_strength: Real,
    diameter: Real,
    compression_depth: Real,
    shear_span: Real,
) -> Real:
    """Contribution of the axial load to the shear resistance of an existing column.

    Parameters
    ----------
    axial_load
        Axial compression N [N], at least zero; scalar or array.
    core_area
        A_c [mm²], above zero.
    concrete_strength
        Concrete strength, divided by its partial factor f_c [MPa], above zero.
    diameter
        Depth of the section h, of a circular column its diameter D [mm], above zero.
    compression_depth
        Depth of the compression zone x [mm], at least zero, at most `diameter`.
    shear_span
        Moment over shear at the end section L_V [mm], above zero.

    Returns
    -------
    Real
        V_N [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``V_N = (h - x)/(2 L_V) min(N, 0.55 A_c f_c)``: the axial load runs down an inclined strut.

    References
    ----------
    EN 1998-3:2005, A.3.3.1(1), Eq. A.12.

    Examples
    --------
    >>> shear = existing_axial_shear(
    ...     2.0e6, core_area=0.9e6, concrete_strength=16.0, diameter=1200.0,
    ...     compression_depth=300.0, shear_span=6000.0)
    >>> float(shear) / 1e3
    150.0
    """
    require_positive(
        core_area=core_area,
        concrete_strength=concrete_strength,
        diameter=diameter,
        shear_span=shear_span,
    )
    require_at_least(
        0.0,
        axial_load=axial_load,
        compression_depth=compression_depth,
        lever=np.subtract(diameter, compression_depth),
    )
    strut = np.subtract(diameter, compression_depth) / np.multiply(2.0, shear_span)
    return strut * np.minimum(axial_load, 0.55 * np.multiply(core_area, concrete_strength))


def existing_column_shear(
    *,
    axial_shear: Real,
    concrete_shear: Real,
    hoop_shear: Real,
    plastic_ductility: Real,
    member_factor: Real,
) -> Real:
    """Cyclic shear resistance of an existing column.

    Parameters
    ----------
    axial_shear
        V_N from `existing_axial_shear` [N], at least zero; scalar or array.
    concrete_shear
        V_c from `existing_concrete_shear` [N], at least zero.
    hoop_shear
        V_w from `circular_hoop_shear` [N], at least zero.
    plastic_ductility
        Plastic part of the displacement ductility μ_Δ,pl [-], at least zero.
    member_factor
        γ_el [-], above zero: 1.15 for primary members, 1 for secondary ones.

    Returns
    -------
    Real
        V_R [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``V_R = [V_N + (1 - 0.05 min(5, μ_Δ,pl)) (V_c + V_w)] / γ_el``.

    References
    ----------
    EN 1998-3:2005, A.3.3.1(1), Eq. A.12; Biskinis, Roupakias and Fardis, Degradation of Shear
    Strength of Reinforced Concrete Members with Inelastic Cyclic Displacements, ACI Struct. J.
    101(6) (2004), 773-783, from memory.

    Examples
    --------
    >>> shear = existing_column_shear(
    ...     axial_shear=150e3, concrete_shear=115e3, hoop_shear=1.0e6, plastic_ductility=2.0,
    ...     member_factor=1.15)
    >>> round(float(shear) / 1e3)
    1003
    """
    require_at_least(
        0.0,
        axial_shear=axial_shear,
        concrete_shear=concrete_shear,
        hoop_shear=hoop_shear,
        plastic_ductility=plastic_ductility,
    )
    require_positive(member_factor=member_factor)
    left = 1.0 - 0.05 * np.minimum(5.0, plastic_ductility)
    return (axial_shear + left * np.add(concrete_shear, hoop_shear)) / member_factor


class PierSection(NamedTuple):
    """What stands for the web of a circular pier.

    Attributes
    ----------
    lever_arm
        Internal lever arm z [mm].
    web_width
        Least width between tension and compression chord b_w [mm].
    """

    lever_arm: Real
    web_width: Real


def pier_section(*, concrete_radius: Real, bar_circle_radius: Real) -> PierSection:
    """Lever arm and width of web of a circular section.

    Parameters
    ----------
    concrete_radius
        Radius of the concrete that counts r [mm], above zero: of the confined core in a plastic
        hinge; scalar or array.
    bar_circle_radius
        Radius of the circle of longitudinal bars r_s [mm], above zero, at most `concrete_radius`.

    Returns
    -------
    PierSection
        Lever arm and width [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``z = 0.9 d_e`` with ``d_e = r + 2 r_s/π``: the centroid of half of the bars. The width is that
    of the chord through this centroid, ``b_w = 2 √(r² - (2 r_s/π)²)``.

    References
    ----------
    EN 1998-2:2005, 5.6.3.3(2), from memory, for the effective depth; EN 1992-1-1:2004, 6.2.2 and
    6.2.3, for the width between the chords; geometry.

    Examples
    --------
    >>> section = pier_section(concrete_radius=500.0, bar_circle_radius=471.238898)
    >>> round(float(section.lever_arm)), round(float(section.web_width))
    (720, 800)
    """
    require_positive(concrete_radius=concrete_radius, bar_circle_radius=bar_circle_radius)
    require_at_least(0.0, bars_inside=np.subtract(concrete_radius, bar_circle_radius))
    centroid = np.multiply(2.0 / np.pi, bar_circle_radius)
    half = np.sqrt(np.square(concrete_radius) - np.square(centroid))
    return PierSection(0.9 * np.add(concrete_radius, centroid), 2.0 * half)


def pier_hoop_shear(
    hoop_area: Real, *, yield_strength: Real, spacing: Real, lever_arm: Real
) -> Real:
    """Shear that circular hoops carry across diagonal cracks at 45°.

    Parameters
    ----------
    hoop_area
        Area of one hoop bar [mm²], above zero; scalar or array.
    yield_strength
        Design yield strength of the hoops f_ywd [MPa], above zero.
    spacing
        Spacing of the hoops s [mm], above zero.
    lever_arm
        Internal lever arm z [mm], above zero; see `pier_section`.

    Returns
    -------
    Real
        V_Rd,s [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``V_Rd,s = (A_sw/s) z f_ywd cot θ`` with θ = 45°, as in the hinge of a ductile pier, and
    ``A_sw = (π/2) A_hoop``: two legs, on average inclined by as much as a circle is.

    References
    ----------
    EN 1992-1-1:2004, Eq. 6.8; EN 1998-2:2005, 5.6.3.4, from memory, for θ; the average inclination
    of the hoops is geometry.

    Examples
    --------
    >>> round(float(pier_hoop_shear(
    ...     200.0, yield_strength=350.0, spacing=100.0, lever_arm=800.0)) / 1e3)
    880
    """
    require_positive(
        hoop_area=hoop_area, yield_strength=yield_strength, spacing=spacing, lever_arm=lever_arm
    )
    legs = np.multiply(0.5 * np.pi, hoop_area)
    return legs * yield_strength * lever_arm / spacing


def pier_crushing_shear(
    design_strength: Real, *, effectiveness: Real, lever_arm: Real, web_width: Real
) -> Real:
    """Shear at which the struts between diagonal cracks at 45° crush.

    Parameters
    ----------
    design_strength
        f_cd [MPa], above zero; scalar or array.
    effectiveness
        ν_1 from `jacketcheck_europe.mechanics.concrete.strut_effectiveness` [-], above zero.
    lever_arm, web_width
        z and b_w of `pier_section` [mm], above zero.

    Returns
    -------
    Real
        V_Rd,max [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``V_Rd,max = b_w z ν_1 f_cd / (cot θ + tan θ)`` with θ = 45° and α_cw = 1.

    References
    ----------
    EN 1992-1-1:2004, Eq. 6.9.

    Examples
    --------
    >>> round(float(pier_crushing_shear(
    ...     17.0, effectiveness=0.528, lever_arm=800.0, web_width=900.0)) / 1e3)
    3231
    """
    require_positive(
        design_strength=design_strength,
        effectiveness=effectiveness,
        lever_arm=lever_arm,
        web_width=web_width,
    )
    return np.multiply(web_width, lever_arm) * effectiveness * design_strength / 2.0
