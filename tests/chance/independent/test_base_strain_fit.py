"""The fitted strain of the base against section analyses of other samples."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from jacketcheck.chance.base_strain import RESIDUAL, BaseStrain
from jacketcheck.chance.estimate import model_at_means
from jacketcheck.chance.events import events_of
from jacketcheck.chance.section_counting import analysed, count_by_sections
from jacketcheck.host.loading import load_host
from jacketcheck.inputs import RepairInput
from jacketcheck.jacket import build_jacket

SECTIONS = events_of(load_host(installed=False), ["us"], only=["base-moment"]).asked


def test_power_law_is_found_again() -> None:
    """Strain made up of powers of factors and a known scatter."""
    generator = np.random.default_rng(1)
    factors = {"one": generator.lognormal(0.0, 0.1, 400), "two": generator.lognormal(0.0, 0.2, 400)}
    noise = generator.normal(0.0, 0.05, 400)
    found = 0.002 * factors["one"] ** 1.5 * factors["two"] ** -0.4 * np.exp(noise)
    holds = np.ones(400, dtype=bool)
    fit = BaseStrain.at_means(None, 0.002, 0.5).refined(found, holds, np.full(400, 0.6), factors)
    assert fit.origin == "fitted"
    assert fit.exponents["one"] == pytest.approx(1.5, abs=0.1)
    assert fit.exponents["two"] == pytest.approx(-0.4, abs=0.05)
    assert fit.scatter == pytest.approx(0.05, rel=0.15)
    assert fit.found == pytest.approx(0.002, rel=0.01)
    assert fit.tension_share == 0.6
    assert fit.residual.marginal.log_deviation == pytest.approx(fit.scatter)
    checked = fit.checked({"one": 1.1, "two": 0.9, RESIDUAL: 1.0, "axial-strain": 2.0})
    power = 1.1 ** fit.exponents["one"] * 0.9 ** fit.exponents["two"]
    assert checked.value == pytest.approx(2.0 * fit.found * power)


def test_samples_whose_base_does_not_hold_are_left_out() -> None:
    found = np.full(60, 0.002)
    found[:10] = 0.05
    holds = found < 0.01
    fit = BaseStrain.at_means(None, 0.002, 0.3).refined(
        found, holds, np.where(holds, 0.4, 1.0), {"one": np.linspace(0.9, 1.1, 60)}
    )
    assert fit.found == pytest.approx(0.002)
    assert fit.tension_share == 0.4


def test_declared_strain_that_leads() -> None:
    start = BaseStrain.at_means(0.003, 0.001, 0.3)
    assert start.origin == "declared"
    found, share, factors = np.full(60, 0.0012), np.full(60, 0.5), {"one": np.ones(60)}
    assert start.refined(found, np.ones(60, dtype=bool), share, factors).origin == "declared"
    found[7] = 0.0029
    assert start.refined(found, np.ones(60, dtype=bool), share, factors).origin == "fitted"


def test_of_too_few_samples_the_largest_counts() -> None:
    start = BaseStrain.at_means(None, 0.001, 0.3)
    assert start.origin == "frozen"
    found = np.array([0.0010, 0.0014, 0.0012, 0.02, 0.0011])
    fit = start.refined(found, found < 0.01, np.full(5, 0.2), {"one": np.ones(5)})
    assert (fit.origin, fit.found, fit.tension_share) == ("largest", 0.0014, 0.3)
    none_holds = start.refined(found, np.zeros(5, dtype=bool), found, {"one": np.ones(5)})
    assert none_holds == start


def test_fit_predicts_other_samples(pier_input: RepairInput) -> None:
    """No declared strain: the fit to 64 samples against 12 others, by section analysis."""
    actions = pier_input.actions.model_copy(update={"axial_strain": None})
    jacket = build_jacket(pier_input.model_copy(update={"actions": actions}))
    start = model_at_means(jacket)
    model = replace(start, settings=replace(start.settings, section_samples=64))
    _, strain = count_by_sections(SECTIONS, model)
    assert strain.origin == "fitted"
    scattering = model.variables.scattering()
    points = np.random.default_rng(2).standard_normal((len(scattering.variables), 12))
    factors = model.factors(scattering, points)
    found = analysed((), model, factors, 12)
    holds, exact = found.holds, found.strain[found.holds]
    fitted = np.asarray(strain.checked({**factors, "axial-strain": 1.0}).value)[holds]
    assert holds.sum() >= 6
    error = np.log(fitted / exact)
    assert np.sqrt(np.mean(error**2)) < 3.0 * max(strain.scatter, 0.02)
