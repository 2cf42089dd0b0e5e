"""Finding the repair files of an inventory, and reading them without trusting any."""

from __future__ import annotations

import fnmatch
import os
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from jacketcheck.errors import InputError, InputProblem
from jacketcheck.inputs.toml_text import LARGEST_FILE
from jacketcheck.inputs.written import printable

__all__ = ["DEFAULT_PATTERN", "FoundFile", "content_of", "find_files", "shown_name"]

DEFAULT_PATTERN = "*.toml"


@dataclass(frozen=True, slots=True)
class FoundFile:
    """A file of the inventory, or a folder that cannot be searched.

    Attributes
    ----------
    name
        Path below the inventory's folder with ``/`` between its parts, as the file system spells
        it: such a name need not be text.
    problem
        Why nothing can be read there; empty for a file.
    """

    name: bytes
    problem: str = ""


def find_files(
    folder: Path, *, pattern: str = DEFAULT_PATTERN, leave_out: Path | None = None
) -> Iterator[FoundFile]:
    """Files of an inventory in all folders below one, in an order that is always the same.

    Hidden files and folders are left out. Links to folders are not followed, so that no loop can
    arise; links to files are, within the folder. A folder that cannot be searched is told, never
    skipped.

    Parameters
    ----------
    folder
        Where to begin.
    pattern
        What the names of files look like, with ``*`` and ``?``.
    leave_out
        A folder that is not searched: where the output goes.

    Raises
    ------
    InputError
        If `folder` is not a folder.
    """
    if not folder.is_dir():
        problem = "is not a folder" if folder.exists() else "is not there"
        raise InputError([InputProblem("FOLDER", printable(str(folder)), problem)], source="batch")
    return _files_below(folder, pattern, leave_out)


def _files_below(folder: Path, pattern: str, leave_out: Path | None) -> Iterator[FoundFile]:
    below = [""]
    while below:
        place = below.pop()
        try:
            with os.scandir(folder / place) as found:
                entries = sorted(found, key=lambda entry: entry.name)
        except OSError as error:
            yield FoundFile(os.fsencode(place or "."), f"folder {_refused(error)}")
            continue
        visible = [entry for entry in entries if not entry.name.startswith(".")]
        for entry in visible:
            if fnmatch.fnmatchcase(entry.name, pattern):
                yield FoundFile(os.fsencode(place + entry.name))
        folders = [entry for entry in visible if entry.is_dir(follow_symlinks=False)]
        if leave_out is not None:
            folders = [entry for entry in folders if Path(entry.path).resolve() != leave_out]
        below += [f"{place}{entry.name}/" for entry in reversed(folders)]


def content_of(folder: Path, name: bytes) -> bytes:
    """Bytes of a file of the inventory.

    Raises
    ------
    InputError
        If it is no regular file, cannot be read or is too large, or lies outside the folder: what
        a link leads to there is nobody's repair, and a message might print some of it.
    """
    path = folder / os.fsdecode(name)
    try:
        if not path.resolve(strict=True).is_relative_to(folder.resolve()):
            raise _unusable(name, "is a link that leads out of the folder")
        kind = path.stat().st_mode
        if not stat.S_ISREG(kind):  # opening a pipe would wait for a writer for ever
            message = "is a folder, not a file" if stat.S_ISDIR(kind) else "is not a regular file"
            raise _unusable(name, message)
        with path.open("rb") as file:
            content = file.read(LARGEST_FILE + 1)
    except (OSError, RuntimeError) as error:  # the latter from a loop of links
        raise _unusable(name, _refused(error)) from error
    if len(content) > LARGEST_FILE:
        raise _unusable(name, f"is larger than {LARGEST_FILE // 1000} kB")
    return content


def shown_name(name: bytes) -> str:
    r"""A file's name as text that can be printed.

    Examples
    --------
    >>> shown_name(b"north/pier 3.toml")
    'north/pier 3.toml'
    >>> print(shown_name(b"pier\n3.toml"))
    pier\u000a3.toml
    """
    return printable(os.fsdecode(name))


def _refused(error: OSError | RuntimeError) -> str:
    reason = (getattr(error, "strerror", "") or str(error)).partition(" from ")[0]
    return f"cannot be read: {reason.lower()}"


def _unusable(name: bytes, message: str) -> InputError:
    return InputError([InputProblem("", "", message)], source=shown_name(name))
