"""An invented repair with plates on both sides, and one with slots."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from jacketcheck.host.loading import load_host
from jacketcheck.inputs import InputFile, RepairInput, read_text
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.shop import ShopPackage, shop_package

MakeJacket = Callable[..., Jacket]


@pytest.fixture(scope="session")
def repair_file(repair_text: str) -> InputFile:
    """The repair that other areas use, read."""
    return read_text(repair_text, source="repair_us.toml")


@pytest.fixture(scope="session")
def make_jacket(repair_file: InputFile) -> MakeJacket:
    """The repair with some fields changed, e.g. ``sleeve={"thickness": 12.7}``."""

    def make(**tables: dict[str, Any]) -> Jacket:
        repair: RepairInput = repair_file.base
        changed = {
            table: getattr(repair, table).model_copy(update=fields)
            for table, fields in tables.items()
        }
        return build_jacket(repair.model_copy(update=changed))

    return make


@pytest.fixture(scope="session")
def package(repair_file: InputFile) -> ShopPackage:
    """What the shop gets of it."""
    return shop_package(repair_file, host=load_host(installed=False))


@pytest.fixture
def repair_path(repair_text: str, tmp_path: Path) -> Path:
    """The repair as a file."""
    path = tmp_path / "repair.toml"
    path.write_text(repair_text, "utf-8")
    return path
