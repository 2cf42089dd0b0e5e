"""Shear strength of a circular column in a plastic hinge, AASHTO's seismic guide specification.

The concrete's part falls as displacement ductility opens the cracks.  Strengths are nominal; the
guide specification's resistance factor is `GUIDE_SPEC_SHEAR_FACTOR`.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_finite, require_positive
from jacketcheck.mechanics._customary_units import KSI

__all__ = [
    "GUIDE_SPEC_SHEAR_FACTOR",
    "LARGEST_HOOP_STRESS",
    "guide_spec_concrete_factor",
    "guide_spec_concrete_shear",
    "guide_spec_effective_area",
    "guide_spec_hoop_shear",
]

GUIDE_SPEC_SHEAR_FACTOR: Final = 0.90
"""Resistance factor for shear (AASHTO Guide Spec Seismic 2nd ed. (2011) 8.6.1)."""

_ROOT_KSI: Final = np.sqrt(KSI)  # 1 sqrt(ksi) is this many sqrt(MPa) in MPa
_LARGEST_FACTOR: Final = 3.0
LARGEST_HOOP_STRESS: Final = 0.35 * KSI
"""Largest ``rho_s fyh`` that counts [MPa] (AASHTO Guide Spec Seismic 2nd ed. (2011) 8.6.2)."""
_SMALLEST_FACTOR: Final = 0.3


def guide_spec_effective_area(gross_area: Real) -> Real:
    """Area of the cross section that resists shear.

    Parameters
    ----------
    gross_area
        Gross area of the column [mm²], above zero; scalar or array.

    Returns
    -------
    Real
        ``Ae = 0.8 Ag`` [mm²].

    Raises
    ------
    DomainError
        If the area is not finite and above zero.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.6.2-2.

    Examples
    --------
    >>> float(guide_spec_effective_area(1.0e6))
    800000.0
    """
    require_positive(gross_area=gross_area)
    return np.multiply(0.8, gross_area)


def guide_spec_concrete_factor(ductility: Real, *, hoop_ratio: Real, hoop_yield: Real) -> Real:
    """Adjustment of the concrete's shear stress for ductility and confinement.

    Parameters
    ----------
    ductility
        Local displacement ductility demand of the column [-], at least one; scalar or array.
    hoop_ratio
        Volumetric ratio of circular hoops or spiral ``4 Asp / (s D')`` [-], at least zero.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.

    Returns
    -------
    Real
        Factor alpha' [-] between 0.3 and 3, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``alpha' = fs / 0.15 + 3.67 - mu_D`` with ``fs = rho_s fyh <= 0.35 ksi``.  Outside the plastic
    hinge region ``alpha' = 3``, which is what a ductility of one gives with common hoops.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.6.2-5 to -7.

    Examples
    --------
    >>> factor = guide_spec_concrete_factor(5.0, hoop_ratio=0.01, hoop_yield=400.0)
    >>> round(float(factor), 3)
    1.003
    """
    require_at_least(1.0, ductility=ductility)
    require_at_least(0.0, hoop_ratio=hoop_ratio)
    require_positive(hoop_yield=hoop_yield)
    stress = np.minimum(np.multiply(hoop_ratio, hoop_yield), LARGEST_HOOP_STRESS) / KSI
    return np.clip(stress / 0.15 + 3.67 - ductility, _SMALLEST_FACTOR, _LARGEST_FACTOR)


def guide_spec_concrete_shear(
    gross_area: Real, *, concrete_strength: Real, axial_load: Real, concrete_factor: Real
) -> Real:
    """Shear strength provided by the concrete of a column.

    Parameters
    ----------
    gross_area
        Gross area of the column [mm²], above zero; scalar or array.
    concrete_strength
        Specified strength [MPa], above zero.
    axial_load
        Axial load that acts with the shear [N], compression positive.
    concrete_factor
        Factor alpha' from `guide_spec_concrete_factor` [-]; 3 outside the plastic hinge region.

    Returns
    -------
    Real
        Shear [N], zero without axial compression, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Vc = vc Ae`` with ``vc = 0.032 alpha' (1 + Pu / (2 Ag)) sqrt(f'c)``, at most
    ``0.11 sqrt(f'c)`` and ``0.047 alpha' sqrt(f'c)``, in ksi.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.6.2-1 to -4.

    Examples
    --------
    >>> shear = guide_spec_concrete_shear(
    ...     1.0e6, concrete_strength=28.0, axial_load=2.0e6, concrete_factor=1.0)
    >>> round(float(shear) / 1e3)
    407
    """
    effective_area = guide_spec_effective_area(gross_area)
    require_positive(concrete_strength=concrete_strength)
    require_at_least(_SMALLEST_FACTOR, concrete_factor=concrete_factor)
    require_finite(axial_load=axial_load)
    root = _ROOT_KSI * np.sqrt(concrete_strength)
    factor = np.minimum(concrete_factor, _LARGEST_FACTOR)
    confined = 1.0 + np.divide(axial_load, np.multiply(2.0, gross_area)) / KSI
    stress = np.minimum(0.032 * factor * confined, np.minimum(0.11, 0.047 * factor)) * root
    return np.where(np.greater(axial_load, 0.0), stress, 0.0) * effective_area


def guide_spec_hoop_shear(
    bar_area: Real,
    *,
    hoop_yield: Real,
    core_diameter: Real,
    spacing: Real,
    concrete_strength: Real,
    gross_area: Real,
) -> Real:
    """Shear strength provided by circular hoops or a spiral.

    Parameters
    ----------
    bar_area
        Area of the hoop's bar [mm²], at least zero; scalar or array.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.
    core_diameter
        Diameter of the hoops between the centres of their bars [mm], above zero.
    spacing
        Spacing of the hoops, or pitch [mm], above zero.
    concrete_strength
        Specified strength [MPa], above zero.
    gross_area
        Gross area of the column [mm²], above zero.

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
    ``Vs = (pi / 2) Asp fyh D' / s`` at most ``0.25 sqrt(f'c) Ae`` in ksi.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 8.6.3-1 and 8.6.4-1.

    Examples
    --------
    >>> shear = guide_spec_hoop_shear(
    ...     200.0, hoop_yield=400.0, core_diameter=1000.0, spacing=100.0,
    ...     concrete_strength=28.0, gross_area=1.0e6)
    >>> round(float(shear) / 1e3)
    1257
    """
    require_at_least(0.0, bar_area=bar_area)
    require_positive(
        hoop_yield=hoop_yield,
        core_diameter=core_diameter,
        spacing=spacing,
        concrete_strength=concrete_strength,
    )
    force = 0.5 * np.pi * np.multiply(bar_area, hoop_yield) * core_diameter / spacing
    limit = 0.25 * _ROOT_KSI * np.sqrt(concrete_strength) * guide_spec_effective_area(gross_area)
    shear: Real = np.minimum(force, limit)
    return shear
