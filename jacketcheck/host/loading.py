"""Finding plug-ins among the installed distributions and asking them what they bring."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from importlib.metadata import EntryPoint, distribution, entry_points
from typing import Any

import pluggy

from jacketcheck import hookspecs, limit_states
from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.host.host import Host, HostBuilder, PluginInfo
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT, call_isolated, describe

__all__ = ["BUILT_IN", "load_host"]

BUILT_IN = "built-in"
"""Name of the plug-in that the package itself is."""


def load_host(
    *,
    without: Iterable[str] = (),
    extra: Iterable[tuple[PluginInfo, object]] = (),
    installed: bool = True,
    time_limit: float = DEFAULT_TIME_LIMIT,
) -> Host:
    """Load the built-in limit states and the plug-ins of all installed distributions.

    Parameters
    ----------
    without
        Names of plug-ins, or of their distributions, that are switched off.
    extra
        Plug-ins to register in addition, for tests and notebooks: information and object.
    installed
        Whether installed distributions are searched; the built-in plug-in is always there.
    time_limit
        Seconds that loading a plug-in, or one of its calls, may take.

    Returns
    -------
    Host
        Nothing that a plug-in does makes this fail: its problems are listed in the host.
    """
    off = tuple(without)
    builder = HostBuilder(catalog=built_in_catalog())
    own = PluginInfo(
        BUILT_IN, hookspecs.PROJECT, distribution(hookspecs.PROJECT).version, built_in=True
    )
    _ask(builder, own, limit_states, time_limit)
    for entry_point in _entry_points() if installed else ():
        plugin = _information(entry_point)
        if plugin.name in off or plugin.distribution in off:
            continue
        loaded = call_isolated(entry_point.load, seconds=time_limit)
        if loaded.problem is not None:
            builder.report(plugin, "import", loaded.problem)
            builder.add(plugin, {})
        else:
            _ask(builder, plugin, loaded.value, time_limit)
    for plugin, module in extra:
        _ask(builder, plugin, module, time_limit)
    return Host(
        plugins=tuple(builder.plugins),
        catalog=builder.catalog,
        provisions=builder.provisions,
        bond_models=builder.bond_models,
        registered=tuple(builder.registered),
        problems=tuple(builder.problems),
        time_limit=time_limit,
        switched_off=off,
    )


def _entry_points() -> list[EntryPoint]:
    found = entry_points(group=hookspecs.ENTRY_POINT_GROUP)
    return sorted(found, key=lambda one: (one.dist.name if one.dist else "", one.name))


def _information(entry_point: EntryPoint) -> PluginInfo:
    dist = entry_point.dist
    if dist is None:
        return PluginInfo(entry_point.name, "unknown", "unknown")
    return PluginInfo(entry_point.name, dist.name, dist.version)


def _ask(builder: HostBuilder, plugin: PluginInfo, module: object, time_limit: float) -> None:
    """Register one plug-in with a manager of its own and call each of its hooks."""
    manager = pluggy.PluginManager(hookspecs.PROJECT)
    manager.add_hookspecs(hookspecs)
    try:
        manager.register(module, name=plugin.name)
        manager.check_pending()
    except Exception as error:  # noqa: BLE001 - whatever a foreign object does on inspection
        builder.report(plugin, "registration", describe(error))
        builder.add(plugin, {})
        return
    brought: dict[str, Sequence[Any]] = {}
    for hook in hookspecs.HOOK_NAMES:
        outcome = call_isolated(_entries, getattr(manager.hook, hook), seconds=time_limit)
        if outcome.value is None:
            builder.report(plugin, hook, outcome.problem or "returned nothing")
        else:
            brought[hook] = outcome.value
    builder.add(plugin, brought)


def _entries(hook: Any) -> list[Any]:
    """What the one registered plug-in brings through a hook; nothing if it has no such hook."""
    entries: list[Any] = []
    for answer in hook():
        if isinstance(answer, str | bytes):
            raise TypeError(f"returned a {type(answer).__name__}, not a sequence of records")
        entries.extend(answer)
    return entries
