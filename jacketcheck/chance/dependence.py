"""Correlated variables: from correlation of the variables to that of standard normal ones."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, TypeAlias

import numpy as np

from jacketcheck.chance.distributions import Distribution, Marginal
from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_within

__all__ = ["Dependence", "normal_correlation"]


def normal_correlation(first: Marginal, second: Marginal, *, correlation: float) -> float:
    """Correlation of the standard normal variables behind two variables.

    Parameters
    ----------
    first, second
        Distributions of the two.
    correlation
        Correlation coefficient of the two variables themselves [-], from -1 to 1.

    Returns
    -------
    float
        Correlation coefficient of the standard normal variables [-]; zero if either does not
        scatter.

    Raises
    ------
    DomainError
        If the coefficient lies outside its range, or is beyond what two such distributions can
        have.

    Notes
    -----
    Exact for each pair of normal, lognormal and uniform variables. With ``ζ`` of a lognormal and
    ``V`` its coefficient of variation: two lognormals ``ln(1 + ρ V1 V2)/(ζ1 ζ2)``; lognormal and
    normal ``ρ V/ζ``; uniform and normal ``ρ sqrt(π/3)``; two uniforms ``2 sin(π ρ/6)``; uniform
    and lognormal ``sqrt(2)/ζ Φ⁻¹(1/2 + ρ V/sqrt(12))``.

    References
    ----------
    Liu and Der Kiureghian, Multivariate distribution models with prescribed marginals and
    covariances, Probab. Eng. Mech. 1(2) (1986), 105-112; the last formula, for which they give a
    fit, from E[Φ(z1) exp(ζ z2)] = exp(ζ²/2) Φ(ρ0 ζ/sqrt(2)).

    Examples
    --------
    >>> steel = Marginal("lognormal", 1.0, 0.10)
    >>> round(normal_correlation(steel, steel, correlation=0.75), 4)
    0.7509
    """
    require_within(-1.0, 1.0, correlation=correlation)
    if correlation == 0.0 or first.variation == 0.0 or second.variation == 0.0:
        return 0.0
    # normal, lognormal, uniform: the pairs are written in this order
    one, two = sorted((first, second), key=lambda marginal: marginal.distribution, reverse=True)
    found = _PAIRS[one.distribution, two.distribution](one, two, correlation)
    if not abs(found) <= 1.0:
        allowed = f"nearer to zero for {first.distribution} and {second.distribution}"
        raise DomainError("correlation", correlation, f"{allowed} variables that scatter so much")
    return found


def _two_normals(one: Marginal, two: Marginal, correlation: float) -> float:
    del one, two
    return correlation


def _two_lognormals(one: Marginal, two: Marginal, correlation: float) -> float:
    product = correlation * one.variation * two.variation
    if product <= -1.0:
        return math.nan
    return math.log1p(product) / (one.log_deviation * two.log_deviation)


def _two_uniforms(one: Marginal, two: Marginal, correlation: float) -> float:
    del one, two
    return 2.0 * math.sin(math.pi * correlation / 6.0)


def _normal_and_lognormal(one: Marginal, two: Marginal, correlation: float) -> float:
    del one
    return correlation * two.variation / two.log_deviation


def _uniform_and_normal(one: Marginal, two: Marginal, correlation: float) -> float:
    del one, two
    return correlation * math.sqrt(math.pi / 3.0)


def _uniform_and_lognormal(one: Marginal, two: Marginal, correlation: float) -> float:
    from scipy.special import ndtri  # noqa: PLC0415 - scipy.special is slow to import

    del one
    share = 0.5 + correlation * two.variation / math.sqrt(12.0)
    return math.sqrt(2.0) / two.log_deviation * float(ndtri(share))


_Pair: TypeAlias = Callable[[Marginal, Marginal, float], float]
_PAIRS: Final[Mapping[tuple[Distribution, Distribution], _Pair]] = {
    ("normal", "normal"): _two_normals,
    ("normal", "lognormal"): _normal_and_lognormal,
    ("lognormal", "lognormal"): _two_lognormals,
    ("uniform", "normal"): _uniform_and_normal,
    ("uniform", "lognormal"): _uniform_and_lognormal,
    ("uniform", "uniform"): _two_uniforms,
}


@dataclass(frozen=True, eq=False)
class Dependence:
    """Correlation of some standard normal variables, factored.

    Attributes
    ----------
    lower
        Lower triangle ``L`` of the Cholesky factorisation of the correlation matrix.
    """

    lower: Floats

    @classmethod
    def of(
        cls, marginals: Sequence[Marginal], correlations: Mapping[tuple[int, int], float]
    ) -> Dependence:
        """Factor the correlation of some variables, given for pairs of them by position.

        Raises
        ------
        DomainError
            If the coefficients contradict each other.
        """
        matrix = np.eye(len(marginals))
        for (i, j), coefficient in correlations.items():
            pair = marginals[i], marginals[j]
            matrix[i, j] = matrix[j, i] = normal_correlation(*pair, correlation=coefficient)
        smallest = float(np.linalg.eigvalsh(matrix)[0]) if len(marginals) else 1.0
        if smallest <= 1e-9:
            allowed = "above zero"
            raise DomainError("smallest eigenvalue of the correlation matrix", smallest, allowed)
        return cls(np.asarray(np.linalg.cholesky(matrix), dtype=float))

    def correlated(self, independent: Floats) -> list[Floats]:
        """Correlated standard normal values from independent ones, row by row.

        Parameters
        ----------
        independent
            Shape (variables, points); rows of variables without a partner are taken as they are.
        """
        rows = list(independent)
        for row, weights in enumerate(self.lower):
            if np.any(weights[:row]):
                partners = np.flatnonzero(weights)
                rows[row] = weights[partners] @ independent[partners]
        return rows

    def importance(self, alpha: Floats) -> Floats:
        """Share of each variable in the scatter at a design point, summing to 1.

        Parameters
        ----------
        alpha
            Unit vector of the independent variables towards the design point.

        Notes
        -----
        Squares of the unit importance vector ``γ``, which is ``αᵀ L⁻¹`` made a unit vector
        (Der Kiureghian and Liu 1986); without correlation ``γ = α``.
        """
        squares = np.square(np.linalg.solve(self.lower.T, alpha))
        total = float(np.sum(squares))
        return np.asarray(squares / total if total > 0.0 else squares, dtype=float)
