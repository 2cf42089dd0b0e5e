"""All pairs of a subject and a check, for any plug-in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.bond_checks import BOND_CHECKS
from jacketcheck.conformance.case import Case, Check
from jacketcheck.conformance.entry_checks import ENTRY_CHECKS
from jacketcheck.conformance.limit_state_checks import LIMIT_STATE_CHECKS
from jacketcheck.conformance.provisions_checks import PLUGIN_CHECKS, PROVISIONS_CHECKS
from jacketcheck.conformance.standard import Repairs
from jacketcheck.conformance.subjects import subjects_of
from jacketcheck.host.host import Host, PluginInfo
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT
from jacketcheck.host.loading import load_host

__all__ = ["ALL_CHECKS", "conformance_cases", "host_with"]

ALL_CHECKS: tuple[Check, ...] = (
    *PLUGIN_CHECKS,
    *PROVISIONS_CHECKS,
    *ENTRY_CHECKS,
    *BOND_CHECKS,
    *LIMIT_STATE_CHECKS,
)
"""Every check of the kit, in the order in which a subject is asked."""

_UNDER_TEST = "under test"


def host_with(*plugins: object, seconds: float = DEFAULT_TIME_LIMIT) -> Host:
    """A host with the built-in plug-in and the given ones, and none that happens to be installed.

    Parameters
    ----------
    *plugins
        Modules or objects with functions marked by `hookimpl`.
    seconds
        Time that one call of them may take.

    Examples
    --------
    >>> [plugin.name for plugin in host_with().plugins]
    ['built-in']
    """
    extra = [
        (PluginInfo(name, name, _UNDER_TEST), one)
        for name, one in zip(_names(plugins), plugins, strict=True)
    ]
    return load_host(installed=False, extra=extra, time_limit=seconds)


def conformance_cases(
    plugin: object,
    *,
    repairs: Repairs | None = None,
    beside: Iterable[object] = (),
    seconds: float = DEFAULT_TIME_LIMIT,
) -> Iterator[Case]:
    """Every check that the kit has for a plug-in and for all that it brings.

    Parameters
    ----------
    plugin
        A module or object with functions marked by `hookimpl`; or the name of an installed
        plug-in, of its distribution or of provisions that it brings.
    repairs
        Repairs that the limit states are made for, in addition to the standard ones: the path or
        the text of a repair file by name.
    beside
        Other plug-ins that must be there, e.g. those that bring the provisions inherited from.
    seconds
        Time that one call of a plug-in may take.

    Raises
    ------
    ValueError
        If no installed plug-in and no provisions have the name.

    Examples
    --------
    >>> cases = list(conformance_cases("us"))
    >>> cases[0].id
    'plug-in built-in: loads'
    >>> cases[0]()
    """
    if isinstance(plugin, str):
        host = load_host(time_limit=seconds)
        info = _installed(host, plugin)
    else:
        others = tuple(beside)
        host = host_with(*others, plugin, seconds=seconds)
        info = host.plugins[-1]
    bench = Bench(host, info, repairs or {})
    for subject in subjects_of(host, info):
        for one in ALL_CHECKS:
            if subject.kind in one.kinds:
                yield Case(subject, one, bench)


def _installed(host: Host, name: str) -> PluginInfo:
    for plugin in host.plugins:
        if name in {plugin.name, plugin.distribution} or name in plugin.provisions:
            return plugin
    known = ", ".join(plugin.name for plugin in host.plugins)
    raise ValueError(f"{name!r} is neither a plug-in nor provisions of one; installed are {known}")


def _names(plugins: tuple[object, ...]) -> list[str]:
    """A name for each object, that of its module where it is one; numbered where it is taken."""
    names: list[str] = []
    for one in plugins:
        name = str(getattr(one, "__name__", type(one).__name__))
        taken = sum(other.partition("#")[0] == name for other in names)
        names.append(f"{name}#{taken + 1}" if taken else name)
    return names
