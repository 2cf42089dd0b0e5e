"""Quantities that may be read in more than one way are refused."""

from __future__ import annotations

import pytest

from jacketcheck.units import parse_quantity


@pytest.mark.parametrize("text", ["5 ft -6 in", "5' -6\"", "5 ft  -  -6 in", "5 ft- 6 in"])
def test_a_sign_between_feet_and_inches(text: str) -> None:
    with pytest.raises(ValueError, match=r"unit|number"):
        parse_quantity(text, "mm")


@pytest.mark.parametrize(
    "text", ["5 ft 6 in", "5ft6in", "5 ft-6 in", "5'-6\"", "5' - 6\"", "5 ft - 6 in", "66 in"]
)
def test_feet_and_inches(text: str) -> None:
    assert parse_quantity(text, "mm") == 1676.4  # 66 in of 25.4 mm


@pytest.mark.parametrize("unit", ["tonf", "ton-force", "tons-force", "tf", "tonf/m2"])
def test_tons_do_not_say_which(unit: str) -> None:
    with pytest.raises(ValueError, match="short, long or metric"):
        parse_quantity(f"10 {unit}", "MPa" if "/" in unit else "N")
