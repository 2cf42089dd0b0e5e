"""Fronts against comparing each design with each other."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from jacketcheck.mechanics._arrays import Floats
from jacketcheck.sizing.pareto import beaten_by, beats, cheapest_first, front

# few different numbers, so that there are many ties
COSTS = arrays(
    np.float64,
    st.tuples(st.integers(1, 30), st.just(3)),
    elements=st.integers(0, 4).map(float) | st.just(np.inf),
)


def is_beaten(costs: Floats, index: int) -> bool:
    mine = costs[index]
    return any(all(one <= mine) and any(one < mine) for one in costs)


@given(COSTS)
def test_the_front_has_what_nothing_beats_once(costs: Floats) -> None:
    kept = front(costs).tolist()
    rows = [tuple(costs[index]) for index in kept]
    assert len(set(rows)) == len(rows)
    free = {tuple(row) for index, row in enumerate(costs) if not is_beaten(costs, index)}
    assert set(rows) == free
    assert rows == sorted(rows)


@given(COSTS)
def test_everything_else_is_beaten_or_equalled_by_the_front(costs: Floats) -> None:
    assert beaten_by(costs, costs[front(costs)]).all()


@given(COSTS)
def test_the_front_of_a_front_is_itself(costs: Floats) -> None:
    kept = front(costs)
    assert front(costs[kept]).tolist() == list(range(kept.size))


@given(COSTS)
def test_what_beats_a_design_stands_before_it(costs: Floats) -> None:
    place = np.argsort(cheapest_first(costs))
    for index in range(len(costs)):
        beating = np.flatnonzero(beats(costs, costs[index]))
        assert (place[beating] < place[index]).all()


@given(COSTS, COSTS)
def test_being_beaten_is_taking_no_less(costs: Floats, others: Floats) -> None:
    expected = [any(all(other <= one) for other in others) for one in costs]
    assert beaten_by(costs, others).tolist() == expected


@given(COSTS)
def test_nothing_beats_itself(costs: Floats) -> None:
    for index in range(len(costs)):
        assert not beats(costs, costs[index])[index]
