"""``jacketcheck size``: the lightest and quickest jackets that work, within bounds."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from jacketcheck.cli._meter import Meter
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
from jacketcheck.inputs.written import printable
from jacketcheck.sizing.report import SizingReport
from jacketcheck.sizing.size import MOST_ANALYSES, size

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "--variant",
        metavar="NAME",
        help="variant to start from (default: the file without overrides)",
    )
    add_format(parser)
    parser.add_argument(
        "--limit",
        type=_positive,
        metavar="NUMBER",
        help="designs shown in text and Markdown at most (default: all)",
    )
    parser.add_argument(
        "--analyses",
        type=_positive,
        default=MOST_ANALYSES,
        metavar="NUMBER",
        help="designs that may come to section analysis (default: %(default)s)",
    )
    parser.add_argument(
        "--save",
        type=Path,
        metavar="FILE",
        help="write one of the designs as the table of a variant, to paste into the repair file",
    )
    parser.add_argument(
        "--design",
        type=_positive,
        default=1,
        metavar="NUMBER",
        help="which design --save writes (default: 1, the lightest)",
    )
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def _positive(text: str) -> int:
    value = int(text)
    if not 1 <= value <= 10_000_000:
        raise argparse.ArgumentTypeError(f"{text} is not between 1 and 10000000")
    return value


def run(options: argparse.Namespace) -> int:
    """Search and print; the exit code tells whether there is a design that works."""
    host = host_from(options)
    repair = read(options, host)
    with Meter("design") as meter:
        report = size(
            repair,
            host=host,
            variant=options.variant,
            provisions=options.provisions.split(","),
            most=options.analyses,
            tick=meter.tick,
        )
    if options.format == "json":
        from jacketcheck.render.sizing_records import sizing_json  # noqa: PLC0415 - when asked for

        print(sizing_json(report), end="")
    elif options.format == "csv":
        from jacketcheck.render.sizing_records import sizing_csv  # noqa: PLC0415 - loaded only when asked for

        print(sizing_csv(report), end="")
    else:
        from jacketcheck.render.sizing_table import sizing_text  # noqa: PLC0415 - loaded only when asked for

        system = display_system(options, repair)
        text = sizing_text(
            report,
            system=system,
            style=options.format,
            width=terminal_width(),
            limit=options.limit,
        )
        print(text, end="")
    if options.save is not None:
        _save(report, options.design, options.save)
    return int(report.exit_code)


def _save(report: SizingReport, number: int, path: Path) -> None:
    from jacketcheck.files import write_atomically  # noqa: PLC0415 - only when asked for
    from jacketcheck.inputs.variant_text import variant_table  # noqa: PLC0415 - loaded only when asked for

    if not report.front:
        print(f"jacketcheck: nothing to save in {printable(str(path))}", file=sys.stderr)
        return
    if number > len(report.front):
        message = f"must be at most {len(report.front)}, the number of designs"
        raise InputError([InputProblem("--design", str(number), message)], source="options")
    design = report.front[number - 1]
    text = variant_table(
        f"sized {design.number}", report.base, design.repair, system=report.job.units
    )
    write_atomically(path, text + "\n")
