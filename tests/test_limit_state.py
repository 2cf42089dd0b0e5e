"""What a limit state and a set of provisions accept."""

from __future__ import annotations

from typing import Any

import pytest

from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState, Provisions, limit_state
from jacketcheck.results import Result


def no_rows(jacket: Jacket) -> list[Result]:
    del jacket
    return []


def test_a_function_becomes_a_limit_state() -> None:
    made = limit_state("seam-check", title="A check", provisions="north")(no_rows)
    assert made == LimitState("seam-check", "A check", "north", no_rows)
    assert limit_state("seam-check", title="A check")(no_rows).provisions == "us"


@pytest.mark.parametrize("name", ["a", "seam-slip", "en-1993-1-8", "x" * 60])
def test_identifiers(name: str) -> None:
    assert LimitState(name, "A check", "us", no_rows).id == name
    assert Provisions(name, "A code").id == name


@pytest.mark.parametrize(
    "name", ["", "Seam", "seam slip", "seam_slip", "-a", "a-", "a--b", "1a", "x" * 61, "é", None, 3]
)
def test_what_is_no_identifier(name: Any) -> None:
    with pytest.raises(ValueError, match=r"limit state id .*: must be lower-case words"):
        LimitState(name, "A check", "us", no_rows)
    with pytest.raises(ValueError, match=r"provisions id .*: must be lower-case words"):
        LimitState("a", "A check", name, no_rows)
    with pytest.raises(ValueError, match=r"provisions id .*: must be lower-case words"):
        Provisions(name, "A code")
    if name is not None:
        with pytest.raises(ValueError, match=r"inherited provisions id .*: must be lower"):
            Provisions("a", "A code", name)


@pytest.mark.parametrize("title", ["", "  ", None, 3])
def test_a_title_is_needed(title: Any) -> None:
    with pytest.raises(ValueError, match="limit state a: title is empty"):
        LimitState("a", title, "us", no_rows)
    with pytest.raises(ValueError, match="provisions a: title is empty"):
        Provisions("a", title)


def test_what_cannot_be_called_or_looked_up() -> None:
    wrong: Any = 3
    with pytest.raises(TypeError, match="limit state a: evaluate is not callable"):
        LimitState("a", "A check", "us", wrong)
    with pytest.raises(TypeError, match="limit state a: monotonic is not a mapping of paths"):
        LimitState("a", "A check", "us", no_rows, wrong)
    with pytest.raises(TypeError, match="provisions a: omits is not a mapping of ids to reasons"):
        Provisions("a", "A code", "us", wrong)


def test_an_omission_needs_an_identifier_and_a_reason() -> None:
    assert Provisions("a", "A code", omits={"seam-slip": "no such rule"}).omits
    with pytest.raises(ValueError, match="omitted limit state id 'Seam'"):
        Provisions("a", "A code", omits={"Seam": "no such rule"})
    with pytest.raises(ValueError, match="provisions a: omits seam-slip without a reason"):
        Provisions("a", "A code", omits={"seam-slip": " "})
