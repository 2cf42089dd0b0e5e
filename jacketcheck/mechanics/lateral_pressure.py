"""Lateral pressure that hoops, spirals and jackets put on a circular core.

The pressure is the one to use in `jacketcheck.mechanics.confinement`: averaged over the height
and, for hoops and spirals, reduced for the concrete that arches between them.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive

__all__ = [
    "effective_hoop_pressure",
    "hoop_effectiveness",
    "hoop_lateral_stiffness",
    "hoop_volumetric_ratio",
    "jacket_lateral_pressure",
    "jacket_volumetric_ratio",
    "spiral_effectiveness",
]


def hoop_volumetric_ratio(bar_area: Real, *, core_diameter: Real, spacing: Real) -> Real:
    """Volume of hoops or spiral over the volume of the core they enclose.

    Parameters
    ----------
    bar_area
        Area of one hoop bar [mm2], above zero; scalar or array.
    core_diameter
        Diameter of the hoop's centre line ``d_s`` [mm], above zero.
    spacing
        Centre-to-centre spacing of hoops or pitch of the spiral ``s`` [mm], above zero.

    Returns
    -------
    Real
        ``rho_s = 4 A_sp / (d_s s)`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    References
    ----------
    Mander, Priestley and Park, Theoretical Stress-Strain Model for Confined Concrete,
    J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> float(hoop_volumetric_ratio(200.0, core_diameter=1000.0, spacing=100.0))
    0.008
    """
    require_positive(bar_area=bar_area, core_diameter=core_diameter, spacing=spacing)
    return np.multiply(4.0, bar_area) / np.multiply(core_diameter, spacing)


def _effectiveness(
    clear_spacing: Real, core_diameter: Real, longitudinal_ratio: Real, exponent: float
) -> Real:
    """Effectively confined area over area of concrete, at the weakest height."""
    require_at_least(0.0, clear_spacing=clear_spacing, longitudinal_ratio=longitudinal_ratio)
    require_positive(
        core_diameter=core_diameter,
        concrete_share_of_core=np.subtract(1.0, longitudinal_ratio),
        effective_core_diameter=np.subtract(core_diameter, np.multiply(0.5, clear_spacing)),
    )
    arch = 1.0 - np.multiply(0.5, clear_spacing) / core_diameter
    return np.minimum(np.power(arch, exponent) / np.subtract(1.0, longitudinal_ratio), 1.0)


def hoop_effectiveness(
    clear_spacing: Real, *, core_diameter: Real, longitudinal_ratio: Real
) -> Real:
    """Confinement effectiveness coefficient of circular hoops.

    Parameters
    ----------
    clear_spacing
        Clear vertical spacing of the hoops ``s'`` [mm], at least zero and below twice the core's
        diameter; scalar or array.
    core_diameter
        Diameter of the hoop's centre line ``d_s`` [mm], above zero.
    longitudinal_ratio
        Area of longitudinal bars over area of the core ``rho_cc`` [-], from zero to below one.

    Returns
    -------
    Real
        ``ke`` [-], at most one, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``ke = (1 - s' / (2 d_s))**2 / (1 - rho_cc)``. Bars that take much of the core push the
    quotient above one when hoops are very close; it is then one.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> value = hoop_effectiveness(100.0, core_diameter=1000.0, longitudinal_ratio=0.02)
    >>> round(float(value), 4)
    0.9209
    """
    return _effectiveness(clear_spacing, core_diameter, longitudinal_ratio, 2.0)


def spiral_effectiveness(
    clear_spacing: Real, *, core_diameter: Real, longitudinal_ratio: Real
) -> Real:
    """Confinement effectiveness coefficient of a circular spiral.

    Parameters
    ----------
    clear_spacing
        Clear vertical spacing between turns ``s'`` [mm], at least zero and below twice the core's
        diameter; scalar or array.
    core_diameter
        Diameter of the spiral's centre line ``d_s`` [mm], above zero.
    longitudinal_ratio
        Area of longitudinal bars over area of the core ``rho_cc`` [-], from zero to below one.

    Returns
    -------
    Real
        ``ke`` [-], at most one, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``ke = (1 - s' / (2 d_s)) / (1 - rho_cc)``, at most one as for hoops.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> value = spiral_effectiveness(100.0, core_diameter=1000.0, longitudinal_ratio=0.02)
    >>> round(float(value), 4)
    0.9694
    """
    return _effectiveness(clear_spacing, core_diameter, longitudinal_ratio, 1.0)


def effective_hoop_pressure(
    volumetric_ratio: Real, *, yield_strength: Real, effectiveness: Real
) -> Real:
    """Effective lateral pressure of yielding hoops or a yielding spiral.

    Parameters
    ----------
    volumetric_ratio
        Volumetric ratio ``rho_s`` [-], at least zero; scalar or array.
    yield_strength
        Yield strength ``f_yh`` [MPa], above zero.
    effectiveness
        Coefficient ``ke`` [-], above zero.

    Returns
    -------
    Real
        ``f'l = ke rho_s f_yh / 2`` [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> float(effective_hoop_pressure(0.01, yield_strength=400.0, effectiveness=0.95))
    1.9
    """
    require_at_least(0.0, volumetric_ratio=volumetric_ratio)
    require_positive(yield_strength=yield_strength, effectiveness=effectiveness)
    return 0.5 * np.multiply(effectiveness, volumetric_ratio) * yield_strength


def hoop_lateral_stiffness(
    volumetric_ratio: Real, *, elastic_modulus: Real, effectiveness: Real
) -> Real:
    """Effective lateral pressure of elastic hoops or spiral for each unit of lateral strain.

    Parameters
    ----------
    volumetric_ratio
        Volumetric ratio ``rho_s`` [-], at least zero; scalar or array.
    elastic_modulus
        Elastic modulus of the hoops ``Es`` [MPa], above zero.
    effectiveness
        Coefficient ``ke`` [-], above zero.

    Returns
    -------
    Real
        ``ke rho_s Es / 2`` [MPa per unit strain], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The hoop strain of a ring that moves with an evenly dilating core equals its lateral strain.

    References
    ----------
    Equilibrium of a half ring; `effective_hoop_pressure` before yield.

    Examples
    --------
    >>> float(hoop_lateral_stiffness(0.01, elastic_modulus=200e3, effectiveness=0.95))
    950.0
    """
    require_at_least(0.0, volumetric_ratio=volumetric_ratio)
    require_positive(elastic_modulus=elastic_modulus, effectiveness=effectiveness)
    return 0.5 * np.multiply(effectiveness, volumetric_ratio) * elastic_modulus


def jacket_volumetric_ratio(thickness: Real, *, diameter: Real) -> Real:
    """Volume of a thin circular jacket over the volume inside it.

    Parameters
    ----------
    thickness
        Wall thickness [mm], at least zero; scalar or array.
    diameter
        Inner diameter [mm], above zero.

    Returns
    -------
    Real
        ``rho_s = 4 t / D`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Thin-cylinder geometry.

    Examples
    --------
    >>> round(float(jacket_volumetric_ratio(10.0, diameter=1200.0)), 5)
    0.03333
    """
    require_at_least(0.0, thickness=thickness)
    require_positive(diameter=diameter)
    return np.multiply(4.0, thickness) / diameter


def jacket_lateral_pressure(thickness: Real, *, diameter: Real, yield_strength: Real) -> Real:
    """Lateral pressure of a jacket that yields in hoop tension.

    Parameters
    ----------
    thickness
        Wall thickness [mm], at least zero; scalar or array.
    diameter
        Inner diameter [mm], above zero.
    yield_strength
        Yield strength [MPa], above zero.

    Returns
    -------
    Real
        ``f'l = 2 t f_y / D`` [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Continuous over the height and around the core, so its effectiveness is one. This is the
    pressure at yield; whether the core dilates enough to call it up is for
    `jacketcheck.mechanics.dilation` to say.

    References
    ----------
    Thin-cylinder equilibrium; Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges
    (1996), ch. 7, from memory.

    Examples
    --------
    >>> round(float(jacket_lateral_pressure(10.0, diameter=1200.0, yield_strength=250.0)), 3)
    4.167
    """
    require_at_least(0.0, thickness=thickness)
    require_positive(diameter=diameter, yield_strength=yield_strength)
    return np.multiply(2.0, thickness) * yield_strength / diameter
