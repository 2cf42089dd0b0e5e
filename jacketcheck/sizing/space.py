"""All designs of a search: numbered, described one by one, and assembled many at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import product
from math import prod
from typing import Any, Final

import numpy as np

from jacketcheck.catalog.catalog import Catalog
from jacketcheck.errors import CatalogError, InputError, InputProblem
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.inputs.replaced import replaced
from jacketcheck.inputs.sizing import Sizing
from jacketcheck.jacket.many import Designs, Indexes, Refusal, assemble_designs
from jacketcheck.sizing.axes import Axis, axes_of
from jacketcheck.sizing.follow import field_values, with_added_bars

__all__ = ["MAX_DESIGNS", "Combination", "Space", "space_of"]

MAX_DESIGNS: Final = 2_000_000
"""Designs of one search at most."""


@dataclass(frozen=True)
class _Block:
    """Designs with added bars, or those without."""

    repair: RepairInput
    axes: tuple[Axis, ...]

    @cached_property
    def choices(self) -> tuple[Axis, ...]:
        return tuple(axis for axis in self.axes if axis.is_choice)

    @cached_property
    def numbers(self) -> tuple[Axis, ...]:
        return tuple(axis for axis in self.axes if not axis.is_choice)

    @cached_property
    def shape(self) -> tuple[int, ...]:
        """Lengths of the axes of numbers."""
        return tuple(len(axis.values) for axis in self.numbers)

    @property
    def count(self) -> int:
        return prod(len(axis.values) for axis in self.axes)


@dataclass(frozen=True)
class Combination:
    """Designs that have names and kinds in common and differ in numbers.

    Attributes
    ----------
    names
        Value of each axis of names and kinds, by path.
    first
        Number of the first design.
    count
        Number of designs.
    """

    block: _Block
    names: dict[str, Any]
    first: int
    count: int

    def values(self, inner: Indexes | int) -> dict[str, Any]:
        """Value of each axis, by path, at places within the combination."""
        places = np.unravel_index(inner, self.block.shape)
        numbers = {
            axis.path: np.asarray(axis.values)[place]
            if isinstance(inner, np.ndarray)
            else axis.values[int(place)]
            for axis, place in zip(self.block.numbers, places, strict=True)
        }
        return {**self.names, **numbers}

    def assemble(self, inner: Indexes, *, catalog: Catalog) -> Designs:
        """Build designs at places within the combination; indexes count within `inner`."""
        block, values = self.block, self.values(inner)
        try:
            fields = field_values(block.repair, block.axes, values, catalog=catalog)
        except CatalogError as error:
            # a size that one of the products is not made in
            refusal = Refusal("bolts.diameter", error.problem, np.arange(inner.size))
            return Designs(None, np.empty(0, dtype=np.intp), (refusal,))
        made, refusals = _made_so_thick(fields, block.repair, inner.size, catalog)
        rolled = {p: v[made] if isinstance(v, np.ndarray) else v for p, v in fields.items()}
        found = assemble_designs(block.repair, rolled, count=made.size, catalog=catalog)
        kept = (replace(one, indexes=made[one.indexes]) for one in found.refusals)
        return Designs(found.jacket, made[found.indexes], (*refusals, *kept))


def _made_so_thick(
    fields: dict[str, Any], repair: RepairInput, count: int, catalog: Catalog
) -> tuple[Indexes, tuple[Refusal, ...]]:
    """Designs whose plates the steel's standard covers, and the others."""
    good = np.ones(count, dtype=bool)
    refusals: list[Refusal] = []
    for part in ("sleeve", "splice"):
        thickness = fields.get(f"{part}.thickness", getattr(repair, part).thickness)
        steel = catalog.plate_steel(fields.get(f"{part}.steel", getattr(repair, part).steel))
        thick = good & np.greater(thickness, steel.max_thickness * (1.0 + 1e-9))
        if thick.any():
            reason = f"is more than the thickest plate of {steel.name}"
            refusals.append(Refusal(f"{part}.thickness", reason, np.flatnonzero(thick)))
            good &= ~thick
    return np.flatnonzero(good), tuple(refusals)


@dataclass(frozen=True)
class Space:
    """All designs of a search, numbered from zero.

    Attributes
    ----------
    catalog
        What designs may name.
    blocks
        Designs with added bars and those without, as far as both are tried.
    """

    catalog: Catalog
    blocks: tuple[_Block, ...]

    @cached_property
    def count(self) -> int:
        """Number of designs."""
        return sum(block.count for block in self.blocks)

    @property
    def axes(self) -> tuple[Axis, ...]:
        """Every axis, those of added bars included where they are tried."""
        return max((block.axes for block in self.blocks), key=len)

    @property
    def tries_without_bars(self) -> bool:
        """Whether designs with added bars and without are tried."""
        return len(self.blocks) > 1

    @cached_property
    def combinations(self) -> tuple[Combination, ...]:
        """All combinations of names and kinds, in the order of the designs."""
        return tuple(self._combinations())

    def _combinations(self) -> Iterator[Combination]:
        first = 0
        for block in self.blocks:
            count = prod(block.shape)
            for names in product(*(axis.values for axis in block.choices)):
                paths = (axis.path for axis in block.choices)
                yield Combination(block, dict(zip(paths, names, strict=True)), first, count)
                first += count

    def at(self, number: int) -> tuple[Combination, int]:
        """Combination of a design, and its place in it."""
        firsts = self._firsts
        index = int(np.searchsorted(firsts, number, side="right")) - 1
        return self.combinations[index], number - int(firsts[index])

    @cached_property
    def _firsts(self) -> Indexes:
        return np.array([one.first for one in self.combinations], dtype=np.intp)

    def values(self, number: int) -> dict[str, Any]:
        """Value of each axis for one design, by path."""
        combination, place = self.at(number)
        return combination.values(place)

    def repair(self, number: int) -> RepairInput:
        """Input of one design."""
        combination, place = self.at(number)
        block = combination.block
        values = field_values(
            block.repair, block.axes, combination.values(place), catalog=self.catalog
        )
        plain = {path: _plain(value) for path, value in values.items()}
        return replaced(block.repair, plain)

    def grouped(self, numbers: Indexes) -> Iterator[tuple[Combination, Indexes]]:
        """Combinations that hold some designs, with their places among `numbers`."""
        owners = np.searchsorted(self._firsts, numbers, side="right") - 1
        for index in np.unique(owners):
            yield self.combinations[index], np.flatnonzero(owners == index)

    def line(self, start: Combination, values: Mapping[str, Any], axis: Axis) -> Space:
        """Space of one design in which a single axis varies.

        Parameters
        ----------
        start
            Combination that the design belongs to, or that it was led away from.
        values
            Value of each of its axes, by path; they may lie beyond the bounds.
        axis
            What varies.
        """
        axes = tuple(
            axis if one.path == axis.path else one.at(values[one.path]) for one in start.block.axes
        )
        return Space(self.catalog, (_Block(start.block.repair, axes),))


def space_of(repair: RepairInput, sizing: Sizing, *, catalog: Catalog) -> Space:
    """Space of all designs within some bounds.

    Raises
    ------
    InputError
        If the bounds leave nothing to try, or more designs than can be looked at.
    """
    tried = sizing.added_bars
    start = with_added_bars(repair, tried, catalog=catalog)
    blocks = [_Block(start, axes_of(start, sizing, catalog=catalog))]
    if tried is not None and tried.left_out and start.added_bars is not None:
        bare = sizing.model_copy(update={"added_bars": None})
        without = replaced(start, {"added_bars": None})
        blocks.insert(0, _Block(without, axes_of(without, bare, catalog=catalog)))
    space = Space(catalog, tuple(blocks))
    if space.count > MAX_DESIGNS:
        varied = [axis for axis in space.axes if len(axis.values) > 1]
        message = (
            f"asks for {space.count:,} designs, more than {MAX_DESIGNS:,}; narrow the bounds: "
            + ", ".join(f"{axis.path} {len(axis.values)}" for axis in varied)
        )
        raise InputError([InputProblem("sizing", "", message)], source="sizing")
    return space


def _plain(value: Any) -> Any:
    return value.item() if isinstance(value, np.generic) else value
