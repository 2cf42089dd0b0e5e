"""The contract of a limit state's answer."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import numpy as np
import pytest

from jacketcheck.engine.validation import contract_problem
from jacketcheck.results import Kind, Result, Step

GOOD = Result(
    "check", "here", 1.0, 2.0, "N", "clause", (Step("a", "b", 1.0, "N", "source"),), ("a note",)
)


def with_(**changes: Any) -> Result:
    return replace(GOOD, **changes)


def tampered(name: str, value: object) -> Result:
    """A result with a field that its own constructor would not take."""
    result = replace(GOOD)
    object.__setattr__(result, name, value)
    return result


@pytest.mark.parametrize(
    ("answer", "problem"),
    [
        (None, "returned nothing"),
        ([], "returned an empty sequence"),
        ((), "returned an empty sequence"),
        (GOOD, "returned a Result, not a sequence of them"),
        ("ok", "returned a str, not a sequence of Results"),
        ({"a": GOOD}, "returned a dict, not a sequence of Results"),
        ((one for one in [GOOD]), "returned a generator, not a sequence of Results"),
        (0.5, "returned a float, not a sequence of Results"),
        ([None], "returned a NoneType among its results"),
        ([GOOD, 0.5], "returned a float among its results"),
        ([Result], "returned a type among its results"),
        ([GOOD, GOOD], "returned the same title, location and clause twice"),
    ],
)
def test_what_is_no_sequence_of_results(answer: object, problem: str) -> None:
    assert contract_problem(answer, ()) == problem


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        (with_(demand=np.nan), "demand is not a number (NaN)"),
        (with_(capacity=np.nan), "capacity is not a number (NaN)"),
        (with_(capacity=-2.0), "capacity is negative: -2"),
        (with_(demand=-1e-9), "demand is negative: -1e-09"),
        (with_(capacity=np.inf), "capacity is infinite, which any demand would pass"),
        (with_(demand=np.ones(3)), "demand has the shape (3,), which does not fit the designs' ()"),
        (with_(demand=True), "demand is not a real number: True"),
        (with_(demand=np.array([True])), "demand is not a real number: [ True]"),
        (tampered("demand", np.array([1j])), "demand is not a real number: [0.+1.j]"),
        (tampered("demand", np.array([None])), "demand is not a real number: [None]"),
        (tampered("demand", "0.5"), "demand is not a number or an array: a str"),
        (tampered("demand", None), "demand is not a number or an array: a NoneType"),
        (tampered("capacity", [2.0]), "capacity is not a number or an array: a list"),
        (tampered("capacity", Fraction(1)), "capacity is not a number or an array: a Fraction"),
        (
            tampered("demand", np.ma.masked_array([0.5], mask=[True])),
            "demand is not a number or an array: a MaskedArray",
        ),
        (tampered("kind", "limit"), "kind is not one of Kind"),
        (tampered("title", None), "title, location, unit, clause and notes must be texts"),
        (tampered("notes", (1,)), "title, location, unit, clause and notes must be texts"),
        (tampered("notes", 1), "notes and steps must be sequences"),
        (tampered("steps", None), "notes and steps must be sequences"),
        (tampered("steps", ("a",)), "steps must be Step records"),
        (with_(title=" "), "title is empty"),
        (
            with_(steps=(Step("a", "b", None, "N", "s"),)),  # type: ignore[arg-type] # wrong by design
            "step 'a' is not a number or an array: a NoneType",
        ),
        (
            with_(steps=(Step("a", "b", np.ones(2), "N", "s"),)),
            "step 'a' has the shape (2,), which does not fit the designs' ()",
        ),
        (
            with_(steps=(Step("a", 3, 1.0, "N", "s"),)),  # type: ignore[arg-type] # wrong by design
            "symbol, expression, unit and source of a step must be texts",
        ),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_row(row: Result, problem: str) -> None:
    assert contract_problem([row], ()) == f"{problem} (row {row.title!r}, 'here')"


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        (
            with_(demand=np.ones(2)),
            "demand has the shape (2,), which does not fit the designs' (3,)",
        ),
        (
            with_(demand=np.ones((3, 3)), capacity=1.0),
            "demand has the shape (3, 3), which does not fit the designs' (3,)",
        ),
        (with_(capacity=np.array([1.0, np.nan, -3.0])), "capacity is negative: -3"),
        (
            with_(capacity=np.array([1.0, np.inf, 3.0])),
            "capacity is infinite, which any demand would pass",
        ),
    ],
)  # fmt: skip
def test_what_is_wrong_over_designs(row: Result, problem: str) -> None:
    assert contract_problem([row], (3,)) == f"{problem} (row 'check', 'here')"


def results_of(answer: object, shape: tuple[int, ...]) -> tuple[Result, ...]:
    found = contract_problem(answer, shape)
    assert not isinstance(found, str), found
    return found


def test_a_good_answer_comes_back_as_it_was() -> None:
    assert results_of([GOOD], ()) == (GOOD,)
    assert results_of((GOOD, with_(location="there")), ()) == (GOOD, with_(location="there"))


def test_numbers_of_any_real_type_become_floats() -> None:
    (row,) = results_of([with_(demand=np.float32(0.5), capacity=2)], ())
    assert (type(row.demand), type(row.capacity)) == (float, float)
    (row,) = results_of([with_(demand=np.array(0.5), capacity=np.int64(2))], ())
    assert (row.demand, row.capacity, row.ratio) == (0.5, 2.0, 0.25)


def test_one_number_is_spread_over_the_designs() -> None:
    (row,) = results_of([with_(demand=np.array([1.0, 3.0]))], (2,))
    np.testing.assert_array_equal(row.capacity, [2.0, 2.0])
    np.testing.assert_array_equal(row.ratio, [0.5, 1.5])
    (step,) = row.steps
    np.testing.assert_array_equal(step.value, [1.0, 1.0])


def test_a_nan_among_designs_concerns_its_own_design() -> None:
    (row,) = results_of([with_(demand=np.array([1.0, np.nan]))], (2,))
    np.testing.assert_array_equal(row.ratio, [0.5, np.nan])


def test_an_infinite_demand_is_an_answer() -> None:
    (row,) = results_of([with_(demand=np.inf)], ())
    assert row.ratio == np.inf


@pytest.mark.parametrize("kind", [Kind.REPORTED, Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED])
def test_rows_without_a_verdict_may_lack_a_number(kind: Kind) -> None:
    (row,) = results_of([with_(demand=np.nan, capacity=np.inf, kind=kind)], ())
    assert row.kind is kind


def test_who_answered_cannot_change_the_answer_any_more() -> None:
    demand = np.array([1.0, 1.0])
    (row,) = results_of([with_(demand=demand)], (2,))
    demand[:] = 0.0
    np.testing.assert_array_equal(row.demand, [1.0, 1.0])
    with pytest.raises(ValueError, match="read-only"):
        row.demand[0] = 0.0  # type: ignore[index] # it is an array


def test_a_ratio_that_was_tampered_with_is_computed_again() -> None:
    (row,) = results_of([tampered("ratio", 0.1)], ())
    assert row.ratio == 0.5


def test_a_subclass_with_a_verdict_of_its_own_is_not_believed() -> None:
    class Optimist(Result):
        status = "ok"  # type: ignore[assignment] # wrong by design

    (row,) = results_of([Optimist("check", "here", 4.0, 2.0, "N", "clause")], ())
    assert type(row) is Result
    assert row.status.value == "EXCEEDS"
