"""From a jacket and a set of provisions to results; a check that fails becomes a visible row."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from jacketcheck.engine.asking import answer_of
from jacketcheck.engine.own_classes import jacket_for
from jacketcheck.host.host import Host, PluginInfo, PluginProblem, Registered
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.limit_state import Provisions
from jacketcheck.results import Kind, Result

__all__ = ["Answered", "answers", "evaluate", "problem_rows"]


@dataclass(frozen=True, slots=True)
class Answered:
    """What a limit state answered.

    Attributes
    ----------
    limit_state
        Its identifier.
    results
        Its rows; where it could not be evaluated the row that says so.
    refusal
        The error behind such a row, if there is one.
    """

    limit_state: str
    results: tuple[Result, ...]
    refusal: BaseException | None = None

    @property
    def refused(self) -> bool:
        """Whether any of its rows could not be evaluated."""
        return any(row.kind is Kind.NOT_EVALUATED for row in self.results)

    @property
    def reason(self) -> str:
        """Why, as its rows say."""
        return "; ".join(note for row in self.results for note in row.notes)


def evaluate(
    jacket: Jacket,
    *,
    host: Host,
    provisions: str = "us",
    only: Collection[str] | None = None,
) -> tuple[Result, ...]:
    """Evaluate every limit state of a set of provisions.

    Parameters
    ----------
    jacket
        One design, or many at once.
    host
        Where limit states come from.
    provisions
        Name of the set.
    only
        Limit states to evaluate; all by default. Problems of plug-ins are shown all the same.

    Returns
    -------
    tuple of Result
        In the order in which the limit states are registered. What could not be evaluated is
        among them as a result of its own kind.

    Raises
    ------
    InputError
        If the provisions are not known.
    """
    results = [
        row
        for one in answers(jacket, host=host, provisions=provisions, only=only)
        for row in one.results
    ]
    return (*results, *problem_rows(host, provisions, only=only))


def problem_rows(
    host: Host, provisions: str, *, only: Collection[str] | None = None
) -> tuple[Result, ...]:
    """Rows on plug-ins that failed, and on provisions that have no limit states at all.

    Parameters
    ----------
    host, provisions, only
        As in `evaluate`.
    """
    rows = tuple(_problem_row(problem, provisions) for problem in host.problems_for(provisions))
    if rows or only is not None or host.limit_states(provisions):
        return rows
    reason = f"provisions {provisions} have no limit states"
    nothing = _row("No limit state", Kind.NOT_EVALUATED, reason)
    return (replace(nothing, provisions=provisions, written_by=provisions),)


def answers(
    jacket: Jacket,
    *,
    host: Host,
    provisions: str = "us",
    only: Collection[str] | None = None,
    steps: bool = True,
) -> Iterator[Answered]:
    """Answers of the limit states of a set of provisions, one after the other.

    Parameters
    ----------
    jacket, host, provisions, only
        As in `evaluate`.
    steps
        Whether rows of our own keep their steps, which only readers need.
    """
    jacket = jacket_for(jacket, host=host, provisions=provisions)
    omitted = host.omitted(provisions)
    for one in host.limit_states(provisions):
        name = one.limit_state.id
        if only is not None and name not in only:
            continue
        if name in omitted:
            found: Sequence[Result]
            found = (_row(one.limit_state.title, Kind.NOT_APPLICABLE, omitted[name]),)
            written_by, refusal = _omitted_by(name, host.lineage(provisions)), None
        else:
            found, refusal = _evaluate_one(one, jacket, host, steps=steps)
            written_by = one.limit_state.provisions
        rows = tuple(
            replace(
                result,
                limit_state=name,
                provisions=provisions,
                written_by=written_by,
                origin=one.plugin.distribution,
                added_by=host.added_by(one),
            )
            for result in found
        )
        yield Answered(name, rows, refusal)


def _omitted_by(name: str, lineage: Sequence[Provisions]) -> str:
    """The set that leaves a limit state out, of those that do the nearest to the one asked for."""
    return next(one.id for one in reversed(lineage) if name in one.omits)


def _evaluate_one(
    one: Registered, jacket: Jacket, host: Host, *, steps: bool
) -> tuple[Sequence[Result], BaseException | None]:
    limit_state, plugin = one.limit_state, one.plugin
    key = (limit_state.provisions, limit_state.id)
    if key in host.given_up:
        problem = f"{host.given_up[key]} when it was asked before, and is not asked again"
        return (_row(limit_state.title, Kind.NOT_EVALUATED, _told(one, problem)),), None
    outcome = answer_of(one, jacket, seconds=host.time_limit, steps=steps)
    if outcome.timed_out:
        host.given_up[key] = str(outcome.problem)
    answer = outcome.problem if outcome.value is None else outcome.value
    remarks = tuple(f"plug-in {plugin.name} {remark}" for remark in outcome.remarks)
    if not isinstance(answer, tuple):
        row = _row(limit_state.title, Kind.NOT_EVALUATED, _told(one, answer), *remarks)
        return (row,), outcome.error
    first, *others = answer
    return (replace(first, notes=(*first.notes, *remarks)), *others), None


def _told(one: Registered, problem: object) -> str:
    return f"{_who(one.plugin)}limit state {one.limit_state.id}: {problem}"


def _who(plugin: PluginInfo) -> str:
    return "" if plugin.built_in else f"plug-in {plugin.name} ({plugin.origin}), "


def _row(title: str, kind: Kind, *notes: str) -> Result:
    """A row without numbers."""
    nothing = 0.0 if kind is Kind.NOT_APPLICABLE else np.nan
    return Result(title, "", nothing, nothing, "1", "", notes=notes, kind=kind)


def _problem_row(problem: PluginProblem, provisions: str) -> Result:
    plugin = problem.plugin
    note = f"{_who(plugin)}{problem.what}: {problem.message}"
    if not plugin.built_in:
        note += f"; switch it off with --without {plugin.name}"
    return replace(
        _row(f"Plug-in {plugin.name}", Kind.NOT_EVALUATED, note),
        location=problem.what,
        limit_state="plug-in-problem",
        provisions=provisions,
        written_by=problem.provisions or provisions,
        origin=plugin.distribution,
    )
