"""What is said where nothing works, checked by doing it."""

from __future__ import annotations

from typing import Any

import pytest

from jacketcheck.report import ExitCode
from jacketcheck.sizing.infeasibility import Infeasibility
from jacketcheck.sizing.report import SizingReport
from jacketcheck.sizing.way_out import WayOut
from tests.support.sized_designs import check_all, sized

NARROW = """
    [sizing.sleeve]
    thickness = { least = "1/4 in", most = "3/8 in" }
    [sizing.bolts]
    diameter = ["5/8 in", "3/4 in"]
    columns = [1, 2]
    """
FEW_BARS = """
    [sizing.added_bars]
    count = [6, 8]
    """
SHORT_BARS = """
    [sizing.added_bars]
    embedment = ["20 in", "24 in"]
    """
BOUNDS = [
    pytest.param(NARROW, id="two bounds together"),
    pytest.param(FEW_BARS, id="too few bars"),
    pytest.param(SHORT_BARS, id="bars too short"),
]
NOT_FOUND = ExitCode.EXCEEDS


def why(report: SizingReport) -> Infeasibility:
    assert not report.front
    assert report.exit_code is NOT_FOUND
    assert report.infeasibility is not None
    return report.infeasibility


def way_out(report: SizingReport) -> WayOut:
    found = why(report).way_out
    assert found is not None
    return found


def toml(value: Any) -> str:
    if isinstance(value, float):
        return f'"{value!r} mm"'
    return f'"{value}"' if isinstance(value, str) else str(value)


def nearest_as_written(report: SizingReport) -> dict[str, str]:
    """The nearest design within the bounds, field by field."""
    values = why(report).nearest_values
    return {axis.path: toml(values[axis.path]) for axis in report.varied}


@pytest.mark.parametrize("bounds", BOUNDS)
def test_the_design_outside_the_bounds_works(bounds: str) -> None:
    report = sized(bounds)
    found = way_out(report)
    assert found.works
    assert found.ratio <= 1.0
    assert not found.exceeded
    fields = nearest_as_written(report)
    fields |= {move.path: toml(move.value) for move in found.moves}
    [alone] = check_all([tuple(fields.items())])
    assert alone.works
    assert alone.ratios[found.governing] == pytest.approx(found.ratio, rel=1e-9)


@pytest.mark.parametrize("bounds", BOUNDS)
def test_no_move_of_the_way_out_can_be_spared(bounds: str) -> None:
    report = sized(bounds)
    moves = way_out(report).moves
    assert any(move.bound is not None for move in moves)
    fields = nearest_as_written(report)
    for spared in moves:
        others = {one.path: toml(one.value) for one in moves if one is not spared}
        [alone] = check_all([tuple((fields | others).items())])
        assert not alone.works, spared


@pytest.mark.parametrize("bounds", BOUNDS)
def test_the_nearest_design_exceeds_what_is_said(bounds: str) -> None:
    report = sized(bounds)
    [alone] = check_all([tuple(nearest_as_written(report).items())])
    said = why(report).nearest_exceeds
    assert said == pytest.approx({n: r for n, r in alone.ratios.items() if r > 1.0}, rel=1e-9)


def test_a_bound_that_closed_forms_alone_exceed_is_named_with_the_value_to_go_to() -> None:
    report = sized(SHORT_BARS)
    found = why(report)
    [obstacle] = found.obstacles
    assert obstacle.limit_state == "added-bar-anchorage"
    assert obstacle.at_least
    assert (obstacle.passed, obstacle.evaluated) == (0, 2)
    longer = next(one for one in found.relaxations if one.path == "added_bars.embedment")
    assert longer.ratio <= 1.0 < longer.ratio_before
    assert longer.bound == pytest.approx(24 * 25.4)
    # the length in proportion: closed form, so that one rule of three is enough
    assert longer.value >= longer.bound * longer.ratio_before - 1e-6
    assert longer.value - 4 * 25.4 < longer.bound * longer.ratio_before


def test_smallest_ratios_are_those_of_single_designs() -> None:
    obstacles = why(sized(SHORT_BARS)).obstacles
    alone = check_all([(("added_bars.embedment", f'"{length} in"'),) for length in (20, 24)])
    ratios = [one.ratios["added-bar-anchorage"] for one in alone]
    assert obstacles[0].smallest_ratio == pytest.approx(min(ratios), rel=1e-9)
