"""``jacketcheck batch``: a whole inventory of piers."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from jacketcheck.batch.finding import DEFAULT_PATTERN
from jacketcheck.batch.settings import DEFAULT_FILE_SECONDS
from jacketcheck.cli._meter import Meter
from jacketcheck.cli._options import (
    add_plugin_options,
    add_provisions,
    host_from,
    terminal_width,
)
from jacketcheck.cli._outputs import add_overwrite, is_standard_output
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.written import printable

__all__ = ["add_arguments", "run"]

_HOW_TO_GO_ON = "jacketcheck: what is done is kept; the same command goes on from there"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.epilog = (
        "Exit codes: 3 if a check could not be evaluated or a file failed, else 2 if an input "
        "cannot be used, else 1 if something exceeds 1, else 0."
    )
    parser.add_argument(
        "folder", type=Path, metavar="FOLDER", help="folder whose repair files are checked"
    )
    parser.add_argument(
        "-o",
        "--output",
        type=Path,
        metavar="OUT",
        help="folder for tables, summary and journal; made if it is not there (default: "
        "FOLDER-checked). The same command takes up a run that was ended, and checks only what is "
        "new or changed",
    )
    parser.add_argument(
        "--fresh",
        action="store_true",
        help="forget what has been done in OUT: needed where the code of a plug-in was changed "
        "and its version was not",
    )
    add_overwrite(parser)
    parser.add_argument(
        "--pattern",
        default=DEFAULT_PATTERN,
        metavar="NAME",
        help="names of the files in FOLDER and below, with * and ? (default: %(default)s); what "
        "begins with a dot is left out",
    )
    parser.add_argument(
        "--variant",
        choices=("base", "all"),
        default="base",
        help="the files without their variants, or every variant (default: base)",
    )
    _add_output_options(parser)
    _add_worker_options(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def _add_output_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--format",
        choices=("csv", "parquet", "both"),
        default="csv",
        help="form of the tables (default: csv); those of another form are removed from OUT",
    )
    parser.add_argument(
        "--units",
        choices=("si", "us"),
        help="units of demand and capacity in the tables (default: N, mm and MPa)",
    )


def _add_worker_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--workers",
        type=int,
        metavar="N",
        help="processes on this machine (default: one for each core)",
    )
    parser.add_argument(
        "--dask",
        metavar="SCHEDULER",
        help="use a Dask cluster instead: address of its scheduler, or local:N",
    )
    parser.add_argument(
        "--file-seconds",
        type=_seconds,
        default=DEFAULT_FILE_SECONDS,
        metavar="SECONDS",
        help="time that one file may take (default: %(default)g)",
    )


def _seconds(text: str) -> float:
    value = float(text)
    if not 0.0 < value <= 86_400.0:
        raise argparse.ArgumentTypeError(f"{text} is not between 0 and 86400")
    return value


def run(options: argparse.Namespace) -> int:
    """Check the inventory, print the summary, and return the verdict as the exit code."""
    from jacketcheck.batch.run import run_batch  # noqa: PLC0415 - after the options
    from jacketcheck.render.batch_table import batch_text  # noqa: PLC0415 - after the options

    try:
        with Meter("file") as meter:
            done = run_batch(
                options.folder,
                _output(options),
                host=host_from(options),
                provisions=options.provisions.split(","),
                variants=options.variant,
                forms=("csv", "parquet") if options.format == "both" else (options.format,),
                system=options.units,
                workers=options.workers,
                scheduler=options.dask,
                pattern=options.pattern,
                file_seconds=options.file_seconds,
                fresh=options.fresh,
                overwrite=options.overwrite,
                watch=lambda state: meter.tick("checking", state.done, state.total),
            )
    except KeyboardInterrupt:
        print(_HOW_TO_GO_ON, file=sys.stderr)
        raise
    print(batch_text(done.summary, width=terminal_width()))
    state = done.state
    print(f"checked {state.evaluated} of {state.total} files now, {state.kept} before")
    for path in done.written:
        print(f"wrote {path}")
    return int(done.summary.exit_code)


def _output(options: argparse.Namespace) -> Path:
    """Folder of the output: as asked for, or beside the inventory."""
    if options.output is not None and is_standard_output(options.output):
        problem = InputProblem("--output", printable(str(options.output)), "must be a folder")
        raise InputError([problem], source="options")
    if options.output is not None:
        return Path(options.output)
    folder = Path(options.folder).resolve()
    return folder.parent / f"{folder.name}-checked"
