"""Outcome of a search: the designs worth choosing from, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.host.host import PluginInfo
from jacketcheck.inputs.repair_file import Job, RepairInput
from jacketcheck.inputs.sizing import FieldWork
from jacketcheck.jacket.quantities import Quantities
from jacketcheck.report import ExitCode
from jacketcheck.results import Result
from jacketcheck.sizing.axes import Axis
from jacketcheck.sizing.fates import Fate
from jacketcheck.sizing.infeasibility import Infeasibility
from jacketcheck.sizing.objectives import Objectives
from jacketcheck.sizing.proof import Proof

__all__ = ["SizedDesign", "SizingReport"]


@dataclass(frozen=True)
class SizedDesign:
    """A design that works and that no other of the grid beats.

    Attributes
    ----------
    number
        Counted from one, the lightest first.
    values
        Value of each axis, by path, in internal units.
    repair
        Its input.
    costs, quantities
        What it takes.
    bolt_rows
        Rows of bolts along each seam.
    governing
        The row that decides.
    proof
        Why nothing cheaper works.
    alike
        Other designs of the grid that take the same; they were not analysed once this one worked.
    """

    number: int
    values: dict[str, Any]
    repair: RepairInput = field(repr=False)
    costs: Objectives
    quantities: Quantities
    bolt_rows: int
    governing: Result
    proof: Proof
    alike: int


@dataclass(frozen=True)
class SizingReport:
    """Everything that a table or a script needs of one search.

    Attributes
    ----------
    job, source, digest, variant
        Where the input comes from, and which variant the search started from.
    provisions_titles
        Codes and editions by set of provisions; every design satisfies all of them.
    axes
        What was varied, and what was left as written.
    tries_without_bars
        Whether designs with added bars and without were tried.
    default_bounds
        Whether the file gave no bounds.
    work
        Hours that designs are compared by.
    count
        Designs of the grid.
    fates
        How many met each fate.
    refusals
        Why designs cannot be built, with their number.
    ruled_out
        For each fate, how many designs a limit state decided: the one that is exceeded most.
    unevaluated
        Limit states that could not be evaluated, with the reason first found.
    unsettled
        Designs that could not be evaluated and that no design of the front beats.
    analysed, most
        Designs that came to section analysis, and how many were allowed to.
    front
        The designs to choose from.
    infeasibility
        Why there is none; None where there is one.
    """

    job: Job
    source: str
    digest: str
    variant: str
    provisions_titles: dict[str, str]
    axes: tuple[Axis, ...]
    tries_without_bars: bool
    default_bounds: bool
    work: FieldWork
    count: int
    fates: dict[Fate, int]
    refusals: dict[str, int]
    ruled_out: dict[Fate, dict[str, int]]
    unevaluated: dict[str, str]
    unsettled: int
    analysed: int
    most: int
    front: tuple[SizedDesign, ...]
    infeasibility: Infeasibility | None
    base: RepairInput = field(repr=False)
    titles: dict[str, str]
    plugins: tuple[PluginInfo, ...]
    version: str
    switched_off: tuple[str, ...] = ()
    cautions: tuple[str, ...] = CAUTIONS
    not_covered: tuple[str, ...] = NOT_COVERED

    @property
    def varied(self) -> tuple[Axis, ...]:
        """Axes with more than one value."""
        return tuple(axis for axis in self.axes if len(axis.values) > 1)

    @property
    def exit_code(self) -> ExitCode:
        """Within where a design works; not evaluated where that leaves the answer open."""
        unknown = self.unsettled or self.fates[Fate.NOT_REACHED]
        if self.unsettled or (not self.front and unknown):
            return ExitCode.NOT_EVALUATED
        return ExitCode.WITHIN if self.front else ExitCode.EXCEEDS
