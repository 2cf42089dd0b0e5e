"""Jobs are handed out only as fast as they are done, and a lost worker loses one of them."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Future

import pytest

from jacketcheck.batch.job import Job, Outcome, failure
from jacketcheck.batch.pools import Pool, outcomes
from jacketcheck.batch.records import unpacked
from jacketcheck.errors import JacketcheckError


def done(job: Job) -> Future[Outcome]:
    future: Future[Outcome] = Future()
    future.set_result(failure(job.source))
    return future


def test_no_more_jobs_are_drawn_than_the_window_holds() -> None:
    drawn = 0

    def jobs() -> Iterator[tuple[int, Job]]:
        nonlocal drawn
        for number in range(100):
            drawn += 1
            yield number, Job(str(number), b"")

    seen: list[int] = []
    for batch in outcomes(Pool(done, window=5), jobs()):
        seen += [key for key, _ in batch]
        assert [unpacked(outcome.body).message for _, outcome in batch] == [
            str(key) for key, _ in batch
        ]
        assert drawn - len(seen) <= 5
    assert seen == list(range(100))


def test_a_lost_worker_is_the_failure_of_its_file() -> None:
    def submit(job: Job) -> Future[Outcome]:
        if job.source != "1":
            return done(job)
        future: Future[Outcome] = Future()
        future.set_exception(RuntimeError("the worker is gone"))
        return future

    jobs = [(number, Job(str(number), b"")) for number in range(3)]
    found = dict(pair for batch in outcomes(Pool(submit, window=2), jobs) for pair in batch)
    assert found.keys() == {0, 1, 2}
    assert found[1].fate == "failed"
    assert "the worker is gone" in unpacked(found[1].body).message


def test_a_cluster_that_is_gone_ends_the_run_in_a_sentence() -> None:
    future: Future[Outcome] = Future()
    future.cancel()
    future.set_running_or_notify_cancel()
    with pytest.raises(JacketcheckError, match="the same command goes on from here"):
        list(outcomes(Pool(lambda _: future, window=1), [(0, Job("a", b""))]))
