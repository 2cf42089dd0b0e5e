from __future__ import annotations

from dataclasses import replace

import pytest

from jacketcheck.catalog.records import FayingClass
from jacketcheck.engine import evaluate
from jacketcheck.engine.own_classes import jacket_for
from jacketcheck.host import load_host
from jacketcheck.jacket import Jacket

WEAK = FayingClass(
    code="Elsewhere", letter="A", slip_coefficient=0.05, preparation="painted", source="invented"
)


@pytest.fixture
def with_weak_class(jacket: Jacket) -> Jacket:
    """The jacket with a class of a code that its provisions do not know."""
    classes = (*jacket.bolts.faying_classes, WEAK)
    return replace(jacket, bolts=replace(jacket.bolts, faying_classes=classes))


def test_a_weak_class_of_another_code_changes_nothing(
    jacket: Jacket, with_weak_class: Jacket
) -> None:
    host = load_host(installed=False)
    one, other = (
        {
            (row.limit_state, row.location, row.clause): row.ratio
            for row in evaluate(each, host=host)
        }
        for each in (jacket, with_weak_class)
    )
    assert other == pytest.approx(one, nan_ok=True)


def test_analyses_are_done_once_for_the_same_classes(with_weak_class: Jacket) -> None:
    host = load_host(installed=False)
    first = jacket_for(with_weak_class, host=host, provisions="us")
    assert first is jacket_for(with_weak_class, host=host, provisions="us")
    assert all(one.code != "Elsewhere" for one in first.bolts.faying_classes)


def test_without_a_class_of_its_own_a_set_sees_all_and_says_what_is_missing(
    jacket: Jacket,
) -> None:
    host = load_host(installed=False)
    foreign = replace(jacket, bolts=replace(jacket.bolts, faying_classes=(WEAK,)))
    assert jacket_for(foreign, host=host, provisions="us") is foreign
    slip = [row for row in evaluate(foreign, host=host) if row.limit_state == "seam-slip"]
    assert [row.status.value for row in slip] == ["NOT EVALUATED"] * 2
    assert "Elsewhere A" in slip[0].notes[0]
