"""A printed ratio never hides a failure."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.render.numbers import ratio_text


@given(ratio=st.floats(0.0, 9999.0))
def test_what_reads_as_a_pass_is_one(ratio: float) -> None:
    printed = float(ratio_text(ratio))
    assert (printed > 1.0) == (ratio > 1.0)
    assert ratio - 1e-9 <= printed <= ratio + 0.01 + 1e-9
