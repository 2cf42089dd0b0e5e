"""Clamping demand and jacket thickness against published design rules.

Priestley, Seible and Calvi, Seismic Design and Retrofit of Bridges (1996), ch. 7; Seible,
Priestley, Hegemier and Innamorato, J. Compos. Constr. 1(2) (1997), 52-62. The expected numbers are
those rules worked out by hand to the digits shown.
"""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics._customary_units import INCH, KSI
from jacketcheck.mechanics.clamping import (
    column_hoop_clamping_pressure,
    crack_perimeter,
    required_clamping_pressure,
    ring_crack_perimeter,
    separate_crack_perimeter,
)
from jacketcheck.mechanics.jacket_thickness import clamping_thickness, confinement_thickness


def test_confinement_thickness() -> None:
    # J-01: 0.18 x 0.011 x 1200 x 45 / (250 x 0.12)
    thickness = confinement_thickness(
        0.015,
        diameter=1200.0,
        confined_strength=45.0,
        yield_strength=250.0,
        steel_ultimate_strain=0.12,
    )
    assert thickness == pytest.approx(3.56, abs=0.005)
    assert thickness == pytest.approx(3.54 * 0.18 * 5.6, abs=0.005)


@pytest.mark.parametrize(
    ("column_hoop_pressure", "expected"),
    [pytest.param(0.0, 6.0, id="J-02-bare"), pytest.param(0.3, 5.1, id="J-02-hoops")],
)
def test_clamping_thickness(column_hoop_pressure: float, expected: float) -> None:
    thickness = clamping_thickness(
        2.0,
        column_hoop_pressure=column_hoop_pressure,
        diameter=1200.0,
        elastic_modulus=200e3,
    )
    assert thickness == pytest.approx(expected, rel=1e-12)


def test_clamping_thickness_customary() -> None:
    # J-03: 500 x 48 x 0.300 / 29000, printed to a thousandth of an inch
    thickness = clamping_thickness(
        0.3 * KSI,
        column_hoop_pressure=0.0,
        diameter=48.0 * INCH,
        elastic_modulus=29_000.0 * KSI,
    )
    assert thickness / INCH == pytest.approx(0.248, abs=5e-4)


def test_clamping_demand_without_friction() -> None:
    # J-04: bars of 804.25 mm2 at 300 MPa; the 1997 form has neither friction nor overstrength
    perimeter = ring_crack_perimeter(20, bar_circle_diameter=1068.0, bar_diameter=32.0, cover=50.0)
    assert perimeter == pytest.approx(247.9, abs=0.05)
    force = 804.25 * 300.0
    plain = required_clamping_pressure(
        force, anchorage_length=640.0, crack_perimeter=perimeter, friction_coefficient=1.0
    )
    assert plain == pytest.approx(1.521, abs=1e-3)
    with_both = required_clamping_pressure(
        1.4 * force, anchorage_length=640.0, crack_perimeter=perimeter
    )
    assert with_both == pytest.approx(1.521, abs=1e-3)


def test_bars_far_apart_split_off_one_by_one() -> None:
    # the bars of J-04: 2 sqrt(2) x 82 = 231.9 mm is shorter than 247.9 mm
    assert separate_crack_perimeter(32.0, cover=50.0) == pytest.approx(231.9, abs=0.05)
    perimeter = crack_perimeter(
        np.array([20, 60]), bar_circle_diameter=1068.0, bar_diameter=32.0, cover=50.0
    )
    # pi x 1068 / 120 + 164 = 192.0 mm
    assert perimeter == pytest.approx([231.9, 192.0], abs=0.05)


def test_column_hoops() -> None:
    # J-05: 0.002 x 129 x 200e3 / (1200 x 150)
    pressure = column_hoop_clamping_pressure(
        129.0, diameter=1200.0, spacing=150.0, elastic_modulus=200e3
    )
    assert pressure == pytest.approx(0.287, abs=5e-4)
