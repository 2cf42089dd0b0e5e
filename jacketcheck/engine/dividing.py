"""Asking limit states about many designs at once, each design with an answer of its own."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from typing import Final, TypeAlias

import numpy as np
from numpy.typing import NDArray

from jacketcheck.analysis.memo import divided, some_designs
from jacketcheck.engine.evaluate import Answered, answers
from jacketcheck.errors import DomainError
from jacketcheck.host.host import Host
from jacketcheck.jacket.designs import design_count
from jacketcheck.jacket.jacket import Jacket

__all__ = ["Indexes", "Take", "ask_designs"]

Indexes: TypeAlias = NDArray[np.intp]
Take: TypeAlias = Callable[[Answered, Indexes], None]
"""Takes over the answer of a limit state on some of the designs."""

_PATIENCE: Final = 32
"""Designs asked one by one, all refused for one reason and no other one answered, before the rest
of a batch is not: what is missing is then missing in all of them."""


def ask_designs(
    jacket: Jacket,
    *,
    host: Host,
    provisions: str,
    only: Collection[str] | None,
    take: Take,
    most_divisions: int | None = None,
) -> None:
    """Ask limit states about many designs, all in one go where that works.

    Where a limit state refuses a batch because of some of its designs, the batch is divided until
    those stand alone. Where it has answered no design at all and refused many for one and the same
    reason, which is no range of a formula, the others are not asked any more.

    Parameters
    ----------
    jacket
        One design or many.
    host, provisions, only
        As in `jacketcheck.engine.evaluate.evaluate`.
    take
        Takes the answers, with the places of the designs that each is about.
    most_divisions
        Divisions of batches for each limit state; what is refused together after that many is
        refused as a whole. As many as it takes by default.
    """
    asking = _Asking(host, provisions, take, most_divisions)
    asking.ask(jacket, np.arange(design_count(jacket)), only)


class _Asking:
    """One set of provisions, and how its limit states took to designs so far."""

    def __init__(self, host: Host, provisions: str, take: Take, most: int | None) -> None:
        self._host = host
        self._provisions = provisions
        self._take = take
        self._most = most
        self._divisions: dict[str, int] = {}
        self._refusals: dict[tuple[str, str], int] = {}
        self._answered: set[str] = set()

    def ask(self, jacket: Jacket, indexes: Indexes, only: Collection[str] | None) -> None:
        """Ask about a batch; divide it for the limit states that refuse it.

        Those that ask for the same division are asked together, so that they share analyses.
        """
        count, again = indexes.size, _Divisions()
        for one in answers(
            jacket, host=self._host, provisions=self._provisions, only=only, steps=False
        ):
            if not one.refused:
                self._answered.add(one.limit_state)
            elif (parts := divided(count, one.refusal)) and self._is_worth(one):
                again.add(one.limit_state, parts)
                continue
            elif count == 1:
                self._count_refusal(one)
            self._take(one, indexes)
        for names, parts in again:
            for part in parts:
                self.ask(some_designs(jacket, part), indexes[part], names)

    def _count_refusal(self, one: Answered) -> None:
        key = (one.limit_state, one.reason)
        self._refusals[key] = self._refusals.get(key, 0) + 1

    def _is_worth(self, one: Answered) -> bool:
        """Whether a batch that was refused is asked in parts."""
        if self._most is not None:
            done = self._divisions[one.limit_state] = self._divisions.get(one.limit_state, 0) + 1
            if done > self._most:
                return False
        if one.limit_state in self._answered or isinstance(one.refusal, DomainError):
            return True
        return self._refusals.get((one.limit_state, one.reason), 0) < _PATIENCE


class _Divisions:
    """Divisions of one batch, with the limit states that ask for each."""

    def __init__(self) -> None:
        self._found: dict[bytes, tuple[set[str], list[Indexes]]] = {}

    def add(self, limit_state: str, parts: list[Indexes]) -> None:
        """Take up what one limit state asks for."""
        names, _ = self._found.setdefault(parts[0].tobytes(), (set(), parts))
        names.add(limit_state)

    def __iter__(self) -> Iterator[tuple[set[str], list[Indexes]]]:
        return iter(self._found.values())
