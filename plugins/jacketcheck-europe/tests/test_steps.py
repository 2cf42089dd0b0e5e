"""Every row can be followed: what an expression names has been written down before."""

from __future__ import annotations

import re

import numpy as np
import pytest
from jacketcheck_europe.limit_states import limit_states

from jacketcheck.plugin import Jacket, LimitState, NotEvaluatedError, Result

_NAME = re.compile(
    r"(?<![\w′,])"  # not in the middle of a word
    r"[A-Za-zα-ωΑ-Ω]⁰?(?:_[\wα-ωΑ-Ω]+(?:,[\wα-ωΑ-Ω]+)*)?"
    r"(?![\w′])"
)
_WORDS = {"a", "A", "B", "C", "π", "N", "K"}
"""Single letters that are words, units or numbers."""
_SHARED = {
    "ε_c",
    "ε_c,in",
    "ε_c,base",
    "p_dil",
    "p_c",
    "p_cl",
    "N",
    "h_t",
    "V",
    "M_p",
    "M_o",
    "V_o",
}
"""Written down by analyses that jacketcheck shares."""
_IN_WORDS = re.compile("section analysis|built-in|limit state|A_p,N|A_c,N|class EN")


def unexplained(row: Result) -> list[str]:
    """Names in expressions of a row that no step before has."""
    known = set(_WORDS)
    found = []
    for step in row.steps:
        if step.symbol not in _SHARED and not _IN_WORDS.search(step.expression):
            found += [
                f"{step.symbol} = {step.expression}: {name}"
                for name in _NAME.findall(step.expression.replace("²", " "))
                if name not in known
            ]
        known.add(step.symbol)
    return found


@pytest.mark.parametrize("state", limit_states(), ids=lambda one: one.id)
def test_nothing_comes_from_nowhere(state: LimitState, jackets: dict[str, Jacket]) -> None:
    missing: set[str] = set()
    for jacket in jackets.values():
        try:
            rows = state.evaluate(jacket)
        except NotEvaluatedError:
            continue
        for row in rows:
            missing.update(unexplained(row))
    assert sorted(missing) == []


@pytest.mark.parametrize("state", limit_states(), ids=lambda one: one.id)
def test_demand_and_capacity_are_written_down(state: LimitState, jacket: Jacket) -> None:
    for row in state.evaluate(jacket):
        values = [float(one.value) for one in row.steps if not isinstance(one.value, str)]
        assert float(np.asarray(row.demand)) in values, row.title
        assert float(np.asarray(row.capacity)) in values, row.title
