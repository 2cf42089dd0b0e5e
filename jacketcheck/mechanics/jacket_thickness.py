"""Thickness of a continuous jacket by published rules of thumb.

They size a welded, continuous jacket in one step and are a cross-check here: a bolted sleeve also
has to hold at its seams, and dilation is checked with its own pressure.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics.clamping import CLAMPING_HOOP_STRAIN

__all__ = ["clamping_thickness", "confinement_thickness"]


def confinement_thickness(
    ultimate_axial_strain: Real,
    *,
    diameter: Real,
    confined_strength: Real,
    yield_strength: Real,
    steel_ultimate_strain: Real,
) -> Real:
    """Jacket thickness for a wanted ultimate axial strain.

    Parameters
    ----------
    ultimate_axial_strain
        Axial strain that the core must reach ``eps_cm`` [-], at least 0.004; scalar or array.
    diameter
        Inner diameter of the jacket [mm], above zero.
    confined_strength
        Confined strength ``f'cc`` [MPa], above zero; it depends on the thickness in turn.
    yield_strength
        Yield strength of the jacket [MPa], above zero.
    steel_ultimate_strain
        Strain of the jacket steel at its tensile strength ``eps_sm`` [-], above zero.

    Returns
    -------
    Real
        Thickness [mm], broadcast over the arguments; zero for a strain of 0.004.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``t = 0.18 (eps_cm - 0.004) D f'cc / (f_y eps_sm)``. The exact inverse of
    `jacketcheck.mechanics.confinement.ultimate_strain` has 1/5.6 = 0.1786 for the coefficient; the
    printed, rounded one is kept, 0.8% on the safe side.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7;
    FHWA-HRT-06-032, Seismic Retrofitting Manual for Highway Structures, Part 1 (2006); both from
    memory.

    Examples
    --------
    >>> value = confinement_thickness(
    ...     0.015, diameter=1200.0, confined_strength=45.0, yield_strength=250.0,
    ...     steel_ultimate_strain=0.12)
    >>> round(float(value), 2)
    3.56
    """
    require_at_least(0.004, ultimate_axial_strain=ultimate_axial_strain)
    require_positive(
        diameter=diameter,
        confined_strength=confined_strength,
        yield_strength=yield_strength,
        steel_ultimate_strain=steel_ultimate_strain,
    )
    wanted = 0.18 * np.subtract(ultimate_axial_strain, 0.004)
    energy = np.multiply(yield_strength, steel_ultimate_strain)
    return wanted * np.multiply(diameter, confined_strength) / energy


def clamping_thickness(
    clamping_pressure: Real,
    *,
    column_hoop_pressure: Real,
    diameter: Real,
    elastic_modulus: Real,
    hoop_strain: Real = CLAMPING_HOOP_STRAIN,
) -> Real:
    """Jacket thickness that supplies a clamping pressure at a given hoop strain.

    Parameters
    ----------
    clamping_pressure
        Required pressure from `jacketcheck.mechanics.clamping.required_clamping_pressure` [MPa],
        at least zero; scalar or array.
    column_hoop_pressure
        Part that the column's own hoops supply [MPa], at least zero.
    diameter
        Inner diameter of the jacket [mm], above zero.
    elastic_modulus
        Elastic modulus of the jacket [MPa], above zero.
    hoop_strain
        Hoop strain [-], above zero and not above yield.

    Returns
    -------
    Real
        Thickness [mm], broadcast over the arguments; zero where the hoops alone suffice.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``t = D (f_l - f_h) / (2 eps E)``; at a strain of 0.001 the printed ``500 D (f_l - f_h) / E``.
    Seams that open are not in it: a bolted sleeve needs more.

    References
    ----------
    Seible, Priestley, Hegemier and Innamorato, Seismic Retrofit of RC Columns with Continuous
    Carbon Fiber Jackets, J. Compos. Constr. 1(2) (1997), 52-62, from memory.

    Examples
    --------
    >>> float(clamping_thickness(
    ...     2.0, column_hoop_pressure=0.0, diameter=1200.0, elastic_modulus=200e3))
    6.0
    """
    require_at_least(
        0.0, clamping_pressure=clamping_pressure, column_hoop_pressure=column_hoop_pressure
    )
    require_positive(diameter=diameter, elastic_modulus=elastic_modulus, hoop_strain=hoop_strain)
    missing = np.maximum(np.subtract(clamping_pressure, column_hoop_pressure), 0.0)
    return missing * diameter / (2.0 * np.multiply(hoop_strain, elastic_modulus))
