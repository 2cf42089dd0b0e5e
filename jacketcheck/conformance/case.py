"""Named checks, and the pairs of a subject and a check."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from itertools import islice
from typing import TypeAlias

from jacketcheck.conformance.bench import Bench
from jacketcheck.conformance.subjects import Subject, SubjectKind
from jacketcheck.errors import ConformanceError

__all__ = ["Case", "Check", "Finder", "check"]

Finder: TypeAlias = Callable[[Subject, Bench], Iterable[str]]
"""Yields what is wrong with a subject, each with what to do about it."""

_MOST_PROBLEMS = 8


@dataclass(frozen=True, slots=True)
class Check:
    """One thing that the kit asks of some kinds of subjects.

    Attributes
    ----------
    name
        Name of the function.
    kinds
        Kinds of subjects that are asked.
    asks
        What is asked, in a line: the first line of the function's docstring.
    find
        The function.
    """

    name: str
    kinds: tuple[SubjectKind, ...]
    asks: str
    find: Finder


def check(*kinds: SubjectKind) -> Callable[[Finder], Check]:
    """Turn a function that yields problems into a check of some kinds of subjects."""

    def wrap(find: Finder) -> Check:
        asks = str(find.__doc__).strip().splitlines()[0].rstrip(".")
        return Check(find.__name__, kinds, asks[0].lower() + asks[1:], find)

    return wrap


@dataclass(frozen=True, slots=True)
class Case:
    """A subject and a check; calling it raises ConformanceError if the subject fails.

    Attributes
    ----------
    subject, check
        What is asked what.
    bench
        Jackets and answers that the cases of a plug-in share.
    """

    subject: Subject
    check: Check
    bench: Bench = field(repr=False)

    @property
    def id(self) -> str:
        """Readable name, by which an expected failure is declared."""
        return f"{self.subject}: {self.check.name}"

    def problems(self) -> Iterator[str]:
        """What is wrong, one text for each finding."""
        yield from self.check.find(self.subject, self.bench)

    def __call__(self) -> None:
        """Raise ConformanceError with what is wrong, if anything is."""
        found = list(islice(self.problems(), _MOST_PROBLEMS))
        if found:
            raise ConformanceError(str(self.subject), self.check.name, self.check.asks, found)
