"""Every exception the package raises on purpose.

::

    JacketcheckError
    ├── InputError          what the user wrote cannot be used (exit code 2)
    ├── DomainError         a formula was called outside its range of validity
    ├── CatalogError        a catalogue entry does not exist or is malformed
    ├── MissingExtraError   an output needs a package that is not installed (exit code 2)
    ├── NotEvaluatedError   a limit state lacks something it needs (exit code 3)
    └── ConformanceError    something that a plug-in brings fails a check of the conformance kit
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "CatalogError",
    "ConformanceError",
    "DomainError",
    "InputError",
    "InputProblem",
    "JacketcheckError",
    "MissingExtraError",
    "NotEvaluatedError",
]


class JacketcheckError(Exception):
    """Base of every exception raised on purpose.

    Attributes
    ----------
    out_of_range
        Where it is about some of many designs: which of them, shape (designs,); else None.
    """

    out_of_range: NDArray[np.bool_] | None = None


@dataclass(frozen=True, slots=True)
class InputProblem:
    """One thing that is wrong with the input.

    Attributes
    ----------
    path
        Dotted path of the field, list indices included, e.g. ``damage.2.height``.
    value
        What was written, as text; empty where the field is missing.
    message
        What is wrong and what is allowed.
    """

    path: str
    value: str
    message: str

    def __str__(self) -> str:
        shown = f" = {self.value}" if self.value else ""
        return f"{self.path}{shown}: {self.message}" if self.path else self.message


class InputError(JacketcheckError):
    """The input cannot be used; carries every problem found, not just the first.

    Attributes
    ----------
    problems
        Each with path, value and message.
    source
        What was read, e.g. a file name.
    remark
        What a reader should know besides, e.g. what could not be checked yet; may be empty.
    """

    def __init__(
        self, problems: Sequence[InputProblem], *, source: str = "input", remark: str = ""
    ) -> None:
        self.problems = tuple(problems)
        self.source = source
        self.remark = remark
        count = len(self.problems)
        heading = f"{source}: {count} problem{'s' if count != 1 else ''}"
        lines = [heading, *(f"  {problem}" for problem in self.problems)]
        if remark:
            lines.append(f"  ({remark})")
        super().__init__("\n".join(lines))


class DomainError(JacketcheckError, ValueError):
    """A quantity lies outside the range in which a formula is valid.

    Attributes
    ----------
    name, value, allowed
        The argument, the first number of it that is out of range, and what would be in it.
    """

    def __init__(
        self,
        name: str,
        value: object,
        allowed: str,
        *,
        out_of_range: NDArray[np.bool_] | None = None,
    ) -> None:
        self.name = name
        self.value = value
        self.allowed = allowed
        self.out_of_range = out_of_range
        super().__init__(f"{name} = {value}: must be {allowed}")


class CatalogError(JacketcheckError, LookupError):
    """A name is not in the catalogue, or a catalogue entry is malformed.

    Attributes
    ----------
    kind, name
        What was looked up or added, e.g. ``bar size`` and ``No. 12``.
    problem
        What is wrong, as it continues the sentence.
    known
        Names that would have been accepted; empty where that is not the question.
    """

    def __init__(self, kind: str, name: str, problem: str, *, known: Sequence[str] = ()) -> None:
        self.kind = kind
        self.name = name
        self.problem = problem
        self.known = tuple(known)
        super().__init__(f"{kind} {name!r} {problem}")


class MissingExtraError(JacketcheckError):
    """An output needs a package that comes with an extra and is not installed.

    Attributes
    ----------
    extra, package
        Name of the extra, and what of it was looked for.
    """

    def __init__(self, extra: str, package: str) -> None:
        self.extra = extra
        self.package = package
        super().__init__(f'{package} is not installed: pip install "jacketcheck[{extra}]"')


class NotEvaluatedError(JacketcheckError):
    """A limit state cannot be evaluated; the reason becomes a visible row."""


class ConformanceError(JacketcheckError, AssertionError):
    """Something that a plug-in brings fails a check of the conformance kit.

    Attributes
    ----------
    subject, check
        What failed, and in what.
    problems
        Everything that was found, each with what to do about it.
    """

    def __init__(self, subject: str, check: str, asks: str, problems: Sequence[str]) -> None:
        self.subject = subject
        self.check = check
        self.problems = tuple(problems)
        lines = [f"{subject} fails {check}: {asks}", *(f"  {problem}" for problem in problems)]
        super().__init__("\n".join(lines))
