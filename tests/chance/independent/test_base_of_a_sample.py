"""Strain of the base of a sample: a factor on its strength against one on its demand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.analysis.hinge import hinge
from jacketcheck.chance.base_strain import RESIDUAL
from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.evaluation import section_sample, single_ratios
from jacketcheck.chance.limits import COVERED
from jacketcheck.chance.realisation import one_sample
from jacketcheck.chance.section_counting import _Analysed, _residual
from jacketcheck.chance.variables import random_variables
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import Jacket, build_jacket

BASE_MOMENT = [limit for limit in COVERED if limit.id == "base-moment"]


def test_weaker_base_is_strained_as_by_a_larger_moment(pier: Jacket) -> None:
    """Moment of the hinge raised by what the strength is lowered: the demand is in proportion."""
    means = random_variables(pier).means()
    weaker = section_sample(pier, {**means, "section-strength": 0.9})
    more = section_sample(pier, {**means, "hinge-moment": np.divide(means["hinge-moment"], 0.9)})
    assert weaker.base_strain == pytest.approx(more.base_strain, rel=1e-9)
    assert weaker.tension_share == more.tension_share
    usual = section_sample(pier, means)
    assert weaker.base_strain > usual.base_strain
    # the demand that other limit states see stays as it is
    demands = [hinge(one.realisation.jacket).base_moment for one in (weaker, usual)]
    assert demands[0] == demands[1]


def test_a_base_that_does_not_hold_exceeds_its_moment(pier: Jacket) -> None:
    """So that no sample is lost between the two."""
    model = model_at_means(pier)
    scattering = model.scattering(BASE_MOMENT)
    points = 1.6 * np.random.default_rng(5).standard_normal((len(scattering.variables), 40))
    factors = model.factors(scattering, points)
    outcomes = []
    for index in range(40):
        sample = section_sample(pier, one_sample(factors, index))
        ratio = single_ratios(BASE_MOMENT, sample.realisation, failures={})["base-moment"]
        outcomes.append((sample.base_holds, ratio > 1.0))
    assert (False, False) not in outcomes
    assert (False, True) in outcomes
    assert (True, False) in outcomes


def test_residual_brings_the_fit_back_to_each_sample(pier_input: RepairInput) -> None:
    actions = pier_input.actions.model_copy(update={"axial_strain": None})
    jacket = build_jacket(pier_input.model_copy(update={"actions": actions}))
    start = model_at_means(jacket).strain
    generator = np.random.default_rng(6)
    factors = {"one": generator.lognormal(0.0, 0.1, 60), "axial-strain": np.ones(60)}
    strain = 0.001 * factors["one"] ** 1.2 * generator.lognormal(0.0, 0.1, 60)
    holds = np.arange(60) != 7
    found = _Analysed({}, strain, holds, np.full(60, 0.5))
    fit = start.refined(strain, holds, found.share, {"one": factors["one"]})
    assert fit.origin == "fitted"
    residual = _residual(fit, found, factors)
    checked = fit.checked({**factors, RESIDUAL: residual})
    np.testing.assert_allclose(np.asarray(checked.found)[holds], strain[holds])
    assert residual[7] == 1.0
    assert np.all(_residual(replace(fit, origin="largest"), found, factors) == 1.0)
