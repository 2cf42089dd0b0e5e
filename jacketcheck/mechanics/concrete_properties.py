"""Elastic modulus, strain at the peak and expected strength of concrete from its strength.

The coefficients are empirical and belong to the units in which their source prints them; each
function converts inside. Strengths are those of standard cylinders.
"""

from __future__ import annotations

from math import sqrt
from typing import Final

import numpy as np

from jacketcheck.mechanics._arrays import Real, require_positive
from jacketcheck.mechanics._customary_units import KSI, PSI

__all__ = [
    "LEAST_MODULUS_RATIO",
    "elastic_modulus_aci_customary",
    "elastic_modulus_aci_metric",
    "elastic_modulus_mander",
    "expected_concrete_strength",
    "unconfined_peak_strain",
]

_PEAK_STRAIN: Final = 0.002
"""Strain at the strength of unconfined concrete [-]: Mander, Priestley and Park 1988."""
LEAST_MODULUS_RATIO: Final = 10.0 / sqrt(60.0)
"""Least ratio of the modulus at the origin to the secant modulus at the peak [-], 1.29.

What Mander's modulus and strain give at 60 MPa, up to where they are used unchanged.
"""


def elastic_modulus_aci_metric(compressive_strength: Real) -> Real:
    """Elastic modulus of normalweight concrete by the metric edition of ACI 318.

    Parameters
    ----------
    compressive_strength
        Specified compressive strength ``f'c`` [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        Elastic modulus ``Ec`` [MPa], same shape.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    Notes
    -----
    ``Ec = 4700 sqrt(f'c)``, MPa. Normalweight concrete only. The rounded coefficient lies 0.7%
    below that of `elastic_modulus_aci_customary`.

    References
    ----------
    ACI 318M-19, Building Code Requirements for Structural Concrete (2019), 19.2.2.1(b), from
    memory.

    Examples
    --------
    >>> round(float(elastic_modulus_aci_metric(28.0)))
    24870
    """
    require_positive(compressive_strength=compressive_strength)
    return np.multiply(4700.0, np.sqrt(compressive_strength))


def elastic_modulus_aci_customary(compressive_strength: Real) -> Real:
    """Elastic modulus of normalweight concrete by the US customary edition of ACI 318.

    Parameters
    ----------
    compressive_strength
        Specified compressive strength ``f'c`` [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        Elastic modulus ``Ec`` [MPa], same shape.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    Notes
    -----
    ``Ec = 57000 sqrt(f'c)`` with both in psi, converted inside. Normalweight concrete only.

    References
    ----------
    ACI 318-19, Building Code Requirements for Structural Concrete (2019), 19.2.2.1(b), from
    memory.

    Examples
    --------
    >>> round(float(elastic_modulus_aci_customary(27.579)))
    24856
    """
    require_positive(compressive_strength=compressive_strength)
    return np.multiply(57000.0 * PSI, np.sqrt(np.divide(compressive_strength, PSI)))


def elastic_modulus_mander(unconfined_strength: Real) -> Real:
    """Elastic modulus that goes with Mander's stress-strain curve.

    Parameters
    ----------
    unconfined_strength
        Unconfined compressive strength ``f'co`` [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        Tangent modulus at the origin ``Ec`` [MPa], same shape.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    Notes
    -----
    ``Ec = 5000 sqrt(f'co)``, MPa. Popovics' curve through a peak at ``eps_co`` needs
    ``Ec > f'co / eps_co``, which `unconfined_peak_strain` sees to.

    References
    ----------
    Mander, Priestley and Park, Theoretical Stress-Strain Model for Confined Concrete,
    J. Struct. Eng. 114(8) (1988), 1804-1826.

    Examples
    --------
    >>> float(elastic_modulus_mander(36.0))
    30000.0
    """
    require_positive(unconfined_strength=unconfined_strength)
    return np.multiply(5000.0, np.sqrt(unconfined_strength))


def unconfined_peak_strain(unconfined_strength: Real, *, elastic_modulus: Real) -> Real:
    """Strain at the strength of unconfined concrete or grout.

    Parameters
    ----------
    unconfined_strength
        Unconfined compressive strength ``f'co`` [MPa], above zero; scalar or array.
    elastic_modulus
        Tangent modulus at the origin ``Ec`` [MPa], above zero.

    Returns
    -------
    Real
        Strain ``eps_co = max(0.002, 1.29 f'co / Ec)`` [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument is not finite and above zero.

    Notes
    -----
    Popovics' curve and the secant dilation model both live on the difference between the modulus
    and the secant at the peak. With 0.002 at every strength the difference vanishes at 100 MPa
    for Mander's modulus and at 88 MPa for that of ACI, and dilation without bound comes before.
    From where the ratio of the two falls below `LEAST_MODULUS_RATIO` the strain grows with the
    strength instead, as it does in tests; that the ratio stays is engineering judgement. Between 60
    and 100 MPa the strain so found, 0.0020 to 0.0026, is 78 to 92 % of that in EN 1992-1-1.

    References
    ----------
    Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826, for 0.002; growth with
    strength as in EN 1992-1-1:2004 Table 3.1, ``0.7 f_cm**0.31 <= 2.8`` per mille, from memory.

    Examples
    --------
    >>> [round(float(unconfined_peak_strain(f, elastic_modulus=5000.0 * f**0.5)), 5)
    ...  for f in (30.0, 60.0, 100.0)]
    [0.002, 0.002, 0.00258]
    """
    require_positive(unconfined_strength=unconfined_strength, elastic_modulus=elastic_modulus)
    least = LEAST_MODULUS_RATIO * np.divide(unconfined_strength, elastic_modulus)
    return np.maximum(_PEAK_STRAIN, least)


def expected_concrete_strength(compressive_strength: Real) -> Real:
    """Expected strength of the concrete in a column, for seismic analysis.

    Parameters
    ----------
    compressive_strength
        Specified compressive strength ``f'c`` [MPa], above zero; scalar or array.

    Returns
    -------
    Real
        Expected strength ``f'ce`` [MPa], same shape.

    Raises
    ------
    DomainError
        If the strength is not finite and above zero.

    Notes
    -----
    ``f'ce = max(1.3 f'c, 5 ksi)``. The lower bound speaks of concrete that has aged; a core test
    overrides it. It raises a strength below 26.5 MPa by more than 30%, which is not conservative
    for a column known to have weak concrete.

    References
    ----------
    Caltrans Seismic Design Criteria, versions 1.x, 3.2.6, from memory.

    Examples
    --------
    >>> round(float(expected_concrete_strength(40.0)), 1)
    52.0
    """
    require_positive(compressive_strength=compressive_strength)
    return np.maximum(np.multiply(1.3, compressive_strength), 5.0 * KSI)
