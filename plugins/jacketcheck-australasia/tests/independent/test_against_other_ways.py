"""The same figures by other ways: root finding, thread geometry, the AISC rule of equal form."""

from __future__ import annotations

import math

import numpy as np
import pytest
from jacketcheck_australasia.mechanics.bolt_strength import combined_bolt_ratio, core_area
from jacketcheck_australasia.mechanics.plate_strength import block_shear_capacity
from jacketcheck_australasia.mechanics.ply_bearing import (
    ply_bearing_capacity,
    tear_out_distance_to_edge,
)

from jacketcheck.mechanics.block_shear import BlockShearAreas, aisc_block_shear_strength


@pytest.mark.parametrize(
    ("shear", "tension"), [(10e3, 0.0), (0.0, 70e3), (40e3, 60e3), (80e3, 150e3)]
)
def test_combined_ratio_is_the_load_multiplier(shear: float, tension: float) -> None:
    def use(multiplier: float) -> float:
        return (multiplier * shear / 90e3) ** 2 + (multiplier * tension / 160e3) ** 2

    low, high = 0.0, 1e6
    for _ in range(200):  # bisection for the multiplier that just uses the bolt up
        middle = (low + high) / 2.0
        low, high = (middle, high) if use(middle) < 1.0 else (low, middle)
    ratio = combined_bolt_ratio(
        shear, design_shear_capacity=90e3, tension=tension, design_tension_capacity=160e3
    )
    assert float(ratio) == pytest.approx(1.0 / low, rel=1e-9)


@pytest.mark.parametrize(
    ("diameter", "pitch"), [(16.0, 2.0), (22.0, 2.5), (24.0, 3.0), (36.0, 4.0)]
)
def test_core_area_from_the_basic_profile(diameter: float, pitch: float) -> None:
    height = pitch * math.sqrt(3.0) / 2.0  # of the fundamental triangle, ISO 68-1
    stress = math.pi / 4.0 * (diameter - 13.0 / 12.0 * height) ** 2  # (d2 + d3)/2
    root = math.pi / 4.0 * (diameter - 17.0 / 12.0 * height) ** 2  # d3 = d1 - H/6
    found = core_area(diameter, tensile_stress_area=stress)
    assert float(found) == pytest.approx(root, rel=1e-4)  # 0.9382 and 1.2269 are rounded


@pytest.mark.parametrize(
    ("diameter", "threads", "root"), [(0.75, 10, 0.302), (0.875, 9, 0.419), (1.0, 8, 0.551)]
)
def test_root_area_of_inch_threads(diameter: float, threads: int, root: float) -> None:
    # ASME B1.1 minor diameter areas [in²], three digits
    stress = math.pi / 4.0 * (diameter - 0.9743 / threads) ** 2
    found = core_area(diameter * 25.4, tensile_stress_area=stress * 25.4**2, metric=False)
    assert float(found) / 25.4**2 == pytest.approx(root, abs=0.0006)


def test_block_shear_has_the_form_of_aisc() -> None:
    random = np.random.default_rng(7)
    areas = BlockShearAreas(*random.uniform(500.0, 5000.0, (3, 40)))
    strengths = {"yield_strength": 300.0, "tensile_strength": 430.0}
    np.testing.assert_allclose(
        block_shear_capacity(areas, **strengths),
        aisc_block_shear_strength(areas, **strengths),
        rtol=1e-12,
    )


def test_tear_out_is_shear_along_two_lines() -> None:
    # two lines of length a_e at about half of the tensile strength: a_e t f_up
    distance = tear_out_distance_to_edge(40.0, hole=22.0, diameter=20.0)
    capacity = ply_bearing_capacity(
        20.0, thickness=12.0, tensile_strength=430.0, tear_out_distance=distance
    )
    assert float(capacity) == pytest.approx(2.0 * (40.0 - 11.0 + 10.0) * 12.0 * 0.5 * 430.0)
