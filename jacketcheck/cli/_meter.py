"""A bar that shows how far work is of which the steps are counted."""

from __future__ import annotations

import sys
from types import TracebackType
from typing import Any, Self

__all__ = ["Meter"]


class Meter:
    """Shows a bar on a terminal once the work has taken a second; nothing anywhere else.

    Parameters
    ----------
    unit
        What is counted, in the singular.
    """

    def __init__(self, unit: str) -> None:
        self._unit = unit
        self._bar: Any = None

    def __enter__(self) -> Self:
        """Begin; the bar itself comes with the first count."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Take the bar away."""
        if self._bar is not None:
            self._bar.close()

    def tick(self, what: str, done: int, total: int) -> None:
        """Show what is being done and how much of it is done."""
        if not sys.stderr.isatty():
            return
        if self._bar is None:
            from tqdm import tqdm  # noqa: PLC0415 - only on a terminal

            self._bar = tqdm(total=total, unit=self._unit, delay=1.0, leave=False)
        self._bar.set_description(what, refresh=False)
        self._bar.total = total
        self._bar.update(done - self._bar.n)
