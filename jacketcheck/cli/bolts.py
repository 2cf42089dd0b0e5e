"""``jacketcheck bolts``: the bolt schedule that a shop orders and installs from."""

from __future__ import annotations

import argparse

from jacketcheck.cli._options import (
    add_file,
    add_format,
    add_loss,
    add_plugin_options,
    add_units,
    asked_variants,
    display_system,
    host_from,
    read,
    terminal_width,
)
from jacketcheck.schedule import Allowances, schedules_of

__all__ = ["add_arguments", "run"]

_USUAL = Allowances()


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="variant to schedule, may be repeated, or 'all' (default: the file without overrides)",
    )
    add_format(parser)
    add_loss(parser, usual=_USUAL.loss_percent)
    parser.add_argument(
        "--days",
        type=_days,
        default=_USUAL.tightening_days,
        metavar="NUMBER",
        help="days on which a calibrated wrench is set anew (default: %(default)s)",
    )
    add_units(parser)
    add_plugin_options(parser)


def _days(text: str) -> int:
    value = int(text)
    if not 1 <= value <= 60:
        raise argparse.ArgumentTypeError(f"{text} is not between 1 and 60")
    return value


def run(options: argparse.Namespace) -> int:
    """Print the schedule; the exit code tells whether it has open points."""
    host = host_from(options)
    repair = read(options, host)
    report = schedules_of(
        repair,
        host=host,
        variants=asked_variants(repair, options.variant),
        allowances=Allowances(loss_percent=options.loss, tightening_days=options.days),
    )
    if options.format == "json":
        from jacketcheck.render.schedule_records import schedule_json  # noqa: PLC0415 - if asked

        print(schedule_json(report), end="")
    elif options.format == "csv":
        from jacketcheck.render.schedule_records import schedule_csv  # noqa: PLC0415 - if asked

        print(schedule_csv(report), end="")
    else:
        from jacketcheck.render.schedule_table import schedule_text  # noqa: PLC0415 - if asked

        system = display_system(options, repair)
        print(
            schedule_text(report, system=system, style=options.format, width=terminal_width()),
            end="",
        )
    return int(report.exit_code)
