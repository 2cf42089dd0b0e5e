"""``jacketcheck schema``: JSON schemas of the inputs and of the JSON outputs."""

from __future__ import annotations

import argparse
import json

__all__ = ["add_arguments", "run"]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    parser.add_argument(
        "which",
        choices=("input", "output", "as-built", "bolts", "confirm", "chance", "size", "sweep"),
        help="repair file, output of check, as-built record, output of another command",
    )


def run(options: argparse.Namespace) -> int:
    """Print the schema."""
    from jacketcheck.render import schemas  # noqa: PLC0415 - lazily

    schema = getattr(schemas, f"{options.which.replace('-', '_')}_schema")()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return 0
