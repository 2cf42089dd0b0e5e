"""``jacketcheck new``: a commented, valid file to start from."""

from __future__ import annotations

import argparse
from pathlib import Path

from jacketcheck.cli._outputs import Outputs, add_overwrite, is_standard_output
from jacketcheck.starter import starter_text

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument("output", type=Path, metavar="FILE", help="file to write; '-' prints it")
    parser.add_argument(
        "--units", choices=("si", "us"), default="us", help="units of the example (default: us)"
    )
    add_overwrite(parser)


def run(options: argparse.Namespace) -> int:
    """Write the file and say what to do next."""
    text = starter_text(options.units)
    Outputs(options).write(options.output, text)
    if not is_standard_output(options.output):
        print(f"edit it, then run: jacketcheck check {options.output}")
    return 0
