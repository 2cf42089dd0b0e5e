"""Shear strength of a circular column after ACI 318-19, section 22.5.

The strengths are nominal and those of a column that does not yield; for a plastic hinge use a
method that degrades with ductility.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

import numpy as np

from jacketcheck.mechanics._arguments import choose
from jacketcheck.mechanics._arrays import Real, require_at_least, require_finite, require_positive
from jacketcheck.mechanics._customary_units import INCH, KSI, PSI

__all__ = [
    "AciEdition",
    "aci_concrete_shear",
    "aci_effective_depth",
    "aci_hoop_shear",
    "aci_light_hoop_concrete_shear",
    "aci_minimum_hoop_area",
]

AciEdition: TypeAlias = Literal["318-19", "318M-19"]
"""Inch-pound edition, converted; or metric edition with its own rounded coefficients."""

_ROOT_PSI: Final = np.sqrt(PSI)  # 1 sqrt(psi) is this many sqrt(MPa) in MPa


@dataclass(frozen=True)
class _Coefficients:
    """Multiples of sqrt(f'c) [MPa], and the largest sqrt(f'c) [MPa]."""

    concrete: float
    light_hoops: float
    largest_concrete: float
    hoops: float
    largest_root: float


_COEFFICIENTS: Final[Mapping[str, _Coefficients]] = MappingProxyType(
    {
        "318-19": _Coefficients(
            2.0 * _ROOT_PSI, 8.0 * _ROOT_PSI, 5.0 * _ROOT_PSI, 8.0 * _ROOT_PSI, 100.0 * _ROOT_PSI
        ),
        "318M-19": _Coefficients(0.17, 0.66, 0.42, 0.66, 8.3),
    }
)
"""22.5.1.2, 22.5.3.1, 22.5.5.1 and Table 22.5.5.1 of each edition; metric ones from memory."""


def aci_effective_depth(diameter: Real) -> Real:
    """Effective depth of a circular section for shear.

    Parameters
    ----------
    diameter
        Diameter of the column [mm], above zero; scalar or array.

    Returns
    -------
    Real
        ``0.8 D`` [mm]; the web width that goes with it is the diameter.

    Raises
    ------
    DomainError
        If the diameter is not finite and above zero.

    References
    ----------
    ACI 318-19 22.5.2.2.

    Examples
    --------
    >>> float(aci_effective_depth(1200.0))
    960.0
    """
    require_positive(diameter=diameter)
    return np.multiply(0.8, diameter)


def aci_concrete_shear(
    diameter: Real,
    *,
    concrete_strength: Real,
    axial_load: Real = 0.0,
    lightweight_factor: Real = 1.0,
    edition: AciEdition = "318-19",
) -> Real:
    """Shear strength provided by the concrete of a column with at least minimum hoops.

    Parameters
    ----------
    diameter
        Diameter of the column [mm], above zero; scalar or array.
    concrete_strength
        Specified strength [MPa], above zero.
    axial_load
        Factored axial load that acts with the shear [N], compression positive.
    lightweight_factor
        Factor lambda for lightweight concrete [-], above zero; 1 for normal-weight concrete.
    edition
        The metric edition's rounded coefficients give 2.4 % more without axial load.

    Returns
    -------
    Real
        Shear [N], at least zero, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vc = (2 lambda sqrt(f'c) + Nu / (6 Ag)) bw d`` in psi with ``bw = D`` and ``d = 0.8 D``,
    where the axial term is at most ``0.05 f'c``, the whole at most ``5 lambda sqrt(f'c) bw d``,
    and ``sqrt(f'c)`` at most 100 psi.  Columns with fewer hoops than `aci_minimum_hoop_area` need
    `aci_light_hoop_concrete_shear`.  In hinges of special moment frames ``Vc`` may have to be
    taken as zero (18.7.6.2.1).

    References
    ----------
    ACI 318-19 Table 22.5.5.1(a), 22.5.5.1.1, 22.5.5.1.2, 22.5.3.1, 22.5.2.2; ACI 318M-19 alike.

    Examples
    --------
    >>> round(float(aci_concrete_shear(1200.0, concrete_strength=28.0)) / 1e3)
    1012
    """
    factors = choose(_COEFFICIENTS, edition, name="edition")
    root = _root(concrete_strength, lightweight_factor, factors)
    area = np.multiply(diameter, aci_effective_depth(diameter))
    axial = _axial_stress(diameter, axial_load, concrete_strength)
    return np.clip(factors.concrete * root + axial, 0.0, factors.largest_concrete * root) * area


def _root(concrete_strength: Real, lightweight_factor: Real, factors: _Coefficients) -> Real:
    """``lambda sqrt(f'c)`` [MPa] within the code's limit."""
    require_positive(concrete_strength=concrete_strength, lightweight_factor=lightweight_factor)
    root = np.minimum(np.sqrt(concrete_strength), factors.largest_root)
    return np.multiply(lightweight_factor, root)


def _axial_stress(diameter: Real, axial_load: Real, concrete_strength: Real) -> Real:
    """``Nu / (6 Ag)`` [MPa] within the code's limit."""
    require_finite(axial_load=axial_load)
    stress = np.divide(axial_load, 1.5 * np.pi * np.square(diameter))
    limited: Real = np.minimum(stress, np.multiply(0.05, concrete_strength))
    return limited


def aci_light_hoop_concrete_shear(
    diameter: Real,
    *,
    concrete_strength: Real,
    tension_bar_area: Real,
    axial_load: Real = 0.0,
    lightweight_factor: Real = 1.0,
    edition: AciEdition = "318-19",
) -> Real:
    """Shear strength provided by the concrete of a column with less than minimum hoops.

    Parameters
    ----------
    diameter
        Diameter of the column [mm], above zero; scalar or array.
    concrete_strength
        Specified strength [MPa], above zero.
    tension_bar_area
        Area of longitudinal bars farther than two thirds of the diameter from the extreme
        compressive fibre [mm²], above zero.
    axial_load
        Factored axial load that acts with the shear [N], compression positive.
    lightweight_factor
        Factor lambda for lightweight concrete [-], above zero; 1 for normal-weight concrete.
    edition
        Edition of the code.

    Returns
    -------
    Real
        Shear [N], at least zero, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vc = (8 lambda_s lambda rho_w**(1/3) sqrt(f'c) + Nu / (6 Ag)) bw d`` in psi with
    ``rho_w = As / (bw d)`` and the size effect ``lambda_s = sqrt(2 / (1 + d / 10 in)) <= 1``;
    limits as in `aci_concrete_shear`.

    References
    ----------
    ACI 318-19 Table 22.5.5.1(c), Eq. 22.5.5.1.3, R22.5.5.1; ACI 318M-19 alike.

    Examples
    --------
    >>> shear = aci_light_hoop_concrete_shear(
    ...     1200.0, concrete_strength=28.0, tension_bar_area=5000.0)
    >>> round(float(shear) / 1e3)
    427
    """
    factors = choose(_COEFFICIENTS, edition, name="edition")
    root = _root(concrete_strength, lightweight_factor, factors)
    require_positive(tension_bar_area=tension_bar_area)
    depth = aci_effective_depth(diameter)
    area = np.multiply(diameter, depth)
    axial = _axial_stress(diameter, axial_load, concrete_strength)
    size = np.minimum(np.sqrt(2.0 / (1.0 + np.divide(depth, 10.0 * INCH))), 1.0)
    stress = factors.light_hoops * size * np.cbrt(np.divide(tension_bar_area, area)) * root
    return np.clip(stress + axial, 0.0, factors.largest_concrete * root) * area


def aci_hoop_shear(
    hoop_area: Real,
    *,
    hoop_yield: Real,
    diameter: Real,
    spacing: Real,
    concrete_strength: Real,
    edition: AciEdition = "318-19",
) -> Real:
    """Shear strength provided by circular hoops or a spiral.

    Parameters
    ----------
    hoop_area
        Area of hoop crossed by a diagonal crack: twice the area of the bar [mm²], at least zero;
        scalar or array.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.  The code admits at most 420 MPa (60 ksi);
        more is not counted.
    diameter
        Diameter of the column [mm], above zero.
    spacing
        Spacing of the hoops, or pitch [mm], above zero.
    concrete_strength
        Specified strength [MPa], above zero.
    edition
        Edition of the code.

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
    ``Vs = Av fyt d / s``, at most ``8 sqrt(f'c) bw d`` in psi.

    References
    ----------
    ACI 318-19 Eq. 22.5.8.5.3, 22.5.8.5.6, 22.5.1.2; yield limit Table 20.2.2.4(a).

    Examples
    --------
    >>> shear = aci_hoop_shear(
    ...     400.0, hoop_yield=400.0, diameter=1200.0, spacing=100.0, concrete_strength=28.0)
    >>> float(shear)
    1536000.0
    """
    factors = choose(_COEFFICIENTS, edition, name="edition")
    require_at_least(0.0, hoop_area=hoop_area)
    require_positive(hoop_yield=hoop_yield, spacing=spacing)
    depth = aci_effective_depth(diameter)
    force = np.multiply(hoop_area, np.minimum(hoop_yield, 60.0 * KSI))
    limit = factors.hoops * _root(concrete_strength, 1.0, factors)
    return np.minimum(force / spacing, limit * np.asarray(diameter)) * depth


def aci_minimum_hoop_area(
    diameter: Real, *, spacing: Real, concrete_strength: Real, hoop_yield: Real
) -> Real:
    """Area of hoops crossed by a diagonal crack below which hoops count as light.

    Parameters
    ----------
    diameter
        Diameter of the column [mm], above zero; scalar or array.
    spacing
        Spacing of the hoops [mm], above zero.
    concrete_strength
        Specified strength [MPa], above zero.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.

    Returns
    -------
    Real
        Area [mm²], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    The larger of ``0.75 sqrt(f'c) bw s / fyt`` and ``50 bw s / fyt`` in psi.

    References
    ----------
    ACI 318-19 10.6.2.2.

    Examples
    --------
    >>> area = aci_minimum_hoop_area(
    ...     1200.0, spacing=100.0, concrete_strength=28.0, hoop_yield=400.0)
    >>> round(float(area), 1)
    103.4
    """
    require_positive(
        diameter=diameter,
        spacing=spacing,
        concrete_strength=concrete_strength,
        hoop_yield=hoop_yield,
    )
    stress = np.maximum(0.75 * _ROOT_PSI * np.sqrt(concrete_strength), 50.0 * PSI)
    area: Real = stress * np.multiply(diameter, spacing) / hoop_yield
    return area
