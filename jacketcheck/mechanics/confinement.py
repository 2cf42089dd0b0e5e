"""Strength, strain and stress of concrete under a given lateral pressure, after Mander.

Everything here takes the pressure as known; `jacketcheck.mechanics.lateral_pressure` gives the
pressure of yielding hoops and jackets, `jacketcheck.mechanics.dilation` the one that a dilating
core calls up. Compression is positive.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Real, reject, require_at_least, require_positive

__all__ = [
    "PRESSURE_RATIO_LIMIT",
    "STRENGTH_RATIO_LIMIT",
    "combined_ultimate_strain",
    "confined_peak_strain",
    "confined_strength",
    "confined_stress",
    "popovics_stress",
    "pressure_ratio_for_strength_ratio",
    "strength_ratio",
    "ultimate_strain",
]

_PEAK_ROOT: Final = 2.254 * 7.94 / 4.0
PRESSURE_RATIO_LIMIT: Final = (_PEAK_ROOT**2 - 1.0) / 7.94
"""Largest pressure ratio ``f'l / f'co`` [-] of `strength_ratio`, 2.395: its curve peaks there."""
STRENGTH_RATIO_LIMIT: Final = -1.254 + 2.254 * _PEAK_ROOT - 2.0 * PRESSURE_RATIO_LIMIT
"""Strength ratio ``f'cc / f'co`` [-] at `PRESSURE_RATIO_LIMIT`."""


def strength_ratio_unchecked(pressure_ratio: Real) -> Real:
    """`strength_ratio` without its range checks, for iterations that have made them [-]."""
    root = np.sqrt(1.0 + np.multiply(7.94, pressure_ratio))
    ratio = 2.254 * root - 1.254 - np.multiply(2.0, pressure_ratio)
    return np.maximum(ratio, 1.0)  # a pressure below rounding must not round it down


def strength_ratio(pressure_ratio: Real) -> Real:
    """Confined over unconfined strength.

    Parameters
    ----------
    pressure_ratio
        Lateral pressure over unconfined strength ``x = f'l / f'co`` [-], from zero to
        `PRESSURE_RATIO_LIMIT`; scalar or array.

    Returns
    -------
    Real
        ``f'cc / f'co`` [-], same shape.

    Raises
    ------
    DomainError
        If the ratio is not finite or lies outside its range.

    Notes
    -----
    ``f'cc / f'co = -1.254 + 2.254 sqrt(1 + 7.94 x) - 2 x`` for equal pressure all around. The
    curve rises up to ``x = 2.395``, far beyond any jacket; more is an error.

    References
    ----------
    Mander, Priestley and Park, Theoretical Stress-Strain Model for Confined Concrete,
    J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> round(float(strength_ratio(0.1)), 4)
    1.565
    """
    require_at_least(0.0, pressure_ratio=pressure_ratio)
    if np.any(np.greater(pressure_ratio, PRESSURE_RATIO_LIMIT)):
        worst = float(np.max(pressure_ratio))
        raise DomainError("pressure_ratio", worst, f"at most {PRESSURE_RATIO_LIMIT:.3f}")
    return strength_ratio_unchecked(pressure_ratio)


def pressure_ratio_for_strength_ratio(strength_ratio: Real) -> Real:
    """Pressure ratio that gives a wanted strength ratio; the inverse of `strength_ratio`.

    Parameters
    ----------
    strength_ratio
        Confined over unconfined strength [-], from one to `STRENGTH_RATIO_LIMIT`; scalar or
        array.

    Returns
    -------
    Real
        ``f'l / f'co`` [-], same shape.

    Raises
    ------
    DomainError
        If the ratio is not finite or lies outside its range.

    Notes
    -----
    With ``s = sqrt(1 + 7.94 x)`` the curve is a quadratic in ``s``; its smaller root is the one on
    the rising branch.

    References
    ----------
    Closed-form inverse of the equation cited in `strength_ratio`.

    Examples
    --------
    >>> round(float(pressure_ratio_for_strength_ratio(1.5)), 5)
    0.08641
    """
    require_at_least(1.0, strength_ratio=strength_ratio)
    if np.any(np.greater(strength_ratio, STRENGTH_RATIO_LIMIT)):
        worst = float(np.max(strength_ratio))
        raise DomainError("strength_ratio", worst, f"at most {STRENGTH_RATIO_LIMIT:.3f}")
    below_peak = np.subtract(STRENGTH_RATIO_LIMIT, strength_ratio)
    root = _PEAK_ROOT - np.sqrt(below_peak * (7.94 / 2.0))
    return (np.square(root) - 1.0) / 7.94


def confined_strength(unconfined_strength: Real, *, lateral_pressure: Real) -> Real:
    """Strength of concrete under a constant lateral pressure.

    Parameters
    ----------
    unconfined_strength
        Unconfined strength ``f'co`` [MPa], above zero; scalar or array.
    lateral_pressure
        Effective lateral pressure ``f'l`` [MPa], at least zero.

    Returns
    -------
    Real
        Confined strength ``f'cc`` [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range, or the pressure exceeds `PRESSURE_RATIO_LIMIT`
        times the strength.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> round(float(confined_strength(30.0, lateral_pressure=3.0)), 2)
    46.95
    """
    require_positive(unconfined_strength=unconfined_strength)
    ratio = strength_ratio(np.divide(lateral_pressure, unconfined_strength))
    return np.multiply(unconfined_strength, ratio)


def confined_peak_strain(strength_ratio: Real, *, unconfined_peak_strain: Real = 0.002) -> Real:
    """Axial strain at the confined strength.

    Parameters
    ----------
    strength_ratio
        Confined over unconfined strength ``f'cc / f'co`` [-], at least one; scalar or array.
    unconfined_peak_strain
        Strain ``eps_co`` at the unconfined strength [-], above zero.

    Returns
    -------
    Real
        Strain ``eps_cc`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``eps_cc = eps_co [1 + 5 (f'cc / f'co - 1)]``.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> round(float(confined_peak_strain(1.5)), 6)
    0.007
    """
    require_at_least(1.0, strength_ratio=strength_ratio)
    require_positive(unconfined_peak_strain=unconfined_peak_strain)
    return np.multiply(unconfined_peak_strain, np.multiply(5.0, strength_ratio) - 4.0)


def popovics_stress(
    strain: Real, *, peak_stress: Real, peak_strain: Real, elastic_modulus: Real
) -> Real:
    """Stress on Popovics' curve through a given peak.

    Parameters
    ----------
    strain
        Axial strain [-], at least zero; scalar or array.
    peak_stress
        Stress at the peak [MPa], above zero.
    peak_strain
        Strain at the peak [-], above zero.
    elastic_modulus
        Tangent modulus at the origin [MPa], above ``peak_stress / peak_strain``.

    Returns
    -------
    Real
        Stress [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``f = f_peak x r / (r - 1 + x**r)`` with ``x = eps / eps_peak`` and ``r = Ec / (Ec - Esec)``.

    References
    ----------
    Popovics, A Numerical Approach to the Complete Stress-Strain Curve of Concrete, Cement and
    Concrete Research 3(5) (1973), 583-599.

    Examples
    --------
    >>> float(popovics_stress(
    ...     0.002, peak_stress=30.0, peak_strain=0.002, elastic_modulus=27e3))
    30.0
    """
    require_at_least(0.0, strain=strain)
    require_positive(
        peak_stress=peak_stress, peak_strain=peak_strain, elastic_modulus=elastic_modulus
    )
    secant = np.divide(peak_stress, peak_strain)
    steeper = np.asarray(np.subtract(elastic_modulus, secant))
    softer = steeper <= 0.0
    if np.any(softer):
        shown = float(np.broadcast_to(secant, softer.shape)[softer].flat[0])
        reject(softer, f"above the secant {shown:g}", elastic_modulus=elastic_modulus)
    r = elastic_modulus / steeper
    x = np.divide(strain, peak_strain)
    return np.multiply(peak_stress, x) * r / (r - 1.0 + np.power(x, r))


def confined_stress(
    strain: Real,
    *,
    lateral_pressure: Real,
    unconfined_strength: Real,
    elastic_modulus: Real,
    unconfined_peak_strain: Real = 0.002,
) -> Real:
    """Axial stress of concrete under a constant lateral pressure.

    Parameters
    ----------
    strain
        Axial strain [-], at least zero; scalar or array.
    lateral_pressure
        Effective lateral pressure [MPa], at least zero.
    unconfined_strength
        Unconfined strength ``f'co`` [MPa], above zero.
    elastic_modulus
        Tangent modulus ``Ec`` [MPa], above ``f'co / eps_co``.
    unconfined_peak_strain
        Strain ``eps_co`` at the unconfined strength [-], above zero.

    Returns
    -------
    Real
        Stress [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Popovics' curve through the confined peak. Well before the peak a higher pressure gives a
    slightly lower stress at the same strain: the curve is fitted to the peak, not to its rise.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> stress = confined_stress(
    ...     0.01, lateral_pressure=3.0, unconfined_strength=30.0, elastic_modulus=27386.0)
    >>> round(float(stress), 2)
    46.5
    """
    require_positive(unconfined_strength=unconfined_strength)
    ratio = strength_ratio(np.divide(lateral_pressure, unconfined_strength))
    peak_strain = confined_peak_strain(ratio, unconfined_peak_strain=unconfined_peak_strain)
    return popovics_stress(
        strain,
        peak_stress=np.multiply(unconfined_strength, ratio),
        peak_strain=peak_strain,
        elastic_modulus=elastic_modulus,
    )


def ultimate_strain(
    *,
    volumetric_ratio: Real,
    yield_strength: Real,
    steel_ultimate_strain: Real,
    confined_strength: Real,
) -> Real:
    """Axial strain at which the confining steel is taken to fracture.

    Parameters
    ----------
    volumetric_ratio
        Volume of confining steel over volume of confined concrete ``rho_s`` [-], at least zero;
        scalar or array.
    yield_strength
        Yield strength of that steel [MPa], above zero.
    steel_ultimate_strain
        Its strain at the tensile strength ``eps_su`` [-], above zero.
    confined_strength
        Confined strength ``f'cc`` [MPa], above zero.

    Returns
    -------
    Real
        Ultimate axial strain ``eps_cu`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``eps_cu = 0.004 + 1.4 rho_s f_y eps_su / f'cc``: energy that the steel can take up against
    energy that the concrete needs. An estimate on the low side for columns in bending.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 5;
    FHWA-HRT-06-032, Seismic Retrofitting Manual for Highway Structures, Part 1 (2006); both from
    memory.

    Examples
    --------
    >>> value = ultimate_strain(
    ...     volumetric_ratio=0.0333, yield_strength=250.0, steel_ultimate_strain=0.12,
    ...     confined_strength=52.1)
    >>> round(float(value), 4)
    0.0308
    """
    require_at_least(0.0, volumetric_ratio=volumetric_ratio)
    require_positive(
        yield_strength=yield_strength,
        steel_ultimate_strain=steel_ultimate_strain,
        confined_strength=confined_strength,
    )
    energy = np.multiply(volumetric_ratio, yield_strength) * steel_ultimate_strain
    return 0.004 + 1.4 * energy / confined_strength


def combined_ultimate_strain(
    *,
    hoop_volumetric_ratio: Real,
    hoop_yield_strength: Real,
    hoop_ultimate_strain: Real,
    jacket_volumetric_ratio: Real,
    jacket_yield_strength: Real,
    jacket_ultimate_strain: Real,
    confined_strength: Real,
) -> Real:
    """Axial strain at which the first of hoops and jacket is taken to fracture.

    Parameters
    ----------
    hoop_volumetric_ratio
        Volumetric ratio of the column's hoops or spiral [-], at least zero; scalar or array.
    hoop_yield_strength
        Their yield strength [MPa], above zero.
    hoop_ultimate_strain
        Their strain at the tensile strength [-], above zero.
    jacket_volumetric_ratio
        Volumetric ratio of the jacket [-], at least zero.
    jacket_yield_strength
        Its yield strength [MPa], above zero.
    jacket_ultimate_strain
        Its strain at the tensile strength [-], above zero.
    confined_strength
        Confined strength under both pressures together [MPa], above zero.

    Returns
    -------
    Real
        Ultimate axial strain [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    Both stretch alike as the core dilates, so both are counted up to the smaller of their ultimate
    strains; the energy left in the more ductile one is not counted. That choice is ours and
    conservative; the sources treat one kind of steel at a time. A steel with a ratio of zero is
    absent and its ultimate strain does not count.

    References
    ----------
    `ultimate_strain`, extended to two steels.

    Examples
    --------
    >>> value = combined_ultimate_strain(
    ...     hoop_volumetric_ratio=0.005, hoop_yield_strength=420.0, hoop_ultimate_strain=0.09,
    ...     jacket_volumetric_ratio=0.02, jacket_yield_strength=250.0,
    ...     jacket_ultimate_strain=0.12, confined_strength=50.0)
    >>> round(float(value), 5)
    0.02189
    """
    require_at_least(
        0.0,
        hoop_volumetric_ratio=hoop_volumetric_ratio,
        jacket_volumetric_ratio=jacket_volumetric_ratio,
    )
    require_positive(
        hoop_yield_strength=hoop_yield_strength,
        hoop_ultimate_strain=hoop_ultimate_strain,
        jacket_yield_strength=jacket_yield_strength,
        jacket_ultimate_strain=jacket_ultimate_strain,
        confined_strength=confined_strength,
    )
    has_hoops = np.greater(hoop_volumetric_ratio, 0.0)
    has_jacket = np.greater(jacket_volumetric_ratio, 0.0)
    first_fracture = np.minimum(
        np.where(has_hoops, hoop_ultimate_strain, jacket_ultimate_strain),
        np.where(has_jacket, jacket_ultimate_strain, hoop_ultimate_strain),
    )
    hoop_force = np.multiply(hoop_volumetric_ratio, hoop_yield_strength)
    jacket_force = np.multiply(jacket_volumetric_ratio, jacket_yield_strength)
    return 0.004 + 1.4 * (hoop_force + jacket_force) * first_fracture / confined_strength
