"""Options and helpers that several commands share."""

from __future__ import annotations

import argparse
import shutil
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TypeVar

from jacketcheck.host.host import Host
from jacketcheck.host.isolation import DEFAULT_TIME_LIMIT
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.load import ALL, InputFile, read_input
from jacketcheck.units import DisplaySystem

__all__ = [
    "add_file",
    "add_format",
    "add_loss",
    "add_plugin_options",
    "add_provisions",
    "add_units",
    "asked_variants",
    "display_system",
    "host_from",
    "percent",
    "progress",
    "read",
    "terminal_width",
]

Item = TypeVar("Item")


def add_file(parser: argparse.ArgumentParser) -> None:
    """FILE."""
    parser.add_argument("file", type=Path, metavar="FILE", help="repair file (TOML)")


def add_units(parser: argparse.ArgumentParser) -> None:
    """--units."""
    parser.add_argument(
        "--units",
        choices=("si", "us"),
        help="units of the output; by default as the file says in job.units",
    )


def add_format(parser: argparse.ArgumentParser) -> None:
    """Declare the form of a printed table."""
    parser.add_argument(
        "--format",
        choices=("text", "markdown", "csv", "json"),
        default="text",
        help="form of the output (default: text)",
    )


def add_loss(parser: argparse.ArgumentParser, *, usual: float) -> None:
    """Declare what is ordered on top of the bolts that are installed."""
    parser.add_argument(
        "--loss",
        type=percent,
        default=usual,
        metavar="PERCENT",
        help="bolts ordered on top for loss (default: %(default)g)",
    )


def percent(text: str) -> float:
    """A share from 0 to 100."""
    value = float(text)
    if not 0.0 <= value <= 100.0:
        raise argparse.ArgumentTypeError(f"{text} is not between 0 and 100")
    return value


def add_provisions(parser: argparse.ArgumentParser) -> None:
    """--provisions."""
    parser.add_argument(
        "--provisions",
        default="us",
        metavar="NAME[,NAME…]",
        help="sets of provisions to check by, side by side (default: us)",
    )


def add_plugin_options(parser: argparse.ArgumentParser) -> None:
    """--without and --plugin-seconds."""
    parser.add_argument(
        "--without",
        action="append",
        default=[],
        metavar="PLUGIN",
        help="switch a plug-in off, by its name or its distribution's; may be repeated",
    )
    parser.add_argument(
        "--plugin-seconds",
        type=_seconds,
        default=DEFAULT_TIME_LIMIT,
        metavar="SECONDS",
        help="time that one call of a plug-in may take (default: %(default)g)",
    )


def _seconds(text: str) -> float:
    value = float(text)
    if not 0.0 < value <= 86_400.0:
        raise argparse.ArgumentTypeError(f"{text} is not between 0 and 86400")
    return value


def host_from(options: argparse.Namespace) -> Host:
    """Load plug-ins as the options say."""
    return load_host(without=options.without, time_limit=options.plugin_seconds)


def read(options: argparse.Namespace, host: Host) -> InputFile:
    """Read the repair file with what the plug-ins bring."""
    return read_input(options.file, catalog=host.catalog)


def asked_variants(repair: InputFile, names: list[str] | None) -> list[str] | None:
    """Variants asked for: the file itself if none, None for all of them."""
    if not names:
        return [repair.base_name]
    return None if ALL in names else names


def display_system(options: argparse.Namespace, repair: InputFile) -> DisplaySystem:
    """Units of the output."""
    system: DisplaySystem = options.units or repair.base.job.units
    return system


def terminal_width() -> int | None:
    """Columns of the terminal; None where output goes to a file or a pipe."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else None


def progress(items: Iterable[Item], *, total: int, unit: str) -> Iterable[Item]:
    """Show a bar on a terminal once the work has taken a second."""
    if not sys.stderr.isatty() or total < 2:
        return items
    from tqdm import tqdm  # noqa: PLC0415 - only on a terminal

    bar: Iterable[Item] = tqdm(items, total=total, unit=unit, delay=1.0, leave=False)
    return bar
