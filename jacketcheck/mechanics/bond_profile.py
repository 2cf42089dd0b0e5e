"""Stress, strain, slip and bond stress along one bar that is stress-free at its fracture."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics._bond_march import SMALLEST_SLIP, BondedBars
from jacketcheck.mechanics._bond_rows import BarRows
from jacketcheck.mechanics.bar_steel import BarSteel
from jacketcheck.mechanics.bond_development import DevelopedStress, developed_stress
from jacketcheck.mechanics.bond_factors import yielded_bar_factor
from jacketcheck.mechanics.bond_law import LocalBondLaw, bond_stress

__all__ = ["BondProfile", "bond_profile"]

_CELLS: Final = (120, 80)
_SLIPS: Final = 300


@dataclass(frozen=True, eq=False)
class BondProfile:
    """What happens along a bar; arrays of one length, from the free to the loaded end.

    Where the bar starts to yield, one distance stands twice: before and after the yield plateau.

    Attributes
    ----------
    distance
        Distance from the free end [mm].
    stress
        Stress of the bar [MPa].
    strain
        Strain of the bar [-].
    slip
        Slip [mm].
    bond_stress
        Bond stress, lowered where the bar has yielded [MPa].
    """

    distance: Floats
    stress: Floats
    strain: Floats
    slip: Floats
    bond_stress: Floats


def bond_profile(
    bonded_length: float,
    *,
    bar_diameter: float,
    law: LocalBondLaw,
    steel: BarSteel,
    loaded_end_stress: float | None = None,
    yield_reduction: bool = True,
) -> BondProfile:
    """Stress, strain, slip and bond stress along one bar.

    Parameters
    ----------
    bonded_length
        Length from the fracture to the loaded end [mm], above zero.
    bar_diameter
        Bar diameter [mm], above zero.
    law
        Bond stress-slip law of the bar below yield, of plain numbers.
    steel
        Stress-strain parameters.
    loaded_end_stress
        Stress that pulls at the loaded end [MPa], above zero; None for all that the bar develops.
    yield_reduction
        Whether yield lowers bond.

    Returns
    -------
    BondProfile
        Arrays along the bar.

    Raises
    ------
    DomainError
        If an argument lies outside its range, or if the bar cannot develop the stress.

    Notes
    -----
    Of the two states with the same stress at the loaded end, the one with less slip: before the
    largest stress is reached. Where bond takes up the stress over less than the length, the rest
    stays free of stress.

    References
    ----------
    As `jacketcheck.mechanics.bond_development.developed_stress`.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_bond_laws import grouted_bar_law
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> law = grouted_bar_law(50.0, clear_rib_spacing=13.0)
    >>> along = bond_profile(400.0, bar_diameter=32.0, law=law, steel=steel)
    >>> float(along.distance[-1]), round(float(along.stress[-1]))
    (400.0, 548)
    """
    most = developed_stress(
        bonded_length,
        bar_diameter=bar_diameter,
        law=law,
        steel=steel,
        yield_reduction=yield_reduction,
    )
    largest = float(most.stress)
    stress = largest if loaded_end_stress is None else loaded_end_stress
    if not 0.0 < stress <= largest:
        raise DomainError("loaded_end_stress", stress, f"above 0 and at most {largest:g}")
    rows = BarRows.of(bonded_length, bar_diameter=bar_diameter, law=law, steel=steel)
    if rows.shape:
        raise DomainError("law", law, "of plain numbers")
    bars = rows.bars(np.ravel(stress), yield_reduction=yield_reduction, cells=_CELLS)
    profile = _solution(bars, bonded_length, most)
    if not yield_reduction:
        return profile
    factor = yielded_bar_factor(profile.strain, steel)
    return replace(profile, bond_stress=profile.bond_stress * factor)


def _solution(bars: BondedBars, length: float, most: DevelopedStress) -> BondProfile:
    """The one bar with its last stress at a distance; bond stress not yet lowered by yield."""
    free_slip, largest = float(most.free_end_slip), _largest_slip(bars.law, most)
    # stress and slip at the loaded end grow with the free end's slip up to the largest stress
    logs = np.linspace(np.log(SMALLEST_SLIP), np.log(free_slip), _SLIPS)
    _, reached = _paths(bars, np.exp(logs), largest)
    at_rest = length >= reached[0, -1]
    if not at_rest:
        falling = np.minimum.accumulate(reached[:, -1])
        free_slip = float(np.exp(np.interp(length, falling[::-1], logs[::-1])))
    slips, distances = _paths(bars, np.array([SMALLEST_SLIP if at_rest else free_slip]), largest)
    node, strain = _nodes(bars)
    slip, distance, stress = slips[0, node], distances[0, node], bars.stress[0, node]
    bond = np.array(bond_stress(slip, bars.law))
    if not at_rest:
        return BondProfile(distance / distance[-1] * length, stress, strain, slip, bond)
    rest = max(length - float(distance[-1]), 0.0)
    bond[0] = 0.0  # of the smallest slip, where that of the rest ends

    def after_rest(values: Floats) -> Floats:
        return np.concatenate([[0.0], values])

    return BondProfile(
        after_rest(distance + rest),
        after_rest(stress),
        after_rest(strain),
        after_rest(slip),
        after_rest(bond),
    )


def _largest_slip(law: LocalBondLaw, most: DevelopedStress) -> float:
    """Slip of the loaded end at the largest stress [mm], the least where bond ends before it."""
    bond_ends = np.ravel(law.slip_3)[0] if np.ravel(law.residual_stress)[0] == 0.0 else np.inf
    return float(np.minimum(most.loaded_end_slip, bond_ends))


def _paths(bars: BondedBars, free_slip: Floats, largest_slip: float) -> tuple[Floats, Floats]:
    """Slips and distances, shape (slips, nodes), from free-end slips of shape (slips,).

    The largest stress uses up what energy the bond has: by rounding alone the last slips could be
    endless where no bond is left, and with them the distances.
    """
    slip = np.minimum(bars.march(free_slip[None, :]).slip[0], largest_slip)
    mean_strain = 0.5 * (bars.strain_before[0] + bars.strain_after[0])
    distance = np.zeros(slip.shape)
    np.cumsum(np.diff(slip, axis=1) / mean_strain, axis=1, out=distance[:, 1:])
    return slip, distance


def _nodes(bars: BondedBars) -> tuple[NDArray[np.intp], Floats]:
    """Which nodes to show, that of first yield twice, and the strain at each."""
    elastic = _CELLS[0]
    before, after = bars.strain_before[0], bars.strain_after[0]
    rising = np.append(before[:elastic], after[elastic - 1])
    if bars.stress[0, -1] <= bars.stress[0, elastic]:
        return np.arange(elastic + 1), rising
    hardening = np.append(before[elastic], after[elastic:])
    node = np.concatenate([np.arange(elastic + 1), np.arange(elastic, bars.stress.shape[1])])
    return node, np.concatenate([rising, hardening])
