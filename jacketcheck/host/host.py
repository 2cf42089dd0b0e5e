"""The host: what all plug-ins bring, in one place, with a name to every problem."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from jacketcheck.bond_model import BondModel
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel
from jacketcheck.errors import CatalogError, InputError, InputProblem
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT
from jacketcheck.limit_state import LimitState, Provisions

__all__ = ["Host", "PluginInfo", "PluginProblem", "Registered"]


@dataclass(frozen=True, slots=True)
class PluginInfo:
    """A plug-in as it is listed.

    Attributes
    ----------
    name
        Name of its entry point.
    distribution, version
        What was installed.
    built_in
        Whether it is the package's own.
    provisions, limit_states
        What it brought; limit states as ``provisions/id``.
    problems
        Why it, or a part of it, could not be used.
    """

    name: str
    distribution: str
    version: str
    built_in: bool = False
    provisions: tuple[str, ...] = ()
    limit_states: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()

    @property
    def origin(self) -> str:
        """Distribution with its version."""
        return f"{self.distribution} {self.version}"


@dataclass(frozen=True, slots=True)
class PluginProblem:
    """Something that a plug-in brought and that cannot be used; it becomes a visible row.

    `provisions` is None where the problem may touch any provisions.
    """

    plugin: PluginInfo
    what: str
    message: str
    provisions: str | None = None


@dataclass(frozen=True, slots=True)
class Registered:
    """A limit state and the plug-in that brought it."""

    limit_state: LimitState
    plugin: PluginInfo


@dataclass(frozen=True)
class Host:
    """All plug-ins of one run; see `jacketcheck.host.load_host`.

    Attributes
    ----------
    plugins
        In the order in which they were asked.
    catalog
        Built-in entries and those of plug-ins.
    bond_models
        By id.
    problems
        Whatever could not be used.
    time_limit
        Seconds that one call of a foreign limit state may take.
    """

    plugins: tuple[PluginInfo, ...]
    catalog: Catalog
    provisions: Mapping[str, Provisions]
    bond_models: Mapping[str, BondModel]
    registered: tuple[Registered, ...]
    problems: tuple[PluginProblem, ...] = ()
    time_limit: float = DEFAULT_TIME_LIMIT
    switched_off: tuple[str, ...] = ()

    def lineage(self, provisions: str) -> tuple[Provisions, ...]:
        """A set of provisions and those it inherits from, the farthest first.

        Raises
        ------
        InputError
            If a set is not known or inherits from itself.
        """
        chain: list[Provisions] = []
        name: str | None = provisions
        while name is not None:
            found = self.provisions.get(name)
            if found is None or found in chain:
                raise self._unknown(name, provisions)
            chain.append(found)
            name = found.inherits
        return tuple(reversed(chain))

    def limit_states(self, provisions: str) -> tuple[Registered, ...]:
        """Limit states of a set of provisions, inherited ones replaced where it has its own."""
        chosen: dict[str, Registered] = {}
        for ancestor in self.lineage(provisions):
            for one in self.registered:
                if one.limit_state.provisions == ancestor.id:
                    chosen[one.limit_state.id] = one
        return tuple(chosen.values())

    def omitted(self, provisions: str) -> dict[str, str]:
        """Limit states that do not apply in a set of provisions, with the reasons."""
        reasons: dict[str, str] = {}
        for ancestor in self.lineage(provisions):
            reasons.update(ancestor.omits)
        return reasons

    def problems_for(self, provisions: str) -> tuple[PluginProblem, ...]:
        """Problems that touch a set of provisions."""
        names = {ancestor.id for ancestor in self.lineage(provisions)}
        return tuple(
            problem
            for problem in self.problems
            if problem.provisions is None or problem.provisions in names
        )

    def _unknown(self, name: str, asked: str) -> InputError:
        known = ", ".join(sorted(self.provisions))
        message = f"is not known; known are {known}"
        if name != asked:
            message = f"inherits from {name!r}, which {message}"
        failed = [f"{p.plugin.name} ({p.plugin.origin}) {p.message}" for p in self.problems]
        if failed:
            message += f"; plug-ins with problems: {'; '.join(failed)}"
        return InputError([InputProblem("provisions", repr(asked), message)], source="options")


@dataclass
class HostBuilder:
    """Collects what plug-ins bring and writes down what cannot be used."""

    catalog: Catalog
    plugins: list[PluginInfo] = field(default_factory=list)
    provisions: dict[str, Provisions] = field(default_factory=dict)
    bond_models: dict[str, BondModel] = field(default_factory=dict)
    registered: list[Registered] = field(default_factory=list)
    problems: list[PluginProblem] = field(default_factory=list)

    def add(self, plugin: PluginInfo, brought: Mapping[str, Sequence[Any]]) -> None:
        """Take over what one plug-in brought, hook by hook."""
        before = len(self.problems)
        takers: dict[str, Callable[[PluginInfo, Any], None]] = {
            "jacketcheck_provisions": self._take_provisions,
            "jacketcheck_bond_models": self._take_bond_model,
            "jacketcheck_limit_states": self._take_limit_state,
        }
        for hook, entries in brought.items():
            for entry in entries:
                if hook in takers:
                    takers[hook](plugin, entry)
                else:
                    self._take_catalog_entry(plugin, hook, entry)
        self.plugins.append(
            replace(
                plugin,
                provisions=tuple(
                    p.id for p in brought.get("jacketcheck_provisions", ()) if _is(p, Provisions)
                ),
                limit_states=tuple(
                    f"{one.limit_state.provisions}/{one.limit_state.id}"
                    for one in self.registered
                    if one.plugin is plugin
                ),
                problems=plugin.problems
                + tuple(f"{p.what}: {p.message}" for p in self.problems[before:]),
            )
        )

    def report(
        self, plugin: PluginInfo, what: str, message: str, provisions: str | None = None
    ) -> None:
        """Write a problem down."""
        self.problems.append(PluginProblem(plugin, what, message, provisions))

    def _wrong_type(self, plugin: PluginInfo, hook: str, wanted: type, entry: object) -> bool:
        if isinstance(entry, wanted):
            return False
        self.report(plugin, hook, f"brought a {type(entry).__name__}, not a {wanted.__name__}")
        return True

    def _take_provisions(self, plugin: PluginInfo, entry: Any) -> None:
        if self._wrong_type(plugin, "jacketcheck_provisions", Provisions, entry):
            return
        if entry.id in self.provisions:
            self.report(plugin, f"provisions {entry.id}", "id is already taken", entry.id)
        else:
            self.provisions[entry.id] = entry

    def _take_bond_model(self, plugin: PluginInfo, entry: Any) -> None:
        if self._wrong_type(plugin, "jacketcheck_bond_models", BondModel, entry):
            return
        if entry.id in self.bond_models:
            self.report(plugin, f"bond model {entry.id}", "id is already taken")
        else:
            self.bond_models[entry.id] = entry

    def _take_limit_state(self, plugin: PluginInfo, entry: Any) -> None:
        if self._wrong_type(plugin, "jacketcheck_limit_states", LimitState, entry):
            return
        for one in self.registered:
            if (one.limit_state.id, one.limit_state.provisions) == (entry.id, entry.provisions):
                self.report(
                    plugin,
                    f"limit state {entry.id}",
                    f"id is already taken in provisions {entry.provisions} by "
                    f"{one.plugin.name} ({one.plugin.origin})",
                    entry.provisions,
                )
                return
        self.registered.append(Registered(entry, plugin))

    def _take_catalog_entry(self, plugin: PluginInfo, hook: str, entry: Any) -> None:
        if self._wrong_type(plugin, hook, _CATALOG_RECORDS[hook], entry):
            return
        try:
            self.catalog = self.catalog.extended(**{hook.removeprefix("jacketcheck_"): [entry]})
        except CatalogError as error:
            self.report(plugin, "catalogue", str(error))


_CATALOG_RECORDS: dict[str, type] = {
    "jacketcheck_bars": Bar,
    "jacketcheck_rebar_steels": RebarSteel,
    "jacketcheck_bolts": BoltProduct,
    "jacketcheck_plate_steels": PlateSteel,
    "jacketcheck_faying_classes": FayingClass,
}


def _is(entry: object, wanted: type) -> bool:
    return isinstance(entry, wanted)
