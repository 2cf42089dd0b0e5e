"""Order in which the bolts of a seam are tightened: from its stiffest part to its free edges."""

from __future__ import annotations

from typing import Final

from jacketcheck.errors import DomainError
from jacketcheck.schedule.records import TighteningOrder

__all__ = ["rows_from_the_middle", "tightening_order"]

_SOURCE: Final = (
    "RCSC 2020 Section 8 (from memory) and EN 1090-2:2018 8.3: from the most rigid part of the "
    "joint to its free edges; the numbers are engineering judgement"
)


def rows_from_the_middle(rows: int) -> tuple[int, ...]:
    """Rows, counted from the bottom, in the order in which they are worked.

    Examples
    --------
    >>> rows_from_the_middle(5)
    (3, 4, 2, 5, 1)
    """
    middle = (rows + 1) / 2.0
    # of two rows at the same distance the upper one comes first
    return tuple(sorted(range(1, rows + 1), key=lambda row: (abs(row - middle), -row)))


def tightening_order(*, rows: int, columns: int) -> TighteningOrder:
    """Number every bolt of a seam.

    Parameters
    ----------
    rows
        Bolts above one another, one or more.
    columns
        Bolt lines on each side of the seam, one or more.

    Returns
    -------
    TighteningOrder
        Numbers from 1, each once.

    Raises
    ------
    DomainError
        If there is no row or no column.

    Notes
    -----
    Rows from mid-height outwards, up and down in turn; in a row from the seam outwards, left and
    right in turn, so that both half-shells are drawn to the plates evenly.

    Examples
    --------
    >>> tightening_order(rows=3, columns=1).numbers
    ((3, 4), (1, 2), (5, 6))
    """
    if rows < 1 or columns < 1:
        raise DomainError("rows and columns", (rows, columns), "one or more each")
    numbers: dict[tuple[int, int], int] = {}
    for row in rows_from_the_middle(rows):
        for column in range(1, columns + 1):
            for side in (-1, 1):
                numbers[row, side * column] = len(numbers) + 1
    places = [*range(-columns, 0), *range(1, columns + 1)]
    return TighteningOrder(
        numbers=tuple(tuple(numbers[row, place] for place in places) for row in range(rows, 0, -1)),
        columns=columns,
        source=_SOURCE,
    )
