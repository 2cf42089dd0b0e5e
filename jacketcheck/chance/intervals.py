"""Confidence intervals of a probability that was estimated by counting."""

from __future__ import annotations

import math
from typing import Final, NamedTuple

import numpy as np

from jacketcheck.mechanics._arrays import Floats, require_at_least, require_within

__all__ = ["CONFIDENCE", "Interval", "binomial_interval", "replicate_interval"]

CONFIDENCE: Final = 0.95
"""Confidence of the intervals that are printed [-]."""

_COUNT_PER_REPLICATE = 5


class Interval(NamedTuple):
    """Lower and upper bound of a probability."""

    low: float
    high: float


def binomial_interval(exceeded: int, total: int, *, confidence: float = CONFIDENCE) -> Interval:
    """Clopper-Pearson interval of a probability.

    Parameters
    ----------
    exceeded
        Samples that exceed, from zero to `total`.
    total
        All samples, at least one.
    confidence
        Confidence [-], between zero and one.

    Returns
    -------
    Interval
        Bounds [-]; with at least the confidence asked for, whatever the probability is.

    Raises
    ------
    DomainError
        If an argument lies outside its range.

    References
    ----------
    Clopper and Pearson, Biometrika 26(4) (1934), 404-413, by quantiles of the beta distribution.

    Examples
    --------
    >>> [round(bound, 4) for bound in binomial_interval(0, 20)]
    [0.0, 0.1684]
    """
    from scipy.special import betaincinv  # noqa: PLC0415 - scipy.special is slow to import

    require_at_least(1.0, total=total)
    require_within(0.0, float(total), exceeded=exceeded)
    require_within(0.0, 1.0, confidence=confidence)
    tail = (1.0 - confidence) / 2.0
    low = float(betaincinv(exceeded, total - exceeded + 1, tail)) if exceeded else 0.0
    high = (
        float(betaincinv(exceeded + 1, total - exceeded, 1.0 - tail)) if exceeded < total else 1.0
    )
    return Interval(low, high)


def replicate_interval(shares: Floats, *, size: int, confidence: float = CONFIDENCE) -> Interval:
    """Interval of a probability from independent replicates of a balanced sample.

    Parameters
    ----------
    shares
        Share of samples that exceed in each replicate [-], shape (replicates,).
    size
        Samples of one replicate.
    confidence
        Confidence [-], between zero and one.

    Returns
    -------
    Interval
        Bounds [-].

    Notes
    -----
    Points of a Sobol sequence or a Latin hypercube are not independent of each other, replicates
    are: the interval is Student's around their mean. Where fewer than five samples of each
    replicate exceed on average, or fewer than five do not, their spread says too little, and the
    interval is that of independent samples, which is the wider. A balanced replicate may resolve
    its share to one sample only, so that all of them agree: that much is added to the spread.

    References
    ----------
    Owen, Monte Carlo Theory, Methods and Examples (2013), ch. 17, randomised quasi-Monte Carlo;
    L'Ecuyer and Lemieux, in Modeling Uncertainty (2002), 419-474.

    Examples
    --------
    >>> found = replicate_interval(np.array([0.10, 0.11, 0.09, 0.10]), size=1000)
    >>> [round(bound, 4) for bound in found]
    [0.087, 0.113]
    """
    from scipy.special import stdtrit  # noqa: PLC0415 - scipy.special is slow to import

    count = len(shares)
    exceeded = round(float(np.sum(shares)) * size)
    total = count * size
    if count < 2 or min(exceeded, total - exceeded) < _COUNT_PER_REPLICATE * count:
        return binomial_interval(exceeded, total, confidence=confidence)
    mean = float(np.mean(shares))
    spread = math.hypot(float(np.std(shares, ddof=1)), 1.0 / (size * math.sqrt(12.0)))
    quantile = float(stdtrit(count - 1, (1.0 + confidence) / 2.0))
    half = quantile * spread / math.sqrt(count)
    return Interval(max(mean - half, 0.0), min(mean + half, 1.0))
