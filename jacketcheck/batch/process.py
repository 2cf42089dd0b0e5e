"""Processes that check files: started when needed, replaced when one dies, ended with the run."""

from __future__ import annotations

import contextlib
import os
import pickle
import signal
import subprocess
import sys
import tempfile
import threading
from typing import Any

from jacketcheck.batch.job import Job, Outcome, failure
from jacketcheck.batch.settings import BatchSettings
from jacketcheck.errors import JacketcheckError

__all__ = ["ProcessDesk", "WorkerProcess"]

_ONE_THREAD = dict.fromkeys(
    (
        "OMP_NUM_THREADS",
        "OPENBLAS_NUM_THREADS",
        "MKL_NUM_THREADS",
        "BLIS_NUM_THREADS",
        "VECLIB_MAXIMUM_THREADS",
        "NUMEXPR_NUM_THREADS",
    ),
    "1",
)
"""Each process computes on one core: as many of them as there are cores would else get in each
other's way."""
_PATIENCE = 5.0
_FATAL = b"Fatal Python error: "


class _LostError(JacketcheckError):
    """A worker process ended with a file in its hands; says how."""


class WorkerProcess:
    """One process that checks files.

    Parameters
    ----------
    settings
        What to check by; `file_seconds` limits each file.

    Attributes
    ----------
    expired
        Whether it was ended because a file took too long.
    """

    def __init__(self, settings: BatchSettings) -> None:
        self._limit = settings.file_seconds
        self.expired = False
        self._errors = tempfile.TemporaryFile("a+b")  # noqa: SIM115 - closed with the process
        self._process = subprocess.Popen(
            [sys.executable, "-P", "-m", "jacketcheck.batch.worker"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=self._errors,
            env={**os.environ, **_ONE_THREAD, "PYTHONPATH": os.pathsep.join(sys.path)},
        )
        with contextlib.suppress(OSError):  # a process that is gone is noticed by its silence
            self._send(settings)

    @property
    def is_alive(self) -> bool:
        """Whether it can take another job."""
        return self._process.poll() is None

    def evaluate(self, job: Job) -> Outcome:
        """Have a file checked; raises _LostError if the process ends instead of answering."""
        timer = threading.Timer(self._limit, self._expire)
        timer.start()
        try:
            self._errors.truncate(0)
            self._send(job)
            outcome = self._receive()
        except (OSError, EOFError, pickle.UnpicklingError) as error:
            self.kill()
            raise _LostError(self._epitaph()) from error
        finally:
            timer.cancel()
        if outcome.worn:
            self.kill()
        return outcome

    def kill(self) -> None:
        """End the process, whatever it is doing."""
        self._process.kill()
        self._process.wait(_PATIENCE)

    def close(self) -> None:
        """End the process and let go of what it held."""
        self.kill()
        for stream in (self._process.stdin, self._process.stdout, self._errors):
            if stream is not None:
                with contextlib.suppress(OSError):  # a job may lie in the buffer still
                    stream.close()

    def _send(self, item: object) -> None:
        assert self._process.stdin is not None  # noqa: S101 - asked for above
        pickle.dump(item, self._process.stdin, protocol=pickle.HIGHEST_PROTOCOL)
        self._process.stdin.flush()

    def _receive(self) -> Outcome:
        assert self._process.stdout is not None  # noqa: S101 - asked for above
        outcome: Any = pickle.load(self._process.stdout)  # noqa: S301 - from our own worker
        if not isinstance(outcome, Outcome):
            raise pickle.UnpicklingError
        return outcome

    def _expire(self) -> None:
        self.expired = True
        self._process.kill()

    def _epitaph(self) -> str:
        """How the process ended, in the same words whenever it ends that way."""
        if self.expired:
            return f"did not finish within {self._limit:g} s"
        code = self._process.returncode
        if code is None or code >= 0:
            return f"ended its worker process with exit code {code}"
        try:
            name = signal.Signals(-code).name
        except ValueError:
            name = f"signal {-code}"
        remark = " (out of memory?)" if name == "SIGKILL" else self._last_words()
        return f"ended its worker process by {name}{remark}"

    def _last_words(self) -> str:
        """What the interpreter said of a fatal error."""
        self._errors.seek(0)
        lines = self._errors.read().splitlines()
        found = (line[len(_FATAL) :] for line in lines if line.startswith(_FATAL))
        return "".join(f" ({line.decode(errors='replace')})" for line in found)


class ProcessDesk:
    """One worker process for each thread that asks; safe to use from any number of threads.

    Parameters
    ----------
    settings
        What to check by.
    """

    def __init__(self, settings: BatchSettings) -> None:
        self._settings = settings
        self._own = threading.local()
        self._lock = threading.Lock()
        self._running: set[WorkerProcess] = set()
        self._stopped = False

    def evaluate(self, job: Job) -> Outcome:
        """Check a file in this thread's process.

        If the process dies of it the file is tried once more, in a new process: what an earlier
        file left behind, or a machine short of memory, may be what ended the first.
        """
        for is_last in (False, True):
            process = self._process()
            try:
                return process.evaluate(job)
            except _LostError as error:
                if is_last or process.expired:
                    return failure(str(error))
        raise AssertionError  # the last attempt returns

    def stop(self) -> None:
        """End every process, those at work included, and start no more."""
        with self._lock:
            self._stopped = True
            running = tuple(self._running)
        for process in running:
            process.kill()

    def close(self) -> None:
        """Stop, and let go of everything; no thread may be asking any more."""
        self.stop()
        for process in tuple(self._running):
            self._drop(process)

    def _process(self) -> WorkerProcess:
        """Process of this thread, a new one if the last is gone."""
        process: WorkerProcess | None = getattr(self._own, "process", None)
        if process is not None and process.is_alive:
            return process
        if process is not None:
            self._drop(process)
        with self._lock:
            if self._stopped:
                raise RuntimeError("the batch is over")
            process = self._own.process = WorkerProcess(self._settings)
            self._running.add(process)
        return process

    def _drop(self, process: WorkerProcess) -> None:
        process.close()
        with self._lock:
            self._running.discard(process)
