"""Jackets to ask limit states about, and their answers, each worked out once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import Any, Final

import numpy as np

from jacketcheck.analysis.least_demand import with_least_demand
from jacketcheck.catalog.records import BoltProduct
from jacketcheck.conformance.marked_figures import MarkedFigures, marked_figures
from jacketcheck.conformance.standard import (
    Repairs,
    in_units,
    read_repairs,
    standard_repairs,
)
from jacketcheck.engine.asking import Answer, answer_of
from jacketcheck.engine.own_classes import jacket_for
from jacketcheck.errors import InputError
from jacketcheck.host.host import Host, PluginInfo, Registered
from jacketcheck.host.isolation import Outcome
from jacketcheck.inputs.repair_file import RepairInput
from jacketcheck.jacket.build import build_jacket
from jacketcheck.jacket.designs import leaves, pick, with_values
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.mechanics._arrays import Real

__all__ = ["GROWTH", "Bench"]

GROWTH: Final = (0.9, 1.0, 1.2)
"""Multiples of a leaf of the jacket, to see which way a ratio moves."""

_MANY: Final[Mapping[str, tuple[float, ...]]] = {
    "sleeve.thickness": (0.8, 1.0, 1.25),
    "grout.strength": (1.1, 1.0, 0.9),
    "bolts.pretension": (1.0, 0.9, 1.1),
    "demands.axial_load": (1.0, 1.2, 0.7),
}
"""Leaves of the jacket that differ among designs, as multiples of the standard ones."""


class Bench:
    """Jackets of the kit, and of the author, for one plug-in.

    Parameters
    ----------
    host
        With the plug-in in it.
    plugin
        Whose limit states and entries are looked at.
    repairs
        Repairs that the plug-in's author adds to the standard ones.
    """

    def __init__(self, host: Host, plugin: PluginInfo, repairs: Repairs) -> None:
        self.host = host
        self.plugin = plugin
        self._repairs = repairs
        self._answers: dict[tuple[str, str, str], Outcome[Answer]] = {}
        self._changes: dict[tuple[str, str, int], Jacket] = {}
        self._picked: dict[tuple[str, int], Jacket] = {}

    @cached_property
    def inputs(self) -> dict[str, RepairInput]:
        """Standard repairs, those of the author, and a standard one with each bolt brought."""
        catalog = self.host.catalog
        found = read_repairs({**standard_repairs(), **self._repairs}, catalog=catalog)
        return {**found, **dict(_with_own_bolts(found["metric"], self.host, self.plugin))}

    @cached_property
    def jackets(self) -> dict[str, Jacket]:
        """One design each."""
        return self._built(self.inputs)

    @cached_property
    def bases(self) -> tuple[str, ...]:
        """Names of the jackets that are no variants, with everything on them."""
        return tuple(
            name
            for name, repair in self.inputs.items()
            if name == repair.job.variant or name.endswith(f": {repair.job.variant}")
        )

    @cached_property
    def marked(self) -> dict[str, MarkedFigures]:
        """The jackets with everything on them, every figure of the catalogue marked."""
        return {name: marked_figures(self.jackets[name]) for name in self.bases}

    @cached_property
    def twins(self) -> dict[str, Jacket]:
        """The same jackets, built once more."""
        return self._built(self.inputs)

    @cached_property
    def rewritten(self) -> dict[str, Jacket]:
        """The same jackets, from an input that is written in the other system of units."""
        return self._built(
            {
                name: in_units(
                    repair, "us" if repair.job.units == "si" else "si", catalog=self.host.catalog
                )
                for name, repair in self.inputs.items()
            }
        )

    @cached_property
    def many(self) -> dict[str, Jacket]:
        """Some of the jackets as several designs at once."""
        chosen = [name for name in self.jackets if name not in {"smallest", "largest"}]
        return {name: with_values(self.jackets[name], self._spread(name)) for name in chosen}

    def one_of_many(self, name: str, index: int) -> Jacket:
        """One design out of `many`."""
        key = (name, index)
        if key not in self._picked:
            self._picked[key] = pick(self.many[name], index)
        return self._picked[key]

    def grown(self, name: str, leaf: str) -> Jacket | None:
        """A jacket as designs in which one leaf grows; None if it has no such number."""
        return self._changed(name, leaf, np.array(GROWTH))

    def holed(self, name: str, leaf: str) -> Jacket | None:
        """A jacket in which one leaf is a NaN; None if it has no such number."""
        return self._changed(name, leaf, np.nan)

    def least(self, name: str, provisions: str) -> Jacket:
        """A jacket as if its base asked as little of it as it ever can, without sections solved."""
        key = (name, f"least demand, {provisions}", 0)
        if key not in self._changes:
            self._changes[key] = with_least_demand(self.seen_by(provisions, self.jackets[name]))
        return self._changes[key]

    def seen_by(self, provisions: str, jacket: Jacket) -> Jacket:
        """A jacket as a set of provisions sees it; as it is where the set cannot be used."""
        try:
            return jacket_for(jacket, host=self.host, provisions=provisions)
        except InputError:
            return jacket

    def answer(self, one: Registered, jacket: Jacket, label: str) -> Outcome[Answer]:
        """What a limit state answers on a jacket, which goes by a label of its own."""
        key = (one.limit_state.provisions, one.limit_state.id, label)
        if key not in self._answers:
            seen = self.seen_by(one.limit_state.provisions, jacket)
            self._answers[key] = answer_of(one, seen, seconds=self.host.time_limit)
        return self._answers[key]

    def _changed(self, name: str, leaf: str, factors: Real) -> Jacket | None:
        value = dict(leaves(self.jackets[name])).get(leaf)
        if isinstance(value, bool) or not isinstance(value, int | float) or value == 0.0:
            return None
        key = (name, leaf, np.ndim(factors))
        if key not in self._changes:
            changed = {leaf: np.multiply(value, factors)}
            self._changes[key] = with_values(self.jackets[name], changed)
        return self._changes[key]

    def _built(self, inputs: Mapping[str, RepairInput]) -> dict[str, Jacket]:
        return {
            name: build_jacket(repair, catalog=self.host.catalog) for name, repair in inputs.items()
        }

    def _spread(self, name: str) -> dict[str, Any]:
        known: dict[str, float] = dict(leaves(self.jackets[name]))
        return {leaf: known[leaf] * np.array(factors) for leaf, factors in _MANY.items()}


def _with_own_bolts(
    repair: RepairInput, host: Host, plugin: PluginInfo
) -> Iterator[tuple[str, RepairInput]]:
    """A repair with each bolt product that the plug-in brings, where it can be built."""
    for entry in plugin.entries:
        kind, _, name = entry.partition("/")
        if kind != "bolts":
            continue
        changed = _with_bolts(repair, host.catalog.bolt_product(name))
        try:
            build_jacket(changed, catalog=host.catalog)
        except InputError:
            continue  # told where the product itself is looked at
        yield f"metric, with {name}", changed


def _with_bolts(repair: RepairInput, product: BoltProduct) -> RepairInput:
    """A repair with the size of a product that is nearest to a bolt of 24 mm."""
    size = min(product.sizes.values(), key=lambda one: abs(one.diameter - 24.0))
    tightening = "snug" if size.pretension is None else "turn-of-nut"
    if product.assembly == "twist-off" and size.pretension is not None:
        tightening = "twist-off"
    written = {"product": product.name, "diameter": size.name, "tightening": tightening}
    return repair.model_copy(update={"bolts": repair.bolts.model_copy(update=written)})
