"""``jacketcheck plugins``: what is installed and what it brings."""

from __future__ import annotations

import argparse

from tabulate import tabulate

from jacketcheck.cli._options import add_plugin_options, host_from
from jacketcheck.hookspecs import API_VERSION
from jacketcheck.report import ExitCode

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument(
        "--limit-states", action="store_true", help="list every limit state with its title"
    )
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """List plug-ins; a plug-in with problems gives a non-zero exit code."""
    host = host_from(options)
    rows = [
        [
            plugin.name,
            plugin.distribution,
            plugin.version,
            ", ".join(plugin.provisions) or "–",
            len(plugin.limit_states),
            "ok" if not plugin.problems else f"{len(plugin.problems)} problem(s)",
        ]
        for plugin in host.plugins
    ]
    headers = ["plug-in", "distribution", "version", "provisions", "limit states", "state"]
    print(tabulate(rows, headers=headers, disable_numparse=True))
    print(f"\nhooks: version {API_VERSION}")
    if options.without:
        print(f"switched off: {', '.join(options.without)}")
    for name, provisions in host.provisions.items():
        base = f", inherits from {provisions.inherits}" if provisions.inherits else ""
        print(f"\nprovisions {name}: {provisions.title}{base}")
        if options.limit_states:
            states = [
                [one.limit_state.id, one.limit_state.title, one.plugin.name]
                for one in host.limit_states(name)
            ]
            print(tabulate(states, headers=["limit state", "title", "plug-in"]))
    for problem in host.problems:
        print(
            f"\nproblem: plug-in {problem.plugin.name} ({problem.plugin.origin}), "
            f"{problem.what}: {problem.message}"
        )
    return int(ExitCode.NOT_EVALUATED if host.problems else ExitCode.WITHIN)
