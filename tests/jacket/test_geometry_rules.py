"""Geometry that cannot be built: one problem at the field that should change."""

from __future__ import annotations

from typing import Any

import pytest

from jacketcheck.errors import InputError
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import build_jacket

WITH_COMPANY = {"bars outside the column", "sleeve in the column", "no room for the bolts", "gap"}
"""Changes that break further rules on the way."""


def problems_after(table: dict[str, Any], changes: dict[str, object]) -> list[str]:
    for path, value in changes.items():
        target: Any = table
        *above, last = path.split(".")
        for key in above:
            target = target[int(key) - 1] if isinstance(target, list) else target[key]
        target[last] = value
    with pytest.raises(InputError) as caught:
        build_jacket(RepairInput.model_validate(table))
    assert caught.value.source == "geometry"
    return [str(problem) for problem in caught.value.problems]


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        pytest.param(
            {"column.diameter": "6 in", "column.cover": "1 in", "repair.gap": "2 in"},
            # 3 in - 5/8 in - 1.5 x 1.27 in
            "column.cover = 25.4 mm (1 in): must be less than 11.938 mm (0.47 in), or the bars "
            "have no room inside cover and hoops",
            id="bars outside the column",
        ),
        pytest.param(
            {"column.bars.count": 103, "damage": []},
            # circle of 20.74 in, bars of 1.27 in: 102.6
            "column.bars.count = 103: must be at most 102, or the bars overlap on their circle",
            id="bars overlap",
        ),
        pytest.param(
            {"column.hoops.spacing": "5/8 in"},
            "column.hoops.spacing = 15.875 mm (0.625 in): must exceed 15.875 mm (0.625 in), the "
            "hoops' diameter, or they overlap",
            id="hoops overlap",
        ),
        pytest.param(
            {"column.height": "54 in"},
            "repair.height = 1371.6 mm (54 in): must be less than 1371.6 mm (54 in), the height "
            "of the column up to the point of contraflexure",
            id="repair as high as the column",
        ),
        pytest.param(
            {"column.curvature": "double", "column.height": "9 ft"},
            "repair.height = 1371.6 mm (54 in): must be less than 1371.6 mm (54 in), the height "
            "of the column up to the point of contraflexure",
            id="repair as high as half the column in double curvature",
        ),
        pytest.param(
            {"damage.2.height": "5 ft"},
            "damage.2.height = 1524 mm (60 in): must be less than 1371.6 mm (54 in), the height "
            "of the repair: damage above it is not bridged",
            id="damage above the repair, two bars",
        ),
        pytest.param(
            {"damage.1.spalling_depth": "24 in"},
            "damage.1.spalling_depth = 609.6 mm (24 in): must be less than 609.6 mm (24 in), the "
            "column's radius",
            id="spalled beyond the axis",
        ),
        pytest.param(
            {"sleeve.inner_diameter": "48 in", "added_bars.circle_diameter": "46 in"},
            "sleeve.inner_diameter = 1219.2 mm (48 in): must exceed 1219.2 mm (48 in), the "
            "column's diameter",
            id="sleeve in the column",
        ),
        pytest.param(
            {"sleeve.inner_diameter": "49 in"},
            "sleeve.inner_diameter (annulus) = 12.7 mm (0.5 in): must exceed ",
            id="no room for the bolts",
        ),
        pytest.param(
            {"repair.gap": "27 in"},
            "repair.gap = 685.8 mm (27 in): must be less than 685.8 mm (27 in), half of the "
            "height of the repair",
            id="gap",
        ),
        pytest.param(
            {"bolts.plate_edge_distance": "43 in"},
            # 2 (0.5 + 2 + 3.5 + 43) in, pi x 31 in
            "bolts.plate_edge_distance (width of the splice plate) = 2489.2 mm (98 in): must be "
            "less than 2473.69 mm (97.39 in), half of the circumference, or the plates of the "
            "two seams meet",
            id="splice plates meet",
        ),
        pytest.param(
            {"bolts.pitch": "1-1/2 in", "bolts.end_distance": "19.25 in"},
            "bolts.pitch = 38.1 mm (1.5 in): must exceed 41.275 mm (1.625 in), the width of nut "
            "or hole, or the bolts overlap",
            id="bolts overlap along the seam",
        ),
        pytest.param(
            {"bolts.gauge": "1-5/8 in"},
            "bolts.gauge = 41.275 mm (1.625 in): must exceed 41.275 mm (1.625 in), the width of "
            "nut or hole, or the bolts overlap",
            id="bolts overlap across the seam",
        ),
        pytest.param(
            {"bolts.gauge": "2-1/4 in", "sleeve.hole": "long-slot-parallel"},
            "bolts.gauge = 57.15 mm (2.25 in): must exceed 63.5 mm (2.5 in), the width of nut or "
            "hole, or the bolts overlap",
            id="slots overlap",
        ),
        pytest.param(
            {"bolts.pitch": "6 in"},
            # 9 x 6 in + 2 x 3.5 in against 54 in - 2 in
            "bolts.pitch (rows and two end distances) = 1549.4 mm (61 in): must fit the sleeve's "
            "height of 1320.8 mm (52 in), repair height less gap",
            id="pitch does not fit",
        ),
        pytest.param(
            {"bolts.seam_edge_distance": "9/16 in"},
            "bolts.seam_edge_distance = 14.2875 mm (0.5625 in): must exceed 14.2875 mm "
            "(0.5625 in), half of the hole",
            id="hole cuts the edge",
        ),
        pytest.param(
            # room for the bars, of 1.128 in, but not for the drill
            {"added_bars.circle_diameter": "49-1/4 in"},
            # 48 in + 1.5 in
            "added_bars.circle_diameter = 1250.95 mm (49.25 in): must exceed 1257.3 mm (49.5 in), "
            "so that the drilled holes clear the column",
            id="holes of added bars in the column",
        ),
        pytest.param(
            {"added_bars.circle_diameter": "61 in"},
            "added_bars.circle_diameter = 1549.4 mm (61 in): must be less than 1546.15 mm "
            "(60.87 in), so that the bars clear the sleeve",
            id="added bars in the sleeve",
        ),
        pytest.param(
            {"added_bars.count": 114},
            # pi x 54 in / 1.5 in
            "added_bars.count = 114: must be at most 113, or the drilled holes overlap on their "
            "circle",
            id="drilled holes overlap",
        ),
        pytest.param(
            {"added_bars.hole_diameter": "1 in"},
            "added_bars.hole_diameter = 25.4 mm (1 in): must exceed 31.5163 mm (1.241 in), the "
            "bar's diameter over its ribs",
            id="bar wider than its hole",
        ),
        pytest.param(
            {"added_bars.height": "55 in"},
            "added_bars.height = 1397 mm (55 in): must be at most 1371.6 mm (54 in), the height "
            "of the repair",
            id="added bars stand out",
        ),
        pytest.param(
            {"added_bars.embedment": "5 ft"},
            "added_bars.embedment = 1524 mm (60 in): must be less than 1524 mm (60 in), the "
            "footing's depth",
            id="added bars through the footing",
        ),
    ],
)
def test_one_rule(
    request: pytest.FixtureRequest,
    repair_table: dict[str, Any],
    changes: dict[str, object],
    message: str,
) -> None:
    found = problems_after(repair_table, changes)
    assert [one for one in found if one.startswith(message)], found
    if request.node.callspec.id not in WITH_COMPANY:
        assert len(found) == 1, found


def test_rows_that_find_no_room(repair_table: dict[str, Any]) -> None:
    del repair_table["bolts"]["rows"]
    (problem,) = problems_after(
        repair_table, {"bolts.pitch": "40 in", "bolts.end_distance": "10 in"}
    )
    assert problem == (
        "bolts.rows = 1: must be at least 2, more than pitch and end distances leave room for"
    )


def test_rows_that_leave_no_end_distance(repair_table: dict[str, Any]) -> None:
    del repair_table["bolts"]["end_distance"]
    # 52 in less 11 spaces of 5 in
    (problem,) = problems_after(repair_table, {"bolts.rows": 12})
    assert problem == (
        "bolts.end_distance = -38.1 mm (-1.5 in): must exceed 14.2875 mm (0.5625 in), half of the "
        "hole; where it is not written it is what rows and pitch leave"
    )


def test_added_bars_may_reach_the_top_of_the_repair(repair_table: dict[str, Any]) -> None:
    repair_table["added_bars"]["height"] = "54 in"
    build_jacket(RepairInput.model_validate(repair_table))


def test_one_column_needs_no_gauge(repair_table: dict[str, Any]) -> None:
    repair_table["bolts"]["columns"] = 1
    del repair_table["bolts"]["gauge"]
    build_jacket(RepairInput.model_validate(repair_table))


def test_every_broken_rule_is_told(repair_table: dict[str, Any]) -> None:
    found = problems_after(
        repair_table,
        {
            "repair.gap": "30 in",
            "bolts.pitch": "1 in",
            "added_bars.hole_diameter": "1 in",
            "damage.1.height": "60 in",
        },
    )
    assert [problem.partition(" = ")[0] for problem in found] == [
        "damage.1.height",
        "repair.gap",
        "bolts.pitch",
        "bolts.pitch (rows and two end distances)",
        "added_bars.hole_diameter",
    ]
