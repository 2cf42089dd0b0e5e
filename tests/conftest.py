"""A complete repair that several areas start from: as text, as tables, as input and built."""

from __future__ import annotations

import os
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

from jacketcheck.inputs import RepairInput, read_text
from jacketcheck.jacket import Jacket, build_jacket

# no test depends on how fast or how busy the machine is
settings.register_profile(
    "any machine", deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile(
    "the same examples", parent=settings.get_profile("any machine"), derandomize=True
)
# where a change is judged, a failure must be the change's; elsewhere new examples are tried
settings.load_profile("the same examples" if os.environ.get("CI") else "any machine")

_REPAIR = Path(__file__).parent / "inputs" / "repair_us.toml"


@pytest.fixture(scope="session")
def repair_text() -> str:
    """An invented repair with every field written, in US customary units, and two variants."""
    return _REPAIR.read_text("utf-8")


@pytest.fixture
def repair_table(repair_text: str) -> dict[str, Any]:
    """The same as tables, without its variants."""
    table = tomllib.loads(repair_text)
    del table["variants"]
    return table


@pytest.fixture(scope="session")
def repair_input(repair_text: str) -> RepairInput:
    """The same, validated."""
    return read_text(repair_text).base


@pytest.fixture
def jacket(repair_input: RepairInput) -> Jacket:
    """The same, built."""
    return build_jacket(repair_input)
