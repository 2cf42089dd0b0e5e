"""Writing files so that a reader never finds half of one, and nothing is lost unasked."""

from __future__ import annotations

import errno
import glob
import os
import stat
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from jacketcheck.errors import InputError, InputProblem

__all__ = [
    "make_folder",
    "remove_leftovers",
    "require_writable",
    "stream_atomically",
    "write_atomically",
]

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


def require_writable(
    path: Path | str, *, overwrite: bool = False, inputs: Iterable[Path | str] = ()
) -> None:
    """Refuse a file that must not be written; best asked before the work is done.

    Parameters
    ----------
    path
        File to write.
    overwrite
        Whether a file that exists may be replaced.
    inputs
        Files that are read: they are never written, whatever name or link leads to them.

    Raises
    ------
    InputError
        If the file is one of the inputs, exists and may not be replaced, or is a folder, a socket
        or a disk.
    """
    target = Path(path)
    found = _stat(target)
    if found is None:
        return
    for one in inputs:
        read = _stat(Path(one))
        if read is not None and os.path.samestat(read, found):
            raise _refusal(target, "is an input of this command; choose another file")
    if stat.S_ISDIR(found.st_mode):
        raise _refusal(target, "is a folder, not a file")
    if stat.S_ISREG(found.st_mode) and not overwrite:
        raise _refusal(target, "exists already; --overwrite replaces it")
    if stat.S_ISBLK(found.st_mode) or stat.S_ISSOCK(found.st_mode):
        raise _refusal(target, "is neither a file nor a pipe")


def write_atomically(
    path: Path | str,
    content: str | bytes,
    *,
    overwrite: bool = False,
    inputs: Iterable[Path | str] = (),
) -> None:
    """Write a file in full or not at all.

    The content goes to a temporary file in the same folder, which then takes its place: an
    interrupted run leaves the old file, or none. A link stays, and what it leads to is written;
    a pipe or a character device takes the content as it is.

    Parameters
    ----------
    path
        File to write; its folder must exist.
    content
        Text, written as UTF-8 with line feeds as they are, or bytes.
    overwrite, inputs
        What may be replaced and what never, as for `require_writable`.

    Raises
    ------
    InputError
        If the file must not be written, or cannot be.
    """
    target = Path(path)
    require_writable(target, overwrite=overwrite, inputs=inputs)
    data = content.encode("utf-8", "backslashreplace") if isinstance(content, str) else content
    if _takes_a_stream(target):
        _write_through(target, data)
        return
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
    place = Path(os.path.realpath(target))
    before = _stat(place)
    try:
        handle, name = tempfile.mkstemp(dir=place.parent, prefix=f".{place.name}.")
    except OSError as error:
        raise _refusal(target, f"cannot be written: {error.strerror}") from error
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            yield stream
            stream.flush()
            os.fsync(stream.fileno())
        # a temporary file is private; what is asked for gets the usual permissions, or keeps its
        temporary.chmod(0o666 & ~_umask() if before is None else stat.S_IMODE(before.st_mode))
        temporary.replace(place)
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


def _takes_a_stream(target: Path) -> bool:
    """Whether a path leads to something that no other file can take the place of."""
    found = _stat(target)
    if found is None:
        return False
    # an open file that has lost its name, e.g. behind /dev/fd, is found by its number alone
    named = _stat(Path(os.path.realpath(target)))
    return not stat.S_ISREG(found.st_mode) or named is None or not os.path.samestat(found, named)


def _write_through(target: Path, data: bytes) -> None:
    # without O_NONBLOCK a pipe that nobody reads would be waited for without end
    flags = os.O_WRONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOCTTY", 0)
    try:
        handle = os.open(target, flags)
        with os.fdopen(handle, "wb") as stream:
            os.set_blocking(handle, True)
            stream.write(data)
    except OSError as error:
        reason = "nobody reads the pipe" if error.errno == errno.ENXIO else error.strerror
        raise _refusal(target, f"cannot be written: {reason}") from error


def _stat(path: Path) -> os.stat_result | None:
    """What a path leads to; None where nothing is there."""
    try:
        return path.stat()
    except FileNotFoundError:
        return None
    except OSError as error:
        raise _refusal(path, f"cannot be written: {error.strerror}") from error
    except ValueError as error:
        raise _refusal(path, "cannot be written: not a file name") from error


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _refusal(path: Path, message: str) -> InputError:
    return InputError([InputProblem("", "", message)], source=str(path))
