"""Calling foreign code so that whatever it does becomes a value that we can show.

The call runs in a thread of its own: an exception of any kind, ``SystemExit`` included, is caught
there, and a call that outlasts its limit is abandoned. What it prints or warns of is kept apart
from our own output. A plug-in that ends the process from C or with ``os._exit``, or that never
lets go of the interpreter, cannot be contained this way.
"""

from __future__ import annotations

import io
import queue
import threading
import traceback
import warnings
from collections.abc import Callable
from contextlib import redirect_stderr, redirect_stdout
from dataclasses import dataclass, replace
from pathlib import PurePath
from typing import Generic, TypeVar

from jacketcheck.errors import JacketcheckError

__all__ = ["DEFAULT_TIME_LIMIT", "Outcome", "call_isolated", "describe", "one_line"]

DEFAULT_TIME_LIMIT = 30.0
"""Seconds that one call of a plug-in may take."""

_LONGEST_TEXT = 300

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Outcome(Generic[Value]):
    """What came of a call: a value, or a problem told in one line.

    Attributes
    ----------
    value
        What the function returned; None if it did not.
    problem
        What went wrong; None if nothing did.
    error
        The exception behind the problem, if there is one.
    remarks
        What the call printed and warned of, one line each.
    """

    value: Value | None = None
    problem: str | None = None
    error: BaseException | None = None
    remarks: tuple[str, ...] = ()


def describe(error: BaseException) -> str:
    """One line that names an exception, what it says and where it was raised.

    Our own exceptions are raised on purpose and speak for themselves.
    """
    kind = type(error).__name__
    try:
        text = one_line(str(error))
    except Exception:  # noqa: BLE001 - a foreign exception may even fail to say what it is
        text = "with a message that cannot be shown"
    if isinstance(error, JacketcheckError) and text:
        return text
    frames = traceback.extract_tb(error.__traceback__)
    place = f" ({PurePath(frames[-1].filename).name}, line {frames[-1].lineno})" if frames else ""
    return f"raised {kind}{': ' if text else ''}{text}{place}"


def one_line(text: str) -> str:
    """Text without line ends and without what cannot be printed, cut where it is long."""
    plain = "".join(one if one.isprintable() else " " for one in text[: 4 * _LONGEST_TEXT])
    words = " ".join(plain.split())
    return words if len(words) <= _LONGEST_TEXT else f"{words[:_LONGEST_TEXT]}…"


def call_isolated(
    function: Callable[..., Value], *arguments: object, seconds: float = DEFAULT_TIME_LIMIT
) -> Outcome[Value]:
    """Call a function in a thread of its own, for at most some seconds.

    Examples
    --------
    >>> call_isolated(int, "12").value
    12
    >>> call_isolated(int, "twelve").problem
    "raised ValueError: invalid literal for int() with base 10: 'twelve' (isolation.py, line ...)"
    """
    # a call that is abandoned may still answer: nobody looks into its queue any more
    answers: queue.SimpleQueue[Outcome[Value]] = queue.SimpleQueue()

    def run() -> None:
        answers.put(_outcome(function, arguments))

    printed = io.StringIO()
    with (
        redirect_stdout(printed),
        redirect_stderr(printed),
        warnings.catch_warnings(record=True) as caught,
    ):
        warnings.simplefilter("always")
        threading.Thread(target=run, daemon=True, name="jacketcheck-plugin").start()
        try:
            outcome = answers.get(timeout=seconds)
        except queue.Empty:
            outcome = Outcome(problem=f"did not return within {seconds:g} s")
    remarks = [f"warned {one_line(str(warning.message))}" for warning in caught]
    if text := one_line(printed.getvalue()):
        remarks.append(f"printed {text}")
    return replace(outcome, remarks=tuple(dict.fromkeys(remarks)))


def _outcome(function: Callable[..., Value], arguments: tuple[object, ...]) -> Outcome[Value]:
    try:
        return Outcome(function(*arguments))
    except BaseException as error:  # noqa: BLE001 - SystemExit must not end the check either
        return Outcome(problem=describe(error), error=error)
