"""Telling the process that started this one which foreign call is running, so that it can end it.

A thread cannot be stopped while a loop in C holds the interpreter, as an innocent regular
expression may. The command line therefore works in a process of its own wherever plug-ins are
installed (`jacketcheck.cli.supervision`); this side writes a line when a foreign call begins,
pauses for work of ours, goes on, and ends.
"""

from __future__ import annotations

import contextlib
import json
import os
import select
import threading
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any, Final

__all__ = ["WATCH", "Watch", "watch_of_this_process"]

WATCH: Final = "JACKETCHECK_WATCH"
"""Environment variable that tells a watched process where to write, and what was given up."""


@dataclass(frozen=True)
class Watch:
    """What a process says of its foreign calls.

    Attributes
    ----------
    pipe
        Number of the open file to write to; None where nobody watches.
    given_up
        Why calls that ended an earlier process are not made again, by their names.
    """

    pipe: int | None = None
    given_up: Mapping[str, str] = field(default_factory=dict)

    @contextlib.contextmanager
    def call(self, name: str, seconds: float) -> Iterator[None]:
        """Say that a foreign call is running, and keep what it writes out of our output."""
        if self.pipe is None:
            yield
            return
        self._say(call=name, seconds=seconds)
        with _diverted(1), _diverted(2):
            try:
                yield
            finally:
                self._say(ended=True)

    @contextlib.contextmanager
    def paused(self) -> Iterator[None]:
        """Say that our own work is being done, which is not the call's time."""
        self._say(paused=True)
        try:
            yield
        finally:
            self._say(paused=False)

    def end_with_the_watcher(self) -> None:
        """End this process as soon as nobody watches it any more: nobody waits for it either."""
        if self.pipe is None:
            return
        poll = select.poll()
        poll.register(self.pipe, 0)  # no event but that the reading end is gone

        def wait() -> None:
            poll.poll()
            os._exit(1)

        threading.Thread(target=wait, daemon=True, name="jacketcheck-watch").start()

    def _say(self, **words: Any) -> None:
        if self.pipe is not None:
            os.write(self.pipe, json.dumps(words).encode() + b"\n")


@cache
def watch_of_this_process() -> Watch:
    """The watch that this process is under; one that says nothing where there is none."""
    written = os.environ.get(WATCH)
    if written is None:
        return Watch()
    told = json.loads(written)
    return Watch(int(told["pipe"]), dict(told["given_up"]))


@contextlib.contextmanager
def _diverted(number: int) -> Iterator[None]:
    """Let what is written to an open file by its number go nowhere for a while."""
    kept = os.dup(number)
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, number)
    os.close(nowhere)
    try:
        yield
    finally:
        os.dup2(kept, number)
        os.close(kept)
