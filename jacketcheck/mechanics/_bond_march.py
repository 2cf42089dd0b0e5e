"""Bond of many bars with many free-end slips at once, marched from the free end.

A bar that slips by s and carries the stress σ where x is measured from its free end obeys
``dσ/dx = 4 τ(s) Ω(ε) / d`` and ``ds/dx = ε(σ)``. Dividing the two parts σ and s:
``ε/Ω dσ = (4/d) τ ds``. Both sides integrate on their own, so the slip at a given stress follows
exactly from the energies of steel and bond, yielded or not; on the yield plateau the strain jumps
while stress, slip and energy stay. What is left to march is the distance, ``dx = ds/ε``, in which
each cell takes its mean strain: exact where the bond stress is constant and the bar elastic.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics._bond_records import indexed_law, indexed_steel
from jacketcheck.mechanics.bar_steel import BarSteels, bar_strain_at_stress, bar_stress
from jacketcheck.mechanics.bond_factors import yielded_bar_factor
from jacketcheck.mechanics.bond_law import LocalBondLaw, bond_energy, slip_at_bond_energy

__all__ = ["FOREVER", "SMALLEST_SLIP", "BondedBars", "Path"]

SMALLEST_SLIP: Final = 1.0e-7
"""Smallest free-end slip tried [mm]; a smaller one adds length without stress."""
FOREVER: Final = 1.0e9
"""Distances from here on [mm] mean that the stress is never reached."""
_POINT: Final = np.sqrt(0.6) / 2.0
_GAUSS_POINTS: Final = np.array([0.5 - _POINT, 0.5, 0.5 + _POINT])
_GAUSS_WEIGHTS: Final = np.array([5.0, 8.0, 5.0]) / 18.0
_COLUMNS: Final = (32, 9, 9)  # free-end slips in the first and in each closer search


@dataclass(frozen=True, eq=False)
class Path:
    """Solutions from some free-end slips; arrays of shape (bars, slips, nodes).

    Attributes
    ----------
    distance
        Distance from the free end [mm] at which the stress of each node is reached.
    slip
        Slip there [mm].
    energy
        Energy of the bond law there [N/mm].
    """

    distance: Floats
    slip: Floats
    energy: Floats


@dataclass(frozen=True, eq=False)
class BondedBars:
    """Bars in bond, one a row, and the stresses (nodes) at which their solutions are known.

    Attributes
    ----------
    law, steel
        Parameters with one number for each bar, shape (bars,).
    stress
        Stresses from zero to the last one asked for [MPa], shape (bars, nodes).
    strain_before, strain_after
        Strain at either end of each cell [-], shape (bars, nodes - 1).
    energy
        Energy of the steel at each node, as bond energy ``d/4 ∫ ε/Ω dσ`` [N/mm].
    """

    law: LocalBondLaw
    steel: BarSteels
    stress: Floats
    strain_before: Floats
    strain_after: Floats
    energy: Floats

    @classmethod
    def of(
        cls,
        law: LocalBondLaw,
        steel: BarSteels,
        *,
        bar_diameter: Floats,
        last_stress: Floats,
        yield_reduction: bool,
        cells: tuple[int, int],
    ) -> BondedBars:
        """Lay nodes up to the last stress: elastic cells, then cells of hardening."""
        yield_strength = np.asarray(steel.yield_strength)
        elastic = np.minimum(last_stress, yield_strength)[:, None] * _graded(cells[0])
        strain = elastic / np.asarray(steel.elastic_modulus)[:, None]
        hardening = _hardening_strains(steel, last_stress, cells[1])
        column = indexed_steel(steel, (slice(None), None))
        hardened = np.minimum(bar_stress(hardening, column), last_stress[:, None])
        energy = 0.5 * elastic * strain
        more = np.cumsum(
            _hardening_energy(hardening, steel, yield_reduction=yield_reduction), axis=1
        )
        return cls(
            law=law,
            steel=steel,
            stress=np.concatenate([elastic, hardened[:, 1:]], axis=1),
            strain_before=np.concatenate([strain[:, :-1], hardening[:, :-1]], axis=1),
            strain_after=np.concatenate([strain[:, 1:], hardening[:, 1:]], axis=1),
            energy=np.concatenate([energy, energy[:, -1:] + more], axis=1)
            * (0.25 * bar_diameter[:, None]),
        )

    def march(self, free_end_slip: Floats) -> Path:
        """Solutions from free-end slips of shape (bars, slips)."""
        law = indexed_law(self.law, (slice(None), None, None))
        start = np.asarray(bond_energy(free_end_slip[:, :, None], law))
        energy = start + self.energy[:, None, :]
        slip = np.minimum(slip_at_bond_energy(energy, law), FOREVER)
        slip[:, :, 0] = free_end_slip
        distance = np.zeros(slip.shape)
        mean_strain = 0.5 * (self.strain_before + self.strain_after)
        steps = np.diff(slip, axis=2)
        steps /= mean_strain[:, None, :]
        np.cumsum(steps, axis=2, out=distance[:, :, 1:])
        return Path(distance, slip, energy)

    def at_distance(self, path: Path, distance: Floats) -> tuple[Floats, Floats]:
        """Stress and slip, shape (bars, slips), at one distance for each bar.

        Inside a cell the slip follows from the mean strain up to there, the stress from the slip's
        energy: twice, as the strain depends on the stress. Beyond the last node it stays.
        """
        cell = np.sum(path.distance <= distance[:, None, None], axis=2) - 1
        cell = np.minimum(cell, path.distance.shape[2] - 2)
        law = indexed_law(self.law, (slice(None), None))
        start, end = _ends(path.distance, cell)
        part = _share(distance[:, None] - start, end - start)
        slip, last_slip = _ends(path.slip, cell)
        low, high = _ends(path.energy, cell)
        first, last = np.square(_node(self.stress, cell)), np.square(_node(self.stress, cell + 1))
        strain = _node(self.strain_before, cell)
        growth = _node(self.strain_after, cell) - strain
        for _ in range(2):
            here = slip + (distance[:, None] - start) * (strain + 0.5 * part * growth)
            here = np.minimum(here, last_slip)
            square = first + (last - first) * _share(bond_energy(here, law) - low, high - low)
            part = _share(np.sqrt(square) - np.sqrt(first), np.sqrt(last) - np.sqrt(first))
        return np.sqrt(square), here

    def strongest(self, distance: Floats) -> tuple[Floats, Floats, Floats]:
        """Free-end slip with the largest stress at a distance; that stress and the slip there."""
        free = self._search(lambda slips: self.at_distance(self.march(slips), distance)[0])
        stress, slip = self.at_distance(self.march(free[:, None]), distance)
        return free, stress[:, 0], slip[:, 0]

    def shortest(self) -> tuple[Floats, Floats]:
        """Free-end slip that reaches the last stress over the shortest distance, and that."""
        free = self._search(lambda slips: -self.march(slips).distance[:, :, -1])
        return free, self.march(free[:, None]).distance[:, 0, -1]

    def _search(self, merit: Callable[[Floats], Floats]) -> Floats:
        """Free-end slip of each bar for which a merit is largest, the least of equals.

        A logarithmic grid from `SMALLEST_SLIP` to where the bond stress stays constant, then twice
        a closer grid between the neighbours of the best.
        """
        lowest, highest = np.log(SMALLEST_SLIP), np.log(np.asarray(self.law.slip_3))
        low, high = np.full(highest.shape, lowest), highest
        for columns in _COLUMNS:
            step = (high - low) / (columns - 1)
            grid = low[:, None] + step[:, None] * np.arange(columns)
            best = low + step * np.argmax(merit(np.exp(grid)), axis=1)
            low, high = np.maximum(best - step, lowest), np.minimum(best + step, highest)
        return np.asarray(np.exp(best))


def _graded(cells: int) -> Floats:
    """Nodes from 0 to 1, closer near 0."""
    return np.square(np.linspace(0.0, 1.0, cells + 1))


def _hardening_strains(steel: BarSteels, last_stress: Floats, cells: int) -> Floats:
    """Strains from the onset of hardening to that of the last stress, in geometric steps."""
    onset = np.asarray(steel.hardening_strain)
    yielding = np.maximum(last_stress, np.asarray(steel.yield_strength))
    last = np.asarray(bar_strain_at_stress(yielding, steel))
    powers = np.linspace(0.0, 1.0, cells + 1)
    strain: Floats = onset[:, None] * (last / onset)[:, None] ** powers
    strain[:, -1] = last
    return strain


def _hardening_energy(strain: Floats, steel: BarSteels, *, yield_reduction: bool) -> Floats:
    """Integral of ``ε/Ω dσ`` over each cell of hardening strains [MPa]."""
    width = np.diff(strain, axis=1)
    points = strain[:, :-1, None] + width[:, :, None] * _GAUSS_POINTS
    rows = indexed_steel(steel, (slice(None), None, None))
    gain = np.subtract(rows.tensile_strength, rows.yield_strength)
    span = np.subtract(rows.ultimate_strain, rows.hardening_strain)
    left = np.subtract(rows.ultimate_strain, points) / span
    slope = rows.hardening_exponent * gain / span * left ** (rows.hardening_exponent - 1.0)
    factor = yielded_bar_factor(points, rows) if yield_reduction else 1.0
    return np.asarray((points / factor * slope) @ _GAUSS_WEIGHTS) * width


def _ends(values: Floats, cell: NDArray[np.intp]) -> tuple[Floats, Floats]:
    """Values at both ends of one cell for each bar and slip."""
    at = cell[:, :, None]
    return (
        np.take_along_axis(values, at, axis=2)[:, :, 0],
        np.take_along_axis(values, at + 1, axis=2)[:, :, 0],
    )


def _node(values: Floats, cell: NDArray[np.intp]) -> Floats:
    return np.take_along_axis(values, cell, axis=1)


def _share(part: Floats, whole: Floats) -> Floats:
    """Part over whole from 0 to 1; 0 of nothing."""
    share = np.divide(part, whole, out=np.zeros(whole.shape), where=whole > 0.0)
    return np.clip(share, 0.0, 1.0)
