"""Gaps of direct tension indicators: how many close when a bolt is tight, and not before.

The bumps of an indicator flatten as the bolt is tightened; a feeler gauge tells which of the gaps
between them have closed.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from jacketcheck.mechanics._arguments import require_whole

__all__ = ["open_gaps_at_verification", "refused_gaps_when_installed"]


def refused_gaps_when_installed(gaps: int | NDArray[np.int_]) -> NDArray[np.int_]:
    """Gaps of a direct tension indicator that must refuse the feeler gauge once it is tightened.

    Parameters
    ----------
    gaps
        Gaps between the bumps of the indicator, one or more; scalar or array.

    Returns
    -------
    ndarray
        Half of them, of an odd number the larger half.

    Raises
    ------
    DomainError
        If the number is not whole and at least one.

    References
    ----------
    RCSC (2020), Section 8.2.4, from memory; FHWA, Use of Direct Tension Indicators in Bridge
    Structural Steel (2003).

    Examples
    --------
    >>> int(refused_gaps_when_installed(5))
    3
    """
    require_whole(1, gaps=np.asarray(gaps, dtype=float))
    refused: NDArray[np.int_] = (np.asarray(gaps) + 1) // 2
    return refused


def open_gaps_at_verification(gaps: int | NDArray[np.int_]) -> NDArray[np.int_]:
    """Gaps of a direct tension indicator that the gauge must still enter at 1.05 T_b.

    Parameters
    ----------
    gaps
        Gaps between the bumps of the indicator, one or more; scalar or array.

    Returns
    -------
    ndarray
        Least number that must still be open at 1.05 times the pretension.

    Raises
    ------
    DomainError
        If the number is not whole and at least one.

    Notes
    -----
    Fewer may refuse than in an installed bolt: an indicator that closes before the bolt has 1.05
    times its minimum tension would pass bolts that have too little.

    References
    ----------
    RCSC (2020), Section 7.2; FHWA, Use of Direct Tension Indicators in Bridge Structural Steel
    (2003): at most 1 of 4, 2 of 5 or 6, 3 of 7 or 8 and 4 of 9 gaps refused; both from memory.

    Examples
    --------
    >>> [int(open_gaps_at_verification(gaps)) for gaps in (4, 5, 6)]
    [3, 3, 4]
    """
    opened: NDArray[np.int_] = np.asarray(gaps) - refused_gaps_when_installed(gaps) + 1
    return opened
