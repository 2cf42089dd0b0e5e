"""Strain of the base of a sample: a factor on its strength against one on its demand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.analysis.hinge import hinge
from jacketcheck.chance.base_strain import RESIDUAL
from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.events import events_of
from jacketcheck.chance.realisation import realise
from jacketcheck.chance.section_counting import Analysed, analysed, residual
from jacketcheck.chance.variables import random_variables
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket, build_jacket

BASE_MOMENT = events_of(load_host(installed=False), ["us"], only=["base-moment"]).asked


def test_weaker_base_is_strained_as_by_a_larger_moment(pier: Jacket) -> None:
    """Moment of the hinge raised by what the strength is lowered: the demand is in proportion."""
    model, means = model_at_means(pier), random_variables(pier).means()
    more = np.divide(means["hinge-moment"], 0.9)
    cases = [means, {**means, "section-strength": 0.9}, {**means, "hinge-moment": more}]
    usual, weaker, pushed = (analysed((), model, one, 1) for one in cases)
    assert weaker.strain[0] == pytest.approx(pushed.strain[0], rel=1e-9)
    assert weaker.share[0] == pytest.approx(pushed.share[0], rel=1e-9)
    assert weaker.strain[0] > usual.strain[0]
    # the demand that other limit states see stays as it is
    demands = [hinge(realise(pier, one)).base_moment for one in cases[:2]]
    assert demands[0] == demands[1]


def test_a_base_that_does_not_hold_exceeds_its_moment(pier: Jacket) -> None:
    """So that no sample is lost between the two."""
    model = model_at_means(pier)
    scattering = model.variables.scattering()
    points = 1.6 * np.random.default_rng(5).standard_normal((len(scattering.variables), 40))
    found = analysed(BASE_MOMENT, model, model.factors(scattering, points), 40)
    outcomes = set(
        zip(found.holds.tolist(), (found.ratios["base-moment"] > 1.0).tolist(), strict=True)
    )
    assert (False, False) not in outcomes
    assert {(False, True), (True, False)} <= outcomes


def test_residual_brings_the_fit_back_to_each_sample(pier_input: RepairInput) -> None:
    actions = pier_input.actions.model_copy(update={"axial_strain": None})
    jacket = build_jacket(pier_input.model_copy(update={"actions": actions}))
    start = model_at_means(jacket).strain
    generator = np.random.default_rng(6)
    factors = {"one": generator.lognormal(0.0, 0.1, 60), "axial-strain": np.ones(60)}
    strain = 0.001 * factors["one"] ** 1.2 * generator.lognormal(0.0, 0.1, 60)
    holds = np.arange(60) != 7
    found = Analysed({}, strain, holds, np.full(60, 0.5), np.ones(60))
    fit = start.refined(strain, holds, found.share, {"one": factors["one"]})
    assert fit.origin == "fitted"
    left = residual(fit, found, factors)
    checked = fit.checked({**factors, RESIDUAL: left})
    np.testing.assert_allclose(np.asarray(checked.found)[holds], strain[holds])
    assert left[7] == 1.0
    assert np.all(residual(replace(fit, origin="largest"), found, factors) == 1.0)
