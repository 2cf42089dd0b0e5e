"""The command line where plug-ins are installed: the work in one process, a watch in another.

The watching process knows which foreign call is running. Where one outlasts its time, or takes the
process with it, the work is begun anew without that call; its row says so.
"""

from __future__ import annotations

import contextlib
import json
import os
import select
import signal
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.metadata import entry_points
from types import FrameType
from typing import Any, Final

from jacketcheck.hookspecs import ENTRY_POINT_GROUP
from jacketcheck.host.watch import WATCH

__all__ = ["has_plugins", "supervised"]

_GRACE: Final = 2.0
"""Seconds beyond a call's limit, within which the process itself gives the call up."""
_MOST_RESTARTS: Final = 50
_NOT_EVALUATED: Final = 3


@dataclass
class _Call:
    """A foreign call that is running."""

    name: str
    seconds: float
    used: float = 0.0
    since: float | None = field(default_factory=time.monotonic)

    def left(self) -> float | None:
        """Seconds until it has to be ended; None while our own work is done for it."""
        if self.since is None:
            return None
        return self.seconds + _GRACE - self.used - (time.monotonic() - self.since)

    def pause(self) -> None:
        """Stop its clock."""
        if self.since is not None:
            self.used += time.monotonic() - self.since
            self.since = None

    def resume(self) -> None:
        """Let its clock go on."""
        if self.since is None:
            self.since = time.monotonic()


def has_plugins() -> bool:
    """Whether any distribution brings a plug-in."""
    return os.name == "posix" and bool(entry_points(group=ENTRY_POINT_GROUP))


def supervised(arguments: Sequence[str]) -> int:
    """Run the command line in a process of its own and return its exit code."""
    given_up: dict[str, str] = {}
    while len(given_up) < _MOST_RESTARTS:
        run = _Run(arguments, given_up)
        run.attend()
        if run.lost is None:
            return run.exit_code()
        given_up[run.lost.name] = run.epitaph()
    print("jacketcheck: plug-ins ended the process too often", file=sys.stderr)
    return _NOT_EVALUATED


class _Run:
    """One process that does the work, attended until it ends.

    Attributes
    ----------
    lost
        The foreign call that the process ended in; None where it came to its own end.
    """

    def __init__(self, arguments: Sequence[str], given_up: Mapping[str, str]) -> None:
        ours, theirs = os.pipe()
        told = json.dumps({"pipe": theirs, "given_up": dict(given_up)})
        self._process = subprocess.Popen(  # noqa: S603 - our own program
            [sys.executable, "-P", "-m", "jacketcheck", *arguments],
            env={**os.environ, WATCH: told, "PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
            pass_fds=(theirs,),
        )
        os.close(theirs)
        self._pipe = ours
        self._expired = False
        self.lost: _Call | None = None

    def attend(self) -> None:
        """Follow what the process says until it ends, or has to be ended."""
        with _handed_on(self._process):
            waiting = b""
            while said := self._next():
                *lines, waiting = (waiting + said).split(b"\n")
                for line in lines:
                    self._take(json.loads(line))
            os.close(self._pipe)
            if self._expired:
                self._process.kill()
            self._process.wait()

    def exit_code(self) -> int:
        """Code of a process that came to its own end, as a shell would tell it."""
        code = self._process.returncode
        return code if code >= 0 else 128 - code

    def epitaph(self) -> str:
        """How the process ended in a foreign call."""
        if self._expired:
            return f"did not return within {self.lost.seconds:g} s" if self.lost else ""
        code = self._process.returncode
        return f"ended the process, {_ending(code)}"

    def _next(self) -> bytes:
        """What the process says next; nothing where it ended or its call outlasts its time."""
        left = None if self.lost is None else self.lost.left()
        ready, _, _ = select.select([self._pipe], [], [], None if left is None else max(left, 0.0))
        if ready:
            return os.read(self._pipe, 65_536)
        self._expired = True
        return b""

    def _take(self, words: Mapping[str, Any]) -> None:
        if "call" in words:
            self.lost = _Call(str(words["call"]), float(words["seconds"]))
        elif "ended" in words:
            self.lost = None
        elif self.lost is not None:
            self.lost.pause() if words["paused"] else self.lost.resume()


@contextlib.contextmanager
def _handed_on(process: subprocess.Popen[bytes]) -> Iterator[None]:
    """Let the process that works decide what an interruption or a termination means."""

    def hand_on(number: int, _: FrameType | None) -> None:
        if process.poll() is None:
            process.send_signal(number)

    # the keyboard interrupts both processes by itself: the one that works heeds the first signal
    handed_on = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
    before = {one: signal.signal(one, hand_on) for one in handed_on}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _ending(code: int) -> str:
    if code >= 0:
        return f"exit code {code}"
    try:
        return signal.Signals(-code).name
    except ValueError:
        return f"signal {-code}"
