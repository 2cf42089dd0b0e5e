"""An installed plug-in that checks fast, and can misbehave."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.support.inventories import install_bench


@pytest.fixture
def bench(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The plug-in, installed for this process and for those that it starts."""
    folder = tmp_path / "installed"
    folder.mkdir()
    monkeypatch.syspath_prepend(str(install_bench(folder)))
    monkeypatch.delitem(sys.modules, "bench_of_tests", raising=False)
    return folder


@pytest.fixture
def inventory(tmp_path: Path) -> Path:
    """Folder of an inventory, still empty."""
    folder = tmp_path / "inventory"
    folder.mkdir()
    return folder
