"""Local bond stress-slip law of a ribbed bar, its energy, the weaker and the blend of two laws.

Laws share one shape: a power curve to the peak, a plateau, a straight fall and a residual stress.
Published parameters stand in `jacketcheck.mechanics.published_bond_laws`.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics import _arrays
from jacketcheck.mechanics._arrays import Floats, Real, reject, require_at_least, require_positive
from jacketcheck.mechanics._bracketed_root import bracketed_roots

__all__ = [
    "BlendedBondLaw",
    "BondLaw",
    "LocalBondLaw",
    "blended_bond_law",
    "bond_energy",
    "bond_stress",
    "scaled_bond_law",
    "slip_at_bond_energy",
    "weaker_bond_law",
]


_NO_SLIP, _ENDLESS = 1e-30, 1e12  # stand for zero and infinity among logarithms [mm]


@dataclass(frozen=True, eq=False)
class BondLaw:
    """Parameters of a bond stress-slip law; numbers or arrays that broadcast.

    Attributes
    ----------
    peak_stress
        Bond strength ``tau_max`` [MPa], above zero.
    slip_1, slip_2, slip_3
        Slips [mm] at which the peak is reached, the fall begins and the residual stress is
        reached; ``0 < s_1 <= s_2 <= s_3``.
    exponent
        Exponent of the rising branch ``alpha`` [-], above zero and at most one.
    residual_stress
        Bond stress that remains ``tau_f`` [MPa], ``0 <= tau_f <= tau_max``.

    Raises
    ------
    DomainError
        If a number lies outside its range.
    """

    peak_stress: Real
    slip_1: Real
    slip_2: Real
    slip_3: Real
    exponent: Real
    residual_stress: Real

    def __post_init__(self) -> None:
        """Reject numbers that make no law."""
        require_positive(
            peak_stress=self.peak_stress,
            slip_1=self.slip_1,
            slip_2=self.slip_2,
            slip_3=self.slip_3,
            exponent=self.exponent,
        )
        require_at_least(0.0, residual_stress=self.residual_stress)
        _require_not_above("slip_1", self.slip_1, "slip_2", self.slip_2)
        _require_not_above("slip_2", self.slip_2, "slip_3", self.slip_3)
        _require_not_above("exponent", self.exponent, "1", 1.0)
        _require_not_above("residual_stress", self.residual_stress, "peak_stress", self.peak_stress)

    @property
    def softening(self) -> Real:
        """Slope of the fall ``(tau_max - tau_f) / (s_3 - s_2)`` [MPa/mm]; 0 for a sudden drop."""
        width = np.subtract(self.slip_3, self.slip_2)
        drop = np.subtract(self.peak_stress, self.residual_stress)
        return np.divide(
            drop, width, out=np.zeros(np.broadcast(drop, width).shape), where=width > 0
        )

    @property
    def energies(self) -> tuple[Real, Real, Real]:
        """Energy of the law up to each of its three slips [N/mm]."""
        first = np.multiply(self.peak_stress, self.slip_1) / np.add(1.0, self.exponent)
        second = first + np.multiply(self.peak_stress, np.subtract(self.slip_2, self.slip_1))
        mean = 0.5 * np.add(self.peak_stress, self.residual_stress)
        return first, second, second + mean * np.subtract(self.slip_3, self.slip_2)


@dataclass(frozen=True, eq=False)
class BlendedBondLaw:
    """Part of a bar's surface held, the rest not; numbers or arrays that broadcast.

    Attributes
    ----------
    held, loose
        Laws of the two parts.
    share
        Share of the held part ``r`` [-], 0 to 1.

    Raises
    ------
    DomainError
        If the share lies outside its range.
    """

    held: BondLaw
    loose: BondLaw
    share: Real

    def __post_init__(self) -> None:
        """Reject a share that is none."""
        _arrays.require_within(0.0, 1.0, share=self.share)

    def weighted(self, held: Real, loose: Real) -> Real:
        """Sum of a quantity of the two parts, each by its share."""
        rest: Real = np.multiply(np.subtract(1.0, self.share), loose)
        return np.multiply(self.share, held) + rest

    @property
    def peak_stress(self) -> Real:
        """Largest bond stress at the peaks of the two laws [MPa]."""
        slips = (self.held.slip_1, self.held.slip_2, self.loose.slip_1, self.loose.slip_2)
        stresses = [np.asarray(bond_stress(slip, self)) for slip in slips]
        largest: Real = np.max(np.broadcast_arrays(*stresses), axis=0)[()]
        return largest

    @property
    def residual_stress(self) -> Real:
        """Bond stress that remains [MPa]."""
        return self.weighted(self.held.residual_stress, self.loose.residual_stress)

    @property
    def slip_3(self) -> Real:
        """Slip from which the stress stays [mm]."""
        return np.maximum(self.held.slip_3, self.loose.slip_3)


LocalBondLaw: TypeAlias = BondLaw | BlendedBondLaw


def blended_bond_law(held: BondLaw, loose: BondLaw, *, share: Real) -> LocalBondLaw:
    """Law of a bar of which only a part is held.

    Parameters
    ----------
    held, loose
        Laws of the held part and of the rest.
    share
        Share of the held part ``r`` [-], 0 to 1; scalar or array.

    Returns
    -------
    BondLaw or BlendedBondLaw
        ``tau(s) = r tau_held(s) + (1 - r) tau_loose(s)``; one of the two where it is that alone.

    Raises
    ------
    DomainError
        If the share lies outside its range.

    References
    ----------
    Engineering judgement: bond falls in proportion to the pressure that is missing.

    Examples
    --------
    >>> held, loose = BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0), BondLaw(5.0, 1.0, 1.0, 1.2, 0.4, 0.0)
    >>> float(bond_stress(1.0, blended_bond_law(held, loose, share=0.75)))
    8.75
    """
    law = BlendedBondLaw(held, loose, share)
    if np.all(np.greater_equal(share, 1.0)):
        return held
    return loose if np.all(np.equal(share, 0.0)) else law


def bond_stress(slip: Real, law: LocalBondLaw) -> Real:
    """Bond stress at a slip that grows steadily.

    Parameters
    ----------
    slip
        Slip of the bar in its surroundings [mm], at least zero; scalar or array.
    law
        Parameters of the law; arrays broadcast with `slip`.

    Returns
    -------
    Real
        Bond stress [MPa], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a slip is not finite or below zero.

    Notes
    -----
    ``tau_max (s / s_1)**alpha`` up to ``s_1``, ``tau_max`` up to ``s_2``, a straight line down to
    ``tau_f`` at ``s_3``, and ``tau_f`` beyond. Where ``s_2 = s_3`` the stress drops right after
    that slip. Cycles are not covered.

    References
    ----------
    fib Model Code for Concrete Structures 2010 (2013), Eq. 6.1-1 to 6.1-4; CEB-FIP Model Code 1990,
    3.1.1; both from memory. The shape is that of Eligehausen, Popov and Bertero, UCB/EERC-83/23
    (1983).

    Examples
    --------
    >>> law = BondLaw(15.4, 1.0, 2.0, 12.0, 0.4, 6.16)
    >>> [round(float(bond_stress(slip, law)), 2) for slip in (0.1, 1.5, 6.0, 20.0)]
    [6.13, 15.4, 11.7, 6.16]
    """
    require_at_least(0.0, slip=slip)
    if isinstance(law, BlendedBondLaw):
        return law.weighted(bond_stress(slip, law.held), bond_stress(slip, law.loose))
    rising = law.peak_stress * np.minimum(np.divide(slip, law.slip_1), 1.0) ** law.exponent
    fallen = np.maximum(np.subtract(slip, law.slip_2), 0.0)
    falling = np.maximum(rising - law.softening * fallen, law.residual_stress)
    stress = np.where(fallen > 0.0, falling, rising)
    return np.where(np.greater(slip, law.slip_3), law.residual_stress, stress)[()]


def bond_energy(slip: Real, law: LocalBondLaw) -> Real:
    """Area under the bond stress-slip law up to a slip.

    Parameters
    ----------
    slip
        Slip [mm], at least zero; scalar or array.
    law
        Parameters of the law; arrays broadcast with `slip`.

    Returns
    -------
    Real
        Energy for each unit of bar surface [N/mm], broadcast over the arguments.

    Raises
    ------
    DomainError
        If a slip is not finite or below zero.

    References
    ----------
    Integral of `bond_stress`.

    Examples
    --------
    >>> law = BondLaw(10.0, 1.0, 2.0, 12.0, 0.25, 4.0)
    >>> [float(bond_energy(slip, law)) for slip in (1.0, 2.0, 12.0, 13.0)]
    [8.0, 18.0, 88.0, 92.0]
    """
    require_at_least(0.0, slip=slip)
    if isinstance(law, BlendedBondLaw):
        return law.weighted(bond_energy(slip, law.held), bond_energy(slip, law.loose))
    rising = np.minimum(np.divide(slip, law.slip_1), 1.0) ** np.add(1.0, law.exponent)
    plateau = np.minimum(slip, law.slip_2) - np.minimum(slip, law.slip_1)
    fallen = np.clip(np.subtract(slip, law.slip_2), 0.0, np.subtract(law.slip_3, law.slip_2))
    beyond = np.maximum(np.subtract(slip, law.slip_3), 0.0)
    up_to_slip_2 = np.multiply(law.energies[0], rising) + np.multiply(law.peak_stress, plateau)
    fall = np.multiply(law.peak_stress, fallen) - 0.5 * np.multiply(law.softening, fallen**2)
    energy: Real = up_to_slip_2 + fall + np.multiply(law.residual_stress, beyond)
    return energy


def slip_at_bond_energy(energy: Real, law: LocalBondLaw) -> Real:
    """Slip up to which the law has a given area; the inverse of `bond_energy`.

    Parameters
    ----------
    energy
        Energy for each unit of bar surface [N/mm], at least zero; scalar or array.
    law
        Parameters of the law; arrays broadcast with `energy`.

    Returns
    -------
    Real
        Slip [mm], broadcast over the arguments; infinite where a law without residual stress
        never reaches the energy.

    Raises
    ------
    DomainError
        If an energy is not finite or below zero.

    References
    ----------
    Integral of `bond_stress`, solved for the slip on each branch.

    Examples
    --------
    >>> law = BondLaw(10.0, 1.0, 2.0, 12.0, 0.25, 4.0)
    >>> [round(float(slip_at_bond_energy(energy, law)), 9) for energy in (8.0, 18.0, 88.0, 92.0)]
    [1.0, 2.0, 12.0, 13.0]
    """
    require_at_least(0.0, energy=energy)
    if isinstance(law, BlendedBondLaw):
        return _slip_of_blend(np.asarray(energy, dtype=float), law)
    first, second, third = law.energies
    shape = np.broadcast_shapes(np.shape(energy), np.shape(third))
    slip, part, root = (np.empty(shape) for _ in range(3))  # worked on in place: fresh ones cost
    _part_between(0.0, first, energy, out=slip)
    slip *= np.divide(1.0, first)
    slip **= np.divide(1.0, np.add(1.0, law.exponent))
    slip *= law.slip_1
    _part_between(first, second, energy, out=part)
    part *= np.divide(1.0, law.peak_stress)
    slip += part
    _part_between(second, third, energy, out=part)
    np.multiply(part, np.multiply(-2.0, law.softening), out=root)
    root += np.square(law.peak_stress)
    np.maximum(root, 0.0, out=root)
    np.sqrt(root, out=root)
    root += law.peak_stress
    part /= root
    part *= 2.0
    slip += part
    _part_between(third, np.inf, energy, out=part)
    return _with_residual_slip(slip, part, np.asarray(law.residual_stress, dtype=float))


def _slip_of_blend(energy: Floats, law: BlendedBondLaw) -> Floats:
    """Slip at an energy of a blend, between those of its two laws; found among logarithms."""
    held = np.asarray(slip_at_bond_energy(energy, law.held))
    ends = np.stack(np.broadcast_arrays(held, slip_at_bond_energy(energy, law.loose)))
    low, high = (np.clip(end, _NO_SLIP, _ENDLESS) for end in (ends.min(axis=0), ends.max(axis=0)))
    asked = np.log(np.maximum(np.broadcast_to(energy, low.shape), np.finfo(float).tiny))

    lower, upper = np.log(low), np.log(high)
    endless = np.log(bond_energy(high, law)) < asked - 1e-9

    def residual(logarithm: Floats) -> Floats:
        inside = np.clip(logarithm, lower, upper)
        return np.where(endless, 0.0, np.log(bond_energy(np.exp(inside), law)) - asked)

    slip = np.exp(bracketed_roots(residual, lower, upper, tolerance=1e-10))
    slip = np.where(endless, np.inf, slip)
    return np.where(np.broadcast_to(energy, low.shape) > 0.0, slip, 0.0)


def scaled_bond_law(law: BondLaw, factor: Real) -> BondLaw:
    """The law with its peak and residual stress multiplied by a factor, slips unchanged.

    Parameters
    ----------
    law
        Parameters of the law.
    factor
        Factor [-], above zero; scalar or array.

    Returns
    -------
    BondLaw
        The scaled law.

    Raises
    ------
    DomainError
        If the factor is not finite and above zero.

    References
    ----------
    The factors of fib Model Code 2010 (2013), 6.1.1.3, multiply the bond stress at any slip.

    Examples
    --------
    >>> float(scaled_bond_law(BondLaw(10.0, 1.0, 2.0, 12.0, 0.4, 4.0), 1.2).peak_stress)
    12.0
    """
    require_positive(factor=factor)
    return BondLaw(
        np.multiply(law.peak_stress, factor),
        law.slip_1,
        law.slip_2,
        law.slip_3,
        law.exponent,
        np.multiply(law.residual_stress, factor),
    )


def weaker_bond_law(first: BondLaw, second: BondLaw) -> BondLaw:
    """A law that is nowhere stronger than either of two laws.

    Parameters
    ----------
    first, second
        Parameters of the laws; arrays broadcast, exponents must agree.

    Returns
    -------
    BondLaw
        The weaker law.

    Raises
    ------
    DomainError
        If the exponents differ.

    Notes
    -----
    Where one law lies below the other at every slip, it is that law: the smaller of the two at
    each slip, exactly. Where the two cross, the smaller of the two is no law of this shape; a law
    below both is returned, so the result errs on the safe side: the flatter start, and of the
    other quantities the smaller, lowered where needed.

    References
    ----------
    None needed.

    Examples
    --------
    >>> good = BondLaw(15.0, 1.0, 2.0, 12.0, 0.4, 6.0)
    >>> poor = BondLaw(7.0, 1.8, 3.6, 12.0, 0.4, 2.8)
    >>> float(weaker_bond_law(good, poor).peak_stress)
    7.0
    """
    if np.any(np.not_equal(first.exponent, second.exponent)):
        raise DomainError("exponent", second.exponent, f"that of the other law, {first.exponent}")
    first_below, second_below = _below(first, second), _below(second, first)
    bound = _bound(first, second)

    def pick(name: str) -> Real:
        one, other, below = getattr(first, name), getattr(second, name), getattr(bound, name)
        chosen: Real = np.where(first_below, one, np.where(second_below, other, below))[()]
        return chosen

    return BondLaw(*(pick(name) for name in _FIELDS))


_FIELDS = ("peak_stress", "slip_1", "slip_2", "slip_3", "exponent", "residual_stress")


def _part_between(start: Real, end: Real, energy: Real, *, out: Floats) -> None:
    """Write the part of an energy that lies between two others."""
    np.minimum(energy, end, out=out)
    out -= start
    np.maximum(out, 0.0, out=out)


def _with_residual_slip(slip: Floats, energy: Floats, residual_stress: Floats) -> Real:
    """Slip plus that which takes an energy at the residual stress; infinite if there is none."""
    holds = residual_stress > 0.0
    slip += energy * np.divide(1.0, residual_stress, out=np.zeros(holds.shape), where=holds)
    if np.all(holds):
        return slip[()]
    return np.where((energy > 0.0) & ~holds, np.inf, slip)[()]


def _below(lower: BondLaw, upper: BondLaw) -> NDArray[np.bool_]:
    """Whether one law lies nowhere above the other; decided at the slips where either bends.

    That suffices: rising branches differ by a constant factor, a rising branch meets a level or
    falling one at most once, and straight ones cross at most once. A drop shows just behind it.
    """
    start = lower.peak_stress / np.power(lower.slip_1, lower.exponent)
    good = np.less_equal(start, upper.peak_stress / np.power(upper.slip_1, upper.exponent))
    for law in (lower, upper):
        for slip in (law.slip_1, law.slip_2, law.slip_3, np.nextafter(law.slip_3, np.inf)):
            good = good & np.less_equal(bond_stress(slip, lower), bond_stress(slip, upper))
    return np.asarray(good, dtype=bool)


def _bound(first: BondLaw, second: BondLaw) -> BondLaw:
    """A law below both; see `weaker_bond_law`.

    Up to the smaller ``s_2`` neither law has fallen, and up to the smaller ``s_3`` both are
    concave, so that a straight line between values below them stays below.
    """
    exponent = first.exponent
    start = np.minimum(
        first.peak_stress / np.power(first.slip_1, exponent),
        second.peak_stress / np.power(second.slip_1, exponent),
    )
    slip_2 = np.minimum(first.slip_2, second.slip_2)
    slip_3 = np.minimum(first.slip_3, second.slip_3)
    peak = np.minimum(np.minimum(first.peak_stress, second.peak_stress), start * slip_2**exponent)
    slip_1 = np.minimum((peak / start) ** np.divide(1.0, exponent), slip_2)
    residual = np.minimum(first.residual_stress, second.residual_stress)
    for law in (first, second):
        residual = np.minimum(residual, bond_stress(slip_3, law))
    return BondLaw(peak, slip_1, slip_2, slip_3, exponent, np.minimum(residual, peak))


def _require_not_above(name: str, value: Real, bound_name: str, bound: Real) -> None:
    reject(np.greater(value, bound), f"at most {bound_name}", **{name: value})
