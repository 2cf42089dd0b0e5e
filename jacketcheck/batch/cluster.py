"""The same jobs on a Dask cluster: a batch that is too large for one machine.

Workers need no access to the inventory's folder: each file travels with its job. They need the
same version of this package and the same plug-ins, which each of them compares before it answers.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from typing import TYPE_CHECKING

from jacketcheck.batch.job import Job, Outcome
from jacketcheck.batch.pools import Pool
from jacketcheck.batch.process import ProcessDesk
from jacketcheck.batch.settings import BatchSettings
from jacketcheck.errors import InputError, InputProblem, MissingExtraError
from jacketcheck.host.outcome import one_line
from jacketcheck.inputs.written import shown

if TYPE_CHECKING:
    from distributed import Client

__all__ = ["cluster_pool", "require_dask"]

_LOCAL = "local:"
_LEAST_WINDOW = 256
_WINDOW_BY_THREAD = 4
_SECONDS_TO_CONNECT = 60.0


def require_dask() -> None:
    """Raise MissingExtraError unless distributed can be imported."""
    try:
        import distributed  # noqa: F401, PLC0415 - an extra
    except ImportError as error:
        raise MissingExtraError("dask", "distributed") from error


@contextmanager
def cluster_pool(settings: BatchSettings, scheduler: str) -> Iterator[Pool]:
    """Workers of a Dask cluster.

    Parameters
    ----------
    settings
        What to check by.
    scheduler
        Address of a scheduler, e.g. ``tcp://host:8786``, or ``local:N`` for N processes on this
        machine.

    Raises
    ------
    MissingExtraError
        If distributed is not installed.
    InputError
        If there is no such cluster, or it has no workers.
    """
    require_dask()
    with _client(scheduler) as client:
        executor = client.get_executor(pure=False)
        threads = sum(client.nthreads().values())
        yield Pool(
            lambda job: executor.submit(_evaluate, settings, job),
            window=max(_LEAST_WINDOW, _WINDOW_BY_THREAD * threads),
        )


@contextmanager
def _client(scheduler: str) -> Iterator[Client]:
    from distributed import Client, LocalCluster  # noqa: PLC0415 - an extra

    if scheduler.startswith(_LOCAL):
        with (
            LocalCluster(
                n_workers=_count(scheduler),
                threads_per_worker=1,
                processes=True,
                dashboard_address=None,
                silence_logs=logging.CRITICAL,
            ) as cluster,
            Client(cluster) as client,
        ):
            yield client
        return
    try:
        client = Client(scheduler, timeout=_SECONDS_TO_CONNECT)
    except (OSError, ValueError) as error:  # TimeoutError is an OSError
        raise _refusal(scheduler, f"cannot be reached: {one_line(str(error))}") from error
    with client:
        try:
            client.wait_for_workers(1, timeout=_SECONDS_TO_CONNECT)
        except TimeoutError as error:
            raise _refusal(scheduler, "has no workers") from error
        yield client


def _count(scheduler: str) -> int:
    text = scheduler.removeprefix(_LOCAL)
    if not text.isdecimal() or not 1 <= int(text) <= 1024:
        raise _refusal(scheduler, "must be local:N with N from 1 to 1024")
    return int(text)


def _refusal(scheduler: str, message: str) -> InputError:
    return InputError([InputProblem("--dask", shown(scheduler), message)], source="options")


def _evaluate(settings: BatchSettings, job: Job) -> Outcome:
    """Check a file on a worker, in a process of its own as on a single machine."""
    return _desk(settings).evaluate(job)


@lru_cache(maxsize=1)
def _desk(settings: BatchSettings) -> ProcessDesk:
    """The desk of this worker; its processes end with the worker."""
    return ProcessDesk(settings)
