"""``jacketcheck new``: a commented, valid file to start from."""

from __future__ import annotations

import argparse
from pathlib import Path

from jacketcheck.files import write_atomically
from jacketcheck.starter import starter_text

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument("file", type=Path, metavar="FILE", help="file to write; '-' prints it")
    parser.add_argument(
        "--units", choices=("si", "us"), default="us", help="units of the example (default: us)"
    )
    parser.add_argument("--overwrite", action="store_true", help="replace a file that exists")


def run(options: argparse.Namespace) -> int:
    """Write the file and say what to do next."""
    text = starter_text(options.units)
    if str(options.file) == "-":
        print(text, end="")
        return 0
    write_atomically(options.file, text, overwrite=options.overwrite)
    print(f"wrote {options.file}; edit it, then run: jacketcheck check {options.file}")
    return 0
