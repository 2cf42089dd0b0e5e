"""Designs of a sweep: every combination of the values, or one after the other side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import prod
from typing import Any, Final

import numpy as np

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.jacket.many import Indexes
from jacketcheck.sweep.vary import Varied

__all__ = ["MAX_DESIGNS", "Plan", "plan_of"]

MAX_DESIGNS: Final = 200_000
"""Designs of one sweep at most."""


@dataclass(frozen=True)
class Plan:
    """Designs of a sweep.

    Attributes
    ----------
    varied
        Fields that vary.
    places
        Which of its values each field has, shape (fields, designs).
    is_grid
        Whether every combination is there; else fields go side by side.
    """

    varied: tuple[Varied, ...]
    places: Indexes
    is_grid: bool

    @property
    def count(self) -> int:
        """Number of designs."""
        return int(self.places.shape[1])

    def column(self, index: int) -> list[Any]:
        """Value of one field in every design."""
        values = self.varied[index].values
        return [values[place] for place in self.places[index].tolist()]

    def groups(self) -> Iterator[tuple[dict[str, Any], Indexes]]:
        """Designs that differ in numbers only: new values by path, and which designs they are."""
        fixed = [i for i, one in enumerate(self.varied) if not one.is_array]
        keys = self.places[fixed] if fixed else np.zeros((1, self.count), dtype=np.intp)
        _, owners = np.unique(keys, axis=1, return_inverse=True)
        for owner in range(int(owners.max()) + 1):
            designs = np.flatnonzero(owners.ravel() == owner)
            values: dict[str, Any] = {}
            for index, one in enumerate(self.varied):
                chosen = self.places[index][designs]
                if one.is_array:
                    values[one.path] = np.array(one.values, dtype=float)[chosen]
                else:
                    values[one.path] = one.values[int(chosen[0])]
            yield values, designs


def plan_of(varied: Sequence[Varied], *, side_by_side: bool = False) -> Plan:
    """Designs out of the fields that vary.

    Parameters
    ----------
    varied
        At least one; no path twice.
    side_by_side
        Whether the first values go together, then the second ones, instead of every combination.

    Raises
    ------
    InputError
        If a path is there twice, there are too many designs, or side by side the numbers of values
        differ.
    """
    paths = [one.path for one in varied]
    if twice := next((path for path in paths if paths.count(path) > 1), None):
        raise _refusal(twice, "is varied twice")
    lengths = [len(one.values) for one in varied]
    if side_by_side and len(set(lengths)) > 1:
        counts = ", ".join(f"{one.path} {len(one.values)}" for one in varied)
        raise _refusal("--zip", f"needs as many values of each field, has {counts}")
    count = lengths[0] if side_by_side else prod(lengths)
    if count > MAX_DESIGNS:
        raise _refusal("--vary", f"asks for {count:,} designs, more than {MAX_DESIGNS:,}")
    if side_by_side:
        places = np.tile(np.arange(count), (len(varied), 1))
    else:
        places = np.stack(np.unravel_index(np.arange(count), lengths))
    return Plan(tuple(varied), places.astype(np.intp), not side_by_side)


def _refusal(what: str, message: str) -> InputError:
    return InputError([InputProblem(what, "", message)], source="options")
