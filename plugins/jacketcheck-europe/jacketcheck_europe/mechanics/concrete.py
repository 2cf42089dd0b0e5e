"""Design strengths of concrete."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.plugin import Real, require_at_least, require_positive, require_within

__all__ = [
    "LARGEST_STRENGTH_FOR_BOND",
    "characteristic_tensile_strength",
    "design_compressive_strength",
    "strut_effectiveness",
]

LARGEST_STRENGTH_FOR_BOND: Final = 60.0
"""Cylinder strength up to which tensile strength counts for bond [MPa]
(EN 1992-1-1:2004 8.4.2(2))."""

_LOWEST: Final = 12.0
_HIGHEST: Final = 90.0
_NORMAL: Final = 50.0


def characteristic_tensile_strength(concrete_strength: Real) -> Real:
    """Lower characteristic tensile strength of concrete, the 5% fractile.

    Parameters
    ----------
    concrete_strength
        Characteristic cylinder strength f_ck [MPa], from 12 to 90; scalar or array.

    Returns
    -------
    Real
        f_ctk,0.05 [MPa], shaped like the argument.

    Raises
    ------
    DomainError
        If the strength lies outside the range of the standard.

    Notes
    -----
    ``0.7 f_ctm`` with ``f_ctm = 0.30 f_ck**(2/3)`` up to C50/60 and
    ``2.12 ln(1 + (f_ck + 8)/10)`` above. The printed table rounds to 0.1 MPa, at C20/25 by 3%.

    References
    ----------
    EN 1992-1-1:2004, Table 3.1.

    Examples
    --------
    >>> round(float(characteristic_tensile_strength(30.0)), 2)
    2.03
    """
    require_within(_LOWEST, _HIGHEST, concrete_strength=concrete_strength)
    normal = 0.30 * np.power(concrete_strength, 2.0 / 3.0)
    high = 2.12 * np.log1p(np.add(concrete_strength, 8.0) / 10.0)
    return 0.7 * np.where(np.less_equal(concrete_strength, _NORMAL), normal, high)


def design_compressive_strength(
    concrete_strength: Real, *, coefficient: Real, partial_factor: Real
) -> Real:
    """Design compressive strength of concrete.

    Parameters
    ----------
    concrete_strength
        Characteristic cylinder strength f_ck [MPa], above zero; scalar or array.
    coefficient
        α_cc [-], above zero.
    partial_factor
        γ_C [-], above zero.

    Returns
    -------
    Real
        ``f_cd = α_cc f_ck / γ_C`` [MPa].

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    References
    ----------
    EN 1992-1-1:2004, Eq. 3.15.

    Examples
    --------
    >>> float(design_compressive_strength(30.0, coefficient=0.85, partial_factor=1.5))
    17.0
    """
    require_positive(
        concrete_strength=concrete_strength, coefficient=coefficient, partial_factor=partial_factor
    )
    return np.multiply(coefficient, concrete_strength) / partial_factor


def strut_effectiveness(concrete_strength: Real) -> Real:
    """Strength reduction of concrete cracked in shear.

    Parameters
    ----------
    concrete_strength
        Characteristic cylinder strength f_ck [MPa], at least zero and below 250; scalar or array.

    Returns
    -------
    Real
        ``ν = 0.6 (1 - f_ck/250)`` [-].

    Raises
    ------
    DomainError
        If the strength lies outside its range.

    References
    ----------
    EN 1992-1-1:2004, Eq. 6.6N.

    Examples
    --------
    >>> round(float(strut_effectiveness(30.0)), 3)
    0.528
    """
    require_at_least(0.0, concrete_strength=concrete_strength)
    share = 1.0 - np.divide(concrete_strength, 250.0)
    require_positive(remaining_share=share)
    return 0.6 * share
