"""Ratios of many designs at once, each design with an answer of its own."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from jacketcheck.causes import DesignCauses, causes_of_designs
from jacketcheck.engine.dividing import Indexes, ask_designs
from jacketcheck.engine.evaluate import problem_rows
from jacketcheck.host.host import Host
from jacketcheck.jacket.designs import design_count
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Floats
from jacketcheck.results import Kind, Result

__all__ = ["DesignRatios", "RatioRow", "merged_ratios", "ratios_of_designs"]


@dataclass(frozen=True, slots=True)
class RatioRow:
    """What a row of ratios is about.

    Attributes
    ----------
    limit_state, provisions, title, clause
        As in the results.
    ordinal
        Counts the rows that have all of these in common.
    written_by, added_by
        As in the results.
    """

    limit_state: str
    provisions: str
    title: str
    clause: str
    ordinal: int = 0
    written_by: str = ""
    added_by: str = ""


@dataclass(frozen=True)
class DesignRatios:
    """Demand/capacity ratios of designs.

    Attributes
    ----------
    rows
        What each row is about.
    ratio
        Shape (rows, designs). NaN where a design could not be evaluated, minus infinity where it
        has no such row.
    without_margin
        Whether a row tells no margin when it passes; such a row does not govern.
    places
        Where on the jacket, by row; empty where designs differ.
    reasons
        Why designs could not be evaluated, by row; the first reason found.
    follows_from
        Limit states whose loss a row has used in some design, by row; see `jacketcheck.causes`.
    """

    rows: tuple[RatioRow, ...]
    ratio: Floats
    without_margin: NDArray[np.bool_]
    places: tuple[str, ...]
    reasons: dict[RatioRow, str] = field(default_factory=dict)
    follows_from: dict[RatioRow, frozenset[str]] = field(default_factory=dict)

    @property
    def worst(self) -> Floats:
        """Largest ratio of each design; NaN where a row is, or where there is no row at all."""
        if not self.rows:
            return np.full(self.ratio.shape[1], np.nan)
        largest = np.max(self.ratio, axis=0)
        return np.where(np.isneginf(largest), np.nan, largest)

    @property
    def governing(self) -> Indexes:
        """Row that decides for each design.

        One that was not evaluated, else the largest ratio of those that do not follow from others.
        Without meaning where there is no row at all.
        """
        if not self.rows:
            return np.zeros(self.ratio.shape[1], dtype=np.intp)
        weight = self._weight
        # stable: ratios equal but for rounding keep the order of the limit states
        rounded = np.round(np.where(np.isnan(weight), np.inf, weight), 9)
        unknown = np.isnan(self.ratio).any(axis=0)
        first_unknown = np.argmax(np.isnan(self.ratio), axis=0)
        decides: Indexes = np.where(unknown, first_unknown, np.argmax(rounded, axis=0))
        return decides

    @property
    def governing_ratio(self) -> Floats:
        """Ratio of the row that decides for each design; NaN where there is none."""
        if not self.rows:
            return self.worst
        ratio = np.take_along_axis(self.ratio, self.governing[None, :], axis=0)[0]
        return np.where(np.isneginf(ratio), np.nan, ratio)

    @property
    def followers(self) -> Indexes:
        """How many rows of each design exceed as a consequence of the limit state that governs."""
        names = [(row.provisions, row.limit_state) for row in self.rows]
        places: dict[tuple[str, str], list[int]] = {}
        for place, name in enumerate(names):
            places.setdefault(name, []).append(place)
        counts = (
            self._causes.followers(design, places[names[place]]) if names else 0
            for design, place in enumerate(self.governing.tolist())
        )
        return np.fromiter(counts, dtype=np.intp, count=self.ratio.shape[1])

    @cached_property
    def _causes(self) -> DesignCauses:
        names = [(row.provisions, row.limit_state) for row in self.rows]
        follows = [
            [(row.provisions, name) for name in self.follows_from.get(row, ())] for row in self.rows
        ]
        return causes_of_designs(names, follows, self.ratio > 1.0)

    @property
    def _weight(self) -> Floats:
        """Ratios by which rows govern.

        One that reads 1 whenever it passes counts for nothing, and so does a consequence.
        """
        return np.where(self._silent | self._causes.consequence, 0.0, self.ratio)

    @property
    def _silent(self) -> NDArray[np.bool_]:
        """Rows that pass and whose ratio tells nothing then."""
        tells_nothing: NDArray[np.bool_] = (
            self.without_margin[:, None] & (self.ratio <= 1.0) & np.isfinite(self.ratio)
        )
        return tells_nothing

    @property
    def passes(self) -> NDArray[np.bool_]:
        """Whether each design was evaluated and stays within 1 everywhere."""
        return self.worst <= 1.0

    def by_limit_state(self, *, with_silent: bool = True) -> tuple[tuple[str, ...], Floats]:
        """Names of the limit states, and the largest ratio of each: shape (names, designs).

        Without the silent ones, a row that reads 1 whenever it passes counts as zero then.
        """
        names = tuple(dict.fromkeys(row.limit_state for row in self.rows))
        places = [[r for r, row in enumerate(self.rows) if row.limit_state == n] for n in names]
        if not names:
            return (), np.empty((0, self.ratio.shape[1]))
        ratio = self.ratio if with_silent else np.where(self._silent, 0.0, self.ratio)
        return names, np.stack([np.max(ratio[rows], axis=0) for rows in places])


def ratios_of_designs(
    jacket: Jacket,
    *,
    host: Host,
    provisions: Sequence[str] = ("us",),
    only: Collection[str] | None = None,
) -> DesignRatios:
    """Evaluate many designs, all in one go where that works.

    Parameters
    ----------
    jacket
        One design or many.
    host
        Where limit states come from.
    provisions
        Sets of provisions; every design must satisfy all of them.
    only
        Limit states to evaluate; all by default.

    Returns
    -------
    DesignRatios
        Where a limit state refuses a batch because of some of its designs, the batch is divided
        until those stand alone; only they count as not evaluated. Where it has answered no design
        at all and refused many for one and the same reason, which is no range of a formula, the
        others are not asked any more and count as not evaluated as well.
    """
    count = design_count(jacket)
    collected = _Collected(count)
    for name in provisions:
        ask_designs(
            jacket,
            host=host,
            provisions=name,
            only=only,
            take=lambda one, indexes: collected.add(one.results, indexes),
        )
        collected.add(problem_rows(host, name, only=only), np.arange(count))
    return collected.ratios()


def merged_ratios(parts: Iterable[tuple[Indexes, DesignRatios]], *, count: int) -> DesignRatios:
    """Bring ratios of some designs together.

    Parameters
    ----------
    parts
        Numbers of the designs among all, and their ratios.
    count
        Number of designs in all; those that no part is about have no rows.
    """
    collected = _Collected(count)
    for indexes, part in parts:
        collected.take_over(part, indexes)
    return collected.ratios()


class _Collected:
    """Rows as they come in, aligned over all designs."""

    def __init__(self, count: int) -> None:
        self._count = count
        self._ratio: dict[RatioRow, Floats] = {}
        self._without_margin: dict[RatioRow, bool] = {}
        self._places: dict[RatioRow, str] = {}
        self._reasons: dict[RatioRow, str] = {}
        self._follows: dict[RatioRow, frozenset[str]] = {}

    def add(self, results: Iterable[Result], indexes: Indexes) -> None:
        """Take over the rows that carry a verdict."""
        seen: dict[RatioRow, int] = {}
        for result in results:
            if result.kind not in {Kind.LIMIT, Kind.NOT_EVALUATED}:
                continue
            key = RatioRow(
                result.limit_state,
                result.provisions,
                result.title,
                result.clause,
                written_by=result.written_by,
                added_by=result.added_by,
            )
            seen[key] = seen.get(key, -1) + 1
            self._add(replace(key, ordinal=seen[key]), result, indexes)

    def take_over(self, part: DesignRatios, indexes: Indexes) -> None:
        """Take over ratios that have been collected before."""
        for place, row in enumerate(part.rows):
            self._open(row, part.places[place], without_margin=bool(part.without_margin[place]))
            self._ratio[row][indexes] = part.ratio[place]
        for row, reason in part.reasons.items():
            self._reasons.setdefault(row, reason)
        for row, names in part.follows_from.items():
            self._follow(row, names)

    def _follow(self, row: RatioRow, names: Collection[str]) -> None:
        if names:
            self._follows[row] = self._follows.get(row, frozenset()).union(names)

    def _open(self, row: RatioRow, place: str, *, without_margin: bool) -> None:
        """Make room for a row, if there is none; a place that differs is not told."""
        if row not in self._ratio:
            self._ratio[row] = np.full(self._count, -np.inf)
            self._without_margin[row], self._places[row] = without_margin, place
        if place != self._places[row]:
            self._places[row] = ""

    def _add(self, row: RatioRow, result: Result, indexes: Indexes) -> None:
        self._open(row, result.location, without_margin=result.without_margin)
        self._follow(row, result.follows_from)
        evaluated = result.kind is Kind.LIMIT
        self._ratio[row][indexes] = result.ratio if evaluated else np.nan
        if not evaluated:
            self._reasons.setdefault(row, "; ".join(result.notes))

    def ratios(self) -> DesignRatios:
        """Everything that has come in."""
        rows = tuple(self._ratio)
        ratio = np.stack([self._ratio[row] for row in rows]) if rows else np.empty((0, self._count))
        return DesignRatios(
            rows=rows,
            ratio=ratio,
            without_margin=np.array([self._without_margin[row] for row in rows], dtype=bool),
            places=tuple(self._places[row] for row in rows),
            reasons=self._reasons,
            follows_from=self._follows,
        )
