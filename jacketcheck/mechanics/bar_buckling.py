"""Onset of buckling of longitudinal bars in a plastic hinge of a circular column.

Bars buckle when they are compressed after having been stretched far in tension, so that the strain
limit is one of tension reached before the reversal.  Both limits are means of test results, not
lower bounds: about half of such columns buckle earlier.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Floats, Real, require_at_least, require_positive

__all__ = ["bar_buckling_drift", "bar_buckling_strain"]

_SPIRAL_COEFFICIENT = 150.0
_LARGEST_SPACING = 6.0  # bar diameters


def bar_buckling_strain(
    axial_load: Real,
    *,
    concrete_strength: Real,
    gross_area: Real,
    hoop_ratio: Real,
    hoop_yield: Real,
    hoop_elastic_modulus: Real = 200e3,
) -> Real:
    """Tensile strain of a bar after which it buckles on reversal.

    Parameters
    ----------
    axial_load
        Axial compression [N], at least zero; scalar or array.
    concrete_strength
        Expected strength of the concrete [MPa], above zero.
    gross_area
        Gross area of the section [mm²], above zero.
    hoop_ratio
        Volumetric ratio of hoops or spiral in the hinge [-], at least zero.
    hoop_yield
        Expected yield strength of the hoops [MPa], above zero.
    hoop_elastic_modulus
        Elastic modulus of the hoops [MPa], above zero.

    Returns
    -------
    Real
        Strain [-], tension positive and at least zero, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``eps_bb = 0.03 + 700 rho_s fyhe / Es - 0.1 P / (f'ce Ag)``.  The tests were circular columns
    with hoop ratios of about 0.5 to 1.7 % and axial load ratios up to 0.2; with fewer hoops, wider
    spaced than six bar diameters, bars buckle earlier.  A limit below zero is reported as zero.

    References
    ----------
    Goodnight, Kowalsky and Nau, Strain Limit States for Circular RC Bridge Columns, Earthquake
    Spectra 32(3) (2016), 1627-1652 (from memory).

    Examples
    --------
    >>> strain = bar_buckling_strain(
    ...     3.0e6, concrete_strength=40.0, gross_area=0.75e6, hoop_ratio=0.01, hoop_yield=400.0)
    >>> round(float(strain), 4)
    0.034
    """
    require_at_least(0.0, axial_load=axial_load, hoop_ratio=hoop_ratio)
    require_positive(
        concrete_strength=concrete_strength,
        gross_area=gross_area,
        hoop_yield=hoop_yield,
        hoop_elastic_modulus=hoop_elastic_modulus,
    )
    confinement = 700.0 * np.multiply(hoop_ratio, hoop_yield) / hoop_elastic_modulus
    load_ratio = np.divide(axial_load, np.multiply(concrete_strength, gross_area))
    strain: Real = np.maximum(0.03 + confinement - 0.1 * load_ratio, 0.0)
    return strain


def bar_buckling_drift(
    axial_load: Real,
    *,
    concrete_strength: Real,
    gross_area: Real,
    hoop_ratio: Real,
    hoop_yield: Real,
    hoop_spacing: Real,
    bar_diameter: Real,
    column_diameter: Real,
    shear_span: Real,
) -> Real:
    """Drift ratio at which the bars of a circular column are likely to buckle.

    Parameters
    ----------
    axial_load
        Axial compression [N], at least zero and below the strength of the gross concrete.
    concrete_strength
        Strength of the concrete [MPa], above zero.
    gross_area
        Gross area of the section [mm²], above zero.
    hoop_ratio
        Volumetric ratio of hoops or spiral [-], at least zero.
    hoop_yield
        Yield strength of the hoops [MPa], above zero.
    hoop_spacing
        Spacing of the hoops [mm], above zero.
    bar_diameter, column_diameter
        Diameter of the longitudinal bars and of the column [mm], above zero.
    shear_span
        Hinge to the point of contraflexure [mm], above zero.

    Returns
    -------
    Real
        Drift ratio, displacement over shear span [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``0.0325 (1 + k rho_s fyh db / (f'c D)) (1 - P / (f'c Ag)) (1 + L / (10 D))`` with ``k = 150``
    for spirals and hoops, and ``k = 0`` where they are spaced wider than six bar diameters.  The
    coefficient of variation over 42 spiral-reinforced columns is 24 %.

    References
    ----------
    Berry and Eberhard, Practical Performance Model for Bar Buckling, J. Struct. Eng. 131(7)
    (2005), 1060-1070 (coefficients from memory; scatter as in the abstract).

    Examples
    --------
    >>> drift = bar_buckling_drift(
    ...     3.0e6, concrete_strength=40.0, gross_area=0.75e6, hoop_ratio=0.01, hoop_yield=400.0,
    ...     hoop_spacing=100.0, bar_diameter=32.0, column_diameter=1000.0, shear_span=5000.0)
    >>> round(float(drift), 4)
    0.0649
    """
    require_at_least(0.0, axial_load=axial_load, hoop_ratio=hoop_ratio)
    require_positive(
        concrete_strength=concrete_strength,
        gross_area=gross_area,
        hoop_yield=hoop_yield,
        hoop_spacing=hoop_spacing,
        bar_diameter=bar_diameter,
        column_diameter=column_diameter,
        shear_span=shear_span,
    )
    load_ratio = np.divide(axial_load, np.multiply(concrete_strength, gross_area))
    require_positive(reserve=1.0 - load_ratio)
    close = np.less_equal(np.divide(hoop_spacing, bar_diameter), _LARGEST_SPACING)
    coefficient: Floats = np.where(close, _SPIRAL_COEFFICIENT, 0.0)
    hoops = np.multiply(hoop_ratio, hoop_yield) / concrete_strength
    slenderness = np.divide(bar_diameter, column_diameter)
    aspect = np.divide(shear_span, np.multiply(10.0, column_diameter))
    drift: Real = (
        0.0325 * (1.0 + coefficient * hoops * slenderness) * (1.0 - load_ratio) * (1.0 + aspect)
    )
    return drift
