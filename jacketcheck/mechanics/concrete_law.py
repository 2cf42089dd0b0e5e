"""Stress-strain curves of concrete, tabulated on one uniform strain grid.

Section analysis looks stresses up in tables, so that any curve can be used: a closed-form one, or
the strain-compatible curve of a passively confined core whose pressure grows with its dilation.
Compression is positive.  Concrete carries no tension unless the curve says so.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_finite, require_positive
from jacketcheck.mechanics._stress_table import StressTable, strain_range
from jacketcheck.mechanics.confinement import popovics_stress

__all__ = [
    "ConcreteLaw",
    "elastic_concrete_law",
    "popovics_concrete_law",
    "strain_grid",
    "tabulated_concrete_law",
    "unconfined_concrete_law",
]


def strain_grid() -> Floats:
    """The uniform strain grid shared by every concrete law.

    Returns
    -------
    ndarray
        Strains [-], compression positive, from -0.001 to 0.08 in steps of 2e-5.

    References
    ----------
    None: a choice of resolution; halving the step moves moments by less than 0.01 %.

    Examples
    --------
    >>> grid = strain_grid()
    >>> round(float(grid[0]), 6), round(float(grid[-1]), 6)
    (-0.001, 0.08)
    """
    return strain_range(-0.001, 0.08)


@dataclass(frozen=True, eq=False)
class ConcreteLaw:
    """A concrete's stress-strain curve on the shared grid.

    Attributes
    ----------
    stress
        Stress [MPa] at each strain of `strain_grid`, compression positive.  Beyond the grid's ends
        the stress is zero.
    ultimate_strain
        Strain [-] at which the concrete is taken to fail: fracture of the first hoop or of the
        sleeve for a confined core, spalling for cover.
    """

    stress: Floats
    ultimate_strain: float

    def __post_init__(self) -> None:
        """Reject a table that is not on the grid, not finite or without strength."""
        expected = strain_grid().size
        if self.stress.shape != (expected,):
            raise DomainError("stress", self.stress.shape, f"an array of {expected} stresses")
        require_finite(stress=self.stress)
        require_positive(ultimate_strain=self.ultimate_strain, strength=self.strength)
        self.stress.setflags(write=False)

    @cached_property
    def strength(self) -> float:
        """Largest compressive stress on the curve [MPa]."""
        return float(np.max(self.stress))

    @cached_property
    def table(self) -> StressTable:
        """The curve as cells for section analysis."""
        return StressTable.of(strain_grid(), self.stress)

    def stress_at(self, strain: Floats | float) -> Floats:
        """Stress [MPa] at any strain [-], zero beyond the grid; same shape as `strain`."""
        stress = np.interp(np.asarray(strain), strain_grid(), self.stress, left=0.0, right=0.0)
        return np.asarray(stress)


def tabulated_concrete_law(
    strain: Floats, stress: Floats, *, ultimate_strain: float
) -> ConcreteLaw:
    """A law from any table of strains and stresses, resampled on the shared grid.

    Parameters
    ----------
    strain
        Ascending strains [-], compression positive, shape (n,).
    stress
        Stresses [MPa], compression positive, shape (n,).  The stress is zero beyond the table.
    ultimate_strain
        Strain [-] at which the concrete is taken to fail.

    Returns
    -------
    ConcreteLaw
        Linear interpolation of the table.

    Raises
    ------
    DomainError
        If the strains do not ascend or anything is not finite.

    References
    ----------
    None: interpolation.

    Examples
    --------
    >>> law = tabulated_concrete_law(
    ...     np.array([0.0, 0.002, 0.004]), np.array([0.0, 30.0, 0.0]), ultimate_strain=0.004)
    >>> round(float(law.stress_at(0.001)), 6), round(float(law.stress_at(0.003)), 6)
    (15.0, 15.0)
    """
    require_finite(strain=strain, stress=stress)
    matched = strain.ndim == 1 and strain.size > 0 and strain.shape == stress.shape
    if not matched or np.any(np.diff(strain) <= 0.0):
        raise DomainError("strain", strain.shape, "ascending, one strain for each stress")
    resampled = np.interp(strain_grid(), strain, stress, left=0.0, right=0.0)
    return ConcreteLaw(resampled, ultimate_strain)


def elastic_concrete_law(
    elastic_modulus: float, *, ultimate_strain: float = 0.05, tension: bool = False
) -> ConcreteLaw:
    """Linear elastic concrete, cracked by default.

    Parameters
    ----------
    elastic_modulus
        Modulus [MPa].
    ultimate_strain
        Strain [-] at which the law ends.
    tension
        Whether the concrete carries tension, down to a strain of -0.001.

    Returns
    -------
    ConcreteLaw
        f = E ε for 0 ≤ ε, and for ε < 0 if `tension`.

    Raises
    ------
    DomainError
        If the modulus is not finite and above zero.

    References
    ----------
    Hooke's law.

    Examples
    --------
    >>> law = elastic_concrete_law(30e3)
    >>> round(float(law.stress_at(0.001)), 6), float(law.stress_at(-0.0005))
    (30.0, 0.0)
    """
    require_positive(elastic_modulus=elastic_modulus)
    strain = strain_grid()
    stress = elastic_modulus * (strain if tension else np.maximum(strain, 0.0))
    return ConcreteLaw(stress, ultimate_strain)


def popovics_concrete_law(
    *, peak_stress: float, peak_strain: float, elastic_modulus: float, ultimate_strain: float
) -> ConcreteLaw:
    """Confined concrete under constant confining pressure.

    Parameters
    ----------
    peak_stress
        Confined strength f′cc [MPa].
    peak_strain
        Strain εcc at the confined strength [-].
    elastic_modulus
        Tangent modulus Ec [MPa], above f′cc/εcc.
    ultimate_strain
        Ultimate strain εcu [-].  The curve continues beyond it, so that an analysis can pass it;
        the ultimate curvature is found from it.

    Returns
    -------
    ConcreteLaw
        fc = f′cc x r / (r − 1 + x^r), x = ε/εcc, r = Ec/(Ec − f′cc/εcc); no tension.

    Raises
    ------
    DomainError
        If anything is not finite and above zero, or the modulus is below the secant.

    References
    ----------
    Mander, Priestley and Park 1988, J. Struct. Eng. 114(8), 1804-1826; curve after Popovics 1973.

    Examples
    --------
    >>> law = popovics_concrete_law(
    ...     peak_stress=47.0, peak_strain=0.0077, elastic_modulus=27e3, ultimate_strain=0.02)
    >>> round(float(law.stress_at(0.0077)), 3)
    47.0
    """
    stress = popovics_stress(
        np.maximum(strain_grid(), 0.0),
        peak_stress=peak_stress,
        peak_strain=peak_strain,
        elastic_modulus=elastic_modulus,
    )
    return ConcreteLaw(np.asarray(stress), ultimate_strain)


def unconfined_concrete_law(
    *,
    strength: float,
    elastic_modulus: float,
    peak_strain: float = 0.002,
    spalling_strain: float = 0.005,
    turning_strain: float | None = None,
) -> ConcreteLaw:
    """Unconfined concrete or grout that spalls.

    Parameters
    ----------
    strength
        Unconfined strength f′co [MPa].
    elastic_modulus
        Tangent modulus Ec [MPa].
    peak_strain
        Strain εco at the strength [-].
    spalling_strain
        Strain εsp [-] from which nothing is carried, above the next one.
    turning_strain
        Strain [-] up to which Popovics' curve is followed; 2 εco by default.

    Returns
    -------
    ConcreteLaw
        Popovics' curve up to the turn, from there a straight line to zero at εsp; no tension.

    Raises
    ------
    DomainError
        If anything is not finite and above zero, or εsp is not above the turn.

    References
    ----------
    Mander, Priestley and Park 1988, J. Struct. Eng. 114(8): treatment of the cover concrete.
    Default strains 0.002 and 0.005: AASHTO Guide Spec Seismic 2011, 8.4.4.

    Examples
    --------
    >>> law = unconfined_concrete_law(strength=30.0, elastic_modulus=27e3)
    >>> round(float(law.stress_at(0.002)), 3), float(law.stress_at(0.005))
    (30.0, 0.0)
    """
    require_positive(spalling_strain=spalling_strain, peak_strain=peak_strain)
    turn = 2.0 * peak_strain if turning_strain is None else turning_strain
    require_positive(turning_strain=turn)
    if spalling_strain <= turn:
        raise DomainError("spalling_strain", spalling_strain, f"above {turn:g}")
    strain = strain_grid()
    curve = popovics_stress(
        np.clip(strain, 0.0, turn),
        peak_stress=strength,
        peak_strain=peak_strain,
        elastic_modulus=elastic_modulus,
    )
    left = (spalling_strain - strain) / (spalling_strain - turn)
    return ConcreteLaw(np.asarray(curve * np.clip(left, 0.0, 1.0)), spalling_strain)
