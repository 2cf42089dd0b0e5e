"""Rows as these provisions write them."""

from __future__ import annotations

from jacketcheck.plugin import Kind, Real, Result, Steps
from jacketcheck_europe.partial_factors import PartialFactors

__all__ = ["at_least", "at_most", "resistance_row"]


def resistance_row(
    title: str,
    location: str,
    steps: Steps,
    *,
    demand: Real,
    capacity: Real,
    unit: str,
    clause: str,
    factors: PartialFactors,
    notes: tuple[str, ...] = (),
    kind: Kind = Kind.LIMIT,
) -> Result:
    """A demand against a design resistance; says whose partial factors it has."""
    return Result(
        title, location, demand, capacity, unit, clause, steps.lines, (*notes, factors.note), kind
    )


def at_least(
    title: str, location: str, *, provided: Real, needed: Real, clause: str, symbol: str, rule: str
) -> Result:
    """A length that must not fall below a rule: demand is the rule, capacity the length."""
    steps = Steps()
    steps.add(f"{symbol},min", rule, needed, "mm", clause)
    steps.add(symbol, "provided", provided, "mm", "input")
    return Result(title, location, needed, provided, "mm", clause, steps.lines)


def at_most(
    title: str, location: str, *, provided: Real, allowed: Real, clause: str, symbol: str, rule: str
) -> Result:
    """A length that must not exceed a rule: demand is the length, capacity the rule."""
    steps = Steps()
    steps.add(symbol, "provided", provided, "mm", "input")
    steps.add(f"{symbol},max", rule, allowed, "mm", clause)
    return Result(title, location, provided, allowed, "mm", clause, steps.lines)
