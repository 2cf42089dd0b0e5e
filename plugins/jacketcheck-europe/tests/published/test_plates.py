"""Plates of EN 1993-1-1 6.2.3 and block tearing of EN 1993-1-8 3.10.2: arithmetic of both."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.plates import (
    block_tearing_resistance,
    net_yield_resistance,
    plastic_resistance,
    rupture_resistance,
)

from jacketcheck.mechanics.block_shear import BlockShearAreas

# L-03: 200 mm x 10 mm of S355 (355, 470 MPa) with two holes of 22 mm
GROSS, NET = 2000.0, 1560.0


def test_gross_section() -> None:
    found = plastic_resistance(355.0, gross_area=GROSS, partial_factor=1.0)
    assert float(found) / 1e3 == pytest.approx(710.0, rel=1e-3)


def test_net_section() -> None:
    # 0.9 * 1560 * 470 / 1.25
    found = rupture_resistance(470.0, net_area=NET, partial_factor=1.25)
    assert float(found) / 1e3 == pytest.approx(527.9, rel=1e-3)


def test_net_section_of_category_c() -> None:
    # 1560 * 355 / 1.0
    found = net_yield_resistance(355.0, net_area=NET, partial_factor=1.0)
    assert float(found) / 1e3 == pytest.approx(553.8, rel=1e-3)


@pytest.mark.parametrize(
    ("share", "expected"),
    [
        # 10 mm of S275 (275, 430 MPa), three bolts in 22 mm holes at 70 mm, 40 mm to both edges:
        # A_nv = 10 (40 + 140 - 2.5 * 22) = 1250, A_nt = 10 (40 - 11) = 290 mm²
        # 430 * 290 / 1.25 = 99.76 kN; 275 * 1250 / sqrt 3 = 198.5 kN
        pytest.param(1.0, 298.2, id="concentric, Eq. 3.9"),
        pytest.param(0.5, 248.3, id="eccentric, Eq. 3.10"),
    ],
)
def test_block_tearing(share: float, expected: float) -> None:
    areas = BlockShearAreas(gross_shear=1800.0, net_shear=1250.0, net_tension=290.0)
    found = block_tearing_resistance(
        areas,
        yield_strength=275.0,
        tensile_strength=430.0,
        section_factor=1.0,
        rupture_factor=1.25,
        tension_share=share,
    )
    assert float(found) / 1e3 == pytest.approx(expected, abs=0.1)
