"""Probabilities of the variants of one file."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from importlib.metadata import version

from jacketcheck.api import build_variants, choose_variants
from jacketcheck.chance.estimate import chance_of_exceedance, settings_of
from jacketcheck.chance.model import Progress, without_progress
from jacketcheck.chance.result import ChanceResult, Changes
from jacketcheck.coverage import CAUTIONS, NOT_COVERED, left_to_the_engineer
from jacketcheck.host.host import Host, PluginInfo
from jacketcheck.inputs.load import InputFile
from jacketcheck.inputs.repair_file import Job
from jacketcheck.report import ExitCode

__all__ = ["ChanceReport", "chances_of"]


@dataclass(frozen=True)
class ChanceReport:
    """Probabilities of every variant that was asked for.

    Attributes
    ----------
    job, source, digest
        What the input says about the job, its name, and its SHA-256.
    results
        By variant.
    plugins, switched_off
        Plug-ins that were asked for what the file names, and those that were not.
    version
        Version of jacketcheck.
    """

    job: Job
    source: str
    digest: str
    results: dict[str, ChanceResult]
    plugins: tuple[PluginInfo, ...]
    version: str
    switched_off: tuple[str, ...] = ()
    cautions: tuple[str, ...] = CAUTIONS
    not_covered: tuple[str, ...] = NOT_COVERED

    @property
    def exit_code(self) -> ExitCode:
        """Whether the answer is open; a probability has no verdict."""
        is_open = any(result.open for result in self.results.values())
        return ExitCode.NOT_EVALUATED if is_open else ExitCode.WITHIN


def chances_of(
    repair: InputFile,
    *,
    host: Host,
    variants: Iterable[str] | None = None,
    provisions: Iterable[str] = ("us",),
    changes: Changes | None = None,
    only: Collection[str] | None = None,
    progress: Progress = without_progress,
) -> ChanceReport:
    """Estimate the probabilities of a file's variants.

    Parameters
    ----------
    repair
        A file that has been read.
    host
        Catalogue and limit states of plug-ins.
    variants
        Names of the variants; all by default.
    provisions
        Sets of provisions whose limit states are asked.
    changes
        Settings that go before the file's.
    only
        Limit states to look at; all by default.
    progress
        Shows how far the work is.

    Raises
    ------
    InputError
        If a variant, its scatter or a limit state asked for cannot be used.
    """
    chosen = choose_variants(repair, variants)
    jackets = build_variants(repair, host=host, variants=chosen)
    results = {}
    for name, jacket in jackets.items():
        written = repair.variants[name].chance
        results[name] = chance_of_exceedance(
            jacket,
            written=written,
            settings=settings_of(written, changes),
            only=only,
            host=host,
            provisions=tuple(provisions),
            progress=progress,
        )
    return ChanceReport(
        not_covered=left_to_the_engineer(
            breakout_open=any(repair.variants[name].breakout_is_open for name in repair.variants)
        ),
        job=repair.base.job,
        source=repair.source,
        digest=repair.digest,
        results=results,
        plugins=host.plugins,
        switched_off=host.switched_off,
        version=version("jacketcheck"),
    )
