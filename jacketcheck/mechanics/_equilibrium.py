"""Strain planes of a section that carry a given axial load, for many curvatures at once.

The strain at the centre is bracketed by scanning the strain of the extreme compressive fibre on a
coarse section and refined on the fine one.  Where two strain planes balance the load, the one with
the smaller compressive strain is taken: it lies on the branch that loading follows.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics._fibre_model import FibreModel
from jacketcheck.mechanics.section import CircularSection

__all__ = ["Equilibrium", "EquilibriumSolver"]

_Flags = NDArray[np.bool_]
_Rows = NDArray[np.intp]
_TOLERANCE = 1.0e-6  # of the squash load
_COARSE_STRIPS = 24
_COARSE_SWEEPS = 3
_COARSE_ERROR = 0.03  # of the squash load, far more than the coarse section is wrong by
_SCAN_EVERY = 4
_FINE_SWEEPS = 8
_STUBBORN_SWEEPS = 80
_MARGIN = 1.0e-3  # strain by which the root of the fine section may leave the coarse bracket
_TENSION_STRAINS = np.array([-0.1, -0.05, -0.02, -0.01, -0.005, -0.0025, -0.001, -0.0005])
_SCAN_STRAINS = np.array(
    [0.0, 0.0004, 0.001, 0.0017, 0.0025, 0.004, 0.007, 0.012, 0.02, 0.035, 0.05, 0.08, 0.16]
)


@dataclass(eq=False)
class Equilibrium:
    """Solution of some curvatures; strains and stresses are compression positive.

    Attributes
    ----------
    centre_strain, moment, bar_stress
        Strain at the centre [-], moment [N mm] and stress of each bar [MPa].
    converged
        Whether the section carries the axial load.
    fractured
        Whether each bar has fractured at this or a smaller curvature.
    """

    centre_strain: Floats
    moment: Floats
    bar_stress: Floats
    converged: _Flags
    fractured: _Flags

    @classmethod
    def none(cls, curvatures: int, bars: int) -> Equilibrium:
        """Nothing solved yet."""
        return cls(
            np.zeros(curvatures),
            np.zeros(curvatures),
            np.zeros((bars, curvatures)),
            np.zeros(curvatures, bool),
            np.zeros((bars, curvatures), bool),
        )

    def put(self, rows: _Rows, other: Equilibrium) -> None:
        """Take over the solution of some rows."""
        self.centre_strain[rows] = other.centre_strain
        self.moment[rows] = other.moment
        self.bar_stress[:, rows] = other.bar_stress
        self.converged[rows] = other.converged


@dataclass(eq=False)
class _Search:
    """Search for the centre strain at which the excess of axial force vanishes, row by row.

    Newton steps are kept inside a shrinking bracket, which is bisected where a step would leave it
    or the last one did not halve the excess.
    """

    row: _Rows
    low: Floats
    high: Floats
    strain: Floats
    last_excess: Floats

    @classmethod
    def between(cls, row: _Rows, low: Floats, high: Floats, strain: Floats) -> _Search:
        """Search in brackets from a first guess."""
        return cls(row, low, high, strain, np.full(row.size, np.inf))

    def spread(self, picked: _Rows, curvature: Floats, *, radius: float) -> _Search:
        """Search at all curvatures from one at the `picked` ones; its brackets are likely.

        Brackets and guesses are carried over as strains of the extreme fibre at `radius`.
        """
        found = picked[self.row]
        every = np.arange(curvature.size)
        right = np.minimum(np.searchsorted(found, every), found.size - 1)
        left = np.maximum(np.searchsorted(found, every, side="right") - 1, 0)
        reach, reach_found = radius * curvature, radius * curvature[found]
        low, high = self.low + reach_found, self.high + reach_found
        return _Search.between(
            every,
            np.minimum(low[left], low[right]) - reach,
            np.maximum(high[left], high[right]) - reach,
            np.interp(reach, reach_found, self.strain + reach_found) - reach,
        )

    def widened(self, margin: float) -> _Search:
        """The same for another function whose root is near."""
        return _Search.between(self.row, self.low - margin, self.high + margin, self.strain)

    def advance(self, excess: Floats, stiffness: Floats) -> None:
        """Move on, given the excess at the present strain and its derivative."""
        above = excess > 0.0
        self.low = np.where(above, self.low, self.strain)
        self.high = np.where(above, self.strain, self.high)
        after = self.strain - excess / np.where(stiffness > 0.0, stiffness, np.nan)
        newton = (after > self.low) & (after < self.high)
        newton &= 2.0 * np.abs(excess) < self.last_excess
        self.strain = np.where(newton, after, 0.5 * (self.low + self.high))
        self.last_excess = np.abs(excess)

    def keep(self, kept: _Flags) -> None:
        """Drop the other rows."""
        for name in ("row", "low", "high", "strain", "last_excess"):
            setattr(self, name, getattr(self, name)[kept])


@dataclass(frozen=True, eq=False)
class EquilibriumSolver:
    """Equilibrium of one section, bent in one direction, under one axial load."""

    section: CircularSection
    axial_load: float
    fine: FibreModel
    coarse: FibreModel

    @classmethod
    def of(
        cls, section: CircularSection, *, axial_load: float, angle: float, strips: int
    ) -> EquilibriumSolver:
        """Solver on a given number of strips."""
        fine = FibreModel.of(section, angle=angle, strips=strips)
        return cls(section, axial_load, fine, fine.coarser(_COARSE_STRIPS))

    def solve(self, curvature: Floats) -> Equilibrium:
        """Solve all curvatures, dropping each bar from its fracture on."""
        state = self._solve(curvature, None)
        fractured = self._fractured(curvature, state)
        while (rows := np.flatnonzero((fractured != state.fractured).any(axis=0))).size:
            state.put(rows, self._solve(curvature[rows], np.where(fractured[:, rows], 0.0, 1.0)))
            state.fractured = fractured
            fractured = self._fractured(curvature, state)
        return state

    def _fractured(self, curvature: Floats, state: Equilibrium) -> _Flags:
        """Bars fractured at each curvature: those known, and those now beyond their strain."""
        section = self.section
        tension = -(state.centre_strain + curvature * self.fine.bar_position[:, None])
        over = tension > section.bar_ultimate_strain[:, None]
        over &= section.bar_anchored[:, None] & state.converged
        fractured: _Flags = np.logical_or.accumulate(over | state.fractured, axis=1)
        return fractured

    def _solve(self, curvature: Floats, intact: Floats | None) -> Equilibrium:
        """Solve with the given bars; `intact` is 0 for fractured bars, None for no fracture."""
        state = Equilibrium.none(curvature.size, self.fine.bar_offset.size)
        search = self._approach(curvature, intact)
        if search.row.size:
            self._finish(state, search, curvature, intact, sweeps=_FINE_SWEEPS)
        rest = np.flatnonzero(~state.converged)
        if rest.size:
            state.put(rest, self._solve_stubborn(curvature[rest], _rows(intact, rest)))
        return state

    def _approach(self, curvature: Floats, intact: Floats | None) -> _Search:
        """Roots of the coarse section: scanned at some curvatures, refined at all of them."""
        every = _SCAN_EVERY if curvature.size > 4 * _SCAN_EVERY else 1
        picked = np.union1d(np.arange(0, curvature.size, every), curvature.size - 1)
        search = self._scan(
            self.coarse, curvature[picked], _rows(intact, picked), self._scan_strains()
        )
        if search.row.size == 0:
            return search
        search = search.spread(picked, curvature, radius=0.5 * self.section.diameter)
        for _ in range(_COARSE_SWEEPS):
            forces = self.coarse.resultants(search.strain, curvature, intact)
            search.advance(forces.axial_force - self.axial_load, forces.axial_stiffness)
        return search.widened(_MARGIN)

    def _solve_stubborn(self, curvature: Floats, intact: Floats | None) -> Equilibrium:
        """Dense scan of the fine section, then enough sweeps to bisect to the tolerance."""
        state = Equilibrium.none(curvature.size, self.fine.bar_offset.size)
        strains = self._scan_strains()
        between = np.linspace(0.0, 1.0, 8, endpoint=False)
        dense = (strains[:-1, None] + np.diff(strains)[:, None] * between).ravel()
        _, excess = self._excess(self.coarse, curvature, intact, dense)
        near = np.flatnonzero(excess.max(axis=1) > -_COARSE_ERROR * self.section.squash_load)
        if near.size:
            curvature, intact = curvature[near], _rows(intact, near)
            search = self._scan(self.fine, curvature, intact, dense)
            found = Equilibrium.none(near.size, self.fine.bar_offset.size)
            self._finish(found, search, curvature, intact, sweeps=_STUBBORN_SWEEPS)
            state.put(near, found)
        return state

    def _scan_strains(self) -> Floats:
        if self.axial_load < 0.0:
            return np.concatenate([_TENSION_STRAINS, _SCAN_STRAINS])
        return _SCAN_STRAINS

    def _excess(
        self, model: FibreModel, curvature: Floats, intact: Floats | None, extreme: Floats
    ) -> tuple[Floats, Floats]:
        """Centre strain and excess of axial force for each curvature and extreme fibre strain."""
        centre = extreme - 0.5 * self.section.diameter * curvature[:, None]
        whole = None if intact is None else np.repeat(intact, extreme.size, axis=1)
        forces = model.resultants(centre.ravel(), np.repeat(curvature, extreme.size), whole)
        return centre, forces.axial_force.reshape(centre.shape) - self.axial_load

    def _scan(
        self, model: FibreModel, curvature: Floats, intact: Floats | None, extreme: Floats
    ) -> _Search:
        """First pair of extreme fibre strains between which the axial force passes the load."""
        centre, excess = self._excess(model, curvature, intact, extreme)
        passes = (excess[:, :-1] <= 0.0) & (excess[:, 1:] > 0.0)
        row = np.flatnonzero(passes.any(axis=1))
        first = np.argmax(passes[row], axis=1)
        low, high = centre[row, first], centre[row, first + 1]
        below, above = excess[row, first], excess[row, first + 1]
        return _Search.between(row, low, high, low + (high - low) * below / (below - above))

    def _finish(
        self,
        state: Equilibrium,
        search: _Search,
        curvature: Floats,
        intact: Floats | None,
        *,
        sweeps: int,
    ) -> None:
        """Sweep over the rows of a search until their axial force is that of the load."""
        tolerance = _TOLERANCE * self.section.squash_load
        for _ in range(sweeps):
            row, strain = search.row, search.strain
            forces = self.fine.resultants(strain, curvature[row], _rows(intact, row))
            excess = forces.axial_force - self.axial_load
            done = np.abs(excess) <= tolerance
            state.centre_strain[row] = strain
            state.moment[row] = forces.moment
            state.bar_stress[:, row] = forces.bar_stress
            state.converged[row] = done
            if done.all():
                return
            search.advance(excess, forces.axial_stiffness)
            search.keep(~done)


def _rows(values: Floats | None, rows: _Rows) -> Floats | None:
    """Some curvatures of an array (bars, curvatures), or None of none."""
    return None if values is None else values[:, rows]
