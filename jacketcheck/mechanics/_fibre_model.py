"""Axial force and moment of a circular section by strips, for many strain planes at once.

All concrete zones share the same chords.  A strip carries the exact area and first moment of each
zone in it, less the concrete that bars displace, at the strain of the strip's centroid.
Compression is positive throughout.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.mechanics._stress_table import (
    CELLS,
    STEP,
    StrainPlanes,
    StressTable,
    strain_range,
)
from jacketcheck.mechanics.bar_steel import BarSteel, bar_stress
from jacketcheck.mechanics.section import CircularSection
from jacketcheck.mechanics.section_geometry import chord_strips

__all__ = ["FibreModel", "Resultants"]

_LARGEST_STEEL_STRAIN = 0.16
_CAPACITY = 24_000  # strains worked on at a time, so that they stay in the processor's cache
_Integers = NDArray[np.intp]


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
        Stress of each bar [MPa], shape (bars, m).
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
    position
        Distance from the centre [mm] of each strip, then of each bar, shape (strips + bars,).
    strip_weight
        Area [mm²] and first moment [mm³] of each zone in each strip, (zones, 2, strips).
    bar_weight
        Area and first moment of each bar, shape (2, bars).
    concrete
        Curve of each zone.
    steel
        Curves of the groups of bars one after the other, or None without bars.
    bar_offset
        First cell of each bar's curve, shape (bars,).
    bar_limit
        Bond-developed stress of each bar [MPa], shape (bars, 1), or None if none is limited.
    planes
        Memory for the strains.
    """

    position: Floats
    strip_weight: Floats
    bar_weight: Floats
    concrete: tuple[StressTable, ...]
    steel: StressTable | None
    bar_offset: _Integers
    bar_limit: Floats | None
    planes: StrainPlanes

    @classmethod
    def of(cls, section: CircularSection, *, angle: float, strips: int) -> FibreModel:
        """Cut a section into `strips` strips across its outer diameter."""
        diameters = tuple(zone.outer_diameter for zone in section.zones)
        position, weight = _strips(diameters, strips)
        bars = section.bar_position(angle)
        steels = tuple(group.steel for group in section.bars)
        group = np.repeat(np.arange(len(steels)), [one.x.size for one in section.bars])
        limit = section.bar_stress_limit
        return cls(
            position=np.concatenate([position, bars]),
            strip_weight=weight - _displaced(section, position, bars),
            bar_weight=np.stack([section.bar_area, section.bar_area * bars]),
            concrete=tuple(zone.law.table for zone in section.zones),
            steel=_steel_table(steels) if steels else None,
            bar_offset=group.astype(np.intp) * CELLS,
            bar_limit=limit[:, None] if np.isfinite(limit).any() else None,
            planes=StrainPlanes(_CAPACITY),
        )

    @property
    def bar_position(self) -> Floats:
        """Distance of each bar from the centre [mm]."""
        return self.position[self.strip_weight.shape[2] :]

    def coarser(self, strips: int) -> FibreModel:
        """The same section with neighbouring strips lumped into about `strips` strips."""
        fine = self.strip_weight.shape[2]
        first = np.arange(0, fine, -(-fine // strips))
        weight = np.add.reduceat(self.strip_weight, first, axis=2)
        middle = np.add.reduceat(self.position[:fine], first) / np.diff(first, append=fine)
        position = np.concatenate([middle, self.bar_position])
        return replace(self, position=position, strip_weight=weight)

    def resultants(
        self, centre_strain: Floats, curvature: Floats, intact: Floats | None
    ) -> Resultants:
        """Internal forces of the strain planes ε = ε₀ + φ y.

        `intact` is 0 for fractured and 1 for unfractured bars, shape (bars, m), None for all 1.
        """
        force, stiffness, moment = np.empty((3, curvature.size))
        bar_stress = np.empty((self.bar_offset.size, curvature.size))
        block = max(1, self.planes.capacity // self.position.size)
        for start in range(0, curvature.size, block):
            some = slice(start, start + block)
            self.planes.put(centre_strain[some], curvature[some], self.position)
            total, stiffness[some] = self._concrete()
            if self.steel is not None:
                stress, slope = self._bars(self.steel, None if intact is None else intact[:, some])
                total += self.bar_weight @ stress
                stiffness[some] += self.bar_weight[0] @ slope
                bar_stress[:, some] = stress
            force[some], moment[some] = total
        return Resultants(force, stiffness / STEP, moment, bar_stress)

    def _concrete(self) -> tuple[Floats, Floats]:
        """Axial force and moment, shape (2, m), and axial stiffness a cell."""
        strips = self.strip_weight.shape[2]
        coordinate, cell = self.planes.coordinate[:strips], self.planes.cell[:strips]
        part = self.planes.scratch[:strips]
        total, stiffness = np.zeros((2, part.shape[1])), np.zeros(part.shape[1])
        for table, weight in zip(self.concrete, self.strip_weight, strict=True):
            table.intercept.take(cell, out=part, mode="clip")
            total += weight @ part
            table.slope.take(cell, out=part, mode="clip")
            stiffness += weight[0] @ part
            part *= coordinate
            total += weight @ part
        return total, stiffness

    def _bars(self, steel: StressTable, intact: Floats | None) -> tuple[Floats, Floats]:
        """Stress of each bar and its slope a cell, shape (bars, m)."""
        strips = self.strip_weight.shape[2]
        cell = self.planes.cell[strips:] + self.bar_offset[:, None]
        slope = steel.slope.take(cell, mode="clip")
        stress = steel.intercept.take(cell, mode="clip")
        stress += slope * self.planes.coordinate[strips:]
        if self.bar_limit is not None:
            slope[np.abs(stress) > self.bar_limit] = 0.0
            np.clip(stress, -self.bar_limit, self.bar_limit, out=stress)
        if intact is not None:
            stress *= intact
            slope *= intact
        return stress, slope


@lru_cache(maxsize=64)
def _steel_table(steels: tuple[BarSteel, ...]) -> StressTable:
    """Tables of some steels, their stress held beyond the ultimate strain.

    Fracture is kept out of the table because it depends on the bar's history: the solver drops a
    bar from the curvature on at which it fractures.
    """
    tables, strain = [], strain_range(-_LARGEST_STEEL_STRAIN, _LARGEST_STEEL_STRAIN)
    for steel in steels:
        if steel.ultimate_strain > _LARGEST_STEEL_STRAIN:
            allowed = f"at most {_LARGEST_STEEL_STRAIN:g}"
            raise DomainError("ultimate_strain", steel.ultimate_strain, allowed)
        held = np.clip(strain, -steel.ultimate_strain, steel.ultimate_strain)
        tables.append(StressTable.of(strain, -np.asarray(bar_stress(-held, steel))))
    return StressTable.joined(tables)


@lru_cache(maxsize=256)
def _strips(diameters: tuple[float, ...], strips: int) -> tuple[Floats, Floats]:
    """Position of each strip, and area and first moment of each zone in it (zones, 2, strips)."""
    edges = np.linspace(-0.5, 0.5, strips + 1) * diameters[-1]
    discs = [np.stack(chord_strips(diameter, edges=edges)) for diameter in diameters]
    position = discs[-1][1] / discs[-1][0]
    rings = [discs[0], *(outer - inner for inner, outer in pairwise(discs))]
    return position, np.stack(rings)


def _displaced(section: CircularSection, position: Floats, bars: Floats) -> Floats:
    """Area and first moment of displaced concrete in each zone and strip.

    Each bar's area is shared between the two strips around its centre so that both its area and
    its first moment are kept.
    """
    left = np.clip(np.searchsorted(position, bars), 1, position.size - 1) - 1
    share = (bars - position[left]) / (position[left + 1] - position[left])
    cell = section.bar_zone * position.size + left
    shape = (len(section.zones), position.size)
    area = np.bincount(
        np.concatenate([cell, cell + 1]),
        np.concatenate([section.bar_area * (1.0 - share), section.bar_area * share]),
        minlength=shape[0] * shape[1],
    ).reshape(shape)
    return np.stack([area, area * position], axis=1)
