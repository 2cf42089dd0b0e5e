"""What the built-in limit states declare, and their ratios between actual values."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pytest

from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.evaluation import Evaluation
from jacketcheck.chance.events import events_of
from jacketcheck.chance.realisation import one_sample
from jacketcheck.chance.variables import NAMES
from jacketcheck.engine import evaluate
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.limit_state import Scatter
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind

HOST = load_host(installed=False)
EVENTS = events_of(HOST, ["us"])
BY_ID = {event.id: event for event in EVENTS.asked}
ONES: dict[str, Real] = dict.fromkeys(NAMES, 1.0)
# resistance factors of AISC 360-22 J3.7, J3.11, J4.1, J4.3; AASHTO LRFD 5.5.4.2 for shear; ACI
# 318-19 6.6.4.5.2 for stability
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
    "grout-interface": 0.90,
    "added-bar-lap": 0.90,
    "added-bar-development": 1.0,
    "bar-length": 1.0,
    "column-stability": 0.75,
}


def ratio_of(name: str, sample: Jacket) -> float:
    [ratio] = Evaluation(HOST).ratios([BY_ID[name]], sample, ONES, size=1)[name]
    return float(ratio)


def test_every_built_in_limit_state_declares_its_scatter() -> None:
    undeclared = [
        one.limit_state.id for one in HOST.limit_states("us") if one.limit_state.scatter is None
    ]
    assert undeclared == []
    assert all(event.declared for event in EVENTS.asked)
    built_in = {one.limit_state.id for one in HOST.limit_states("us")}
    assert set(BY_ID) | set(EVENTS.without) == built_in
    assert not set(BY_ID) & set(EVENTS.without)
    assert {event.model for event in EVENTS.asked} - {""} <= set(NAMES)


@pytest.mark.parametrize("name", BY_ID)
def test_the_rules_that_count_are_there(name: str, pier_input: RepairInput) -> None:
    """Each key that is declared is that of a limit of the limit state, in one jacket or another."""
    added = pier_input.added_bars
    assert added is not None
    loose = {"breakout_precluded": False, "anchor_reinforcement": None}
    glued = added.model_copy(update={"bond_strength": 10.0, **loose})
    jackets = [pier_input, pier_input.model_copy(update={"added_bars": glued})]
    keys = {
        row.rule
        for one in jackets
        for row in evaluate(build_jacket(one), host=HOST, only=[name])
        if row.kind is Kind.LIMIT
    }
    assert set(BY_ID[name].rules) <= keys


def test_capacities_hold_the_factors_that_their_rows_tell(pier: Jacket) -> None:
    """What is read by key has a key, and no row tells a factor that is none."""
    for row in evaluate(pier, host=HOST):
        assert 0.5 <= float(np.max(row.resistance_factor)) <= 1.0, row.title
        assert float(np.max(row.bias)) >= 1.0, row.title
        expected = np.divide(row.capacity, row.resistance_factor)
        np.testing.assert_allclose(row.nominal_capacity, expected)


@pytest.mark.parametrize("name", RESISTANCE_FACTORS)
def test_ratio_with_specified_values_is_that_of_the_code_without_its_factor(
    name: str, as_specified: Jacket
) -> None:
    """Every factor at 1: what is left between the two is the resistance factor."""
    rows = [
        row
        for row in evaluate(as_specified, host=HOST, only=[name])
        if row.kind is Kind.LIMIT and (not BY_ID[name].rules or row.rule in BY_ID[name].rules)
    ]
    worst = max(float(np.max(row.ratio)) for row in rows)
    assert ratio_of(name, as_specified) == pytest.approx(worst * RESISTANCE_FACTORS[name])


@pytest.mark.parametrize("hole", ["standard", "oversized", "short-slot-parallel"])
def test_slip_counts_no_code_factor(pier_input: RepairInput, hole: str) -> None:
    """Force over friction of the minimum pretension, by both codes the same: no phi and no D_u."""
    bolts = pier_input.bolts.model_copy(update={"hole": hole})
    jacket = build_jacket(pier_input.model_copy(update={"bolts": bolts}))
    rows = [
        row
        for row in evaluate(jacket, host=HOST, only=["seam-slip"])
        if row.rule in {"aisc-slip", "aashto-slip"}
    ]
    friction = jacket.bolts.faying_classes[0].slip_coefficient * jacket.bolts.pretension * 2.0
    # AASHTO LRFD Table 6.13.2.8-2; EN 1993-1-8:2005 Table 3.6 for the slot, which is lower
    share = {"standard": 1.0, "oversized": 0.85, "short-slot-parallel": 0.76}[hole]
    for row in rows:
        expected = np.divide(row.demand, share * friction)
        assert row.ratio_between_actual_values == pytest.approx(float(expected), rel=1e-9)
    assert len(rows) == 2


@pytest.mark.parametrize("name", [name for name, one in BY_ID.items() if one.effort != "sections"])
def test_ratios_of_many_samples_are_those_of_each(name: str, pier: Jacket) -> None:
    model = model_at_means(pier)
    scattering = model.variables.scattering()
    points = np.random.default_rng(4).standard_normal((len(scattering.variables), 5))
    factors = model.factors(scattering, points)

    def ratios(these: Mapping[str, Real], size: int) -> Floats:
        return model.cheap_ratios([BY_ID[name]], these, size=size)[name]

    together = ratios(factors, 5)
    alone = np.concatenate([ratios(one_sample(factors, index), 1) for index in range(5)])
    assert not model.evaluation.failures
    np.testing.assert_allclose(together, alone, rtol=1e-6)


def test_every_declaration_tells_an_event() -> None:
    for one in HOST.limit_states("us"):
        said = one.limit_state.scatter
        text = said.event if isinstance(said, Scatter) else getattr(said, "reason", "")
        assert len(text) > 10, one.limit_state.id
