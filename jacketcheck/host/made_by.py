"""Who made an output: the package and every plug-in that was asked, with their versions."""

from __future__ import annotations

from collections.abc import Iterable

from jacketcheck.host.host import PluginInfo

__all__ = ["made_by"]


def made_by(
    version: str, plugins: Iterable[PluginInfo] = (), switched_off: Iterable[str] = ()
) -> str:
    """Package and plug-ins in a line.

    Parameters
    ----------
    version
        Version of jacketcheck.
    plugins
        Plug-ins that were asked; the built-in one is the package itself.
    switched_off
        Names of those that were not.

    Examples
    --------
    >>> made_by("1.0", [PluginInfo("north", "jacketcheck-north", "0.3")])
    'jacketcheck 1.0; north (jacketcheck-north 0.3)'
    """
    names = [f"jacketcheck {version}"]
    names += [
        f"{plugin.name} ({plugin.origin})" + (" with problems" if plugin.problems else "")
        for plugin in plugins
        if not plugin.built_in
    ]
    if off := ", ".join(switched_off):
        names.append(f"switched off: {off}")
    return "; ".join(names)
