"""Strength of the grout from cubes or cylinders."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from jacketcheck.as_built.models import GroutRecord
from jacketcheck.as_built.records import Change, Comparison, Outcome
from jacketcheck.as_built.specified import Specified
from jacketcheck.errors import DomainError
from jacketcheck.mechanics.grout_cubes import CUBE_CONVERSION, cylinder_strength_of_cubes

__all__ = ["compare_grout", "strength_of_set"]

_LEAST_TESTS: Final = 3
_SINGLE: Final = 0.90
"""Least single test over the specified strength (ACI 318-19 26.12.3.1(b), above 5000 psi)."""
_ACCEPTANCE: Final = (
    "ACI 318-19 26.12.3.1: mean of three at least as specified, no single test below 0.9 of it"
)


def compare_grout(record: GroutRecord, specified: Specified) -> Iterator[Comparison]:
    """One line for cubes and one for cylinders."""
    if record.cube_strength is not None and record.cube_side is not None:
        yield from _cubes(record.cube_strength, record.cube_side, specified)
    if record.cylinder_strength is not None:
        yield _strength_line("strength of cylinders", record.cylinder_strength, specified, "")


def _cubes(found: Sequence[float], side: float, specified: Specified) -> Iterator[Comparison]:
    try:
        cylinders = [float(cylinder_strength_of_cubes(one, cube_side=side)) for one in found]
    except DomainError as error:
        yield Comparison(
            part="grout",
            item="strength of cylinders, from cubes",
            specified=float(specified.jacket.grout.strength),
            measured="not known",
            unit="MPa",
            rule="mean and every test",
            source=CUBE_CONVERSION,
            outcome=Outcome.UNKNOWN,
            note=str(error),
        )
        return
    ratio = sum(cylinders) / sum(found)
    note = f"taken as {ratio:.2f} of the cubes' strength"
    yield _strength_line("strength of cylinders, from cubes", cylinders, specified, note)


def strength_of_set(found: Sequence[float]) -> float:
    """Specified strength that a set of tests would just satisfy [MPa].

    Examples
    --------
    >>> strength_of_set([50.0, 52.0, 54.0]), strength_of_set([36.0, 50.0, 55.0])
    (52.0, 40.0)
    """
    return min(sum(found) / len(found), min(found) / _SINGLE)


def _strength_line(
    item: str, found: Sequence[float], specified: Specified, conversion: str
) -> Comparison:
    wanted = float(specified.jacket.grout.strength)
    reached = strength_of_set(found)
    line = Comparison(
        part="grout",
        item=item,
        specified=wanted,
        measured=reached,
        unit="MPa",
        rule="mean of the tests, and the lowest over 0.9; more is not counted",
        source=f"{_ACCEPTANCE}; {CUBE_CONVERSION}" if conversion else _ACCEPTANCE,
        outcome=Outcome.MEETS,
        note=conversion,
    )
    if len(found) < _LEAST_TESTS:
        count = f"{len(found)} of {_LEAST_TESTS} tests recorded"
        return replace(
            line, outcome=Outcome.UNKNOWN, note="; ".join(filter(None, (count, conversion)))
        )
    if reached >= wanted * (1.0 - 1e-6):
        return line
    change = Change({"grout.strength": reached, "grout.specimen": "cylinder"})
    return replace(line, outcome=Outcome.DEVIATES, rechecks=(change,), as_built=change)
