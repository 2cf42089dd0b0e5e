"""Where a command writes: files that it may write, or standard output."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import require_writable, write_atomically
from jacketcheck.inputs.written import printable

__all__ = ["Outputs", "add_overwrite", "is_standard_output"]

_DASH: Final = "-"


def add_overwrite(parser: argparse.ArgumentParser) -> None:
    """--overwrite."""
    parser.add_argument("--overwrite", action="store_true", help="replace files that exist")


class Outputs:
    """Writes the files of a command: never over what it reads, over others only if asked.

    Parameters
    ----------
    options
        Options of the command: its inputs, and whether files may be replaced.
    """

    def __init__(self, options: argparse.Namespace) -> None:
        named = (getattr(options, name, None) for name in ("file", "as_built"))
        self._inputs = tuple(Path(one) for one in named if one is not None)
        self._overwrite: bool = options.overwrite

    def require(self, paths: Iterable[Path]) -> None:
        """Refuse what must not be written, before the work is done."""
        for path in paths:
            if not is_standard_output(path):
                require_writable(path, overwrite=self._overwrite, inputs=self._inputs)

    def require_file(self, path: Path, *, option: str) -> None:
        """As `require`, for a file beside what standard output holds already."""
        if is_standard_output(path):
            message = "must be a file: standard output holds the table"
            problem = InputProblem(option, printable(str(path)), message)
            raise InputError([problem], source="options")
        self.require([path])

    def write(self, path: Path, content: str | bytes) -> None:
        """Write a file and say so; nothing is said where it goes to standard output."""
        if is_standard_output(path):
            data = content.encode() if isinstance(content, str) else content
            sys.stdout.flush()
            sys.stdout.buffer.write(data)
            return
        self.write_quietly(path, content)
        print(f"wrote {printable(str(path))}")

    def write_quietly(self, path: Path, content: str | bytes) -> None:
        """Write a file."""
        write_atomically(path, content, overwrite=self._overwrite, inputs=self._inputs)


def is_standard_output(path: Path) -> bool:
    """Whether a path is ``-``, or leads to where standard output goes."""
    if str(path) == _DASH:
        return True
    try:
        return os.path.samestat(path.stat(), os.fstat(sys.stdout.fileno()))
    except (OSError, ValueError):  # nothing is there, or standard output is no file
        return False
