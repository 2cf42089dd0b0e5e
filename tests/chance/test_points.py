"""How points are drawn: balanced, reproducible, and with no correlation that nobody asked for."""

from __future__ import annotations

import numpy as np
import pytest

from jacketcheck.chance.points import Method, drawn_by, standard_normal_points
from jacketcheck.mechanics._arrays import Floats


def drawn(
    variables: int, samples: int, method: Method, *, seed: int = 1, stream: int = 0
) -> Floats:
    points = standard_normal_points(
        variables, samples=samples, method=method, seed=seed, stream=stream
    )
    return np.hstack([part.copy() for part in points])


@pytest.mark.parametrize("samples", [256, 2048, 4096])
@pytest.mark.parametrize("seed", range(5))
def test_no_pair_of_thirty_variables_is_correlated(samples: int, seed: int) -> None:
    """Of 435 pairs of independent columns none passes four standard errors but once in 36 times;
    a Sobol sequence of sixteen points gives 0.3 to 0.5 in 256 samples."""
    correlation = np.corrcoef(drawn(30, samples, "sobol", seed=seed)) - np.eye(30)
    assert np.max(np.abs(correlation)) < 5.0 / np.sqrt(samples)


def test_few_samples_come_from_a_latin_hypercube() -> None:
    assert drawn_by(2048, "sobol") == "latin-hypercube"
    assert drawn_by(2049, "sobol") == "sobol"
    assert drawn_by(100, "random") == "random"
    np.testing.assert_array_equal(drawn(3, 64, "sobol"), drawn(3, 64, "latin-hypercube"))


@pytest.mark.parametrize("method", ["sobol", "latin-hypercube", "random"])
def test_seed_and_stream(method: Method) -> None:
    points = drawn(3, 4096, method)
    np.testing.assert_array_equal(points, drawn(3, 4096, method))
    assert not np.array_equal(points, drawn(3, 4096, method, seed=2))
    assert not np.array_equal(points, drawn(3, 4096, method, stream=1))
    np.testing.assert_allclose(points.mean(axis=1), 0.0, atol=0.08)
    np.testing.assert_allclose(points.std(axis=1), 1.0, atol=0.05)
