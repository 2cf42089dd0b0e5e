"""Designs by number, alone and many at once, and what follows from their fields."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from jacketcheck.jacket import build_jacket
from jacketcheck.jacket.designs import pick
from jacketcheck.sizing.beyond import beyond
from jacketcheck.sizing.space import Space, space_of
from tests.support.jackets import host
from tests.support.sized_designs import file_with

SpaceOf = Callable[[str], Space]

BOUNDS = """
    [sizing.sleeve]
    thickness = ["3/8 in", "1/2 in", "5/8 in"]
    steel = ["ASTM A36", "ASTM A572 Grade 50"]
    [sizing.splice]
    sides = ["both", "outside"]
    [sizing.bolts]
    diameter = ["3/4 in", "1 in"]
    pitch = { diameters = [3, 4.5] }
    [sizing.added_bars]
    size = ["No. 7", "No. 8"]
    left_out = true
    """


def test_every_combination_has_one_number(space_within: SpaceOf) -> None:
    space = space_within(BOUNDS)
    assert space.count == 3 * 2 * 2 * 2 * 2 * (1 + 2)
    seen = {tuple(sorted(map(str, space.values(n).items()))) for n in range(space.count)}
    assert len(seen) == space.count


def test_designs_many_at_once_are_those_built_alone(space_within: SpaceOf) -> None:
    space, met = space_within(BOUNDS), 0
    for combination in space.combinations:
        built = combination.assemble(np.arange(combination.count), catalog=host().catalog)
        assert built.jacket is not None
        assert not built.refusals
        for place, index in enumerate(built.indexes.tolist()):
            repair = space.repair(combination.first + index)
            assert pick(built.jacket, place) == build_jacket(repair, catalog=host().catalog)
            met += 1
    assert met == space.count


def test_designs_are_found_back_in_their_combinations(space_within: SpaceOf) -> None:
    space = space_within(BOUNDS)
    numbers = np.array([0, 5, 47, 48, 95, 143])
    found = {}
    for combination, places in space.grouped(numbers):
        for number in numbers[places].tolist():
            assert 0 <= number - combination.first < combination.count
            found[number] = combination.values(number - combination.first)
    assert found == {number: space.values(number) for number in numbers.tolist()}


def test_rows_follow_from_height_and_pitch(space_within: SpaceOf) -> None:
    space = space_within('sizing.bolts = { pitch = { diameters = [3] }, diameter = ["7/8 in"] }')
    repair = space.repair(0)
    # 3 x 7/8 in is 2-5/8 in; ends 1.5 x 7/8 in, rounded up to 1-3/8 in
    assert repair.bolts.pitch == pytest.approx(2.625 * 25.4)
    assert repair.bolts.end_distance == pytest.approx(1.375 * 25.4)
    assert repair.bolts.rows is None
    # a sleeve of 60 in less a gap of 3 in: 1 + (57 - 2 x 1-3/8)/2-5/8 = 21.7 rows fit
    assert build_jacket(repair, catalog=host().catalog).bolts.rows == 21


def test_rows_stay_as_written_where_nothing_moves_them(space_within: SpaceOf) -> None:
    repair = space_within('sizing.sleeve.thickness = ["1/2 in"]').repair(0)
    assert repair.bolts.rows == 12


def test_a_hole_grows_with_its_bar(space_within: SpaceOf) -> None:
    space = space_within('sizing.added_bars.size = ["No. 9"]')
    added = space.repair(0).added_bars
    assert added is not None
    # 1-3/4 in for a bar of 1 in: 3/4 in more than a bar of 1.128 in
    assert added.hole_diameter == pytest.approx((1.128 + 0.75) * 25.4)


def test_added_bars_keep_their_distance_to_the_top(space_within: SpaceOf) -> None:
    space = space_within('sizing.repair.height = ["54 in", "66 in"]')
    heights = []
    for number in range(2):
        added = space.repair(number).added_bars
        assert added is not None
        heights.append(added.height / 25.4)
    assert heights == pytest.approx([53.0, 65.0])


def test_plates_inside_go_with_those_outside(space_within: SpaceOf) -> None:
    repair = space_within('sizing.splice.thickness = ["5/8 in"]').repair(0)
    jacket = build_jacket(repair, catalog=host().catalog)
    assert jacket.splice.total_thickness == pytest.approx(1.25 * 25.4)


def test_bars_can_be_tried_that_the_file_does_not_have() -> None:
    bare = 'remove = ["added_bars"]'
    repair = file_with(
        f"""
        [variants.bare]
        {bare}
        [variants.bare.sizing.added_bars]
        size = ["No. 8"]
        count = [12, 16]
        embedment = ["36 in"]
        steel = "ASTM A706 Grade 60"
        hole_clearance = "3/4 in"
        """
    ).variants["bare"]
    assert repair.added_bars is None
    assert repair.sizing is not None

    space = space_of(repair, repair.sizing, catalog=host().catalog)
    assert space.count == 2
    added = space.repair(1).added_bars
    assert added is not None
    assert added.count == 16
    assert added.embedment == pytest.approx(36 * 25.4)
    assert added.hole_diameter == pytest.approx(1.75 * 25.4)
    # midway between a column of 48 in and a sleeve of 60 in, 75 mm below the top
    assert added.circle_diameter == pytest.approx(54 * 25.4)
    assert added.height == pytest.approx(60 * 25.4 - 75.0)


@pytest.mark.parametrize(
    ("bounds", "path", "below", "above"),
    [
        pytest.param(
            'sizing.sleeve.thickness = ["3/8 in", "1/2 in"]',
            "sleeve.thickness",
            (7.9375, 6.35),
            (14.2875, 15.875),
            id="the next stock plates",
        ),
        pytest.param(
            "sizing.bolts.columns = [2, 3]", "bolts.columns", (1,), (4, 5), id="counts, at least 1"
        ),
        pytest.param(
            'sizing.bolts.pitch = { least = "100 mm", most = "110 mm", step = "5 mm" }',
            "bolts.pitch",
            (95.0, 90.0),
            (115.0, 120.0),
            id="in steps of the bounds",
        ),
        pytest.param(
            "sizing.bolts.pitch = { diameters = [3] }",
            "bolts.pitch",
            (2.5, 2.0),
            (3.5, 4.0),
            id="half diameters",
        ),
        pytest.param(
            'sizing.bolts.diameter = ["7/8 in"]',
            "bolts.diameter",
            ("3/4 in", "5/8 in"),
            ("1 in", "1-1/8 in"),
            id="sizes of the product",
        ),
        pytest.param(
            'sizing.added_bars.size = ["No. 8"]',
            "added_bars.size",
            ("No. 7", "No. 6"),
            ("No. 9", "No. 10"),
            id="bars of the same system",
        ),
        pytest.param(
            'sizing.repair.surface = ["unchipped"]',
            "repair.surface",
            (),
            ("chipped",),
            id="the other kind",
        ),
    ],
)
def test_values_beyond_the_bounds_the_nearest_first(
    space_within: SpaceOf, bounds: str, path: str, below: tuple[object], above: tuple[object]
) -> None:
    space = space_within(bounds)
    [axis] = [axis for axis in space.axes if axis.path == path]
    low, high = beyond(axis, space.blocks[0].repair, catalog=host().catalog)
    assert low[: len(below)] == pytest.approx(below) if axis.unit else low[:2] == below
    assert high[: len(above)] == pytest.approx(above) if axis.unit else high[: len(above)] == above
