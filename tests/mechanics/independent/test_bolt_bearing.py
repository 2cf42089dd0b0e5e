"""Bolt rows against a bolt-by-bolt sum over drawn positions, tear-out against shear planes."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from jacketcheck.mechanics.bolt_bearing import (
    HoleStrengths,
    clear_distance_between_holes,
    clear_distance_to_edge,
    hole_strength,
    seam_row_strength,
    tear_out_strength,
)
from jacketcheck.mechanics.plate_strength import aisc_shear_rupture_strength

DIAMETER, HOLE, TENSILE_STRENGTH = 22.0, 24.0, 450.0


def test_tear_out_is_shear_rupture_of_two_planes() -> None:
    for clear in (10.0, 27.0, 40.0):
        planes = aisc_shear_rupture_strength(TENSILE_STRENGTH, net_area=2.0 * clear * 8.0)
        tear_out = tear_out_strength(clear, thickness=8.0, tensile_strength=TENSILE_STRENGTH)
        assert float(tear_out) == pytest.approx(float(planes), rel=1e-12)


def drawn_clear_distance(bolt: float, others: list[float], edge: float) -> float:
    """Steel between the hole at `bolt` and the next hole or the edge, on the side of the edge."""
    towards = np.sign(edge - bolt)
    reach = [abs(other - bolt) - HOLE for other in others if np.sign(other - bolt) == towards]
    return min([*reach, abs(edge - bolt) - HOLE / 2.0])


def drawn_plate_strength(bolt: float, others: list[float], edge: float, thickness: float) -> float:
    clear = drawn_clear_distance(bolt, others, edge)
    bearing = 2.4 * DIAMETER * thickness * TENSILE_STRENGTH
    return min(bearing, 1.2 * clear * thickness * TENSILE_STRENGTH)


@pytest.mark.parametrize(
    ("columns", "inside_thickness"), list(itertools.product([1, 2, 3, 5], [0.0, 6.0, 10.0]))
)
def test_row_against_bolt_by_bolt_sum(columns: int, inside_thickness: float) -> None:
    gauge, seam_edge, plate_edge = 60.0, 38.0, 30.0
    sleeve_thickness, outside_thickness, shear = 8.0, 10.0, 110e3
    # x runs away from the seam; the sleeve ends at 0, the splice plate at its outer edge
    bolts = [seam_edge + column * gauge for column in range(columns)]
    plate_end = bolts[-1] + plate_edge
    total = 0.0
    for bolt in bolts:
        others = [other for other in bolts if other != bolt]
        sleeve = drawn_plate_strength(bolt, others, 0.0, sleeve_thickness)
        paths = [
            min(shear, drawn_plate_strength(bolt, others, plate_end, thickness))
            for thickness in (outside_thickness, inside_thickness)
            if thickness > 0.0
        ]
        total += min(sleeve, sum(paths))

    def plate(edge: float, thickness: float) -> HoleStrengths:
        return HoleStrengths(
            *(
                hole_strength(
                    DIAMETER,
                    clear_distance=clear,
                    thickness=thickness,
                    tensile_strength=TENSILE_STRENGTH,
                )
                for clear in (
                    clear_distance_to_edge(edge, hole=HOLE),
                    clear_distance_between_holes(gauge, hole=HOLE),
                )
            )
        )

    row = seam_row_strength(
        shear,
        columns=columns,
        sleeve=plate(seam_edge, sleeve_thickness),
        outside_plate=plate(plate_edge, outside_thickness),
        inside_plate=plate(plate_edge, inside_thickness) if inside_thickness else None,
    )
    assert float(row) == pytest.approx(total, rel=1e-12)
