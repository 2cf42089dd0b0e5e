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
from jacketcheck.cli._outputs import Outputs, add_overwrite
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.load import InputFile
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
        help="write one of the designs as a whole new repair file",
    )
    add_overwrite(parser)
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
    if options.save is not None:
        Outputs(options).require_file(options.save, option="--save")
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
        _save(report, repair, options)
    return int(report.exit_code)


def _save(report: SizingReport, repair: InputFile, options: argparse.Namespace) -> None:
    from jacketcheck.inputs.whole_text import whole_file  # noqa: PLC0415 - only when asked for

    number, path = options.design, printable(str(options.save))
    if not report.front:
        print(f"jacketcheck: nothing to save in {path}", file=sys.stderr)
        return
    if number > len(report.front):
        message = f"must be at most {len(report.front)}, the number of designs"
        raise InputError([InputProblem("--design", str(number), message)], source="options")
    text = whole_file(
        f"sized {number}",
        repair.written[report.variant],
        repair.variants[report.variant],
        report.front[number - 1].repair,
        system=report.job.units,
        heading=f"Design {number} of those found from {report.source}, {report.variant}.",
    )
    Outputs(options).write_quietly(options.save, text)
    print(f"saved design {number} in {path}", file=sys.stderr)
