"""From an input with arrays to the designs that can be built, and why the others cannot."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import InputError, JacketcheckError
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.replaced import replaced
from jacketcheck.jacket.build import assemble_jacket
from jacketcheck.jacket.designs import has_designs, joined, repeated, take
from jacketcheck.jacket.geometry_rules import geometry_rules
from jacketcheck.jacket.jacket import Jacket

__all__ = ["Designs", "Indexes", "Refusal", "assemble_designs"]

Indexes = NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Refusal:
    """Designs that cannot be built for one reason: field, and what is wrong with it."""

    path: str
    reason: str
    indexes: Indexes


@dataclass(frozen=True)
class Designs:
    """Designs of one input.

    Attributes
    ----------
    jacket
        Those that can be built; None if there is none.
    indexes
        Their places among all that were asked for.
    refusals
        The others; a design stands under the first rule that it breaks.
    """

    jacket: Jacket | None
    indexes: Indexes
    refusals: tuple[Refusal, ...]


def assemble_designs(
    repair: RepairInput, values: Mapping[str, Any], *, count: int, catalog: Catalog
) -> Designs:
    """Build many designs at once and leave out those whose geometry is impossible.

    Parameters
    ----------
    repair
        Validated input.
    values
        New value by dotted path: one for all designs, or an array over them.
    count
        Number of designs.
    catalog
        What the input may name.
    """
    refusals: list[Refusal] = []
    whole = np.arange(count)
    parts = _assembled(repair, values, whole, catalog, refusals) if count else []
    kept: list[Jacket] = []
    places: list[Indexes] = []
    for jacket, indexes in parts:
        good = _buildable(jacket, indexes, refusals)
        if good.size:
            kept.append(jacket if good.size == indexes.size else take(jacket, good))
            places.append(indexes[good])
    if not kept:
        return Designs(None, np.empty(0, dtype=np.intp), tuple(refusals))
    jacket = kept[0] if len(kept) == 1 else joined(kept)
    return Designs(jacket, np.concatenate(places), tuple(refusals))


def _assembled(
    repair: RepairInput,
    values: Mapping[str, Any],
    indexes: Indexes,
    catalog: Catalog,
    refusals: list[Refusal],
) -> list[tuple[Jacket, Indexes]]:
    """Jackets of the designs; where one cannot be looked up, the rest is built without it."""
    chosen = {
        path: value[indexes] if isinstance(value, np.ndarray) else value
        for path, value in values.items()
    }
    try:
        jacket = assemble_jacket(replaced(repair, chosen), catalog=catalog)
    except JacketcheckError as error:
        varies = any(isinstance(value, np.ndarray) for value in values.values())
        if varies and indexes.size > 1:
            halves = np.array_split(indexes, 2)
            return [
                part
                for half in halves
                for part in _assembled(repair, values, half, catalog, refusals)
            ]
        refusals.append(_refusal(error, indexes))
        return []
    if not has_designs(jacket):
        return [(repeated(jacket, indexes.size), indexes)]
    return [(jacket, indexes)]


def _buildable(jacket: Jacket, indexes: Indexes, refusals: list[Refusal]) -> Indexes:
    """Positions of the designs that keep every rule; the others are written down."""
    good = np.ones(indexes.size, dtype=bool)
    for rule in geometry_rules(jacket):
        broken = good & ~np.broadcast_to(rule.holds, good.shape)
        if broken.any():
            reason = f"{rule.relation} {rule.reason}"
            refusals.append(Refusal(rule.path, reason, indexes[broken]))
            good &= ~broken
    return np.flatnonzero(good)


def _refusal(error: JacketcheckError, indexes: Indexes) -> Refusal:
    if isinstance(error, InputError):
        first = error.problems[0]
        value = f" = {first.value}" if first.value else ""
        return Refusal(first.path, f"{value.strip()} {first.message}".strip(), indexes)
    return Refusal("", str(error), indexes)
