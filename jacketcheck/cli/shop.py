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
from jacketcheck.cli._outputs import Outputs, add_overwrite, is_standard_output
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import make_folder
from jacketcheck.inputs.written import printable
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
    add_overwrite(parser)
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
    written = _write(options.output, files, Outputs(options))
    print(shop_text(package, system=system, written=written, width=terminal_width()), end="")
    return 0


def _write(folder: Path, files: dict[str, str], outputs: Outputs) -> list[str]:
    """Write all files, or none where one is in the way."""
    if is_standard_output(folder):
        problem = InputProblem("--output", printable(str(folder)), "must be a folder")
        raise InputError([problem], source="options")
    make_folder(folder)
    outputs.require(folder / name for name in files)
    for name, content in files.items():
        outputs.write_quietly(folder / name, content)
    return [str(folder / name) for name in files]
