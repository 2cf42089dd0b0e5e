"""What came of a call: a value, or a problem told in one line."""

from __future__ import annotations

import traceback
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import PurePath
from typing import Generic, TypeVar

from jacketcheck.errors import JacketcheckError

__all__ = ["Outcome", "describe", "one_line", "outcome_of"]

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
    timed_out
        Whether the call was given up because it took too long.
    """

    value: Value | None = None
    problem: str | None = None
    error: BaseException | None = None
    remarks: tuple[str, ...] = ()
    timed_out: bool = False


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


def outcome_of(function: Callable[..., Value], arguments: tuple[object, ...]) -> Outcome[Value]:
    """Call a function and catch whatever it raises."""
    try:
        return Outcome(function(*arguments))
    except BaseException as error:  # noqa: BLE001 - SystemExit must not end the check either
        return Outcome(problem=describe(error), error=error)
