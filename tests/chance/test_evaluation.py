"""A sample that cannot be evaluated: it stops nothing, hides nothing, and is bounded both ways."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.chance.estimate import chance_of_exceedance
from jacketcheck.chance.evaluation import Evaluation
from jacketcheck.chance.events import events_of
from jacketcheck.chance.report import ChanceReport
from jacketcheck.chance.result import ChanceResult, Settings
from jacketcheck.errors import DomainError, NotEvaluatedError
from jacketcheck.host import Host
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.limit_state import LimitState, Scatter
from jacketcheck.report import ExitCode
from jacketcheck.results import Result

HostOf = Callable[..., Host]
MEAN = 1.20
"""Mean strength of A325 bolts over the specified one, with a coefficient of variation of 0.07."""


def strength_of(jacket: Jacket) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """Tensile strength of the bolts over 1000 MPa."""
    return np.asarray(jacket.bolts.tensile_strength) / 1000.0


def fragile_above(
    limit: float, calls: list[int] | None = None, *, says_which: bool = True
) -> LimitState:
    """A formula that refuses strong bolts, as formulas do: for all samples at once."""

    def fragile(jacket: Jacket) -> list[Result]:
        strength = strength_of(jacket)
        if calls is not None:
            calls.append(strength.size)
        wrong = strength > limit
        if np.any(wrong):
            which = wrong if says_which else None
            largest = float(np.max(strength))
            raise DomainError("bolt_strength", largest, f"at most {limit:g}", out_of_range=which)
        return [Result("Fragile", "", strength, 2.0, "1", "a clause", rule="fragile")]

    scatter = Scatter("an event that is hardly possible", rules=("fragile",))
    return LimitState("fragile", "Fragile", "alone", fragile, effort="closed-form", scatter=scatter)


def estimated(host: Host, jacket: Jacket, settings: Settings) -> ChanceResult:
    return chance_of_exceedance(jacket, settings=settings, host=host, provisions=["alone"])


def exit_code(result: ChanceResult, repair_input: RepairInput) -> ExitCode:
    return ChanceReport(repair_input.job, "file", "0" * 64, {"one": result}, (), "0").exit_code


def test_the_others_are_evaluated(jacket: Jacket, host_of: HostOf) -> None:
    host = host_of(fragile_above(1.3))
    [event] = events_of(host, ["alone"]).asked
    strength = np.array([1.0, 1.4, 1.1, 1.2, 1.31, 0.9, 1.0])
    samples = with_values(jacket, {"bolts.tensile_strength": 1000.0 * strength})
    evaluation = Evaluation(host)
    found = evaluation.ratios([event], samples, {}, size=7)
    np.testing.assert_allclose(found["fragile"], np.where(strength > 1.3, np.nan, strength / 2.0))
    told = evaluation.failures["fragile"]
    assert told.startswith("outside the range of a formula: bolt strength 1.")
    assert told.endswith("which must be at most 1.3")


def test_many_that_cannot_be_evaluated_take_no_long_time(jacket: Jacket, host_of: HostOf) -> None:
    """Half of the samples: they cost no more than some hundred evaluations, and none passes."""
    calls: list[int] = []
    host = host_of(fragile_above(1.3, calls, says_which=False))
    strength = np.where(np.random.default_rng(1).random(2048) < 0.5, 1.4, 1.0)
    samples = with_values(jacket, {"bolts.tensile_strength": 1000.0 * strength})
    evaluation = Evaluation(host)
    events = events_of(host, ["alone"]).asked
    found = evaluation.ratios(events, samples, {}, size=2048)["fragile"]
    assert np.all(np.isnan(found[strength > 1.3]))
    assert np.all(found[~np.isnan(found)] == 0.5)
    assert len(calls) < 600
    assert evaluation.failures["fragile"].endswith("samples drawn with it are counted with it")


def test_few_of_many_leave_no_answer_open(
    jacket: Jacket, quick: Settings, host_of: HostOf, repair_input: RepairInput
) -> None:
    """One sample in some thousand: bounded both ways, told, and no reason for an exit code."""
    strength = float(strength_of(jacket))
    host = host_of(fragile_above(1.48 * strength))
    result = estimated(host, jacket, replace(quick, seed=1))
    [row] = result.limits
    assert 0 < row.unevaluated < 20
    assert row.exceeded == 0
    assert row.lowest == 0.0
    assert row.probability == row.unevaluated / row.samples
    assert row.interval.low == 0.0
    assert row.interval.high > row.probability
    assert "at most" in row.reason
    assert not row.open
    assert exit_code(result, repair_input) is ExitCode.WITHIN


def test_many_leave_it_open(
    jacket: Jacket, quick: Settings, host_of: HostOf, repair_input: RepairInput
) -> None:
    host = host_of(fragile_above(MEAN * float(strength_of(jacket))))
    result = estimated(host, jacket, quick)
    [row] = result.limits
    assert row.exceeded == 0
    assert 0.2 < row.unevaluated / row.samples < 0.8
    assert row.open
    assert (result.system.lowest, result.system.probability) == (row.lowest, row.probability)
    assert exit_code(result, repair_input) is ExitCode.NOT_EVALUATED


def test_a_ratio_that_is_no_number_has_a_reason(
    jacket: Jacket, quick: Settings, host_of: HostOf
) -> None:
    middle = float(strength_of(jacket)) * 1.01 * MEAN

    def odd(jacket: Jacket) -> list[Result]:
        strength = strength_of(jacket)
        return [Result("Odd", "", np.where(strength > middle, np.nan, 0.5), 2.0, "1", "a clause")]

    state = LimitState("odd", "Odd", "alone", odd, effort="closed-form")
    [row] = estimated(host_of(state), jacket, quick).limits
    assert row.unevaluated > 0
    assert row.reason == "the ratio is not a number"


def test_what_never_can_be_evaluated(
    jacket: Jacket, quick: Settings, host_of: HostOf, repair_input: RepairInput
) -> None:
    def never(jacket: Jacket) -> list[Result]:
        del jacket
        raise NotEvaluatedError("nothing is known")

    state = LimitState("never", "Never", "alone", never, effort="closed-form")
    result = estimated(host_of(state), jacket, quick)
    [row] = result.limits
    assert row.unevaluated == row.samples
    assert (row.lowest, row.probability) == (0.0, 1.0)
    assert "nothing is known" in row.reason
    assert row.first_order_index is None
    assert exit_code(result, repair_input) is ExitCode.NOT_EVALUATED


@pytest.mark.parametrize("added", [True, False])
def test_bounds_of_the_repair_as_a_whole(
    jacket: Jacket, quick: Settings, host_of: HostOf, *, added: bool
) -> None:
    """What exceeds by another event is not open."""

    def certain(jacket: Jacket) -> list[Result]:
        return [Result("Certain", "", 2.0 + 0.0 * strength_of(jacket), 1.0, "1", "a clause")]

    states = [fragile_above(MEAN * float(strength_of(jacket)))]
    if added:
        states.append(LimitState("certain", "Certain", "alone", certain, effort="closed-form"))
    system = estimated(host_of(*states), jacket, quick).system
    assert (system.lowest == 1.0) == added
    assert system.lowest <= system.probability <= 1.0
