"""Whatever one limit state does, the others stand, and nothing broken reads as a pass."""

from __future__ import annotations

import sys
import threading
import warnings
from collections.abc import Callable
from dataclasses import replace
from types import ModuleType
from typing import Any

import numpy as np
import pytest

from jacketcheck.engine import evaluate
from jacketcheck.errors import InputError, NotEvaluatedError
from jacketcheck.hookspecs import hookimpl
from jacketcheck.host import Host, PluginInfo, load_host
from jacketcheck.jacket import Jacket
from jacketcheck.jacket.designs import with_values
from jacketcheck.limit_state import LimitState, Provisions
from jacketcheck.report import ExitCode
from jacketcheck.results import Kind, Result, Status, Step

Evaluate = Callable[..., tuple[Result, ...]]
HostOf = Callable[..., Host]

WHO = "plug-in north (jacketcheck-north 1.2), limit state odd-1: "


def row(demand: Any = 1.0, capacity: Any = 2.0, **more: Any) -> Result:
    return Result("Odd row", "there", demand, capacity, "N", "a clause", **more)


def raises(error: BaseException) -> Callable[[Jacket], list[Result]]:
    def function(jacket: Jacket) -> list[Result]:
        del jacket
        raise error

    return function


def set_thickness(jacket: Jacket) -> list[Result]:
    jacket.sleeve.thickness = 1000.0  # type: ignore[misc] # that is what is tested
    return [row()]


def write_array(jacket: Jacket) -> list[Result]:
    jacket.sleeve.thickness[0] = 1000.0  # type: ignore[index] # it is an array there
    return [row()]


def change_ratio(jacket: Jacket) -> list[Result]:
    del jacket
    result = row(3.0, 2.0)
    object.__setattr__(result, "ratio", 0.1)
    return [result]


def check_failure(results: tuple[Result, ...], reason: str) -> None:
    """Two sound rows, and one that tells who failed in what and why."""
    before, odd, after = results
    assert (before.status, after.status) == (Status.OK, Status.OK)
    assert odd.status is Status.NOT_EVALUATED
    assert odd.kind is Kind.NOT_EVALUATED
    assert odd.notes[0].startswith(WHO + reason)
    assert odd.notes[0].isprintable()
    assert (odd.limit_state, odd.provisions, odd.origin) == ("odd-1", "alone", "jacketcheck-north")
    assert np.isnan(odd.ratio)
    assert ExitCode.of(results) is ExitCode.NOT_EVALUATED


@pytest.mark.parametrize(
    ("function", "reason"),
    [
        pytest.param(raises(ValueError("no good")), "raised ValueError: no good (", id="raises"),
        pytest.param(raises(SystemExit(0)), "raised SystemExit: 0 (", id="leaves"),
        pytest.param(raises(KeyboardInterrupt()), "raised KeyboardInterrupt (", id="interrupts"),
        pytest.param(raises(NotEvaluatedError("no data\nat all")), "no data at all", id="refuses"),
        pytest.param(lambda _: None, "returned nothing", id="nothing"),
        pytest.param(lambda _: [], "returned an empty sequence", id="empty list"),
        pytest.param(lambda _: 0.5, "returned a float, not a sequence of Res", id="wrong type"),
        pytest.param(lambda _: row(), "returned a Result, not a sequence of them", id="one"),
        pytest.param(lambda _: [0.5], "returned a float among its results", id="wrong entry"),
        pytest.param(lambda _: [row(np.nan)], "demand is not a number (NaN) (row", id="NaN"),
        pytest.param(lambda _: [row(0.0, np.nan)], "capacity is not a number", id="NaN below zero"),
        pytest.param(lambda _: [row(1.0, -2.0)], "capacity is negative: -2 (row", id="negative"),
        pytest.param(lambda _: [row(-1.0)], "demand is negative: -1 (row", id="negative demand"),
        pytest.param(lambda _: [row(1.0, np.inf)], "capacity is infinite, which", id="infinite"),
        pytest.param(lambda _: [row(np.ones(3))], "demand has the shape (3,)", id="wrong shape"),
        pytest.param(lambda _: [row(), row()], "returned the same title", id="same row twice"),
        pytest.param(
            lambda _: [row("a")],
            "raised TypeError: ufunc 'divide' not supported",
            id="text for a number",
        ),
        pytest.param(lambda: [row()], "raised TypeError: ", id="takes no jacket"),
        pytest.param(set_thickness, "raised FrozenInstanceError: cannot assign", id="mutates"),
        pytest.param(write_array, "raised TypeError: 'float' object does not", id="writes"),
        pytest.param(
            lambda _: [row(steps=(Step("a", "b", None, "1", "c"),))],  # type: ignore[arg-type] # wrong by design
            "step 'a' is not a number or an array",
            id="step without a value",
        ),
    ],
)
def test_a_broken_limit_state_is_a_visible_row(
    results_with: Evaluate, function: Callable[[Any], Any], reason: str
) -> None:
    check_failure(results_with(function), reason)


def test_a_limit_state_that_hangs(results_with: Evaluate) -> None:
    go = threading.Event()
    check_failure(results_with(lambda _: go.wait(20.0), seconds=0.3), "did not return within 0.3 s")
    go.set()


def test_a_call_that_goes_on_after_its_time_cannot_touch_the_jacket(
    results_with: Evaluate, jacket: Jacket
) -> None:
    go, done = threading.Event(), threading.Event()

    def slow(given: Jacket) -> list[Result]:
        go.wait(20.0)
        object.__setattr__(given.sleeve, "thickness", 1000.0)
        given.memo.clear()
        done.set()
        return [row()]

    jacket.memo["kept"] = 1
    before = jacket.sleeve.thickness
    check_failure(results_with(slow, seconds=0.3), "did not return within 0.3 s")
    go.set()
    assert done.wait(20.0)
    assert jacket.sleeve.thickness == before
    assert jacket.memo["kept"] == 1


def test_writing_past_the_frozen_records_reaches_nobody_else(
    results_with: Evaluate, jacket: Jacket
) -> None:
    def vandal(given: Jacket) -> list[Result]:
        object.__setattr__(given.demands, "axial_load", 0.0)
        given.memo["jacketcheck.analysis"] = "spoilt"
        return [row()]

    before, odd, after = results_with(vandal)
    assert odd.status is Status.OK
    assert after.demand == before.demand == jacket.demands.axial_load
    assert "jacketcheck.analysis" not in jacket.memo


def test_arrays_of_the_jacket_cannot_be_written(results_with: Evaluate, jacket: Jacket) -> None:
    many = with_values(jacket, {"sleeve.thickness": np.array([10.0, 12.0])})
    _, odd, after = results_with(write_array, of=many)
    assert odd.notes[0].startswith(WHO + "raised ValueError: assignment destination is read-only")
    assert after.status is Status.OK
    np.testing.assert_array_equal(many.sleeve.thickness, [10.0, 12.0])


def test_a_ratio_that_was_tampered_with(results_with: Evaluate) -> None:
    _, odd, _ = results_with(change_ratio)
    assert (odd.ratio, odd.status) == (1.5, Status.EXCEEDS)


def test_what_a_limit_state_prints_or_warns_of_becomes_a_note(
    results_with: Evaluate, capsys: pytest.CaptureFixture[str]
) -> None:
    def noisy(jacket: Jacket) -> list[Result]:
        del jacket
        print("hello\x1b[2J")  # noqa: T201 - that is what is tested
        print("trouble", file=sys.stderr)  # noqa: T201 - that is what is tested
        warnings.warn("mind the gap", stacklevel=1)
        return [row(notes=("own note",)), replace(row(), location="elsewhere")]

    _, first, second, _ = results_with(noisy)
    assert first.notes == (
        "own note",
        "plug-in north warned mind the gap",
        "plug-in north printed hello [2J trouble",
    )
    assert second.notes == ()
    assert capsys.readouterr() == ("", "")


def test_division_by_zero_does_not_warn_and_is_judged_by_its_result(results_with: Evaluate) -> None:
    def divides(jacket: Jacket) -> list[Result]:
        zero = np.float64(jacket.demands.axial_load) * 0.0
        return [row(np.float64(1.0) / zero)]

    _, odd, _ = results_with(divides)
    assert (odd.ratio, odd.notes, odd.status) == (np.inf, (), Status.EXCEEDS)


def test_one_answer_for_each_design(results_with: Evaluate, jacket: Jacket) -> None:
    many = with_values(jacket, {"sleeve.thickness": np.array([10.0, 12.0, 14.0])})

    def half(given: Jacket) -> list[Result]:
        demand = np.where(np.greater(given.sleeve.thickness, 11.0), 1.0, np.nan)
        return [row(demand)]

    before, odd, _ = results_with(half, of=many)
    np.testing.assert_array_equal(odd.ratio, [np.nan, 0.5, 0.5])
    assert odd.status is Status.NOT_EVALUATED
    # one number holds for every design
    assert np.shape(before.ratio) == (3,)
    _, odd, _ = results_with(lambda _: [row(np.ones(2))], of=many)
    assert "demand has the shape (2,), which does not fit the designs' (3,)" in odd.notes[0]


def test_order_and_origin(results_with: Evaluate) -> None:
    results = results_with(lambda _: [row(), replace(row(), location="elsewhere")], lambda _: None)
    assert [one.limit_state for one in results] == [
        "sound-before",
        "odd-1",
        "odd-1",
        "odd-2",
        "sound-after",
    ]
    assert {one.origin for one in results} == {"jacketcheck-north"}
    assert {one.provisions for one in results} == {"alone"}


def test_only_some(host_of: HostOf, jacket: Jacket) -> None:
    host = host_of(lambda _: None)
    found = evaluate(jacket, host=host, provisions="alone", only={"sound-after"})
    assert [one.limit_state for one in found] == ["sound-after"]


def test_what_a_code_leaves_out_stays_visible(host_of: HostOf, jacket: Jacket) -> None:
    host = host_of(lambda _: [row()])
    quiet = Provisions("quiet", "Quiet", "alone", {"odd-1": "the code has no such rule"})
    host = replace(host, provisions={**host.provisions, "quiet": quiet})
    _, odd, _ = evaluate(jacket, host=host, provisions="quiet")
    assert (odd.title, odd.status) == ("Odd check 1", Status.NOT_APPLICABLE)
    assert odd.notes == ("the code has no such rule",)
    assert odd.provisions == "quiet"


def test_a_limit_state_of_our_own_that_breaks_is_a_row_as_well(
    host_of: HostOf, jacket: Jacket
) -> None:
    host = host_of(raises(ValueError("no good")), lambda _: [row(np.nan)])
    own = host.plugins[0]
    host = replace(
        host, registered=tuple(replace(one, plugin=own) for one in host.registered)
    )  # fmt: skip
    _, first, second, after = evaluate(jacket, host=host, provisions="alone")
    assert first.notes[0].startswith("limit state odd-1: raised ValueError: no good (test_eval")
    assert second.notes[0].startswith("limit state odd-2: demand is not a number (NaN)")
    assert after.status is Status.OK


def test_provisions_without_limit_states_are_no_pass(host_of: HostOf, jacket: Jacket) -> None:
    host = host_of()
    empty = Provisions("empty", "Empty", inherits=None)
    host = replace(host, provisions={**host.provisions, "empty": empty})
    (only,) = evaluate(jacket, host=host, provisions="empty")
    assert only.status is Status.NOT_EVALUATED
    assert only.notes == ("provisions empty have no limit states",)


def test_unknown_provisions(host_of: HostOf, jacket: Jacket) -> None:
    with pytest.raises(InputError, match='provisions = "uk": is not known; known are alone, us'):
        evaluate(jacket, host=host_of(), provisions="uk")


def test_a_plug_in_that_cannot_be_loaded_is_a_row_under_all_provisions(
    host_of: HostOf, jacket: Jacket
) -> None:
    class Broken:
        @hookimpl
        def jacketcheck_limit_states(self) -> None:
            raise ValueError("no good")

    host = load_host(
        installed=False, extra=[(PluginInfo("south", "jacketcheck-south", "0.1"), Broken())]
    )
    found = evaluate(jacket, host=host, only=())
    (only,) = found
    assert (only.title, only.limit_state) == ("Plug-in south", "plug-in-problem")
    assert only.notes[0].startswith(
        "plug-in south (jacketcheck-south 0.1), jacketcheck_limit_states: raised ValueError: no"
    )
    assert only.notes[0].endswith("; switch it off with --without south")
    assert ExitCode.of(found) is ExitCode.NOT_EVALUATED
    assert host_of().problems == ()


def test_a_problem_of_other_provisions_does_not_concern_these(jacket: Jacket) -> None:
    twice = LimitState("twice", "Twice", "one", lambda _: [row()])
    sound = LimitState("sound", "Sound", "two", lambda _: [row()])
    module = ModuleType("made_for_a_test")
    names = ("one", "two")
    hooks: dict[str, Callable[[], list[Any]]] = {
        "jacketcheck_provisions": lambda: [Provisions(one, one, inherits=None) for one in names],
        "jacketcheck_limit_states": lambda: [twice, twice, sound],
    }
    for name, hook in hooks.items():
        setattr(module, name, hookimpl(hook))
    host = load_host(installed=False, extra=[(PluginInfo("south", "south", "1"), module)])
    by_one = evaluate(jacket, host=host, provisions="one")
    by_two = evaluate(jacket, host=host, provisions="two")
    assert [one.status for one in by_one] == [Status.OK, Status.NOT_EVALUATED]
    assert by_one[1].location == "limit state twice"
    assert [one.status for one in by_two] == [Status.OK]


def child_host(*states: LimitState, omits: dict[str, str] | None = None) -> Host:
    module = ModuleType("made_for_a_test")
    sets = [
        Provisions("parent", "Parent 1:2020", inherits=None),
        Provisions("child", "Child 2:2024", inherits="parent", omits=omits or {}),
        Provisions("grandchild", "Grandchild 3:2025", inherits="child"),
    ]
    module.jacketcheck_provisions = hookimpl(lambda: sets)  # type: ignore[attr-defined]
    module.jacketcheck_limit_states = hookimpl(lambda: list(states))  # type: ignore[attr-defined]
    return load_host(installed=False, extra=[(PluginInfo("north", "north", "1.2"), module)])


def test_every_row_says_by_which_set_it_was_written(jacket: Jacket) -> None:
    def sound(jacket: Jacket) -> list[Result]:
        del jacket
        return [row()]

    host = child_host(
        LimitState("kept", "Kept", "parent", sound),
        LimitState("replaced", "Replaced", "parent", sound),
        LimitState("replaced", "Replaced", "child", sound),
        LimitState("broken", "Broken", "parent", raises(ValueError("no"))),
        LimitState("left-out", "Left out", "parent", sound),
        omits={"left-out": "the code has no such rule"},
    )
    found = {one.limit_state: one for one in evaluate(jacket, host=host, provisions="grandchild")}
    assert {name: one.written_by for name, one in found.items()} == {
        "kept": "parent",
        "replaced": "child",
        "broken": "parent",
        "left-out": "child",
    }
    assert {one.provisions for one in found.values()} == {"grandchild"}
    assert all(one.inherited for one in found.values())
    own = {one.limit_state: one for one in evaluate(jacket, host=host, provisions="child")}
    assert [name for name, one in own.items() if not one.inherited] == ["replaced", "left-out"]


@pytest.mark.parametrize("causes", ["seam-slip", [1], None, {"seam-slip"}])
def test_what_a_row_follows_from_must_be_ids(results_with: Evaluate, causes: Any) -> None:
    def function(jacket: Jacket) -> list[Result]:
        del jacket
        return [row(follows_from=causes)]

    _, odd, _ = results_with(function)
    assert odd.kind is Kind.NOT_EVALUATED
    assert "follows_from must be a sequence of ids of limit states" in odd.notes[0]
