"""Stress that a bar develops by bond above its fracture, and the length that it takes.

The bar starts stress-free at the fracture, its free end, and is pulled at the loaded end, where
the repair ends. Its bond follows a local law (`jacketcheck.mechanics.bond_law`), lowered where the
bar yields. How far the bar has been pulled is told by the slip of its free end: each slip gives
one solution, and the largest stress of all of them is what the bar can develop.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import (
    Floats,
    Real,
    require_at_least,
    require_finite,
    require_positive,
)
from jacketcheck.mechanics._bond_march import FOREVER, SMALLEST_SLIP
from jacketcheck.mechanics._bond_rows import BarRows
from jacketcheck.mechanics.bar_steel import SteelCurve
from jacketcheck.mechanics.bond_law import LocalBondLaw

__all__ = [
    "DevelopedStress",
    "DevelopmentCurve",
    "bonded_length",
    "developed_stress",
    "development_curve",
]

_CURVE_SLIPS: Final = 128


@dataclass(frozen=True, eq=False)
class DevelopedStress:
    """What bond develops in bars of given bonded length; attributes share one shape.

    Attributes
    ----------
    stress
        Largest stress at the loaded end [MPa], at most the tensile strength.
    loaded_end_slip
        Slip of the loaded end [mm] when that stress is reached.
    free_end_slip
        Slip of the free end [mm] then.
    yields
        Whether the bar reaches its yield strength.
    fractures
        Whether the bar reaches its tensile strength: it fractures again before it pulls out.
    """

    stress: Real
    loaded_end_slip: Real
    free_end_slip: Real
    yields: NDArray[np.bool_]
    fractures: NDArray[np.bool_]


def developed_stress(
    bonded_length: Real,
    *,
    bar_diameter: Real,
    law: LocalBondLaw,
    steel: SteelCurve,
    yield_reduction: bool = True,
) -> DevelopedStress:
    """Stress that a bar develops at one end when its other end is stress-free.

    Parameters
    ----------
    bonded_length
        Length from the fracture to the section looked at [mm], at least zero; scalar or array.
    bar_diameter
        Bar diameter [mm], above zero.
    law
        Bond stress-slip law of the bar below yield; arrays broadcast with the other arguments.
    steel
        Stress-strain parameters; arrays broadcast likewise.
    yield_reduction
        Whether yield lowers bond (`jacketcheck.mechanics.bond_factors.yielded_bar_factor`).

    Returns
    -------
    DevelopedStress
        Stress, slips and what is reached, broadcast over the arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    ``dsigma/dx = 4 tau(s) Omega_y(eps) / d_b``, ``ds/dx = eps(sigma)`` from ``sigma = 0``, solved
    for free-end slips from 1e-7 mm upwards; the largest stress counts. Along a bar the yield
    plateau has no length: where ``f_y`` is passed, the strain jumps to the onset of hardening. The
    stress is within 0.2 % of solutions by adaptive integration, mostly below them. A law that is
    at no slip stronger never develops more.

    With the factor for yield, fracture takes some 25 to 35 bar diameters in sound grout, while
    yield takes about six. Pull-out tests of well confined grouted bars needed about six and ten
    (Steuck, Eberhard and Stanton 2009), so beyond yield the result errs on the safe side.

    Monotonic pull; the concrete's own strain, cycles, and splitting beyond what the law says are
    not covered.

    References
    ----------
    Equilibrium and compatibility; fib Model Code for Concrete Structures 2010 (2013), 6.1.1;
    Steuck, Eberhard and Stanton, Anchorage of Large-Diameter Reinforcing Bars in Ducts, ACI Struct.
    J. 106(4) (2009), title 106-S48, abstract.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> law = grouted_bar_law(50.0, clear_rib_spacing=13.0)
    >>> found = developed_stress(400.0, bar_diameter=32.0, law=law, steel=steel)
    >>> round(float(found.stress)), bool(found.yields), bool(found.fractures)
    (548, True, False)
    """
    require_at_least(0.0, bonded_length=bonded_length)
    require_positive(bar_diameter=bar_diameter)
    rows = BarRows.of(bonded_length, bar_diameter=bar_diameter, law=law, steel=steel)
    free, stress, loaded = (np.empty(rows.asked.size) for _ in range(3))
    for some, chunk in rows.chunks():
        bars = chunk.bars(chunk.tensile_strength, yield_reduction=yield_reduction)
        free[some], stress[some], loaded[some] = bars.strongest(chunk.asked)
    return DevelopedStress(
        stress=rows.shaped(stress),
        loaded_end_slip=rows.shaped(loaded),
        free_end_slip=rows.shaped(free),
        yields=rows.shaped(stress >= rows.yield_strength),
        fractures=rows.shaped(stress >= rows.tensile_strength),
    )


def bonded_length(
    target_stress: Real,
    *,
    bar_diameter: Real,
    law: LocalBondLaw,
    steel: SteelCurve,
    yield_reduction: bool = True,
) -> Real:
    """Shortest bonded length over which a bar develops a stress; the inverse of `developed_stress`.

    Parameters
    ----------
    target_stress
        Stress to be developed [MPa], at least zero; scalar or array.
    bar_diameter
        Bar diameter [mm], above zero.
    law
        Bond stress-slip law of the bar below yield; arrays broadcast with the other arguments.
    steel
        Stress-strain parameters; arrays broadcast likewise.
    yield_reduction
        Whether yield lowers bond.

    Returns
    -------
    Real
        Length [mm], broadcast over the arguments; infinite where the stress is above the tensile
        strength or no length develops it.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The smallest, over all free-end slips, of the distance from the free end at which the stress is
    reached; see `developed_stress`.

    References
    ----------
    As `developed_stress`.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> law = grouted_bar_law(50.0, clear_rib_spacing=13.0)
    >>> round(float(bonded_length(469.0, bar_diameter=32.0, law=law, steel=steel)))
    212
    """
    require_at_least(0.0, target_stress=target_stress)
    require_positive(bar_diameter=bar_diameter)
    rows = BarRows.of(target_stress, bar_diameter=bar_diameter, law=law, steel=steel)
    length = np.empty(rows.asked.size)
    for some, chunk in rows.chunks():
        least = 1e-3 * chunk.yield_strength  # below, energies drown in those of the slip
        target = np.clip(chunk.asked, least, chunk.tensile_strength)
        bars = chunk.bars(target, yield_reduction=yield_reduction)
        length[some] = bars.shortest()[1] * np.minimum(chunk.asked / least, 1.0)
    never = (rows.asked > rows.tensile_strength) | (length >= FOREVER)
    needed: Real = rows.shaped(np.where(never, np.inf, length))
    return needed


@dataclass(frozen=True, eq=False)
class DevelopmentCurve:
    """Stress that bars develop over any length, from one solution; one bar a row.

    Attributes
    ----------
    length
        Shortest bonded lengths [mm], ascending, shape (bars, nodes).
    stress
        Stress developed over each of them [MPa], up to the tensile strength.
    """

    length: Floats
    stress: Floats

    def stress_over(self, bonded_length: Floats) -> Floats:
        """Stress [MPa] developed over lengths [mm] of shape (bars, n), zero over none or less.

        Raises
        ------
        DomainError
            If a length is not finite.
        """
        require_finite(bonded_length=bonded_length)
        pairs = zip(bonded_length, self.length, self.stress, strict=True)
        rows = [np.interp(asked, length, stress) for asked, length, stress in pairs]
        return np.asarray(rows, dtype=float)


def development_curve(
    *, bar_diameter: Real, law: LocalBondLaw, steel: SteelCurve, yield_reduction: bool = True
) -> DevelopmentCurve:
    """Stress developed over any bonded length, where many lengths of the same bars are asked for.

    Parameters
    ----------
    bar_diameter
        Bar diameter [mm], above zero; scalar or array.
    law
        Bond stress-slip law of the bar below yield; arrays broadcast with the other arguments.
    steel
        Stress-strain parameters; arrays broadcast likewise.
    yield_reduction
        Whether yield lowers bond.

    Returns
    -------
    DevelopmentCurve
        Lengths and stresses, one row for each bar of the broadcast arguments.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    Notes
    -----
    The envelope of `_CURVE_SLIPS` free-end slips of `developed_stress`, straight between the nodes:
    within 0.3 % of it, and above it by 0.05 % at most.

    References
    ----------
    As `developed_stress`.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> law = grouted_bar_law(50.0, clear_rib_spacing=13.0)
    >>> curve = development_curve(bar_diameter=32.0, law=law, steel=steel)
    >>> curve.stress_over(np.array([[-50.0, 0.0, 400.0, 2000.0]])).round().tolist()
    [[0.0, 0.0, 548.0, 655.0]]
    """
    require_positive(bar_diameter=bar_diameter)
    rows = BarRows.of(0.0, bar_diameter=bar_diameter, law=law, steel=steel)
    curves, order = [], []
    for some, chunk in rows.chunks():
        bars = chunk.bars(chunk.tensile_strength, yield_reduction=yield_reduction)
        share = np.linspace(0.0, 1.0, _CURVE_SLIPS)
        span = np.log(np.asarray(chunk.law.slip_3) / SMALLEST_SLIP)
        path = bars.march(SMALLEST_SLIP * np.exp(span[:, None] * share))
        curves.append((np.min(path.distance, axis=1), bars.stress))
        order.append(some)
    place = np.argsort(np.concatenate(order))[rows.owner]
    parts = (np.concatenate(part)[place] for part in zip(*curves, strict=True))
    return DevelopmentCurve(*parts)
