"""``jacketcheck explain``: every step of one check."""

from __future__ import annotations

import argparse
import difflib

from jacketcheck.api import check_input
from jacketcheck.cli._options import (
    add_file,
    add_plugin_options,
    add_provisions,
    add_units,
    asked_variants,
    display_system,
    host_from,
    read,
)
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.host.made_by import made_by
from jacketcheck.render.explanation import explanation
from jacketcheck.render.verdict import cause_note
from jacketcheck.report import CheckReport, ExitCode
from jacketcheck.results import Kind

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "check",
        metavar="CHECK",
        help="limit state, e.g. seam-slip; 'governing' for the row that decides",
    )
    parser.add_argument("--variant", action="append", metavar="NAME", help="variant, or 'all'")
    parser.add_argument("--markdown", action="store_true", help="write Markdown")
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Explain every row of the limit state that was asked for."""
    host = host_from(options)
    repair = read(options, host)
    report = check_input(
        repair,
        host=host,
        provisions=options.provisions.split(","),
        variants=asked_variants(repair, options.variant),
    )
    system = display_system(options, repair)
    several = len(report.tables) > 1
    shown = []
    for table in report.tables:
        wanted = table.governing.limit_state if options.check == "governing" else options.check
        rows = [result for result in table.results if result.limit_state == wanted]
        if rows and several:
            print(f"[{table.variant}, {table.provisions}]\n")
        for result in rows:
            causes = cause_note(table, result)
            print(
                explanation(result, system=system, causes=causes, markdown=options.markdown) + "\n"
            )
        shown += rows
    if not shown:
        raise _unknown(options.check, report)
    print(f"Made by {made_by(report.version, report.plugins, report.switched_off)}.")
    judged = [result for result in shown if result.kind in {Kind.LIMIT, Kind.NOT_EVALUATED}]
    return int(ExitCode.of(judged)) if judged else int(ExitCode.WITHIN)


def _unknown(check: str, report: CheckReport) -> InputError:
    known = sorted({result.limit_state for table in report.tables for result in table.results})
    near = difflib.get_close_matches(check, known, n=3)
    hint = f"did you mean {' or '.join(near)}?" if near else f"known are {', '.join(known)}"
    return InputError(
        [InputProblem("CHECK", repr(check), f"is not a limit state; {hint}")], source=report.source
    )
