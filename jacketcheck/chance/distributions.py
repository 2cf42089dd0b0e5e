"""Marginal distributions, written as functions of a standard normal variable."""

from __future__ import annotations

import math
from dataclasses import dataclass
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

    Raises
    ------
    DomainError
        If a parameter lies outside its range.

    Notes
    -----
    A lognormal variable is ``exp(λ + ζ z)`` with ``ζ² = ln(1 + V²)`` and ``λ = ln(mean) - ζ²/2``;
    a uniform one reaches ``sqrt(3)`` standard deviations to either side of its mean.

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

    def __post_init__(self) -> None:
        """Reject parameters outside their range."""
        require_positive(mean=self.mean)
        require_at_least(0.0, variation=self.variation)
        largest = LARGEST_VARIATION[self.distribution]
        if self.variation > largest:
            allowed = f"at most {largest:g} for a {self.distribution} variable"
            raise DomainError("variation", self.variation, allowed)

    @property
    def standard_deviation(self) -> float:
        """Standard deviation, in the unit of the mean."""
        return self.mean * self.variation

    @property
    def log_deviation(self) -> float:
        """Standard deviation of the logarithm of a lognormal variable [-]."""
        return math.sqrt(math.log1p(self.variation**2))

    def at(self, standard_normal: Floats) -> Floats:
        """Value at the same probability as a standard normal value; same shape."""
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
