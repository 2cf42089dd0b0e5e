"""The repair as a whole against closed forms: limit states of each effort, variables by file."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from scipy.stats import multivariate_normal, norm

from jacketcheck.chance import chance_of_exceedance, section_counting
from jacketcheck.chance.result import ChanceResult, Settings
from jacketcheck.host import Host
from jacketcheck.inputs.chance import Chance
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import design_count, has_designs
from jacketcheck.limit_state import Effort, LimitState, Scatter
from jacketcheck.results import Result

HostOf = Callable[..., Host]
VARIATION = 0.2
EFFORTS: dict[str, Effort] = {
    "bolt-shear": "closed-form",
    "bond-stress": "bond",
    "column-shear": "sections",
}
INDICES = {"bolt-shear": 1.2, "bond-stress": 0.9, "column-shear": 0.6}
PAIRS = (("bolt-shear", "bond-stress"), ("bond-stress", "column-shear"))


def strength(name: str) -> LimitState:
    """A limit state that is exceeded where a lognormal strength lies below its median by beta."""
    deviation = np.sqrt(np.log1p(VARIATION**2))
    demand = float(np.exp(-0.5 * deviation**2 - INDICES[name] * deviation))

    def rows(jacket: Jacket) -> list[Result]:
        one = np.ones(design_count(jacket)) if has_designs(jacket) else 1.0
        return [Result(name, "", demand * one, 1.0, "1", "a clause")]

    scatter = Scatter("an event of its own", model=name)
    return LimitState(name, name, "alone", rows, effort=EFFORTS[name], scatter=scatter)


def estimated(
    pier: Jacket,
    settings: Settings,
    monkeypatch: pytest.MonkeyPatch,
    host_of: HostOf,
    correlation: float,
) -> ChanceResult:
    monkeypatch.setattr("jacketcheck.chance.section_counting.for_each_design", without_analysis)
    variables = [
        {"name": name, "distribution": "lognormal", "mean_ratio": 1.0,
         "coefficient_of_variation": VARIATION}
        for name in EFFORTS
    ]  # fmt: skip
    correlations = [{"between": pair, "coefficient": correlation} for pair in PAIRS]
    written = Chance.model_validate({"variables": variables, "correlations": correlations})
    chosen = replace(settings, samples=65_536, bond_samples=8192, section_samples=2048)
    host = host_of(*(strength(name) for name in EFFORTS))
    return chance_of_exceedance(
        pier, written=written, settings=chosen, host=host, provisions=["alone"]
    )


def without_analysis(analysis: object, designs: Jacket, count: int) -> list[object]:
    """Samples whose base is strained little, and in which no variable moves an analysis."""
    del designs
    if analysis is not section_counting._base:
        return [1.0] * count
    return [SimpleNamespace(strain=1e-4, holds=True, share=0.5, shear=1e5)] * count


@pytest.mark.parametrize("correlation", [0.0, 0.6])
def test_union_of_three_efforts(
    pier: Jacket,
    quick: Settings,
    monkeypatch: pytest.MonkeyPatch,
    host_of: HostOf,
    correlation: float,
) -> None:
    result = estimated(pier, quick, monkeypatch, host_of, correlation)
    # lognormals: the correlation of their logarithms
    variance = np.log1p(VARIATION**2)
    normal = np.log1p(correlation * VARIATION**2) / variance
    matrix = np.array([[1.0, normal, 0.0], [normal, 1.0, normal], [0.0, normal, 1.0]])
    none = multivariate_normal(cov=matrix).cdf(np.array(list(INDICES.values())))
    system = result.system
    # 99.9 % instead of 95 %: of some comparisons none should miss by chance
    low, high = system.interval
    slack = 0.35 * (high - low)
    assert low - slack <= 1.0 - none <= high + slack
    assert system.probability == pytest.approx(1.0 - none, abs=0.025)
    both = multivariate_normal(cov=matrix[:2, :2]).cdf([1.2, 0.9])
    assert system.increments["closed-form"] == pytest.approx(norm.sf(1.2), abs=0.002)
    assert system.increments["bond"] == pytest.approx(norm.cdf(1.2) - both, abs=0.01)
    assert system.increments["sections"] == pytest.approx(both - none, abs=0.025)


def test_each_limit_state_and_its_index(
    pier: Jacket, quick: Settings, monkeypatch: pytest.MonkeyPatch, host_of: HostOf
) -> None:
    for row in estimated(pier, quick, monkeypatch, host_of, 0.0).limits:
        assert row.interval.low <= norm.sf(INDICES[row.id]) <= row.interval.high
        if row.id != "column-shear":
            assert row.first_order_index == pytest.approx(INDICES[row.id], abs=1e-4)
            assert row.drivers[0].importance == pytest.approx(1.0)
        expected = -norm.pdf(INDICES[row.id]) / norm.sf(INDICES[row.id])
        assert row.drivers[0].shift == pytest.approx(expected, abs=0.15)
