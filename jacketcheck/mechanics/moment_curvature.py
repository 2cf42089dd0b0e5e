"""Moment-curvature analysis of a circular section under constant axial load.

All curvatures are solved at once: the strain at the centre that balances the axial load is
bracketed on a coarse section by scanning the strain of the extreme compressive fibre, and refined
on the fine one with Newton's method inside the bracket.  Where two strain planes balance the load,
the one with the smaller compressive strain is taken: it lies on the branch that loading follows.
A point without equilibrium is flagged; nothing is extrapolated.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_at_least, require_finite
from jacketcheck.mechanics._fibre_model import FibreModel
from jacketcheck.mechanics.section import CircularSection

__all__ = ["MomentCurvature", "curvature_range", "moment_curvature"]

_Flags = NDArray[np.bool_]
_Rows = NDArray[np.intp]
_TOLERANCE = 1.0e-6  # of the squash load
_COARSE_STRIPS = 20
_TENSION_STRAINS = np.array([-0.1, -0.05, -0.02, -0.01, -0.005, -0.0025, -0.001, -0.0005])
_SCAN_STRAINS = np.array(
    [0.0, 0.0004, 0.001, 0.0017, 0.0025, 0.004, 0.007, 0.012, 0.02, 0.035, 0.05, 0.08]
)


@dataclass(frozen=True, eq=False)
class MomentCurvature:
    """Response of a section, one entry for each curvature.

    Where `converged` is False no equilibrium was found: the moment and bar stresses read 0 (no
    resistance) and every strain reads infinity, so that neither can pass a check.

    Attributes
    ----------
    section
        The section analysed.
    axial_load
        Axial load [N], compression positive.
    angle
        Bending direction [rad]: from the centre to the extreme compressive fibre.
    curvature
        Curvature [1/mm], ascending, shape (n,).
    moment
        Moment about the column's centre, about the axis square to the bending direction [N mm].
    transverse_moment
        Moment about the other axis [N mm]; zero unless the bars are not symmetric.
    centre_strain
        Strain at the column's centre [-], compression positive.
    extreme_compressive_strain
        Strain at the outermost concrete fibre [-], compression positive.
    core_compressive_strain
        Strain at the edge of the core [-], compression positive.
    extreme_tensile_strain
        Largest tensile strain of any bar that is anchored well enough to yield and is not
        fractured [-], tension positive; 0 where there is none.
    bar_strain
        Strain of the section at each bar [-], tension positive, shape (n, bars).  For a bar whose
        stress is limited by bond this is not the strain of the bar.
    bar_stress
        Stress of each bar [MPa], tension positive, shape (n, bars).
    bar_fractured
        Whether each bar has fractured at this or a smaller curvature, shape (n, bars).
    converged
        Whether equilibrium was found, shape (n,).
    """

    section: CircularSection
    axial_load: float
    angle: float
    curvature: Floats
    moment: Floats
    transverse_moment: Floats
    centre_strain: Floats
    extreme_compressive_strain: Floats
    core_compressive_strain: Floats
    extreme_tensile_strain: Floats
    bar_strain: Floats
    bar_stress: Floats
    bar_fractured: _Flags
    converged: _Flags

    @property
    def valid_count(self) -> int:
        """Number of points before the first one without equilibrium."""
        return int(self.converged.size if self.converged.all() else np.argmin(self.converged))


def curvature_range(section: CircularSection, *, count: int = 100) -> Floats:
    """Curvatures from near zero to beyond any ultimate curvature.

    Parameters
    ----------
    section
        Circular section.
    count
        Number of curvatures, at least 2.

    Returns
    -------
    ndarray
        Curvatures [1/mm], shape (count,), denser near zero.

    Raises
    ------
    DomainError
        If `count` is below 2.

    Notes
    -----
    The last one strains the core's edge to its ultimate strain and the farthest bar to fracture at
    the same time; a section fails before or at that.

    References
    ----------
    Plane sections.
    """
    if count < 2:
        raise DomainError("count", count, "at least 2")
    strain = section.zones[0].law.ultimate_strain
    lever = 0.5 * section.core_diameter
    if section.bars:
        strain += float(np.max(section.bar_ultimate_strain))
        lever += float(np.max(section.bar_radius))
    last: float = strain / lever
    return last * (np.arange(1, count + 1) / count) ** 2


def moment_curvature(
    section: CircularSection,
    *,
    axial_load: float,
    curvature: Floats | None = None,
    angle: float = 0.0,
    strips: int = 200,
) -> MomentCurvature:
    """Moments and strains of a section for a range of curvatures.

    Parameters
    ----------
    section
        Circular section.
    axial_load
        Constant axial load through the column's centre [N], compression positive.
    curvature
        Strictly increasing curvatures, zero or more [1/mm]; `curvature_range` by default.
    angle
        Bending direction [rad], from the centre to the extreme compressive fibre.
    strips
        Number of strips across the outer diameter, at least 10.

    Returns
    -------
    MomentCurvature
        Response at each curvature, with points without equilibrium flagged.

    Raises
    ------
    DomainError
        If a number is not finite or the curvatures do not increase.

    Notes
    -----
    Plane sections remain plane and bars follow the section, except that the stress of a bar is
    limited to what its bond can develop.  Concrete displaced by bars is deducted.  A fully
    anchored bar fractures in tension at its ultimate strain and stays fractured at all larger
    curvatures; one whose bond cannot develop its tensile strength slips instead.

    References
    ----------
    Strip integration of a circular column: Priestley, Seible and Calvi 1996, *Seismic Design and
    Retrofit of Bridges*, sec. 5.3; Mander, Priestley and Park 1988, J. Struct. Eng. 114(8).
    """
    require_finite(axial_load=axial_load, angle=angle)
    phi = curvature_range(section) if curvature is None else np.atleast_1d(curvature).astype(float)
    require_at_least(0.0, curvature=phi)
    if np.any(np.diff(phi) <= 0.0):
        raise DomainError("curvature", float(phi[np.argmin(np.diff(phi))]), "strictly increasing")
    if strips < 10:
        raise DomainError("strips", strips, "at least 10")
    solver = _Solver(
        section,
        axial_load,
        FibreModel.of(section, angle=angle, strips=strips),
        FibreModel.of(section, angle=angle, strips=_COARSE_STRIPS, displaced=False),
    )
    state = solver.with_fracture(phi)
    return _response(section, axial_load, angle, phi, solver.fine, state)


@dataclass(eq=False)
class _State:
    """Solution of some curvatures; `fractured` is None while every bar is whole."""

    centre_strain: Floats
    moment: Floats
    bar_stress: Floats
    converged: _Flags
    fractured: _Flags | None = None

    def put(self, rows: _Rows, other: _State) -> None:
        """Take over the solution of some rows."""
        self.centre_strain[rows] = other.centre_strain
        self.moment[rows] = other.moment
        self.bar_stress[rows] = other.bar_stress
        self.converged[rows] = other.converged


@dataclass(frozen=True, eq=False)
class _Bracket:
    """Centre strains between which the axial force passes the load, and a first guess."""

    low: Floats
    high: Floats
    guess: Floats
    found: _Flags


@dataclass(frozen=True, eq=False)
class _Solver:
    """Equilibrium of one section under one axial load."""

    section: CircularSection
    axial_load: float
    fine: FibreModel
    coarse: FibreModel

    def with_fracture(self, curvature: Floats) -> _State:
        """Solve all curvatures, dropping each bar from its fracture on."""
        state = self.solve(curvature, None)
        fractured = self._fractured(curvature, state, None)
        while fractured is not None:
            state = self.solve(curvature, 1.0 - fractured)
            state.fractured = fractured
            fractured = self._fractured(curvature, state, fractured)
        return state

    def _fractured(
        self, curvature: Floats, state: _State, known: _Flags | None
    ) -> _Flags | None:
        """Bars fractured at each curvature, or None if there is none that is not `known`."""
        section = self.section
        tension = -(state.centre_strain[:, None] + curvature[:, None] * self.fine.bar_position)
        anchored = section.bar_stress_limit >= section.bar_tensile_strength
        over = (tension > section.bar_ultimate_strain) & anchored & state.converged[:, None]
        if known is not None:
            over |= known
        over = np.logical_or.accumulate(over, axis=0)
        if not over.any() or (known is not None and np.array_equal(over, known)):
            return None
        return over

    def solve(self, curvature: Floats, intact: Floats | None) -> _State:
        """Centre strains for which the section carries the axial load."""
        near = self._bracket(self.coarse, curvature, intact, self._scan_strains())
        guess = self._newton(self.coarse, curvature, intact, near, iterations=8, slack=1e3)
        wide = _Bracket(near.low - 1e-3, near.high + 1e-3, guess.centre_strain, near.found)
        state = self._newton(self.fine, curvature, intact, wide, iterations=6)
        rest = np.flatnonzero(~state.converged)
        if rest.size:
            state.put(rest, self._solve_stubborn(curvature[rest], _rows(intact, rest)))
        return state

    def _solve_stubborn(self, curvature: Floats, intact: Floats | None) -> _State:
        """Dense scan of the fine section, then Newton with enough bisections."""
        strains = self._scan_strains()
        between = np.linspace(0.0, 1.0, 9)
        dense = np.unique((strains[:-1, None] + np.diff(strains)[:, None] * between).ravel())
        bracket = self._bracket(self.fine, curvature, intact, dense)
        return self._newton(self.fine, curvature, intact, bracket, iterations=60)

    def _scan_strains(self) -> Floats:
        if self.axial_load < 0.0:
            return np.concatenate([_TENSION_STRAINS, _SCAN_STRAINS])
        return _SCAN_STRAINS

    def _bracket(
        self, model: FibreModel, curvature: Floats, intact: Floats | None, extreme: Floats
    ) -> _Bracket:
        """First pair of extreme fibre strains between which the axial force passes the load."""
        origin = extreme - 0.5 * self.section.diameter * curvature[:, None]
        whole = None if intact is None else np.repeat(intact, extreme.size, axis=0)
        force = model.resultants(
            origin.ravel(), np.repeat(curvature, extreme.size), whole
        ).axial_force.reshape(origin.shape)
        excess = force - self.axial_load
        passes = (excess[:, :-1] <= 0.0) & (excess[:, 1:] > 0.0)
        first = np.argmax(passes, axis=1)
        row = np.arange(curvature.size)
        found = passes[row, first]
        low, high = origin[row, first], origin[row, first + 1]
        below, above = excess[row, first], excess[row, first + 1]
        share = np.where(found, below / np.where(found, below - above, 1.0), 0.5)
        return _Bracket(low, high, low + share * (high - low), found)

    def _newton(
        self,
        model: FibreModel,
        curvature: Floats,
        intact: Floats | None,
        bracket: _Bracket,
        *,
        iterations: int,
        slack: float = 1.0,
    ) -> _State:
        """Newton's method kept inside a shrinking bracket, bisecting where it would leave it."""
        tolerance = slack * _TOLERANCE * self.section.squash_load
        size, bars = curvature.size, model.bar_area.size
        state = _State(
            bracket.guess.copy(), np.zeros(size), np.zeros((size, bars)), np.zeros(size, bool)
        )
        low, high, rows = bracket.low.copy(), bracket.high.copy(), np.arange(size)
        for _ in range(iterations):
            strain = state.centre_strain[rows]
            forces = model.resultants(strain, curvature[rows], _rows(intact, rows))
            residual = forces.axial_force - self.axial_load
            done = np.abs(residual) <= tolerance
            state.put(rows, _State(strain, forces.moment, forces.bar_stress, done))
            if done.all():
                break
            low[rows] = np.where(residual <= 0.0, strain, low[rows])
            high[rows] = np.where(residual > 0.0, strain, high[rows])
            rising = forces.axial_stiffness > 0.0
            newton = strain - residual / np.where(rising, forces.axial_stiffness, 1.0)
            inside = rising & (newton > low[rows]) & (newton < high[rows])
            after = np.where(inside, newton, 0.5 * (low[rows] + high[rows]))
            state.centre_strain[rows] = np.where(done, strain, after)
            rows = rows[~done]
        return state


def _rows(values: Floats | None, rows: _Rows) -> Floats | None:
    """Some rows of an array, or None of none."""
    return None if values is None else values[rows]


def _response(
    section: CircularSection,
    axial_load: float,
    angle: float,
    curvature: Floats,
    model: FibreModel,
    state: _State,
) -> MomentCurvature:
    """Turn a solution into results, compression strains and tension stresses positive."""
    good = state.converged
    centre = state.centre_strain
    tension = -(centre[:, None] + curvature[:, None] * model.bar_position)
    fractured = np.zeros(tension.shape, bool) if state.fractured is None else state.fractured
    yielding = section.bar_stress_limit >= section.bar_yield_strength
    counted = np.where(yielding & ~fractured, tension, 0.0)
    across = -section.bar_x * np.sin(angle) + section.bar_y * np.cos(angle)
    compression = state.bar_stress
    # the concrete is symmetric about the bending direction, displaced concrete aside
    transverse = (compression - _displaced_stress(section, -tension)) @ (section.bar_area * across)

    def strain(values: Floats) -> Floats:
        return np.where(good, values, np.inf)

    return MomentCurvature(
        section=section,
        axial_load=axial_load,
        angle=angle,
        curvature=curvature,
        moment=np.where(good, state.moment, 0.0),
        transverse_moment=np.where(good, transverse, 0.0),
        centre_strain=strain(centre),
        extreme_compressive_strain=strain(centre + 0.5 * section.diameter * curvature),
        core_compressive_strain=strain(centre + 0.5 * section.core_diameter * curvature),
        extreme_tensile_strain=strain(np.max(counted, axis=1, initial=0.0)),
        bar_strain=np.where(good[:, None], tension, np.inf),
        bar_stress=np.where(good[:, None], -compression, 0.0),
        bar_fractured=fractured,
        converged=good,
    )


def _displaced_stress(section: CircularSection, strain: Floats) -> Floats:
    """Stress [MPa] that concrete would have at each bar; strain is compression positive."""
    stress = np.zeros_like(strain)
    for index, zone in enumerate(section.zones):
        inside = section.bar_zone == index
        if inside.any():
            stress[:, inside] = zone.law.stress_at(strain[:, inside])
    return stress
