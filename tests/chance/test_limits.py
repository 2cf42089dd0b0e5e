"""Limit states with a probability: all of the built-in ones, or a reason; and their ratios."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pytest

from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.evaluation import array_ratios
from jacketcheck.chance.limits import COVERED, WITHOUT_PROBABILITY
from jacketcheck.chance.realisation import Realisation, one_sample
from jacketcheck.engine import evaluate
from jacketcheck.host.loading import load_host
from jacketcheck.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind

BY_ID = {limit.id: limit for limit in COVERED}
# resistance factors of AISC 360-22 J3.7, J3.11, J4.1, J4.3; ACI 318-19 21.2.1 for shear
RESISTANCE_FACTORS = {
    "hoop-dilation": 0.90,
    "hoop-clamping": 0.90,
    "clamping": 1.0,
    "seam-bolt-shear": 0.75,
    "sleeve-bearing": 0.75,
    "splice-bearing": 0.75,
    "seam-bolt-row": 0.75,
    "sleeve-net-rupture": 0.75,
    "splice-gross-yield": 0.90,
    "splice-net-rupture": 0.75,
    "seam-block-shear": 0.75,
    "grout-interface": 0.75,
    "added-bar-lap": 0.90,
    "added-bar-development": 1.0,
    "bar-length": 1.0,
}


def test_every_built_in_limit_state_is_covered_or_has_a_reason() -> None:
    built_in = {one.limit_state.id for one in load_host(installed=False).limit_states("us")}
    assert set(BY_ID) | set(WITHOUT_PROBABILITY) == built_in
    assert not set(BY_ID) & set(WITHOUT_PROBABILITY)
    assert all(reason.strip() for reason in WITHOUT_PROBABILITY.values())
    assert len(BY_ID) == len(COVERED)


@pytest.mark.parametrize("name", BY_ID)
def test_effort_is_not_less_than_the_limit_state_says(name: str) -> None:
    order = ("closed-form", "bond", "sections")
    declared = {
        one.limit_state.id: one.limit_state.effort
        for one in load_host(installed=False).limit_states("us")
    }
    assert order.index(BY_ID[name].effort) >= order.index(declared[name])


@pytest.mark.parametrize("name", RESISTANCE_FACTORS)
def test_ratio_with_specified_values_is_that_of_the_code_without_its_factor(
    name: str, as_specified: Realisation
) -> None:
    """Every factor at 1: what is left between the two is the resistance factor."""
    host = load_host(installed=False)
    rows = [
        row
        for row in evaluate(as_specified.jacket, host=host, only=[name])
        if row.kind is Kind.LIMIT and "AASHTO LRFD" not in row.clause.split(";")[0]
    ]
    worst = max(float(np.max(row.ratio)) for row in rows)
    assert BY_ID[name].ratio(as_specified) == pytest.approx(worst * RESISTANCE_FACTORS[name])


def test_slip_counts_no_code_factor(as_specified: Realisation) -> None:
    """Force over friction of the minimum pretension, by AASHTO's nominal resistance."""
    rows = evaluate(as_specified.jacket, host=load_host(installed=False), only=["seam-slip"])
    aashto = next(row for row in rows if row.clause.startswith("AASHTO"))
    assert BY_ID["seam-slip"].ratio(as_specified) == pytest.approx(float(aashto.ratio))


@pytest.mark.parametrize("name", [name for name, one in BY_ID.items() if one.effort != "sections"])
def test_ratios_of_many_samples_are_those_of_each(name: str, pier: Jacket) -> None:
    limit = BY_ID[name]
    model = model_at_means(pier)
    scattering = model.scattering([limit])
    points = np.random.default_rng(4).standard_normal((len(scattering.variables), 5))
    factors = model.factors(scattering, points)
    failures: dict[str, str] = {}

    def ratios(these: Mapping[str, Real], size: int) -> Floats:
        strain = model.strain
        found = array_ratios([limit], pier, these, size=size, strain=strain, failures=failures)
        return found[name]

    together = ratios(factors, 5)
    alone = np.concatenate([ratios(one_sample(factors, index), 1) for index in range(5)])
    assert not failures
    np.testing.assert_allclose(together, alone, rtol=1e-6)
