"""``jacketcheck shop``: flat patterns as DXF, and quantities."""

from __future__ import annotations

import argparse
from pathlib import Path

from jacketcheck.cli._options import (
    add_file,
    add_loss,
    add_plugin_options,
    add_units,
    display_system,
    host_from,
    percent,
    read,
    terminal_width,
)
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import write_atomically
from jacketcheck.render.shop_files import shop_files
from jacketcheck.render.shop_table import shop_text
from jacketcheck.schedule import Allowances
from jacketcheck.shop import require_ezdxf, shop_package
from jacketcheck.shop.quantities import USUAL_WASTE_PERCENT

__all__ = ["add_arguments", "run"]

_USUAL = Allowances()


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    parser.add_argument(
        "-o",
        "--output",
        type=Path,
        required=True,
        metavar="FOLDER",
        help="folder to write to; made if it is not there",
    )
    parser.add_argument("--variant", metavar="NAME", help="variant (default: the file itself)")
    parser.add_argument("--overwrite", action="store_true", help="replace files that exist")
    parser.add_argument(
        "--waste",
        type=percent,
        default=USUAL_WASTE_PERCENT,
        metavar="PERCENT",
        help="grout ordered on top of what is filled (default: %(default)g)",
    )
    add_loss(parser, usual=_USUAL.loss_percent)
    add_units(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Write the files and print the quantities."""
    require_ezdxf()
    host = host_from(options)
    repair = read(options, host)
    package = shop_package(
        repair,
        host=host,
        variant=options.variant,
        allowances=Allowances(loss_percent=options.loss),
        waste_percent=options.waste,
    )
    system = display_system(options, repair)
    # all is drawn before anything is written
    files = shop_files(package, system=system)
    written = _write(options.output, files, overwrite=options.overwrite)
    print(shop_text(package, system=system, written=written, width=terminal_width()), end="")
    return 0


def _write(folder: Path, files: dict[str, str], *, overwrite: bool) -> list[str]:
    """Write all files, or none where one is in the way."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        message = f"cannot be made: {(error.strerror or type(error).__name__).lower()}"
        raise InputError([InputProblem("", "", message)], source=str(folder)) from error
    taken = [name for name in files if (folder / name).exists()]
    if taken and not overwrite:
        raise InputError(
            [
                InputProblem("", "", f"{name} exists already; --overwrite replaces it")
                for name in taken
            ],
            source=str(folder),
        )
    for name, content in files.items():
        write_atomically(folder / name, content)
    return [str(folder / name) for name in files]
