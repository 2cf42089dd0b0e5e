"""Rows that limit states of any code write alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from jacketcheck.limit_state import NoScatter
from jacketcheck.mechanics._arrays import Real
from jacketcheck.results import Kind, Result, Step, Steps

__all__ = [
    "LAYOUT_RULE",
    "length_at_least",
    "length_at_most",
    "not_applicable",
    "not_evaluated",
    "only_valid",
    "within_range",
]

LAYOUT_RULE: Final = NoScatter(
    "a rule of layout, which the jacket meets as drawn or not: no scatter"
)


def length_at_least(
    title: str,
    location: str,
    *,
    provided: Real,
    needed: Real,
    clause: str,
    symbol: str,
    rule: str,
    given: Step | Sequence[Step] = (),
    source: str = "input",
) -> Result:
    """A length that must not fall below a rule: the demand is the rule, the capacity the length.

    Parameters
    ----------
    title, location, clause
        As in the row.
    provided, needed
        The length, and what the rule asks for [mm].
    symbol, rule
        Symbol of the length, and the rule as it is printed.
    given
        What the rule starts from, printed above it: a step or several.
    source
        Field of the input that holds the length, e.g. ``input bolts.pitch``.
    """
    steps = _begun(given)
    steps.add(f"{symbol},min", rule, needed, "mm", clause)
    steps.add(symbol, "provided", provided, "mm", source)
    return Result(title, location, needed, provided, "mm", clause, steps.lines)


def length_at_most(
    title: str,
    location: str,
    *,
    provided: Real,
    allowed: Real,
    clause: str,
    symbol: str,
    rule: str,
    given: Step | Sequence[Step] = (),
    source: str = "input",
) -> Result:
    """A length that must not exceed a rule: the demand is the length, the capacity the rule.

    Parameters
    ----------
    title, location, clause, symbol, rule, given, source
        As in `length_at_least`.
    provided, allowed
        The length, and what the rule allows [mm].
    """
    steps = _begun(given)
    steps.add(symbol, "provided", provided, "mm", source)
    steps.add(f"{symbol},max", rule, allowed, "mm", clause)
    return Result(title, location, provided, allowed, "mm", clause, steps.lines)


def _begun(given: Step | Sequence[Step]) -> Steps:
    steps = Steps()
    for one in (given,) if isinstance(given, Step) else given:
        steps.add(one.symbol, one.expression, one.value, one.unit, one.source)
    return steps


def within_range(value: Real, valid: Real, stand_in: float) -> Real:
    """What a formula is asked for: the value of valid designs, a stand-in for the others.

    Where no design is valid the value stays, so that the formula says what is wrong with it.
    """
    return np.where(np.logical_or(valid, not np.any(valid)), value, stand_in)


def only_valid(answer: Real, valid: Real) -> Real:
    """The answer for valid designs, and none for the others, which then read as not evaluated."""
    return np.where(valid, answer, np.nan)


def not_applicable(title: str, reason: str, *, location: str = "", clause: str = "") -> Result:
    """A row that says why a limit state does not apply to this jacket."""
    return Result(
        title=title,
        location=location,
        demand=0.0,
        capacity=0.0,
        unit="1",
        clause=clause,
        notes=(reason,),
        kind=Kind.NOT_APPLICABLE,
    )


def not_evaluated(title: str, reason: str, *, location: str = "", clause: str = "") -> Result:
    """A row that should have a verdict and has none, beside others of its limit state that have."""
    row = not_applicable(title, reason, location=location, clause=clause)
    return replace(row, kind=Kind.NOT_EVALUATED)
