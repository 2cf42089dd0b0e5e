"""What a whole inventory comes to, gathered pier by pier."""

from __future__ import annotations

import heapq
from collections import Counter
from dataclasses import dataclass, field

from jacketcheck.batch.records import Row
from jacketcheck.batch.settings import Variants
from jacketcheck.batch.tables import FAILED, INPUT_ERROR, PierLine
from jacketcheck.host.host import PluginInfo
from jacketcheck.report import ExitCode
from jacketcheck.results import Status

__all__ = ["LISTED", "BatchSummary", "Gathering", "LimitStateCount"]

LISTED = 20
"""Piers that the summary names; the table of piers has all of them."""

_OK, _EXCEEDS, _NOT_EVALUATED = (
    one.value for one in (Status.OK, Status.EXCEEDS, Status.NOT_EVALUATED)
)
_BY_GRAVITY = (FAILED, _NOT_EVALUATED, INPUT_ERROR, _EXCEEDS, _OK)
_CODES = {
    FAILED: ExitCode.NOT_EVALUATED,
    _NOT_EVALUATED: ExitCode.NOT_EVALUATED,
    INPUT_ERROR: ExitCode.INPUT,
    _EXCEEDS: ExitCode.EXCEEDS,
    _OK: ExitCode.WITHIN,
}


@dataclass
class LimitStateCount:
    """How one limit state fares: in how many checked jackets it reads what.

    Attributes
    ----------
    title
        Its name in these provisions.
    within, exceed, not_evaluated
        Jackets by the worst row of the limit state.
    governs
        Jackets in which it has the worst ratio.
    worst, worst_file
        Largest ratio of all, and where; None where there is none, or only such as read 1 whenever
        they pass.
    """

    title: str
    within: int = 0
    exceed: int = 0
    not_evaluated: int = 0
    governs: int = 0
    worst: float | None = None
    worst_file: str = ""


@dataclass(frozen=True)
class BatchSummary:
    """A whole inventory.

    Attributes
    ----------
    folder
        Where the files are.
    provisions_titles
        Codes and editions by set of provisions.
    variants
        Whether only the files themselves were checked or every variant.
    files
        Number of files by verdict; a file counts by the gravest of its variants and provisions.
    jackets
        Number of variants that were checked, once for each set of provisions.
    limit_states
        By provisions and limit state.
    worst
        The lines with the largest ratios, the largest first.
    troubles, trouble_count
        The first lines that could not be checked in full, and how many there are.
    version, plugins, switched_off
        Who made it.
    """

    folder: str
    provisions_titles: dict[str, str]
    variants: Variants
    files: dict[str, int]
    jackets: int
    limit_states: dict[tuple[str, str], LimitStateCount]
    worst: tuple[PierLine, ...]
    troubles: tuple[PierLine, ...]
    trouble_count: int
    version: str
    plugins: tuple[PluginInfo, ...]
    switched_off: tuple[str, ...]

    @property
    def exit_code(self) -> ExitCode:
        """Code of the whole: what is not known outweighs what is refused, and that what exceeds.

        3 if a check could not be evaluated or a file failed, else 2 if an input cannot be used,
        else 1 if something exceeds 1, else 0.
        """
        return next(_CODES[verdict] for verdict in _BY_GRAVITY if self.files.get(verdict))


@dataclass
class Gathering:
    """Takes one file after the other; its size does not grow with their number."""

    files: Counter[str] = field(default_factory=Counter)
    jackets: int = 0
    limit_states: dict[tuple[str, str], LimitStateCount] = field(default_factory=dict)
    troubles: list[PierLine] = field(default_factory=list)
    trouble_count: int = 0
    _largest: list[tuple[float, int, PierLine]] = field(default_factory=list)
    _lines: int = 0

    def add(self, lines: list[PierLine]) -> None:
        """Take the lines of one file."""
        verdicts = {line.verdict for line in lines}
        self.files[next(one for one in _BY_GRAVITY if one in verdicts)] += 1
        for line in lines:
            self._lines += 1
            self._count(line)
            self._rank(line)
            if line.verdict not in {_OK, _EXCEEDS}:
                self.trouble_count += 1
                if len(self.troubles) < LISTED:
                    self.troubles.append(line)

    def worst(self) -> tuple[PierLine, ...]:
        """Lines with the largest ratios; of equal ones the first."""
        return tuple(line for *_, line in sorted(self._largest, reverse=True))

    def _rank(self, line: PierLine) -> None:
        if line.governing is None or line.governing.ratio is None:
            return
        # the running number decides between equal ratios, so that lines are never compared
        item = (line.governing.ratio, -self._lines, line)
        if len(self._largest) < LISTED:
            heapq.heappush(self._largest, item)
        else:
            heapq.heappushpop(self._largest, item)

    def _count(self, line: PierLine) -> None:
        if line.table is None:
            return
        self.jackets += 1
        verdicts: dict[str, set[str]] = {}
        for row in line.table.rows:
            if row.verdict not in {_OK, _EXCEEDS, _NOT_EVALUATED}:
                continue
            verdicts.setdefault(row.limit_state, set()).add(row.verdict)
            count = self.limit_states.setdefault(
                (line.table.provisions, row.limit_state), LimitStateCount(row.title)
            )
            _note_worst(count, row, line.file)
        for name, found in verdicts.items():
            count = self.limit_states[line.table.provisions, name]
            count.not_evaluated += _NOT_EVALUATED in found
            count.exceed += _EXCEEDS in found and _NOT_EVALUATED not in found
            count.within += found == {_OK}
            governing = line.governing
            count.governs += governing is not None and governing.limit_state == name


def _note_worst(count: LimitStateCount, row: Row, file: str) -> None:
    if row.ratio is None or (row.without_margin and row.verdict == _OK):
        return
    if count.worst is None or row.ratio > count.worst:
        count.worst, count.worst_file = row.ratio, file
