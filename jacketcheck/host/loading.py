"""Finding plug-ins among the installed distributions and asking them what they bring."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib.metadata import EntryPoint, distribution, entry_points
from itertools import islice
from typing import Any

import pluggy

from jacketcheck import hookspecs, limit_states
from jacketcheck.catalog.catalog import built_in_catalog
from jacketcheck.errors import InputError, InputProblem, JacketcheckError
from jacketcheck.host.builder import HostBuilder
from jacketcheck.host.host import Host, PluginInfo
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT, call_isolated
from jacketcheck.inputs.written import printable, shown

__all__ = ["BUILT_IN", "load_host"]

BUILT_IN = "built-in"
"""Name of the plug-in that the package itself is."""
_MOST_ENTRIES = 10_000
"""Records that one hook may bring; an iterator without end must not fill the memory."""


class _RefusedError(JacketcheckError):
    """Something that a plug-in brings and that cannot be taken."""


@dataclass(frozen=True, slots=True)
class _Installed:
    """An entry point that is still to be loaded.

    Told by a type of ours: once a library has imported the backport of `importlib.metadata`,
    entry points are of its type.
    """

    entry_point: EntryPoint


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

    Raises
    ------
    InputError
        If a plug-in to be switched off is not there.
    """
    off = tuple(dict.fromkeys(without))
    found: list[tuple[PluginInfo, object]] = []
    if installed:
        found += [(_information(one), _Installed(one)) for one in _entry_points()]
    found += extra
    _require_known(off, [plugin for plugin, _ in found])

    builder = HostBuilder(built_in_catalog(), time_limit)
    version = distribution(hookspecs.PROJECT).version
    own = PluginInfo(BUILT_IN, hookspecs.PROJECT, version, built_in=True)
    builder.add(own, _asked(builder, own, limit_states))
    for plugin, item in found:
        if not any(_is_called(plugin, name) for name in off):
            builder.add(plugin, _asked(builder, plugin, item))
    builder.report_strays()
    return Host(
        plugins=builder.plugins(),
        catalog=builder.catalog,
        provisions=builder.provisions,
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
    return PluginInfo(printable(entry_point.name), printable(dist.name), printable(dist.version))


def _require_known(names: Iterable[str], plugins: list[PluginInfo]) -> None:
    """Refuse to switch off what is not there: the reader would believe it was."""
    problems = []
    for name in names:
        if not any(_is_called(plugin, name) for plugin in plugins):
            known = ", ".join(plugin.name for plugin in plugins) or "none"
            message = f"is not an installed plug-in; installed are {known}"
            if name in {BUILT_IN, hookspecs.PROJECT}:
                message = "cannot be switched off"
            problems.append(InputProblem("without", shown(name), message))
    if problems:
        raise InputError(problems, source="options")


def _is_called(plugin: PluginInfo, name: str) -> bool:
    """Whether a plug-in or its distribution has a name; spelling as package indices compare it."""
    return _folded(name) in {_folded(plugin.name), _folded(plugin.distribution)}


def _folded(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).casefold()


def _asked(builder: HostBuilder, plugin: PluginInfo, item: object) -> dict[str, list[Any]]:
    """What one plug-in brings through each hook; what fails on the way is reported."""
    time_limit = builder.time_limit
    if isinstance(item, _Installed):
        loaded = call_isolated(
            item.entry_point.load, name=f"{plugin.name}: import", seconds=time_limit
        )
        if loaded.problem is not None:
            builder.report(plugin, "import", loaded.problem)
            return {}
        item = loaded.value
    registered = call_isolated(
        _registered, item, plugin.name, name=f"{plugin.name}: registration", seconds=time_limit
    )
    if registered.value is None:
        builder.report(plugin, "registration", registered.problem or "returned nothing")
        return {}
    brought: dict[str, list[Any]] = {}
    for hook in hookspecs.HOOK_NAMES:
        answer = call_isolated(
            _entries, registered.value, hook, name=f"{plugin.name}: {hook}", seconds=time_limit
        )
        if answer.value is None:
            builder.report(plugin, hook, answer.problem or "returned nothing")
        else:
            brought[hook] = answer.value
    return brought


def _registered(module: object, name: str) -> pluggy.PluginManager:
    """A manager that holds one plug-in, so that a problem has one possible origin."""
    manager = pluggy.PluginManager(hookspecs.PROJECT)
    manager.add_hookspecs(hookspecs)
    manager.register(module, name=name)
    manager.check_pending()
    for hook in hookspecs.HOOK_NAMES:
        if hasattr(module, hook) and not getattr(manager.hook, hook).get_hookimpls():
            raise _RefusedError(f"{hook} is not marked with jacketcheck.hookspecs.hookimpl")
    return manager


def _entries(manager: pluggy.PluginManager, hook: str) -> list[Any]:
    """What the one registered plug-in brings through a hook; nothing if it has no such hook."""
    caller = getattr(manager.hook, hook)
    answers = caller()
    if caller.get_hookimpls() and not answers:
        raise _RefusedError("returned nothing, not a sequence of records")
    entries: list[Any] = []
    for answer in answers:
        if isinstance(answer, str | bytes | dict):
            raise _RefusedError(f"returned a {type(answer).__name__}, not a sequence of records")
        entries.extend(islice(answer, _MOST_ENTRIES + 1))
        if len(entries) > _MOST_ENTRIES:
            raise _RefusedError(f"returned more than {_MOST_ENTRIES} records")
    return entries
