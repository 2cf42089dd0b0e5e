"""What holds for any distribution, margin and count."""

from __future__ import annotations

from typing import get_args

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from jacketcheck.chance.dependence import Dependence
from jacketcheck.chance.distributions import LARGEST_VARIATION, Distribution, Marginal
from jacketcheck.chance.form import design_point
from jacketcheck.chance.influence import rank_correlations, tail_shifts
from jacketcheck.chance.intervals import Interval, binomial_interval, replicate_interval
from jacketcheck.chance.points import REPLICATES, Method, replicate_size, standard_normal_points
from jacketcheck.render.chance_numbers import interval_text, probability_text

kinds = st.sampled_from(list(LARGEST_VARIATION))
shares = st.floats(0.0, 1.0)


@st.composite
def marginals(draw: st.DrawFn, least: float = 0.0) -> Marginal:
    kind: Distribution = draw(kinds)
    variation = draw(st.floats(least, LARGEST_VARIATION[kind]))
    return Marginal(kind, draw(st.floats(0.1, 1000.0)), variation)


@given(marginals(least=0.01), st.floats(-6.0, 6.0), st.floats(0.01, 1.0))
def test_value_grows_with_its_normal(one: Marginal, z: float, step: float) -> None:
    low, high = one.at(np.array([z, z + step]))
    assert low < high


@given(marginals())
def test_no_scatter_no_change(one: Marginal) -> None:
    fixed = Marginal(one.distribution, one.mean, 0.0)
    np.testing.assert_allclose(fixed.at(np.array([-3.0, 0.0, 4.0])), one.mean, rtol=1e-12)


@given(st.floats(0.3, 0.95), st.floats(0.02, 0.25), st.floats(0.02, 0.25), st.floats(1.05, 3.0))
def test_more_scatter_never_lowers_the_probability(
    ratio: float, strength: float, load: float, more: float
) -> None:
    """Linear margin of normal variables whose mean load lies below the mean strength."""

    def index(factor: float) -> float:
        found = design_point(
            lambda u: 1.0 + strength * factor * u[0] - ratio * (1.0 + load * factor * u[1]), 2
        )
        return 99.0 if found is None else found.index

    assert index(more) <= index(1.0) + 1e-6


@given(st.integers(0, 400), st.integers(1, 400), st.floats(0.5, 0.999))
def test_binomial_interval_holds_the_share(exceeded: int, total: int, confidence: float) -> None:
    exceeded = min(exceeded, total)
    low, high = binomial_interval(exceeded, total, confidence=confidence)
    assert 0.0 <= low <= exceeded / total <= high <= 1.0
    wider = binomial_interval(exceeded, total, confidence=0.9999)
    assert wider.low <= low
    assert high <= wider.high


@given(st.lists(shares, min_size=2, max_size=32), st.integers(1, 10_000))
def test_replicate_interval_holds_the_mean(found: list[float], size: int) -> None:
    counts = np.round(np.array(found) * size) / size
    low, high = replicate_interval(counts, size=size)
    assert 0.0 <= low <= counts.mean() + 1e-12
    assert counts.mean() - 1e-12 <= high <= 1.0


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_printed_interval_is_never_narrower(one: float, other: float) -> None:
    low, high = sorted((one, other))
    first, second = interval_text(Interval(low, high)).split(" to ")
    assert float(first.removeprefix("> ")) <= low + 1e-15
    assert second.startswith(">") or float(second) >= high - 1e-15


@given(st.floats(0.0, 1.0))
def test_a_printed_probability_is_zero_or_one_only_if_it_is(value: float) -> None:
    text = probability_text(value)
    assert (text == "0") == (value == 0.0)
    assert (text == "1") == (value == 1.0)


@given(st.lists(st.floats(-0.45, 0.45), min_size=3, max_size=3))
def test_importance_is_shared_out(coefficients: list[float]) -> None:
    one = Marginal("lognormal", 1.0, 0.1)
    pairs = dict(zip([(0, 1), (0, 2), (1, 2)], coefficients, strict=True))
    dependence = Dependence.of([one] * 3, pairs)
    share = dependence.importance(np.array([0.6, -0.8, 0.0]))
    assert np.all(share >= 0.0)
    np.testing.assert_allclose(share.sum(), 1.0)


@given(st.integers(1, 5), st.integers(1, 300), st.sampled_from(get_args(Method)))
def test_points_are_as_many_as_asked_for(variables: int, samples: int, method: Method) -> None:
    points = standard_normal_points(variables, samples=samples, method=method, seed=1)
    found = [part.copy() for part in points]
    size = replicate_size(samples, method)
    assert len(found) == REPLICATES
    assert all(part.shape == (variables, size) for part in found)
    assert size * REPLICATES >= samples
    assert np.all(np.isfinite(np.hstack(found)))


@given(st.integers(0, 2**32))
def test_ranks_do_not_depend_on_the_scale(seed: int) -> None:
    generator = np.random.default_rng(seed)
    values, response = generator.normal(size=(3, 40)), generator.normal(size=40)
    found = rank_correlations(values, response)
    np.testing.assert_allclose(
        rank_correlations(np.exp(values), 7.0 * response**3), found, atol=1e-12
    )
    assert np.all(np.abs(found) <= 1.0 + 1e-12)


@given(st.integers(0, 2**32), st.floats(0.0, 1.0), st.integers(0, 30))
def test_shifts_do_not_depend_on_the_scale(seed: int, probability: float, tied: int) -> None:
    generator = np.random.default_rng(seed)
    values, response = generator.normal(size=(3, 40)), generator.normal(size=40)
    response[:tied] = 1.0
    found = tail_shifts(values, response, probability=probability)
    scaled = tail_shifts(np.exp(values), 7.0 * response**3, probability=probability)
    np.testing.assert_allclose(scaled.shifts, found.shifts, atol=1e-12)
    # the other way round: what is strength is load
    opposite = tail_shifts(-values, response, probability=probability)
    np.testing.assert_allclose(opposite.shifts, -found.shifts, atol=1e-12)
    assert np.all(np.abs(found.shifts) < 3.0)
