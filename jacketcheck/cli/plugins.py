"""``jacketcheck plugins``: what is installed and what it brings."""

from __future__ import annotations

import argparse

from jacketcheck.cli._options import add_plugin_options, host_from
from jacketcheck.report import ExitCode

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument(
        "--inherited",
        action="store_true",
        help="list limit states that a set inherits or leaves out as well",
    )
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """List plug-ins; one with problems gives the exit code of what could not be evaluated."""
    from jacketcheck.render.plugins_table import plugins_text  # noqa: PLC0415 - after the options

    host = host_from(options)
    print(plugins_text(host, inherited=options.inherited), end="")
    return int(ExitCode.NOT_EVALUATED if host.problems else ExitCode.WITHIN)
