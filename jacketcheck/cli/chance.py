"""``jacketcheck chance``: probability that limit states are exceeded."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from typing import Any

from jacketcheck.chance.report import chances_of
from jacketcheck.chance.result import Changes
from jacketcheck.cli._options import (
    add_file,
    add_format,
    add_plugin_options,
    add_provisions,
    asked_variants,
    host_from,
    progress,
    read,
    terminal_width,
)

__all__ = ["add_arguments", "run"]

_MOST_SAMPLES, _MOST_SECTIONS, _LARGEST_SEED = 10_000_000, 1_000_000, 2**63 - 1


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="variant, may be repeated, or 'all' (default: the file without overrides)",
    )
    parser.add_argument(
        "--only",
        action="append",
        metavar="CHECK",
        help="limit state to look at, e.g. seam-slip; may be repeated (default: all)",
    )
    _add_sampling(parser)
    add_format(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def _add_sampling(parser: argparse.ArgumentParser) -> None:
    default = "(default: the file's, else %s)"
    parser.add_argument(
        "--samples",
        type=_between(16, _MOST_SAMPLES),
        metavar="NUMBER",
        help=f"samples for limit states in closed form {default % '131072'}",
    )
    parser.add_argument(
        "--bond-samples",
        type=_between(16, _MOST_SAMPLES),
        metavar="NUMBER",
        help=f"samples for the bond of bars {default % '4096'}",
    )
    parser.add_argument(
        "--section-samples",
        type=_between(0, _MOST_SECTIONS),
        metavar="NUMBER",
        help=f"samples with section analyses, 0 for none {default % '256'}",
    )
    parser.add_argument(
        "--method",
        choices=("sobol", "latin-hypercube", "random"),
        help=f"how samples are drawn {default % 'sobol'}",
    )
    parser.add_argument(
        "--seed",
        type=_between(0, _LARGEST_SEED),
        metavar="NUMBER",
        help=f"seed {default % '20240'}",
    )


def _between(least: int, most: int) -> Any:
    """Type of a whole number within bounds."""

    def number(text: str) -> int:
        try:
            value = int(text)
        except ValueError:
            raise argparse.ArgumentTypeError(f"{text} is not a whole number") from None
        if not least <= value <= most:
            raise argparse.ArgumentTypeError(f"{text} is not between {least} and {most}")
        return value

    return number


def run(options: argparse.Namespace) -> int:
    """Estimate and print; the exit code tells whether the answer is open."""
    host = host_from(options)
    repair = read(options, host)
    report = chances_of(
        repair,
        host=host,
        variants=asked_variants(repair, options.variant),
        provisions=options.provisions.split(","),
        changes=Changes(
            samples=options.samples,
            bond_samples=options.bond_samples,
            section_samples=options.section_samples,
            method=options.method,
            seed=options.seed,
        ),
        only=options.only,
        progress=_shown,
    )
    if options.format == "json":
        from jacketcheck.render.chance_records import chance_json  # noqa: PLC0415 - when asked for

        print(chance_json(report), end="")
    elif options.format == "csv":
        from jacketcheck.render.chance_records import chance_csv  # noqa: PLC0415 - loaded only when asked for

        print(chance_csv(report), end="")
    else:
        from jacketcheck.render.chance_table import chance_text  # noqa: PLC0415 - loaded only when asked for

        print(chance_text(report, style=options.format, width=terminal_width()), end="")
    return int(report.exit_code)


def _shown(items: Iterable[Any], total: int, unit: str) -> Iterable[Any]:
    return progress(items, total=total, unit=unit)
