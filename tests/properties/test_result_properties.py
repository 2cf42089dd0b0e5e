"""Whatever demand and capacity are, a pass means that one is within the other."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.results import Result, Status


@given(
    demand=st.floats(allow_nan=True, allow_infinity=True),
    capacity=st.floats(allow_nan=True, allow_infinity=True),
)
def test_a_pass_means_that_the_demand_is_at_most_the_capacity(
    demand: float, capacity: float
) -> None:
    if Result("check", "here", demand, capacity, "N", "clause").status is Status.OK:
        assert 0.0 <= demand <= capacity or demand == pytest.approx(capacity, rel=1e-15)
