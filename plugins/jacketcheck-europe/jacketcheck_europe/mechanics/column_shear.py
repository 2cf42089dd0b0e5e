"""Shear of circular columns: existing ones by EN 1998-3, ductile piers by EN 1998-2."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.plugin import DomainError, Real, require_at_least, require_positive

__all__ = [
    "LEAST_SHEAR_SPAN_RATIO",
    "PierSection",
    "circular_hoop_shear",
    "existing_column_shear",
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


def existing_column_shear(
    axial_load: Real,
    *,
    diameter: Real,
    core_area: Real,
    compression_depth: Real,
    shear_span: Real,
    concrete_strength: Real,
    bar_ratio: Real,
    plastic_ductility: Real,
    hoop_shear: Real,
    member_factor: Real,
) -> Real:
    """Cyclic shear resistance of an existing column.

    Parameters
    ----------
    axial_load
        Axial compression N [N], at least zero; scalar or array.
    diameter
        Depth of the section h, of a circular column its diameter D [mm], above zero.
    core_area
        A_c: area of the core inside of the hoops, π D_c²/4 [mm²], above zero.
    compression_depth
        Depth of the compression zone x [mm], at least zero, at most `diameter`.
    shear_span
        Moment over shear at the end section L_V [mm], above twice the diameter.
    concrete_strength
        Concrete strength, divided by its partial factor f_c [MPa], above zero.
    bar_ratio
        Total longitudinal reinforcement ratio ρ_tot [-], at least zero.
    plastic_ductility
        Plastic part of the displacement ductility μ_Δ,pl [-], at least zero.
    hoop_shear
        V_w [N], at least zero.
    member_factor
        γ_el [-], above zero: 1.15 for primary members, 1 for secondary ones.

    Returns
    -------
    Real
        V_R [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range; a short column, whose web may crush, among them.

    Notes
    -----
    In N, mm and MPa, of which the coefficient 0.16 depends on MPa alone::

        V_R = 1/γ_el { (h - x)/(2 L_V) min(N, 0.55 A_c f_c)
                       + (1 - 0.05 min(5, μ_Δ,pl))
                         [ 0.16 max(0.5, 100 ρ_tot) (1 - 0.16 min(5, L_V/h)) √f_c A_c + V_w ] }

    References
    ----------
    EN 1998-3:2005, A.3.3.1(1), Eq. A.12; Biskinis, Roupakias and Fardis, Degradation of Shear
    Strength of Reinforced Concrete Members with Inelastic Cyclic Displacements, ACI Struct. J.
    101(6) (2004), 773-783, from memory.

    Examples
    --------
    >>> shear = existing_column_shear(
    ...     2.0e6, diameter=1200.0, core_area=0.9e6, compression_depth=300.0, shear_span=6000.0,
    ...     concrete_strength=16.0, bar_ratio=0.01, plastic_ductility=2.0, hoop_shear=1.0e6,
    ...     member_factor=1.15)
    >>> round(float(shear) / 1e3)
    1003
    """
    require_positive(
        diameter=diameter,
        core_area=core_area,
        shear_span=shear_span,
        concrete_strength=concrete_strength,
        member_factor=member_factor,
    )
    require_at_least(
        0.0,
        axial_load=axial_load,
        compression_depth=compression_depth,
        lever=np.subtract(diameter, compression_depth),
        bar_ratio=bar_ratio,
        plastic_ductility=plastic_ductility,
        hoop_shear=hoop_shear,
    )
    slenderness = np.divide(shear_span, diameter)
    if np.any(slenderness <= LEAST_SHEAR_SPAN_RATIO):
        raise DomainError("shear_span over diameter", float(np.min(slenderness)), "above 2")
    strut = np.subtract(diameter, compression_depth) / np.multiply(2.0, shear_span)
    axial = strut * np.minimum(axial_load, 0.55 * np.multiply(core_area, concrete_strength))
    concrete = (
        0.16
        * np.maximum(0.5, np.multiply(100.0, bar_ratio))
        * (1.0 - 0.16 * np.minimum(5.0, slenderness))
        * np.sqrt(concrete_strength)
        * core_area
    )
    left = 1.0 - 0.05 * np.minimum(5.0, plastic_ductility)
    return (axial + left * (concrete + hoop_shear)) / member_factor


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
