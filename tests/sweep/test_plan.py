"""Designs out of what varies."""

from __future__ import annotations

from itertools import product
from typing import Any

import numpy as np
import pytest

from jacketcheck.errors import InputError
from jacketcheck.sweep.plan import Plan, plan_of
from jacketcheck.sweep.vary import Varied

THICKNESS = Varied("sleeve.thickness", (10.0, 12.0, 14.0), "mm", is_array=True)
COLUMNS = Varied("bolts.columns", (1, 2), "1", is_array=False)
STEEL = Varied("sleeve.steel", ("a", "b", "c"), "", is_array=False)


def designs(plan: Plan) -> list[tuple[Any, ...]]:
    return list(zip(*(plan.column(index) for index in range(len(plan.varied))), strict=True))


def test_every_combination_the_last_field_fastest() -> None:
    plan = plan_of([THICKNESS, COLUMNS])
    assert plan.is_grid
    assert designs(plan) == list(product(THICKNESS.values, COLUMNS.values))


def test_side_by_side() -> None:
    plan = plan_of([THICKNESS, STEEL], side_by_side=True)
    assert not plan.is_grid
    assert designs(plan) == [(10.0, "a"), (12.0, "b"), (14.0, "c")]


@pytest.mark.parametrize("side_by_side", [False, True])
def test_groups_hold_every_design_once_with_its_values(side_by_side: bool) -> None:  # noqa: FBT001 - drawn by the test
    plan = plan_of([THICKNESS, STEEL], side_by_side=side_by_side)
    seen: dict[int, tuple[Any, ...]] = {}
    for values, places in plan.groups():
        for position, design in enumerate(places.tolist()):
            assert design not in seen
            thickness = values["sleeve.thickness"]
            assert isinstance(thickness, np.ndarray)
            seen[design] = (thickness[position], values["sleeve.steel"])
    assert [seen[design] for design in range(plan.count)] == designs(plan)


def test_numbers_alone_go_in_one_group() -> None:
    other = Varied("bolts.pitch", tuple(map(float, range(80, 130))), "mm", is_array=True)
    [(values, places)] = plan_of([THICKNESS, other]).groups()
    assert places.size == 150
    assert all(isinstance(value, np.ndarray) for value in values.values())


def test_what_does_not_fit_together_is_told() -> None:
    with pytest.raises(InputError, match="is varied twice"):
        plan_of([THICKNESS, THICKNESS])
    with pytest.raises(InputError, match=r"sleeve\.thickness 3, bolts\.columns 2"):
        plan_of([THICKNESS, COLUMNS], side_by_side=True)
    many = Varied("bolts.pitch", tuple(map(float, range(100_000))), "mm", is_array=True)
    with pytest.raises(InputError, match=r"300,000 designs, more than 200,000"):
        plan_of([THICKNESS, many])
