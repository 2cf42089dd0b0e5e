"""Rows of bolts and blocks of rows, against loops over single bolts and single blocks."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Literal

import numpy as np
import pytest
from jacketcheck_europe.limit_states._bolt_holes import (
    bearing_of_plate,
    shear_of_bolt,
    sleeve_at_bolts,
    splice_at_bolts,
)
from jacketcheck_europe.limit_states.block_tearing import seam_block_shear
from jacketcheck_europe.limit_states.seam_bolts import seam_bolt_row
from jacketcheck_europe.mechanics.plates import block_tearing_resistance
from jacketcheck_europe.partial_factors import RECOMMENDED

from jacketcheck.mechanics.block_shear import seam_block
from jacketcheck.plugin import Jacket, Result, hoop_demand


def with_columns(jacket: Jacket, columns: int, tensile_strength: float) -> Jacket:
    """The jacket with other bolts; a copy, analyses excluded."""
    bolts = replace(jacket.bolts, columns=columns, tensile_strength=tensile_strength)
    return replace(jacket, bolts=bolts)


@pytest.mark.parametrize(
    ("columns", "strength", "threads"),
    list(product((1, 2, 3, 5), (800.0, 1000.0), ("included", "excluded"))),
)
def test_row_as_a_loop_over_bolts(
    jacket: Jacket, columns: int, strength: float, threads: Literal["included", "excluded"]
) -> None:
    own = with_columns(jacket, columns, strength)
    own = replace(own, bolts=replace(own.bolts, threads=threads))
    sleeve = bearing_of_plate(own, sleeve_at_bolts(own), RECOMMENDED)
    plates = bearing_of_plate(own, splice_at_bolts(own), RECOMMENDED)
    shear = 2.0 * float(shear_of_bolt(own, RECOMMENDED))  # equal plates on both sides
    bearing = []
    for number in range(columns):
        next_to_seam, next_to_edge = number == 0, number == columns - 1
        in_sleeve = sleeve.end if next_to_seam else sleeve.inner
        in_plates = plates.end if next_to_edge else plates.inner
        bearing.append(min(float(in_sleeve), float(in_plates)))
    expected = (
        sum(bearing) if shear >= max(bearing) else columns * min(shear, *bearing)
    )  # EN 1993-1-8 3.7(1)
    (row,) = seam_bolt_row(own, RECOMMENDED)
    assert float(row.capacity) == pytest.approx(expected, rel=1e-12)


def test_no_block_of_rows_is_weaker(jacket: Jacket) -> None:
    (sleeve, _) = seam_block_shear(jacket, RECOMMENDED)
    bolts, steel = jacket.bolts, jacket.sleeve.steel
    strengths = []
    for rows, at_end in product(range(1, int(bolts.rows) + 1), (False, True)):
        block = seam_block(
            float(rows),
            at_end=at_end,
            columns=bolts.columns,
            pitch=bolts.pitch,
            gauge=bolts.gauge,
            edge_distance=bolts.seam_edge_distance,
            end_distance=bolts.end_distance,
            thickness=jacket.sleeve.thickness,
            hole_along=jacket.sleeve.hole.along,
            hole_across=jacket.sleeve.hole.across,
            damage=0.0,
        )
        resistance = block_tearing_resistance(
            block.areas,
            yield_strength=steel.yield_strength,
            tensile_strength=steel.tensile_strength,
            section_factor=1.0,
            rupture_factor=1.25,
            tension_share=0.5 if at_end and rows == 1 else 1.0,
        )
        strengths.append(float(resistance) / rows)
    assert float(sleeve.capacity) == pytest.approx(min(strengths), rel=1e-12)


def test_slip_of_the_whole_seam(jacket: Jacket, slip_row: Result) -> None:
    # all bolts of a group together hold a pressure that the hardest-worked row cannot exceed
    bolts, sleeve = jacket.bolts, jacket.sleeve
    group = float(slip_row.capacity) * bolts.rows * bolts.columns
    pressure = group / (sleeve.height * sleeve.inner_radius)
    demand = hoop_demand(jacket)
    share = float(demand.force) / (pressure * sleeve.inner_radius)
    taller = float(bolts.tributary_height) * bolts.rows / sleeve.height
    assert float(np.asarray(slip_row.ratio)) == pytest.approx(share * taller, rel=1e-9)
