"""Standard output and standard error that may be closed, full, or read by somebody who leaves.

A command works to its end and gives its verdict whatever happens to what it prints: a verdict that
depended on how much of it was read would be none.
"""

from __future__ import annotations

import contextlib
import errno
import io
import os
import sys
from collections.abc import Callable, Iterator
from typing import TextIO

__all__ = ["Outlet", "outlets"]


class Outlet(io.TextIOBase):
    """Passes text on for as long as it is taken; from the first failure on it goes nowhere.

    Parameters
    ----------
    stream
        Where the text goes; None where the stream was closed before the program began.

    Attributes
    ----------
    error
        Why nothing is taken any more; None while all is well.
    """

    def __init__(self, stream: TextIO | None) -> None:
        self._stream = stream
        self.error: OSError | None = None

    @property
    def reader_left(self) -> bool:
        """Whether the text went to a pipe that is not read any more, e.g. by ``head``."""
        return isinstance(self.error, BrokenPipeError)

    @property
    def buffer(self) -> _Bytes:
        """Where bytes go."""
        return _Bytes(self)

    def write(self, text: str, /) -> int:
        """Pass text on."""
        self._pass(lambda stream: stream.write(text))
        return len(text)

    def write_bytes(self, data: bytes) -> None:
        """Pass bytes on, behind the text so far."""
        self.flush()
        self._pass(lambda stream: stream.buffer.write(data))

    def flush(self) -> None:
        """Pass on what waits."""
        if self._stream is not None:
            self._pass(lambda stream: stream.flush())

    def isatty(self) -> bool:
        """Whether it is a terminal."""
        return self._stream is not None and not self._stream.closed and self._stream.isatty()

    def fileno(self) -> int:
        """Number of the open file."""
        if self._stream is None:
            raise OSError(errno.EBADF, "is closed")
        return self._stream.fileno()

    @property
    def encoding(self) -> str:  # type: ignore[override] # read-only here, and never assigned
        """Encoding of the text."""
        return "utf-8" if self._stream is None else self._stream.encoding

    def abandon(self) -> None:
        """Let what waits go nowhere, so that the interpreter does not try it again at its end."""
        if self._stream is not None and self.error is not None:
            with contextlib.suppress(OSError, ValueError):
                os.dup2(os.open(os.devnull, os.O_WRONLY), self._stream.fileno())

    def _pass(self, action: Callable[[TextIO], object]) -> None:
        if self.error is not None:
            return
        try:
            if self._stream is None or self._stream.closed:
                raise OSError(errno.EBADF, "it is closed")
            action(self._stream)
        except OSError as error:
            self.error = error


class _Bytes:
    """The side of an outlet that takes bytes."""

    def __init__(self, outlet: Outlet) -> None:
        self._outlet = outlet

    def write(self, data: bytes) -> int:
        """Pass bytes on."""
        self._outlet.write_bytes(data)
        return len(data)


@contextlib.contextmanager
def outlets() -> Iterator[tuple[Outlet, Outlet]]:
    """Put outlets in the place of standard output and standard error."""
    _fill_closed_numbers()
    if isinstance(sys.stdout, io.TextIOWrapper):
        # a terminal or pipe that knows few characters gets escapes for the others
        sys.stdout.reconfigure(errors="backslashreplace")
    out, err = Outlet(sys.stdout), Outlet(sys.stderr)
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            yield out, err
        finally:
            out.flush()
            err.flush()
            out.abandon()
            err.abandon()


def _fill_closed_numbers() -> None:
    """Open nothing under the numbers of closed standard streams: the next file would get them."""
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:
            os.open(os.devnull, os.O_RDWR)
