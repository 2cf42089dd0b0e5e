"""``jacketcheck report``: the whole calculation as one HTML file, or as Markdown."""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path

from jacketcheck.api import check_input
from jacketcheck.cli._endings import form_of
from jacketcheck.cli._options import (
    add_file,
    add_plugin_options,
    add_provisions,
    add_units,
    asked_variants,
    display_system,
    host_from,
    progress,
    read,
)
from jacketcheck.cli._outputs import Outputs, add_overwrite, is_standard_output
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import make_folder

__all__ = ["add_arguments", "run"]

_ENDINGS = {
    ".html": "html",
    ".htm": "html",
    ".md": "markdown",
    ".markdown": "markdown",
    ".txt": "markdown",
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "-o",
        "--output",
        type=Path,
        required=True,
        metavar="REPORT",
        help="file to write, with its figures beside it in Markdown; '-' for standard output",
    )
    add_overwrite(parser)
    parser.add_argument(
        "--format",
        choices=("html", "markdown"),
        help="form of the report; by default as REPORT ends (.html or .md). A PDF comes from "
        "printing the HTML",
    )
    parser.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="variant to report on, may be repeated; 'all' for every variant "
        "(default: the file without overrides)",
    )
    parser.add_argument(
        "--no-figures", action="store_true", help="leave the figures out; does without matplotlib"
    )
    parser.add_argument(
        "--date",
        metavar="TEXT",
        help="date on the cover (default: today); the rest of a report does not depend on the day",
    )
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Check, write the report, and return the verdict as the exit code."""
    form = form_of(options.output, _ENDINGS, option="--output", asked=options.format)
    outputs = Outputs(options)
    outputs.require([options.output])
    folder = _figures_folder(options, form)
    if not options.no_figures:
        from jacketcheck.figures import require_matplotlib  # noqa: PLC0415 - only if figures are drawn

        require_matplotlib()
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
    from jacketcheck.render.report_blocks import report_blocks  # noqa: PLC0415 - after the check

    blocks = report_blocks(
        report,
        repair,
        system=display_system(options, repair),
        figures=not options.no_figures,
        date=dt.date.today().isoformat() if options.date is None else options.date,  # noqa: DTZ011 - the reader's day
    )
    if form == "html":
        from jacketcheck.render.report_html import report_html  # noqa: PLC0415 - loaded only when asked for

        outputs.write(options.output, report_html(blocks))
    else:
        from jacketcheck.render.report_markdown import report_markdown  # noqa: PLC0415 - loaded only when asked for

        written = report_markdown(blocks, folder=folder.name)
        figures = {folder.parent / path: svg for path, svg in written.figures.items()}
        outputs.require(figures)
        if figures:
            make_folder(folder)
        for path, svg in figures.items():
            outputs.write_quietly(path, svg)
        outputs.write(options.output, written.text)
    return int(report.exit_code)


def _figures_folder(options: argparse.Namespace, form: str) -> Path:
    """Where the figures of a report in Markdown go: beside it."""
    path: Path = options.output
    if form == "markdown" and not options.no_figures and is_standard_output(path):
        message = "must be a file, for the figures beside it; --no-figures leaves them out"
        raise InputError([InputProblem("--output", str(path), message)], source="options")
    return path.parent / f"{path.stem}-figures"
