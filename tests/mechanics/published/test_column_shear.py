"""Column shear worked out from ACI 318-19, ACI 318M-19 and the AASHTO seismic guide specification.

Numbers are recomputed from the codes' equations to the digits shown.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from jacketcheck.mechanics._customary_units import INCH, KIP, KSI, PSI
from jacketcheck.mechanics.aci_column_shear import (
    aci_concrete_shear,
    aci_hoop_shear,
    aci_light_hoop_concrete_shear,
    aci_minimum_hoop_area,
)
from jacketcheck.mechanics.degrading_column_shear import (
    degrading_axial_shear,
    degrading_concrete_shear,
    degrading_hoop_shear,
)
from jacketcheck.mechanics.guide_spec_column_shear import (
    GUIDE_SPEC_SHEAR_FACTOR,
    guide_spec_concrete_factor,
    guide_spec_concrete_shear,
    guide_spec_hoop_shear,
)
from jacketcheck.mechanics.jacket_shear import jacket_shear

DIAMETER = 48.0 * INCH
GROSS_AREA = 0.25 * np.pi * DIAMETER**2
STRENGTH = 4000.0 * PSI


@pytest.mark.parametrize(
    ("axial_load", "expected"),
    [pytest.param(0.0, 233.1, id="V-06-no-load"), pytest.param(600.0, 335.0, id="V-06-600-kip")],
)
def test_aci_concrete(axial_load: float, expected: float) -> None:
    shear = aci_concrete_shear(DIAMETER, concrete_strength=STRENGTH, axial_load=axial_load * KIP)
    assert shear / KIP == pytest.approx(expected, abs=0.06)


@pytest.mark.parametrize(
    ("axial_load", "expected"),
    [pytest.param(0.0, 1036.0, id="V-07-no-load"), pytest.param(2500e3, 1461.0, id="V-07-2500-kN")],
)
def test_aci_concrete_metric(axial_load: float, expected: float) -> None:
    shear = aci_concrete_shear(
        1200.0, concrete_strength=28.0, axial_load=axial_load, edition="318M-19"
    )
    assert shear / 1e3 == pytest.approx(expected, rel=0.003)


def test_aci_hoops() -> None:
    # V-08: No. 5 hoops at 4 in, 60 ksi, d = 38.4 in
    shear = aci_hoop_shear(
        0.62 * INCH**2,
        hoop_yield=60.0 * KSI,
        diameter=DIAMETER,
        spacing=4.0 * INCH,
        concrete_strength=STRENGTH,
    )
    assert shear / KIP == pytest.approx(357.1, abs=0.06)


def test_aci_limits() -> None:
    # 22.5.5.1.2: axial term at most 0.05 f'c = 200 psi on 48 x 38.4 in; 22.5.5.1.1: 5 sqrt(f'c)
    crushed = aci_concrete_shear(DIAMETER, concrete_strength=STRENGTH, axial_load=5000.0 * KIP)
    assert crushed / KIP == pytest.approx(5.0 * 63.2456 * 48.0 * 38.4 / 1e3, rel=1e-5)
    tension = aci_concrete_shear(DIAMETER, concrete_strength=STRENGTH, axial_load=-5000.0 * KIP)
    assert tension == 0.0
    # 22.5.1.2: hoops count for at most 8 sqrt(f'c) bw d
    many = aci_hoop_shear(
        9.0 * INCH**2,
        hoop_yield=60.0 * KSI,
        diameter=DIAMETER,
        spacing=4.0 * INCH,
        concrete_strength=STRENGTH,
    )
    assert many / KIP == pytest.approx(8.0 * 63.2456 * 48.0 * 38.4 / 1e3, rel=1e-5)


def test_aci_light_hoops() -> None:
    # Table 22.5.5.1(c): 8 lambda_s rho_w^(1/3) sqrt(f'c) with As 20 in2, lambda_s^2 = 2 / 4.84
    expected = 8.0 * (2.0 / 4.84) ** 0.5 * (20.0 / 1843.2) ** (1 / 3) * 63.2456 * 1843.2 / 1e3
    shear = aci_light_hoop_concrete_shear(
        DIAMETER, concrete_strength=STRENGTH, tension_bar_area=20.0 * INCH**2
    )
    assert shear / KIP == pytest.approx(expected, rel=1e-5)


def test_aci_minimum_hoops() -> None:
    # 10.6.2.2: 50 bw s / fyt governs at 4000 psi, 0.75 sqrt(f'c) from 4444 psi on
    given = {"spacing": 12.0 * INCH, "hoop_yield": 60.0 * KSI}
    area = aci_minimum_hoop_area(DIAMETER, concrete_strength=STRENGTH, **given)
    assert area / INCH**2 == pytest.approx(50.0 * 48.0 * 12.0 / 60e3, rel=1e-9)
    area = aci_minimum_hoop_area(DIAMETER, concrete_strength=6400.0 * PSI, **given)
    assert area / INCH**2 == pytest.approx(60.0 * 48.0 * 12.0 / 60e3, rel=1e-9)


def _guide_spec_factor(ductility: float) -> float:
    ratio = 4.0 * 0.31 / (4.0 * 43.0)
    return float(guide_spec_concrete_factor(ductility, hoop_ratio=ratio, hoop_yield=60.0 * KSI))


def test_guide_spec_in_a_ductile_hinge() -> None:
    # V-09: rho_s fyh = 0.4326 ksi, limited to 0.35; alpha' = 1.003; vc = 0.07486 ksi
    factor = _guide_spec_factor(5.0)
    assert factor == pytest.approx(1.003, abs=5.1e-4)
    concrete = guide_spec_concrete_shear(
        GROSS_AREA, concrete_strength=STRENGTH, axial_load=600.0 * KIP, concrete_factor=factor
    )
    assert concrete / KIP == pytest.approx(108.4, abs=0.06)
    hoops = guide_spec_hoop_shear(
        0.31 * INCH**2,
        hoop_yield=60.0 * KSI,
        core_diameter=43.0 * INCH,
        spacing=4.0 * INCH,
        concrete_strength=STRENGTH,
        gross_area=GROSS_AREA,
    )
    assert hoops / KIP == pytest.approx(314.1, abs=0.06)
    assert GUIDE_SPEC_SHEAR_FACTOR * (concrete + hoops) / KIP == pytest.approx(380.2, abs=0.1)


def test_guide_spec_at_low_ductility() -> None:
    # V-10: alpha' = 3, raw vc 0.2238 limited to 0.11 sqrt(4) = 0.22 ksi
    factor = _guide_spec_factor(2.0)
    assert factor == 3.0
    concrete = guide_spec_concrete_shear(
        GROSS_AREA, concrete_strength=STRENGTH, axial_load=600.0 * KIP, concrete_factor=factor
    )
    assert concrete / (0.8 * GROSS_AREA) / KSI == pytest.approx(0.22, rel=1e-9)


def test_guide_spec_without_compression() -> None:
    # Eq. 8.6.2-4: nothing from the concrete; 8.6.4: hoops at most 0.25 sqrt(f'c) Ae = 723.8 kips
    loads = np.array([0.0, -100.0 * KIP])
    concrete = guide_spec_concrete_shear(
        GROSS_AREA, concrete_strength=STRENGTH, axial_load=loads, concrete_factor=3.0
    )
    assert np.asarray(concrete).tolist() == [0.0, 0.0]
    hoops = guide_spec_hoop_shear(
        3.1 * INCH**2,
        hoop_yield=60.0 * KSI,
        core_diameter=43.0 * INCH,
        spacing=4.0 * INCH,
        concrete_strength=STRENGTH,
        gross_area=GROSS_AREA,
    )
    assert hoops / KIP == pytest.approx(723.8, abs=0.06)


@pytest.mark.parametrize(
    ("aspect", "bars", "ductility", "product"),
    [
        # alpha, beta and gamma of the revised model at their limits and between
        pytest.param(1.0, 0.030, 0.0, 1.5 * 1.0 * 0.29, id="squat"),
        pytest.param(1.75, 0.015, 3.0, 1.25 * 0.8 * 0.29, id="medium"),
        pytest.param(4.0, 0.010, 9.0, 1.0 * 0.7 * 0.17, id="ductile"),
        pytest.param(8.0, 0.000, 40.0, 1.0 * 0.5 * 0.05, id="residual"),
    ],
)
def test_degrading_concrete(aspect: float, bars: float, ductility: float, product: float) -> None:
    # Kowalsky and Priestley, ACI Struct. J. 97(3) (2000), 388-396
    shear = degrading_concrete_shear(
        1.0e6,
        concrete_strength=36.0,
        aspect_ratio=aspect,
        bar_ratio=bars,
        curvature_ductility=ductility,
    )
    assert shear == pytest.approx(product * 6.0 * 0.8e6, rel=1e-12)


def test_degrading_axial_and_hoops() -> None:
    # P (D - c) / (2 L); (pi / 2) A fy (D - c - cov) cot 30 / s
    axial = degrading_axial_shear(
        3.0e6, diameter=1200.0, neutral_axis_depth=400.0, shear_span=6000.0
    )
    assert axial == pytest.approx(200e3, rel=1e-12)
    hoops = degrading_hoop_shear(
        200.0,
        hoop_yield=400.0,
        diameter=1200.0,
        neutral_axis_depth=400.0,
        hoop_cover=50.0,
        spacing=100.0,
    )
    assert hoops == pytest.approx(1.570796 * 200.0 * 400.0 * 750.0 * 1.7320508 / 100.0, rel=1e-6)


@pytest.mark.parametrize(
    ("call", "expected"),
    [
        pytest.param(
            lambda: jacket_shear(250.0, thickness=10.0, jacket_diameter=1200.0) / 1e3,
            4712.0,
            id="J-14-si",
        ),
        pytest.param(
            lambda: (
                jacket_shear(36.0 * KSI, thickness=0.375 * INCH, jacket_diameter=48.0 * INCH) / KIP
            ),
            1017.9,
            id="J-14-us",
        ),
        pytest.param(
            lambda: (
                jacket_shear(
                    250.0, thickness=10.0, jacket_diameter=1200.0, crack_angle=np.radians(35.0)
                )
                / 1e3
            ),
            6730.0,
            id="J-14-35-degrees",
        ),
    ],
)
def test_jacket(call: Callable[[], float], expected: float) -> None:
    # Priestley, Seible, Xiao and Verma, ACI Struct. J. 91(4) (1994)
    assert call() == pytest.approx(expected, rel=1e-4)
