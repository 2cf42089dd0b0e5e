"""Moment-curvature analysis of a circular section under constant axial load.

All curvatures are solved at once.  A point without equilibrium is flagged; nothing is
extrapolated.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_at_least, require_finite
from jacketcheck.mechanics._equilibrium import Equilibrium, EquilibriumSolver
from jacketcheck.mechanics.section import CircularSection

__all__ = ["MomentCurvature", "curvature_range", "moment_curvature"]

_Flags = NDArray[np.bool_]


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

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import unconfined_concrete_law
    >>> from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
    >>> concrete = unconfined_concrete_law(strength=30.0, elastic_modulus=27e3)
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> bars = BarGroup.ring(12, radius=420.0, area=645.0, steel=steel)
    >>> section = CircularSection((ConcreteZone("core", 1000.0, concrete),), (bars,))
    >>> round(float(curvature_range(section, count=10)[-1]), 7)
    0.0001033
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

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import unconfined_concrete_law
    >>> from jacketcheck.mechanics.section import BarGroup, CircularSection, ConcreteZone
    >>> concrete = unconfined_concrete_law(strength=30.0, elastic_modulus=27e3)
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> bars = BarGroup.ring(12, radius=420.0, area=645.0, steel=steel)
    >>> section = CircularSection((ConcreteZone("core", 1000.0, concrete),), (bars,))
    >>> response = moment_curvature(section, axial_load=2e6, curvature=np.array([1e-6, 5e-6]))
    >>> response.converged.tolist()
    [True, True]
    >>> (response.moment / 1e6).round().tolist()
    [744.0, 1771.0]
    """
    require_finite(axial_load=axial_load, angle=angle)
    phi = curvature_range(section) if curvature is None else np.atleast_1d(curvature).astype(float)
    require_at_least(0.0, curvature=phi)
    if phi.ndim != 1 or phi.size == 0:
        raise DomainError("curvature", phi.shape, "a row of at least one curvature")
    if np.any(np.diff(phi) <= 0.0):
        raise DomainError("curvature", float(phi[np.argmin(np.diff(phi))]), "strictly increasing")
    if strips < 10:
        raise DomainError("strips", strips, "at least 10")
    solver = EquilibriumSolver.of(section, axial_load=axial_load, angle=angle, strips=strips)
    return _response(solver, angle, phi, solver.solve(phi))


def _response(
    solver: EquilibriumSolver, angle: float, curvature: Floats, state: Equilibrium
) -> MomentCurvature:
    """Turn a solution into results, compression strains and tension stresses positive."""
    section, good, centre = solver.section, state.converged, state.centre_strain
    tension = -(centre[:, None] + curvature[:, None] * solver.fine.bar_position)
    fractured = state.fractured.T
    counted = np.where(section.bar_yields & ~fractured, tension, 0.0)

    def strain(values: Floats) -> Floats:
        return np.where(good, values, np.inf)

    return MomentCurvature(
        section=section,
        axial_load=solver.axial_load,
        angle=angle,
        curvature=curvature,
        moment=np.where(good, state.moment, 0.0),
        transverse_moment=np.where(good, _transverse(section, angle, tension, state), 0.0),
        centre_strain=strain(centre),
        extreme_compressive_strain=strain(centre + 0.5 * section.diameter * curvature),
        core_compressive_strain=strain(centre + 0.5 * section.core_diameter * curvature),
        extreme_tensile_strain=strain(np.max(counted, axis=1, initial=0.0)),
        bar_strain=np.where(good[:, None], tension, np.inf),
        bar_stress=np.where(good[:, None], -state.bar_stress.T, 0.0),
        bar_fractured=fractured,
        converged=good,
    )


def _transverse(
    section: CircularSection, angle: float, tension: Floats, state: Equilibrium
) -> Floats:
    """Moment about the other axis [N mm]: the concrete is symmetric but for what bars displace."""
    across = section.bar_y * np.cos(angle) - section.bar_x * np.sin(angle)
    stress = state.bar_stress.T.copy()
    for index, zone in enumerate(section.zones):
        inside = section.bar_zone == index
        if inside.any():
            stress[:, inside] -= zone.law.stress_at(-tension[:, inside])
    return np.asarray(stress @ (section.bar_area * across))
