"""The bar that a clock position means is the nearest one."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.inputs.column import ColumnBars
from jacketcheck.jacket.bar_positions import bar_angle, clock_angle, nearest_bar


@given(
    count=st.integers(6, 200),
    first=st.floats(-360.0, 360.0),
    hour=st.integers(1, 12),
    minute=st.integers(0, 59),
)
def test_no_other_bar_is_nearer(count: int, first: float, hour: int, minute: int) -> None:
    position = f"{hour}:{minute:02}"
    column = ColumnBars(size="No. 8", count=count, steel="S", first_angle=f"{first} deg")
    number = nearest_bar(position, column)
    angles = [bar_angle(one, column) - clock_angle(position) for one in range(1, count + 1)]
    distances = [abs(math.remainder(angle, 2.0 * math.pi)) for angle in angles]
    if number is None:
        first_two = sorted(distances)[:2]
        assert first_two[0] == pytest.approx(first_two[1], abs=1e-6)
    else:
        assert distances[number - 1] == pytest.approx(min(distances), abs=1e-9)
