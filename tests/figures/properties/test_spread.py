"""Names beside lines: in order, apart, and no farther away than needed."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.figures.labels import spread

ROWS = st.lists(st.tuples(st.floats(0.0, 500.0), st.floats(1.0, 40.0)), min_size=1, max_size=12)


@given(ROWS)
def test_nothing_overlaps_and_order_is_kept(row: list[tuple[float, float]]) -> None:
    wanted, sizes = [one[0] for one in row], [one[1] for one in row]
    centres = spread(wanted, sizes, low=0.0)
    order = np.argsort(centres, kind="stable")
    for below, above in pairwise(order):
        room = centres[above] - centres[below]
        assert room >= (sizes[above] + sizes[below]) / 2.0 - 1e-9
        assert wanted[below] <= wanted[above]
    assert min(c - s / 2.0 for c, s in zip(centres, sizes, strict=True)) >= -1e-9


@given(ROWS)
def test_what_has_room_stays(row: list[tuple[float, float]]) -> None:
    # spaced out beforehand, so that nothing has to move
    wanted, sizes, at = [], [], 0.0
    for gap, size in row:
        at += gap / 100.0 + size
        wanted.append(at)
        sizes.append(size)
        at += size
    assert spread(wanted, sizes, low=0.0) == pytest.approx(wanted)


@given(st.floats(50.0, 100.0), st.floats(1.0, 20.0), st.integers(2, 6))
def test_equal_wishes_are_shared_evenly(at: float, size: float, count: int) -> None:
    centres = spread([at] * count, [size] * count, low=-1000.0)
    assert np.mean(centres) == pytest.approx(at)
    assert np.diff(sorted(centres)) == pytest.approx([size] * (count - 1))
