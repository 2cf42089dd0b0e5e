"""Whatever foreign code does becomes a value."""

from __future__ import annotations

import sys
import threading
import warnings

import pytest

from jacketcheck.errors import DomainError
from jacketcheck.host.isolation import call_isolated, describe


def test_a_value_comes_back() -> None:
    outcome = call_isolated(lambda a, b: a + b, 1, 2, name="sum")
    assert (outcome.value, outcome.problem, outcome.error, outcome.remarks) == (3, None, None, ())


def raiser(error: BaseException) -> object:
    raise error


class Mute(Exception):  # noqa: N818 - a bad citizen
    def __str__(self) -> str:
        raise RuntimeError


@pytest.mark.parametrize(
    ("error", "problem"),
    [
        (ValueError("no good"), "raised ValueError: no good (test_isolation.py, line "),
        (ValueError(), "raised ValueError (test_isolation.py, line "),
        (SystemExit(0), "raised SystemExit: 0 (test_isolation.py, line "),
        (KeyboardInterrupt(), "raised KeyboardInterrupt (test_isolation.py, line "),
        (MemoryError(), "raised MemoryError (test_isolation.py, line "),
        (ValueError("two\nlines\x1b[2J"), "raised ValueError: two lines [2J (test_isolation.py"),
        (ValueError("x" * 1000), f"raised ValueError: {'x' * 300}… (test_isolation.py"),
        (Mute(), "raised Mute: with a message that cannot be shown (test_isolation.py"),
        (DomainError("height", -1.0, "above zero"), "height = -1.0: must be above zero"),
    ],
)
def test_any_exception_becomes_one_line(error: BaseException, problem: str) -> None:
    outcome = call_isolated(raiser, error, name="odd")
    assert outcome.value is None
    assert outcome.error is error
    assert outcome.problem is not None
    assert outcome.problem.startswith(problem)
    assert outcome.problem.isprintable()


def test_endless_recursion() -> None:
    def again(depth: int) -> int:
        return again(depth + 1)

    outcome = call_isolated(again, 0, name="odd")
    assert outcome.problem is not None
    assert outcome.problem.startswith("raised RecursionError")


def test_an_exception_without_a_traceback() -> None:
    assert describe(ValueError("no good")) == "raised ValueError: no good"


def test_a_call_that_hangs_is_abandoned_and_its_late_answer_does_not_count() -> None:
    go = threading.Event()
    outcome = call_isolated(lambda: go.wait() or 1, name="slow", seconds=0.1)
    assert (outcome.value, outcome.problem) == (None, "did not return within 0.1 s")
    go.set()
    assert outcome.value is None


def test_what_is_printed_stays_out_of_our_output(capsys: pytest.CaptureFixture[str]) -> None:
    def noisy() -> int:
        print("hello\nthere")  # noqa: T201 - that is what is tested
        print("trouble", file=sys.stderr)  # noqa: T201 - that is what is tested
        return 1

    outcome = call_isolated(noisy, name="odd")
    assert (outcome.value, outcome.remarks) == (1, ("printed hello there trouble",))
    assert capsys.readouterr() == ("", "")
    print("ours")  # noqa: T201 - our own output is back
    assert capsys.readouterr().out == "ours\n"


def test_warnings_become_remarks() -> None:
    def warner() -> int:
        for _ in range(2):
            warnings.warn("mind the gap", stacklevel=1)
        return 1

    outcome = call_isolated(warner, name="odd")
    assert (outcome.value, outcome.remarks) == (1, ("warned mind the gap",))


def test_remarks_come_with_a_problem_as_well() -> None:
    def noisy() -> None:
        print("first this")  # noqa: T201 - that is what is tested
        raise ValueError

    outcome = call_isolated(noisy, name="odd")
    assert outcome.remarks == ("printed first this",)
    assert outcome.problem is not None
