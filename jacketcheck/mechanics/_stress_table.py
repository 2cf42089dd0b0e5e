"""Stress-strain curves as tables of straight cells on one uniform strain grid.

One truncation finds the cell of a strain, one multiplication its stress.  All curves share the
grid, so that the cells of a strain plane are found once, whatever materials it crosses.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arrays import Floats

__all__ = ["CELLS", "STEP", "StrainPlanes", "StressTable", "cells_of", "strain_range"]

STEP = 2.0e-5
"""Width of a cell [-]: halving it moves moments by less than 0.01 %."""
_LAST = 8000  # a strain of 0.16 either way, beyond the fracture of any bar
CELLS = 2 * _LAST + 2
"""Cells of a table; the outermost two hold what lies beyond the grid: no stress."""


@lru_cache(maxsize=8)
def strain_range(lowest: float, highest: float) -> Floats:
    """Strains [-] of the grid from one strain to another, both included; not to be written to."""
    strain = np.asarray(STEP * np.arange(round(lowest / STEP), round(highest / STEP) + 1), float)
    strain.setflags(write=False)
    return strain


@dataclass(frozen=True, eq=False)
class StressTable:
    """Stress [MPa] in each cell as a straight line in the cell coordinate."""

    intercept: Floats
    slope: Floats

    @classmethod
    def of(cls, strain: Floats, stress: Floats) -> StressTable:
        """Table of the stresses at consecutive strains of the grid; none beyond them."""
        before = round(float(strain[0]) / STEP) + _LAST + 1
        slope = np.zeros(CELLS)
        intercept = np.zeros(CELLS)
        inside = slice(before, before + strain.size - 1)
        slope[inside] = np.diff(stress)
        intercept[inside] = stress[:-1] - slope[inside] * np.arange(CELLS)[inside]
        return cls(intercept, slope)

    def at(self, coordinate: Floats, cell: NDArray[np.intp]) -> Floats:
        """Stress at cell coordinates, from the table's cells; of joined tables, offset."""
        stress: Floats = self.slope.take(cell)
        stress *= coordinate
        stress += self.intercept.take(cell)
        return stress

    @classmethod
    def joined(cls, tables: list[StressTable]) -> StressTable:
        """Several curves one after the other, for cells offset by whole tables."""
        if len(tables) == 1:
            return tables[0]
        return cls(
            np.concatenate([table.intercept for table in tables]),
            np.concatenate([table.slope for table in tables]),
        )


def cells_of(strain: Floats) -> tuple[Floats, NDArray[np.intp]]:
    """Cell coordinate of each strain, and its truncation."""
    coordinate = strain * (1.0 / STEP)
    coordinate += _LAST + 1
    # two passes are quicker than np.clip on few strains
    np.maximum(coordinate, 0.0, out=coordinate)
    np.minimum(coordinate, CELLS - 1, out=coordinate)
    return coordinate, coordinate.astype(np.intp)


class StrainPlanes:
    """Cells of the strains ε₀ + φ y at some positions y, for many strain planes.

    The arrays are kept and used again: fresh memory would cost more than the arithmetic.

    Attributes
    ----------
    coordinate, cell
        Cell coordinate and its truncation, shape (positions, planes).
    scratch
        Array of the same shape, free for any use.
    """

    coordinate: Floats
    cell: NDArray[np.intp]
    scratch: Floats

    def __init__(self, capacity: int) -> None:
        self._coordinate, self._scratch = np.empty(capacity), np.empty(capacity)
        self._cell = np.empty(capacity, np.intp)

    @property
    def capacity(self) -> int:
        """Number of strains that fit."""
        return self._cell.size

    def put(self, centre_strain: Floats, curvature: Floats, position: Floats) -> None:
        """Replace the strain planes and positions."""
        shape = position.size, curvature.size
        size = position.size * curvature.size
        self.coordinate = self._coordinate[:size].reshape(shape)
        self.scratch = self._scratch[:size].reshape(shape)
        self.cell = self._cell[:size].reshape(shape)
        np.multiply(position[:, None], curvature / STEP, out=self.coordinate)
        self.coordinate += centre_strain / STEP + (_LAST + 1)
        np.clip(self.coordinate, 0.0, CELLS - 1, out=self.coordinate)
        np.copyto(self.cell, self.coordinate, casting="unsafe")
