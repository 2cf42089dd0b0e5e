"""Which variables matter: how samples that exceed differ from the others, and rank correlation."""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from jacketcheck.mechanics._arrays import Floats, require_within

__all__ = ["TailShifts", "rank_correlations", "tail_shifts"]

_FEWEST: Final = 8
_SMALLEST_TAIL, _LARGEST_TAIL = 0.05, 0.5


class TailShifts(NamedTuple):
    """How far variables lie from their means in the worst samples.

    Attributes
    ----------
    shifts
        In standard deviations, shape (variables,).
    standard_error
        Of each shift [-]; infinite where there is none.
    """

    shifts: Floats
    standard_error: float


def tail_shifts(values: Floats, response: Floats, *, probability: float) -> TailShifts:
    """Shift of each variable in the samples that exceed.

    Parameters
    ----------
    values
        Values of the variables, shape (variables, samples).
    response
        Ratio of each sample, shape (samples,); NaN counts as the largest.
    probability
        Share of samples that exceed [-].

    Returns
    -------
    TailShifts
        Positive where more of a variable goes with exceedance. Zero for what does not vary, and
        all of them for fewer than eight samples.

    Notes
    -----
    The mean of a variable's normal scores (van der Waerden's) over the share `probability` of the
    samples with the largest ratios; at least a twentieth of them and at most half, as too few and
    too many say nothing. Samples with the same ratio share what is left of the tail. Over the
    samples that fail it is ``(∂P/P)/(∂μ/σ)``: by how much of itself the probability changes with
    the mean of the variable, in standard deviations. With a plane limit surface and independent
    variables it is ``α φ(β)/Φ(-β)``.

    References
    ----------
    Wu, Computational methods for efficient structural reliability and reliability sensitivity
    analysis, AIAA J. 32(8) (1994), 1717-1723 (from memory); Hornberger and Spear, An approach to
    the preliminary analysis of environmental systems, J. Environ. Manage. 12 (1981), 7-18, for
    samples told apart by what they lead to (from memory).

    Examples
    --------
    >>> x = np.linspace(-1.0, 1.0, 1000)
    >>> found = tail_shifts(np.array([x, -x]), np.exp(x), probability=0.5)
    >>> found.shifts.round(2)
    array([ 0.8, -0.8])
    """
    from scipy.special import ndtri  # noqa: PLC0415 - scipy.special is slow to import

    require_within(0.0, 1.0, probability=probability)
    count = len(response)
    if count < _FEWEST or not len(values):
        return TailShifts(np.zeros(len(values)), np.inf)
    size = min(max(probability, _SMALLEST_TAIL), _LARGEST_TAIL) * count
    weights = _tail_weights(np.where(np.isnan(response), np.inf, response), size)
    scores = np.where(np.ptp(values, axis=1, keepdims=True) > 0.0,
                      ndtri((_ranks(values) - 0.5) / count), 0.0)  # fmt: skip
    return TailShifts(scores @ weights / size, float(1.0 / np.sqrt(size)))


def _tail_weights(response: Floats, size: float) -> Floats:
    """Weights of samples, `size` in all, on those with the largest response."""
    edge = np.sort(response)[max(len(response) - int(np.ceil(size)), 0)]
    above, level = response > edge, response == edge
    left = size - np.count_nonzero(above)
    return np.where(above, 1.0, np.where(level, left / np.count_nonzero(level), 0.0))


def rank_correlations(values: Floats, response: Floats) -> Floats:
    """Spearman's rank correlation of each variable with a response.

    Parameters
    ----------
    values
        Values of the variables, shape (variables, samples).
    response
        Response, shape (samples,); may be infinite, samples where it is NaN are left out.

    Returns
    -------
    ndarray
        Coefficients [-], shape (variables,); zero for what does not vary, and for fewer than
        eight samples.

    References
    ----------
    Spearman, The proof and measurement of association between two things, Am. J. Psychol. 15(1)
    (1904), 72-101; ties with their mean rank.

    Examples
    --------
    >>> x = np.arange(10.0)
    >>> rank_correlations(np.array([x, -x]), np.exp(x))
    array([ 1., -1.])
    """
    known = ~np.isnan(response)
    if np.count_nonzero(known) < _FEWEST or not len(values):
        return np.zeros(len(values))
    ranks = _ranks(np.vstack([values[:, known], response[known]]))
    ranks -= ranks.mean(axis=1, keepdims=True)
    lengths = np.sqrt(np.sum(ranks**2, axis=1))
    scale = lengths[:-1] * lengths[-1]
    return np.asarray(
        np.divide(ranks[:-1] @ ranks[-1], scale, out=np.zeros(len(values)), where=scale > 0.0)
    )


def _ranks(rows: Floats) -> Floats:
    """Ranks from 1 in each row, ties with their mean rank."""
    from scipy.stats import rankdata  # noqa: PLC0415 - scipy.stats is slow to import

    return np.asarray(rankdata(rows, axis=1), dtype=float)
