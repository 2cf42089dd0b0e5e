"""Hardening branch of reinforcing steel: arithmetic of the printed parabola."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import KSI
from jacketcheck.mechanics.bar_steel import BarSteel, bar_strain_at_stress, bar_stress

# ASTM A706 Grade 60 to No. 8: Caltrans Seismic Design Criteria 1.7 (2013), 3.2.3, unreduced strain.
STEEL = BarSteel(68.0 * KSI, 95.0 * KSI, 0.015, 0.12, 29_000.0 * KSI)


@pytest.mark.parametrize(
    ("strain", "expected"),
    [
        pytest.param(0.001, 29.0, id="elastic"),
        pytest.param(0.0100, 68.0, id="plateau"),
        pytest.param(0.0150, 68.0, id="onset"),
        pytest.param(0.0500, 83.0, id="two thirds of the range left: 95 - 27 * 4/9"),
        pytest.param(0.0675, 88.25, id="half of the range left: 95 - 27/4"),
        pytest.param(0.1200, 95.0, id="ultimate"),
        pytest.param(0.1201, 0.0, id="fractured"),
        pytest.param(-0.0500, -83.0, id="compression mirrors tension"),
        pytest.param(-0.2000, -95.0, id="compression does not fracture"),
    ],
)
def test_stress(strain: float, expected: float) -> None:
    # f = fu - (fu - fy) ((eps_su - eps) / (eps_su - eps_sh))**2, Caltrans SDC 1.7 3.2.2, in ksi
    assert bar_stress(strain, STEEL) / KSI == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    ("stress", "expected"),
    [(29.0, 0.001), (68.0, 0.015), (83.0, 0.05), (95.0, 0.12), (-88.25, -0.0675)],
)
def test_strain_at_stress(stress: float, expected: float) -> None:
    assert bar_strain_at_stress(stress * KSI, STEEL) == pytest.approx(expected, rel=1e-12)
