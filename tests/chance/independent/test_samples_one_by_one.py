"""Failure by the study against the limit states evaluated one by one, on samples drawn at random.

The study evaluates many samples at once. Here each sample is a jacket of its own, checked as any
design is, and what its rows say is put together by hand.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
import pytest

from jacketcheck.analysis.lap import tension_share
from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.events import Event, events_of
from jacketcheck.chance.model import Model
from jacketcheck.chance.realisation import one_sample, realise
from jacketcheck.chance.section_counting import analysed
from jacketcheck.engine import evaluate
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket, build_jacket
from jacketcheck.mechanics._arrays import Floats, Real
from jacketcheck.results import Kind

HOST = load_host(installed=False)
EVENTS = events_of(HOST, ["us"]).asked
CLOSED = [event for event in EVENTS if event.effort == "closed-form"]
CHEAP = [event for event in EVENTS if event.effort != "sections"]
DEAR = [event for event in EVENTS if event.effort == "sections"]
CHANGES: dict[str, dict[str, dict[str, Any]]] = {
    "as written": {},
    "thin sleeve": {"sleeve": {"thickness": 5.0}},
    "strained more": {"actions": {"axial_strain": 0.006}},
    "up to yield of the bars": {"judgement": {"bar_target": "yield"}},
    "one bolt column": {"bolts": {"columns": 1}},
    "plates outside only": {"splice": {"sides": "outside", "inside_thickness": None}},
    "strong grout": {"grout": {"strength": 98.0}},
    "glued bars": {"added_bars": {"bond_strength": 20.0, "breakout_precluded": False}},
    "snug bolts": {"bolts": {"tightening": "snug"}},
}


def changed(pier_input: RepairInput, case: str) -> Jacket:
    tables = {
        name: getattr(pier_input, name).model_copy(update=fields)
        for name, fields in CHANGES[case].items()
    }
    return build_jacket(pier_input.model_copy(update=tables))


def drawn(model: Model, count: int, spread: float) -> dict[str, Real]:
    scattering = model.variables.scattering()
    points = np.random.default_rng(8).standard_normal((len(scattering.variables), count))
    return model.factors(scattering, spread * points)


def of_model(event: Event, rule: str) -> bool:
    return not event.model_rules or rule in event.model_rules


def by_hand(events: Sequence[Event], sample: Jacket, factors: dict[str, float]) -> list[float]:
    """Largest ratio of each event: demand over capacity, by factor, bias and model taken out."""
    rows = evaluate(sample, host=HOST, only=[event.limit_state for event in events])
    found = []
    for event in events:
        ratios = [
            float(row.demand)
            / (float(row.capacity) / float(row.resistance_factor) / float(row.bias))
            / (factors[event.model] if event.model and of_model(event, row.rule) else 1.0)
            if float(row.capacity) > 0.0
            else np.inf
            for row in rows
            if row.limit_state == event.limit_state
            and row.kind is Kind.LIMIT
            and (not event.rules or row.rule in event.rules)
        ]
        found.append(max(ratios, default=np.nan))
    return found


def compared(study: dict[str, Floats], hand: Floats, events: Sequence[Event]) -> None:
    for row, event in enumerate(events):
        ratio = study[event.id]
        np.testing.assert_array_equal(np.isnan(ratio), np.isnan(hand[row]), err_msg=event.id)
        # at a ratio of 1 but for rounding either answer is right
        clear = ~np.isnan(ratio) & (np.abs(ratio - 1.0) > 1e-6)
        expected = hand[row] > 1.0
        np.testing.assert_array_equal((ratio > 1.0)[clear], expected[clear], err_msg=event.id)
        finite = np.isfinite(ratio) & np.isfinite(hand[row])
        np.testing.assert_allclose(ratio[finite], hand[row][finite], rtol=1e-5, err_msg=event.id)


def same(pier_input: RepairInput, case: str, events: Sequence[Event], *, samples: int) -> None:
    """What needs no section analysis, given the strain that the study takes for each sample."""
    jacket = changed(pier_input, case)
    model = model_at_means(jacket)
    factors = drawn(model, samples, 1.5)
    study = model.cheap_ratios(events, factors, size=samples)
    hand = np.empty((len(events), samples))
    for index in range(samples):
        one = one_sample(factors, index)
        sample = model.strain.given_to(realise(jacket, one), one)
        hand[:, index] = by_hand(events, sample, one)
    compared(study, hand, events)
    known = hand[~np.isnan(hand).all(axis=1)]
    assert np.any(known > 1.0), "no comparison of zeros"


@pytest.mark.parametrize("case", CHANGES)
def test_same_samples_exceed(pier_input: RepairInput, case: str) -> None:
    same(pier_input, case, CLOSED, samples=120)


@pytest.mark.parametrize("case", ["as written", "thin sleeve", "strong grout"])
def test_same_samples_exceed_with_bond(pier_input: RepairInput, case: str) -> None:
    same(pier_input, case, CHEAP, samples=15)


@pytest.mark.parametrize("case", ["as written", "strong grout"])
def test_same_samples_exceed_with_sections(pier_input: RepairInput, case: str) -> None:
    """What needs section analyses: nothing is given, each sample finds its own strain."""
    jacket = changed(pier_input, case)
    model = model_at_means(jacket)
    factors = drawn(model, 12, 1.3)
    study = analysed(DEAR, model, factors, 12)
    hand = np.empty((len(DEAR), 12))
    shares = []
    for index in range(12):
        one = one_sample(factors, index)
        sample = realise(jacket, one)
        hand[:, index] = by_hand(DEAR, sample, one)
        shares.append(float(tension_share(sample)))
    compared(study.ratios, hand, DEAR)
    assert study.share.tolist() == shares
