"""A sample that cannot be evaluated: it stops nothing, hides nothing, and never passes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.chance import estimate
from jacketcheck.chance.base_strain import BaseStrain
from jacketcheck.chance.evaluation import Failures, array_ratios
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.realisation import Realisation
from jacketcheck.chance.report import ChanceReport
from jacketcheck.chance.result import Settings
from jacketcheck.chance.variables import random_variables
from jacketcheck.errors import DomainError, NotEvaluatedError
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket
from jacketcheck.mechanics._arrays import Real
from jacketcheck.report import ExitCode

STRAIN = BaseStrain("declared", 0.003, 0.001, 0.5)


def fragile(sample: Realisation) -> Real:
    """A formula that refuses strong bolts, as formulas do: for all samples at once."""
    strength = np.asarray(sample.factors["bolt-strength"])
    if np.any(strength > 1.3):
        raise DomainError("strength", float(np.max(strength)), "at most 1.3")
    return strength / 2.0


FRAGILE = Limit("fragile", "Fragile", "closed-form", "an event", ("bolt-strength",), fragile)


def never(sample: Realisation) -> Real:
    del sample
    raise NotEvaluatedError("nothing is known")


def test_the_others_are_evaluated(jacket: Jacket) -> None:
    failures: Failures = {}
    strength = np.array([1.0, 1.4, 1.1, 1.2, 1.31, 0.9, 1.0])
    factors = {**random_variables(jacket).means(), "bolt-strength": strength}
    found = array_ratios([FRAGILE], jacket, factors, size=7, strain=STRAIN, failures=failures)
    expected = np.where(strength > 1.3, np.nan, strength / 2.0)
    np.testing.assert_array_equal(found["fragile"], expected)
    assert failures["fragile"].startswith("strength = 1.4")


def test_many_that_cannot_be_evaluated_take_no_long_time(jacket: Jacket) -> None:
    """Half of the samples: they cost no more than some hundred evaluations, and none passes."""
    calls = []

    def counted(sample: Realisation) -> Real:
        calls.append(1)
        return fragile(sample)

    failures: Failures = {}
    strength = np.where(np.random.default_rng(1).random(16_384) < 0.5, 1.4, 1.0)
    factors = {**random_variables(jacket).means(), "bolt-strength": strength}
    limit = replace(FRAGILE, ratio=counted)
    found = array_ratios([limit], jacket, factors, size=16_384, strain=STRAIN, failures=failures)
    assert np.all(np.isnan(found["fragile"][strength > 1.3]))
    known = found["fragile"][~np.isnan(found["fragile"])]
    assert np.all(known == 0.5)
    assert len(calls) < 600
    assert failures["fragile"].endswith("those drawn with it are counted with it")


def test_a_ratio_that_is_no_number_has_a_reason(
    jacket: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    def odd(sample: Realisation) -> Real:
        strength = np.asarray(sample.factors["bolt-strength"])
        return np.where(strength > 1.3, np.nan, strength / 2.0)

    monkeypatch.setattr(estimate, "COVERED", (replace(FRAGILE, ratio=odd),))
    row = estimate.chance_of_exceedance(jacket, settings=quick).limits[0]
    assert 0 < row.unevaluated == row.exceeded
    assert row.reason == "the ratio is not a number"


def test_it_counts_as_exceeded_and_its_share_is_told(
    jacket: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch, repair_input: RepairInput
) -> None:
    monkeypatch.setattr(estimate, "COVERED", (FRAGILE,))
    result = estimate.chance_of_exceedance(jacket, settings=replace(quick, samples=512))
    row = result.limits[0]
    assert 0 < row.unevaluated < row.samples
    assert row.exceeded == row.unevaluated
    assert row.probability == row.exceeded / row.samples
    assert "at most 1.3" in row.reason
    assert not result.evaluated
    report = ChanceReport(repair_input.job, "file", "0" * 64, {"one": result}, (), "0")
    assert report.exit_code is ExitCode.NOT_EVALUATED


def test_what_never_can_be_evaluated_is_not_tried_on_every_sample(
    jacket: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(estimate, "COVERED", (replace(FRAGILE, ratio=never),))
    row = estimate.chance_of_exceedance(jacket, settings=quick).limits[0]
    assert row.unevaluated == row.samples == row.exceeded
    assert row.probability == 1.0
    assert row.reason == "nothing is known"
    assert row.first_order_index is None
