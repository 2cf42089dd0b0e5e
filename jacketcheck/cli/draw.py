"""``jacketcheck draw``: figures as SVG or PNG files."""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Literal

from jacketcheck.api import check_input
from jacketcheck.cli._endings import form_of
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
from jacketcheck.cli._outputs import Outputs, add_overwrite, is_standard_output
from jacketcheck.errors import InputError, InputProblem, NotEvaluatedError
from jacketcheck.figures import FIGURES, draw, require_matplotlib
from jacketcheck.files import make_folder
from jacketcheck.inputs.written import printable
from jacketcheck.report import CheckReport, VariantResults
from jacketcheck.units import DisplaySystem

__all__ = ["add_arguments", "run"]

_ALL = "all"
_FORMATS = ("svg", "png")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Declare the command's options."""
    add_file(parser)
    names = "; ".join(f"{kind.name}: {kind.help}" for kind in FIGURES.values())
    parser.add_argument(
        "figure",
        choices=(*FIGURES, _ALL),
        metavar="FIGURE",
        help=f"what to draw, or 'all'. {names}",
    )
    parser.add_argument(
        "-o",
        "--output",
        type=Path,
        required=True,
        metavar="PATH",
        help="file that ends in .svg or .png for one figure of one variant, or a folder; one whose "
        "name has an ending must be there; '-' for standard output",
    )
    add_overwrite(parser)
    parser.add_argument(
        "--format", choices=_FORMATS, help="form of the figures (default: as PATH ends, else svg)"
    )
    parser.add_argument(
        "--variant",
        action="append",
        metavar="NAME",
        help="variant to draw, may be repeated; 'all' for every variant "
        "(default: the file without overrides)",
    )
    add_units(parser)
    add_provisions(parser)
    add_plugin_options(parser)


def run(options: argparse.Namespace) -> int:
    """Draw and write; what cannot be drawn gives exit code 3, unless all figures were asked for."""
    require_matplotlib()
    host = host_from(options)
    repair = read(options, host)
    names = list(FIGURES) if options.figure == _ALL else [options.figure]
    report = check_input(
        repair,
        host=host,
        provisions=list(dict.fromkeys(options.provisions.split(","))),
        variants=asked_variants(repair, options.variant),
    )
    targets = _Targets(options, several=len(names) > 1 or len(report.tables) > 1)
    outputs = Outputs(options)
    system = display_system(options, repair)
    for name in names:
        try:
            _draw(name, report, system, targets, outputs)
        except NotEvaluatedError as error:
            if options.figure != _ALL:
                raise
            print(f"jacketcheck: {name} is not drawn: {error}", file=sys.stderr)
    return 0


class _Targets:
    """Paths that figures are written to, and their form."""

    def __init__(self, options: argparse.Namespace, *, several: bool) -> None:
        self._path: Path = options.output
        self._is_file = not self._path.is_dir() and (
            bool(self._path.suffix) or self._path.exists() or is_standard_output(self._path)
        )
        asked: str = options.format or "svg"
        if self._is_file:
            endings = {f".{form}": form for form in _FORMATS}
            asked = form_of(self._path, endings, option="--output", asked=options.format)
        self.form: Literal["svg", "png"] = "png" if asked == "png" else "svg"
        self._used: set[str] = set()
        if self._is_file and several:
            message = "must be a folder for several figures or variants"
            problem = InputProblem("--output", printable(str(self._path)), message)
            raise InputError([problem], source="options")

    def next(self, name: str, table: VariantResults | None, report: CheckReport) -> Path:
        """Path for a figure."""
        if self._is_file:
            return self._path
        make_folder(self._path)
        parts = [name]
        if table is not None and len(report.variants) > 1:
            parts.append(table.variant)
        if table is not None and name == "ratios" and len(report.provisions) > 1:
            parts.append(table.provisions)
        stem = next(one for one in _candidates(parts) if one not in self._used)
        self._used.add(stem)
        return self._path / f"{stem}.{self.form}"


def _candidates(parts: list[str]) -> Iterator[str]:
    """File names without surprises: small letters, digits and hyphens, told apart by numbers."""
    slugs = [re.sub(r"[^a-z0-9]+", "-", part.lower()).strip("-") for part in parts]
    stem = "-".join(slug for slug in slugs if slug)
    yield stem
    number = 2
    while True:
        yield f"{stem}-{number}"
        number += 1


def _draw(
    name: str,
    report: CheckReport,
    system: DisplaySystem,
    targets: _Targets,
    outputs: Outputs,
) -> None:
    from jacketcheck.figures.export import png_bytes, standalone_svg  # noqa: PLC0415 - matplotlib

    for table, drawing in draw(name, report.tables, system=system):
        path = targets.next(name, table, report)
        content = standalone_svg(drawing) if targets.form == "svg" else png_bytes(drawing)
        outputs.write(path, content)
