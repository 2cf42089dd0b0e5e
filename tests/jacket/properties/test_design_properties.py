"""Stacking designs and picking them again loses nothing, whatever numbers differ."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.jacket.designs import design_count, leaves, pick, stack, with_values


@lru_cache(maxsize=1)
def base() -> Jacket:
    text = (Path(__file__).parents[2] / "inputs" / "repair_us.toml").read_text("utf-8")
    table = tomllib.loads(text)
    del table["variants"]
    return build_jacket(RepairInput.model_validate(table))


@lru_cache(maxsize=1)
def paths() -> tuple[str, ...]:
    return tuple(path for path, value in leaves(base()) if isinstance(value, float))


def numbers(jacket: Jacket) -> dict[str, Any]:
    return dict(leaves(jacket))


values = st.floats(0.1, 1e6)
changes = st.lists(
    st.dictionaries(st.integers(0, 10_000), values, max_size=8), min_size=1, max_size=5
)


def designs(picked: list[dict[int, float]]) -> list[Jacket]:
    known = paths()
    return [
        with_values(base(), {known[index % len(known)]: value for index, value in one.items()})
        for one in picked
    ]


@given(picked=changes)
def test_stack_then_pick(picked: list[dict[int, float]]) -> None:
    jackets = designs(picked)
    many = stack(jackets)
    for index, jacket in enumerate(jackets):
        assert numbers(pick(many, index)) == numbers(jacket)


@given(picked=changes)
def test_only_what_differs_becomes_an_array(picked: list[dict[int, float]]) -> None:
    jackets = designs(picked)
    single = [numbers(jacket) for jacket in jackets]
    for path, value in leaves(stack(jackets)):
        differs = any(one[path] != single[0][path] for one in single)
        assert (np.ndim(value) == 1) == differs if isinstance(value, np.ndarray) else not differs


@given(picked=changes)
def test_pick_then_stack(picked: list[dict[int, float]]) -> None:
    many = stack(designs(picked))
    again = stack([pick(many, index) for index in range(design_count(many))])
    for (path, value), (_, other) in zip(leaves(many), leaves(again), strict=True):
        np.testing.assert_array_equal(value, other, err_msg=path)
