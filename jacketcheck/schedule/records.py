"""What a bolt schedule is made of; every figure carries its source."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from jacketcheck.coverage import CAUTIONS
from jacketcheck.host.host import PluginInfo
from jacketcheck.inputs.repair_file import Job
from jacketcheck.report import ExitCode

__all__ = [
    "BoltSchedule",
    "Instruction",
    "OrderLine",
    "ScheduleLine",
    "ScheduleReport",
    "ScheduleSection",
    "TighteningOrder",
    "Verdict",
]


class Verdict(Enum):
    """What a line of the schedule says of the repair file."""

    STATED = ""
    """To be followed; there is nothing to judge."""
    OK = "ok"
    """Fits what the check counted, and can be installed."""
    PROBLEM = "PROBLEM"
    """Contradicts what the check counted, or cannot be installed."""
    NOT_EVALUATED = "NOT EVALUATED"
    """Should have been stated or judged, and could not be."""


@dataclass(frozen=True, slots=True)
class ScheduleLine:
    """One figure or word of the schedule.

    Attributes
    ----------
    item
        What it is.
    value
        A number in `unit`, or a word.
    unit
        Internal unit: N, mm, N mm (a torque), deg, 1; empty for a word.
    source
        Standard with edition and clause, catalogue entry, or field of the input.
    basis
        How the number came about; may be empty.
    note
        What a reader must know; may be empty.
    verdict
        Whether it fits the repair file.
    """

    item: str
    value: float | str
    unit: str
    source: str
    basis: str = ""
    note: str = ""
    verdict: Verdict = Verdict.STATED


@dataclass(frozen=True, slots=True)
class ScheduleSection:
    """Lines under one heading."""

    title: str
    lines: tuple[ScheduleLine, ...]


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One part to order.

    Attributes
    ----------
    part
        ``bolt``, ``nut``, ``washer``, ``indicator``…
    description
        Standard, size and length as a supplier reads them.
    per_seam, installed
        Pieces in one seam and in the jacket.
    spares
        Pieces on top: for tests and for loss.
    source
        Where the number per bolt and the description come from.
    """

    part: str
    description: str
    per_seam: int
    installed: int
    spares: int
    source: str

    @property
    def order(self) -> int:
        """Pieces to order."""
        return self.installed + self.spares


@dataclass(frozen=True, slots=True)
class Instruction:
    """One thing to do or to look at, with the rule that asks for it."""

    text: str
    source: str


@dataclass(frozen=True, slots=True)
class TighteningOrder:
    """In which order the bolts of a seam are tightened.

    Attributes
    ----------
    numbers
        One tuple for each row, the top row first. In a row, bolts from left to right as seen from
        outside: the left group from its outer column to the seam, then the right group.
    columns
        Bolt columns on each side of the seam.
    source
        The rule behind it.
    """

    numbers: tuple[tuple[int, ...], ...]
    columns: int
    source: str


@dataclass(frozen=True, slots=True)
class BoltSchedule:
    """Everything a shop needs to order, install and inspect the bolts of a jacket.

    Attributes
    ----------
    variant
        Variant of the repair file.
    designation
        Product, size and length of the bolt.
    orders
        Parts to order.
    sections
        Figures by subject.
    tightening
        Order of tightening.
    procedure, inspection
        What to do, and what to look at.
    """

    variant: str
    designation: str
    orders: tuple[OrderLine, ...]
    sections: tuple[ScheduleSection, ...]
    tightening: TighteningOrder
    procedure: tuple[Instruction, ...]
    inspection: tuple[Instruction, ...]

    def lines(self) -> Iterator[ScheduleLine]:
        """All lines of all sections."""
        for section in self.sections:
            yield from section.lines

    @property
    def open_points(self) -> tuple[ScheduleLine, ...]:
        """Lines with a problem, and lines that could not be evaluated."""
        open_verdicts = {Verdict.PROBLEM, Verdict.NOT_EVALUATED}
        return tuple(line for line in self.lines() if line.verdict in open_verdicts)

    @property
    def exit_code(self) -> ExitCode:
        """What the command line returns: the worst of all lines."""
        verdicts = {line.verdict for line in self.lines()}
        if Verdict.NOT_EVALUATED in verdicts:
            return ExitCode.NOT_EVALUATED
        return ExitCode.EXCEEDS if Verdict.PROBLEM in verdicts else ExitCode.WITHIN


@dataclass(frozen=True, slots=True)
class ScheduleReport:
    """Schedules of one repair file.

    Attributes
    ----------
    job
        What the input says about the job.
    source, digest
        Name and SHA-256 of the input.
    version
        Version of jacketcheck.
    schedules
        One for each variant.
    plugins, switched_off
        Plug-ins that were asked for catalogue entries, and those that were not.
    """

    job: Job
    source: str
    digest: str
    version: str
    schedules: tuple[BoltSchedule, ...]
    cautions: tuple[str, ...] = CAUTIONS
    plugins: tuple[PluginInfo, ...] = ()
    switched_off: tuple[str, ...] = ()

    @property
    def exit_code(self) -> ExitCode:
        """Worst of all schedules."""
        codes = {schedule.exit_code for schedule in self.schedules}
        for code in (ExitCode.NOT_EVALUATED, ExitCode.EXCEEDS):
            if code in codes:
                return code
        return ExitCode.WITHIN
