"""The search as a whole: where it starts, where it is ended, and what stays open."""

from __future__ import annotations

from types import ModuleType

import numpy as np
import pytest

from jacketcheck.errors import InputError, NotEvaluatedError
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import LimitState
from jacketcheck.report import ExitCode
from jacketcheck.results import Result
from jacketcheck.sizing.fates import Fate
from jacketcheck.sizing.size import size
from tests.support.jackets import host
from tests.support.sized_designs import file_with, sized

THICKNESSES = 'sizing.sleeve.thickness = ["1/2 in", "5/8 in", "3/4 in", "1 in"]'


def host_with(limit_state: LimitState) -> Host:
    """The built-in limit states and one more."""
    module = ModuleType("made_for_a_test")
    module.jacketcheck_limit_states = hookimpl(  # type: ignore[attr-defined] # a module stands for a plug-in
        specname="jacketcheck_limit_states"
    )(lambda: [limit_state])
    return load_host(
        installed=False, extra=[(PluginInfo("north", "jacketcheck-north", "1.2"), module)]
    )


def thickness_limit(jacket: Jacket) -> list[Result]:
    """At least 17 mm of sleeve."""
    return [Result("Thickness", "sleeve", 17.0, jacket.sleeve.thickness, "mm", "a clause")]


def test_the_search_says_how_far_it_is() -> None:
    told: list[tuple[str, int, int]] = []
    size(file_with(THICKNESSES), host=host(), tick=lambda *what: told.append(what))
    assert [what for what, _, _ in told] == ["closed form", "section analysis"]
    assert all(0 < done <= total == 4 for _, done, total in told)


def test_a_search_that_is_ended_says_that_there_may_be_more() -> None:
    bars = """
        [sizing.added_bars]
        size = ["No. 8", "No. 9"]
        count = [14, 16]
        embedment = ["33 in", "39 in"]
        """
    whole = sized(bars)
    assert whole.fates[Fate.NOT_REACHED] == 0
    assert len(whole.front) > 1
    fewer = 0
    for most in range(1, whole.analysed):
        ended = sized(bars, most=most)
        assert ended.analysed == most
        assert sum(ended.fates.values()) == ended.count
        # what it has found before is as good as ever
        costs = [one.costs for one in ended.front]
        assert costs == [one.costs for one in whole.front][: len(costs)]
        assert len(costs) == len(whole.front) or ended.fates[Fate.NOT_REACHED] > 0
        fewer += 0 < len(costs) < len(whole.front)
    assert fewer


def test_a_search_that_is_ended_with_nothing_is_open() -> None:
    steps = 'sizing.sleeve.thickness = { least = "9.6 mm", most = "10 mm", step = "0.1 mm" }'
    ended = sized(steps, most=3)
    assert not ended.front
    assert ended.exit_code is ExitCode.NOT_EVALUATED


def test_it_starts_from_a_variant() -> None:
    tables = '[variants."snug".sizing.sleeve]\nthickness = ["3/4 in"]\n[variants."snug".bolts]\n'
    report = sized(tables + 'tightening = "snug"', variant="snug")
    assert report.variant == "snug"
    assert not report.front
    assert report.infeasibility is not None
    # snug bolts have no slip resistance, whatever the sleeve
    worst = {one.limit_state: one.smallest_ratio for one in report.infeasibility.obstacles}
    assert worst["seam-slip"] == np.inf
    found = report.infeasibility.way_out
    assert found is not None
    assert not found.works
    assert "seam-slip" in found.stuck


def test_an_unknown_variant_is_told() -> None:
    with pytest.raises(InputError, match="nowhere"):
        size(file_with(THICKNESSES), host=host(), variant="nowhere")


def test_a_limit_state_of_a_plug_in_has_its_say() -> None:
    stricter = host_with(
        LimitState("north-thickness", "Thickness", "us", thickness_limit, effort="closed-form")
    )
    plain = size(file_with(THICKNESSES), host=host())
    report = size(file_with(THICKNESSES), host=stricter)
    assert plain.front[0].values["sleeve.thickness"] < 17.0
    assert report.front[0].values["sleeve.thickness"] == pytest.approx(19.05)
    assert report.front[0].proof.closed_form == {"north-thickness": 2}
    assert report.front[0].proof.is_closed_form
    assert "north" in {plugin.name for plugin in report.plugins}


def test_what_could_not_be_evaluated_is_no_pass_and_leaves_the_answer_open() -> None:
    def refuses_thin(jacket: Jacket) -> list[Result]:
        if np.any(np.less(jacket.sleeve.thickness, 17.0)):
            raise NotEvaluatedError("no rule for thin sleeves")
        return [Result("Thickness", "sleeve", 1.0, 2.0, "mm", "a clause")]

    unsure = host_with(LimitState("north-rule", "Rule", "us", refuses_thin, effort="closed-form"))
    report = size(file_with(THICKNESSES), host=unsure)
    [design] = report.front
    assert design.values["sleeve.thickness"] == pytest.approx(19.05)
    assert report.exit_code is ExitCode.NOT_EVALUATED
    assert report.unsettled == report.fates[Fate.NOT_EVALUATED] == 2
    assert design.proof.not_evaluated == {"north-rule": 2}
    assert not design.proof.is_proven
    assert "no rule for thin sleeves" in report.unevaluated["north-rule"]


def test_bounds_of_which_nothing_can_be_built_say_why() -> None:
    report = sized('sizing.bolts.pitch = ["20 mm"]')
    assert report.fates[Fate.CANNOT_BE_BUILT] == report.count == 1
    assert report.exit_code is ExitCode.EXCEEDS
    assert report.infeasibility is not None
    assert report.infeasibility.nearest == -1
    assert report.infeasibility.way_out is None
    [reason] = report.refusals
    assert reason.startswith("bolts.")


def test_no_bounds_at_all_try_what_is_usual() -> None:
    hopeless = (
        '[variants."snug".bolts]\ntightening = "snug"\n[sizing.field_work]\nhours_per_bolt = 0.3'
    )
    report = sized(hopeless, variant="snug")
    assert report.default_bounds
    assert report.work.hours_per_bolt == 0.3
    assert {axis.source for axis in report.varied} == {
        "tried by default",
        "stock plates, common practice, no published source",
    }
    assert report.fates[Fate.CLOSED_FORM] + report.fates[Fate.CANNOT_BE_BUILT] == report.count


def test_hours_decide_what_is_chosen() -> None:
    """Free chipping is never avoided, dear chipping never done for nothing."""
    bounds = """
        [sizing.repair]
        surface = ["unchipped", "chipped"]
        [sizing.sleeve]
        thickness = ["3/4 in"]
        """
    for hours in (0.0, 100.0):
        report = sized(f"{bounds}[sizing.field_work]\nhours_per_metre_chipped = {hours}")
        surfaces = {one.values["repair.surface"] for one in report.front}
        # unchipped does not work here; where it costs nothing chipping is equal, never cheaper
        assert surfaces == {"chipped"}
        expected = 1 if hours else 0
        assert report.front[0].proof.cheaper == expected
