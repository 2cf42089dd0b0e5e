"""Lines of a confirmation: what was specified, what was built, and what follows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.inputs.repair_file import Job
from jacketcheck.report import CheckReport, ExitCode
from jacketcheck.results import Status

__all__ = [
    "AS_BUILT",
    "SPECIFIED",
    "Change",
    "Comparison",
    "Confirmation",
    "ConfirmedLine",
    "LineVerdict",
    "Outcome",
    "Recheck",
]

SPECIFIED = "as specified"
"""Name of the check of the repair file."""
AS_BUILT = "as built"
"""Name of the check with everything as built."""


@dataclass(frozen=True, slots=True)
class Change:
    """How something that was built alters what is checked.

    Attributes
    ----------
    fields
        Values by dotted path of the repair file, in internal units.
    leaves
        Values by dotted path of the built jacket, for what the file has no field for.
    """

    fields: Mapping[str, Any] = field(default_factory=dict)
    leaves: Mapping[str, float] = field(default_factory=dict)

    def __or__(self, other: Change) -> Change:
        """Both changes; the second counts where they meet."""
        return Change({**self.fields, **other.fields}, {**self.leaves, **other.leaves})


class Outcome(Enum):
    """What comparing alone can say of a line."""

    MEETS = "meets"
    """As specified, or within the tolerance of its standard."""
    DEVIATES = "deviates"
    """Otherwise than specified; the check has to be run again."""
    FAILS = "fails"
    """Breaks a rule that no calculation can replace."""
    UNKNOWN = "unknown"
    """Cannot be judged: something was not recorded, or is not known."""
    NOT_YET = "not yet"
    """Declared as not built yet."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """One line before any check has been run again.

    Attributes
    ----------
    part
        Part of the work.
    item
        What is compared.
    specified, measured
        Numbers in `unit`, or words.
    unit
        Internal unit; empty for words.
    rule
        What is required.
    source
        Where that stands.
    outcome
        What the comparison says.
    rechecks
        Changes to check by, each on its own; all must pass. For a deviation only.
    as_built
        Change for the check of everything as built; None where there is nothing to change.
    note
        What a reader must know, e.g. the remedy.
    """

    part: str
    item: str
    specified: float | str
    measured: float | str
    unit: str
    rule: str
    source: str
    outcome: Outcome
    rechecks: tuple[Change, ...] = ()
    as_built: Change | None = None
    note: str = ""


class LineVerdict(Enum):
    """Verdict on one line."""

    ACCEPTED = "accepted"
    BY_RECHECK = "accepted by recheck"
    REJECTED = "REJECTED"
    NOT_JUDGED = "NOT JUDGED"
    NOT_YET = "not yet"


@dataclass(frozen=True, slots=True)
class Recheck:
    """The check with one line as built and all else as specified.

    Only ratios that the line raises count: what exceeds 1 as specified already is shown by the
    check side by side, and keeps the whole from being confirmed.

    Attributes
    ----------
    ratio
        Largest ratio that the line raises; NaN where it raises none.
    before
        The same ratio as specified; NaN where the row is a new one.
    governing
        Limit state and place that it belongs to; empty where none rises.
    status
        Verdict on the ratios that rise.
    problem
        Why nothing could be checked; empty where it could.
    """

    ratio: float
    before: float
    governing: str
    status: Status
    problem: str = ""


@dataclass(frozen=True, slots=True)
class ConfirmedLine:
    """One line with its verdict; `recheck` is None where none was needed."""

    comparison: Comparison
    verdict: LineVerdict
    recheck: Recheck | None = None


@dataclass(frozen=True, slots=True)
class Confirmation:
    """What was built against what was specified.

    Attributes
    ----------
    job, record_title
        Who and what; who recorded it, and when.
    sources
        Name and SHA-256 of the repair file and of the record.
    lines
        Line by line.
    report
        The check as specified and as built, side by side.
    not_recorded
        What would have been worth recording.
    as_built_problem
        Why the jacket as built could not be checked; empty where it could.
    """

    job: Job
    record_title: str
    sources: tuple[tuple[str, str], ...]
    lines: tuple[ConfirmedLine, ...]
    report: CheckReport
    not_recorded: tuple[str, ...] = ()
    as_built_problem: str = ""
    cautions: tuple[str, ...] = CAUTIONS
    not_covered: tuple[str, ...] = NOT_COVERED

    def with_verdict(self, verdict: LineVerdict) -> tuple[ConfirmedLine, ...]:
        """Lines with a verdict."""
        return tuple(line for line in self.lines if line.verdict is verdict)

    @property
    def as_built_status(self) -> Status:
        """Verdict of the check of everything as built."""
        if self.as_built_problem:
            return Status.NOT_EVALUATED
        statuses = {table.status for table in self.report.tables if table.variant == AS_BUILT}
        for status in (Status.NOT_EVALUATED, Status.EXCEEDS):
            if status in statuses:
                return status
        return Status.OK if statuses else Status.NOT_EVALUATED

    @property
    def exit_code(self) -> ExitCode:
        """What cannot be judged counts before what is rejected."""
        verdicts = {line.verdict for line in self.lines}
        status = self.as_built_status
        if LineVerdict.NOT_JUDGED in verdicts or status is Status.NOT_EVALUATED:
            return ExitCode.NOT_EVALUATED
        if LineVerdict.REJECTED in verdicts or status is Status.EXCEEDS:
            return ExitCode.EXCEEDS
        return ExitCode.WITHIN
