"""The repair as a whole against closed forms: limit states of each effort, variables by file."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import multivariate_normal, norm

from jacketcheck.chance import estimate
from jacketcheck.chance.evaluation import SectionSample
from jacketcheck.chance.limit import Limit
from jacketcheck.chance.realisation import Realisation
from jacketcheck.chance.result import ChanceResult, Settings
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket import Jacket
from jacketcheck.limit_state import Effort
from jacketcheck.mechanics._arrays import Real

VARIATION = 0.2
EFFORTS: dict[str, Effort] = {
    "bolt-shear": "closed-form",
    "bond-stress": "bond",
    "column-shear": "sections",
}
INDICES = {"bolt-shear": 1.2, "bond-stress": 0.9, "column-shear": 0.6}
PAIRS = (("bolt-shear", "bond-stress"), ("bond-stress", "column-shear"))


def strength(name: str) -> Limit:
    """A limit state that is exceeded where a lognormal strength lies below its median by beta."""
    deviation = np.sqrt(np.log1p(VARIATION**2))
    demand = float(np.exp(-0.5 * deviation**2 - INDICES[name] * deviation))

    def ratio(sample: Realisation) -> Real:
        return demand / np.asarray(sample.factors[name])

    return Limit(name, name, EFFORTS[name], "an event", (name,), ratio)


def estimated(
    pier: Jacket, settings: Settings, monkeypatch: pytest.MonkeyPatch, correlation: float
) -> ChanceResult:
    monkeypatch.setattr(estimate, "COVERED", tuple(strength(name) for name in EFFORTS))
    monkeypatch.setattr("jacketcheck.chance.section_counting.section_sample", without_analysis)
    variables = [
        {"name": name, "distribution": "lognormal", "mean_ratio": 1.0,
         "coefficient_of_variation": VARIATION}
        for name in EFFORTS
    ]  # fmt: skip
    correlations = [{"between": pair, "coefficient": correlation} for pair in PAIRS]
    written = Chance.model_validate({"variables": variables, "correlations": correlations})
    chosen = replace(settings, samples=65_536, bond_samples=8192, section_samples=2048)
    return estimate.chance_of_exceedance(pier, written=written, settings=chosen)


def without_analysis(jacket: Jacket, factors: dict[str, float]) -> SectionSample:
    """A section sample whose base is strained little."""
    return SectionSample(Realisation(jacket, factors), 1e-4, base_holds=True, tension_share=0.5)


@pytest.mark.parametrize("correlation", [0.0, 0.6])
def test_union_of_three_efforts(
    pier: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch, correlation: float
) -> None:
    result = estimated(pier, quick, monkeypatch, correlation)
    # lognormals: the correlation of their logarithms
    variance = np.log1p(VARIATION**2)
    normal = np.log1p(correlation * VARIATION**2) / variance
    matrix = np.array([[1.0, normal, 0.0], [normal, 1.0, normal], [0.0, normal, 1.0]])
    none = multivariate_normal(cov=matrix).cdf(np.array(list(INDICES.values())))
    system = result.system
    assert system.interval.low <= 1.0 - none <= system.interval.high
    assert system.probability == pytest.approx(1.0 - none, abs=0.025)
    both = multivariate_normal(cov=matrix[:2, :2]).cdf([1.2, 0.9])
    assert system.increments["closed-form"] == pytest.approx(norm.sf(1.2), abs=0.002)
    assert system.increments["bond"] == pytest.approx(norm.cdf(1.2) - both, abs=0.01)
    assert system.increments["sections"] == pytest.approx(both - none, abs=0.025)


def test_each_limit_state_and_its_index(
    pier: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    for row in estimated(pier, quick, monkeypatch, 0.0).limits:
        assert row.interval.low <= norm.sf(INDICES[row.id]) <= row.interval.high
        if row.id != "column-shear":
            assert row.first_order_index == pytest.approx(INDICES[row.id], abs=1e-4)
            assert row.drivers[0].importance == pytest.approx(1.0)
        expected = -norm.pdf(INDICES[row.id]) / norm.sf(INDICES[row.id])
        assert row.drivers[0].shift == pytest.approx(expected, abs=0.15)
