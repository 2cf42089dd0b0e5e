"""Slip capacities by IS 800 10.4.3: M20 of class 8.8 with a net area of 245 mm².

The arithmetic was done by hand; figures have four digits.
"""

from __future__ import annotations

import pytest
from jacketcheck_india.mechanics.slip import (
    SLIP_FACTOR_SERVICE,
    SLIP_FACTOR_ULTIMATE,
    proof_load,
    slip_capacity,
    slip_hole_factor,
)

from jacketcheck.host import Host

M20_AREA = 245.0


def test_proof_load() -> None:  # P-11, 137.2 kN
    found = proof_load(800.0, tensile_stress_area=M20_AREA)
    assert float(found) / 1e3 == pytest.approx(137.2, rel=1e-9)


@pytest.mark.parametrize(
    ("coefficient", "ultimate", "service"),
    [
        pytest.param(0.20, 21.95, 24.95, id="S-26-0.20"),
        pytest.param(0.30, 32.93, 37.42, id="S-26-0.30"),
        pytest.param(0.50, 54.88, 62.36, id="S-26-0.50"),
        pytest.param(0.55, 60.37, 68.60, id="S-26-0.55"),
    ],
)
def test_capacity_of_one_interface(coefficient: float, ultimate: float, service: float) -> None:
    nominal = float(slip_capacity(coefficient, bolt_tension=137200.0, interfaces=1)) / 1e3
    assert nominal / SLIP_FACTOR_ULTIMATE == pytest.approx(ultimate, abs=0.0051)
    assert nominal / SLIP_FACTOR_SERVICE == pytest.approx(service, abs=0.0051)


@pytest.mark.parametrize(
    ("hole", "expected"),
    [
        ("standard", 1.0),
        ("oversized", 0.85),
        ("short-slot-parallel", 0.85),
        ("short-slot-perpendicular", 0.85),
        ("long-slot-perpendicular", 0.85),
        ("long-slot-parallel", 0.7),
    ],
)
def test_hole_factors_of_10_4_3(hole: str, expected: float) -> None:
    assert slip_hole_factor(hole) == expected


@pytest.mark.parametrize(
    ("name", "coefficient"),
    [
        ("IS 800 untreated", 0.20),
        ("IS 800 Table 20 ii", 0.50),
        ("IS 800 blasted and galvanized", 0.10),
        ("IS 800 blasted and zinc sprayed", 0.25),
        ("IS 800 Table 20 v", 0.30),
        ("IS 800 sand blasted and rusted", 0.52),
        ("IS 800 Table 20 vii", 0.30),
        ("IS 800 Table 20 viii", 0.30),
        ("IS 800 blasted and aluminium sprayed", 0.50),
        ("IS 800 clean mill scale", 0.33),
        ("IS 800 sand blasted", 0.48),
        ("IS 800 red lead", 0.10),
    ],
)
def test_coefficients_of_table_20(host: Host, name: str, coefficient: float) -> None:
    assert host.catalog.faying_class(name).slip_coefficient == coefficient
