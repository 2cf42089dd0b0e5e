"""What is asked for and not installed is said before anything is done."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import pytest

from jacketcheck.batch import run_batch
from jacketcheck.errors import InputError, MissingExtraError
from tests.support.inventories import write_pier


@pytest.mark.parametrize(
    ("module", "extra", "options"),
    [
        ("pyarrow", "parquet", {"forms": ("parquet",)}),
        ("distributed", "dask", {"scheduler": "local:1"}),
    ],
)
def test_a_missing_extra_is_named(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    module: str,
    extra: str,
    options: dict[str, Any],
) -> None:
    write_pier(tmp_path / "inventory" / "pier.toml")
    monkeypatch.setitem(sys.modules, module, None)
    with pytest.raises(MissingExtraError) as error:
        run_batch(tmp_path / "inventory", tmp_path / "output", **options)
    assert module in str(error.value)
    assert f"jacketcheck[{extra}]" in str(error.value)


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({"workers": 0}, "must be 1 to"),
        ({"workers": 2, "scheduler": "local:1"}, "cannot be told to a cluster"),
        ({"scheduler": "local:many"}, "must be local:N"),
        ({"scheduler": "nowhere"}, "cannot be reached"),
        ({"pattern": "*.none"}, "holds no file named"),
        ({"provisions": ("nowhere",)}, "nowhere"),
        ({"provisions": ()}, "must name one at least"),
    ],
)
def test_an_option_that_cannot_be_used_is_refused(
    tmp_path: Path, options: dict[str, Any], message: str
) -> None:
    write_pier(tmp_path / "inventory" / "pier.toml")
    with pytest.raises(InputError, match=message):
        run_batch(tmp_path / "inventory", tmp_path / "output", **options)
    assert not list(tmp_path.glob("output/*.csv"))
