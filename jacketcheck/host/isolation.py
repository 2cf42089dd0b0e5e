"""Calling foreign code so that whatever it does becomes a value that we can show.

The call runs in a thread of its own: an exception of any kind, ``SystemExit`` included, is caught
there, and a call that outlasts its limit is abandoned. A plug-in that ends the process from C or
with ``os._exit`` cannot be contained this way.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Generic, TypeVar

__all__ = ["DEFAULT_TIME_LIMIT", "Outcome", "call_isolated"]

DEFAULT_TIME_LIMIT = 30.0
"""Seconds that one call of a plug-in may take."""

Value = TypeVar("Value")


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
    """

    __slots__ = ("error", "problem", "value")

    def __init__(
        self,
        value: Value | None = None,
        problem: str | None = None,
        error: BaseException | None = None,
    ) -> None:
        self.value = value
        self.problem = problem
        self.error = error


def describe(error: BaseException) -> str:
    """One line that names an exception and what it says."""
    text = " ".join(str(error).split())
    kind = type(error).__name__
    return f"raised {kind}: {text[:300]}" if text else f"raised {kind}"


def call_isolated(
    function: Callable[..., Value], *arguments: object, seconds: float = DEFAULT_TIME_LIMIT
) -> Outcome[Value]:
    """Call a function in a thread of its own, for at most some seconds.

    Examples
    --------
    >>> call_isolated(lambda: 1 / 0).problem
    'raised ZeroDivisionError: division by zero'
    """
    outcome: Outcome[Value] = Outcome(problem=f"did not return within {seconds:g} s")

    def run(target: Outcome[Value]) -> None:
        try:
            value = function(*arguments)
        except BaseException as error:  # noqa: BLE001 - SystemExit must not end the check either
            target.problem, target.error = describe(error), error
        else:
            target.value, target.problem = value, None

    live: Outcome[Value] = Outcome(problem=outcome.problem)
    thread = threading.Thread(target=run, args=(live,), daemon=True, name="jacketcheck-plugin")
    thread.start()
    thread.join(seconds)
    # a thread that is still running may yet write to `live`; its late answer must not count
    return outcome if thread.is_alive() else live
