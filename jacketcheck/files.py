"""Writing files so that a reader never finds half of one."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from jacketcheck.errors import InputError, InputProblem

__all__ = ["make_folder", "write_atomically"]


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
    try:
        handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    except OSError as error:
        raise _refusal(target, f"cannot be written: {error.strerror}") from error
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
        # a temporary file is private; what is asked for gets the usual permissions
        temporary.chmod(0o666 & ~_umask())
        temporary.replace(target)
    except OSError as error:
        raise _refusal(target, f"cannot be written: {error.strerror}") from error
    finally:
        temporary.unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _refusal(path: Path, message: str) -> InputError:
    return InputError([InputProblem("", "", message)], source=str(path))
