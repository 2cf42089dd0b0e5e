"""Shear transfer across an interface of concretes, such as that between column and grout.

Bars across the interface clamp it when it slides and opens; roughness turns clamping into shear.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

import numpy as np

from jacketcheck.mechanics._arguments import choose
from jacketcheck.mechanics._arrays import Real, require_at_least, require_finite, require_positive
from jacketcheck.mechanics._customary_units import KSI, PSI

__all__ = [
    "InterfaceFactors",
    "InterfaceSurface",
    "aashto_friction_coefficient",
    "aashto_interface_limits",
    "aashto_interface_shear",
    "aashto_interface_shear_limit",
    "aci_friction_coefficient",
    "aci_interface_shear",
    "aci_interface_shear_limit",
]

InterfaceSurface: TypeAlias = Literal["monolithic", "roughened", "smooth", "steel"]
"""Concrete cast at once; on hardened clean concrete roughened to an amplitude of 6 mm (1/4 in), or
not roughened; or on clean, as-rolled steel with studs or bars welded to it."""

_ACI_FRICTION: Final[Mapping[str, float]] = MappingProxyType(
    {"monolithic": 1.4, "roughened": 1.0, "smooth": 0.6, "steel": 0.7}
)
"""ACI 318-19 Table 22.9.4.2, normal-weight concrete."""


@dataclass(frozen=True)
class InterfaceFactors:
    """Cohesion c [MPa], friction [-], and limits K1 [-] and K2 [MPa]."""

    cohesion: float
    friction: float
    crushing: float
    largest_stress: float


_AASHTO_INTERFACES: Final[Mapping[str, InterfaceFactors]] = MappingProxyType(
    {
        "monolithic": InterfaceFactors(0.40 * KSI, 1.4, 0.25, 1.5 * KSI),
        "roughened": InterfaceFactors(0.24 * KSI, 1.0, 0.25, 1.5 * KSI),
        "smooth": InterfaceFactors(0.075 * KSI, 0.6, 0.2, 0.8 * KSI),
        "steel": InterfaceFactors(0.025 * KSI, 0.7, 0.2, 0.8 * KSI),
    }
)
"""AASHTO LRFD 9th ed. (2020) 5.7.4.4, normal-weight concrete, from memory.  The higher values for
decks on girders do not apply here."""


def aci_friction_coefficient(surface: InterfaceSurface, *, lightweight_factor: Real = 1.0) -> Real:
    """Coefficient of friction of an interface, ACI.

    Parameters
    ----------
    surface
        Contact surface.
    lightweight_factor
        Factor lambda for lightweight concrete [-], above zero; 1 for normal-weight concrete.

    Returns
    -------
    Real
        Coefficient mu [-].

    Raises
    ------
    DomainError
        If the surface is unknown or the factor not above zero.

    References
    ----------
    ACI 318-19 Table 22.9.4.2.

    Examples
    --------
    >>> float(aci_friction_coefficient("roughened"))
    1.0
    """
    require_positive(lightweight_factor=lightweight_factor)
    return np.multiply(choose(_ACI_FRICTION, surface, name="surface"), lightweight_factor)


def aci_interface_shear_limit(
    area: Real, *, concrete_strength: Real, surface: InterfaceSurface
) -> Real:
    """Largest nominal shear strength of an interface, whatever crosses it, ACI.

    Parameters
    ----------
    area
        Area of concrete that resists the shear transfer [mm²], above zero; scalar or array.
    concrete_strength
        Specified strength of the weaker concrete [MPa], above zero.
    surface
        Contact surface.

    Returns
    -------
    Real
        Shear [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Monolithic or roughened: the least of ``0.2 f'c``, ``480 psi + 0.08 f'c`` and 1600 psi; other
    surfaces ``0.2 f'c`` and 800 psi.  The inch-pound figures are used; those of ACI 318M-19
    (3.3 MPa, 11 MPa and 5.5 MPa) are lower by up to 0.3 %.

    References
    ----------
    ACI 318-19 Table 22.9.4.4.

    Examples
    --------
    >>> limit = aci_interface_shear_limit(1.0, concrete_strength=30.0, surface="roughened")
    >>> round(float(limit), 3)
    5.709
    """
    require_positive(area=area, concrete_strength=concrete_strength)
    choose(_ACI_FRICTION, surface, name="surface")
    crushing = np.multiply(0.2, concrete_strength)
    if surface in ("monolithic", "roughened"):
        rough = np.minimum(480.0 * PSI + np.multiply(0.08, concrete_strength), 1600.0 * PSI)
        return np.minimum(crushing, rough) * area
    return np.minimum(crushing, 800.0 * PSI) * area


def aci_interface_shear(
    bar_area: Real,
    *,
    bar_yield: Real,
    area: Real,
    concrete_strength: Real,
    surface: InterfaceSurface,
    clamping_force: Real = 0.0,
    lightweight_factor: Real = 1.0,
) -> Real:
    """Nominal shear strength of an interface by shear friction, ACI.

    Parameters
    ----------
    bar_area
        Area of bars square to the interface and anchored on both sides [mm²], at least zero.
    bar_yield
        Yield strength of those bars [MPa], above zero.  The code admits at most 420 MPa (60 ksi);
        more is not counted.
    area
        Area of concrete that resists the shear transfer [mm²], above zero.
    concrete_strength
        Specified strength of the weaker concrete [MPa], above zero.
    surface
        Contact surface.
    clamping_force
        Permanent net compression across the interface [N]; net tension is negative and must be
        resisted by the same bars.
    lightweight_factor
        Factor lambda for lightweight concrete [-]; 1 for normal-weight concrete.

    Returns
    -------
    Real
        Shear [N], broadcast over the arguments, never below zero.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vn = mu (Avf fy + N)``, at most `aci_interface_shear_limit`.

    References
    ----------
    ACI 318-19 Eq. 22.9.4.2, 22.9.4.4 to 22.9.4.6; yield limit Table 20.2.2.4(a).

    Examples
    --------
    >>> strength = aci_interface_shear(
    ...     1000.0, bar_yield=400.0, area=100e3, concrete_strength=30.0, surface="roughened")
    >>> float(strength)
    400000.0
    """
    require_at_least(0.0, bar_area=bar_area)
    require_positive(bar_yield=bar_yield)
    require_finite(clamping_force=clamping_force)
    friction = aci_friction_coefficient(surface, lightweight_factor=lightweight_factor)
    limit = aci_interface_shear_limit(area, concrete_strength=concrete_strength, surface=surface)
    clamping = np.multiply(bar_area, np.minimum(bar_yield, 60.0 * KSI)) + clamping_force
    return np.clip(friction * clamping, 0.0, limit)


def aashto_friction_coefficient(surface: InterfaceSurface) -> float:
    """Coefficient of friction of an interface, AASHTO LRFD, normal-weight concrete.

    Parameters
    ----------
    surface
        Contact surface.

    Returns
    -------
    float
        Coefficient mu [-].

    Raises
    ------
    DomainError
        If the surface is unknown.

    References
    ----------
    AASHTO LRFD 9th ed. (2020), 5.7.4.4 (from memory).

    Examples
    --------
    >>> aashto_friction_coefficient("smooth")
    0.6
    """
    return choose(_AASHTO_INTERFACES, surface, name="surface").friction


def aashto_interface_limits(surface: InterfaceSurface) -> InterfaceFactors:
    """Cohesion, friction and limits ``K1`` [-] and ``K2`` [MPa] of an interface, AASHTO LRFD.

    Parameters
    ----------
    surface
        Contact surface.

    Returns
    -------
    InterfaceFactors
        Figures for normal-weight concrete.

    Raises
    ------
    DomainError
        If the surface is none of those known.

    References
    ----------
    AASHTO LRFD 9th ed. (2020) 5.7.4.4 (from memory).

    Examples
    --------
    >>> aashto_interface_limits("roughened").crushing
    0.25
    """
    return choose(_AASHTO_INTERFACES, surface, name="surface")


def aashto_interface_shear_limit(
    area: Real, *, concrete_strength: Real, surface: InterfaceSurface
) -> Real:
    """Largest nominal interface shear resistance, AASHTO LRFD.

    Parameters
    ----------
    area
        Area of concrete engaged in the transfer [mm²], above zero; scalar or array.
    concrete_strength
        Specified strength of the weaker concrete [MPa], above zero.
    surface
        Contact surface.

    Returns
    -------
    Real
        Shear [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The smaller of ``K1 f'c Acv`` and ``K2 Acv``.

    References
    ----------
    AASHTO LRFD 9th ed. (2020), Eq. 5.7.4.3-4 and -5 (from memory).

    Examples
    --------
    >>> limit = aashto_interface_shear_limit(1.0, concrete_strength=30.0, surface="smooth")
    >>> round(float(limit), 3)
    5.516
    """
    require_positive(area=area, concrete_strength=concrete_strength)
    interface = choose(_AASHTO_INTERFACES, surface, name="surface")
    crushing = np.multiply(interface.crushing, concrete_strength)
    return np.minimum(crushing, interface.largest_stress) * area


def aashto_interface_shear(
    bar_area: Real,
    *,
    bar_yield: Real,
    area: Real,
    concrete_strength: Real,
    surface: InterfaceSurface,
    clamping_force: Real = 0.0,
) -> Real:
    """Nominal interface shear resistance, AASHTO LRFD.

    Parameters
    ----------
    bar_area
        Area of bars square to the interface and anchored on both sides [mm²], at least zero.
    bar_yield
        Yield strength of those bars [MPa], above zero.  The code admits at most 60 ksi (414 MPa);
        more is not counted.
    area
        Area of concrete engaged in the transfer [mm²], above zero.
    concrete_strength
        Specified strength of the weaker concrete [MPa], above zero.
    surface
        Contact surface.
    clamping_force
        Permanent net compression across the interface [N], at least zero.

    Returns
    -------
    Real
        Shear [N], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range; net tension across the interface included.

    Notes
    -----
    ``Vni = c Acv + mu (Avf fy + Pc)``, at most `aashto_interface_shear_limit`.  Cohesion counts
    only for an interface that has not slid: an interface that is already cracked, or that cyclic
    dilation will crack, must be judged without it.

    References
    ----------
    AASHTO LRFD 9th ed. (2020), Eq. 5.7.4.3-3 to -5 and 5.7.4.4 (from memory).

    Examples
    --------
    >>> strength = aashto_interface_shear(
    ...     1000.0, bar_yield=400.0, area=100e3, concrete_strength=30.0, surface="smooth")
    >>> round(float(strength) / 1e3, 1)
    291.7
    """
    require_at_least(0.0, bar_area=bar_area, clamping_force=clamping_force)
    require_positive(bar_yield=bar_yield)
    interface = choose(_AASHTO_INTERFACES, surface, name="surface")
    limit = aashto_interface_shear_limit(area, concrete_strength=concrete_strength, surface=surface)
    clamping = np.multiply(bar_area, np.minimum(bar_yield, 60.0 * KSI)) + clamping_force
    return np.minimum(np.multiply(interface.cohesion, area) + interface.friction * clamping, limit)
