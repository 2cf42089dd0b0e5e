"""Numbered cases: the same seed and number always give the same file."""

from __future__ import annotations

import copy
import tomllib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from random import Random
from typing import Final

from jacketcheck.catalog.catalog import Catalog
from tests.fuzz.mutations import mutated
from tests.fuzz.repairs import valid_repair
from tests.fuzz.toml_writing import Table, document

__all__ = ["Case", "case_of"]

_ROOT: Final = Path(__file__).parents[2]
_WRITTEN: Final = (
    "reference_cases/quarry-road-pier/repair.toml",
    "tests/inputs/repair_us.toml",
    "tests/inputs/repair_si.toml",
    "jacketcheck/conformance/repairs/metric.toml",
    "jacketcheck/conformance/repairs/customary.toml",
)
_AS_DRAWN: Final = 0.1
"""Share of cases that nobody breaks: they must be checked in full."""


@dataclass(frozen=True)
class Case:
    """One file.

    Attributes
    ----------
    number
        Number of the case.
    content
        What stands in the file.
    how
        What was done to it.
    reason
        Why it must be refused; empty where it may be good.
    good
        Whether it must be checked.
    """

    number: int
    content: bytes
    how: tuple[str, ...]
    reason: str
    good: bool


def case_of(seed: int, number: int, catalog: Catalog) -> Case:
    """The case with a number."""
    random = Random(f"{seed}/{number}")  # noqa: S311 - repeatable, not secret
    if random.random() < _AS_DRAWN:
        content = document(valid_repair(random, catalog)).encode()
        return Case(number, content, ("as drawn",), "", good=True)
    drawn = random.random() < 0.7
    tables = valid_repair(random, catalog) if drawn else _written(random.choice(_WRITTEN))
    broken = mutated(random, tables)
    return Case(number, broken.content, broken.how, broken.reason, good=False)


def _written(name: str) -> Table:
    return copy.deepcopy(_parsed(name))


@lru_cache
def _parsed(name: str) -> Table:
    return tomllib.loads((_ROOT / name).read_text("utf-8"))
