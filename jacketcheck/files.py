"""Writing files so that a reader never finds half of one."""

from __future__ import annotations

import glob
import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from jacketcheck.errors import InputError, InputProblem

__all__ = ["make_folder", "remove_leftovers", "stream_atomically", "write_atomically"]

_RANDOM = 8 * "?"
"""What `tempfile` puts behind the name of a file: eight characters."""


def make_folder(path: Path | str) -> None:
    """Make a folder, and those above it, unless it is there.

    Raises
    ------
    InputError
        If it cannot be made.
    """
    try:
        Path(path).mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise _refusal(Path(path), f"cannot be made: {error.strerror}") from error


def write_atomically(path: Path | str, content: str | bytes, *, overwrite: bool = True) -> None:
    """Write a file in full or not at all.

    The content goes to a temporary file in the same folder, which then takes its place: an
    interrupted run leaves the old file, or none.

    Parameters
    ----------
    path
        File to write; its folder must exist.
    content
        Text, written as UTF-8 with line feeds as they are, or bytes.
    overwrite
        Whether a file that exists may be replaced.

    Raises
    ------
    InputError
        If the file exists and may not be replaced, or cannot be written.
    """
    target = Path(path)
    if not overwrite and target.exists():
        raise _refusal(target, "exists already; --overwrite replaces it")
    data = content.encode() if isinstance(content, str) else content
    with stream_atomically(target) as stream:
        stream.write(data)


@contextmanager
def stream_atomically(path: Path | str) -> Iterator[BinaryIO]:
    """Write a file bit by bit, so that it takes its place only once it is complete.

    As `write_atomically`, for what is too large to be held in memory. If the block raises, the
    old file stays, or none.

    Parameters
    ----------
    path
        File to write, replaced if it is there; its folder must exist.

    Yields
    ------
    BinaryIO
        Where the bytes go.

    Raises
    ------
    InputError
        If the file cannot be written.
    """
    target = Path(path)
    try:
        handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    except OSError as error:
        raise _refusal(target, f"cannot be written: {error.strerror}") from error
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            yield stream
            stream.flush()
            os.fsync(stream.fileno())
        # a temporary file is private; what is asked for gets the usual permissions
        temporary.chmod(0o666 & ~_umask())
        temporary.replace(target)
    except OSError as error:
        raise _refusal(target, f"cannot be written: {error.strerror}") from error
    finally:
        temporary.unlink(missing_ok=True)


def remove_leftovers(path: Path | str) -> None:
    """Remove what runs that were killed while they wrote a file have left beside it.

    No other run may be writing the same file.
    """
    target = Path(path)
    for temporary in target.parent.glob(f".{glob.escape(target.name)}.{_RANDOM}"):
        temporary.unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _refusal(path: Path, message: str) -> InputError:
    return InputError([InputProblem("", "", message)], source=str(path))
