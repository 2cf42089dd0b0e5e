"""Ratios, verdicts and their order: nothing that is not a number reads as a pass."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest

from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import (
    Kind,
    Result,
    Status,
    Steps,
    demand_capacity_ratio,
    worst_status,
)

INF, NAN = math.inf, math.nan


def row(demand: Real, capacity: Real, kind: Kind = Kind.LIMIT) -> Result:
    return Result("check", "here", demand, capacity, "N", "clause", kind=kind)


CASES = [
    pytest.param(3.0, 4.0, 0.75, Status.OK, id="within"),
    pytest.param(4.0, 4.0, 1.0, Status.OK, id="at the limit"),
    pytest.param(4.0, math.nextafter(4.0, 0.0), 1.0 + 2.0**-52, Status.EXCEEDS, id="just above"),
    pytest.param(5.0, 4.0, 1.25, Status.EXCEEDS, id="above"),
    pytest.param(0.0, 4.0, 0.0, Status.OK, id="no demand"),
    pytest.param(0.0, 0.0, 0.0, Status.OK, id="no demand, no capacity"),
    pytest.param(-0.0, 4.0, 0.0, Status.OK, id="minus zero"),
    pytest.param(5.0, 0.0, INF, Status.EXCEEDS, id="no capacity"),
    pytest.param(5.0, -0.0, INF, Status.EXCEEDS, id="capacity minus zero"),
    pytest.param(INF, 4.0, INF, Status.EXCEEDS, id="infinite demand"),
    pytest.param(5.0, INF, 0.0, Status.OK, id="infinite capacity"),
    pytest.param(INF, INF, NAN, Status.NOT_EVALUATED, id="both infinite"),
    pytest.param(NAN, 4.0, NAN, Status.NOT_EVALUATED, id="demand not a number"),
    pytest.param(5.0, NAN, NAN, Status.NOT_EVALUATED, id="capacity not a number"),
    pytest.param(0.0, NAN, NAN, Status.NOT_EVALUATED, id="no demand, capacity not a number"),
    pytest.param(NAN, 0.0, NAN, Status.NOT_EVALUATED, id="no capacity, demand not a number"),
    pytest.param(5.0, -4.0, NAN, Status.NOT_EVALUATED, id="negative capacity"),
    pytest.param(-5.0, 4.0, NAN, Status.NOT_EVALUATED, id="negative demand"),
    pytest.param(-5.0, -4.0, NAN, Status.NOT_EVALUATED, id="both negative"),
    pytest.param(0.0, -4.0, NAN, Status.NOT_EVALUATED, id="no demand, negative capacity"),
]


@pytest.mark.parametrize(("demand", "capacity", "ratio", "status"), CASES)
def test_ratio_and_verdict(demand: float, capacity: float, ratio: float, status: Status) -> None:
    one = row(demand, capacity)
    assert isinstance(one.ratio, float)
    assert one.ratio == pytest.approx(ratio, rel=1e-15, nan_ok=True)
    assert one.status is status
    many = row(np.array([1.0, demand]), np.array([2.0, capacity]))
    np.testing.assert_allclose(many.ratio, [0.5, ratio], rtol=1e-15)
    assert many.status is status


def test_one_number_serves_many_designs() -> None:
    np.testing.assert_array_equal(
        demand_capacity_ratio(6.0, np.array([3.0, 6.0, 0.0])), [2.0, 1.0, INF]
    )
    np.testing.assert_array_equal(demand_capacity_ratio(np.array([0.0, 6.0]), 3.0), [0.0, 2.0])


@pytest.mark.parametrize(
    ("ratios", "status"),
    [
        ([0.5, 1.0], Status.OK),
        ([0.5, 1.1], Status.EXCEEDS),
        ([0.5, INF], Status.EXCEEDS),
        ([0.5, NAN], Status.NOT_EVALUATED),
        ([1.5, NAN], Status.NOT_EVALUATED),
        ([], Status.NOT_EVALUATED),
    ],
)
def test_the_verdict_on_many_designs_is_the_worst(ratios: list[float], status: Status) -> None:
    assert row(np.array(ratios, float), np.ones(len(ratios))).status is status


@pytest.mark.parametrize("kind", [Kind.REPORTED, Kind.NOT_APPLICABLE, Kind.NOT_EVALUATED])
def test_other_kinds_have_the_verdict_of_their_name(kind: Kind) -> None:
    assert row(2.0, 1.0, kind).status is Status[kind.name]
    assert row(0.0, 1.0, kind).status is not Status.OK


def test_severity_puts_what_is_missing_first_and_what_has_no_verdict_last() -> None:
    ordered = [
        row(1.0, NAN),
        row(1.0, 0.0),
        row(1e200, 1e-200),
        row(2.0, 1.0),
        row(np.array([0.1, 1.5]), 1.0),
        row(1.0, 1.0),
        row(0.0, 1.0),
        row(9.0, 1.0, Kind.REPORTED),
        row(9.0, 1.0, Kind.NOT_APPLICABLE),
    ]
    severities = [one.severity for one in ordered]
    assert severities == sorted(severities, reverse=True)
    # the two that are infinite are equally bad
    assert len(set(severities)) == len(ordered) - 1
    assert row(NAN, NAN, Kind.NOT_EVALUATED).severity == row(1.0, NAN).severity


def test_the_worst_of_a_set() -> None:
    worse_to_better = [row(1.0, NAN), row(2.0, 1.0), row(0.5, 1.0)]
    for count in range(1, 4):
        for chosen in itertools.permutations(worse_to_better, count):
            worst = min(chosen, key=worse_to_better.index)
            assert worst_status(chosen) is worst.status


@pytest.mark.parametrize(
    "rows",
    [
        [],
        [row(0.5, 1.0, Kind.REPORTED)],
        [row(0.0, 0.0, Kind.NOT_APPLICABLE)],
        [row(0.5, 1.0, Kind.REPORTED), row(0.0, 0.0, Kind.NOT_APPLICABLE)],
    ],
)
def test_without_a_ratio_nothing_is_evaluated(rows: list[Result]) -> None:
    assert worst_status(rows) is Status.NOT_EVALUATED


def test_rows_without_a_verdict_do_not_change_it() -> None:
    rest = [row(9.0, 1.0, Kind.REPORTED), row(0.0, 0.0, Kind.NOT_APPLICABLE)]
    assert worst_status([row(0.5, 1.0), *rest]) is Status.OK
    assert worst_status([row(1.5, 1.0), *rest]) is Status.EXCEEDS


def test_a_result_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        row(2.0, 1.0).ratio = 0.5  # type: ignore[misc] # that is what is tested


def test_steps_keep_their_order_and_hand_values_back() -> None:
    steps = Steps()
    assert steps.add("a", "b + c", 3.0, "mm", "source") == 3.0
    assert steps.add("d", "word", "yes", "1", "source") == "yes"
    assert [line.symbol for line in steps.lines] == ["a", "d"]
