"""``jacketcheck catalog``: what an input may name, with the source of every figure."""

from __future__ import annotations

import argparse
import sys

from jacketcheck.cli._options import add_plugin_options, host_from
from jacketcheck.errors import CatalogError, InputError, InputProblem
from jacketcheck.inputs.written import shown
from jacketcheck.report import ExitCode

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    from jacketcheck.render.catalog_table import KINDS  # noqa: PLC0415 - only for this command

    parser.add_argument(
        "kind",
        nargs="?",
        choices=tuple(KINDS),
        metavar="KIND",
        help=f"one of {', '.join(KINDS)} (default: the names of all kinds)",
    )
    parser.add_argument(
        "name", nargs="?", metavar="NAME", help="an entry, for all of its figures and sources"
    )
    parser.add_argument(
        "--units", choices=("si", "us"), default="si", help="units of the figures (default: si)"
    )
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """List; a plug-in with problems gives the exit code of what could not be evaluated."""
    from jacketcheck.render.catalog_table import (  # noqa: PLC0415 - only for this command
        catalog_text,
        entry_text,
        kind_text,
    )

    host = host_from(options)
    if options.kind is None:
        print(catalog_text(host), end="")
    elif options.name is None:
        print(kind_text(host, options.kind, system=options.units), end="")
    else:
        try:
            print(entry_text(host, options.kind, options.name, system=options.units), end="")
        except CatalogError as error:
            problem = InputProblem("name", shown(options.name), error.problem)
            raise InputError([problem], source="options") from error
    if host.problems:
        names = dict.fromkeys(one.plugin.name for one in host.problems)
        print(
            f"jacketcheck: entries may be missing: plug-ins with problems are {', '.join(names)}; "
            "see jacketcheck plugins",
            file=sys.stderr,
        )
    return int(ExitCode.NOT_EVALUATED if host.problems else ExitCode.WITHIN)
