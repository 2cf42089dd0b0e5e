"""The outcome of one run: results of every variant under every set of provisions."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import IntEnum
from functools import cached_property

from jacketcheck.causes import Roots, roots_of
from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.host.host import PluginInfo
from jacketcheck.inputs.repair_file import Job
from jacketcheck.jacket.jacket import Jacket
from jacketcheck.results import Kind, Result, Status, worst_status

__all__ = ["CheckReport", "ExitCode", "VariantResults"]


class ExitCode(IntEnum):
    """What the command line returns."""

    WITHIN = 0
    """Every ratio is at most 1."""
    EXCEEDS = 1
    """Something exceeds 1."""
    INPUT = 2
    """The input, or the command, cannot be used."""
    NOT_EVALUATED = 3
    """A check could not be evaluated; whatever else holds."""

    @classmethod
    def of(cls, results: Iterable[Result]) -> ExitCode:
        """Code for a set of results."""
        return {
            Status.OK: cls.WITHIN,
            Status.EXCEEDS: cls.EXCEEDS,
            Status.NOT_EVALUATED: cls.NOT_EVALUATED,
        }[worst_status(tuple(results))]


@dataclass(frozen=True)
class VariantResults:
    """Results of one variant under one set of provisions.

    Attributes
    ----------
    variant, provisions
        Which.
    jacket
        The jacket that was checked.
    results
        What decides first: what could not be evaluated, what exceeds on its own, what follows from
        that, and the rest, each by falling ratio; last what has no verdict.
    """

    variant: str
    provisions: str
    jacket: Jacket = field(repr=False)
    results: tuple[Result, ...]

    @property
    def governing(self) -> Result:
        """The row that decides."""
        return self.results[0]

    @property
    def status(self) -> Status:
        """Verdict on the variant."""
        return worst_status(self.results)

    @cached_property
    def _roots(self) -> Roots:
        return roots_of(self.results)

    def causes_of(self, result: Result) -> tuple[Result, ...]:
        """Failing rows that one of the results is a consequence of; none where it stands alone."""
        place = next(place for place, row in enumerate(self.results) if row is result)
        return tuple(self.results[cause] for cause in sorted(self._roots[place]))

    @property
    def followers(self) -> int:
        """How many rows exceed as a consequence of the limit state that governs."""
        governing = self.governing.limit_state
        names = ([self.results[place].limit_state for place in roots] for roots in self._roots)
        return sum(governing in causes for causes in names)

    @property
    def others(self) -> int:
        """How many rows exceed beside the one that governs and those that follow from it."""
        exceeding = sum(row.status is Status.EXCEEDS for row in self.results)
        return exceeding - self.followers - (self.governing.status is Status.EXCEEDS)

    @property
    def open_points(self) -> tuple[str, ...]:
        """What must still be shown before the verdict holds, each once."""
        return tuple(dict.fromkeys(text for row in self.results for text in row.open_points))

    def limits(self) -> tuple[Result, ...]:
        """Rows with a ratio of demand to capacity."""
        return tuple(result for result in self.results if result.kind is Kind.LIMIT)


@dataclass(frozen=True)
class CheckReport:
    """Everything that a table, a report or a script needs.

    Attributes
    ----------
    job
        What the input says about the job.
    source, digest
        Name and SHA-256 of the input.
    tables
        Results by variant and provisions.
    plugins
        Plug-ins that were asked, with versions and problems.
    version
        Version of jacketcheck.
    provisions_titles
        Codes and editions by set of provisions.
    """

    job: Job
    source: str
    digest: str
    tables: tuple[VariantResults, ...]
    plugins: tuple[PluginInfo, ...]
    version: str
    provisions_titles: dict[str, str]
    switched_off: tuple[str, ...] = ()
    cautions: tuple[str, ...] = CAUTIONS
    not_covered: tuple[str, ...] = NOT_COVERED

    @property
    def exit_code(self) -> ExitCode:
        """Code over all tables."""
        return ExitCode.of(result for table in self.tables for result in table.results)

    @property
    def governing(self) -> Result:
        """The row that decides over all variants and provisions."""
        return max((table.governing for table in self.tables), key=lambda row: row.severity)

    @property
    def variants(self) -> tuple[str, ...]:
        """Names of the variants, in order."""
        return tuple(dict.fromkeys(table.variant for table in self.tables))

    @property
    def provisions(self) -> tuple[str, ...]:
        """Names of the sets of provisions, in order."""
        return tuple(dict.fromkeys(table.provisions for table in self.tables))
