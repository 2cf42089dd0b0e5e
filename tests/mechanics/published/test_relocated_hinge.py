"""Forces and displacements of hinges: statics, and Caltrans SDC 1.4 (2006) section 3.1.3."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.hinge_displacement import (
    plastic_displacement,
    plastic_rotation,
    yield_displacement,
)
from jacketcheck.mechanics.relocated_hinge import (
    P_DELTA_LIMIT,
    overstrength_moment,
    p_delta_ratio,
    relocated_hinge,
)


@pytest.mark.parametrize(
    ("height", "repair", "expected"),
    [
        pytest.param(3000.0, 500.0, 1.200, id="G-04-si"),
        pytest.param(120.0, 24.0, 1.250, id="G-04-us"),
    ],
)
def test_amplification(height: float, repair: float, expected: float) -> None:
    hinge = relocated_hinge(1.0, clear_height=height, repair_height=repair)
    assert hinge.amplification == pytest.approx(expected, rel=1e-12)


def test_forces() -> None:
    # G-05: Mp 2000 kNm, L 3.0 m, H 0.5 m
    hinge = relocated_hinge(2000e6, clear_height=3000.0, repair_height=500.0)
    assert hinge.shear == pytest.approx(800e3, rel=1e-12)
    assert hinge.base_moment == pytest.approx(2400e6, rel=1e-12)


def test_displacement_capacity() -> None:
    # J-13: Caltrans SDC Eq. 3.1 to 3.5 with L 240 in, Lp 32.154 in, in inches
    rotation = plastic_rotation(1.5e-3, yield_curvature=1.0e-4, hinge_length=32.154)
    plastic = plastic_displacement(rotation, shear_span=240.0, hinge_length=32.154)
    assert yield_displacement(1.0e-4, shear_span=240.0) == pytest.approx(1.920, abs=5.1e-4)
    assert rotation == pytest.approx(0.04502, abs=5.1e-6)
    assert plastic == pytest.approx(10.08, abs=5.1e-3)


@pytest.mark.parametrize(
    ("factor", "expected"),
    [pytest.param(1.2, 2400e6, id="M-06-A706"), pytest.param(1.4, 2800e6, id="M-06-A615")],
)
def test_overstrength(factor: float, expected: float) -> None:
    # AASHTO Guide Spec Seismic 2nd ed. (2011) 8.5
    moment = overstrength_moment(2000e6, overstrength_factor=factor)
    assert moment == pytest.approx(expected, rel=1e-12)


def test_p_delta() -> None:
    # AASHTO Guide Spec Seismic 2nd ed. (2011) Eq. 4.11.5-1: P Delta_r <= 0.25 Mp
    assert P_DELTA_LIMIT == 0.25
    ratio = p_delta_ratio(3000e3, displacement=np.array([100.0, 400.0]), hinge_moment=4000e6)
    assert np.asarray(ratio) == pytest.approx([0.075, 0.3])
