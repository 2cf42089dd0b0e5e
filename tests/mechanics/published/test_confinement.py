"""Confined concrete against Mander, Priestley and Park, J. Struct. Eng. 114(8) (1988), 1804-1826.

The expected numbers are those equations worked out by hand to the digits shown.
"""

from __future__ import annotations

import pytest

from jacketcheck.mechanics._customary_units import INCH, KSI
from jacketcheck.mechanics.confinement import (
    confined_peak_strain,
    confined_strength,
    confined_stress,
    pressure_ratio_for_strength_ratio,
    strength_ratio,
    ultimate_strain,
)
from jacketcheck.mechanics.lateral_pressure import (
    effective_hoop_pressure,
    jacket_lateral_pressure,
    jacket_volumetric_ratio,
)


@pytest.mark.parametrize(
    ("pressure_ratio", "expected"),
    [
        pytest.param(0.05, 1.3101, id="C-01-0.05"),
        pytest.param(0.10, 1.5650, id="C-01-0.10"),
        pytest.param(0.15, 1.7824, id="C-01-0.15"),
        pytest.param(0.20, 1.9721, id="C-01-0.20"),
        pytest.param(0.25, 2.1403, id="C-01-0.25"),
        pytest.param(0.30, 2.2912, id="C-01-0.30"),
    ],
)
def test_strength_ratio(pressure_ratio: float, expected: float) -> None:
    assert strength_ratio(pressure_ratio) == pytest.approx(expected, abs=5.1e-5)


def test_no_pressure_adds_no_strength() -> None:
    # C-02
    assert strength_ratio(0.0) == 1.0


@pytest.mark.parametrize(
    ("pressure_ratio", "expected"),
    [
        pytest.param(0.05, 0.00510, id="C-03-0.05"),
        pytest.param(0.10, 0.00765, id="C-03-0.10"),
        pytest.param(0.15, 0.00982, id="C-03-0.15"),
        pytest.param(0.20, 0.01172, id="C-03-0.20"),
        pytest.param(0.25, 0.01340, id="C-03-0.25"),
        pytest.param(0.30, 0.01491, id="C-03-0.30"),
    ],
)
def test_peak_strain(pressure_ratio: float, expected: float) -> None:
    ratio = strength_ratio(pressure_ratio)
    assert confined_peak_strain(ratio) == pytest.approx(expected, abs=5.1e-6)


@pytest.mark.parametrize(
    ("ratio", "expected"),
    [pytest.param(1.5, 0.08641, id="C-04-1.5"), pytest.param(2.0, 0.20791, id="C-04-2.0")],
)
def test_inverse(ratio: float, expected: float) -> None:
    assert pressure_ratio_for_strength_ratio(ratio) == pytest.approx(expected, abs=5.1e-6)


@pytest.mark.parametrize(
    ("strain", "expected"),
    [
        pytest.param(0.001, 21.88, id="C-05-0.001"),
        pytest.param(0.002, 33.93, id="C-05-0.002"),
        pytest.param(0.005, 45.62, id="C-05-0.005"),
        pytest.param(0.007650, 46.95, id="C-05-peak"),
        pytest.param(0.010, 46.50, id="C-05-0.010"),
        pytest.param(0.020, 42.30, id="C-05-0.020"),
    ],
)
def test_stress_at_constant_pressure(strain: float, expected: float) -> None:
    stress = confined_stress(
        strain, lateral_pressure=3.0, unconfined_strength=30.0, elastic_modulus=27_386.0
    )
    assert stress == pytest.approx(expected, abs=5.1e-3)


def test_ultimate_strain() -> None:
    # C-06: 0.004 + 1.4 x 0.01 x 400 x 0.1 / 56 = 0.004 + 0.01 (Priestley, Seible and Calvi 1996)
    value = ultimate_strain(
        volumetric_ratio=0.01,
        yield_strength=400.0,
        steel_ultimate_strain=0.1,
        confined_strength=56.0,
    )
    assert value == pytest.approx(0.014, rel=1e-12)


@pytest.mark.parametrize(
    ("diameter", "thickness", "yield_strength", "strength", "expected"),
    [
        pytest.param(
            1200.0, 10.0, 250.0, 30.0, (0.03333, 4.167, 52.10, 0.009367, 0.03087), id="C-07"
        ),
        pytest.param(
            48.0 * INCH,
            0.375 * INCH,
            36.0 * KSI,
            4.0 * KSI,
            (0.03125, 0.5625 * KSI, 6.976 * KSI, 0.009440, 0.03109),
            id="C-08",
        ),
    ],
)
def test_jacketed_core(
    diameter: float,
    thickness: float,
    yield_strength: float,
    strength: float,
    expected: tuple[float, ...],
) -> None:
    # Priestley, Seible and Calvi 1996 ch. 7: jacket at yield; ultimate strain of the steel 0.12
    ratio = jacket_volumetric_ratio(thickness, diameter=diameter)
    pressure = jacket_lateral_pressure(thickness, diameter=diameter, yield_strength=yield_strength)
    confined = confined_strength(strength, lateral_pressure=pressure)
    peak = confined_peak_strain(confined / strength)
    ultimate = ultimate_strain(
        volumetric_ratio=ratio,
        yield_strength=yield_strength,
        steel_ultimate_strain=0.12,
        confined_strength=confined,
    )
    assert (ratio, pressure, confined, peak, ultimate) == pytest.approx(expected, rel=1e-3)


def test_jacket_pressure_is_that_of_its_volumetric_ratio() -> None:
    # C-09: rho_s f_y / 2 with rho_s = 4 t / D
    ratio = jacket_volumetric_ratio(10.0, diameter=1200.0)
    as_hoops = effective_hoop_pressure(ratio, yield_strength=250.0, effectiveness=1.0)
    as_jacket = jacket_lateral_pressure(10.0, diameter=1200.0, yield_strength=250.0)
    assert as_hoops == pytest.approx(as_jacket, rel=1e-15)
