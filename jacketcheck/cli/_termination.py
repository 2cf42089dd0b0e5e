"""A request to end, met as an interruption is: nothing half written stays, and no other process."""

from __future__ import annotations

import contextlib
import os
import signal
import threading
from collections.abc import Iterator
from types import FrameType
from typing import Any, NoReturn

from jacketcheck.host.watch import WATCH

__all__ = ["Terminated", "orderly_termination"]


class Terminated(KeyboardInterrupt):
    """Whoever runs the program wants it to end."""


@contextlib.contextmanager
def orderly_termination() -> Iterator[None]:
    """Raise `Terminated` at SIGTERM and KeyboardInterrupt at SIGINT, at the first of them only.

    What comes later must not disturb the clearing up. A signal that was set to something else
    stays so; only the main thread can receive signals.
    """
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    usual: dict[signal.Signals, Any] = {
        signal.SIGINT: signal.default_int_handler,
        signal.SIGTERM: signal.SIG_DFL,
    }
    ours = {one: handler for one, handler in usual.items() if signal.getsignal(one) is handler}
    met = False

    def end(number: int, _: FrameType | None) -> NoReturn:
        nonlocal met
        met = True
        for one in ours:
            signal.signal(one, signal.SIG_IGN)
        raise Terminated if number == signal.SIGTERM else KeyboardInterrupt

    for one in ours:
        signal.signal(one, end)
    try:
        yield
    finally:
        # a watched process ends now, and may get the same signal from the one that watches it
        if not (met and WATCH in os.environ):
            for one, handler in ours.items():
                signal.signal(one, handler)
