"""Spacing, edge distances and clearances of EN 1993-1-8 Table 3.3 and EN 1090-2 Table 11."""

from __future__ import annotations

import pytest
from jacketcheck_europe.mechanics.detailing import (
    Exposure,
    largest_edge_distance,
    largest_spacing,
    least_edge_distance,
    least_spacing_across,
    least_spacing_along,
)

from jacketcheck.plugin import built_in_catalog


def test_least_distances() -> None:
    # L-08, d_0 = 22 mm: p_1 2.2, p_2 2.4, e_1 and e_2 1.2, of slots e_3 and e_4 1.5 times
    assert float(least_spacing_along(22.0)) == pytest.approx(48.4, rel=1e-12)
    assert float(least_spacing_across(22.0)) == pytest.approx(52.8, rel=1e-12)
    assert float(least_edge_distance(22.0)) == pytest.approx(26.4, rel=1e-12)
    slot = least_edge_distance(22.0, hole_type="long-slot-parallel")
    assert float(slot) == pytest.approx(33.0, rel=1e-12)


@pytest.mark.parametrize(
    ("thickness", "exposure", "spacing", "edge"),
    [
        # min(14 t, 200) and 4 t + 40
        (10.0, "painted", 140.0, 80.0),
        (20.0, "painted", 200.0, 120.0),
        # min(14 t, 175) and max(8 t, 125)
        (10.0, "weathering", 140.0, 125.0),
        (20.0, "weathering", 175.0, 160.0),
    ],
)
def test_largest_distances(
    thickness: float, exposure: Exposure, spacing: float, edge: float
) -> None:
    assert float(largest_spacing(thickness, exposure=exposure)) == spacing
    assert float(largest_edge_distance(thickness, exposure=exposure)) == edge


@pytest.mark.parametrize(
    ("size", "hole"),
    [
        pytest.param("M12", 13.0, id="L-13-M12"),
        pytest.param("M20", 22.0, id="L-13-M20"),
        pytest.param("M24", 26.0, id="L-13-M24"),
        pytest.param("M30", 33.0, id="L-13-M30"),
    ],
)
def test_holes_of_the_catalogue(size: str, hole: float) -> None:
    # the d_0 that these limits are multiples of
    product = built_in_catalog().bolt_product("EN 14399 HR 8.8")
    assert product.size(size).holes["standard"] == hole
