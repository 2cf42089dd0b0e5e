"""What holds for every pattern."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jacketcheck.catalog import built_in_catalog
from jacketcheck.jacket import Jacket
from jacketcheck.shop import flat_patterns, quantities

CATALOG = built_in_catalog()
SLOW = settings(
    max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@SLOW
@given(thickness=st.floats(5.0, 30.0), gap=st.floats(0.0, 60.0), edge=st.floats(40.0, 80.0))
def test_patterns_are_symmetric_and_holes_lie_inside(
    make_jacket: Callable[..., Jacket], thickness: float, gap: float, edge: float
) -> None:
    jacket = make_jacket(
        sleeve={"thickness": thickness, "seam_gap": gap}, bolts={"seam_edge_distance": edge}
    )
    for pattern in flat_patterns(jacket):
        xs = sorted({round(hole.x, 6) for hole in pattern.holes})
        ys = sorted({round(hole.y, 6) for hole in pattern.holes})
        assert xs == pytest.approx([pattern.length - x for x in reversed(xs)])
        assert ys == pytest.approx([pattern.height - y for y in reversed(ys)])
        for hole in pattern.holes:
            assert hole.width / 2.0 < hole.x < pattern.length - hole.width / 2.0
            assert hole.height / 2.0 < hole.y < pattern.height - hole.height / 2.0
        assert 0.0 < pattern.net_area < pattern.length * pattern.height


@SLOW
@given(thickness=st.floats(5.0, 30.0), gap=st.floats(0.0, 60.0))
def test_two_half_shells_and_two_gaps_close_the_circle(
    make_jacket: Callable[..., Jacket], thickness: float, gap: float
) -> None:
    shell = flat_patterns(make_jacket(sleeve={"thickness": thickness, "seam_gap": gap}))[0]
    assert 2.0 * (shell.length + gap) == pytest.approx(2.0 * math.pi * shell.middle_radius)


@SLOW
@given(thickness=st.floats(5.0, 25.0), more=st.floats(0.1, 10.0), waste=st.floats(0.0, 50.0))
def test_more_steel_weighs_more_and_more_waste_orders_more(
    make_jacket: Callable[..., Jacket], thickness: float, more: float, waste: float
) -> None:
    def amounts(steel: float, lost: float) -> dict[str, float]:
        jacket = make_jacket(sleeve={"thickness": steel})
        found = quantities(jacket, flat_patterns(jacket), catalog=CATALOG, waste_percent=lost)
        return {one.item: one.value for one in found}

    thin, thick = amounts(thickness, waste), amounts(thickness + more, waste + 1.0)
    assert thick["plates: mass of all"] > thin["plates: mass of all"]
    assert thick["grout: to order"] > thin["grout: to order"]
    assert thick["grout: annulus"] == pytest.approx(thin["grout: annulus"])
    heavier = "lifting mass of one half, at most"
    assert thick[heavier] > thin[heavier] > thin["lifting mass of each half, bare"]
