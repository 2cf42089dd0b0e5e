"""Moment of a circular section at a given strain of its extreme fibre, many directions at once.

The concrete of a circular section is the same in every direction; its force and moment depend on
the curvature alone once the extreme strain is given, so that they are tabulated once. Only the
bars differ from case to case, in their position and in what bond has developed in them.
"""

from __future__ import annotations

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_finite, require_positive
from jacketcheck.mechanics._bracketed_root import bracketed_roots
from jacketcheck.mechanics.bar_steel import bar_stress
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_geometry import chord_strips

__all__ = ["moment_at_extreme_strain"]

_STRIPS = 200
_CURVATURES = 300
_DEEPEST = 50.0  # neutral axis at fifty diameters: uniform compression for every purpose
_TOLERANCE = 1e-6  # of the squash load


def moment_at_extreme_strain(
    section: CircularSection,
    *,
    strain: float,
    axial_load: float,
    angle: Floats,
    stress_limit: Floats | None = None,
) -> Floats:
    """Moment when the outermost concrete fibre reaches a compressive strain.

    Parameters
    ----------
    section
        Circular section.
    strain
        Compressive strain of the extreme fibre [-], above zero.
    axial_load
        Axial load [N], compression positive.
    angle
        Bending direction of each case [rad], from the centre to the extreme compressive fibre,
        shape (cases,).
    stress_limit
        Stress that bond can develop in each bar [MPa], shape (cases, bars); by default that of the
        section's bar groups, in every case.

    Returns
    -------
    ndarray
        Moment about the axis square to the bending direction [N mm], shape (cases,); NaN where
        the section does not carry the axial load at this strain.

    Raises
    ------
    DomainError
        If a number is not finite, the strain is not above zero, or the shapes do not fit.

    Notes
    -----
    Plane sections; displaced concrete deducted; bars beyond their ultimate strain carry nothing.
    The curvature that balances the axial load is bracketed between uniform compression and a
    neutral axis at the extreme fibre.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), sec. 5.3.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import unconfined_concrete_law
    >>> from jacketcheck.mechanics.section import BarGroup, ConcreteZone
    >>> concrete = unconfined_concrete_law(strength=30.0, elastic_modulus=27386.0)
    >>> steel = BarSteel(469.0, 655.0, 0.0115, 0.09, 200e3)
    >>> column = CircularSection(
    ...     (ConcreteZone("core", 1200.0, concrete),),
    ...     (BarGroup.ring(20, radius=520.0, area=819.0, steel=steel),))
    >>> moment = moment_at_extreme_strain(
    ...     column, strain=0.003, axial_load=2000e3, angle=np.array([0.0]))
    >>> bool(3.5e9 < moment[0] < 4.5e9)
    True
    """
    require_positive(strain=strain)
    require_finite(axial_load=axial_load, angle=angle)
    direction = np.atleast_1d(np.asarray(angle, dtype=float))
    limit = _limits(section, direction.size, stress_limit)
    position = np.outer(np.cos(direction), section.bar_x) + np.outer(
        np.sin(direction), section.bar_y
    )
    grid, force_table, moment_table = _concrete_tables(section, strain)
    radius = 0.5 * section.diameter

    def bars(curvature: Floats) -> tuple[Floats, Floats]:
        """Force and moment of the bars, displaced concrete deducted."""
        at_bar = strain - curvature[:, None] * (radius - position)
        net = _bar_stresses(section, at_bar, limit) - _displaced(section, at_bar)
        return net @ section.bar_area, (net * position) @ section.bar_area

    scale = section.squash_load

    def excess(curvature: Floats) -> Floats:
        return (np.interp(curvature, grid, force_table) + bars(curvature)[0] - axial_load) / scale

    low, high = np.full(direction.size, grid[0]), np.full(direction.size, grid[-1])
    carried = (excess(low) >= 0.0) & (excess(high) <= 0.0)
    curvature = bracketed_roots(excess, low, high, tolerance=_TOLERANCE)
    balanced = carried & (np.abs(excess(curvature)) <= 10.0 * _TOLERANCE)
    moment = np.interp(curvature, grid, moment_table) + bars(curvature)[1]
    return np.where(balanced, moment, np.nan)


def _limits(section: CircularSection, cases: int, stress_limit: Floats | None) -> Floats:
    shape = (cases, section.bar_area.size)
    given = section.bar_stress_limit if stress_limit is None else np.asarray(stress_limit, float)
    if np.any(np.isnan(given)) or np.any(given < 0.0):
        raise DomainError("stress_limit", float(np.min(given)), "at least zero")
    try:
        return np.broadcast_to(given, shape)
    except ValueError as error:
        raise DomainError("stress_limit", np.shape(given), f"of shape {shape}") from error


def _concrete_tables(section: CircularSection, strain: float) -> tuple[Floats, Floats, Floats]:
    """Force and moment of the concrete zones for ascending curvatures."""
    deepest = _DEEPEST * section.diameter
    # dense where the neutral axis lies in the section
    depth = np.concatenate(
        [
            np.geomspace(deepest, 1.5 * section.diameter, _CURVATURES // 6),
            np.linspace(1.5, 0.002, _CURVATURES)[1:] * section.diameter,
        ]
    )
    curvature = strain / depth
    edges = np.linspace(-0.5, 0.5, _STRIPS + 1) * section.diameter
    force, moment = np.zeros_like(curvature), np.zeros_like(curvature)
    position = 0.5 * (edges[:-1] + edges[1:])
    plane = strain - np.outer(curvature, 0.5 * section.diameter - position)
    inside = np.zeros((2, _STRIPS))
    for zone in section.zones:
        disc = np.stack(chord_strips(zone.outer_diameter, edges=edges))
        stress = zone.law.stress_at(plane)
        force += stress @ (disc - inside)[0]
        moment += stress @ (disc - inside)[1]
        inside = disc
    return curvature, force, moment


def _bar_stresses(section: CircularSection, strain: Floats, limit: Floats) -> Floats:
    """Stress of each bar [MPa], compression positive; `strain` is compression positive."""
    stress = np.empty_like(strain)
    first = 0
    for group in section.bars:
        columns = slice(first, first + group.x.size)
        stress[:, columns] = -np.asarray(bar_stress(-strain[:, columns], group.steel))
        first += group.x.size
    return np.clip(stress, -limit, limit)


def _displaced(section: CircularSection, strain: Floats) -> Floats:
    """Stress that concrete would have at each bar [MPa]."""
    stress = np.zeros_like(strain)
    for index, zone in enumerate(section.zones):
        inside = section.bar_zone == index
        if inside.any():
            stress[:, inside] = zone.law.stress_at(strain[:, inside])
    return stress
