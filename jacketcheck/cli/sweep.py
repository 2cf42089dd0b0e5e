"""``jacketcheck sweep``: ratios of many designs that differ in a few fields."""

from __future__ import annotations

import argparse
from pathlib import Path

from jacketcheck.cli._endings import form_of
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
from jacketcheck.sweep.report import SweepReport
from jacketcheck.sweep.run import sweep
from jacketcheck.units import DisplaySystem

__all__ = ["add_arguments", "run"]

_SHOWN = 200
_FORMS = {".svg": "svg", ".png": "png"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "--vary",
        action="append",
        required=True,
        metavar="PATH=VALUES",
        help="field to vary, with START:STOP:COUNT, START:STOP:STEP or VALUE,VALUE,…, e.g. "
        "'sleeve.thickness=1/4 in:3/4 in:11', 'bolts.pitch=75 mm:150 mm:5 mm', 'bolts.columns=1:3' "
        "or 'bolts.product=ASTM F3125 A325,ASTM F3125 A490'; may be repeated, every combination is "
        "evaluated",
    )
    parser.add_argument(
        "--zip",
        action="store_true",
        help="take the values of all fields side by side instead of in every combination",
    )
    parser.add_argument(
        "--variant",
        metavar="NAME",
        help="variant to start from (default: the file without overrides)",
    )
    parser.add_argument(
        "--only",
        action="append",
        metavar="CHECK",
        help="limit state to evaluate, e.g. seam-slip; may be repeated (default: all)",
    )
    add_format(parser)
    parser.add_argument(
        "--limit",
        type=_positive,
        default=_SHOWN,
        metavar="NUMBER",
        help="designs shown in text and Markdown at most (default: %(default)s)",
    )
    parser.add_argument(
        "--plot", type=Path, metavar="FILE", help="draw the ratios to a file .svg or .png"
    )
    add_overwrite(parser)
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def _positive(text: str) -> int:
    value = int(text)
    if not 1 <= value <= 10_000_000:
        raise argparse.ArgumentTypeError(f"{text} is not between 1 and 10000000")
    return value


def run(options: argparse.Namespace) -> int:
    """Evaluate and print; the exit code is the worst verdict."""
    if options.plot is not None:
        _require_plottable(options.plot)
        Outputs(options).require_file(options.plot, option="--plot")
    host = host_from(options)
    repair = read(options, host)
    with Meter("design") as meter:
        report = sweep(
            repair,
            options.vary,
            host=host,
            variant=options.variant,
            provisions=options.provisions.split(","),
            only=options.only,
            side_by_side=options.zip,
            tick=meter.tick,
        )
    system = display_system(options, repair)
    if options.plot is not None:
        content = _plot(report, options.plot, system)
        Outputs(options).write_quietly(options.plot, content)
    if options.format == "json":
        from jacketcheck.render.sweep_records import sweep_json  # noqa: PLC0415 - when asked for

        print(sweep_json(report), end="")
    elif options.format == "csv":
        from jacketcheck.render.sweep_records import sweep_csv  # noqa: PLC0415 - loaded only when asked for

        print(sweep_csv(report), end="")
    else:
        from jacketcheck.render.sweep_table import sweep_text  # noqa: PLC0415 - loaded only when asked for

        text = sweep_text(
            report,
            system=system,
            style=options.format,
            width=terminal_width(),
            limit=options.limit,
        )
        print(text, end="")
    return int(report.exit_code)


def _require_plottable(path: Path) -> None:
    """Fail before the work is done rather than after it."""
    from jacketcheck.figures import require_matplotlib  # noqa: PLC0415 - only when asked for

    form_of(path, _FORMS, option="--plot")
    require_matplotlib()


def _plot(report: SweepReport, path: Path, system: DisplaySystem) -> str | bytes:
    from jacketcheck.figures.export import png_bytes, standalone_svg  # noqa: PLC0415 - matplotlib
    from jacketcheck.figures.sweep_plot import sweep_plot  # noqa: PLC0415 - loaded only when asked for

    drawing = sweep_plot(report, system=system)
    is_svg = form_of(path, _FORMS, option="--plot") == "svg"
    return standalone_svg(drawing) if is_svg else png_bytes(drawing)
