"""Marginal distributions, written as functions of a standard normal variable."""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final, Literal, TypeAlias

import numpy as np

from jacketcheck.errors import DomainError
from jacketcheck.mechanics._arrays import Floats, require_at_least, require_positive

__all__ = ["LARGEST_VARIATION", "Distribution", "Marginal"]

Distribution: TypeAlias = Literal["normal", "lognormal", "uniform"]

LARGEST_VARIATION: Final[dict[Distribution, float]] = {
    "normal": 0.20,
    "lognormal": 1.00,
    "uniform": 0.57,
}
"""Largest coefficient of variation [-]: strengths and lengths stay positive, but for one normal
value in 3.5 million."""

_NOTHING: Final = 1e-9
"""Probability of what is cut off below which nothing is."""


def _normal(score: float) -> float:
    """Probability below a standard normal value."""
    return 0.5 * math.erfc(-score / math.sqrt(2.0))


@dataclass(frozen=True, slots=True)
class Marginal:
    """Distribution of one variable.

    Attributes
    ----------
    distribution
        ``normal``, ``lognormal`` or ``uniform``.
    mean
        Mean, above zero.
    variation
        Coefficient of variation [-], from zero to `LARGEST_VARIATION`.
    lowest, highest
        Range that it is cut to, in the unit of the mean: where physics or the formulas that use it
        end. Mean and variation are those of the whole distribution.

    Raises
    ------
    DomainError
        If a parameter lies outside its range.

    Notes
    -----
    A lognormal variable is ``exp(λ + ζ z)`` with ``ζ² = ln(1 + V²)`` and ``λ = ln(mean) - ζ²/2``;
    a uniform one reaches ``sqrt(3)`` standard deviations to either side of its mean. What lies
    outside the range is spread over it in proportion: ``F⁻¹(F(a) + u (F(b) - F(a)))``.

    References
    ----------
    Ang and Tang, Probability Concepts in Engineering, 2nd ed. (2007), ch. 3.

    Examples
    --------
    >>> strength = Marginal("lognormal", 300.0, 0.10)
    >>> float(round(strength.at(np.zeros(1))[0], 2))
    298.51
    """

    distribution: Distribution
    mean: float
    variation: float
    lowest: float = -math.inf
    highest: float = math.inf

    def __post_init__(self) -> None:
        """Reject parameters outside their range."""
        require_positive(mean=self.mean)
        require_at_least(0.0, variation=self.variation)
        largest = LARGEST_VARIATION[self.distribution]
        if self.variation > largest:
            allowed = f"at most {largest:g} for a {self.distribution} variable"
            raise DomainError("variation", self.variation, allowed)
        if not self.lowest < self.mean < self.highest:
            raise DomainError("mean", self.mean, f"between {self.lowest:g} and {self.highest:g}")

    @property
    def standard_deviation(self) -> float:
        """Standard deviation, in the unit of the mean."""
        return self.mean * self.variation

    @property
    def log_deviation(self) -> float:
        """Standard deviation of the logarithm of a lognormal variable [-]."""
        return math.sqrt(math.log1p(self.variation**2))

    @property
    def cut_off(self) -> float:
        """Probability of what lies outside the range [-]."""
        below, above = self._tails
        return below + above

    @property
    def _tails(self) -> tuple[float, float]:
        """Probability below the range and above it; zero where there is no scatter."""
        if self.variation == 0.0:
            return 0.0, 0.0
        return _normal(self._score(self.lowest)), _normal(-self._score(self.highest))

    def _score(self, value: float) -> float:
        """Standard normal value at the probability of a value."""
        if self.distribution == "lognormal":
            if value <= 0.0:
                return -math.inf
            deviation = self.log_deviation
            return (math.log(value / self.mean) + deviation**2 / 2.0) / deviation
        score = (value - self.mean) / self.standard_deviation
        if self.distribution == "normal" or math.isinf(score):
            return score
        share = 0.5 + score / (2.0 * math.sqrt(3.0))
        return NormalDist().inv_cdf(share) if 0.0 < share < 1.0 else math.copysign(math.inf, score)

    def at(self, standard_normal: Floats) -> Floats:
        """Value at the same probability as a standard normal value; same shape."""
        return self._whole(self._inside(standard_normal))

    def _inside(self, standard_normal: Floats) -> Floats:
        """Standard normal values moved into the range, their order kept."""
        below, above = self._tails
        if below + above < _NOTHING:
            return standard_normal
        from scipy.special import ndtr, ndtri  # noqa: PLC0415 - scipy.special is slow to import

        left = 1.0 - below - above
        # from the nearer tail, so that nothing is lost to rounding
        low = ndtri(below + left * ndtr(standard_normal))
        high = -ndtri(above + left * ndtr(-standard_normal))
        return np.asarray(np.where(standard_normal < 0.0, low, high))

    def _whole(self, standard_normal: Floats) -> Floats:
        if self.distribution == "normal":
            return self.mean + self.standard_deviation * standard_normal
        if self.distribution == "lognormal":
            deviation = self.log_deviation
            value = deviation * standard_normal
            value += math.log(self.mean) - deviation**2 / 2.0
            return np.exp(value, out=value)
        from scipy.special import ndtr  # noqa: PLC0415 - scipy.special is slow to import

        reach = math.sqrt(3.0) * self.standard_deviation
        return np.asarray(self.mean + reach * (2.0 * ndtr(standard_normal) - 1.0))
