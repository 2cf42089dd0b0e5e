"""Finding causes: against the closure of the whole relation, and what must hold for any graph."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.sparse.csgraph import connected_components

from jacketcheck.causes import causes_first, causes_of_designs, first_causes
from jacketcheck.results import Kind, Result, Status

NAMES = ("slip", "yield", "bond", "moment", "shear")


class Graph(NamedTuple):
    names: list[str]
    follows: list[list[str]]
    exceeds: list[bool]


@st.composite
def graphs(draw: st.DrawFn, *, most: int = 9) -> Graph:
    count = draw(st.integers(0, most))

    def listed(one: st.SearchStrategy[object]) -> st.SearchStrategy[list[object]]:
        return st.lists(one, min_size=count, max_size=count)

    return Graph(
        names=draw(listed(st.sampled_from(NAMES))),  # type: ignore[arg-type]
        follows=draw(listed(st.lists(st.sampled_from((*NAMES, "unknown")), max_size=3))),  # type: ignore[arg-type]
        exceeds=draw(listed(st.booleans())),  # type: ignore[arg-type]
    )


def closure(graph: Graph) -> NDArray[np.bool_]:
    """From each failing row to every failing row that it leads to, by powers of the relation."""
    count = len(graph.names)
    direct = np.zeros((count, count), dtype=bool)
    for row in range(count):
        for cause in range(count):
            both = graph.exceeds[row] and graph.exceeds[cause]
            direct[row, cause] = both and graph.names[cause] in graph.follows[row]
    reached = direct
    for _ in range(count):
        reached = reached | (reached @ direct)
    return reached


def roots(graph: Graph) -> tuple[frozenset[int], ...]:
    return first_causes(graph.names, graph.follows, graph.exceeds)


@given(graphs())
def test_first_causes_are_the_sources_of_the_graph_of_circles(graph: Graph) -> None:
    reached, found = closure(graph), roots(graph)
    failing = np.flatnonzero(graph.exceeds)
    _, circle = connected_components(reached, directed=True, connection="strong")
    for row in range(len(graph.names)):
        out = {int(cause) for cause in np.flatnonzero(reached[row])}
        beyond = {cause for cause in out if circle[cause] != circle[row]}
        # a source: everything that it leads to is in its own circle
        sources = {
            c for c in beyond if all(circle[o] == circle[c] for o in np.flatnonzero(reached[c]))
        }
        assert found[row] == (sources if row in failing else set())


@given(graphs())
def test_no_failure_disappears(graph: Graph) -> None:
    found = roots(graph)
    own = [row for row, fails in enumerate(graph.exceeds) if fails and not found[row]]
    assert bool(own) == any(graph.exceeds)
    for causes in found:
        assert causes <= set(own)


@given(graphs())
def test_what_passes_or_is_unknown_is_no_cause(graph: Graph) -> None:
    failing = {name for name, fails in zip(graph.names, graph.exceeds, strict=True) if fails}
    found = roots(graph)
    for row, names in enumerate(graph.follows):
        if not failing.intersection(names):
            assert not found[row]


@given(st.permutations(NAMES))
def test_rows_in_one_circle_all_stand_on_their_own(order: Sequence[str]) -> None:
    follows = [[order[(place + 1) % len(order)]] for place in range(len(order))]
    found = first_causes(order, follows, [True] * len(order))
    assert not any(found)


@given(graphs(), st.lists(st.lists(st.booleans(), min_size=9, max_size=9), max_size=12))
def test_many_designs_get_what_each_gets_alone(graph: Graph, designs: list[list[bool]]) -> None:
    count = len(graph.names)
    exceeds = np.array([one[:count] for one in designs], dtype=bool).reshape(len(designs), count).T
    found = causes_of_designs(graph.names, graph.follows, exceeds)
    for design in range(exceeds.shape[1]):
        alone = first_causes(graph.names, graph.follows, exceeds[:, design].tolist())
        assert found.consequence[:, design].tolist() == [bool(causes) for causes in alone]
        for place in range(count):
            followers = sum(place in causes for causes in alone)
            assert found.followers(design, [place]) == followers


@given(graphs(), st.lists(st.sampled_from(["nan", "ok", "reported"]), min_size=9, max_size=9))
def test_the_order_puts_causes_before_consequences(graph: Graph, others: list[str]) -> None:
    rows = [
        result(name, follows, "exceeds" if fails else other, place)
        for place, (name, follows, fails, other) in enumerate(
            zip(graph.names, graph.follows, graph.exceeds, others, strict=False)
        )
    ]
    ordered = causes_first(rows)
    assert sorted(row.location for row in ordered) == sorted(row.location for row in rows)
    places = {row.location: place for place, row in enumerate(ordered)}
    for row, causes in zip(rows, roots(graph), strict=True):
        assert all(places[rows[cause].location] < places[row.location] for cause in causes)
    ranks = [
        (Status.NOT_EVALUATED, Status.EXCEEDS, Status.OK, Status.REPORTED).index(row.status)
        for row in ordered
    ]
    assert ranks == sorted(ranks)


def result(name: str, follows: list[str], state: str, place: int) -> Result:
    demand = {"exceeds": 1.04 + place, "nan": np.nan, "ok": 0.5, "reported": 7.0}[state]
    kind = Kind.REPORTED if state == "reported" else Kind.LIMIT
    return Result(
        name, str(place), demand, 1.0, "1", "a clause", kind=kind, follows_from=tuple(follows),
        limit_state=name,
    )  # fmt: skip
