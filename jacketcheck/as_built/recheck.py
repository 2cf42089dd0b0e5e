"""Running the check again with one line as built, and finding which ratios that raises."""

from __future__ import annotations

import math
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

_Key: TypeAlias = tuple[str, str, str, str, str]


class _Raised(NamedTuple):
    """A ratio that rises, what it was, and which row it belongs to."""

    ratio: float
    before: float
    row: str


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
        self._before: dict[str, dict[_Key, float]] = {}
        self._unevaluated: dict[str, set[_Key]] = {}
        for provisions, results in baseline.items():
            self._before[provisions] = {_key(one): _ratio(one) for one in results if _judged(one)}
            self._unevaluated[provisions] = {
                _key(one) for one in results if one.status is Status.NOT_EVALUATED
            }

    def __call__(self, changes: Iterable[Change]) -> Recheck:
        """Check by each change on its own; the worst counts."""
        raised: list[_Raised] = []
        for change in changes:
            try:
                jacket = changed_jacket(self._specified.repair, change, self._specified.catalog)
            except InputError as error:
                problem = "; ".join(str(one) for one in error.problems)
                return Recheck(math.nan, math.nan, "", Status.NOT_EVALUATED, problem)
            for provisions in self._before:
                results = evaluate(jacket, host=self._host, provisions=provisions)
                lost = [one for one in results if self._is_lost(one, provisions)]
                if lost:
                    problem = f"{_row(lost[0])} could not be evaluated"
                    return Recheck(math.nan, math.nan, "", Status.NOT_EVALUATED, problem)
                raised += self._raised(results, provisions)
        if not raised:
            return Recheck(math.nan, math.nan, "", Status.OK)
        worst = max(raised, key=lambda one: one.ratio)
        status = Status.OK if worst.ratio <= 1.0 else Status.EXCEEDS
        return Recheck(worst.ratio, worst.before, worst.row, status)

    def _is_lost(self, result: Result, provisions: str) -> bool:
        """Whether a row cannot be evaluated that could be as specified."""
        unevaluated = result.status is Status.NOT_EVALUATED
        return unevaluated and _key(result) not in self._unevaluated[provisions]

    def _raised(self, results: Iterable[Result], provisions: str) -> list[_Raised]:
        before = self._before[provisions]
        return [
            _Raised(ratio, was, _row(one))
            for one in results
            if _judged(one) and _rises(ratio := _ratio(one), was := before.get(_key(one), math.nan))
        ]


def _key(result: Result) -> _Key:
    """What tells a row from all others of its provisions."""
    return (result.limit_state, result.title, result.location, result.clause, result.unit)


def _judged(result: Result) -> bool:
    return result.kind is Kind.LIMIT and result.status is not Status.NOT_EVALUATED


def _ratio(result: Result) -> float:
    return float(result.ratio)


def _rises(ratio: float, before: float) -> bool:
    """Whether a ratio is larger than before; a row that was not there has risen."""
    if math.isnan(before):
        return True
    if math.isinf(before):
        return False
    return ratio > before + _RISE * max(1.0, abs(before))


def _row(result: Result) -> str:
    return f"{result.title}, {result.location}" if result.location else result.title
