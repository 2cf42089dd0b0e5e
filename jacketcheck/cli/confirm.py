"""``jacketcheck confirm``: what was delivered and measured against what was specified."""

from __future__ import annotations

import argparse
from pathlib import Path

from jacketcheck.api import choose_variants
from jacketcheck.as_built import confirm, read_as_built
from jacketcheck.as_built.specified import specified_by
from jacketcheck.cli._options import (
    add_file,
    add_format,
    add_plugin_options,
    add_provisions,
    add_units,
    display_system,
    host_from,
    read,
    terminal_width,
)
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.host import Host
from jacketcheck.inputs.load import InputFile

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "as_built",
        type=Path,
        nargs="?",
        metavar="AS_BUILT",
        help="record of what was delivered and measured (TOML)",
    )
    parser.add_argument(
        "--blank", action="store_true", help="print a record to fill in, and confirm nothing"
    )
    parser.add_argument(
        "--variant",
        metavar="NAME",
        help="variant that was built (default: as the record says, else the file)",
    )
    add_format(parser)
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Compare, check again and print; the exit code tells the verdict."""
    host = host_from(options)
    repair = read(options, host)
    if options.blank:
        return _print_blank(options, repair, host)
    if options.as_built is None:
        raise InputError(
            [InputProblem("AS_BUILT", "", "is missing; --blank prints a record to fill in")],
            source="confirm",
        )
    confirmation = confirm(
        repair,
        read_as_built(options.as_built, catalog=host.catalog),
        host=host,
        provisions=options.provisions.split(","),
        variant=options.variant,
    )
    if options.format == "json":
        from jacketcheck.render.confirm_records import confirmation_json  # noqa: PLC0415 - if asked

        print(confirmation_json(confirmation), end="")
    elif options.format == "csv":
        from jacketcheck.render.confirm_records import confirmation_csv  # noqa: PLC0415 - if asked

        print(confirmation_csv(confirmation), end="")
    else:
        from jacketcheck.render.confirm_table import confirmation_text  # noqa: PLC0415 - if asked

        text = confirmation_text(
            confirmation,
            system=display_system(options, repair),
            style=options.format,
            width=terminal_width(),
        )
        print(text, end="")
    return int(confirmation.exit_code)


def _print_blank(options: argparse.Namespace, repair: InputFile, host: Host) -> int:
    """Print a record in which everything is still to come."""
    from jacketcheck.render.blank_record import blank_record  # noqa: PLC0415 - if asked

    (name,) = choose_variants(repair, [options.variant or repair.base_name])
    text = blank_record(
        specified_by(repair.variants[name], host.catalog),
        title=repair.base.job.title,
        variant=name,
        system=display_system(options, repair),
    )
    print(text, end="")
    return 0
