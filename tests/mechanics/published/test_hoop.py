"""Hoop action of a thin cylinder: textbook statics."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI
from jacketcheck.mechanics.hoop import (
    bolt_hoop_force,
    hoop_force,
    hoop_stress,
    pressure_for_hoop_force,
    yield_pressure,
)


@pytest.mark.parametrize(
    ("pressure", "diameter", "thickness", "expected"),
    [
        pytest.param(2.0, 1200.0, 10.0, 120.0, id="G-01-si"),
        pytest.param(0.3 * KSI, 48.0 * INCH, 0.375 * INCH, 19.2 * KSI, id="G-01-us"),
    ],
)
def test_hoop_stress(pressure: float, diameter: float, thickness: float, expected: float) -> None:
    # sigma = p D / (2 t)
    stress = hoop_stress(pressure, inner_radius=diameter / 2.0, thickness=thickness)
    assert stress == pytest.approx(expected, rel=1e-12)
    back = yield_pressure(expected, thickness=thickness, inner_radius=diameter / 2.0)
    assert back == pytest.approx(pressure, rel=1e-12)


@pytest.mark.parametrize(
    ("pressure", "diameter", "expected"),
    [
        pytest.param(2.0, 1200.0, 1200.0, id="G-02-si"),
        pytest.param(0.3 * KSI, 48.0 * INCH, 7.2 * KIP / INCH, id="G-02-us"),
    ],
)
def test_seam_force(pressure: float, diameter: float, expected: float) -> None:
    # F = p D / 2 at each of two seams
    force = hoop_force(pressure, inner_radius=diameter / 2.0)
    assert force == pytest.approx(expected, rel=1e-12)
    assert pressure_for_hoop_force(force, inner_radius=diameter / 2.0) == pytest.approx(pressure)


@pytest.mark.parametrize(
    ("columns", "expected"),
    [pytest.param(1, 120e3, id="G-03-one"), pytest.param(2, 60e3, id="G-03-two")],
)
def test_bolt_force(columns: int, expected: float) -> None:
    # 1200 N/mm over a pitch of 100 mm, shared by the bolt lines on one side of the seam
    force = hoop_force(2.0, inner_radius=600.0)
    assert bolt_hoop_force(force, pitch=100.0, bolt_columns=columns) == pytest.approx(expected)
