"""Curves of the three sections: from rest to the ultimate point, and in the order of strength."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.analysis.displacement import capacity_of_original, capacity_of_repaired
from jacketcheck.analysis.section_curves import section_curves
from jacketcheck.jacket.jacket import Jacket


def test_curves_end_where_the_capacities_do(jacket: Jacket) -> None:
    original, base, above = section_curves(jacket)
    for curve in (original, base, above):
        assert (curve.curvature[0], curve.moment[0]) == (0.0, 0.0)
        assert np.all(np.diff(curve.curvature) > 0.0)
        assert curve.curvature[-1] == pytest.approx(curve.ultimate_curvature)
        assert curve.peak_moment == pytest.approx(np.max(curve.moment))
        assert 0.0 < curve.yield_curvature < curve.ultimate_curvature
    for curve, capacity in (
        (original, capacity_of_original(jacket)),
        (above, capacity_of_repaired(jacket)),
    ):
        assert curve.ultimate_curvature == pytest.approx(float(capacity.ultimate_curvature))


def test_the_base_is_stronger_and_no_bar_adds_strength_by_being_broken(jacket: Jacket) -> None:
    original, base, above = section_curves(jacket)
    assert base.peak_moment > original.peak_moment
    assert above.peak_moment <= original.peak_moment * (1.0 + 1e-9)
