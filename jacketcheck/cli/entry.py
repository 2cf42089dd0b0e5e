"""The program: in one process where only our own code runs, in a watched one beside plug-ins."""

from __future__ import annotations

import io
import os
import sys
import threading
from typing import Final

from jacketcheck.cli.main import main
from jacketcheck.host.watch import WATCH, watch_of_this_process

__all__ = ["run"]

_MEMORY: Final = 8 * 1024**3
"""Address space of a watched process [bytes]: a plug-in that asks for more gets a MemoryError."""


def run() -> int:
    """Run the command line and return its exit code."""
    if WATCH in os.environ:
        _bound_memory()
        watch_of_this_process().end_with_the_watcher()
        # processes that this one starts are not watched: the pipe is not theirs
        del os.environ[WATCH]
        if isinstance(sys.stdout, io.TextIOWrapper):
            encoding = sys.stdout.encoding
            sys.stdout = _OwnThread(sys.stdout.detach(), encoding)
        code = main()
        # what a plug-in left to be done at the end of the process, or in threads, is not done
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:
                stream.flush()
        os._exit(code)
    from jacketcheck.cli.supervision import (  # noqa: PLC0415 - a watched process needs none of it
        has_plugins,
        supervised,
    )

    return supervised(sys.argv[1:]) if has_plugins() else main()


class _OwnThread(io.TextIOWrapper):
    """Standard output that takes what our own thread writes; what others write goes nowhere."""

    def write(self, text: str, /) -> int:
        """Write, in our own thread."""
        if threading.current_thread() is not threading.main_thread():
            return len(text)
        return super().write(text)


def _bound_memory() -> None:
    import resource  # noqa: PLC0415 - not on every system

    _, most = resource.getrlimit(resource.RLIMIT_AS)
    bound = _MEMORY if most == resource.RLIM_INFINITY else min(_MEMORY, most)
    resource.setrlimit(resource.RLIMIT_AS, (bound, most))
