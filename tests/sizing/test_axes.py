"""Values that bounds stand for."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput
from jacketcheck.sizing.axes import Axis, default_sizing
from jacketcheck.sizing.space import Space, space_of
from tests.support.jackets import host
from tests.support.sized_designs import file_with

AxisWithin = Callable[[str, str], Axis]
SpaceOf = Callable[[str], Space]


def test_bounds_without_a_step_hold_the_stock_plates_between_them(axis_within: AxisWithin) -> None:
    axis = axis_within(
        'sizing.sleeve.thickness = { least = "1/4 in", most = "1/2 in" }', "sleeve.thickness"
    )
    assert axis.values == (6.35, 7.9375, 9.525, 11.1125, 12.7)
    assert axis.is_stock
    assert not axis.is_written
    assert axis.unit == "mm"


def test_stock_plates_are_metric_where_the_file_is(base: RepairInput) -> None:
    metric = base.model_copy(update={"job": base.job.model_copy(update={"units": "si"})})
    sizing = file_with('sizing.sleeve.thickness = { least = "10 mm", most = "16 mm" }').base.sizing
    assert sizing is not None
    space = space_of(metric, sizing, catalog=host().catalog)
    [axis] = [axis for axis in space.axes if axis.path == "sleeve.thickness"]
    assert axis.values == (10.0, 12.0, 15.0, 16.0)


def test_bounds_with_a_step_hold_both_ends(axis_within: AxisWithin) -> None:
    axis = axis_within(
        'sizing.bolts.pitch = { least = "100 mm", most = "101 mm", step = "0.1 mm" }', "bolts.pitch"
    )
    assert axis.values == (
        100.0, 100.1, 100.2, 100.3, 100.4, 100.5, 100.6, 100.7, 100.8, 100.9, 101.0,
    )  # fmt: skip
    assert axis.step == pytest.approx(0.1)


def test_a_step_that_does_not_reach_the_end_stops_before_it(axis_within: AxisWithin) -> None:
    axis = axis_within(
        'sizing.bolts.pitch = { least = "100 mm", most = "125 mm", step = "10 mm" }', "bolts.pitch"
    )
    assert axis.values == (100.0, 110.0, 120.0)


def test_counts_are_whole_and_in_steps_of_one(axis_within: AxisWithin) -> None:
    axis = axis_within("sizing.bolts.columns = { least = 1, most = 3 }", "bolts.columns")
    assert axis.values == (1, 2, 3)
    assert all(isinstance(one, int) for one in axis.values)
    assert axis.is_choice


def test_what_is_not_named_stays_as_written(axis_within: AxisWithin) -> None:
    axis = axis_within("sizing.bolts.columns = [1, 2]", "sleeve.thickness")
    assert axis.is_written
    assert len(axis.values) == 1
    assert axis.at(axis.values[0]) is axis
    assert not axis.at(3.0).is_written


@pytest.mark.parametrize(
    ("bounds", "told"),
    [
        pytest.param(
            'sizing.sleeve.thickness = { least = "3.1 mm", most = "3.15 mm" }',
            "no stock plate lies between the bounds",
            id="nothing between",
        ),
        pytest.param(
            'sizing.bolts.diameter = ["7/8 in", "23 mm"]',
            'bolts.diameter.2 = "23 mm": is no size of ASTM F3125 A325; known are',
            id="no such size",
        ),
    ],
)
def test_bounds_that_hold_nothing_are_told(space_within: SpaceOf, bounds: str, told: str) -> None:
    with pytest.raises(InputError) as caught:
        space_within(bounds)
    assert told in str(caught.value)


def test_too_many_designs_are_told_with_the_number_of_each_field(space_within: SpaceOf) -> None:
    bounds = """
        [sizing.bolts]
        pitch = { least = "80 mm", most = "120 mm", step = "0.1 mm" }
        gauge = { least = "70 mm", most = "80 mm", step = "0.1 mm" }
        seam_edge_distance = { least = "50 mm", most = "60 mm", step = "0.1 mm" }
        """
    with pytest.raises(InputError) as caught:
        space_within(bounds)
    text = str(caught.value)
    assert "4,090,601 designs, more than 2,000,000" in text
    assert "bolts.pitch 401, bolts.gauge 101, bolts.seam_edge_distance 101" in text


def test_without_bounds_the_usual_fields_are_tried(base: RepairInput) -> None:
    space = space_of(base, default_sizing(base, host().catalog), catalog=host().catalog)
    varied = {axis.path for axis in space.axes if len(axis.values) > 1}
    assert varied == {
        "sleeve.thickness",
        "splice.thickness",
        "bolts.diameter",
        "bolts.columns",
        "repair.surface",
    }
