"""The section above the repair bends in its weakest direction: every direction by itself."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.analysis.bond import bar_bonds
from jacketcheck.analysis.directions import bending_directions
from jacketcheck.analysis.displacement import capacity_of_repaired
from jacketcheck.analysis.height import column_bar_stress
from jacketcheck.analysis.hinge import bilinear
from jacketcheck.analysis.sections import bending_angle, column_section
from jacketcheck.mechanics.moment_curvature import moment_curvature
from tests.support.jackets import built


@pytest.mark.parametrize("axial_load", ["600 kip", "1500 kip"])
@pytest.mark.parametrize("variant", ["chipped", "thick, unchipped", "thin, snug bolts"])
def test_no_direction_has_a_smaller_plastic_moment(variant: str, axial_load: str) -> None:
    jacket = built(f'actions.axial_load = "{axial_load}"', variant=variant)
    assert bar_bonds(jacket)  # some bars are held by bond alone, so that directions differ
    limit = np.asarray(column_bar_stress(jacket, np.array([float(jacket.repair_height)]))[0])
    section = column_section(jacket, stress_limit=limit)
    load = float(jacket.demands.axial_load)
    moments = [
        float(
            bilinear(
                moment_curvature(section, axial_load=load, angle=float(angle)), "any direction"
            ).plastic_moment
        )
        for angle in np.asarray(bending_angle(bending_directions()))
    ]
    assert float(capacity_of_repaired(jacket).plastic_moment) == pytest.approx(
        min(moments), rel=1e-3
    )
