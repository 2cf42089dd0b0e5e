"""Plastic hinge length of a column, by several published rules.

The shear span runs from the hinge's fixed end to the point of contraflexure; for a hinge relocated
above a repair it starts at the top of the repair.  A short hinge gives a small displacement
capacity, so the shortest applicable length is the conservative one.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_at_least, require_positive
from jacketcheck.mechanics._customary_units import KSI

__all__ = [
    "guide_spec_hinge_length",
    "guide_spec_jacketed_hinge_length",
    "hardening_hinge_length",
    "hinge_length",
    "jacketed_hinge_length",
]


def hinge_length(shear_span: Real, *, expected_yield: Real, bar_diameter: Real) -> Real:
    """Plastic hinge length of a column, SI form.

    Parameters
    ----------
    shear_span
        Length from the hinge's fixed end to the point of contraflexure [mm], above zero; for a
        relocated hinge from the top of the repair.  Scalar or array.
    expected_yield
        Expected yield strength of the longitudinal bars [MPa], above zero.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Hinge length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``Lp = 0.08 L + 0.022 fye db >= 0.044 fye db``.  The second term stands for strain penetration
    into the member that anchors the bars, so no other plastic rotation by bond slip is added.

    References
    ----------
    Paulay and Priestley, Seismic Design of Reinforced Concrete and Masonry Buildings (1992),
    sec. 3.5; Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 5.

    Examples
    --------
    >>> round(float(hinge_length(6000.0, expected_yield=475.0, bar_diameter=32.0)), 1)
    814.4
    """
    return _hinge_length(shear_span, expected_yield, bar_diameter, 0.022, 0.044)


def guide_spec_hinge_length(shear_span: Real, *, expected_yield: Real, bar_diameter: Real) -> Real:
    """Plastic hinge length of a column, US form.

    Parameters
    ----------
    shear_span
        Length from the point of maximum moment to the point of contraflexure [mm], above zero.
    expected_yield
        Expected yield strength of the longitudinal bars [MPa], above zero.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Hinge length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    ``Lp = 0.08 L + 0.15 fye db >= 0.3 fye db`` in ksi and inches, converted inside.  The rounded
    coefficients make it shorter than `hinge_length` by about 1 % of the second term.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), Eq. 4.11.6-1; Caltrans SDC 1.7 (2013), 7.6.2.1.

    Examples
    --------
    >>> length = guide_spec_hinge_length(6096.0, expected_yield=468.84, bar_diameter=32.258)
    >>> round(float(length) / 25.4, 2)
    32.15
    """
    return _hinge_length(shear_span, expected_yield, bar_diameter, 0.15 / KSI, 0.3 / KSI)


def _hinge_length(
    shear_span: Real, expected_yield: Real, bar_diameter: Real, coefficient: float, least: float
) -> Real:
    """``0.08 L + coefficient fye db``, at least ``least fye db``."""
    require_positive(
        shear_span=shear_span, expected_yield=expected_yield, bar_diameter=bar_diameter
    )
    product = np.multiply(expected_yield, bar_diameter)
    return np.maximum(np.multiply(0.08, shear_span) + coefficient * product, least * product)


def hardening_hinge_length(
    shear_span: Real, *, expected_yield: Real, expected_tensile: Real, bar_diameter: Real
) -> Real:
    """Plastic hinge length that shrinks with the hardening of the bars.

    Parameters
    ----------
    shear_span
        Length from the hinge's fixed end to the point of contraflexure [mm], above zero.
    expected_yield, expected_tensile
        Expected yield and tensile strength of the longitudinal bars [MPa]; the tensile strength
        is not below the yield strength.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Hinge length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Lp = k L + Lsp >= 2 Lsp`` with ``Lsp = 0.022 fye db`` and ``k = 0.2 (fu / fy - 1) <= 0.08``:
    bars that harden little spread yield over less of the span.  Never longer than `hinge_length`.

    References
    ----------
    Priestley, Calvi and Kowalsky, Displacement-Based Seismic Design of Structures (2007),
    sec. 4.2.8.

    Examples
    --------
    >>> length = hardening_hinge_length(
    ...     6000.0, expected_yield=475.0, expected_tensile=617.5, bar_diameter=32.0)
    >>> round(float(length), 1)
    694.4
    """
    require_positive(
        shear_span=shear_span, expected_yield=expected_yield, bar_diameter=bar_diameter
    )
    require_at_least(0.0, hardening=np.subtract(expected_tensile, expected_yield))
    penetration = 0.022 * np.multiply(expected_yield, bar_diameter)
    spread = np.minimum(0.2 * (np.divide(expected_tensile, expected_yield) - 1.0), 0.08)
    return np.maximum(spread * shear_span + penetration, 2.0 * penetration)


def jacketed_hinge_length(gap: Real, *, expected_yield: Real, bar_diameter: Real) -> Real:
    """Plastic hinge length at the gap between a steel jacket and the footing, SI form.

    Parameters
    ----------
    gap
        Gap between the end of the jacket and the member that anchors the bars [mm], at least
        zero; about 50 mm is usual.
    expected_yield
        Expected yield strength of the longitudinal bars [MPa], above zero.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Hinge length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Lp = g + 0.044 fye db``: yield penetrates from the gap both ways.  For a jacket around
    undamaged bars whose hinge stays at the gap; not for a hinge relocated above the repair.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7;
    FHWA-HRT-06-032 (2006); gap after Chai, Priestley and Seible, ACI Struct. J. 88(5) (1991).

    Examples
    --------
    >>> round(float(jacketed_hinge_length(50.0, expected_yield=475.0, bar_diameter=32.0)), 1)
    718.8
    """
    return _jacketed_hinge_length(gap, expected_yield, bar_diameter, 0.044)


def guide_spec_jacketed_hinge_length(
    gap: Real, *, expected_yield: Real, bar_diameter: Real
) -> Real:
    """Plastic hinge length at the gap between a steel jacket and the footing, US form.

    Parameters
    ----------
    gap
        Gap between the end of the jacket and the member that anchors the bars [mm], at least
        zero.
    expected_yield
        Expected yield strength of the longitudinal bars [MPa], above zero.
    bar_diameter
        Diameter of the longitudinal bars [mm], above zero.

    Returns
    -------
    Real
        Hinge length [mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Lp = G + 0.3 fye db`` in ksi and inches, converted inside.

    References
    ----------
    AASHTO Guide Spec Seismic 2nd ed. (2011), 4.11.6; Caltrans SDC 1.7 (2013), 7.6.2.2.

    Examples
    --------
    >>> length = guide_spec_jacketed_hinge_length(
    ...     50.8, expected_yield=468.84, bar_diameter=35.814)
    >>> round(float(length) / 25.4, 2)
    30.76
    """
    return _jacketed_hinge_length(gap, expected_yield, bar_diameter, 0.3 / KSI)


def _jacketed_hinge_length(
    gap: Real, expected_yield: Real, bar_diameter: Real, coefficient: float
) -> Real:
    """``g + coefficient fye db``."""
    require_at_least(0.0, gap=gap)
    require_positive(expected_yield=expected_yield, bar_diameter=bar_diameter)
    return np.add(gap, coefficient * np.multiply(expected_yield, bar_diameter))
