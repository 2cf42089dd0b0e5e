"""From a jacket and a set of provisions to results; a check that fails becomes a visible row."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

import numpy as np

from jacketcheck.engine.validation import contract_problem
from jacketcheck.errors import JacketcheckError
from jacketcheck.host.host import Host, PluginProblem, Registered
from jacketcheck.host.isolation import call_isolated, describe
from jacketcheck.jacket.designs import design_count, has_designs
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.results import Kind, Result

__all__ = ["evaluate"]


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
    omitted = host.omitted(provisions)
    results: list[Result] = []
    for one in host.limit_states(provisions):
        name = one.limit_state.id
        if only is not None and name not in only:
            continue
        if name in omitted:
            found: Sequence[Result] = (_not_applicable(one, omitted[name]),)
        else:
            found = _evaluate_one(one, jacket, host)
        results += (
            replace(result, limit_state=name, provisions=provisions, origin=one.plugin.distribution)
            for result in found
        )
    results += (_problem_row(problem, provisions) for problem in host.problems_for(provisions))
    return tuple(results)


def _evaluate_one(one: Registered, jacket: Jacket, host: Host) -> Sequence[Result]:
    if one.plugin.built_in:
        try:
            with np.errstate(all="ignore"):
                value: object = one.limit_state.evaluate(jacket)
        except JacketcheckError as error:
            return (_failure(one, str(error)),)
        except Exception as error:  # noqa: BLE001 - one broken check must not hide the others
            return (_failure(one, describe(error)),)
    else:
        outcome = call_isolated(one.limit_state.evaluate, jacket, seconds=host.time_limit)
        if outcome.problem is not None:
            known = isinstance(outcome.error, JacketcheckError)
            return (_failure(one, str(outcome.error) if known else outcome.problem),)
        value = outcome.value
    shape = (design_count(jacket),) if has_designs(jacket) else ()
    checked = contract_problem(value, shape)
    if isinstance(checked, str):
        return (_failure(one, checked),)
    return checked


def _failure(one: Registered, reason: str) -> Result:
    """Row of a limit state that should have been evaluated and could not be."""
    who = "" if one.plugin.built_in else f"plug-in {one.plugin.name} ({one.plugin.origin}), "
    return Result(
        title=one.limit_state.title,
        location="",
        demand=np.nan,
        capacity=np.nan,
        unit="1",
        clause="",
        notes=(f"{who}limit state {one.limit_state.id}: {reason}",),
        kind=Kind.NOT_EVALUATED,
    )


def _not_applicable(one: Registered, reason: str) -> Result:
    return Result(
        title=one.limit_state.title,
        location="",
        demand=0.0,
        capacity=0.0,
        unit="1",
        clause="",
        notes=(reason,),
        kind=Kind.NOT_APPLICABLE,
    )


def _problem_row(problem: PluginProblem, provisions: str) -> Result:
    plugin = problem.plugin
    return Result(
        title=f"Plug-in {plugin.name}",
        location=problem.what,
        demand=np.nan,
        capacity=np.nan,
        unit="1",
        clause="",
        notes=(
            (
                f"plug-in {plugin.name} ({plugin.origin}), {problem.what}: {problem.message}; "
                f"switch it off with --without {plugin.name}"
            ),
        ),
        kind=Kind.NOT_EVALUATED,
        limit_state="plug-in-problem",
        provisions=provisions,
        origin=plugin.distribution,
    )
