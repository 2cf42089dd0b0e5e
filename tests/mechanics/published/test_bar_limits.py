"""Bar buckling and bar slip against their printed equations, evaluated by hand."""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, PSI
from jacketcheck.mechanics.bar_buckling import bar_buckling_drift, bar_buckling_strain
from jacketcheck.mechanics.strain_penetration import (
    penetration_length,
    slip_at_stress,
    slip_at_yield,
    slip_rotation,
)


@pytest.mark.parametrize(
    ("load_ratio", "hoop_ratio", "expected"),
    [
        # 0.03 + 700 x 0.01 x 400 / 200 000 - 0.1 x 0.1
        pytest.param(0.1, 0.010, 0.034, id="medium"),
        pytest.param(0.0, 0.000, 0.030, id="bare"),
        pytest.param(0.2, 0.005, 0.017, id="loaded"),
    ],
)
def test_buckling_strain(load_ratio: float, hoop_ratio: float, expected: float) -> None:
    # Goodnight, Kowalsky and Nau, Earthquake Spectra 32(3) (2016), 1627-1652
    strain = bar_buckling_strain(
        load_ratio * 40.0 * 0.75e6,
        concrete_strength=40.0,
        gross_area=0.75e6,
        hoop_ratio=hoop_ratio,
        hoop_yield=400.0,
    )
    assert strain == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("spacing", "expected"),
    [
        # 3.25 % x (1 + 150 x 0.1 x 0.032) x 0.9 x 1.5
        pytest.param(100.0, 0.0325 * 1.48 * 0.9 * 1.5, id="close"),
        # hoops farther apart than 6 db do not count
        pytest.param(200.0, 0.0325 * 0.9 * 1.5, id="wide"),
    ],
)
def test_buckling_drift(spacing: float, expected: float) -> None:
    # Berry and Eberhard, J. Struct. Eng. 131(7) (2005), 1060-1070
    drift = bar_buckling_drift(
        3.0e6,
        concrete_strength=40.0,
        gross_area=0.75e6,
        hoop_ratio=0.01,
        hoop_yield=400.0,
        hoop_spacing=spacing,
        bar_diameter=32.0,
        column_diameter=1000.0,
        shear_span=5000.0,
    )
    assert drift == pytest.approx(expected, rel=1e-12)


def test_slip_in_customary_units() -> None:
    # Zhao and Sritharan 2007: s_y = 0.1 [db / 4000 fy / sqrt(f'c) (2 alpha + 1)]^(1/alpha) + 0.013
    # inches and psi, No. 8 bar, 66 ksi, 4500 psi
    expected = 0.1 * (1.0 / 4000.0 * 66e3 / 4500.0**0.5 * 1.8) ** 2.5 + 0.013
    slip = slip_at_yield(66e3 * PSI, bar_diameter=INCH, concrete_strength=4500.0 * PSI)
    # 0.34 mm is 0.0134 in, printed 0.013
    assert slip / INCH == pytest.approx(expected, abs=4.5e-4)


def test_penetration_and_rotation() -> None:
    # Priestley, Calvi and Kowalsky 2007: 0.022 fye db
    assert penetration_length(475.0, bar_diameter=32.0) == pytest.approx(334.4, abs=0.05)
    slip = slip_at_stress(237.5, yield_strength=475.0, slip_at_yield=0.7)
    assert slip == pytest.approx(0.35)
    assert slip_at_stress(-100.0, yield_strength=475.0, slip_at_yield=0.7) == 0.0
    assert slip_rotation(slip, distance_to_neutral_axis=700.0) == pytest.approx(5e-4)
