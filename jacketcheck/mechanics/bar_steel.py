"""Stress-strain curve of reinforcing bars under monotonic loading, and its inverse.

Elastic branch, yield plateau, strain hardening up to fracture. Tension is positive.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from jacketcheck.mechanics._arrays import (
    Real,
    reject,
    require_at_least,
    require_finite,
    require_positive,
)

__all__ = ["BarSteel", "BarSteels", "SteelCurve", "bar_strain_at_stress", "bar_stress"]


class SteelCurve(Protocol):
    """What the formulas need to know of a steel; `BarSteel` and `BarSteels` both have it."""

    @property
    def yield_strength(self) -> Real:
        """Stress of the yield plateau ``f_y`` [MPa]."""

    @property
    def tensile_strength(self) -> Real:
        """Largest stress ``f_u`` [MPa]."""

    @property
    def hardening_strain(self) -> Real:
        """Strain at which the plateau ends ``eps_sh`` [-]."""

    @property
    def ultimate_strain(self) -> Real:
        """Strain at which the bar fractures ``eps_su`` [-]."""

    @property
    def elastic_modulus(self) -> Real:
        """Elastic modulus ``E_s`` [MPa]."""

    @property
    def hardening_exponent(self) -> Real:
        """Exponent of the hardening branch ``P`` [-]."""


@dataclass(frozen=True)
class BarSteel:
    """Steel of one bar size: plain numbers, so that it can be hashed and compared.

    Attributes
    ----------
    yield_strength, tensile_strength
        Stress of the plateau ``f_y`` and largest stress ``f_u`` [MPa], ``0 < f_y <= f_u``.
    hardening_strain, ultimate_strain
        End of the plateau ``eps_sh`` and fracture ``eps_su`` [-],
        ``f_y / E_s <= eps_sh < eps_su``.
    elastic_modulus
        Elastic modulus ``E_s`` [MPa], above zero.
    hardening_exponent
        Exponent of the hardening branch ``P`` [-], at least one; 2 is Caltrans's parabola.

    Raises
    ------
    DomainError
        If a number lies outside its range.
    """

    yield_strength: float
    tensile_strength: float
    hardening_strain: float
    ultimate_strain: float
    elastic_modulus: float
    hardening_exponent: float = 2.0

    def __post_init__(self) -> None:
        """Reject numbers that make no curve."""
        _require_curve(self)


@dataclass(frozen=True, eq=False)
class BarSteels:
    """Steel of many bars or designs: `BarSteel` with a number or an array for each quantity.

    Attributes
    ----------
    yield_strength, tensile_strength
        Stress of the plateau and largest stress [MPa].
    hardening_strain, ultimate_strain
        End of the plateau and fracture [-].
    elastic_modulus
        Elastic modulus [MPa].
    hardening_exponent
        Exponent of the hardening branch [-].

    Raises
    ------
    DomainError
        If a number lies outside the range given for `BarSteel`.
    """

    yield_strength: Real
    tensile_strength: Real
    hardening_strain: Real
    ultimate_strain: Real
    elastic_modulus: Real
    hardening_exponent: Real = 2.0

    def __post_init__(self) -> None:
        """Reject numbers that make no curve."""
        _require_curve(self)


def bar_stress(strain: Real, steel: SteelCurve) -> Real:
    """Stress of a reinforcing bar strained once, without unloading.

    Parameters
    ----------
    strain
        Strain, tension positive [-], finite; scalar or array.
    steel
        Parameters of the curve; arrays broadcast with `strain`.

    Returns
    -------
    Real
        Stress, tension positive [MPa], broadcast over the arguments. Zero beyond the ultimate
        strain in tension, where the bar has fractured; at exactly that strain the tensile strength.

    Raises
    ------
    DomainError
        If a strain is not finite.

    Notes
    -----
    ``E_s eps`` up to yield, ``f_y`` up to ``eps_sh``, then
    ``f_u - (f_u - f_y) ((eps_su - eps) / (eps_su - eps_sh))**P`` with ``P = 2`` unless the steel
    says otherwise. Compression mirrors tension, except that a bar does not fracture: beyond
    ``-eps_su`` the stress stays at ``-f_u``. Buckling and cycles are not covered.

    References
    ----------
    Caltrans Seismic Design Criteria 1.7 (2013), 3.2.2; Priestley, Calvi and Kowalsky,
    Displacement-Based Seismic Design of Structures (2007), ch. 4; general exponent: Mander,
    Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826; all from memory.

    Examples
    --------
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> float(bar_stress(0.001, steel)), float(bar_stress(0.01, steel))
    (200.0, 469.0)
    >>> float(bar_stress(0.09, steel)), float(bar_stress(0.091, steel))
    (655.0, 0.0)
    """
    require_finite(strain=strain)
    size = np.abs(strain)
    elastic = np.minimum(np.multiply(steel.elastic_modulus, size), steel.yield_strength)
    range_left = np.subtract(steel.ultimate_strain, steel.hardening_strain)
    left = np.clip(np.subtract(steel.ultimate_strain, size) / range_left, 0.0, 1.0)
    gain = np.subtract(steel.tensile_strength, steel.yield_strength)
    hardened = steel.tensile_strength - gain * left**steel.hardening_exponent
    stress = np.copysign(np.where(left < 1.0, hardened, elastic), strain)
    return np.where(np.greater(strain, steel.ultimate_strain), 0.0, stress)[()]


def bar_strain_at_stress(stress: Real, steel: SteelCurve) -> Real:
    """Strain at which a bar first carries a given stress; the inverse of `bar_stress`.

    Parameters
    ----------
    stress
        Stress, tension positive [MPa], not above the tensile strength in size; scalar or array.
    steel
        Parameters of the curve; arrays broadcast with `stress`.

    Returns
    -------
    Real
        Strain, tension positive [-], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a stress is not finite or exceeds the tensile strength.

    Notes
    -----
    Below ``f_y`` the elastic strain; from ``f_y`` on
    ``eps_su - (eps_su - eps_sh) ((f_u - f) / (f_u - f_y))**(1/P)``. On the plateau one stress has
    many strains: at exactly ``f_y`` the answer is its end, the onset of hardening, because along
    a bar in bond, where the stress rises steadily, the strain jumps there from ``f_y / E_s`` to
    ``eps_sh``.

    References
    ----------
    As `bar_stress`.

    Examples
    --------
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> float(bar_strain_at_stress(200.0, steel)), float(bar_strain_at_stress(469.0, steel))
    (0.001, 0.0115)
    """
    require_finite(stress=stress)
    size = np.abs(stress)
    beyond = np.greater(size, steel.tensile_strength)
    reject(beyond, "not above the tensile strength in size", stress=stress)
    gain = np.subtract(steel.tensile_strength, steel.yield_strength)
    left = np.clip(np.subtract(steel.tensile_strength, size) / np.where(gain > 0, gain, 1.0), 0, 1)
    left = np.where(gain > 0.0, left, 1.0)
    hardening_range = np.subtract(steel.ultimate_strain, steel.hardening_strain)
    part = left ** np.divide(1.0, steel.hardening_exponent)
    hardened = steel.ultimate_strain - hardening_range * part
    hardened = np.where(left < 1.0, hardened, steel.hardening_strain)
    strain = np.where(size < steel.yield_strength, size / steel.elastic_modulus, hardened)
    return np.copysign(strain, stress)[()]


def _require_curve(steel: SteelCurve) -> None:
    require_positive(
        yield_strength=steel.yield_strength,
        tensile_strength=steel.tensile_strength,
        ultimate_strain=steel.ultimate_strain,
        elastic_modulus=steel.elastic_modulus,
    )
    require_at_least(1.0, hardening_exponent=steel.hardening_exponent)
    require_finite(hardening_strain=steel.hardening_strain)
    tensile, hardening = steel.tensile_strength, steel.hardening_strain
    weaker = np.less(tensile, steel.yield_strength)
    reject(weaker, "at least the yield strength", tensile_strength=tensile)
    yield_strain = np.divide(steel.yield_strength, steel.elastic_modulus)
    early = np.less(hardening, yield_strain)
    reject(early, "at least the yield strain", hardening_strain=hardening)
    late = np.greater_equal(hardening, steel.ultimate_strain)
    reject(late, "below the ultimate strain", hardening_strain=hardening)
