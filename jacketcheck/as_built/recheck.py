"""Running the check again with one line as built, and finding which ratios that raises."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import Final, NamedTuple, TypeAlias

from jacketcheck.as_built.changed import changed_jacket
from jacketcheck.as_built.records import Change, Recheck
from jacketcheck.as_built.specified import Specified
from jacketcheck.engine.evaluate import evaluate
from jacketcheck.errors import InputError
from jacketcheck.host.host import Host
from jacketcheck.results import Kind, Result, Status

__all__ = ["Rechecker"]

_RISE: Final = 1e-6
"""Ratios that rise by less than this are as they were."""

_Key: TypeAlias = tuple[str, ...]


class _Raised(NamedTuple):
    """A ratio that rises, what it was, and which row it belongs to."""

    ratio: float
    before: float
    row: str


class _Baseline:
    """Results as specified under one set of provisions, to compare rows with."""

    def __init__(self, results: Sequence[Result]) -> None:
        judged = [one for one in results if _judged(one)]
        self._exact = {_row_key(one): float(one.ratio) for one in judged}
        self._by_check: dict[_Key, float] = {}
        for one in judged:
            key = _check_key(one)
            self._by_check[key] = max(self._by_check.get(key, 0.0), float(one.ratio))
        self._rows = Counter(one.limit_state for one in judged)

    def before(self, result: Result) -> float:
        """Ratio of a row as specified; of its check, where its place goes by another name now."""
        exact = self._exact.get(_row_key(result))
        return self._by_check.get(_check_key(result), math.nan) if exact is None else exact

    def lost(self, results: Sequence[Result]) -> str:
        """A limit state with fewer judged rows than as specified; empty where there is none."""
        found = Counter(one.limit_state for one in results if _judged(one))
        return next((name for name, count in self._rows.items() if found[name] < count), "")


class Rechecker:
    """Runs the check with single changes.

    Parameters
    ----------
    specified
        What all else stays as.
    baseline
        Results of the check as specified, by set of provisions.
    host
        Plug-ins.
    """

    def __init__(
        self, specified: Specified, baseline: Mapping[str, Sequence[Result]], host: Host
    ) -> None:
        self._specified = specified
        self._host = host
        self._baseline = {name: _Baseline(results) for name, results in baseline.items()}

    def __call__(self, changes: Iterable[Change]) -> Recheck:
        """Check by each change on its own; the worst counts."""
        raised: list[_Raised] = []
        for change in changes:
            try:
                jacket = changed_jacket(self._specified.repair, change, self._specified.catalog)
            except InputError as error:
                return _failed("; ".join(str(one) for one in error.problems))
            for provisions, baseline in self._baseline.items():
                results = evaluate(jacket, host=self._host, provisions=provisions)
                if lost := baseline.lost(results):
                    return _failed(f"limit state {lost} can no longer be evaluated")
                raised += _raised(results, baseline)
        if not raised:
            return Recheck(math.nan, math.nan, "", Status.OK)
        worst = max(raised, key=lambda one: one.ratio)
        status = Status.OK if worst.ratio <= 1.0 else Status.EXCEEDS
        return Recheck(worst.ratio, worst.before, worst.row, status)


def _failed(problem: str) -> Recheck:
    return Recheck(math.nan, math.nan, "", Status.NOT_EVALUATED, problem)


def _raised(results: Iterable[Result], baseline: _Baseline) -> list[_Raised]:
    """Rows whose ratio is larger than before; one without a before counts as risen."""
    found = []
    for one in results:
        if not _judged(one):
            continue
        ratio, before = float(one.ratio), baseline.before(one)
        if not ratio <= before + _RISE * max(1.0, abs(before)):
            where = f"{one.title}, {one.location}" if one.location else one.title
            found.append(_Raised(ratio, before, where))
    return found


def _judged(result: Result) -> bool:
    return result.kind is Kind.LIMIT and result.status is not Status.NOT_EVALUATED


def _row_key(result: Result) -> _Key:
    """What tells a row from all others of its provisions."""
    return (*_check_key(result), result.location)


def _check_key(result: Result) -> _Key:
    return (result.limit_state, result.title, result.clause)
