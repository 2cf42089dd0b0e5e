"""Axial force and moment of a circular section by strips, for many strain planes at once.

Stresses come from tables on uniform strain grids, stored as the intercept and slope of each cell,
so that one truncation finds the cell of a strain and one multiplication its stress; the slope is
the tangent modulus that Newton's method needs.  Compression is positive throughout.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.concrete_law import ConcreteLaw, strain_grid
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_geometry import ring_strips

__all__ = ["FibreModel", "Resultants"]

_STEEL_STEP = 2.0e-5
_STEEL_CELLS = 8000  # to a strain of 0.16 either way
_Integers = NDArray[np.intp]


@dataclass(frozen=True, eq=False)
class _StressTable:
    """Stress-strain curves, one after the other, as straight cells of equal width."""

    intercept: Floats
    slope: Floats
    first_strain: float
    inverse_step: float
    cells: int

    @classmethod
    def join(cls, first: float, step: float, curves: list[tuple[Floats, Floats]]) -> _StressTable:
        intercept = np.concatenate([curve[0] for curve in curves])
        slope = np.concatenate([curve[1] for curve in curves])
        return cls(intercept, slope, first, 1.0 / step, curves[0][0].size)

    def look_up(self, strain: Floats, offset: _Integers) -> tuple[Floats, Floats]:
        """Stress and tangent modulus [MPa]; `offset` is the first cell of each column's curve."""
        cell = strain * self.inverse_step
        cell += 1.0 - self.first_strain * self.inverse_step
        np.clip(cell, 0.0, self.cells - 1, out=cell)
        index = cell.astype(np.intp)
        index += offset
        tangent = self.slope.take(index, mode="clip")
        stress = self.intercept.take(index, mode="clip")
        stress += tangent * strain
        return stress, tangent


def _cells(strain: Floats, stress: Floats) -> tuple[Floats, Floats]:
    """Intercept and slope of each cell, with a cell of zero stress before and after the table."""
    slope = np.diff(stress) / np.diff(strain)
    return np.pad(stress[:-1] - slope * strain[:-1], 1), np.pad(slope, 1)


@lru_cache(maxsize=64)
def _steel_cells(steel: BarSteel) -> tuple[Floats, Floats]:
    """Table of one steel, its stress held beyond the ultimate strain.

    Fracture is kept out of the table because it depends on the bar's history: the solver drops a
    bar from the curvature on at which it fractures.
    """
    strain = _STEEL_STEP * np.arange(-_STEEL_CELLS, _STEEL_CELLS + 1)
    intact = np.clip(strain, -steel.ultimate_strain, steel.ultimate_strain)
    return _cells(strain, -np.asarray(bar_stress(-intact, steel)))


@lru_cache(maxsize=64)
def _concrete_cells(law: ConcreteLaw) -> tuple[Floats, Floats]:
    return _cells(strain_grid(), law.stress)


@dataclass(frozen=True, eq=False)
class Resultants:
    """Internal forces for each strain plane, compression positive.

    Attributes
    ----------
    axial_force
        Sum of stresses [N], shape (m,).
    axial_stiffness
        Derivative of the axial force by the strain at the centre [N], shape (m,).
    moment
        Moment about the centre [N mm], shape (m,).
    bar_stress
        Stress of each bar [MPa], shape (m, bars).
    """

    axial_force: Floats
    axial_stiffness: Floats
    moment: Floats
    bar_stress: Floats


@dataclass(frozen=True, eq=False)
class FibreModel:
    """Strips and bars of one section bent in one direction.

    Attributes
    ----------
    position, area, offset
        Concrete fibres: distance from the centre [mm], area [mm²], first cell of their curve.
        Concrete displaced by a bar is a fibre of negative area at the bar.
    concrete
        Curves of the zones.
    bar_position, bar_area, bar_offset, bar_limit
        Bars: distance from the centre [mm], area [mm²], first cell, bond-developed stress [MPa].
    steel
        Curves of the steels, or None without bars.
    """

    position: Floats
    area: Floats
    offset: _Integers
    concrete: _StressTable
    bar_position: Floats
    bar_area: Floats
    bar_offset: _Integers
    bar_limit: Floats
    steel: _StressTable | None

    @classmethod
    def of(
        cls, section: CircularSection, *, angle: float, strips: int, displaced: bool = True
    ) -> FibreModel:
        """Cut a section into `strips` strips across its outer diameter."""
        grid = strain_grid()
        concrete = _StressTable.join(
            float(grid[0]),
            float(grid[1] - grid[0]),
            [_concrete_cells(zone.law) for zone in section.zones],
        )
        bar_position = section.bar_position(angle)
        position, area, zone = _zone_strips(
            tuple(zone.outer_diameter for zone in section.zones), strips
        )
        if displaced:
            position = np.concatenate([position, bar_position])
            area = np.concatenate([area, -section.bar_area])
            zone = np.concatenate([zone, section.bar_zone])
        steels = [_steel_cells(group.steel) for group in section.bars]
        first = -_STEEL_STEP * _STEEL_CELLS
        steel = _StressTable.join(first, _STEEL_STEP, steels) if steels else None
        group = np.repeat(np.arange(len(steels)), [g.x.size for g in section.bars])
        return cls(
            position,
            area,
            zone * concrete.cells,
            concrete,
            bar_position,
            section.bar_area,
            group.astype(np.intp) * (steel.cells if steel else 0),
            section.bar_stress_limit,
            steel,
        )

    def resultants(
        self, centre_strain: Floats, curvature: Floats, intact: Floats | None
    ) -> Resultants:
        """Internal forces of the strain planes ε = ε₀ + φ y.

        `intact` is 0 for fractured and 1 for unfractured bars, shape (m, bars), None for all 1.
        """
        strain = curvature[:, None] * self.position
        strain += centre_strain[:, None]
        stress, tangent = self.concrete.look_up(strain, self.offset)
        force, stiffness = stress @ self.area, tangent @ self.area
        moment = stress @ (self.area * self.position)
        if self.steel is None:
            return Resultants(force, stiffness, moment, np.empty((curvature.size, 0)))
        strain = curvature[:, None] * self.bar_position
        strain += centre_strain[:, None]
        stress, tangent = self.steel.look_up(strain, self.bar_offset)
        tangent[np.abs(stress) > self.bar_limit] = 0.0
        np.clip(stress, -self.bar_limit, self.bar_limit, out=stress)
        if intact is not None:
            stress *= intact
            tangent *= intact
        return Resultants(
            force + stress @ self.bar_area,
            stiffness + tangent @ self.bar_area,
            moment + stress @ (self.bar_area * self.bar_position),
            stress,
        )


@lru_cache(maxsize=256)
def _zone_strips(
    diameters: tuple[float, ...], strips: int
) -> tuple[Floats, Floats, _Integers]:
    """Centroid and area of every strip of every zone, and the zone's index."""
    edges = np.linspace(-0.5, 0.5, strips + 1) * diameters[-1]
    parts = [
        ring_strips(outer, inner_diameter=inner, edges=edges)
        for inner, outer in pairwise((0.0, *diameters))
    ]
    index = np.repeat(np.arange(len(parts)), [area.size for _, area in parts])
    return (
        np.concatenate([position for position, _ in parts]),
        np.concatenate([area for _, area in parts]),
        index.astype(np.intp),
    )
