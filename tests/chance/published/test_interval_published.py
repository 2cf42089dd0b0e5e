"""Intervals of Newcombe, Two-sided confidence intervals for the single proportion, Statist. Med. 17
(1998), 857-872, Table I, exact method (from memory), to four decimals as printed."""

from __future__ import annotations

import pytest

from jacketcheck.chance.intervals import binomial_interval


@pytest.mark.parametrize(
    ("exceeded", "total", "low", "high"),
    [
        pytest.param(81, 263, 0.2527, 0.3676, id="Newcombe-81/263"),
        pytest.param(15, 148, 0.0578, 0.1617, id="Newcombe-15/148"),
        pytest.param(0, 20, 0.0000, 0.1684, id="Newcombe-0/20"),
        pytest.param(1, 29, 0.0009, 0.1776, id="Newcombe-1/29"),
    ],
)
def test_exact_interval(exceeded: int, total: int, low: float, high: float) -> None:
    found = binomial_interval(exceeded, total)
    assert found.low == pytest.approx(low, abs=5.1e-5)
    assert found.high == pytest.approx(high, abs=5.1e-5)
