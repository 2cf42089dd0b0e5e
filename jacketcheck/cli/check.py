"""``jacketcheck check``: the table of demand/capacity ratios."""

from __future__ import annotations

import argparse

from jacketcheck.api import check_input
from jacketcheck.cli._options import (
    add_file,
    add_format,
    add_plugin_options,
    add_provisions,
    add_units,
    asked_variants,
    display_system,
    host_from,
    progress,
    read,
    terminal_width,
)

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="variant to check, may be repeated; 'all' puts every variant side by side "
        "(default: the file without overrides)",
    )
    add_format(parser)
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Check and print; the exit code tells the verdict."""
    host = host_from(options)
    repair = read(options, host)
    provisions = list(dict.fromkeys(options.provisions.split(",")))
    variants = asked_variants(repair, options.variant)
    count = len(provisions) * len(repair.variants if variants is None else variants)
    report = check_input(
        repair,
        host=host,
        provisions=provisions,
        variants=variants,
        progress=lambda pairs: progress(pairs, total=count, unit="variant"),
    )
    if options.format == "json":
        from jacketcheck.render.records import report_json  # noqa: PLC0415 - only when asked for

        print(report_json(report), end="")
    elif options.format == "csv":
        from jacketcheck.render.records import report_csv  # noqa: PLC0415 - loaded only when asked for

        print(report_csv(report), end="")
    else:
        from jacketcheck.render.table import report_text  # noqa: PLC0415 - loaded only when asked for

        system = display_system(options, repair)
        print(report_text(report, system=system, style=options.format, width=terminal_width()))
    return int(report.exit_code)
