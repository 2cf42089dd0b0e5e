"""A foreign limit state among our own: it sees what they computed, and changes none of it."""

from __future__ import annotations

from collections.abc import Callable
from types import ModuleType
from typing import Any

import numpy as np

from jacketcheck.engine import evaluate
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.limit_state import LimitState
from jacketcheck.results import Kind, Result, Status


def host_with(*functions: Callable[[Jacket], Any]) -> Host:
    states = [
        LimitState(f"north-{index}", f"Check {index}", "us", function)
        for index, function in enumerate(functions, start=1)
    ]
    module = ModuleType("made_for_a_test")
    module.jacketcheck_limit_states = hookimpl(lambda: states)  # type: ignore[attr-defined] # a plug-in
    return load_host(
        installed=False, extra=[(PluginInfo("north", "jacketcheck-north", "1.2"), module)]
    )


def spoil(jacket: Jacket) -> list[Result]:
    """Empty the memory, write past the frozen records, then fail."""
    jacket.memo.clear()
    object.__setattr__(jacket.sleeve, "thickness", 1e3)
    raise ValueError("no good")


def numbers(results: tuple[Result, ...]) -> list[tuple[Any, ...]]:
    return [
        (one.limit_state, one.title, one.location, one.clause, str(one.ratio), one.notes)
        for one in results
        if one.origin == "jacketcheck"
    ]


def check_same(jacket: Jacket, other: Jacket) -> None:
    alone = evaluate(jacket, host=load_host(installed=False))
    beside = evaluate(other, host=host_with(spoil))
    assert numbers(beside) == numbers(alone)
    assert len(beside) == len(alone) + 1
    assert beside[-1].kind is Kind.NOT_EVALUATED
    # our own rows come out the same once more, from the same memory
    assert numbers(evaluate(other, host=host_with(spoil))) == numbers(alone)


def test_one_design(jacket: Jacket) -> None:
    check_same(jacket, with_values(jacket, {}))


def test_many_designs(jacket: Jacket) -> None:
    values = {"sleeve.thickness": np.array([9.525, 12.7, 19.05])}
    check_same(with_values(jacket, values), with_values(jacket, values))


def test_replacing_a_built_in_limit_state_is_refused(jacket: Jacket) -> None:
    def lenient(given: Jacket) -> list[Result]:
        del given
        return [Result("Slip", "seam", 0.0, 1.0, "N", "none")]

    built_in = load_host(installed=False)
    name = built_in.registered[0].limit_state.id
    module = ModuleType("made_for_a_test")
    state = LimitState(name, "Lenient", "us", lenient)
    module.jacketcheck_limit_states = hookimpl(lambda: [state])  # type: ignore[attr-defined] # a plug-in
    host = load_host(installed=False, extra=[(PluginInfo("north", "north", "1"), module)])
    found = evaluate(jacket, host=host)
    assert numbers(found) == numbers(evaluate(with_values(jacket, {}), host=built_in))
    assert found[-1].status is Status.NOT_EVALUATED
    assert found[-1].location == f"limit state {name}"
    assert "id is already taken in provisions us by built-in (jacketcheck " in found[-1].notes[0]
