"""Steel jackets and clamping of lap splices, EN 1998-3 Annex A."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive

__all__ = [
    "CLAMPING_STRAIN",
    "JACKET_LENGTH_OVER_LAP",
    "JACKET_STRESS_SHARE",
    "lap_clamping_stress",
    "lap_clamping_thickness",
]

JACKET_STRESS_SHARE: Final = 0.5
"""Share of the jacket's yield strength that counts for shear, so that it stays well within its
elastic range (EN 1998-3:2005 A.4.3.2(2), from memory)."""

JACKET_LENGTH_OVER_LAP: Final = 1.5
"""Length of a jacket over that of the lap which it clamps (EN 1998-3:2005 A.4.3.3, from memory)."""

CLAMPING_STRAIN: Final = 0.001
"""Strain of the wrapping up to which it clamps a lap [-] (EN 1998-3:2005 A.4.4.4, from memory)."""


def lap_clamping_stress(
    bar_area: Real,
    *,
    yield_strength: Real,
    bar_count: Real,
    perimeter: Real,
    bar_diameter: Real,
    cover: Real,
    lap_length: Real,
) -> Real:
    """Clamping stress over the length of a lap that lets its bars yield.

    Parameters
    ----------
    bar_area
        Area of one lapped bar A_s [mm²], above zero; scalar or array.
    yield_strength
        Yield strength of the bars f_yL [MPa], above zero.
    bar_count
        Number of lapped bars n, at least one.
    perimeter
        Perimeter of the section along the inside of the bars p [mm], above zero.
    bar_diameter
        Bar diameter d_bL [mm], above zero.
    cover
        Cover of the bars c [mm], at least zero.
    lap_length
        Length of the lap L_s [mm], above zero.

    Returns
    -------
    Real
        σ_l [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``σ_l = A_s f_yL / {[p/(2n) + 2 (d_bL + c)] L_s}``, printed for wrapping with fibre reinforced
    polymers; the splitting crack around a bar does not know of what the wrap is made.

    References
    ----------
    EN 1998-3:2005, A.4.4.4, Eq. A.36, from memory; the same as in Seible, Priestley, Hegemier and
    Innamorato, J. Compos. Constr. 1(2) (1997), 52-62.

    Examples
    --------
    >>> stress = lap_clamping_stress(
    ...     804.25, yield_strength=300.0, bar_count=20, perimeter=3355.2, bar_diameter=32.0,
    ...     cover=50.0, lap_length=640.0)
    >>> round(float(stress), 3)
    1.521
    """
    require_positive(
        bar_area=bar_area,
        yield_strength=yield_strength,
        perimeter=perimeter,
        bar_diameter=bar_diameter,
        lap_length=lap_length,
    )
    require_at_least(1.0, bar_count=bar_count)
    require_at_least(0.0, cover=cover)
    crack = np.divide(perimeter, np.multiply(2.0, bar_count)) + 2.0 * np.add(bar_diameter, cover)
    return np.multiply(bar_area, yield_strength) / (crack * lap_length)


def lap_clamping_thickness(
    clamping_stress: Real,
    *,
    diameter: Real,
    elastic_modulus: Real,
    hoop_stress: Real = 0.0,
) -> Real:
    """Thickness of a wrap around a circular column that clamps a lap.

    Parameters
    ----------
    clamping_stress
        σ_l from `lap_clamping_stress` [MPa], at least zero; scalar or array.
    diameter
        Diameter D [mm], above zero.
    elastic_modulus
        Young's modulus of the wrap [MPa], above zero.
    hoop_stress
        Clamping by the column's own hoops σ_sw [MPa], at least zero.

    Returns
    -------
    Real
        Thickness [mm], at least zero, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite or lies outside its range.

    Notes
    -----
    ``t = D (σ_l - σ_sw) / (2 E 0.001)``.

    References
    ----------
    EN 1998-3:2005, A.4.4.4, Eq. A.35, from memory.

    Examples
    --------
    >>> float(lap_clamping_thickness(2.0, diameter=1200.0, elastic_modulus=200e3))
    6.0
    """
    require_at_least(0.0, clamping_stress=clamping_stress, hoop_stress=hoop_stress)
    require_positive(diameter=diameter, elastic_modulus=elastic_modulus)
    missing = np.maximum(np.subtract(clamping_stress, hoop_stress), 0.0)
    return np.multiply(diameter, missing) / (2.0 * CLAMPING_STRAIN * np.asarray(elastic_modulus))
