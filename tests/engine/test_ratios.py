"""Ratios of many designs: each has an answer of its own, whatever becomes of the others."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.engine.evaluate import evaluate
from jacketcheck.engine.ratios import DesignRatios, RatioRow, merged_ratios, ratios_of_designs
from jacketcheck.errors import DomainError, NotEvaluatedError
from jacketcheck.host import Host, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import pick, repeated, with_values
from jacketcheck.results import Kind, Result

HostOf = Callable[..., Host]
GAPS = np.array([10.0, 40.0, 60.0, 80.0, 100.0])


@pytest.fixture
def many(jacket: Jacket) -> Jacket:
    return with_values(jacket, {"sleeve.gap": GAPS})


def gap_below_70(jacket: Jacket) -> list[Result]:
    return [Result("Gap", "sleeve", jacket.sleeve.gap, 70.0, "mm", "a clause")]


def found_with(host: Host, jacket: Jacket) -> DesignRatios:
    return ratios_of_designs(jacket, host=host, provisions=("alone",))


def row_of(found: DesignRatios, name: str) -> list[float]:
    [place] = [index for index, row in enumerate(found.rows) if row.limit_state == name]
    values: list[float] = found.ratio[place].tolist()
    return values


def test_every_design_has_its_ratio(host_of: HostOf, many: Jacket) -> None:
    found = found_with(host_of(gap_below_70), many)
    assert row_of(found, "odd-1") == (GAPS / 70.0).tolist()
    assert found.passes.tolist() == [True, True, True, False, False]
    decides = [found.rows[place].limit_state for place in found.governing]
    assert decides == ["sound-before", "odd-1", "odd-1", "odd-1", "odd-1"]
    assert found.governing_ratio[3] == found.worst[3] == 80.0 / 70.0


def test_only_the_design_that_is_refused_is_not_evaluated(host_of: HostOf, many: Jacket) -> None:
    def refuses_60(jacket: Jacket) -> list[Result]:
        if np.any(np.equal(jacket.sleeve.gap, 60.0)):
            raise NotEvaluatedError("a gap of 60 mm is not covered")
        return gap_below_70(jacket)

    found = found_with(host_of(refuses_60), many)
    assert np.isnan(found.worst).tolist() == [False, False, True, False, False]
    assert found.passes.tolist() == [True, True, False, False, False]
    names, ratio = found.by_limit_state()
    assert np.isnan(ratio[names.index("odd-1")]).tolist() == [False, False, True, False, False]
    assert found.rows[found.governing[2]].limit_state == "odd-1"
    [reason] = found.reasons.values()
    assert "a gap of 60 mm is not covered" in reason


def test_a_nan_concerns_its_own_design(host_of: HostOf, many: Jacket) -> None:
    def nan_at_40(jacket: Jacket) -> list[Result]:
        gap = np.asarray(jacket.sleeve.gap)
        return [Result("Gap", "", np.where(gap == 40.0, np.nan, gap), 70.0, "mm", "a clause")]

    found = found_with(host_of(nan_at_40), many)
    assert np.isnan(found.worst).tolist() == [False, True, False, False, False]
    assert not found.passes[1]


def test_what_refuses_everybody_is_not_asked_for_ever(host_of: HostOf, jacket: Jacket) -> None:
    asked = []

    def refuses(jacket: Jacket) -> list[Result]:
        asked.append(np.size(jacket.sleeve.gap))
        raise NotEvaluatedError("no footing")

    count = 2000
    many = with_values(jacket, {"sleeve.gap": np.linspace(20.0, 100.0, count)})
    found = found_with(host_of(refuses), many)
    assert np.isnan(found.worst).all()
    assert not found.passes.any()
    assert len(asked) < 200


def test_rows_that_only_some_batches_have(host_of: HostOf, many: Jacket) -> None:
    def more_rows_from_60(jacket: Jacket) -> list[Result]:
        if np.size(jacket.sleeve.gap) > 1:
            raise NotEvaluatedError("one at a time")
        rows = gap_below_70(jacket)
        if float(np.ravel(jacket.sleeve.gap)[0]) >= 60.0:
            rows.append(Result("Second", "", 1.0, 2.0, "1", "a clause"))
        return rows

    found = found_with(host_of(more_rows_from_60), many)
    [second] = [i for i, row in enumerate(found.rows) if row.title == "Second"]
    assert found.ratio[second].tolist() == [-np.inf, -np.inf, 0.5, 0.5, 0.5]
    names, ratio = found.by_limit_state()
    assert ratio[names.index("odd-1")].tolist() == (GAPS / 70.0).tolist()


def test_rows_without_a_verdict_do_not_count(host_of: HostOf, many: Jacket) -> None:
    def reported(jacket: Jacket) -> list[Result]:
        return [replace(gap_below_70(jacket)[0], kind=Kind.REPORTED)]

    found = found_with(host_of(reported), many)
    assert {row.limit_state for row in found.rows} == {"sound-before", "sound-after"}
    assert found.passes.all()


def test_a_row_without_margin_does_not_govern_where_it_passes(
    host_of: HostOf, many: Jacket
) -> None:
    def without_margin(jacket: Jacket) -> list[Result]:
        gap = np.asarray(jacket.sleeve.gap)
        row = Result("Full", "", 1.0, np.where(gap > 90.0, 0.5, 1.0), "1", "a clause")
        return [replace(row, without_margin=True)]

    found = found_with(host_of(gap_below_70, without_margin), many)
    decides = [found.rows[place].limit_state for place in found.governing]
    assert decides == ["sound-before", "odd-1", "odd-1", "odd-1", "odd-2"]
    names, ratio = found.by_limit_state(with_silent=False)
    assert ratio[names.index("odd-2")].tolist() == [0.0, 0.0, 0.0, 0.0, 2.0]
    assert found.by_limit_state()[1][names.index("odd-2")].tolist() == [1.0, 1.0, 1.0, 1.0, 2.0]


def test_nothing_to_go_by_is_no_pass(many: Jacket) -> None:
    host = load_host(installed=False)
    found = ratios_of_designs(many, host=host, only=())
    assert found.rows == ()
    assert np.isnan(found.worst).all()
    assert not found.passes.any()
    assert found.governing_ratio.shape == (5,)
    assert found.by_limit_state()[1].shape == (0, 5)


def test_several_provisions_must_all_be_satisfied(host_of: HostOf, many: Jacket) -> None:
    host = host_of(gap_below_70)
    both = ratios_of_designs(many, host=host, provisions=("alone", "us"), only={"odd-1"})
    assert {row.provisions for row in both.rows} == {"alone"}
    all_of_them = ratios_of_designs(
        many, host=host, provisions=("alone", "us"), only={"odd-1", "sleeve-gap"}
    )
    assert {row.provisions for row in all_of_them.rows} == {"alone", "us"}


def test_parts_are_merged_by_row_and_design() -> None:
    first = RatioRow("one", "us", "One", "a clause")
    second = RatioRow("two", "us", "Two", "a clause")
    left = DesignRatios(
        (first,), np.array([[0.5, np.nan]]), np.array([False]), ("here",), {first: "why"}
    )
    right = DesignRatios(
        (second, first), np.array([[2.0], [0.25]]), np.array([True, False]), ("", "there")
    )
    whole = merged_ratios([(np.array([2, 0]), left), (np.array([1]), right)], count=4)
    assert whole.rows == (first, second)
    np.testing.assert_array_equal(
        whole.ratio, [[np.nan, 0.25, 0.5, -np.inf], [-np.inf, 2.0, -np.inf, -np.inf]]
    )
    assert whole.places == ("", ""), "a place that differs is not told"
    assert whole.without_margin.tolist() == [False, True]
    assert whole.reasons == {first: "why"}
    assert np.isnan(whole.worst[3])
    assert not whole.passes[3]


def test_many_designs_get_what_each_gets_by_itself(jacket: Jacket) -> None:
    host = load_host(installed=False)
    many = with_values(
        jacket,
        {
            "sleeve.thickness": np.array([6.35, 12.7, 19.05]),
            "bolts.pitch": np.array([127.0, 110.0, 90.0]),
        },
    )
    together = ratios_of_designs(many, host=host)
    for index in range(3):
        worst: dict[str, float] = {}
        for result in evaluate(pick(many, index), host=host):
            if result.kind is Kind.LIMIT:
                ratio = float(np.max(result.ratio))
                worst[result.limit_state] = max(worst.get(result.limit_state, 0.0), ratio)
        names, ratios = together.by_limit_state()
        found = {n: r for n, r in zip(names, ratios[:, index], strict=True) if np.isfinite(r)}
        finite = {name: one for name, one in worst.items() if np.isfinite(one)}
        assert found == pytest.approx(finite, rel=1e-9)


def test_one_design(jacket: Jacket) -> None:
    host = load_host(installed=False)
    alone = ratios_of_designs(repeated(jacket, 1), host=host, only={"bolt-spacing"})
    assert alone.ratio.shape[1] == 1
    assert alone.worst.shape == (1,)


def test_designs_out_of_range_never_hide_the_others(host_of: HostOf, jacket: Jacket) -> None:
    """However many are refused for one reason, and whichever comes first."""

    def up_to_70(jacket: Jacket) -> list[Result]:
        gap = np.asarray(jacket.sleeve.gap)
        if np.any(gap > 70.0):
            raise DomainError("gap", 70.0, "at most 70")
        return gap_below_70(jacket)

    gaps = np.concatenate([np.full(200, 80.0), np.full(3, 60.0), np.full(50, 80.0)])
    found = found_with(host_of(up_to_70), with_values(jacket, {"sleeve.gap": gaps}))
    assert np.isnan(found.worst).tolist() == (gaps > 70.0).tolist()


def test_designs_that_share_analyses_have_the_answers_of_each_alone(jacket: Jacket) -> None:
    """Some lie outside formulas that all sections share."""
    strength = np.array([160.0, 55.0, 60.0, 1e-3])
    many = with_values(jacket, {"grout.strength": strength})
    host = load_host(installed=False)
    found = ratios_of_designs(many, host=host)
    for index in range(strength.size):
        alone = ratios_of_designs(pick(many, index), host=host)
        names, ratio = alone.by_limit_state()
        together = dict(zip(*found.by_limit_state(), strict=True))
        for name, value in zip(names, ratio[:, 0], strict=True):
            assert together[name][index] == pytest.approx(value, rel=1e-6, nan_ok=True), name
    assert not np.isnan(found.worst[1:3]).any()


def test_a_consequence_governs_no_design_whose_cause_fails(host_of: HostOf, many: Jacket) -> None:
    """Gaps of 80 and 100 mm fail the cause, by less than what follows from it."""

    def consequence(jacket: Jacket) -> list[Result]:
        ratio = np.where(np.greater(jacket.sleeve.gap, 50.0), np.inf, 0.5)
        return [Result("Bond", "bars", ratio, 1.0, "1", "a clause", follows_from=("odd-1",))]

    found = found_with(host_of(gap_below_70, consequence), many)
    decides = [found.rows[place].limit_state for place in found.governing]
    assert decides == ["odd-2", "odd-1", "odd-2", "odd-1", "odd-1"]
    assert found.followers.tolist() == [0, 0, 0, 1, 1]
    assert found.governing_ratio[3] == 80.0 / 70.0
    assert found.worst[3] == np.inf
    halves = [
        (numbers, found_with(host_of(gap_below_70, consequence), pick_some(many, numbers)))
        for numbers in (np.array([0, 1]), np.array([2, 3, 4]))
    ]
    together = merged_ratios(halves, count=5)
    assert together.governing.tolist() == found.governing.tolist()
    assert together.followers.tolist() == found.followers.tolist()


def pick_some(many: Jacket, numbers: np.ndarray) -> Jacket:
    return with_values(many, {"sleeve.gap": GAPS[numbers]})
