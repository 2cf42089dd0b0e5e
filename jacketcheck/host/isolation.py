"""Calling foreign code so that whatever it does becomes a value that we can show.

The call runs in a thread of its own: an exception of any kind, ``SystemExit`` included, is caught
there, and a call that outlasts its limit is abandoned. What it prints or warns of is kept apart
from our own output. What no thread can contain (a loop in C, ``os._exit``, a crash) ends the
process; the command line then begins anew without the call (`jacketcheck.cli.supervision`).
"""

from __future__ import annotations

import io
import queue
import threading
import time
import warnings
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import replace
from typing import Any, TypeVar

from jacketcheck.host.errands import Counter, Errand
from jacketcheck.host.outcome import Outcome, describe, one_line, outcome_of
from jacketcheck.host.watch import watch_of_this_process

__all__ = ["DEFAULT_TIME_LIMIT", "Outcome", "call_isolated", "describe", "one_line"]

DEFAULT_TIME_LIMIT = 30.0
"""Seconds that one call of a plug-in may take."""

Value = TypeVar("Value")


def call_isolated(
    function: Callable[..., Value],
    *arguments: object,
    name: str,
    seconds: float = DEFAULT_TIME_LIMIT,
    counter: Counter | None = None,
) -> Outcome[Value]:
    """Call a function in a thread of its own, for at most some seconds.

    Parameters
    ----------
    function, *arguments
        What to call.
    name
        What is called, and whose it is: what a watching process knows the call by.
    seconds
        Time that it may take.
    counter
        Where the function may hand in errands, which are done here and do not count as its time.

    Returns
    -------
    Outcome
        What came of it.

    Examples
    --------
    >>> call_isolated(int, "12", name="int").value
    12
    >>> call_isolated(int, "twelve", name="int").problem
    "raised ValueError: invalid literal for int() with base 10: 'twelve' (outcome.py, line ...)"
    """
    watch = watch_of_this_process()
    if name in watch.given_up:
        return Outcome(problem=watch.given_up[name], timed_out=True)
    # a call that is abandoned may still answer: nobody looks at its counter any more
    desk = Counter() if counter is None else counter

    def run() -> None:
        desk.handed_in.put(outcome_of(function, arguments))

    printed = io.StringIO()
    with (
        watch.call(name, seconds),
        redirect_stdout(printed),
        redirect_stderr(printed),
        warnings.catch_warnings(record=True) as caught,
    ):
        warnings.simplefilter("always")
        threading.Thread(target=run, daemon=True, name="jacketcheck-plugin").start()
        outcome = _attended(desk, seconds)
    remarks = [f"warned {one_line(str(warning.message))}" for warning in caught]
    if text := one_line(printed.getvalue()):
        remarks.append(f"printed {text}")
    return replace(outcome, remarks=tuple(dict.fromkeys(remarks)))


def _attended(desk: Counter, seconds: float) -> Outcome[Any]:
    """Run errands until the answer comes or the time is up; the clock stands still meanwhile."""
    end = time.monotonic() + seconds
    while True:
        try:
            found = desk.handed_in.get(timeout=max(end - time.monotonic(), 0.0))
        except queue.Empty:
            return Outcome(problem=f"did not return within {seconds:g} s", timed_out=True)
        if not isinstance(found, Errand):
            return found
        begin = time.monotonic()
        with watch_of_this_process().paused():
            found.run()
        end += time.monotonic() - begin
