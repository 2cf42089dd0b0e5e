"""Block shear of a seam against every block of neighbouring rows, drawn and sampled."""

from __future__ import annotations

from functools import partial
from typing import NamedTuple

import numpy as np
import pytest

from jacketcheck.mechanics.block_shear import (
    BlockShearAreas,
    aashto_block_shear_resistance,
    aisc_block_shear_strength,
    seam_block_shear_strength,
    seam_blocks,
)

YIELD, TENSILE = 250.0, 400.0


def net_of_holes(start: float, stop: float, centres: list[float], hole: float) -> float:
    """Length of the line from start to stop that lies outside the holes, interval by interval."""
    cut = 0.0
    for centre in centres:
        cut += max(0.0, min(stop, centre + hole / 2.0) - max(start, centre - hole / 2.0))
    return stop - start - cut


class DrawnSeam(NamedTuple):
    """Rows and columns of holes in a plate, rows along its height from end to end."""

    rows: list[float]
    columns: list[float]
    height: float
    thickness: float
    hole: float

    def blocks(self, first: int, last: int) -> list[BlockShearAreas]:
        """Areas of the block from row `first` to row `last`, inside and out to an end."""
        innermost = self.columns[-1]
        gross = innermost * self.thickness
        net = net_of_holes(0.0, innermost, self.columns, self.hole) * self.thickness
        blocks = [
            BlockShearAreas(2.0 * gross, 2.0 * net, self.tension(self.rows[first], self.rows[last]))
        ]
        if first == 0:
            blocks.append(BlockShearAreas(gross, net, self.tension(0.0, self.rows[last])))
        if last == len(self.rows) - 1:
            blocks.append(BlockShearAreas(gross, net, self.tension(self.rows[first], self.height)))
        return blocks

    def tension(self, low: float, high: float) -> float:
        """Net area along the innermost bolt line."""
        return net_of_holes(low, high, self.rows, self.hole) * self.thickness


class Layout(NamedTuple):
    """Bolt layout of a seam."""

    rows: int
    columns: int
    pitch: float
    edge_distance: float
    end_distance: float


@pytest.mark.parametrize("code", ["AISC", "AASHTO"])
@pytest.mark.parametrize(
    "layout",
    [
        Layout(1, 1, 75.0, 40.0, 40.0),
        Layout(8, 1, 75.0, 40.0, 40.0),
        Layout(8, 2, 75.0, 60.0, 40.0),
        Layout(20, 1, 60.0, 100.0, 30.0),
        Layout(5, 3, 150.0, 35.0, 120.0),
    ],
)
def test_weakest_of_every_block(code: str, layout: Layout) -> None:
    thickness, hole, damage, gauge = 8.0, 22.0, 2.0, 65.0
    rows = [layout.end_distance + row * layout.pitch for row in range(layout.rows)]
    seam = DrawnSeam(
        rows=rows,
        columns=[layout.edge_distance + column * gauge for column in range(layout.columns)],
        height=rows[-1] + layout.end_distance,
        thickness=thickness,
        hole=hole + damage,
    )
    coefficient, factor = (0.60, 1.0) if code == "AISC" else (0.58, 0.9)
    weakest = np.inf
    for first in range(layout.rows):
        for last in range(first, layout.rows):
            for areas in seam.blocks(first, last):
                rupture = coefficient * TENSILE * float(areas.net_shear)
                yielding = coefficient * YIELD * float(areas.gross_shear)
                strength = min(rupture, yielding) + TENSILE * float(areas.net_tension)
                weakest = min(weakest, factor * strength / (last - first + 1))

    blocks = seam_blocks(
        **layout._asdict(),
        gauge=gauge,
        thickness=thickness,
        hole_along=hole,
        hole_across=hole,
        damage=damage,
    )
    steel = (
        partial(aisc_block_shear_strength, yield_strength=YIELD, tensile_strength=TENSILE)
        if code == "AISC"
        else partial(
            aashto_block_shear_resistance,
            yield_strength=YIELD,
            tensile_strength=TENSILE,
            hole_factor=0.9,
        )
    )
    assert float(seam_block_shear_strength(blocks, steel)) == pytest.approx(weakest, rel=1e-12)
