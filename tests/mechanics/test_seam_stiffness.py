"""Seam stiffness: EN 1993-1-8:2005 Table 6.11 worked out by hand for one bolt."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.mechanics.hoop import seam_compliance
from jacketcheck.mechanics.seam_stiffness import (
    bearing_type_seam_stiffness,
    bolt_bearing_stiffness,
    bolt_shear_stiffness,
    splice_plate_stiffness,
)


def test_bolt_shear() -> None:
    # E k11 = 16 n_b d^2 f_ub / d_M16 is a row of two M20 8.8 bolts: 16 x 400 x 800 / 16 = 320e3
    pair = 320e3
    planes = np.array([1.0, 2.0])
    stiffness = bolt_shear_stiffness(20.0, bolt_tensile_strength=800.0, shear_planes=planes)
    assert stiffness == pytest.approx([pair / 2.0, pair])


@pytest.mark.parametrize(
    ("thickness", "end", "spacing", "expected"),
    [
        # 12 k_b k_t d f_u with d 20 mm, f_u 400 MPa: 96e3 k_b k_t
        pytest.param(8.0, 40.0, np.inf, 96e3 * 1.0 * 0.75, id="end-distance"),
        pytest.param(8.0, 90.0, np.inf, 96e3 * 1.25 * 0.75, id="end-distance-capped"),
        pytest.param(8.0, 90.0, 50.0, 96e3 * 1.0 * 0.75, id="line-spacing"),
        pytest.param(30.0, 40.0, np.inf, 96e3 * 1.0 * 2.5, id="thickness-capped"),
    ],
)
def test_bolt_bearing(thickness: float, end: float, spacing: float, expected: float) -> None:
    stiffness = bolt_bearing_stiffness(
        20.0,
        plate_thickness=thickness,
        plate_tensile_strength=400.0,
        end_distance=end,
        line_spacing=spacing,
    )
    assert stiffness == pytest.approx(expected)


def test_bearing_is_softer_than_friction_and_tends_to_it() -> None:
    plates = splice_plate_stiffness(
        total_plate_thickness=16.0, free_length=150.0, elastic_modulus=200e3
    )
    columns = np.array([1.0, 2.0, 1e9])
    bearing = np.asarray(
        bearing_type_seam_stiffness(
            shear_stiffness=300e3,
            sleeve_bearing_stiffness=90e3,
            splice_bearing_stiffness=120e3,
            plate_stiffness=plates,
            pitch=75.0,
            bolt_columns=columns,
        )
    )
    assert np.all(np.diff(bearing) > 0.0)
    assert bearing[-1] == pytest.approx(plates, rel=1e-6)


def test_a_seam_kept_shut_adds_nothing() -> None:
    assert seam_compliance(inner_radius=600.0, seam_stiffness=np.inf) == 0.0
