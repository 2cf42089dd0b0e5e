"""Bolts, plates and layout against printed figures and worked examples."""

from __future__ import annotations

import math

import numpy as np
import pytest
from jacketcheck_india.codes import BEARING_BOLT_FACTOR
from jacketcheck_india.mechanics import bolt_strength, detailing
from jacketcheck_india.mechanics.bolt_bearing import bearing_hole_factor
from jacketcheck_india.mechanics.bolt_strength import bolt_shear_capacity, bolt_tension_capacity

from jacketcheck.host import Host


def test_shear_of_m20_with_threads_in_the_plane() -> None:  # B-23, 90.5 kN
    nominal = bolt_shear_capacity(
        800.0, shank_area=314.0, net_area=245.0, threads="included", shear_planes=1
    )
    assert float(nominal) / BEARING_BOLT_FACTOR / 1e3 == pytest.approx(90.5, abs=0.051)


def test_bolt_strengths(host: Host) -> None:  # A-04, ISO classes as IS 1367 has them
    strengths = {
        name: (
            host.catalog.bolt_product(name).tensile_strength,
            host.catalog.bolt_product(name).yield_strength,
        )
        for name in ("IS 3757 8.8", "IS 3757 10.9")
    }
    assert strengths == {"IS 3757 8.8": (800.0, 640.0), "IS 3757 10.9": (1000.0, 900.0)}


def test_tension_of_a_bolt_is_held_by_shank_or_thread() -> None:
    # class 4.6, M20: 0.9 x 400 x 245 = 88.2 kN in the thread, 240 x 314 x 1.25/1.1 = 85.6 kN in
    # the shank
    found = bolt_tension_capacity(400.0, yield_strength=240.0, shank_area=314.0, net_area=245.0)
    assert float(found) / 1e3 == pytest.approx(85.6, abs=0.051)


@pytest.mark.parametrize(
    ("length", "expected"), [(0.0, 1.0), (300.0, 1.0), (800.0, 0.875), (1300.0, 0.75), (2e3, 0.75)]
)
def test_long_joint_factor_of_10_3_3_1(length: float, expected: float) -> None:
    # M20: no reduction up to 15 d = 300 mm, 0.75 from 65 d = 1300 mm on
    found = bolt_strength.long_joint_factor(length, diameter=20.0)
    assert float(found) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(("grip", "expected"), [(100.0, 1.0), (140.0, 0.8), (160.0, 8.0 / 11.0)])
def test_grip_factor_of_10_3_3_2(grip: float, expected: float) -> None:
    assert float(bolt_strength.grip_factor(grip, diameter=20.0)) == pytest.approx(expected)


@pytest.mark.parametrize(("packing", "expected"), [(0.0, 1.0), (6.0, 1.0), (10.0, 0.875)])
def test_packing_factor_of_10_3_3_3(packing: float, expected: float) -> None:
    assert float(bolt_strength.packing_factor(packing)) == pytest.approx(expected)


def test_bearing_in_other_holes() -> None:  # IS 800 10.3.4
    found = [bearing_hole_factor(one) for one in ("standard", "oversized", "long-slot-parallel")]
    assert found == [1.0, 0.7, 0.5]


def test_least_pitch_and_edge_distance_of_m20() -> None:
    # examination question on IS 800: 50 mm pitch, 33 mm edge for a machine-cut edge
    assert float(detailing.min_pitch(20.0)) == 50.0
    edge = "rolled, machine flame cut, sawn or planed"
    assert float(detailing.min_edge_distance(22.0, edge=edge)) == 33.0


def test_largest_pitches_of_10_2_3() -> None:
    thickness = np.array([8.0, 10.0, 30.0])
    np.testing.assert_allclose(detailing.max_tension_pitch(thickness), [128.0, 160.0, 200.0])
    np.testing.assert_allclose(detailing.max_edge_line_pitch(thickness), [132.0, 140.0, 200.0])
    np.testing.assert_allclose(detailing.max_pitch(thickness), [256.0, 300.0, 300.0])


@pytest.mark.parametrize(
    ("name", "thickness", "expected"),
    [
        ("IS 2062 E250", 20.0, (250.0, 410.0)),
        ("IS 2062 E250", 40.0, (240.0, 410.0)),
        ("IS 2062 E250", 41.0, (230.0, 410.0)),
        ("IS 2062 E300", 20.0, (300.0, 440.0)),
        ("IS 2062 E350", 20.0, (350.0, 490.0)),
        ("IS 2062 E350", 40.0, (330.0, 490.0)),
        ("IS 2062 E410", 40.0, (390.0, 540.0)),
    ],
)
def test_plates_of_is_800_table_1(
    host: Host, name: str, thickness: float, expected: tuple[float, float]
) -> None:
    assert host.catalog.plate_steel(name).strengths(thickness) == expected


@pytest.mark.parametrize(
    ("name", "yield_strength", "tensile_strength"),
    [("Fe 415", 415.0, 485.0), ("Fe 500", 500.0, 545.0), ("Fe 500D", 500.0, 565.0)],
)
def test_bars_of_is_1786_table_3(
    host: Host, name: str, yield_strength: float, tensile_strength: float
) -> None:
    steel = host.catalog.rebar_steel(name)
    assert (steel.yield_strength, steel.tensile_strength) == (yield_strength, tensile_strength)


@pytest.mark.parametrize(
    ("diameter", "printed"), [(12, 113.1), (16, 201.2), (25, 491.1), (32, 804.6), (40, 1257.2)]
)
def test_bar_areas(host: Host, diameter: int, printed: float) -> None:
    # IS 1786 prints areas with 22/7 for π
    bar = host.catalog.bar(f"IS {diameter}")
    assert bar.area == pytest.approx(printed, rel=0.001)
    assert bar.area == math.pi * diameter**2 / 4.0


def test_oversized_and_slotted_holes_keep_within_17_2_4_3(host: Host) -> None:
    # oversize holes at most 1.25 d or d + 8 mm, the larger; long slots at most 2.5 d long
    for size in host.catalog.bolt_product("IS 3757 8.8").sizes.values():
        assert size.holes["oversized"] <= max(1.25 * size.diameter, size.diameter + 8.0)
        assert size.holes["long-slot-length"] == 2.5 * size.diameter
