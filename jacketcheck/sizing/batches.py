"""Designs brought together, so that many are evaluated in one go."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

import numpy as np

from jacketcheck.jacket.designs import choices, joined
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.jacket.many import Indexes

__all__ = ["Batches"]


@dataclass
class _Pile:
    jackets: list[Jacket] = field(default_factory=list)
    designs: list[Indexes] = field(default_factory=list)
    count: int = 0


class Batches:
    """Collects jackets of many designs and hands them out in batches that can be joined.

    Parameters
    ----------
    size
        Number of designs from which a batch is handed out.
    """

    def __init__(self, size: int) -> None:
        self._size = size
        self._piles: dict[str, _Pile] = {}

    def add(self, jacket: Jacket, designs: Indexes) -> Iterator[tuple[Jacket, Indexes]]:
        """Take designs in, and hand out the batch that they fill, if they do."""
        key = _kind(jacket)
        pile = self._piles.setdefault(key, _Pile())
        pile.jackets.append(jacket)
        pile.designs.append(designs)
        pile.count += designs.size
        if pile.count >= self._size:
            yield _whole(self._piles.pop(key))

    def rest(self) -> Iterator[tuple[Jacket, Indexes]]:
        """Hand out what has been left."""
        while self._piles:
            yield _whole(self._piles.pop(next(iter(self._piles))))


def _whole(pile: _Pile) -> tuple[Jacket, Indexes]:
    jacket = pile.jackets[0] if len(pile.jackets) == 1 else joined(pile.jackets)
    return jacket, np.concatenate(pile.designs)


def _kind(jacket: Jacket) -> str:
    """What designs of one jacket must share.

    Limit states that look at columns side by side have other rows for a single one.
    """
    return f"{bool(np.all(np.less_equal(jacket.bolts.columns, 1)))} {choices(jacket)!r}"
