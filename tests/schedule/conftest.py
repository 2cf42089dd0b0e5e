"""Jackets of an invented repair, with a variant for every way of tightening."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from jacketcheck.inputs import InputFile, RepairInput, read_input
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.schedule import BoltSchedule, bolt_schedule
from jacketcheck.schedule.records import ScheduleLine

FILE = Path(__file__).parent / "willow_weir.toml"

MakeJacket = Callable[..., Jacket]
"""Jacket of a variant; keywords replace fields of its sleeve, splice and bolts."""


@pytest.fixture(scope="session")
def repair_path() -> Path:
    """The repair file."""
    return FILE


@pytest.fixture(scope="session")
def willow_weir() -> InputFile:
    """The repair file, read."""
    return read_input(FILE)


@pytest.fixture(scope="session")
def make_jacket(willow_weir: InputFile) -> MakeJacket:
    """Build a variant with some fields changed, e.g. ``sleeve={"thickness": 12.7}``."""

    def make(variant: str = "wrench", **tables: dict[str, object]) -> Jacket:
        repair: RepairInput = willow_weir.variants[variant]
        changed = {
            table: getattr(repair, table).model_copy(update=fields)
            for table, fields in tables.items()
        }
        return build_jacket(repair.model_copy(update=changed))

    return make


@pytest.fixture(scope="session")
def schedule_of(make_jacket: MakeJacket) -> Callable[..., BoltSchedule]:
    """Schedule of a variant with some fields changed."""

    def schedule(variant: str = "wrench", **tables: dict[str, object]) -> BoltSchedule:
        return bolt_schedule(make_jacket(variant, **tables), variant=variant)

    return schedule


@pytest.fixture(scope="session")
def line_of() -> Callable[[BoltSchedule, str], ScheduleLine]:
    """The one line with a name."""

    def line(schedule: BoltSchedule, item: str) -> ScheduleLine:
        (found,) = (line for line in schedule.lines() if line.item == item)
        return found

    return line
