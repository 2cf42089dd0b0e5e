"""Rank correlation: which variable moves a ratio, however bent the relation is."""

from __future__ import annotations

from typing import Final

import numpy as np

from jacketcheck.mechanics._arrays import Floats

__all__ = ["rank_correlations"]

_FEWEST: Final = 8


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
    from scipy.stats import rankdata  # noqa: PLC0415 - scipy.stats is slow to import

    known = ~np.isnan(response)
    if np.count_nonzero(known) < _FEWEST or not len(values):
        return np.zeros(len(values))
    ranks = rankdata(np.vstack([values[:, known], response[known]]), axis=1)
    ranks -= ranks.mean(axis=1, keepdims=True)
    lengths = np.sqrt(np.sum(ranks**2, axis=1))
    scale = lengths[:-1] * lengths[-1]
    return np.asarray(
        np.divide(ranks[:-1] @ ranks[-1], scale, out=np.zeros(len(values)), where=scale > 0.0)
    )
