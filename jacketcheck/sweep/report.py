"""Outcome of a sweep."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from jacketcheck.coverage import CAUTIONS, NOT_COVERED
from jacketcheck.engine.ratios import DesignRatios
from jacketcheck.host.host import PluginInfo
from jacketcheck.inputs.repair_file import Job
from jacketcheck.report import ExitCode
from jacketcheck.results import Status
from jacketcheck.sweep.plan import Plan

__all__ = ["CANNOT_BE_BUILT", "SweepReport"]

CANNOT_BE_BUILT = "cannot be built"
"""Verdict on a design whose geometry is impossible."""


@dataclass(frozen=True)
class SweepReport:
    """Everything that a table, a figure or a script needs of a sweep.

    Attributes
    ----------
    job, source, digest, variant
        Where the input comes from, and which variant the sweep started from.
    provisions_titles
        Codes and editions by set of provisions.
    plan
        The designs.
    ratios
        Their ratios; a design that cannot be built has none.
    refusals
        Why designs cannot be built, by number of the design.
    titles
        Title of each limit state.
    """

    job: Job
    source: str
    digest: str
    variant: str
    provisions_titles: dict[str, str]
    plan: Plan
    ratios: DesignRatios
    refusals: dict[int, str]
    titles: dict[str, str]
    plugins: tuple[PluginInfo, ...]
    version: str
    switched_off: tuple[str, ...] = ()
    cautions: tuple[str, ...] = CAUTIONS
    not_covered: tuple[str, ...] = NOT_COVERED
    verdicts: tuple[str, ...] = field(init=False)

    def __post_init__(self) -> None:
        """Judge every design once."""
        words = (self._verdict(n, worst) for n, worst in enumerate(self.ratios.worst.tolist()))
        object.__setattr__(self, "verdicts", tuple(words))

    def _verdict(self, number: int, worst: float) -> str:
        if number in self.refusals:
            return CANNOT_BE_BUILT
        if np.isnan(worst):
            return str(Status.NOT_EVALUATED.value)
        return str((Status.OK if worst <= 1.0 else Status.EXCEEDS).value)

    @property
    def exit_code(self) -> ExitCode:
        """Worst verdict over the designs that can be built; an input error if none can."""
        found = set(self.verdicts)
        for verdict, code in (
            (Status.NOT_EVALUATED.value, ExitCode.NOT_EVALUATED),
            (Status.EXCEEDS.value, ExitCode.EXCEEDS),
            (Status.OK.value, ExitCode.WITHIN),
        ):
            if verdict in found:
                return code
        return ExitCode.INPUT
