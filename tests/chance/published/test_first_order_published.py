"""Reliability indices that textbooks and program manuals print."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
import pytest

from jacketcheck.chance.dependence import Dependence
from jacketcheck.chance.distributions import Distribution, Marginal
from jacketcheck.chance.form import DesignPoint, design_point
from jacketcheck.mechanics._arrays import Floats

Margin = Callable[[Sequence[Floats]], Floats]
Case = tuple[list[Marginal], Margin, dict[tuple[int, int], float]]


def of(kind: Distribution, mean: float, deviation: float) -> Marginal:
    return Marginal(kind, mean, deviation / mean)


def solved(
    marginals: Sequence[Marginal],
    margin: Margin,
    correlations: dict[tuple[int, int], float] | None = None,
) -> tuple[DesignPoint, Dependence]:
    dependence = Dependence.of(marginals, correlations or {})

    def of_normals(points: Floats) -> Floats:
        rows = dependence.correlated(points)
        return margin([one.at(row) for one, row in zip(marginals, rows, strict=True)])

    found = design_point(of_normals, len(marginals))
    assert found is not None
    return found, dependence


# CALREL user manual (Liu, Lin and Der Kiureghian, UCB/SEMM-89/18), example 2: two lognormal
# variables and a uniform one, all correlated.
CALREL: Case = (
    [of("lognormal", 500.0, 100.0), of("lognormal", 2000.0, 400.0), of("uniform", 5.0, 0.5)],
    lambda x: 1.0 - x[1] / (1000.0 * x[2]) - (x[0] / (200.0 * x[2])) ** 2,
    {(0, 1): 0.3, (0, 2): 0.2, (1, 2): 0.2},
)
# Der Kiureghian, Lin and Hwang, J. Eng. Mech. 113(8) (1987), 1208-1225: plastic mechanism of a
# frame, independent lognormal moments and loads (index from memory).
MECHANISM: Case = (
    [of("lognormal", 120.0, 12.0)] * 4 + [of("lognormal", 50.0, 15.0), of("lognormal", 40.0, 12.0)],
    lambda x: x[0] + 2.0 * x[1] + 2.0 * x[2] + x[3] - 5.0 * x[4] - 5.0 * x[5],
    {},
)
# Ang and Tang, Probability Concepts in Engineering Planning and Design, vol. II (1984), ch. 6:
# plastic moment of a steel beam, normal variables, without and with correlation of yield strength
# and section modulus (indices from memory).
BEAM: tuple[list[Marginal], Margin] = (
    [of("normal", 40.0, 5.0), of("normal", 50.0, 2.5), of("normal", 1000.0, 200.0)],
    lambda x: x[0] * x[1] - x[2],
)


@pytest.mark.parametrize(
    ("marginals", "margin", "correlations", "index", "tolerance"),
    [
        # the manual's correlation of uniform and lognormal is a fit to within 0.7 %
        pytest.param(*CALREL, 1.7724, 0.0010, id="CALREL-2"),
        pytest.param(*MECHANISM, 2.348, 0.0005, id="DerKiureghian-Lin-Hwang-1987"),
        pytest.param(*BEAM, {}, 3.049, 0.0005, id="AngTang-1984-beam"),
        pytest.param(*BEAM, {(0, 1): 0.4}, 2.862, 0.001, id="AngTang-1984-beam-correlated"),
    ],
)
def test_index(
    marginals: list[Marginal],
    margin: Margin,
    correlations: dict[tuple[int, int], float],
    index: float,
    tolerance: float,
) -> None:
    found, _ = solved(marginals, margin, correlations)
    assert found.index == pytest.approx(index, abs=tolerance)


def test_design_point_and_importance_of_calrel_example_2() -> None:
    """Printed for the first variable: x* 631.9, u* 1.281, alpha 0.7233, gamma 0.6962."""
    marginals, margin, correlations = CALREL
    found, dependence = solved(marginals, margin, correlations)
    assert marginals[0].at(found.point[:1])[0] == pytest.approx(631.9, abs=1.0)
    assert found.point[0] == pytest.approx(1.281, abs=0.002)
    assert found.alpha[0] == pytest.approx(0.7233, abs=0.001)
    assert np.sqrt(dependence.importance(found.alpha)[0]) == pytest.approx(0.6962, abs=0.001)


def test_probability_of_calrel_example_2() -> None:
    """Printed: 3.8164339E-02."""
    found, _ = solved(*CALREL)
    assert found.probability == pytest.approx(0.0382, abs=0.0001)
