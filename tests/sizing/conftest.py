"""The reference case with bounds, as the search sees it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from jacketcheck.inputs import RepairInput
from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.space import Space, space_of
from tests.support.jackets import host
from tests.support.sized_designs import file_with

SpaceOf = Callable[[str], Space]


@pytest.fixture
def base() -> RepairInput:
    """The reference case."""
    return file_with("").base


@pytest.fixture
def space_within() -> SpaceOf:
    """Space of the designs within some bounds."""

    def made(tables: str) -> Space:
        repair = file_with(tables).base
        assert repair.sizing is not None
        return space_of(repair, repair.sizing, catalog=host().catalog)

    return made


@pytest.fixture
def axis_within(space_within: SpaceOf) -> Callable[[str, str], Axis]:
    """One axis of the designs within some bounds."""

    def made(tables: str, path: str) -> Axis:
        return next(axis for axis in space_within(tables).axes if axis.path == path)

    return made
