"""Every folder of `reference_cases`: the rows of whole jackets, and worked examples.

Where the numbers come from stands in each folder's README.
"""

from __future__ import annotations

import importlib
import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

import pytest

from jacketcheck.inputs import read_text
from jacketcheck.jacket import build_jacket
from jacketcheck.results import Result
from jacketcheck.units import display, parse_quantity
from tests.support.jackets import host, row, rows, symbol

CASES: Final = Path(__file__).parents[2] / "reference_cases"
FOLDERS: Final = sorted(path for path in CASES.iterdir() if path.is_dir())


def _table(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text("utf-8"))


def _expected() -> list[Any]:
    return [
        pytest.param(path.parent, entry, id=f"{path.parent.name}-{entry['id']}")
        for path in sorted(CASES.glob("*/expected.toml"))
        for entry in _table(path)["expected"]
    ]


@lru_cache(maxsize=64)
def _found(folder: Path, variant: str, limit_state: str, words: str) -> Result:
    text = (folder / "repair.toml").read_text("utf-8")
    repair = read_text(text, catalog=host().catalog).variants[variant]
    return row(build_jacket(repair, catalog=host().catalog), limit_state, *words.split("|"))


@pytest.mark.parametrize(("folder", "entry"), _expected())
def test_row_shows_the_published_number(folder: Path, entry: dict[str, Any]) -> None:
    result = _found(folder, entry["variant"], entry["limit_state"], entry["row"])
    if entry["quantity"] == "step":
        step = next(one for one in result.steps if one.symbol == entry["step"])
        value, unit = symbol(result, entry["step"]), step.unit
    else:
        value, unit = float(getattr(result, entry["quantity"])), result.unit
    printed, printed_unit = entry["value"].split()
    factor, shown = display(unit, "us")
    assert shown == printed_unit
    found = value * factor * entry.get("times", 1)
    assert found == pytest.approx(float(printed), rel=entry["tolerance"])


def _argument(value: Any) -> Any:
    """A plain number, or ``value unit target``."""
    if not isinstance(value, str):
        return value
    number, *units = value.split()
    return parse_quantity(f"{number} {units[0]}", units[1]) if units else float(number)


@pytest.mark.parametrize(
    "path", sorted(CASES.glob("*/worked.toml")), ids=lambda path: path.parent.name
)
def test_worked_example(path: Path) -> None:
    worked = _table(path)
    module, _, name = worked["function"].rpartition(".")
    function = getattr(importlib.import_module(module), name)
    arguments = [_argument(value) for value in worked["positional"]]
    named = {key: _argument(value) for key, value in worked["named"].items()}
    expected = worked["expected"]
    found = float(function(*arguments, **named)) * expected["times"]
    assert found == pytest.approx(_argument(expected["value"]), rel=expected["tolerance"])


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_every_case_says_where_it_comes_from(folder: Path) -> None:
    kinds = [folder / "worked.toml", folder / "repair.toml"]
    assert (folder / "README.md").read_text("utf-8").startswith("# ")
    assert sum(path.exists() for path in kinds) == 1


@pytest.mark.parametrize(
    "path", sorted(CASES.glob("*/repair.toml")), ids=lambda path: path.parent.name
)
def test_every_variant_of_a_whole_jacket_can_be_evaluated(path: Path) -> None:
    for repair in read_text(path.read_text("utf-8"), catalog=host().catalog).variants.values():
        assert len(rows(build_jacket(repair, catalog=host().catalog))) > 20
