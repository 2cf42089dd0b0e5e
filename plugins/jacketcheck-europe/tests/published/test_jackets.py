"""Clamping of laps, EN 1998-3 A.4.4.4: the equations are those of Seible et al. (1997)."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.jackets import lap_clamping_stress, lap_clamping_thickness


@pytest.mark.parametrize(
    ("hoops", "expected"),
    [pytest.param(0.0, 6.0, id="J-02-no-hoops"), pytest.param(0.3, 5.1, id="J-02-hoops")],
)
def test_thickness(hoops: float, expected: float) -> None:
    # 500 D (f_l - f_h)/E with D = 1200 mm, f_l = 2 MPa, E = 200 GPa
    found = lap_clamping_thickness(2.0, diameter=1200.0, elastic_modulus=200e3, hoop_stress=hoops)
    assert float(found) == pytest.approx(expected, rel=1e-3)


def test_thickness_in_inches() -> None:
    # J-03: D 48 in, 0.300 ksi, 29000 ksi: 0.248 in
    found = lap_clamping_thickness(0.300, diameter=48.0, elastic_modulus=29000.0)
    assert float(found) == pytest.approx(0.248, rel=2e-3)


def test_stress() -> None:
    # J-04: n 20, bars of 32 mm, f_y 300 MPa, p = π 1068 mm, c 50 mm, L_s 640 mm
    found = lap_clamping_stress(
        804.25,
        yield_strength=300.0,
        bar_count=20,
        perimeter=3.14159265 * 1068.0,
        bar_diameter=32.0,
        cover=50.0,
        lap_length=640.0,
    )
    assert float(found) == pytest.approx(1.521, rel=2e-3)
