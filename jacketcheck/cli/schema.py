"""``jacketcheck schema``: JSON schemas of the input and of the JSON output."""

from __future__ import annotations

import argparse
import json

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument("which", choices=("input", "output"), help="which schema to print")


def run(options: argparse.Namespace) -> int:
    """Print the schema."""
    from jacketcheck.render.schemas import input_schema, output_schema  # noqa: PLC0415 - lazily

    schema = input_schema() if options.which == "input" else output_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return 0
