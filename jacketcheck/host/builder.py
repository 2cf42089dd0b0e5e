"""Collecting what plug-ins bring; whatever cannot be used is written down, never raised."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any

from jacketcheck.catalog.bond_models import BondModel
from jacketcheck.catalog.catalog import Catalog
from jacketcheck.catalog.records import Bar, BoltProduct, FayingClass, PlateSteel, RebarSteel
from jacketcheck.errors import CatalogError
from jacketcheck.host.guarded import guarded_bond_model
from jacketcheck.host.host import PluginInfo, PluginProblem, Registered
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT, describe
from jacketcheck.limit_state import LimitState, Provisions

__all__ = ["HostBuilder"]

_RECORDS: dict[str, type] = {
    "jacketcheck_provisions": Provisions,
    "jacketcheck_bars": Bar,
    "jacketcheck_rebar_steels": RebarSteel,
    "jacketcheck_bolts": BoltProduct,
    "jacketcheck_plate_steels": PlateSteel,
    "jacketcheck_faying_classes": FayingClass,
    "jacketcheck_bond_models": BondModel,
    "jacketcheck_limit_states": LimitState,
}


@dataclass
class HostBuilder:
    """Takes over what plug-ins bring, one plug-in after the other.

    Attributes
    ----------
    catalog
        Built-in entries, and those that were added.
    time_limit
        Seconds that one call of what a plug-in brought may take.
    provisions, registered
        What can be used so far.
    problems
        What cannot.
    """

    catalog: Catalog
    time_limit: float = DEFAULT_TIME_LIMIT
    provisions: dict[str, Provisions] = field(default_factory=dict)
    registered: list[Registered] = field(default_factory=list)
    problems: list[PluginProblem] = field(default_factory=list)
    _plugins: list[PluginInfo] = field(default_factory=list)
    _brought_provisions: list[tuple[PluginInfo, str]] = field(default_factory=list)
    _brought_entries: list[tuple[PluginInfo, str]] = field(default_factory=list)

    def add(self, plugin: PluginInfo, brought: Mapping[str, Iterable[Any]]) -> None:
        """Take over what one plug-in brought, hook by hook."""
        self._plugins.append(plugin)
        takers: dict[str, Callable[[PluginInfo, Any], None]] = {
            "jacketcheck_provisions": self._take_provisions,
            "jacketcheck_limit_states": self._take_limit_state,
        }
        for hook, entries in brought.items():
            for entry in entries:
                wanted = _RECORDS[hook]
                # a record of a class of its own could do anything when our code reads it
                if type(entry) is not wanted:
                    message = f"brought a {type(entry).__name__}, not a {wanted.__name__}"
                    self.report(plugin, hook, message)
                    continue
                if unprintable := _unprintable(entry):
                    message = f"{unprintable} holds characters that cannot be printed"
                    self.report(plugin, hook, message)
                    continue
                try:
                    if hook in takers:
                        takers[hook](plugin, entry)
                    else:
                        self._take_catalog_entry(plugin, hook, entry)
                except Exception as error:  # noqa: BLE001 - a foreign record may do anything
                    self.report(plugin, hook, describe(error))

    def report(
        self, plugin: PluginInfo, what: str, message: str, provisions: str | None = None
    ) -> None:
        """Write a problem down."""
        self.problems.append(PluginProblem(plugin, what, message, provisions))

    def report_strays(self) -> None:
        """Report limit states for provisions that nobody brings; they would never be seen."""
        for one in self.registered:
            name = one.limit_state.provisions
            if name not in self.provisions:
                what = f"limit state {one.limit_state.id}"
                self.report(one.plugin, what, f"belongs to provisions {name}, which are not known")

    def plugins(self) -> tuple[PluginInfo, ...]:
        """Plug-ins in the order in which they were asked, with what they brought."""
        return tuple(
            replace(
                plugin,
                provisions=tuple(
                    name for bringer, name in self._brought_provisions if bringer is plugin
                ),
                limit_states=tuple(
                    f"{one.limit_state.provisions}/{one.limit_state.id}"
                    for one in self.registered
                    if one.plugin is plugin
                ),
                entries=tuple(name for bringer, name in self._brought_entries if bringer is plugin),
                problems=tuple(
                    f"{one.what}: {one.message}" for one in self.problems if one.plugin is plugin
                ),
            )
            for plugin in self._plugins
        )

    def _take_provisions(self, plugin: PluginInfo, entry: Provisions) -> None:
        if entry.id in self.provisions:
            self.report(plugin, f"provisions {entry.id}", "id is already taken", entry.id)
        else:
            self.provisions[entry.id] = entry
            self._brought_provisions.append((plugin, entry.id))

    def _take_limit_state(self, plugin: PluginInfo, entry: LimitState) -> None:
        holder = _holder(self.registered, entry)
        if holder is None:
            self.registered.append(Registered(entry, plugin))
        else:
            self.report(
                plugin,
                f"limit state {entry.id}",
                f"id is already taken in provisions {entry.provisions} by {holder.name} "
                f"({holder.origin})",
                entry.provisions,
            )

    def _take_catalog_entry(self, plugin: PluginInfo, hook: str, entry: Any) -> None:
        if isinstance(entry, BondModel) and not plugin.built_in:
            entry = guarded_bond_model(entry, plugin, seconds=self.time_limit)
        kind = hook.removeprefix("jacketcheck_")
        try:
            self.catalog = self.catalog.extended(**{kind: [entry]})
        except CatalogError as error:
            self.report(plugin, "catalogue", str(error))
        else:
            self._brought_entries.append((plugin, f"{kind}/{entry.name}"))


def _holder(registered: Sequence[Registered], entry: LimitState) -> PluginInfo | None:
    """Plug-in that has the same id in the same provisions already."""
    for one in registered:
        if (one.limit_state.id, one.limit_state.provisions) == (entry.id, entry.provisions):
            return one.plugin
    return None


def _unprintable(entry: Any) -> str:
    """Field with text that would act on a terminal or turn the direction of writing; or none."""
    for one in fields(entry):
        value = getattr(entry, one.name)
        texts = list(value.values()) if isinstance(value, dict) else [value]
        if any(isinstance(text, str) and not text.isprintable() for text in texts):
            return one.name
    return ""
