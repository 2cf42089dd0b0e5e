"""Reading printed tables from data files."""

from __future__ import annotations

import pytest

from jacketcheck.catalog import _load


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12", 12.0),
        ("1.75", 1.75),
        ("7/8", 0.875),
        ("1-1/8", 1.125),
        ("2-13/16", 2.8125),
        ("1/13", 1 / 13),
    ],
)
def test_number(text: str, value: float) -> None:
    assert _load.number(text) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize("text", ["", "x", "1/0x", "none", "1-"])
def test_not_a_number(text: str) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 - float and int word it their own way
        _load.number(text)


def parse(monkeypatch: pytest.MonkeyPatch, table: str) -> _load.PrintedTable:
    monkeypatch.setattr(_load, "read_file", lambda _: {"source": "a standard", "table": table})
    return _load.read_table.__wrapped__("any")


def test_table(monkeypatch: pytest.MonkeyPatch) -> None:
    table = parse(monkeypatch, "\nsize   | width [in] | force [kN]\n1/2 in | 1-1/2      | none\n")
    assert table.columns == ("width", "force")
    assert table.rows == {"1/2 in": {"width": 38.1}}
    assert table.sources == {"width": "a standard", "force": "a standard"}


@pytest.mark.parametrize(
    ("table", "error"),
    [
        ("size | width\nM12 | 3\n", ValueError),  # no unit
        ("size | width [furlong]\nM12 | 3\n", KeyError),
        ("size | width [mm]\nM12 | 3 | 4\n", ValueError),  # a cell too many
        ("size | width [mm] | depth [mm]\nM12 | 3\n", ValueError),  # a cell too few
    ],
)
def test_broken_table(monkeypatch: pytest.MonkeyPatch, table: str, error: type[Exception]) -> None:
    with pytest.raises(error):
        parse(monkeypatch, table)


def test_sources_by_field() -> None:
    table = {"sources": [{"of": ["a", "b"], "text": "x"}, {"of": ["c"], "text": "y"}]}
    assert _load.sources_by_field(table) == {"a": "x", "b": "x", "c": "y"}
    assert _load.sources_by_field({}) == {}


def test_aliases() -> None:
    assert _load.aliases_of("No. 11", ["#{n}", "US {n}"]) == ("#11", "US 11")
    assert _load.aliases_of("1-1/8 in", ["{n}in"]) == ("1-1/8in",)
    assert _load.aliases_of("plain", ["#{n}"]) == ()
