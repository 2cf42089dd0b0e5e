"""Moment of a circular section at a given strain of its extreme fibre, many cases at once.

The concrete of a circular section is the same in every direction; its force and moment depend on
the neutral axis alone once the extreme strain is given, so that they are tabulated once. Only the
bars differ from case to case, in their position and in what bond has developed in them.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_finite, require_positive
from jacketcheck.mechanics._bracketed_root import bracketed_roots
from jacketcheck.mechanics._stress_table import (
    CELLS,
    STEP,
    StressTable,
    cells_of,
    strain_range,
)
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.section import CircularSection, ConcreteZone

__all__ = ["moment_at_extreme_strain"]

_STRIPS = 40
_REACH = 1.5  # neutral axis depth in diameters up to which the table is in steps of depth
_CELLS = 200  # of the table up to there
_MORE_CELLS = 20  # from there to uniform compression
_TOLERANCE = 1e-6  # of the squash load
_LARGEST_STEEL_STRAIN = 0.159  # the grid of the curves ends soon after


def moment_at_extreme_strain(
    section: CircularSection,
    *,
    strain: float,
    axial_load: float,
    angle: Floats,
    stress_limit: Floats | None = None,
    outer_zone_limit: Floats | None = None,
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
    outer_zone_limit
        Largest compression that the outermost zone can take over from the others [N], at least
        zero, shape (cases,); not limited by default.

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
    Where the compression of the outermost zone is limited, all of its stresses are scaled alike: a
    state in equilibrium, which the shear between the zones can bring about. The neutral axis that
    balances the axial load is bracketed between nearly none and uniform compression. Force and
    moment of the concrete are tabulated in steps of the neutral axis depth of 0.75 % of the
    diameter, which moves the moment by some 0.01 %.

    References
    ----------
    Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), sec. 5.3.

    Examples
    --------
    >>> from jacketcheck.mechanics.bar_steel import BarSteel
    >>> from jacketcheck.mechanics.concrete_law import unconfined_concrete_law
    >>> from jacketcheck.mechanics.section import BarGroup
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
    given = section.bar_stress_limit if stress_limit is None else stress_limit
    concrete = _concrete_table(section.zones, float(strain))
    outer = _fitted("outer_zone_limit", outer_zone_limit, (direction.size,))
    bars = _Bars.of(section, direction, _fitted("stress_limit", given, _shape(direction, section)))

    def forces(axis: Floats) -> tuple[Floats, Floats]:
        """Axial force and moment of concrete and bars."""
        force, moment = concrete.at(axis, outer) + bars.at(strain, concrete.curvature(axis))
        return force, moment

    def excess(axis: Floats) -> Floats:
        return (forces(axis)[0] - axial_load) / section.squash_load

    turn = np.full(direction.size, float(_CELLS))
    at_turn = excess(turn)
    inside = at_turn >= 0.0
    end = np.where(inside, 1.0, _CELLS + _MORE_CELLS)
    at_end = excess(end)
    carried = np.where(inside, at_end <= 0.0, at_end >= 0.0)
    # without a root between them, a search would leave the table
    end, at_end = np.where(carried, end, turn), np.where(carried, at_end, 0.0)
    at_turn = np.where(carried, at_turn, 0.0)
    axis = bracketed_roots(excess, end, turn, tolerance=_TOLERANCE, at_ends=(at_end, at_turn))
    force, moment = forces(axis)
    missed = np.abs(force - axial_load) > 10.0 * _TOLERANCE * section.squash_load
    return np.where(carried & ~missed, moment, np.nan)


def _shape(direction: Floats, section: CircularSection) -> tuple[int, int]:
    return direction.size, section.bar_area.size


def _fitted(name: str, values: Floats | None, shape: tuple[int, ...]) -> Floats:
    """Limits in a given shape; infinite where there are none."""
    given = np.asarray(np.inf if values is None else values, dtype=float)
    if not np.all(given >= 0.0):
        raise DomainError(name, float(np.min(given)), "at least zero")
    try:
        return np.broadcast_to(given, shape)
    except ValueError as error:
        raise DomainError(name, np.shape(given), f"of shape {shape}") from error


@dataclass(frozen=True, eq=False)
class _ConcreteTable:
    """Force and moment of the concrete for positions of the neutral axis.

    A position counts cells: the first ones are equal steps of its depth, up to `_REACH`
    diameters; from there the curvature falls to none in equal steps.

    Attributes
    ----------
    value, rise
        Axial force and moment of the inner zones, then of the outermost one, at the start of each
        cell and over it, shape (4, cells).
    turning_curvature
        Curvature between the two kinds of cells [1/mm].
    """

    value: Floats
    rise: Floats
    turning_curvature: float

    def curvature(self, axis: Floats) -> Floats:
        """Curvature [1/mm] at positions of the neutral axis above zero."""
        return self.turning_curvature * _relative_curvature(axis)

    def at(self, axis: Floats, outer_limit: Floats) -> Floats:
        """Axial force and moment, shape (2, cases), the outermost zone held to its limit."""
        cell = np.minimum(axis.astype(np.intp), self.rise.shape[1] - 1)
        found = self.rise.take(cell, axis=1)
        found *= axis - cell
        found += self.value.take(cell, axis=1)
        inner, outer = found[:2], found[2:]
        held = outer_limit < outer[0]
        if held.any():
            outer = outer * np.where(held, outer_limit / np.where(held, outer[0], 1.0), 1.0)
        total: Floats = inner + outer
        return total


def _relative_curvature(axis: Floats) -> Floats:
    """Curvature at positions of the neutral axis above zero, over that at the turning point."""
    relative: Floats = np.where(
        axis < _CELLS, _CELLS / axis, (_CELLS + _MORE_CELLS - axis) / _MORE_CELLS
    )
    return relative


@lru_cache(maxsize=8)
def _concrete_table(zones: tuple[ConcreteZone, ...], strain: float) -> _ConcreteTable:
    """Tabulate the concrete; strips lie between the extreme fibre and the neutral axis."""
    turning = strain / (_REACH * zones[-1].outer_diameter)
    axis, lever, discs = _strips(tuple(zone.outer_diameter for zone in zones))
    plane = strain - (turning * _relative_curvature(axis))[:, None] * lever
    inner, outer = np.zeros((2, 2, axis.size + 1))  # no compressed concrete at position 0
    for zone, disc in zip(zones, discs, strict=True):
        inner += outer
        outer[:, 1:] = np.sum(zone.law.stress_at(plane) * disc, axis=2)
    nodes = np.concatenate([inner, outer])
    return _ConcreteTable(nodes[:, :-1].copy(), np.diff(nodes, axis=1), turning)


@lru_cache(maxsize=16)
def _strips(diameters: tuple[float, ...]) -> tuple[Floats, Floats, tuple[Floats, ...]]:
    """Positions of the neutral axis, and for each the strips that are then compressed.

    Returns
    -------
    tuple
        Positions, shape (n,); distance of each strip from the extreme fibre, shape (n, strips);
        and area and first moment of each zone in it, each of shape (2, n, strips).
    """
    diameter = diameters[-1]
    axis = np.arange(1.0, _CELLS + _MORE_CELLS + 1)
    depth = np.minimum(_REACH * np.minimum(axis / _CELLS, 1.0), 1.0) * diameter
    edge = 0.5 * diameter - np.outer(depth, np.linspace(0.0, 1.0, _STRIPS + 1))
    lever = 0.5 * (diameter - edge[:, 1:] - edge[:, :-1])
    discs = [np.diff(_segments(edge, 0.5 * one), axis=2) for one in diameters]
    return axis, lever, (discs[0], *(outer - inner for inner, outer in pairwise(discs)))


def _segments(chord: Floats, radius: float) -> Floats:
    """Area and first moment of the disc beyond chords at distances from its centre."""
    distance = np.clip(chord, -radius, radius)
    # as a product: two squares of one number, formed in two ways, may differ by their rounding
    half_chord = np.sqrt((radius - distance) * (radius + distance))
    area = radius**2 * np.arccos(distance / radius) - distance * half_chord
    return np.stack([area, half_chord**3 / 1.5])


@lru_cache(maxsize=64)
def _steel_table(steels: tuple[BarSteel, ...]) -> StressTable:
    """Curves of some steels one after the other, compression positive; nothing beyond fracture."""
    largest = max(steel.ultimate_strain for steel in steels)
    if largest > _LARGEST_STEEL_STRAIN:
        raise DomainError("ultimate_strain", largest, f"at most {_LARGEST_STEEL_STRAIN:g}")
    strain = strain_range(-largest - 2.0 * STEP, largest + 2.0 * STEP)
    return StressTable.joined(
        [StressTable.of(strain, -np.asarray(bar_stress(-strain, steel))) for steel in steels]
    )


@lru_cache(maxsize=8)
def _concrete_curves(zones: tuple[ConcreteZone, ...]) -> StressTable:
    """Curves of the zones one after the other."""
    return StressTable.joined([zone.law.table for zone in zones])


@dataclass(frozen=True, eq=False)
class _Bars:
    """Bars of a section in each case.

    Attributes
    ----------
    depth
        Distance from the extreme fibre, shape (cases, bars) [mm].
    weight
        Area and first moment, shape (2, cases, bars).
    lowest, highest
        Stress that bond can develop in tension and compression, shape (cases, bars) [MPa].
    steel, concrete
        Curves of the groups of bars and of the zones.
    steel_cell, concrete_cell
        First cell of each bar's curves, shape (bars,).
    """

    depth: Floats
    weight: Floats
    lowest: Floats
    highest: Floats
    steel: StressTable | None
    concrete: StressTable
    steel_cell: NDArray[np.intp]
    concrete_cell: NDArray[np.intp]

    @classmethod
    def of(cls, section: CircularSection, direction: Floats, limit: Floats) -> _Bars:
        """Turn the bars into each direction."""
        position = np.outer(np.cos(direction), section.bar_x)
        position += np.outer(np.sin(direction), section.bar_y)
        weight = np.stack([np.broadcast_to(section.bar_area, position.shape), position])
        weight[1] *= section.bar_area
        steels = tuple(group.steel for group in section.bars)
        group = np.repeat(np.arange(len(steels)), [one.x.size for one in section.bars])
        return cls(
            depth=0.5 * section.diameter - position,
            weight=weight,
            lowest=-limit,
            highest=np.ascontiguousarray(limit),
            steel=_steel_table(steels) if steels else None,
            concrete=_concrete_curves(section.zones),
            steel_cell=group.astype(np.intp) * CELLS,
            concrete_cell=section.bar_zone * CELLS,
        )

    def at(self, strain: float, curvature: Floats) -> Floats:
        """Axial force and moment, shape (2, cases), displaced concrete deducted."""
        if self.steel is None:
            return np.zeros((2, curvature.size))
        coordinate, cell = cells_of(strain - curvature[:, None] * self.depth)
        net = self.steel.at(coordinate, cell + self.steel_cell)
        np.minimum(net, self.highest, out=net)
        np.maximum(net, self.lowest, out=net)
        cell += self.concrete_cell
        net -= self.concrete.at(coordinate, cell)
        return np.asarray(np.einsum("kcb,cb->kc", self.weight, net))
