"""A process that checks files for another one: ``python -m jacketcheck.batch.worker``.

Jobs come in through standard input and outcomes leave through standard output, pickled; both
belong to the process that started this one. It is a process of its own, and no fork, so that it
can be started from anywhere: from a thread, a notebook, or a worker of a cluster that may have no
children of the usual kind. It ends as soon as its input does, so that none outlives a run.
"""

from __future__ import annotations

import contextlib
import faulthandler
import os
import pickle
import queue
import signal
import sys
import threading
from typing import BinaryIO, NoReturn

from jacketcheck.batch.job import Checker, Job

__all__ = ["main", "serve"]


def serve(requests: BinaryIO, replies: BinaryIO) -> None:
    """Read settings, then answer job after job."""
    inbox: queue.SimpleQueue[Job] = queue.SimpleQueue()
    settings = pickle.load(requests)  # noqa: S301 - written by the process that started this one
    threading.Thread(target=_receive, args=(requests, inbox), daemon=True).start()
    checker = Checker(settings)
    while True:
        pickle.dump(checker.check(inbox.get()), replies, protocol=pickle.HIGHEST_PROTOCOL)
        replies.flush()


def _receive(requests: BinaryIO, inbox: queue.SimpleQueue[Job]) -> NoReturn:
    """Pass jobs on; end the process when nobody can want an answer any more."""
    code = 1
    try:
        while True:
            inbox.put(pickle.load(requests))  # noqa: S301 - as above
    except EOFError:
        code = 0
    finally:
        os._exit(code)


def main() -> NoReturn:
    """Serve on standard input and output, which plug-ins then cannot reach."""
    # the keyboard interrupts the process that started this one, which then ends it
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    faulthandler.enable()
    requests = os.fdopen(os.dup(0), "rb")
    replies = os.fdopen(os.dup(1), "wb")
    nothing = os.open(os.devnull, os.O_RDWR)
    os.dup2(nothing, 0)
    os.dup2(2, 1)
    with contextlib.suppress(BrokenPipeError, EOFError):  # whoever asked is gone
        serve(requests, replies)
    sys.stderr.flush()
    os._exit(0)


if __name__ == "__main__":
    main()
