"""Foreign limit states use our analyses: done once, off their clock, and handed out as copies."""

from __future__ import annotations

import copy
import threading
import time
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from jacketcheck.analysis.memo import remembered
from jacketcheck.engine import evaluate
from jacketcheck.errors import NotEvaluatedError
from jacketcheck.host import Host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.mechanics.moment_curvature import moment_curvature
from jacketcheck.plugin import (
    BondConditions,
    BondLaw,
    HoopDemand,
    Result,
    bar_bonds,
    hoop_demand,
)
from jacketcheck.results import Kind, Status

Evaluate = Callable[..., tuple[Result, ...]]
HostOf = Callable[..., Host]

SOLVER = "jacketcheck.analysis.base_state.moment_curvature"


@pytest.fixture
def count(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """One entry for each time that the section of the base has been solved."""
    asked: list[str] = []

    def counted(*arguments: Any, **more: Any) -> Any:
        asked.append("base")
        return moment_curvature(*arguments, **more)

    monkeypatch.setattr(SOLVER, counted)
    return asked


def worked(jacket: Jacket) -> list[Result]:
    """Hoop force against the strength of the sleeve."""
    capacity = np.multiply(jacket.sleeve.steel.yield_strength, jacket.sleeve.thickness)
    return [Result("Hoop", "sleeve", hoop_demand(jacket).force, capacity, "N/mm", "a clause")]


def test_sections_are_solved_once_for_fifteen_limit_states(
    results_with: Evaluate, jacket: Jacket, count: list[str]
) -> None:
    results = results_with(*[worked] * 15)
    assert len(count) == 1
    assert {one.kind for one in results} == {Kind.LIMIT}
    assert {one.demand for one in results[1:-1]} == {hoop_demand(jacket).force}
    assert len(count) == 1


def test_many_designs_are_shared_as_well(
    results_with: Evaluate, jacket: Jacket, count: list[str]
) -> None:
    many = with_values(jacket, {"sleeve.thickness": np.array([10.0, 12.0])})
    alone = hoop_demand(with_values(many, {}))
    once = len(count)
    _, first, second, _ = results_with(worked, worked, of=many)
    assert len(count) == 2 * once
    np.testing.assert_array_equal(first.demand, alone.force)
    np.testing.assert_array_equal(second.demand, alone.force)


def test_what_is_handed_out_cannot_be_spoilt_for_others(
    results_with: Evaluate, jacket: Jacket
) -> None:
    many = with_values(jacket, {"sleeve.thickness": np.array([10.0, 12.0])})

    def vandal(given: Jacket) -> list[Result]:
        force = np.asarray(hoop_demand(given).force)
        force.setflags(write=True)
        force[:] = 0.0
        object.__setattr__(hoop_demand(given), "force", 0.0)
        given.memo.clear()
        return worked(given)

    _, spoilt, sound, _ = results_with(vandal, worked, of=many)
    # a copy of its own, taken once more after it had emptied its memory
    np.testing.assert_array_equal(spoilt.demand, sound.demand)
    assert np.all(np.greater(sound.demand, 0.0))
    np.testing.assert_array_equal(sound.demand, hoop_demand(many).force)


def test_a_changed_copy_is_analysed_for_itself(results_with: Evaluate, jacket: Jacket) -> None:
    def thicker(given: Jacket) -> list[Result]:
        changed = replace(given, sleeve=replace(given.sleeve, thickness=30.0))
        same = copy.deepcopy(given)
        demand = hoop_demand(changed).force
        return [Result("Hoop", "thicker", demand, hoop_demand(same).force, "N/mm", "a clause")]

    _, odd, _ = results_with(thicker)
    expected = hoop_demand(with_values(jacket, {"sleeve.thickness": 30.0})).force
    assert odd.demand == expected
    assert odd.capacity == hoop_demand(jacket).force != odd.demand


def test_our_analyses_do_not_count_as_the_time_of_a_plug_in(
    results_with: Evaluate, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(*arguments: Any, **more: Any) -> Any:
        time.sleep(0.6)
        return moment_curvature(*arguments, **more)

    monkeypatch.setattr(SOLVER, slow)
    _, odd, _ = results_with(worked, seconds=0.5)
    assert odd.kind is Kind.LIMIT


def test_an_analysis_that_fails_fails_for_the_plug_in(
    results_with: Evaluate, jacket: Jacket
) -> None:
    refused: list[str] = []

    def refuse(_: BondConditions) -> BondLaw:
        refused.append("once")
        raise NotEvaluatedError("no law for this bar")

    broken = replace(jacket, bond_model=replace(jacket.bond_model, law=refuse))

    def bonded(given: Jacket) -> list[Result]:
        return [
            Result("Bond", one.conditions.surface, 1.0, one.developed_stress, "MPa", "a clause")
            for one in bar_bonds(given)
        ]

    found = results_with(bonded, bonded, of=broken)[1:-1]
    for index, odd in enumerate(found, start=1):
        assert odd.kind is Kind.NOT_EVALUATED
        assert odd.notes[0] == (
            f"plug-in north (jacketcheck-north 1.2), limit state odd-{index}: no law for this bar"
        )
    # that it was refused is remembered, too
    assert refused == ["once"]


def test_functions_of_a_plug_in_never_see_the_original(
    results_with: Evaluate, jacket: Jacket
) -> None:
    seen: list[Jacket] = []

    @remembered
    def foreign(given: Jacket) -> HoopDemand:
        seen.append(given)
        return hoop_demand(given)

    def twice(given: Jacket) -> list[Result]:
        assert foreign(given) is foreign(given)
        return worked(given)

    _, odd, _ = results_with(twice)
    assert odd.kind is Kind.LIMIT
    assert len(seen) == 1
    assert seen[0] is not jacket


def test_a_limit_state_that_hung_is_not_asked_again(host_of: HostOf, jacket: Jacket) -> None:
    asked: list[int] = []

    def hang(_: Jacket) -> list[Result]:
        asked.append(1)
        threading.Event().wait(20.0)
        return []

    host = host_of(hang, seconds=0.2)
    for told in (
        "did not return within 0.2 s",
        "did not return within 0.2 s when it was asked before, and is not asked again",
    ):
        before, odd, after = evaluate(jacket, host=host, provisions="alone")
        assert (before.status, odd.status, after.status) == (
            Status.OK,
            Status.NOT_EVALUATED,
            Status.OK,
        )
        assert odd.notes == (f"plug-in north (jacketcheck-north 1.2), limit state odd-1: {told}",)
    assert asked == [1]
