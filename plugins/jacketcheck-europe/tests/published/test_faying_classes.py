"""Slip factors of EN 1090-2 Table 17 and EN 1993-1-8 Table 3.7."""

from __future__ import annotations

import pytest
from jacketcheck_europe.faying_classes import FAYING_CLASSES


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        pytest.param("EN 1090 A", 0.5, id="S-18-A"),
        pytest.param("EN 1090 B", 0.4, id="S-18-B"),
        pytest.param("EN 1090 C", 0.3, id="S-18-C"),
        # EN 1090-2:2018 Table 17, from memory
        pytest.param("EN 1090 C galvanized", 0.35, id="C-galvanized"),
        pytest.param("EN 1090 D", 0.2, id="S-18-D"),
    ],
)
def test_slip_factors(name: str, expected: float) -> None:
    found = {one.name: one.slip_coefficient for one in FAYING_CLASSES}
    assert found[name] == expected


def test_no_class_is_one_of_another_code() -> None:
    # EN B is 0.40 where AISC B is 0.50, EN A 0.50 where AISC A is 0.30
    assert all(not one.same_as for one in FAYING_CLASSES)
