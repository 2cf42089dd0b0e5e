"""Bolt capacities as bolt makers and handbooks print them, and the codes' factors."""

from __future__ import annotations

import numpy as np
import pytest
from jacketcheck_australasia.mechanics import bolt_strength, detailing, ply_bearing
from jacketcheck_australasia.mechanics.bolt_strength import (
    BOLT_CAPACITY_FACTOR,
    bolt_shear_capacity,
    bolt_tension_capacity,
)
from jacketcheck_australasia.mechanics.plate_strength import TENSION_CAPACITY_FACTOR

from jacketcheck.host import Host

AREAS = {
    # core, tensile stress and shank area [mm²] of AS 1275 coarse threads
    16.0: (144.0, 157.0, 201.0),
    20.0: (225.0, 245.0, 314.0),
    24.0: (324.0, 353.0, 452.0),
    30.0: (519.0, 561.0, 707.0),
    36.0: (759.0, 817.0, 1018.0),
}


def test_bolt_strengths(host: Host) -> None:  # A-04, AS/NZS 1252 class 8.8
    product = host.catalog.bolt_product("AS/NZS 1252")
    assert (product.tensile_strength, product.yield_strength) == (830.0, 660.0)


@pytest.mark.parametrize(
    ("diameter", "threads", "expected"),
    [
        pytest.param(20.0, "included", 92.6, id="B-21-M20-N"),
        pytest.param(20.0, "excluded", 129.0, id="B-21-M20-X"),
        pytest.param(24.0, "included", 133.0, id="B-21-M24-N"),
        pytest.param(24.0, "excluded", 186.0, id="B-21-M24-X"),
    ],
)
def test_shear_of_class_8_8(diameter: float, threads: str, expected: float) -> None:
    core, _, shank = AREAS[diameter]
    nominal = bolt_shear_capacity(
        830.0, shank_area=shank, core_area=core, threads=threads, shear_planes=1
    )
    # three digits are printed
    assert BOLT_CAPACITY_FACTOR * float(nominal) / 1e3 == pytest.approx(expected, rel=0.005)


@pytest.mark.parametrize(
    ("threads", "expected"),
    [pytest.param("included", 44.6, id="B-22-N"), pytest.param("excluded", 62.3, id="B-22-X")],
)
def test_shear_of_class_4_6_m20(threads: str, expected: float) -> None:
    nominal = bolt_shear_capacity(
        400.0, shank_area=314.0, core_area=225.0, threads=threads, shear_planes=1
    )
    assert BOLT_CAPACITY_FACTOR * float(nominal) / 1e3 == pytest.approx(expected, abs=0.051)


def test_tension_of_class_4_6_m20() -> None:  # B-22, 78.4 kN
    nominal = bolt_tension_capacity(400.0, tensile_stress_area=245.0)
    assert BOLT_CAPACITY_FACTOR * float(nominal) / 1e3 == pytest.approx(78.4, abs=0.051)


@pytest.mark.parametrize("diameter", AREAS)
def test_core_area_meets_the_printed_one(diameter: float) -> None:
    core, stress, _ = AREAS[diameter]
    found = bolt_strength.core_area(diameter, tensile_stress_area=stress)
    assert float(found) == pytest.approx(core, rel=0.005)  # stress areas are rounded to 1 mm²


@pytest.mark.parametrize(
    ("length", "expected"),
    [(0.0, 1.0), (300.0, 1.0), (800.0, 0.875), (1300.0, 0.75), (5000.0, 0.75)],
)
def test_lap_length_factor_of_as_4100_table_9_2_2_1(length: float, expected: float) -> None:
    assert float(bolt_strength.lap_length_factor(length)) == pytest.approx(expected, rel=1e-12)


def test_factors_of_nzs_3404_table_3_3_1() -> None:
    assert BOLT_CAPACITY_FACTOR == 0.80
    assert ply_bearing.PLY_CAPACITY_FACTOR == 0.90
    assert TENSION_CAPACITY_FACTOR == 0.90


def test_edge_distances_of_m20_by_kind_of_edge() -> None:  # AS 4100 Table 9.5.2: 35, 30, 25 mm
    found = [
        float(detailing.min_edge_distance(20.0, edge=one)) for one in detailing.EDGE_DISTANCE_RATIOS
    ]
    assert found == [35.0, 30.0, 25.0]


@pytest.mark.parametrize(
    ("thickness", "yield_strength"),
    [(10.0, 310.0), (12.0, 310.0), (12.1, 300.0), (20.0, 300.0), (20.1, 280.0), (50.0, 280.0)],
)
def test_plates_of_grade_300(host: Host, thickness: float, yield_strength: float) -> None:
    # a New Zealand mill's data sheet of AS/NZS 3678-300S0, minimum values
    found = host.catalog.plate_steel("AS/NZS 3678 300").strengths(thickness)
    assert found == (yield_strength, 430.0)


def test_strengths_of_an_array_of_plates(host: Host) -> None:
    found = host.catalog.plate_steel("AS/NZS 3678 250").strengths(np.array([8.0, 16.0]))
    assert list(np.asarray(found.yield_strength)) == [280.0, 250.0]
