"""Work of ours that foreign code needs: handed in by its thread, done by ours, off its clock."""

from __future__ import annotations

import queue
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from jacketcheck.host.outcome import Outcome, describe

__all__ = ["Counter", "Errand"]


@dataclass(frozen=True, slots=True)
class Errand:
    """Something to be done, and where whoever asked waits for what comes of it."""

    function: Callable[..., Any]
    arguments: tuple[object, ...]
    reply: queue.SimpleQueue[Outcome[Any]] = field(default_factory=queue.SimpleQueue)

    def run(self) -> None:
        """Do it and reply; what asks our own thread to stop is not for the one who waits."""
        try:
            self.reply.put(Outcome(self.function(*self.arguments)))
        except Exception as error:  # noqa: BLE001 - told to whoever asked
            self.reply.put(Outcome(problem=describe(error), error=error))


class Counter:
    """Where the thread of a foreign call hands in errands, and its answer at the end.

    Once the call has been given up nobody looks at the counter any more: a thread that still asks
    waits for ever, which costs nothing.
    """

    def __init__(self) -> None:
        self.handed_in: queue.SimpleQueue[Errand | Outcome[Any]] = queue.SimpleQueue()

    def ask(self, function: Callable[..., Any], *arguments: object) -> Any:
        """Have a function called on our side; return its value or raise its exception here."""
        errand = Errand(function, arguments)
        self.handed_in.put(errand)
        outcome = errand.reply.get()
        if outcome.error is not None:
            raise outcome.error
        return outcome.value
