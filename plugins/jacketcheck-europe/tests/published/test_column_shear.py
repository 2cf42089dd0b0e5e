"""Shear of columns: arithmetic of EN 1998-3 Eq. A.12 and A.14, step by step."""

from __future__ import annotations

from math import pi

import pytest
from jacketcheck_europe.mechanics.column_shear import (
    circular_hoop_shear,
    existing_axial_shear,
    existing_column_shear,
    existing_concrete_shear,
)

# D 1 m, D_c 0.9 m: A_c = 636.2e3 mm²; x 300, L_V 4000 mm; f_c 25 MPa; ρ 1.5%; N 2 MN
CORE = pi * 900.0**2 / 4.0


def test_hoops() -> None:
    # (π/2) (201.06/100) 400 (1100) = 1389.6 kN
    found = circular_hoop_shear(201.06, yield_strength=400.0, hoop_diameter=1100.0, spacing=100.0)
    assert float(found) / 1e3 == pytest.approx(1389.6, rel=1e-3)


def test_concrete() -> None:
    # 0.16 * 1.5 * (1 - 0.16 * 4) * 5 * 636.2 = 274.8 kN
    found = existing_concrete_shear(
        CORE, concrete_strength=25.0, bar_ratio=0.015, diameter=1000.0, shear_span=4000.0
    )
    assert float(found) / 1e3 == pytest.approx(274.8, rel=1e-3)


@pytest.mark.parametrize(
    ("load", "expected"),
    # 700/8000 min(N, 0.55 * 636.2 * 25 = 8747 kN)
    [(2.0e6, 175.0), (9.9e6, 765.4)],
)
def test_axial_load(load: float, expected: float) -> None:
    found = existing_axial_shear(
        load,
        core_area=CORE,
        concrete_strength=25.0,
        diameter=1000.0,
        compression_depth=300.0,
        shear_span=4000.0,
    )
    assert float(found) / 1e3 == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize(
    ("ductility", "expected"),
    [
        pytest.param(0.0, (175.0 + 274.8 + 800.0) / 1.15, id="elastic"),
        pytest.param(2.0, (175.0 + 0.90 * 1074.8) / 1.15, id="degrading"),
        pytest.param(9.0, (175.0 + 0.75 * 1074.8) / 1.15, id="degraded"),
    ],
)
def test_resistance(ductility: float, expected: float) -> None:
    found = existing_column_shear(
        axial_shear=175.0,
        concrete_shear=274.8,
        hoop_shear=800.0,
        plastic_ductility=ductility,
        member_factor=1.15,
    )
    assert float(found) == pytest.approx(expected, rel=1e-12)


def test_bar_ratio_and_slenderness_have_bounds() -> None:
    # ρ not below 0.5%, slenderness not above 5
    def shear(ratio: float, span: float) -> float:
        found = existing_concrete_shear(
            CORE, concrete_strength=16.0, bar_ratio=ratio, diameter=1000.0, shear_span=span
        )
        return float(found)

    assert shear(0.005, 4000.0) == shear(0.001, 4000.0)
    assert shear(0.01, 5000.0) == shear(0.01, 9000.0)
