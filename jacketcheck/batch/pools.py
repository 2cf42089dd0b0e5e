"""Handing jobs to workers, never more of them at a time than keeps all busy."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import FIRST_COMPLETED, CancelledError, Future, ThreadPoolExecutor, wait
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TypeVar

from jacketcheck.batch.job import Job, Outcome, failure
from jacketcheck.batch.process import ProcessDesk
from jacketcheck.batch.settings import BatchSettings
from jacketcheck.errors import JacketcheckError
from jacketcheck.host.outcome import describe

__all__ = ["Pool", "available_cores", "local_pool", "outcomes"]

Key = TypeVar("Key")


@dataclass(frozen=True)
class Pool:
    """Somewhere to send jobs.

    Attributes
    ----------
    submit
        Takes a job and returns what will hold its outcome.
    window
        Number of jobs under way at a time: enough to keep every worker busy, few enough that
        memory does not grow with the inventory.
    """

    submit: Callable[[Job], Future[Outcome]]
    window: int


def available_cores() -> int:
    """Number of cores that this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


@contextmanager
def local_pool(settings: BatchSettings, workers: int) -> Iterator[Pool]:
    """Processes on this machine, each watched by a thread; all are gone when the context ends."""
    desk = ProcessDesk(settings)
    threads = ThreadPoolExecutor(workers, thread_name_prefix="jacketcheck-batch")
    try:
        yield Pool(lambda job: threads.submit(desk.evaluate, job), window=3 * workers)
    finally:
        desk.stop()
        threads.shutdown(cancel_futures=True)
        desk.close()


def outcomes(pool: Pool, jobs: Iterable[tuple[Key, Job]]) -> Iterator[list[tuple[Key, Outcome]]]:
    """Outcomes as they come, those that came together in one list.

    Jobs are drawn from the iterable only when there is room for them.
    """
    waiting: dict[Future[Outcome], Key] = {}
    for key, job in jobs:
        waiting[pool.submit(job)] = key
        if len(waiting) >= pool.window:
            yield _finished(waiting)
    while waiting:
        yield _finished(waiting)


def _finished(waiting: dict[Future[Outcome], Key]) -> list[tuple[Key, Outcome]]:
    done, _ = wait(waiting, return_when=FIRST_COMPLETED)
    # in the order in which they were handed in, which a set does not keep
    return [(waiting.pop(one), _outcome_of(one)) for one in list(waiting) if one in done]


def _outcome_of(future: Future[Outcome]) -> Outcome:
    """The outcome of a job, or how its worker was lost."""
    try:
        error = future.exception()
    except CancelledError:  # a worker that dies is an error; only the whole pool takes jobs back
        message = "the workers cannot be reached any more; the same command goes on from here"
        raise JacketcheckError(message) from None
    return future.result() if error is None else failure(describe(error))
