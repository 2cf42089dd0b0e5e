"""Each check of a limit state catches what it is for, and says what to do."""

from __future__ import annotations

import itertools
import threading
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from jacketcheck.errors import NotEvaluatedError
from jacketcheck.jacket.designs import leaves
from jacketcheck.plugin import (
    Jacket,
    Kind,
    Real,
    Result,
    Step,
    Steps,
    checked_axial_strain,
    hinge,
    hoop_demand,
)

Findings = Callable[..., list[str]]

STEP = Step("t", "sleeve", 16.0, "mm", "input sleeve.thickness")


def rows(demand: Real = 1.0, capacity: Real = 2.0, **more: Any) -> list[Result]:
    return [Result("Row", "here", demand, capacity, "mm", "North Code 1:2024 2.1", (STEP,), **more)]


def sound(jacket: Jacket) -> list[Result]:
    return rows(8.0, jacket.sleeve.thickness)


@pytest.mark.parametrize(
    "check",
    [
        "answers",
        "answers_at_the_edges",
        "rows_name_their_sources",
        "symbols_are_introduced",
        "figures_cite_their_source",
        "numbers_are_there",
        "units_are_known",
        "same_answer_twice",
        "leaves_the_jacket_alone",
        "one_design_or_many",
        "units_of_the_input_do_not_matter",
        "moves_as_declared",
        "takes_no_more_than_it_says",
        "no_pass_without_a_number",
    ],
)
def test_a_sound_limit_state_passes(findings_of: Findings, check: str) -> None:
    declared = {"sleeve.thickness": -1}
    assert findings_of(check, sound, monotonic=declared, effort="closed-form") == []


def test_a_refusal_keeps_the_contract(findings_of: Findings) -> None:
    def refuses_some(jacket: Jacket) -> list[Result]:
        if jacket.added_bars is None:
            raise NotEvaluatedError("no added bars")
        return sound(jacket)

    assert findings_of("answers", refuses_some) == []
    assert findings_of("answers_at_the_edges", refuses_some) == []


def boom(_: Jacket) -> list[Result]:
    raise ValueError("no good")


@pytest.mark.parametrize(
    ("evaluate", "told"),
    [
        (boom, "on 'metric': raised ValueError: no good (test_limit_state_checks.py, line "),
        (lambda _: None, "on 'metric': returned nothing"),
        (lambda _: rows(1.0, -1.0), "on 'metric': capacity is negative: -1"),
        (lambda _: rows(np.nan), "on 'metric': demand is not a number (NaN)"),
    ],
)
def test_answers_that_break_the_contract(
    findings_of: Findings, evaluate: Callable[[Jacket], Any], told: str
) -> None:
    found = findings_of("answers", evaluate)
    assert found[0].startswith(told)
    # one for each ordinary jacket, and that there is no figure at all
    assert len(found) == 8
    assert "gives no verdict and no figure on any of 11 jackets" in found[-1]


def test_what_to_raise_is_told(findings_of: Findings) -> None:
    found = findings_of("answers", boom)[0]
    assert found.endswith("raise NotEvaluatedError with a reason where something that is needed is "
                          "not there")  # fmt: skip


def test_a_limit_state_that_hangs(findings_of: Findings) -> None:
    def hang(jacket: Jacket) -> list[Result]:
        if jacket.title.startswith("Standard jacket of the conformance kit, metric"):
            threading.Event().wait(20.0)
        return sound(jacket)

    found = findings_of("answers", hang, seconds=0.1)
    assert found[0] == (
        "on 'metric': did not return within 0.1 s; do not wait for anything, vectorise loops"
    )
    assert len(found) == 3


def refuse(_: Jacket) -> list[Result]:
    raise NotEvaluatedError("made for square columns")


def test_a_limit_state_for_which_the_kit_has_no_jacket(findings_of: Findings) -> None:
    (found,) = findings_of("answers", refuse)
    assert found == (
        "gives no verdict and no figure on any of 11 jackets (made for square columns); give the "
        "kit a repair that the limit state is made for, with repairs={...}"
    )


def test_answers_at_the_edges(findings_of: Findings) -> None:
    def trips(jacket: Jacket) -> list[Result]:
        return rows(jacket.added_bars.height, 5e3)  # type: ignore[union-attr] # that is the point

    assert findings_of("answers", trips) == []
    (found,) = findings_of("answers_at_the_edges", trips)
    assert found.startswith("on 'customary, no added bars': raised AttributeError: 'NoneType'")


@pytest.mark.parametrize(
    ("row", "told"),
    [
        (replace(rows()[0], clause=" "), "has no clause: name code, edition and clause"),
        (replace(rows()[0], steps=()), "has no steps: write them down with Steps().add(...)"),
        (
            replace(rows()[0], steps=(replace(STEP, source="", symbol=""),)),
            "has a step '' without symbol and source",
        ),
    ],
)
def test_rows_without_sources(findings_of: Findings, row: Result, told: str) -> None:
    (found,) = findings_of("rows_name_their_sources", lambda _: [row])
    assert found.startswith("on 'metric': row 'Row', 'here', ")
    assert found.endswith(told)


def test_figures_may_do_without_steps(findings_of: Findings) -> None:
    row = replace(rows(kind=Kind.REPORTED)[0], steps=())
    assert findings_of("rows_name_their_sources", lambda _: [row]) == []


def test_units_that_are_not_known(findings_of: Findings) -> None:
    def in_kilonewton(_: Jacket) -> list[Result]:
        words = Step("surface", "input", "chipped", "", "input repair.surface")
        return [replace(rows()[0], unit="kN", steps=(replace(STEP, unit="kip"), words))]

    first, second = findings_of("units_are_known", in_kilonewton)
    assert first.startswith("row 'Row', 'here', 'North Code 1:2024 2.1' has the unit 'kN'; use one")
    assert "MPa, N, N mm" in first
    assert second.startswith("step 't' has the unit 'kip'; use one of 1, 1/mm,")


def test_answers_by_chance(findings_of: Findings) -> None:
    calls = itertools.count()
    found = findings_of("same_answer_twice", lambda _: rows(float(next(calls)), 1e3))
    assert len(found) == 11
    assert found[0].startswith("on 'metric', asked again: row 'Row', 'here', ")
    assert "has demand 1" in found[0]
    assert found[0].endswith("let it depend on the jacket alone, not on chance, time or earlier "
                             "calls")  # fmt: skip


def test_a_row_that_comes_and_goes(findings_of: Findings) -> None:
    calls = itertools.count()

    def sometimes(_: Jacket) -> list[Result]:
        return rows() if next(calls) % 2 else [*rows(), replace(rows()[0], title="Other")]

    found = findings_of("same_answer_twice", sometimes)
    assert "row 'Other', 'here', 'North Code 1:2024 2.1' is not there" in found[0]


def test_a_jacket_that_is_changed(findings_of: Findings) -> None:
    def thicker(jacket: Jacket) -> list[Result]:
        object.__setattr__(jacket.sleeve, "thickness", 99.0)
        return sound(jacket)

    found = findings_of("leaves_the_jacket_alone", thicker)
    assert found[0] == (
        "on 'metric': changes the jacket (sleeve.thickness); make a copy with dataclasses.replace"
    )
    assert [text.partition(":")[0] for text in found] == [
        "on 'metric'",
        "on 'metric, many designs'",
        "on 'customary'",
        "on 'customary, many designs'",
    ]


def test_a_shared_analysis_that_is_changed(findings_of: Findings) -> None:
    def relieve(jacket: Jacket) -> list[Result]:
        force = np.asarray(hoop_demand(jacket).force)
        force.setflags(write=True)
        force *= 0.5
        return rows(force, 1e5)

    (first, _) = findings_of("leaves_the_jacket_alone", relieve)
    assert first == (
        "on 'metric, many designs': changes a shared analysis; copy arrays before writing to them"
    )


def test_a_limit_state_for_one_design_only(findings_of: Findings) -> None:
    def branches(jacket: Jacket) -> list[Result]:
        return rows(1.0, 2.0 if jacket.sleeve.thickness > 10.0 else 3.0)

    found = findings_of("one_design_or_many", branches)
    assert len(found) == 9
    assert found[0].startswith(
        "on 'metric' as three designs: raised ValueError: The truth value of an array"
    )
    assert "use numpy functions, np.where and np.maximum instead of if and max" in found[0]


def test_designs_that_get_the_answer_of_another(findings_of: Findings) -> None:
    def thinnest(jacket: Jacket) -> list[Result]:
        return rows(1.0, float(np.min(jacket.sleeve.thickness)))

    found = findings_of("one_design_or_many", thinnest)
    # the first of three is the thinnest; the two others get its capacity
    assert found[0].startswith("on 'metric', design 2 of three: row 'Row', 'here', ")
    assert "has capacity 12.8 instead of 16.0 as when asked alone" in found[0]
    assert found[1].startswith("on 'metric', design 3 of three: ")


def test_answers_that_hang_on_the_last_digit(findings_of: Findings) -> None:
    def by_digits(jacket: Jacket) -> list[Result]:
        numbers = [value for _, value in leaves(jacket) if isinstance(value, float)]
        return rows(1.0 + hash(tuple(numbers)) % 1000, 1e4)

    found = findings_of("units_of_the_input_do_not_matter", by_digits)
    assert len(found) > 5
    assert "written in other units: row 'Row', 'here', " in found[0]
    assert found[0].endswith("lengths must not be compared with ==")


@pytest.mark.parametrize("effort", ["closed-form", "sections"])
def test_units_leave_no_more_than_the_tolerance_of_sections(
    findings_of: Findings, effort: str
) -> None:
    def odd(share: float) -> Callable[[Jacket], list[Result]]:
        # the last digits of a length, up to a share of the capacity
        return lambda jacket: rows(
            8.0, 1.0 + share * (hash(float(jacket.sleeve.thickness)) % 97 / 97.0)
        )

    assert findings_of("units_of_the_input_do_not_matter", odd(1e-3), effort=effort)
    assert findings_of("units_of_the_input_do_not_matter", odd(1e-7), effort=effort) == []


@pytest.mark.parametrize(
    "row",
    [
        pytest.param(replace(rows()[0], demand=np.nan, kind=Kind.REPORTED), id="figure"),
        pytest.param(
            replace(rows()[0], steps=(replace(STEP, value=float("nan")),)), id="step of a limit"
        ),
    ],
)
def test_a_number_that_is_none_is_found(findings_of: Findings, row: Result) -> None:
    found = findings_of("numbers_are_there", lambda _: [row])
    assert len(found) > 3
    assert "is not a number (NaN); raise NotEvaluatedError" in found[0]


def test_a_symbol_that_was_never_introduced_is_found(findings_of: Findings) -> None:
    steps = (STEP, Step("R", f"2 {STEP.symbol} A_e", 2.0, "N", "statics"))
    row = replace(rows()[0], steps=steps)
    found = findings_of("symbols_are_introduced", lambda _: [row])
    assert len(found) == 1
    assert "step 'R' uses 'A_e'" in found[0]
    assert "Steps().add('A_e'" in found[0]


def test_a_figure_with_the_source_of_another_is_found(findings_of: Findings) -> None:
    def careless(jacket: Jacket) -> list[Result]:
        steps, bolts = Steps(), jacket.bolts
        steps.figure("d", "of the bolt", bolts, "diameter", "mm")
        steps.add("F_ub", "of the bolt", bolts.tensile_strength, "MPa", bolts.source)
        return [replace(rows()[0], steps=steps.lines)]

    found = findings_of("figures_cite_their_source", careless)
    assert len(found) == 1
    assert "step 'F_ub' prints bolts.tensile_strength" in found[0]
    assert "jacket.bolts, 'tensile_strength'" in found[0]


def test_a_row_without_numbers_needs_none(findings_of: Findings) -> None:
    row = replace(rows()[0], demand=np.nan, capacity=np.nan, kind=Kind.NOT_EVALUATED, notes=("x",))
    assert findings_of("numbers_are_there", lambda _: [row]) == []


@pytest.mark.parametrize(
    ("monotonic", "told"),
    [
        (
            {"sleeve.thickness": 1},
            "on 'metric': as sleeve.thickness grows from 0.9 to 1.2 times its value, the largest r",
        ),
        ({"sleeve.thickness": 2}, "monotonic['sleeve.thickness'] is 2; must be -1, 0 or 1"),
        (
            {"sleeve.thicknes": -1},
            "monotonic names 'sleeve.thicknes', which is no number of any jacket; see `leaves`",
        ),
        (
            {"bolts.hole": 0},
            "monotonic names 'bolts.hole', which is no number of any jacket; see `leaves`",
        ),
    ],
)
def test_wrong_declarations(findings_of: Findings, monotonic: dict[str, int], told: str) -> None:
    assert findings_of("moves_as_declared", sound, monotonic=monotonic)[0].startswith(told)


def test_what_a_wrong_declaration_is_told_like(findings_of: Findings) -> None:
    found = findings_of("moves_as_declared", sound, monotonic={"sleeve.thickness": 1})[0]
    assert found.endswith(
        "ratio is 0.5556, 0.5, 0.4167; correct the limit state or what it declares"
    )


def test_either_way_is_a_declaration(findings_of: Findings) -> None:
    assert findings_of("moves_as_declared", sound, monotonic={"sleeve.thickness": 0}) == []


def test_sections_that_were_not_declared(findings_of: Findings) -> None:
    def moment(jacket: Jacket) -> list[Result]:
        return rows(hinge(jacket).base_moment, 1e11)

    found = findings_of("takes_no_more_than_it_says", moment, effort="closed-form")
    assert found[0].startswith("on 'metric': asks for ")
    assert "hinge" in found[0]
    assert found[0].endswith("though its effort is 'closed-form'; declare effort=\"sections\"")
    assert findings_of("takes_no_more_than_it_says", moment, effort="sections") == []


def test_ratios_that_fall_with_the_demand(findings_of: Findings) -> None:
    def odd(jacket: Jacket) -> list[Result]:
        return rows(0.01, np.add(0.01, checked_axial_strain(jacket).value))

    found = findings_of("takes_no_more_than_it_says", odd, effort="bond")
    assert "falls when the axial strain of the base" in found[0]


def test_a_nan_that_reads_as_a_pass(findings_of: Findings) -> None:
    def lenient(jacket: Jacket) -> list[Result]:
        # Python's max keeps the first of two that do not compare
        return rows(max(1.0, 30.0 - float(np.min(jacket.sleeve.thickness))), 20.0)

    def strict(jacket: Jacket) -> list[Result]:
        return rows(np.maximum(1.0, 30.0 - np.asarray(jacket.sleeve.thickness)), 20.0)

    assert findings_of("no_pass_without_a_number", strict) == []

    def lenient_over_designs(jacket: Jacket) -> list[Result]:
        thickness = np.asarray(jacket.sleeve.thickness)
        return strict(jacket) if thickness.ndim else lenient(jacket)

    found = findings_of("no_pass_without_a_number", lenient_over_designs)
    assert found[0] == (
        "on 'metric' with a NaN for sleeve.thickness: row 'Row', 'here', 'North Code 1:2024 2.1' "
        "passes, though it depends on it; use np.maximum and np.minimum, through which a NaN goes "
        "on"
    )
