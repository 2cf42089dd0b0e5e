"""How messages show what was written."""

from __future__ import annotations

import datetime as dt

import pytest

from jacketcheck.inputs.written import shown


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (False, "false"),
        (12, "12"),
        (1.5, "1.5"),
        ("10 mm", '"10 mm"'),
        ('3/8"', '"3/8\\""'),
        ("a\nb\\", '"a\\nb\\\\"'),
        ([1, "a", [True]], '[1, "a", [true]]'),
        ({"a b": 1, "c": {}}, '{"a b" = 1, c = {}}'),
        (dt.date(2001, 2, 3), "2001-02-03"),
        ("\x1b\u202e\U000e0001", '"\\u001b\\u202e\\U000e0001"'),
        ("x" * 70, '"' + "x" * 59 + "…"),
        pytest.param(1 << 20_000, "an integer of 20001 bits", id="huge"),
    ],
)
def test_values(value: object, text: str) -> None:
    assert shown(value) == text
