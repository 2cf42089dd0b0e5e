"""Worse work never gets a better verdict, and a record in other units the same one."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jacketcheck.as_built import Confirmation, ConfirmedLine, LineVerdict
from jacketcheck.as_built.compare_grout import strength_of_set
from jacketcheck.as_built.compare_holes import HOLES_BY_PENALTY, hole_type_that_covers
from jacketcheck.as_built.records import Change
from jacketcheck.catalog import built_in_catalog

Confirmed = Callable[..., Confirmation]
LineOf = Callable[[Confirmation, str], ConfirmedLine]
CATALOG = built_in_catalog()
SIZE = CATALOG.bolt_product("A325").size("7/8 in")
RANK = {
    LineVerdict.ACCEPTED: 0,
    LineVerdict.BY_RECHECK: 1,
    LineVerdict.REJECTED: 2,
    LineVerdict.NOT_JUDGED: 2,
}
SLOW = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@SLOW
@given(thickness=st.floats(4.0, 9.4), less=st.floats(0.0, 2.0))
def test_thinner_sleeves_are_never_better(
    confirmed: Confirmed, line_of: LineOf, thickness: float, less: float
) -> None:
    thick = line_of(confirmed(sleeve={"thickness": f"{thickness} mm"}), "thickness")
    thin = line_of(confirmed(sleeve={"thickness": f"{thickness - less} mm"}), "thickness")
    assert RANK[thin.verdict] >= RANK[thick.verdict]


@SLOW
@given(strength=st.floats(30.0, 60.0), less=st.floats(0.0, 10.0))
def test_weaker_grout_is_never_better(
    confirmed: Confirmed, line_of: LineOf, strength: float, less: float
) -> None:
    def verdict(value: float) -> int:
        grout = {"cylinder_strength": [f"{value} MPa"] * 3}
        return RANK[line_of(confirmed(grout=grout), "strength of cylinders").verdict]

    assert verdict(strength - less) >= verdict(strength)


@SLOW
@given(millimetres=st.floats(5.0, 12.0))
def test_units_of_the_record_do_not_matter(
    confirmed: Confirmed, line_of: LineOf, millimetres: float
) -> None:
    lines = [
        line_of(confirmed(sleeve={"thickness": text}), "thickness")
        for text in (f"{millimetres!r} mm", f"{millimetres / 25.4!r} in")
    ]
    assert lines[0].verdict is lines[1].verdict
    if lines[0].recheck is not None and lines[1].recheck is not None:
        assert lines[0].recheck.ratio == pytest.approx(lines[1].recheck.ratio, nan_ok=True)


@given(
    along=st.floats(22.5, 60.0), across=st.floats(22.5, 60.0), more=st.floats(0.0, 10.0),
    tolerance=st.floats(0.0, 1.0),
)  # fmt: skip
def test_larger_holes_never_count_as_a_better_type(
    along: float, across: float, more: float, tolerance: float
) -> None:
    def penalty(wide: float, high: float) -> int:
        kind = hole_type_that_covers(SIZE, along=wide, across=high, tolerance=tolerance)
        return len(HOLES_BY_PENALTY) if kind is None else HOLES_BY_PENALTY.index(kind)

    assert penalty(along + more, across) >= penalty(along, across)
    assert penalty(along, across + more) >= penalty(along, across)


@given(tests=st.lists(st.floats(10.0, 100.0), min_size=3, max_size=12))
def test_strength_of_a_set_is_between_its_lowest_and_its_mean(tests: list[float]) -> None:
    found = strength_of_set(tests)
    mean = sum(tests) / len(tests)
    assert min(tests) - 1e-9 <= found <= mean + 1e-9


def test_the_later_of_two_changes_counts() -> None:
    both = Change({"a.b": 1, "a.c": 2}, {"x": 1.0}) | Change({"a.b": 3}, {"y": 2.0})
    assert both == Change({"a.b": 3, "a.c": 2}, {"x": 1.0, "y": 2.0})
