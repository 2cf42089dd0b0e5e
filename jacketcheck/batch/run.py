"""One run over an inventory: find, check what is new, assemble the output."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Iterator
from contextlib import AbstractContextManager
from dataclasses import dataclass
from importlib.metadata import version
from itertools import chain
from pathlib import Path

from jacketcheck.batch.assembly import Form, assemble, prepare, require_own
from jacketcheck.batch.cluster import cluster_pool, require_dask
from jacketcheck.batch.finding import DEFAULT_PATTERN, content_of, find_files, shown_name
from jacketcheck.batch.job import Job
from jacketcheck.batch.journal import Finished, Journal
from jacketcheck.batch.pools import Pool, available_cores, local_pool, outcomes
from jacketcheck.batch.settings import (
    DEFAULT_FILE_SECONDS,
    BatchSettings,
    Variants,
    settings_for,
)
from jacketcheck.batch.summary import BatchSummary, Gathering
from jacketcheck.errors import InputError, InputProblem
from jacketcheck.files import make_folder
from jacketcheck.host.host import Host
from jacketcheck.host.loading import load_host
from jacketcheck.inputs.written import printable, shown
from jacketcheck.render.batch_table import batch_text
from jacketcheck.units import DisplaySystem

__all__ = ["BatchRun", "BatchState", "Watch", "run_batch"]


@dataclass(frozen=True, slots=True)
class BatchState:
    """How far a run is.

    Attributes
    ----------
    total
        Files of the inventory.
    evaluated
        Files that this run has evaluated.
    kept
        Files that an earlier run had evaluated.
    unreadable
        Files that cannot be read.
    """

    total: int
    evaluated: int = 0
    kept: int = 0
    unreadable: int = 0

    @property
    def done(self) -> int:
        """Files that are finished."""
        return self.evaluated + self.kept + self.unreadable


Watch = Callable[[BatchState], None]

LARGEST_WORKER_COUNT = 1024


@dataclass(frozen=True)
class BatchRun:
    """What a run leaves.

    Attributes
    ----------
    summary
        The inventory as a whole.
    written
        Files of the output.
    state
        What was evaluated in this run and what before.
    """

    summary: BatchSummary
    written: tuple[Path, ...]
    state: BatchState


def run_batch(
    folder: Path | str,
    output: Path | str,
    *,
    host: Host | None = None,
    provisions: Iterable[str] = ("us",),
    variants: Variants = "base",
    forms: Iterable[Form] = ("csv",),
    system: DisplaySystem | None = None,
    workers: int | None = None,
    scheduler: str | None = None,
    pattern: str = DEFAULT_PATTERN,
    file_seconds: float = DEFAULT_FILE_SECONDS,
    fresh: bool = False,
    overwrite: bool = False,
    watch: Watch = lambda _: None,
) -> BatchRun:
    """Check every repair file below a folder, each in a process that may fail.

    What has been finished is kept in a journal in `output`, so that a run that was ended at any
    moment is taken up again by the same call. Memory does not grow with the number of files.

    Parameters
    ----------
    folder
        Where the files are, in folders of any depth.
    output
        Folder for tables, summary and journal; made if it is not there.
    host
        Plug-ins; by default those of all installed distributions. Workers load the same by
        themselves, from what is installed.
    provisions
        Sets of provisions to check by.
    variants
        The files themselves, or all variants in them.
    forms
        Forms of the tables.
    system
        Units of demand and capacity in the table of results; N, mm and MPa by default.
    workers
        Processes on this machine; by default one for each core.
    scheduler
        Dask scheduler that is used instead: an address, or ``local:N``.
    pattern
        What names of files look like.
    file_seconds
        Time that one file may take [s].
    fresh
        Whether to forget what has been done.
    overwrite
        Whether files in `output` that no earlier run has left may be replaced.
    watch
        Called whenever files are finished.

    Returns
    -------
    BatchRun
        Summary, names of what was written, and counts.

    Raises
    ------
    InputError
        If the folder holds no files, an option cannot be used, or another run writes to `output`.
    MissingExtraError
        If Parquet or Dask is asked for and not installed.

    Examples
    --------
    >>> from importlib.resources import files
    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as output:
    ...     run = run_batch(files("jacketcheck.conformance") / "repairs", output, workers=1)
    ...     sorted(path.name for path in run.written), run.state.evaluated
    (['piers.csv', 'results.csv', 'summary.txt'], 2)
    """
    host = load_host() if host is None else host
    settings = settings_for(
        host, provisions=provisions, variants=variants, file_seconds=file_seconds
    )
    asked = tuple(dict.fromkeys(forms))
    source, target = Path(folder), Path(output)
    found = find_files(source, pattern=pattern, leave_out=target.resolve())
    pool = _pool(settings, workers=workers, scheduler=scheduler)
    require_own(target, overwrite=overwrite)
    make_folder(target)
    with Journal(target, settings, fresh=fresh) as journal:
        prepare(target, asked)
        total = journal.enlist(found)
        if total == 0:
            raise _refusal("FOLDER", printable(str(source)), f"holds no file named {pattern}")
        progress = _Progress(source, journal, watch, BatchState(total))
        progress.work(pool)
        summary: list[BatchSummary] = []

        def worded(gathering: Gathering) -> str:
            summary.append(_summary(gathering, source, host, settings))
            return batch_text(summary[0])

        written = assemble(
            journal.entries(), target, forms=asked, system=system, summary_text=worded
        )
    return BatchRun(summary[0], written, progress.state)


class _Progress:
    """Works through the inventory and writes down what comes of it."""

    def __init__(self, folder: Path, journal: Journal, watch: Watch, state: BatchState) -> None:
        self._folder = folder
        self._journal = journal
        self._watch = watch
        self.state = state

    def work(self, pool: AbstractContextManager[Pool]) -> None:
        """Check what has not been checked; workers are started only if there is any."""
        jobs = self._jobs()
        first = next(jobs, None)
        if first is None:
            return
        with pool as opened:
            for batch in outcomes(opened, chain([first], jobs)):
                self._journal.add(Finished(*key, outcome) for key, outcome in batch)
                self._step(evaluated=len(batch))

    def _jobs(self) -> Iterator[tuple[tuple[bytes, str], Job]]:
        for found in self._journal.inventory():
            try:
                if found.problem:
                    raise InputError([InputProblem("", "", found.problem)])
                content = content_of(self._folder, found.name)
            except InputError as error:
                self._journal.mark_unreadable(found.name, str(error.problems[0]))
                self._step(unreadable=1)
                continue
            sha256 = hashlib.sha256(content).hexdigest()
            if self._journal.takes_over(found.name, sha256):
                self._step(kept=1)
            else:
                yield (found.name, sha256), Job(shown_name(found.name), content)

    def _step(self, *, evaluated: int = 0, kept: int = 0, unreadable: int = 0) -> None:
        state = self.state
        self.state = BatchState(
            state.total,
            state.evaluated + evaluated,
            state.kept + kept,
            state.unreadable + unreadable,
        )
        self._watch(self.state)


def _pool(
    settings: BatchSettings, *, workers: int | None, scheduler: str | None
) -> AbstractContextManager[Pool]:
    if scheduler is not None:
        if workers is not None:
            raise _refusal("--workers", shown(workers), "cannot be told to a cluster")
        require_dask()
        return cluster_pool(settings, scheduler)
    count = available_cores() if workers is None else workers
    if not 1 <= count <= LARGEST_WORKER_COUNT:
        raise _refusal("--workers", shown(count), f"must be 1 to {LARGEST_WORKER_COUNT}")
    return local_pool(settings, count)


def _summary(
    gathering: Gathering, folder: Path, host: Host, settings: BatchSettings
) -> BatchSummary:
    return BatchSummary(
        folder=printable(str(folder)),
        provisions_titles={name: host.title_of(name) for name in settings.provisions},
        variants=settings.variants,
        files=dict(gathering.files),
        jackets=gathering.jackets,
        limit_states=gathering.limit_states,
        worst=gathering.worst(),
        troubles=tuple(gathering.troubles),
        trouble_count=gathering.trouble_count,
        version=version("jacketcheck"),
        plugins=host.plugins,
        switched_off=host.switched_off,
    )


def _refusal(path: str, value: str, message: str) -> InputError:
    return InputError([InputProblem(path, value, message)], source="batch")
