"""Plug-ins and what they bring, as text."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import fields

from jacketcheck.errors import InputError
from jacketcheck.hookspecs import API_VERSION
from jacketcheck.host.host import Host, PluginInfo
from jacketcheck.host.standing import Standing, standings
from jacketcheck.render.numbers import MISSING
from jacketcheck.render.text_style import grid, subheading

__all__ = ["plugins_text"]


def plugins_text(host: Host, *, inherited: bool = False) -> str:
    """Plug-ins, their provisions with the limit states, and what is wrong with any of them.

    Parameters
    ----------
    host
        What was loaded.
    inherited
        Whether limit states that a set inherits or leaves out are listed one by one.
    """
    parts = [_plugins(host)]
    parts += [part for name in host.provisions for part in _provisions(host, name, inherited)]
    parts += _problems(host)
    if host.switched_off:
        parts.append(f"Switched off: {', '.join(host.switched_off)}.")
    parts.append(f"Hooks: version {API_VERSION}. Switch a plug-in off with --without NAME.")
    return "\n\n".join(parts) + "\n"


def _plugins(host: Host) -> str:
    return grid(
        [
            [
                plugin.name,
                plugin.distribution,
                plugin.version,
                ", ".join(plugin.provisions) or MISSING,
                str(len(plugin.limit_states)),
                _catalog(host, plugin),
                _state(plugin),
            ]
            for plugin in host.plugins
        ],
        headers=(
            "plug-in",
            "distribution",
            "version",
            "provisions",
            "limit states",
            "catalogue entries",
            "state",
        ),
        align=("left", "left", "left", "left", "right", "right", "left"),
        style="text",
    )


def _catalog(host: Host, plugin: PluginInfo) -> str:
    if not plugin.built_in:
        return str(len(plugin.entries))
    total = sum(len(getattr(host.catalog, one.name)) for one in fields(host.catalog))
    return str(total - sum(len(one.entries) for one in host.plugins))


def _state(plugin: PluginInfo) -> str:
    count = len(plugin.problems)
    return f"{count} problem{'s' if count > 1 else ''}, see below" if count else "ok"


def _provisions(host: Host, name: str, inherited: bool) -> Iterator[str]:  # noqa: FBT001 - one flag
    entry = host.provisions[name]
    yield subheading(f"Provisions {name}", "text") + f"\n{entry.title}"
    try:
        found = list(standings(host, name))
    except InputError as error:
        yield f"cannot be used: {error.problems[0].message}"
        return
    listed = [one for one in found if inherited or one.way in {"own", "replaces"}]
    if listed:
        yield grid(
            [_row(one) for one in listed],
            headers=("limit state", "title", "how", "plug-in"),
            align=("left",) * 4,
            style="text",
        )
    if counted := Counter((one.way, one.other) for one in found if one not in listed):
        yield (
            "Besides: "
            + "; ".join(
                f"{count} {way}" + (f" from {other}" if way == "inherited" else "")
                for (way, other), count in counted.items()
            )
            + " (list them with --inherited)."
        )


def _row(one: Standing) -> list[str]:
    how = {
        "own": "own",
        "replaces": f"replaces that of {one.other}",
        "inherited": f"inherited from {one.other}",
        "omitted": f"left out: {one.reason}",
    }[one.way]
    state = one.registered.limit_state
    return [state.id, state.title, how, one.registered.plugin.name]


def _problems(host: Host) -> Iterator[str]:
    if host.problems:
        lines = [
            f"- plug-in {one.plugin.name} ({one.plugin.origin}), {one.what}: {one.message}"
            for one in host.problems
        ]
        yield subheading("Problems", "text") + "\n" + "\n".join(lines)
