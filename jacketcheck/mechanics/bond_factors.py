"""Factors on the bond stress-slip law: pressure across the bar, cracks along it, yield of it."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import (
    Real,
    require_at_least,
    require_positive,
    require_within,
)
from jacketcheck.mechanics.bar_steel import SteelCurve

__all__ = [
    "LARGEST_CRACK_WIDTH",
    "longitudinal_crack_factor",
    "transverse_pressure_factor",
    "yielded_bar_factor",
]

LARGEST_CRACK_WIDTH: Final = 0.5
"""Width of cracks along a bar [mm] up to which their effect on bond is published.

fib Model Code for Concrete Structures 2010 (2013), 6.1.1.3; from memory.
"""


def transverse_pressure_factor(pressure: Real, *, concrete_strength: Real) -> Real:
    """Factor by which pressure across a bar raises its bond.

    Parameters
    ----------
    pressure
        Mean compressive stress across the bar ``p_tr``, compression counted positive [MPa], at
        least zero; scalar or array.
    concrete_strength
        Mean compressive strength of what surrounds the bar ``f_cm`` [MPa], above zero.

    Returns
    -------
    Real
        Factor from 1 to 2 [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``Omega_p,tr = 1 - tanh(0.2 p_tr / (0.1 f_cm))`` with compression negative, as the source counts
    it. Tension across the bar is not covered. The factor multiplies the whole law, so nothing else
    that stands for the same pressure may be added: no friction on the residual branch, no sleeve
    counted as transverse reinforcement.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), 6.1.1.3, influence of transverse stress;
    from memory.

    Examples
    --------
    >>> round(float(transverse_pressure_factor(3.0, concrete_strength=40.0)), 4)
    1.1489
    """
    require_at_least(0.0, pressure=pressure)
    require_positive(concrete_strength=concrete_strength)
    return 1.0 + np.tanh(0.2 * np.divide(pressure, np.multiply(0.1, concrete_strength)))


def longitudinal_crack_factor(crack_width: Real) -> Real:
    """Factor by which a crack along a bar lowers its bond.

    Parameters
    ----------
    crack_width
        Width of the crack along the bar ``w_cr`` [mm], 0 to 0.5; scalar or array.

    Returns
    -------
    Real
        Factor ``Omega_cr = 1 - 1.2 w_cr`` [-], 0.4 to 1.

    Raises
    ------
    DomainError
        If the width is below zero or above `LARGEST_CRACK_WIDTH`.

    Notes
    -----
    For wider cracks no bond is published: cracked concrete like that is to be removed.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), 6.1.1.3, influence of cracking along the
    bar; from memory, also as to the range.

    Examples
    --------
    >>> round(float(longitudinal_crack_factor(0.3)), 2)
    0.64
    """
    require_within(0.0, LARGEST_CRACK_WIDTH, crack_width=crack_width)
    return 1.0 - 1.2 * np.asarray(crack_width, dtype=float)[()]


def yielded_bar_factor(strain: Real, steel: SteelCurve) -> Real:
    """Factor by which yield of a bar lowers its bond.

    Parameters
    ----------
    strain
        Tensile strain of the bar ``eps_s`` [-], from zero to its ultimate strain; scalar or array.
    steel
        Stress-strain parameters, tensile below twice the yield strength; arrays broadcast with
        `strain`.

    Returns
    -------
    Real
        Factor ``Omega_y`` from 1 down to about 0.15 [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``1 - 0.85 (1 - exp(-5 a**b))`` with ``a = (eps_s - eps_sy) / (eps_su - eps_sy)`` and
    ``b = (2 - f_t/f_y)**2``; 1 up to yield. A bar thins as it yields and its ribs let go. Some
    authors leave ``b`` out, as if it were 1; with it, bond is lower.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), 6.1.1.3, influence of yielding; from memory.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> [round(float(yielded_bar_factor(strain, steel)), 3) for strain in (0.002, 0.0115, 0.09)]
    [1.0, 0.245, 0.156]
    """
    require_at_least(0.0, strain=strain)
    if np.any(np.greater(strain, steel.ultimate_strain)):
        raise DomainError("strain", float(np.max(strain)), "at most the ultimate strain")
    ratio = np.divide(steel.tensile_strength, steel.yield_strength)
    if np.any(ratio >= 2.0):
        raise DomainError("tensile over yield strength", float(np.max(ratio)), "below 2")
    yield_strain = np.divide(steel.yield_strength, steel.elastic_modulus)
    plastic = np.maximum(np.subtract(strain, yield_strain), 0.0)
    part = plastic / np.subtract(steel.ultimate_strain, yield_strain)
    return 1.0 - 0.85 * (1.0 - np.exp(-5.0 * part ** np.square(2.0 - ratio)))
