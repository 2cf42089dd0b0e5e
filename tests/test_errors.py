"""What the exceptions say and carry."""

from __future__ import annotations

import pytest

from jacketcheck import errors
from jacketcheck.errors import (
    CatalogError,
    DomainError,
    InputError,
    InputProblem,
    JacketcheckError,
)


def test_all_exceptions_have_one_base() -> None:
    classes = [getattr(errors, name) for name in errors.__all__ if name != "InputProblem"]
    assert all(issubclass(one, JacketcheckError) for one in classes)
    # callers who know nothing of us may catch what Python would have raised
    assert issubclass(DomainError, ValueError)
    assert issubclass(CatalogError, LookupError)


@pytest.mark.parametrize(
    ("problem", "text"),
    [
        (InputProblem("a.b", "3", "is odd"), "a.b = 3: is odd"),
        (InputProblem("a.b", "", "is missing"), "a.b: is missing"),
        (InputProblem("", "", "is empty"), "is empty"),
    ],
)
def test_a_problem_in_one_line(problem: InputProblem, text: str) -> None:
    assert str(problem) == text


def test_an_input_error_tells_every_problem() -> None:
    problems = [InputProblem("a", "1", "is odd"), InputProblem("b", "", "is missing")]
    error = InputError(problems, source="repair.toml", remark="c was not checked")
    assert error.problems == tuple(problems)
    assert (error.source, error.remark) == ("repair.toml", "c was not checked")
    assert str(error).splitlines() == [
        "repair.toml: 2 problems",
        "  a = 1: is odd",
        "  b: is missing",
        "  (c was not checked)",
    ]


def test_one_problem_is_singular() -> None:
    assert (
        str(InputError([InputProblem("a", "1", "is odd")])) == "input: 1 problem\n  a = 1: is odd"
    )


def test_the_others_carry_what_they_are_about() -> None:
    domain = DomainError("thickness", -1.0, "above zero")
    assert (domain.name, domain.value, domain.allowed) == ("thickness", -1.0, "above zero")
    assert str(domain) == "thickness = -1.0: must be above zero"
    catalog = CatalogError("bar size", "No. 12", "is not known", known=["No. 11"])
    assert (catalog.kind, catalog.name, catalog.known) == ("bar size", "No. 12", ("No. 11",))
    assert str(catalog) == "bar size 'No. 12' is not known"
